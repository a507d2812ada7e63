#include "core/base/clockstep.h"

#include <algorithm>

namespace mend {

namespace {
constexpr Span tolerated = std::chrono::seconds(2);
}

std::optional<Span> clockStep(const Moment& before, const Moment& now)
{
    if (before.boot.bootId != now.boot.bootId) {
        return std::nullopt;
    }
    const Span step = (now.utc - before.utc) - elapsed(before, now);
    return std::chrono::abs(step) > tolerated ? std::optional(step) : std::nullopt;
}

Span elapsed(const Moment& before, const Moment& now)
{
    if (before.boot.bootId == now.boot.bootId) {
        return std::chrono::duration_cast<Span>(now.boot.sinceBoot - before.boot.sinceBoot);
    }
    return std::max(Span{0}, now.utc - before.utc);
}

} // namespace mend
