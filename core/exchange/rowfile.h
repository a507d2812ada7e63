#pragma once

#include "core/base/result.h"
#include "core/record/sheet.h"

#include <iosfwd>
#include <optional>
#include <string>

namespace mend::exchange {

/// One row of an export: what it is ("piece", "event") and its parts by name.
struct FileRow {
    std::string kind;
    record::Sheet parts;
    bool operator==(const FileRow&) const = default;
};

/// The version of the export that is written and read; see resources/schema/EXPORT.md.
constexpr int exportVersion = 1;
inline constexpr auto wholeExport = "mendbench-export";  ///< everything in a bench file
inline constexpr auto personExport = "mendbench-person"; ///< everything of one person

/// Writes an export: one JSON array (RFC 8259), each element on a line of its own, so that neither writing nor
/// reading a large one takes much memory. The first element names format and version, the last one counts the rows.
class RowFileWriter {
public:
    RowFileWriter(std::ostream& out, const std::string& format);
    void write(const FileRow& row);
    void end();

private:
    std::ostream& m_out;
    std::int64_t m_rows = 0;
};

/// Reads what `RowFileWriter` writes, row by row. Refused with line and column: anything that is no JSON, a key twice,
/// more levels than 32, numbers that are not whole or that no double holds, half of a surrogate pair, a line longer
/// than 4 MB, an element of more than one kind, a file of another format or a later version, one that ends too early or
/// counts other rows than it has.
class RowFileReader {
public:
    RowFileReader(std::istream& in, std::string format);
    /// The next row; empty at the end. BadInput with "line 7, column 3: ..."; Newer where the version is.
    Result<std::optional<FileRow>> next();
    int line() const { return m_line; }

private:
    Fault fault(int column, const std::string& text, FaultKind kind = FaultKind::BadInput) const;
    Result<std::optional<FileRow>> element();
    std::optional<Fault> takeHead(const FileRow& row) const;

    std::istream& m_in;
    std::string m_format;
    int m_line = 0;
    std::int64_t m_rows = 0;
    bool m_begun = false;
    bool m_ended = false;
};

} // namespace mend::exchange
