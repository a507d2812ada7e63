// Random photos: whatever is said of one is within bounds.
#include "core/exchange/picturefile.h"

#include <cstdint>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const auto found = mend::exchange::lookAtPicture({reinterpret_cast<const char*>(data), size});
    if (found && (found.value().width < 0 || found.value().width > 65535 || found.value().height > 65535 ||
                  found.value().heldAtOnce < 0)) {
        std::abort();
    }
    return 0;
}
