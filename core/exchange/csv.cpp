#include "core/exchange/csv.h"

#include "core/base/foldedtext.h"

#include <istream>
#include <ostream>

namespace mend::exchange {

namespace {

/// What a spreadsheet takes for the beginning of a formula.
bool looksLikeFormula(std::string_view field)
{
    constexpr std::string_view first("=+-@\t\r\0", 7);
    return !field.empty() && first.find(field.front()) != std::string_view::npos;
}

/// A field that begins so was either guarded or begins with apostrophes of its own, of which one more was put before.
bool isGuarded(std::string_view field)
{
    return field.size() > 1 && field.front() == '\'' && (looksLikeFormula(field.substr(1)) || field[1] == '\'');
}

class CsvReader {
public:
    CsvReader(std::istream& in, const std::function<void(const std::vector<std::string>&, std::int64_t)>& row,
              const CsvLimits& limits)
        : m_in(in), m_row(row), m_limits(limits)
    {
    }

    std::vector<CsvFault> run()
    {
        if (!skipMark()) {
            return {{0, "this is UTF-16; save the table as UTF-8"}};
        }
        while (m_fault.empty() && m_in.peek() != std::istream::traits_type::eof()) {
            readRow();
        }
        if (m_in.bad()) {
            m_fault = "the file could not be read to its end";
        }
        return m_fault.empty() ? std::vector<CsvFault>() : std::vector<CsvFault>{{m_number, m_fault}};
    }

private:
    bool skipMark()
    {
        const int first = m_in.peek();
        if (first == 0xFE || first == 0xFF) {
            return false;
        }
        if (first == 0xEF) {
            std::string mark(3, '\0');
            m_in.read(mark.data(), 3);
            if (mark != "\xef\xbb\xbf") {
                m_fields.back() = mark.substr(0, static_cast<std::size_t>(m_in.gcount()));
            }
        }
        return true;
    }

    void readRow()
    {
        ++m_number;
        if (m_number > m_limits.rows) {
            m_fault = "more rows than can be taken at once";
            return;
        }
        bool quoted = !m_fields.back().empty() && m_fields.back() == "\"";
        for (int c = m_in.get(); m_fault.empty(); c = m_in.get()) {
            if (c == std::istream::traits_type::eof()) {
                m_fault = quoted ? "a quote is never closed" : m_fault;
                break;
            }
            const char letter = static_cast<char>(c);
            if (quoted) {
                quoted = !closesQuote(letter);
            } else if (letter == '"' && m_fields.back().empty() && !m_wasQuoted) {
                quoted = m_wasQuoted = true;
            } else if (letter == ',') {
                startField();
            } else if (letter == '\n' || letter == '\r') {
                if (letter == '\r' && m_in.peek() == '\n') {
                    m_in.get();
                }
                break;
            } else {
                add(letter);
            }
        }
        endRow();
    }

    /// True at the quote that closes a field; a doubled one stands for itself.
    bool closesQuote(char letter)
    {
        if (letter != '"') {
            add(letter);
            return false;
        }
        if (m_in.peek() == '"') {
            m_in.get();
            add('"');
            return false;
        }
        return true;
    }

    void add(char letter)
    {
        if (letter == '\0') {
            m_fault = "a NUL stands in it";
        } else if (m_fields.back().size() >= m_limits.field) {
            m_fault = "a field is too long";
        } else {
            m_fields.back() += letter;
        }
    }

    void startField()
    {
        m_wasQuoted = false;
        if (m_fields.size() >= m_limits.columns) {
            m_fault = "it has too many columns";
        } else {
            m_fields.emplace_back();
        }
    }

    void endRow()
    {
        const bool isEmpty = m_fields.size() == 1 && m_fields.front().empty() && !m_wasQuoted;
        if (m_fault.empty() && !isEmpty) {
            judge();
        }
        m_fields.assign(1, {});
        m_wasQuoted = false;
    }

    void judge()
    {
        m_width = m_width == 0 ? m_fields.size() : m_width;
        if (m_fields.size() != m_width) {
            m_fault = "it has " + std::to_string(m_fields.size()) + " fields instead of " + std::to_string(m_width);
            return;
        }
        for (std::string& field : m_fields) {
            if (utf8Of(charactersOf(field)) != field) {
                m_fault = "it is not written in UTF-8";
                return;
            }
            if (isGuarded(field)) {
                field.erase(0, 1);
            }
        }
        m_row(m_fields, m_number);
    }

    std::istream& m_in;
    const std::function<void(const std::vector<std::string>&, std::int64_t)>& m_row;
    CsvLimits m_limits;
    std::vector<std::string> m_fields{1};
    bool m_wasQuoted = false;
    std::size_t m_width = 0;
    std::int64_t m_number = 0;
    std::string m_fault;
};

} // namespace

CsvWriter::CsvWriter(std::ostream& out, bool byteOrderMark) : m_out(out)
{
    if (byteOrderMark) {
        m_out << "\xef\xbb\xbf";
    }
}

void CsvWriter::separate()
{
    if (!m_first) {
        m_out << ',';
    }
    m_first = false;
}

void CsvWriter::text(std::string_view field)
{
    separate();
    std::string guarded;
    if (looksLikeFormula(field) || isGuarded(field)) {
        guarded = "'";
    }
    guarded += field;
    if (guarded.find_first_of(",\"\r\n") == std::string::npos && !guarded.empty()) {
        m_out << guarded;
        return;
    }
    m_out << '"'; // an empty text, too: a row of one empty field is else no row
    for (const char letter : guarded) {
        m_out << letter;
        if (letter == '"') {
            m_out << '"';
        }
    }
    m_out << '"';
}

void CsvWriter::number(std::int64_t field)
{
    separate();
    m_out << std::to_string(field);
}

void CsvWriter::endRow()
{
    m_out << "\r\n";
    m_first = true;
}

std::vector<CsvFault> readCsv(std::istream& in,
                              const std::function<void(const std::vector<std::string>&, std::int64_t)>& row,
                              const CsvLimits& limits)
{
    return CsvReader(in, row, limits).run();
}

} // namespace mend::exchange
