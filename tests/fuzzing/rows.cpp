// Random exports: a row that is taken is written and read again the same.
#include "core/exchange/eventfields.h"
#include "core/exchange/rowfile.h"

#include <cstdint>
#include <cstdlib>
#include <sstream>

using namespace mend;

namespace {

template <class T> void tryAs(const record::Sheet& sheet)
{
    if (const auto read = record::fromSheet<T>(sheet)) {
        const auto again = record::sheetFromText(record::sheetText(record::sheetOf(*read)));
        if (!again || record::fromSheet<T>(*again) != read) {
            std::abort();
        }
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    std::istringstream in(std::string(reinterpret_cast<const char*>(data), size));
    exchange::RowFileReader reader(in, exchange::wholeExport);
    for (;;) {
        const auto row = reader.next();
        if (!row || !row.value()) {
            return 0;
        }
        const record::Sheet& sheet = row.value()->parts;
        tryAs<record::Customer>(sheet);
        tryAs<record::Piece>(sheet);
        tryAs<record::Visit>(sheet);
        tryAs<record::PhotoNote>(sheet);
        tryAs<bench::Event>(sheet);
        record::sheetFromText(record::sheetText(sheet));
    }
}
