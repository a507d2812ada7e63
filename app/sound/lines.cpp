#include "app/sound/lines.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace mend::sound {
namespace {

constexpr std::array<std::string_view, 4> stateNames = {"unknown", "ready", "muted", "no-device"};
constexpr std::array<std::string_view, 10> reasonNames = {
    "no-server", "no-device", "lost", "stalled", "muted", "replaced", "stopped", "no-engine", "late-engine", "crashed"};

template <class Enum, std::size_t n> std::string_view wordOf(Enum value, const std::array<std::string_view, n>& names)
{
    return names.at(static_cast<std::size_t>(value));
}

template <class Enum, std::size_t n>
std::optional<Enum> valueOf(std::string_view word, const std::array<std::string_view, n>& names)
{
    const auto found = std::find(names.begin(), names.end(), word);
    if (found == names.end()) {
        return std::nullopt;
    }
    return static_cast<Enum>(found - names.begin());
}

/// Text that stays on one line.
std::string flat(std::string text)
{
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
    return text;
}

std::string withRest(const std::string& line, const std::string& rest)
{
    return rest.empty() ? line : line + ' ' + flat(rest);
}

/// Takes words off the front of a line.
class Words {
public:
    explicit Words(std::string_view line) : m_rest(line) {}
    std::string_view next(char end = ' ')
    {
        const std::size_t at = m_rest.find(end);
        const std::string_view word = m_rest.substr(0, at);
        m_rest = at == std::string_view::npos ? std::string_view() : m_rest.substr(at + 1);
        return word;
    }
    std::string rest() const { return std::string(m_rest); }
    template <class Number> std::optional<Number> number()
    {
        const std::string_view word = next();
        Number value{};
        const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
        if (error != std::errc() || end != word.data() + word.size() || word.empty()) {
            return std::nullopt;
        }
        return value;
    }

private:
    std::string_view m_rest;
};

/// Shortest text that reads back to the same number, whatever the locale.
std::string inDigits(double value)
{
    std::array<char, 32> text{};
    return {text.data(), std::to_chars(text.data(), text.data() + text.size(), value).ptr};
}

struct CommandWriter {
    std::string operator()(const Play& play) const
    {
        return withRest("play " + std::to_string(play.id) + ' ' + std::string(nameOf(play.tone)) + ' ' +
                            inDigits(play.gain.value),
                        play.words);
    }
    std::string operator()(const Say& say) const
    {
        return withRest("say " + std::to_string(say.id) + ' ' + inDigits(say.gain.value), say.words);
    }
    std::string operator()(const Stop&) const { return "stop"; }
    std::string operator()(const Probe&) const { return "probe"; }
    std::string operator()(const ListDevices&) const { return "devices"; }
    std::string operator()(const UseDevice& use) const { return withRest("device", use.name); }
    std::string operator()(const UseVoice& use) const { return withRest("voice", use.language); }
    std::string operator()(const Quit&) const { return "quit"; }
};

struct ReplyWriter {
    static std::string of(const char* verb, std::int64_t id) { return verb + std::to_string(id); }
    std::string operator()(const FirstSample& reply) const
    {
        return of("first-sample ", reply.id) + ' ' + std::to_string(reply.steady.count());
    }
    std::string operator()(const Heard& reply) const { return of("heard ", reply.id); }
    std::string operator()(const NotHeard& reply) const
    {
        return of("unheard ", reply.id) + ' ' + std::string(wordOf(reply.why, reasonNames));
    }
    std::string operator()(const Spoken& reply) const { return of("spoken ", reply.id); }
    std::string operator()(const NotSpoken& reply) const
    {
        return of("unspoken ", reply.id) + ' ' + std::string(wordOf(reply.why, reasonNames));
    }
    std::string operator()(const StateNow& reply) const
    {
        return withRest("state " + std::string(wordOf(reply.state, stateNames)), reply.device);
    }
    std::string operator()(const Device& reply) const
    {
        return "device " + flat(reply.name) + '\t' + flat(reply.description);
    }
    std::string operator()(const DevicesEnd&) const { return "devices-end"; }
};

bool isGain(std::optional<double> gain) { return gain && *gain <= 0.0 && *gain >= -120.0; }

std::optional<Command> sayFrom(Words words)
{
    const auto id = words.number<std::int64_t>();
    const auto gain = words.number<double>();
    if (!id || !isGain(gain) || words.rest().empty()) {
        return std::nullopt;
    }
    return Say{*id, {*gain}, words.rest()};
}

std::optional<Command> playFrom(Words words)
{
    const auto id = words.number<std::int64_t>();
    const auto tone = toneNamed(words.next());
    const auto gain = words.number<double>();
    if (!id || !tone || !isGain(gain)) {
        return std::nullopt;
    }
    return Play{*id, *tone, {*gain}, words.rest()};
}

} // namespace

std::string toLine(const Command& command) { return std::visit(CommandWriter{}, command); }

std::string toLine(const Reply& reply) { return std::visit(ReplyWriter{}, reply); }

std::optional<Command> commandFrom(std::string_view line)
{
    Words words(line);
    const std::string_view verb = words.next();
    if (verb == "play") {
        return playFrom(words);
    }
    if (verb == "say") {
        return sayFrom(words);
    }
    if (verb == "device") {
        return UseDevice{words.rest()};
    }
    if (verb == "voice") {
        return UseVoice{words.rest()};
    }
    if (!words.rest().empty()) {
        return std::nullopt;
    }
    if (verb == "stop") {
        return Stop{};
    }
    if (verb == "probe") {
        return Probe{};
    }
    if (verb == "devices") {
        return ListDevices{};
    }
    if (verb == "quit") {
        return Quit{};
    }
    return std::nullopt;
}

std::optional<Reply> replyFrom(std::string_view line)
{
    Words words(line);
    const std::string_view verb = words.next();
    if (verb == "devices-end") {
        return DevicesEnd{};
    }
    if (verb == "device") {
        std::string name(words.next('\t'));
        return Device{std::move(name), words.rest()};
    }
    if (verb == "state") {
        const auto state = valueOf<DeviceState>(words.next(), stateNames);
        return state ? std::optional<Reply>(StateNow{*state, words.rest()}) : std::nullopt;
    }
    const auto id = words.number<std::int64_t>();
    if (!id) {
        return std::nullopt;
    }
    if (verb == "heard") {
        return Heard{*id};
    }
    if (verb == "spoken") {
        return Spoken{*id};
    }
    if (verb == "first-sample") {
        const auto micros = words.number<std::int64_t>();
        return micros ? std::optional<Reply>(FirstSample{*id, std::chrono::microseconds(*micros)}) : std::nullopt;
    }
    const auto why = valueOf<Unheard>(words.next(), reasonNames);
    if (why && verb == "unheard") {
        return NotHeard{*id, *why};
    }
    if (why && verb == "unspoken") {
        return NotSpoken{*id, *why};
    }
    return std::nullopt;
}

} // namespace mend::sound
