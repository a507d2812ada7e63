// Random tables: what is read is written and read again the same.
#include "core/exchange/csv.h"
#include "core/exchange/people.h"

#include <cstdint>
#include <cstdlib>
#include <sstream>

using Rows = std::vector<std::vector<std::string>>;

namespace {

Rows rowsIn(const std::string& text)
{
    std::istringstream in(text);
    Rows rows;
    mend::exchange::readCsv(in, [&](const std::vector<std::string>& row, std::int64_t) { rows.push_back(row); });
    return rows;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string text(reinterpret_cast<const char*>(data), size);
    const Rows rows = rowsIn(text);
    std::ostringstream out;
    mend::exchange::CsvWriter csv(out);
    for (const auto& row : rows) {
        for (const std::string& field : row) {
            csv.text(field);
        }
        csv.endRow();
    }
    if (rowsIn(out.str()) != rows) {
        std::abort();
    }
    std::istringstream in(text);
    mend::exchange::readPeopleTable(in);
    return 0;
}
