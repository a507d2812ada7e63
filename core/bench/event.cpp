#include "core/bench/event.h"

#include <tuple>

namespace mend::bench {

bool happenedBefore(const Event& a, const Event& b)
{
    return std::tie(a.happened, a.recorded, a.id) < std::tie(b.happened, b.recorded, b.id);
}

} // namespace mend::bench
