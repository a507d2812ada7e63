#include "core/base/foldedtext.h"
#include "core/exchange/people.h"

#include <algorithm>
#include <istream>
#include <optional>

namespace mend::exchange {

namespace {

using record::ContactKind;

/// One line of a card, unfolded: a name, its parameters, its value as it stands.
struct CardLine {
    std::string name; ///< in capitals, without its group
    std::vector<std::pair<std::string, std::string>> parameters;
    std::string value;
    int line = 0;
};

std::string inCapitals(std::string_view text)
{
    std::string capitals(text);
    for (char& letter : capitals) {
        letter = letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
    }
    return capitals;
}

/// Gives the lines of a file, folded ones joined, none longer than is taken.
class CardLines {
public:
    explicit CardLines(std::istream& in) : m_in(in) { advance(); }

    std::optional<std::string> next(int& line)
    {
        if (!m_ahead) {
            return std::nullopt;
        }
        std::string joined = std::move(*m_ahead);
        line = m_line;
        advance();
        while (m_ahead && !m_ahead->empty() && (m_ahead->front() == ' ' || m_ahead->front() == '\t')) {
            append(joined, m_ahead->substr(1));
            advance();
        }
        while (isSoftBroken(joined) && m_ahead) { // quoted-printable of 2.1
            joined.pop_back();
            append(joined, *m_ahead);
            advance();
        }
        return joined;
    }
    bool wasCut() const { return m_cut; }

private:
    void append(std::string& to, const std::string& more)
    {
        const std::size_t room = longestListField > to.size() ? longestListField - to.size() : 0;
        to += more.substr(0, room);
        m_cut = m_cut || more.size() > room;
    }

    static bool isSoftBroken(const std::string& line)
    {
        if (!line.ends_with('=')) {
            return false;
        }
        const std::string head = inCapitals(line.substr(0, line.find(':')));
        return head.find("QUOTED-PRINTABLE") != std::string::npos;
    }

    /// The next line, cut at the longest that is taken; the rest of it is read over.
    void advance()
    {
        m_ahead.reset();
        std::string read;
        bool any = false;
        for (int c = m_in.get(); c != std::istream::traits_type::eof(); c = m_in.get()) {
            any = true;
            if (c == '\n') {
                break;
            }
            if (read.size() < longestListField) {
                read += static_cast<char>(c);
            } else {
                m_cut = true;
            }
        }
        if (any) {
            ++m_line;
            if (read.ends_with('\r')) {
                read.pop_back();
            }
            m_ahead = std::move(read);
        }
    }

    std::istream& m_in;
    std::optional<std::string> m_ahead;
    int m_line = 0;
    bool m_cut = false;
};

/// Takes a line apart: "item1.TEL;TYPE=CELL:+44 20". Empty where there is no colon.
std::optional<CardLine> lineOf(const std::string& text, int number)
{
    CardLine line;
    line.line = number;
    std::vector<std::string> parts(1);
    bool quoted = false;
    std::size_t at = 0;
    for (; at < text.size() && (text[at] != ':' || quoted); ++at) {
        quoted = text[at] == '"' ? !quoted : quoted;
        if (text[at] == ';' && !quoted) {
            parts.emplace_back();
        } else {
            parts.back() += text[at];
        }
    }
    if (at >= text.size()) {
        return std::nullopt;
    }
    line.value = text.substr(at + 1);
    const auto dot = parts.front().rfind('.');
    line.name = inCapitals(dot == std::string::npos ? parts.front() : parts.front().substr(dot + 1));
    for (std::size_t i = 1; i < parts.size(); ++i) {
        const auto equals = parts[i].find('=');
        std::string name = inCapitals(parts[i].substr(0, equals));
        // 2.1 writes "TEL;CELL" and ";QUOTED-PRINTABLE" without a name.
        equals == std::string::npos ? line.parameters.emplace_back("", std::move(name))
                                    : line.parameters.emplace_back(std::move(name), parts[i].substr(equals + 1));
    }
    return line;
}

bool says(const CardLine& line, const char* name, const char* value)
{
    return std::ranges::any_of(line.parameters, [&](const auto& each) {
        return (each.first == name || each.first.empty()) && inCapitals(each.second) == value;
    });
}

int hexDigit(char c)
{
    return c >= '0' && c <= '9'   ? c - '0'
           : c >= 'A' && c <= 'F' ? c - 'A' + 10
           : c >= 'a' && c <= 'f' ? c - 'a' + 10
                                  : -1;
}

std::string fromQuotedPrintable(const std::string& text)
{
    std::string bytes;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '=' && i + 2 < text.size() && hexDigit(text[i + 1]) >= 0 && hexDigit(text[i + 2]) >= 0) {
            bytes += static_cast<char>(hexDigit(text[i + 1]) * 16 + hexDigit(text[i + 2]));
            i += 2;
        } else {
            bytes += text[i];
        }
    }
    return bytes;
}

bool isUtf8(const std::string& text) { return utf8Of(charactersOf(text)) == text; }

std::string fromLatin1(const std::string& text)
{
    std::u32string characters;
    for (const char c : text) {
        characters += static_cast<char32_t>(static_cast<unsigned char>(c));
    }
    return utf8Of(characters);
}

