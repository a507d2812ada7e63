#include "core/bench/alertanswer.h"

#include <array>
#include <utility>

namespace mend::bench {

namespace {

constexpr std::array<std::pair<Answered, std::string_view>, 5> answerWords{{
    {Answered::Shown, "shown"},
    {Answered::HandsOn, "handsOn"},
    {Answered::Heard, "heard"},
    {Answered::AfterStep, "afterStep"},
    {Answered::StartAt, "startAt"},
}};

} // namespace

std::string answeredKey(Answered how)
{
    for (const auto& [answered, word] : answerWords) {
        if (answered == how) {
            return std::string(word);
        }
    }
    return {};
}

std::optional<Answered> answeredFromKey(std::string_view word)
{
    for (const auto& [answered, known] : answerWords) {
        if (known == word) {
            return answered;
        }
    }
    return std::nullopt;
}

std::string answerWord(const std::string& alertKey, Answered how) { return alertKey + '|' + answeredKey(how); }

Event answerEvent(const Alert& alert, Answered how, PersonId by, std::optional<Instant> until)
{
    Event event;
    event.what = What::AlertAnswered;
    event.piece = alert.piece;
    event.stage = alert.stage;
    event.person = by;
    event.word = answerWord(alert.key, how);
    if (how == Answered::StartAt) {
        event.until = until;
    }
    return event;
}

} // namespace mend::bench
