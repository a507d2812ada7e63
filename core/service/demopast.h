#pragma once

#include "core/base/time.h"
#include "core/bench/state.h"
#include "core/record/visit.h"

#include <vector>

namespace mend::service {

/// Three years of an invented studio, besides what lies on its bench just now: people, pieces that came, were
/// mended and went, some of them twice; a few that wait to be collected, for their owner's word, or are late.
struct DemoPast {
    std::vector<record::Customer> people;
    std::vector<record::Piece> pieces;
    std::vector<record::Visit> visits; ///< of these pieces, and of those on the bench
    std::vector<bench::Event> events;  ///< numbered on after those of the bench, in the order of telling
};

/// How many people and pieces the studio has known, those on the bench among them.
constexpr int demoPeople = 260;
constexpr int demoPieces = 400;

/// The same past for the same seed and moment. `bench`: the roster that lies on the bench now; its pieces get a
/// visit and what was promised of them. All names are invented, all phone numbers set aside for fiction.
DemoPast demoPast(const bench::Roster& bench, EventId last, const rules::RuleBook& book, Instant now, unsigned seed);

} // namespace mend::service
