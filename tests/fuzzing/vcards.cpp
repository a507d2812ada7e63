// Random vCards: whatever comes out is within bounds, clean, and has a name.
#include "core/base/foldedtext.h"
#include "core/exchange/people.h"

#include <cstdint>
#include <cstdlib>
#include <sstream>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    std::istringstream in(std::string(reinterpret_cast<const char*>(data), size));
    for (const auto& listed : mend::exchange::readVcards(in).people) {
        const std::string& name = listed.person.name;
        if (name.empty() || mend::cleanText(name) != name || name.size() > mend::exchange::longestListField * 4) {
            std::abort();
        }
    }
    return 0;
}
