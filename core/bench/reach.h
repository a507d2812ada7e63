#pragma once

#include "core/bench/window.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// What one piece gets out of a mix.
struct ReachShare {
    PieceId piece;
    StageInstance stage; ///< the first of its runs that it goes on
    int runs = 1;        ///< whole runs (sets, passes) of this piece; 0: only a part of the first
    Length chip{};       ///< of it, laid from this mix
    Length seam{};
    int joins = 0; ///< joins closed from this mix, where the stage joins
    bool operator==(const ReachShare&) const = default;
};

/// A window too short for an alarm, such as placing a join, at the present heat.
struct CountedReach {
    Span goal{0};       ///< at the rule's reference
    Span goalNow{0};    ///< at the heat of the bench; never longer than `goal`
    bool isHot = false; ///< shorter than the rule allows without changing something
    std::string advice; ///< what to change then
    int joins = 0;      ///< in one mix as planned
    int joinsNow = 0;   ///< as many of them as the shorter time allows, at least one
    bool operator==(const CountedReach&) const = default;
};

/// How far one mix goes with one pair of hands before it stiffens: said before it is mixed, so that nothing is laid
/// that cannot be finished.
struct Reach {
    std::string material;
    std::optional<Temperature> temperature; ///< of the bench, as closings take it; empty: no reading, the rule's own
    std::optional<Span> life;               ///< until it is stiff, from mixing; empty: the material has no pot life
    std::optional<Length> chipInOne;        ///< if only chips are filled: the longest run that can still be finished
    std::optional<Length> seamInOne;        ///< the same for seams
    std::string finish;                     ///< what has to fit in as well, as it is spoken: "Wipe"; empty: nothing
    std::vector<ReachShare> shares;         ///< what can go on now, in the order to lay it
    std::vector<PieceId> nextMix;           ///< ready as well, but beyond what this mix can do
    std::optional<CountedReach> counted;
    bool operator==(const Reach&) const = default;
};

/// Materials that are mixed and that a piece in hand still needs, by key.
std::vector<std::string> mixesWanted(const BenchFold& bench, const rules::RuleBook& book);

/// How far a mix of `material`, begun at `now`, would go over the pieces that stand ready for it, in the order in
/// which they became ready. All of it is laid first, then finished in the same order; a run fits if every stage's
/// hands are off before its closing at the present heat (closings at the fast end of the law, never later than the
/// figure: see `cure::forecastClose`). The fixed minutes of a stage that takes a mix made before it are making ready
/// and come before the mixing; where the mixing is part of the stage they count.
/// The seconds of a counted stage are shortened by the middle of the band (the trade's own check: 75 s at 23 C are
/// 50 s at 28 C). `windows` are those of the bench at `now`.
Reach reachOf(const std::string& material, const BenchFold& bench, const std::vector<Window>& windows,
              const rules::RuleBook& book, Instant now);

} // namespace mend::bench
