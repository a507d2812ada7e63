#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace mend::plan {

/// Whole minutes since a UTC midnight ("minute 0"), or a number of them. Steps, lags and hours
/// all count in these; a valid problem keeps every figure within +-`farthest`, so that sums of a
/// few of them never overflow.
using Minute = std::int32_t;
constexpr Minute farthest = 100'000'000;

/// Steps, pieces and people are known by their place in the lists below.
constexpr std::size_t slot(int index) { return static_cast<std::size_t>(index); }

/// Half open: holds `from`, not `to`.
struct Stretch {
    Minute from = 0;
    Minute to = 0;
    bool operator==(const Stretch&) const = default;
};

/// Something of which there are only so many: cabinet slots, the flame-safe spot.
struct Resource {
    std::string id;
    int capacity = 1;
    bool operator==(const Resource&) const = default;
};

/// So much of a resource (an index into Problem::resources), held all the while.
struct Use {
    int resource = 0;
    int amount = 1;
    bool operator==(const Use&) const = default;
};

/// A pot on the bench: when it was promised, and how much a late day of it weighs.
struct Piece {
    std::string id;
    std::int64_t weight = 0; ///< >= 0
    Minute promised = 0;     ///< may be past; a promise is never a reason for "no plan"
    bool operator==(const Piece&) const = default;
};

/// One thing to do to a piece, or one that goes by itself (hands == false).
struct Step {
    std::string id;
    int piece = 0;
    std::string kind; ///< a label only
    Minute duration = 1;
    bool hands = true; ///< one person, the whole of it inside one stretch of bench hours
    std::vector<Use> uses;
    std::vector<std::string> tags;
    std::optional<Minute> earliest;  ///< start at or after
    std::optional<Minute> latestEnd; ///< end at or before
    std::optional<Minute> started;   ///< history: where it is set the step is running or done
    std::optional<int> person;       ///< who is at it, of a started step with hands
    bool operator==(const Step&) const = default;
};

/// gap = start(to) - end(from); least <= gap <= most. A `most` is a window that closes.
struct Lag {
    int from = 0;
    int to = 0;
    Minute least = 0;
    std::optional<Minute> most;
    bool operator==(const Lag&) const = default;
};

/// From the end of one step to the start of another something is held: a slot of the humid
/// box, air that must stay free of dust. Its lag has a `least` of 1 or more.
struct Wait {
    std::string id;
    int from = 0;
    int to = 0;
    std::vector<Use> uses;
    std::vector<std::string> tags;
    bool operator==(const Wait&) const = default;
};

/// What is to be done at a bench, from `now` on: the format bench-plan/1 as values.
struct Problem {
    std::string name;
    std::string note;
    Minute now = 0;
    Minute horizon = 1; ///< what has not started yet must end at or before it
    std::vector<std::string> people;
    std::vector<Stretch> open; ///< increasing, not touching
    std::vector<Resource> resources;
    std::vector<Piece> pieces;
    std::vector<Step> steps;
    std::vector<Lag> lags; ///< at most one for each ordered pair
    std::vector<Wait> waits;
    std::vector<std::pair<std::string, std::string>> incompatible; ///< tags that never overlap
    bool operator==(const Problem&) const = default;
};

} // namespace mend::plan
