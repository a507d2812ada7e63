#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mend {

/// A point in time, UTC, to the millisecond. Local time exists only at the edge.
using Instant = std::chrono::sys_time<std::chrono::milliseconds>;
/// A stretch of time.
using Span = std::chrono::milliseconds;

/// Where a moment stands on the machine's own clock, which no one can set: the
/// id of this boot and the time since it, time asleep included.
struct BootMark {
    std::string bootId;
    std::chrono::nanoseconds sinceBoot{0};
    bool operator==(const BootMark&) const = default;
};

/// One reading of both clocks at once.
struct Moment {
    Instant utc;
    BootMark boot;
    bool operator==(const Moment&) const = default;
};

/// A stretch between two points; `from` is never after `to`.
template <class T> struct Range {
    T from{};
    T to{};
    bool operator==(const Range&) const = default;
};
using InstantRange = Range<Instant>;
using SpanRange = Range<Span>;

/// RFC 3339 in UTC with milliseconds: 24 characters, so that text order is time order.
std::string toRfc3339(Instant instant);

/// Reads what `toRfc3339` writes, and nothing looser: 24 characters, UTC, a day that
/// exists, years 1900 to 2200. A leap second, :60, is taken as :59.999. Empty otherwise.
std::optional<Instant> fromRfc3339(std::string_view text);

} // namespace mend
