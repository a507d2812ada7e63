#include "core/exchange/rowfile.h"

#include "core/exchange/placedjson.h"

#include <cmath>
#include <istream>
#include <ostream>

namespace mend::exchange {

using record::Sheet;

namespace {

constexpr auto endKind = "end";

Sheet headOf(const std::string& format)
{
    Sheet head;
    head.members.emplace_back("format", Sheet::ofText(format));
    head.members.emplace_back("version", Sheet::ofNumber(exportVersion));
    return head;
}

/// A sheet holds whole numbers, texts, flags, lists and groups; where something else stands, its place.
std::optional<JsonFault> fill(const JsonNode& node, Sheet& sheet)
{
    switch (node.kind) {
    case JsonNode::Kind::Text:
        sheet = Sheet::ofText(node.text);
        return std::nullopt;
    case JsonNode::Kind::Flag:
        sheet = Sheet::ofFlag(node.flag);
        return std::nullopt;
    case JsonNode::Kind::Number:
        sheet = Sheet::ofNumber(static_cast<std::int64_t>(node.number));
        return node.number == std::trunc(node.number)
                   ? std::nullopt
                   : std::optional(JsonFault{node.place, "", "a number that is not whole"});
    case JsonNode::Kind::List:
        sheet = Sheet::list();
        for (const JsonNode& item : node.items) {
            if (auto fault = fill(item, sheet.items.emplace_back())) {
                return fault;
            }
        }
        return std::nullopt;
    case JsonNode::Kind::Object:
        sheet = Sheet{};
        for (const JsonMember& member : node.members) {
            if (auto fault = fill(member.value, sheet.members.emplace_back(member.key, Sheet{}).second)) {
                return fault;
            }
        }
        return std::nullopt;
    case JsonNode::Kind::Null:
        break;
    }
    return JsonFault{node.place, "", "nothing stands here"};
}

/// One line, at most so long; false at the end of the file.
bool readLine(std::istream& in, std::string& line, bool& tooLong)
{
    line.clear();
    int c = in.get();
    if (c == std::istream::traits_type::eof()) {
        return false;
    }
    for (; c != std::istream::traits_type::eof() && c != '\n'; c = in.get()) {
        if (line.size() >= PlacedJson::longest) {
            tooLong = true;
            return true;
        }
        line += static_cast<char>(c);
    }
    return true;
}

} // namespace

RowFileWriter::RowFileWriter(std::ostream& out, const std::string& format) : m_out(out)
{
    m_out << "[\n" << record::sheetText(headOf(format));
}

void RowFileWriter::write(const FileRow& row)
{
    Sheet element;
    element.members.emplace_back(row.kind, row.parts);
    m_out << ",\n" << record::sheetText(element);
    ++m_rows;
}

void RowFileWriter::end()
{
    m_out << ",\n{\"" << endKind << "\":{\"rows\":" << std::to_string(m_rows) << "}}\n]\n";
    m_out.flush();
}

RowFileReader::RowFileReader(std::istream& in, std::string format) : m_in(in), m_format(std::move(format)) {}

Fault RowFileReader::fault(int column, const std::string& text, FaultKind kind) const
{
    return {kind, "line " + std::to_string(m_line) + ", column " + std::to_string(column) + ": " + text};
}

Result<std::optional<FileRow>> RowFileReader::element()
{
    std::string line;
    bool tooLong = false;
    ++m_line;
    if (!readLine(m_in, line, tooLong)) {
        return fault(1, "the file ends too early");
    }
    if (tooLong) {
        return fault(1, "this line is longer than 4 MB");
    }
    if (line.ends_with('\r')) {
        line.pop_back();
    }
    const bool isLast = line == "]";
    if (isLast || line == "[") {
        return isLast ? std::optional<FileRow>{} : std::optional(FileRow{"[", {}});
    }
    if (line.ends_with(',')) {
        line.pop_back();
    }
    const PlacedJson json = readPlacedJson(line);
    if (!json.root) {
        const JsonFault& first = json.faults.front();
        return fault(first.place.column, first.text);
    }
    Sheet sheet;
    if (const auto wrong = fill(*json.root, sheet)) {
        return fault(wrong->place.column, wrong->text);
    }
    if (sheet.kind != Sheet::Kind::Group || sheet.members.empty()) {
        return fault(1, "a row is an object with one name");
    }
    if (!m_begun) {
        return std::optional(FileRow{"head", std::move(sheet)});
    }
    if (sheet.members.size() != 1) {
        return fault(1, "a row is an object with one name");
    }
    return std::optional(FileRow{sheet.members.front().first, std::move(sheet.members.front().second)});
}

std::optional<Fault> RowFileReader::takeHead(const FileRow& row) const
{
    const Sheet* const format = row.parts.member("format");
    const Sheet* const version = row.parts.member("version");
    if (!format || format->text != m_format || !version || version->kind != Sheet::Kind::Number) {
        return fault(1, "this is no " + m_format, FaultKind::Foreign);
    }
    if (version->number > exportVersion) {
        return fault(1, "written by a later version", FaultKind::Newer);
    }
    return std::nullopt;
}

Result<std::optional<FileRow>> RowFileReader::next()
{
    if (m_ended) {
        return std::optional<FileRow>{};
    }
    if (!m_begun) {
        const auto bracket = element();
        if (!bracket || !bracket.value() || bracket.value()->kind != "[") {
            return fault(1, "this is no " + m_format, FaultKind::Foreign);
        }
        const auto head = element();
        if (!head || !head.value() || head.value()->kind != "head") {
            return fault(1, "this is no " + m_format, FaultKind::Foreign);
        }
        if (const auto wrong = takeHead(*head.value())) {
            return *wrong;
        }
        m_begun = true;
    }
    auto row = element();
    if (!row) {
        return row;
    }
    if (!row.value() || row.value()->kind == "[") {
        return fault(1, "the row that counts all others is missing");
    }
    if (row.value()->kind != endKind) {
        ++m_rows;
        return row;
    }
    const Sheet* const count = row.value()->parts.member("rows");
    if (!count || count->kind != Sheet::Kind::Number || count->number != m_rows) {
        return fault(1, "rows are missing: it should have " + (count ? std::to_string(count->number) : "others"));
    }
    const auto bracket = element();
    if (!bracket || bracket.value()) {
        return bracket ? fault(1, "something stands behind the last row") : bracket.fault();
    }
    m_ended = true;
    return std::optional<FileRow>{};
}

} // namespace mend::exchange
