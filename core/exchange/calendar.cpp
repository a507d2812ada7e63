#include "core/exchange/calendar.h"

#include <algorithm>
#include <ostream>

namespace mend::exchange {

namespace {

constexpr std::size_t longestLine = 75; // octets, without the line end

/// Folded behind at most 75 octets, never inside a character.
void writeLine(std::ostream& out, const std::string& line)
{
    std::size_t used = 0;
    for (std::size_t at = 0; at < line.size();) {
        std::size_t length = 1;
        while (at + length < line.size() && (static_cast<unsigned char>(line[at + length]) & 0xC0U) == 0x80U) {
            ++length;
        }
        if (used + length > longestLine) {
            out << "\r\n ";
            used = 1;
        }
        out << line.substr(at, length);
        used += length;
        at += length;
    }
    out << "\r\n";
}

std::string escaped(std::string_view text)
{
    std::string out;
    for (const char c : text) {
        if (c == '\n') {
            out += "\\n";
        } else if (c == ',' || c == ';' || c == '\\') {
            out += '\\';
            out += c;
        } else if (static_cast<unsigned char>(c) >= 0x20) {
            out += c;
        }
    }
    return out;
}

/// "20270228" or "20270228T093000Z"
std::string basic(std::string text)
{
    std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
    return text;
}

} // namespace

void writeCalendar(std::ostream& out, std::span<const CalendarDay> days, Instant written)
{
    const std::string stamp = basic(toRfc3339(written).substr(0, 19)) + "Z";
    writeLine(out, "BEGIN:VCALENDAR");
    writeLine(out, "VERSION:2.0");
    writeLine(out, "PRODID:-//Mendbench//Pieces//EN");
    for (const CalendarDay& day : days) {
        writeLine(out, "BEGIN:VEVENT");
        writeLine(out, "UID:" + escaped(day.key) + "@mendbench.invalid");
        writeLine(out, "DTSTAMP:" + stamp);
        writeLine(out, "DTSTART;VALUE=DATE:" + basic(dayText(day.day)));
        writeLine(out, "DTEND;VALUE=DATE:" + basic(dayText(plusDays(day.day, 1)))); // the day after: it is exclusive
        writeLine(out, "SUMMARY:" + escaped(day.words));
        writeLine(out, "TRANSP:TRANSPARENT");
        writeLine(out, "END:VEVENT");
    }
    writeLine(out, "END:VCALENDAR");
}

} // namespace mend::exchange