/// The value as text: decoded, in UTF-8; what claims another character set than it has is taken as Latin-1.
std::string decoded(const CardLine& line, std::vector<std::string>& notes)
{
    std::string value = says(line, "ENCODING", "QUOTED-PRINTABLE") ? fromQuotedPrintable(line.value) : line.value;
    if (isUtf8(value) && !says(line, "CHARSET", "ISO-8859-1")) {
        return value;
    }
    if (!says(line, "CHARSET", "ISO-8859-1") && !says(line, "CHARSET", "WINDOWS-1252")) {
        notes.push_back(line.name + ": its letters were guessed");
    }
    return isUtf8(value) && std::ranges::any_of(value, [](char c) { return static_cast<unsigned char>(c) >= 0xC3; })
               ? value // says Latin-1, is UTF-8
               : fromLatin1(value);
}

/// The parts of a value that semicolons divide, each with its escapes undone.
std::vector<std::string> partsOf(const std::string& value)
{
    std::vector<std::string> parts(1);
    for (std::size_t i = 0; i < value.size(); ++i) {
        if (value[i] == '\\' && i + 1 < value.size()) {
            const char next = value[++i];
            parts.back() += next == 'n' || next == 'N' ? '\n' : next;
        } else if (value[i] == ';') {
            parts.emplace_back();
        } else {
            parts.back() += value[i];
        }
    }
    return parts;
}

std::string joinedParts(const std::vector<std::string>& parts, const char* between)
{
    std::string joined;
    for (const std::string& part : parts) {
        const std::string clean = cleanText(part, true);
        if (!clean.empty()) {
            joined += joined.empty() ? clean : between + clean;
        }
    }
    return joined;
}

/// Fills one card after the other.
class CardReader {
public:
    explicit CardReader(std::istream& in) : m_lines(in) {}

    PeopleList run()
    {
        int number = 0;
        while (auto text = m_lines.next(number)) {
            if (m_list.people.size() >= mostPeopleListed) {
                m_list.faults.push_back({number, "only the first 10,000 cards were read"});
                break;
            }
            if (const auto line = lineOf(*text, number)) {
                take(*line);
            } else if (m_depth > 0 && !cleanText(*text).empty()) {
                m_card.notes.push_back("line " + std::to_string(number) + " makes no sense");
            }
        }
        if (m_depth > 0) {
            m_list.faults.push_back({m_card.line, "the card has no end"});
            keep();
        }
        if (m_lines.wasCut()) {
            m_list.faults.push_back({0, "a field longer than a million letters was cut"});
        }
        return std::move(m_list);
    }

private:
    void take(const CardLine& line)
    {
        const bool isCard = inCapitals(cleanText(line.value)) == "VCARD";
        if (line.name == "BEGIN" && isCard) {
            ++m_depth;
            if (m_depth == 1) {
                m_card = {};
                m_card.line = line.line;
            } else if (m_depth == 2) {
                m_card.notes.emplace_back("a card inside the card was left out");
            }
        } else if (line.name == "END" && isCard) {
            if (m_depth == 1) {
                keep();
            }
            m_depth = std::max(0, m_depth - 1);
        } else if (m_depth == 1) {
            fill(line);
        }
    }

    void fill(const CardLine& line)
    {
        record::Customer& person = m_card.person;
        if (line.name == "FN") {
            person.name = joinedParts(partsOf(decoded(line, m_card.notes)), " ");
        } else if (line.name == "N") {
            m_structured = structuredName(partsOf(decoded(line, m_card.notes)));
        } else if (line.name == "TEL") {
            std::string text = decoded(line, m_card.notes);
            if (inCapitals(text.substr(0, 4)) == "TEL:") {
                text.erase(0, 4);
            }
            add(ContactKind::Phone, joinedParts(partsOf(text), " "));
        } else if (line.name == "EMAIL") {
            add(ContactKind::Mail, joinedParts(partsOf(decoded(line, m_card.notes)), " "));
        } else if (line.name == "ADR") {
            add(ContactKind::Post, joinedParts(partsOf(decoded(line, m_card.notes)), "\n"));
        } else if (line.name == "NOTE") {
            person.note = joinedParts({joinedParts(partsOf(decoded(line, m_card.notes)), ";")}, "");
        }
    }

    /// Family; given; more given; before; after: said as "given family".
    static std::string structuredName(const std::vector<std::string>& parts)
    {
        std::vector<std::string> order;
        for (const std::size_t at : {std::size_t{3}, std::size_t{1}, std::size_t{2}, std::size_t{0}, std::size_t{4}}) {
            if (at < parts.size()) {
                order.push_back(parts[at]);
            }
        }
        return joinedParts(order, " ");
    }

    void add(ContactKind kind, std::string text)
    {
        if (!text.empty()) {
            m_card.person.more.push_back({kind, std::move(text)});
        }
    }

    void keep()
    {
        record::Customer& person = m_card.person;
        person.name = cleanText(person.name.empty() ? m_structured : person.name);
        m_structured.clear();
        if (!person.more.empty()) { // the first phone, else whatever comes first, is the one contact
            const auto phone = std::ranges::find(person.more, ContactKind::Phone, &record::ContactWay::kind);
            const auto first = phone == person.more.end() ? person.more.begin() : phone;
            person.contact = first->text;
            person.more.erase(first);
        }
        if (person.name.empty()) {
            m_list.faults.push_back({m_card.line, "the card has no name"});
        } else {
            m_list.people.push_back(std::move(m_card));
        }
        m_card = {};
    }

    CardLines m_lines;
    PeopleList m_list;
    ListedPerson m_card;
    std::string m_structured;
    int m_depth = 0;
};

} // namespace

PeopleList readVcards(std::istream& in) { return CardReader(in).run(); }

} // namespace mend::exchange
