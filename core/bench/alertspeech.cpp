#include "core/bench/alertspeech.h"

#include <algorithm>
#include <sstream>
#include <vector>

namespace mend::bench {

namespace {

constexpr int mostWords = 10;

std::vector<std::string> wordsOf(const std::string& text)
{
    std::istringstream in(text);
    std::vector<std::string> words;
    for (std::string word; in >> word;) {
        words.push_back(word);
    }
    return words;
}

std::string firstWords(const std::string& text, int count)
{
    std::string kept;
    for (const std::string& word : wordsOf(text)) {
        if (count-- <= 0) {
            break;
        }
        kept += (kept.empty() ? "" : " ") + word;
    }
    return kept;
}

/// What is said before and after the name.
struct Frame {
    std::string before;
    std::string after;
};

std::string minutesLeft(const Alert& alert, Instant now)
{
    const auto left = remaining(alert, now);
    if (!left) {
        return {};
    }
    const auto whole = std::chrono::floor<std::chrono::minutes>(*left).count();
    if (whole < 1) {
        return " Now.";
    }
    return ' ' + std::to_string(whole) + (whole == 1 ? " minute." : " minutes.");
}

Frame frameOf(const Alert& alert, Instant now)
{
    const std::string act = firstWords(alert.spoken, 3);
    switch (alert.kind) {
    case AlertKind::Opens:
        return {act + ".", {}};
    case AlertKind::Closes:
        return {act + ".", minutesLeft(alert, now)};
    case AlertKind::Closed:
        return {"Closed. " + act + ".", {}};
    case AlertKind::Done:
        return {act + " done?", {}};
    }
    return {};
}

} // namespace

int wordCount(const std::string& text) { return static_cast<int>(wordsOf(text).size()); }

std::string spokenText(const Alert& alert, Instant now)
{
    const Frame frame = frameOf(alert, now);
    const int left = mostWords - wordCount(frame.before) - wordCount(frame.after);
    std::string name = firstWords(alert.benchName, left);
    if (alert.chainNames.size() > 1 && alert.chainNames[1] != alert.benchName) {
        const std::string both = name + ", then " + alert.chainNames[1];
        if (wordCount(both) <= left) {
            name = both;
        }
    }
    return frame.before + (name.empty() ? "" : " " + name + ".") + frame.after;
}

std::string spokenMore(int count) { return "And " + std::to_string(count) + " more."; }

} // namespace mend::bench
