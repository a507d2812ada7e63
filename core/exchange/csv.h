#pragma once

#include "core/base/result.h"

#include <functional>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace mend::exchange {

/// Writes a table that any spreadsheet opens: RFC 4180, lines end with CR LF, fields with commas, quotes or line
/// ends stand in quotes, UTF-8, comma and decimal point whatever the locale. A text that a spreadsheet would run as
/// a formula gets an apostrophe before it (CWE-1236), numbers stay numbers.
class CsvWriter {
public:
    explicit CsvWriter(std::ostream& out, bool byteOrderMark = false);
    void text(std::string_view field);
    void number(std::int64_t field);
    void endRow();

private:
    void separate();
    std::ostream& m_out;
    bool m_first = true;
};

/// What stood in the way of reading a table.
struct CsvFault {
    std::int64_t row = 0; ///< counts from 1, the header too; 0: the table as a whole
    std::string text;
    bool operator==(const CsvFault&) const = default;
};

/// How much a table may hold; what is beyond is refused with its row, so that memory stays bounded.
struct CsvLimits {
    std::size_t columns = 1'000;
    std::size_t field = 1'000'000;
    std::int64_t rows = 1'000'000;
};

/// Reads a table row by row: LF, CR or CR LF, a byte order mark is passed over, an apostrophe that `CsvWriter` put
/// before a formula is taken away. Every row has as many fields as the first. A NUL, bytes that are no UTF-8,
/// UTF-16, a quote left open, a row of another width: a fault, and reading ends there. Empty rows are passed over.
/// `row` gets the fields and the row's number.
std::vector<CsvFault> readCsv(std::istream& in,
                              const std::function<void(const std::vector<std::string>&, std::int64_t)>& row,
                              const CsvLimits& limits = {});

} // namespace mend::exchange
