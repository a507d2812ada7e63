#include "core/record/hours.h"

#include <algorithm>
#include <charconv>
#include <cstdio>
#include <sstream>
#include <utility>

namespace mend::record {

namespace {

using std::chrono::minutes;
using std::chrono::year_month_day;

constexpr std::array<std::string_view, 7> weekdayWords{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};

std::string clockText(minutes time)
{
    char text[8];
    std::snprintf(text, sizeof text, "%02d:%02d", static_cast<int>(time.count() / 60) % 100,
                  static_cast<int>(time.count() % 60));
    return text;
}

std::string partsText(const std::vector<DayPart>& parts)
{
    std::string text;
    for (const DayPart& part : parts) {
        text += ' ' + clockText(part.from) + '-' + clockText(part.to);
    }
    return parts.empty() ? " closed" : text;
}

std::optional<int> number(std::string_view digits)
{
    int value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return error == std::errc{} && end == digits.data() + digits.size() ? std::optional(value) : std::nullopt;
}

std::optional<minutes> clockFrom(std::string_view text)
{
    if (text.size() != 5 || text[2] != ':') {
        return std::nullopt;
    }
    const auto hour = number(text.substr(0, 2));
    const auto minute = number(text.substr(3));
    const bool holds = hour && minute && *hour >= 0 && *minute >= 0 && *minute < 60 && *hour * 60 + *minute <= 24 * 60;
    return holds ? std::optional(minutes(*hour * 60 + *minute)) : std::nullopt;
}

std::optional<year_month_day> dayFrom(std::string_view text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const auto year = number(text.substr(0, 4));
    const auto month = number(text.substr(5, 2));
    const auto day = number(text.substr(8));
    if (!year || !month || !day || *month < 1 || *day < 1) {
        return std::nullopt;
    }
    const year_month_day date(std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                              std::chrono::day(static_cast<unsigned>(*day)));
    return date.ok() ? std::optional(date) : std::nullopt;
}

std::optional<std::vector<DayPart>> partsFrom(std::istringstream& words)
{
    std::vector<DayPart> parts;
    bool closed = false;
    for (std::string word; words >> word;) {
        if (word == "closed") {
            closed = true;
            continue;
        }
        const auto dash = word.find('-');
        const auto from = clockFrom(std::string_view(word).substr(0, dash));
        const auto to = dash == std::string::npos ? std::nullopt : clockFrom(std::string_view(word).substr(dash + 1));
        const bool rises = from && to && *from < *to && (parts.empty() || parts.back().to <= *from);
        if (!rises) {
            return std::nullopt;
        }
        parts.push_back({*from, *to});
    }
    return closed == parts.empty() ? std::optional(parts) : std::nullopt;
}

} // namespace

bool Hours::isTold() const
{
    return !exceptions.empty() || std::ranges::any_of(week, [](const auto& parts) { return !parts.empty(); });
}

const std::vector<DayPart>& Hours::on(year_month_day day) const
{
    const auto exception = exceptions.find(day);
    const unsigned weekday = std::chrono::weekday(std::chrono::sys_days(day)).iso_encoding();
    return exception != exceptions.end() ? exception->second : week[weekday - 1];
}

std::string hoursText(const Hours& hours)
{
    std::string text;
    for (std::size_t day = 0; day < hours.week.size(); ++day) {
        if (!hours.week[day].empty()) {
            text += std::string(weekdayWords[day]) + partsText(hours.week[day]) + '\n';
        }
    }
    for (const auto& [day, parts] : hours.exceptions) {
        text += toRfc3339(std::chrono::sys_days(day)).substr(0, 10) + partsText(parts) + '\n';
    }
    return text;
}

std::optional<Hours> hoursFromText(std::string_view text)
{
    Hours hours;
    std::array<bool, 7> told{};
    std::istringstream lines{std::string(text)};
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        std::string name;
        if (!(words >> name)) {
            continue;
        }
        const auto parts = partsFrom(words);
        if (!parts) {
            return std::nullopt;
        }
        const auto weekday = std::ranges::find(weekdayWords, name);
        if (weekday != weekdayWords.end()) {
            const auto index = static_cast<std::size_t>(weekday - weekdayWords.begin());
            if (std::exchange(told[index], true)) {
                return std::nullopt;
            }
            hours.week[index] = *parts;
            continue;
        }
        const auto day = dayFrom(name);
        if (!day || !hours.exceptions.emplace(*day, *parts).second) {
            return std::nullopt;
        }
    }
    return hours;
}

} // namespace mend::record
