#pragma once

#include "core/bench/benchpicture.h"

#include <optional>

namespace mend::bench {

/// How warm a piece, or everything in one cabinet, may get: the lowest limit of any
/// material in it at its age, and whose that is.
struct HeatCap {
    Temperature warmest;
    PieceId piece;
    const rules::Material* material = nullptr; ///< points into the rule book
};

/// The limit that rules a material at that age; empty where none does.
std::optional<Temperature> heatLimitOf(const rules::Material& material, Span age);

/// Of one piece, with what `starting` is about to put into it; empty where nothing sets a limit.
std::optional<HeatCap> heatCapOf(const Contents& contents, const BenchPicture& picture,
                                 const rules::Stage* starting = nullptr);

/// Of everything that lies in a place and the piece that is put in: one cabinet, one temperature.
std::optional<HeatCap> heatCapOf(PlaceId place, const Contents* putIn, const BenchPicture& picture,
                                 const rules::Stage* starting = nullptr);

/// What a place would have to be set to for the warm cure of a stage: the coolest that the trade gives, where the
/// place is a cabinet that nobody read or that stands cooler. Empty: it stays as it is.
std::optional<Temperature> aboutToBeSetTo(const rules::Stage& stage, PlaceId place, const BenchPicture& picture);

} // namespace mend::bench
