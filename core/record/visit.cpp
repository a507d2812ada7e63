#include "core/record/visit.h"

#include <numeric>

namespace mend::record {

int accessoriesOf(const Visit& visit)
{
    return std::accumulate(visit.accessories.begin(), visit.accessories.end(), 0,
                           [](int sum, const Accessory& each) { return sum + each.count; });
}

} // namespace mend::record
