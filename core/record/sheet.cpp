#include "core/record/sheet.h"

#include <algorithm>
#include <charconv>

namespace mend::record {

namespace {

constexpr std::int64_t largestExact = 9007199254740992; // 2^53
constexpr int deepest = 16;

void writeText(std::string& out, std::string_view text)
{
    constexpr std::string_view digits = "0123456789abcdef";
    out += '"';
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (byte < 0x20) {
            out += "\\u00";
            out += digits[byte >> 4U];
            out += digits[byte & 15U];
        } else {
            out += c;
        }
    }
    out += '"';
}

void write(std::string& out, const Sheet& sheet)
{
    switch (sheet.kind) {
    case Sheet::Kind::Text:
        writeText(out, sheet.text);
        return;
    case Sheet::Kind::Number:
        if (sheet.number > largestExact || sheet.number < -largestExact) {
            writeText(out, std::to_string(sheet.number));
        } else {
            out += std::to_string(sheet.number);
        }
        return;
    case Sheet::Kind::Flag:
        out += sheet.flag ? "true" : "false";
        return;
    case Sheet::Kind::List:
        out += '[';
        for (const Sheet& item : sheet.items) {
            out += out.back() == '[' ? "" : ",";
            write(out, item);
        }
        out += ']';
        return;
    case Sheet::Kind::Group:
        break;
    }
    out += '{';
    for (const auto& [name, member] : sheet.members) {
        out += out.back() == '{' ? "" : ",";
        writeText(out, name);
        out += ':';
        write(out, member);
    }
    out += '}';
}

/// Takes a text apart from front to back; once something is wrong, everything is.
class SheetParser {
public:
    explicit SheetParser(std::string_view text) : m_rest(text) {}

    std::optional<Sheet> whole()
    {
        auto sheet = value(deepest);
        return sheet && m_rest.empty() ? sheet : std::nullopt;
    }

private:
    bool take(std::string_view word)
    {
        if (!m_rest.starts_with(word)) {
            return false;
        }
        m_rest.remove_prefix(word.size());
        return true;
    }

    std::optional<Sheet> value(int depth)
    {
        if (depth == 0 || m_rest.empty()) {
            return std::nullopt;
        }
        switch (m_rest.front()) {
        case '"': {
            auto held = text();
            return held ? std::optional(Sheet::ofText(std::move(*held))) : std::nullopt;
        }
        case '[':
            return list(depth);
        case '{':
            return group(depth);
        case 't':
            return take("true") ? std::optional(Sheet::ofFlag(true)) : std::nullopt;
        case 'f':
            return take("false") ? std::optional(Sheet::ofFlag(false)) : std::nullopt;
        default:
            return number();
        }
    }

    std::optional<Sheet> number()
    {
        std::int64_t value = 0;
        const auto [end, error] = std::from_chars(m_rest.data(), m_rest.data() + m_rest.size(), value);
        if (error != std::errc{}) {
            return std::nullopt;
        }
        m_rest.remove_prefix(static_cast<std::size_t>(end - m_rest.data()));
        return Sheet::ofNumber(value);
    }

    std::optional<std::string> text()
    {
        std::string out;
        if (!take("\"")) {
            return std::nullopt;
        }
        while (!m_rest.empty() && m_rest.front() != '"') {
            if (m_rest.front() != '\\') {
                out += m_rest.front();
                m_rest.remove_prefix(1);
            } else if (take("\\n")) {
                out += '\n';
            } else if (take("\\u00") && m_rest.size() >= 2) {
                int code = 0;
                const auto [end, error] = std::from_chars(m_rest.data(), m_rest.data() + 2, code, 16);
                if (error != std::errc{} || end != m_rest.data() + 2) {
                    return std::nullopt;
                }
                out += static_cast<char>(code);
                m_rest.remove_prefix(2);
            } else if (take("\\\"")) {
                out += '"';
            } else if (take("\\\\")) {
                out += '\\';
            } else {
                return std::nullopt;
            }
        }
        return take("\"") ? std::optional(out) : std::nullopt;
    }

    std::optional<Sheet> list(int depth)
    {
        Sheet sheet = Sheet::list();
        take("[");
        while (!take("]")) {
            if (!sheet.items.empty() && !take(",")) {
                return std::nullopt;
            }
            auto item = value(depth - 1);
            if (!item) {
                return std::nullopt;
            }
            sheet.items.push_back(std::move(*item));
        }
        return sheet;
    }

    std::optional<Sheet> group(int depth)
    {
        Sheet sheet;
        take("{");
        while (!take("}")) {
            if (!sheet.members.empty() && !take(",")) {
                return std::nullopt;
            }
            auto name = text();
            if (!name || !take(":")) {
                return std::nullopt;
            }
            auto member = value(depth - 1);
            if (!member) {
                return std::nullopt;
            }
            sheet.members.emplace_back(std::move(*name), std::move(*member));
        }
        return sheet;
    }

    std::string_view m_rest;
};

} // namespace

Sheet Sheet::ofText(std::string text)
{
    Sheet sheet;
    sheet.kind = Kind::Text;
    sheet.text = std::move(text);
    return sheet;
}

Sheet Sheet::ofNumber(std::int64_t number)
{
    Sheet sheet;
    sheet.kind = Kind::Number;
    sheet.number = number;
    return sheet;
}

Sheet Sheet::ofFlag(bool flag)
{
    Sheet sheet;
    sheet.kind = Kind::Flag;
    sheet.flag = flag;
    return sheet;
}

Sheet Sheet::list()
{
    Sheet sheet;
    sheet.kind = Kind::List;
    return sheet;
}

const Sheet* Sheet::member(std::string_view name) const
{
    const auto found = std::ranges::find(members, name, [](const auto& pair) { return std::string_view(pair.first); });
    return found == members.end() ? nullptr : &found->second;
}

std::string sheetText(const Sheet& sheet)
{
    std::string out;
    write(out, sheet);
    return out;
}

std::optional<Sheet> sheetFromText(std::string_view text) { return SheetParser(text).whole(); }

} // namespace mend::record
