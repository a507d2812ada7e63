#pragma once

#include "app/papers/tag.h"
#include "app/paperwork/source.h"
#include "core/bench/card.h"

namespace mend::paperwork {

/// The papers there are about one piece.
enum class Kind { IntakeReceipt, Quote, TreatmentRecord, CareSheet, OutReceipt, UnclaimedNotice };
inline constexpr Kind allKinds[] = {Kind::IntakeReceipt, Kind::Quote,      Kind::TreatmentRecord,
                                    Kind::CareSheet,     Kind::OutReceipt, Kind::UnclaimedNotice};

/// "Treatment record"
QString kindWords(Kind kind);
/// "260417-5-treatment-record": what a file of it is called; only letters, digits and hyphens.
QString fileStem(Kind kind, const record::Piece& piece);

/// The paper as it would be printed now.
papers::Paper paperOf(Kind kind, const Source& source);

/// The tag for the bag: number, bench name, how much is in it. Never whose it is.
papers::Tag tagOf(const Source& source);

/// Every card of the Bench with clock times, for the wall: what to do next, start by when, closes when.
/// No owners.
papers::Paper wallList(const bench::Board& board, const service::Studio& studio, const service::Manner& manner,
                       Instant now);

} // namespace mend::paperwork
