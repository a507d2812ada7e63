#include "app/sound/signal.h"

#include "shippedsignals.h"

#include <cassert>
#include <nlohmann/json.hpp>

namespace mend::sound {
namespace {

using Json = nlohmann::json;

/// Reads one signal and gathers what is wrong with it, so that all faults are told at once.
class SignalReader {
public:
    SignalReader(const Json& json, std::string where, std::vector<std::string>& faults)
        : m_json(json), m_where(std::move(where)), m_faults(faults)
    {
    }

    Signal read()
    {
        Signal signal;
        const auto tone = toneNamed(text("name"));
        if (!tone) {
            fault("name", "is none of the known signals");
        }
        signal.tone = tone.value_or(Tone::A);
        const std::string kind = text("class");
        if (kind != "alert" && kind != "feedback") {
            fault("class", "is neither alert nor feedback");
        }
        signal.isAlert = kind == "alert";
        for (const double pulses : list("groups", 1, 10)) {
            signal.groups.push_back(static_cast<int>(pulses));
        }
        if (signal.groups.empty()) {
            fault("groups", "has no pulse");
        }
        signal.pulse = milliseconds("pulse_ms", 20, 2000);
        signal.spacing = milliseconds("spacing_ms", 0, 2000);
        signal.groupGap = milliseconds("group_gap_ms", 0, 5000);
        signal.pitchHz = number(m_json, "pitch_hz", 150, 1000);
        for (const double level : list("harmonics_db", -60, 20)) {
            signal.harmonics.push_back({level});
        }
        signal.rise = number(m_json, "rise_percent", 0, 50) / 100.0;
        signal.fall = number(m_json, "fall_percent", 0, 50) / 100.0;
        signal.peak = {number(m_json, "peak_dbfs", -60, -1)};
        signal.repeats = repeats();
        return signal;
    }

private:
    void fault(const std::string& key, const std::string& what)
    {
        m_faults.push_back(m_where + "/" + key + " " + what);
    }

    std::string text(const char* key)
    {
        if (!m_json.is_object() || !m_json.contains(key) || !m_json[key].is_string()) {
            fault(key, "is missing or no text");
            return {};
        }
        return m_json[key].get<std::string>();
    }

    double number(const Json& object, const char* key, double least, double most)
    {
        if (!object.is_object() || !object.contains(key) || !object[key].is_number()) {
            fault(key, "is missing or no number");
            return least;
        }
        const double value = object[key].get<double>();
        if (!(value >= least && value <= most)) {
            fault(key, "is outside " + std::to_string(least) + " to " + std::to_string(most));
            return least;
        }
        return value;
    }

    Span milliseconds(const char* key, double least, double most)
    {
        return Span(static_cast<std::int64_t>(number(m_json, key, least, most)));
    }

    std::vector<double> list(const char* key, double least, double most)
    {
        std::vector<double> values;
        if (!m_json.is_object() || !m_json.contains(key) || !m_json[key].is_array()) {
            fault(key, "is missing or no list");
            return values;
        }
        for (const Json& item : m_json[key]) {
            values.push_back(number(Json{{key, item}}, key, least, most));
        }
        return values;
    }

    std::vector<Repeat> repeats()
    {
        std::vector<Repeat> found;
        if (!m_json.is_object() || !m_json.contains("repeats") || !m_json["repeats"].is_array()) {
            fault("repeats", "is missing or no list");
            return found;
        }
        const auto inSpan = [](double seconds) { return Span(static_cast<std::int64_t>(seconds * 1000.0)); };
        for (const Json& item : m_json["repeats"]) {
            Repeat repeat{inSpan(number(item, "gap_s", 1, 3600)), std::nullopt};
            if (item.is_object() && item.contains("for_s")) {
                repeat.during = inSpan(number(item, "for_s", 1, 86400));
            }
            found.push_back(repeat);
        }
        return found;
    }

    const Json& m_json;
    std::string m_where;
    std::vector<std::string>& m_faults;
};

std::string joined(const std::vector<std::string>& lines)
{
    std::string text;
    for (const std::string& line : lines) {
        text += (text.empty() ? "" : "\n") + line;
    }
    return text;
}

} // namespace

Result<std::vector<Signal>> parseSignals(std::string_view json)
{
    const Json file = Json::parse(json, nullptr, false);
    if (file.is_discarded() || !file.is_object() || file.value("format", Json()) != "mendbench-signals") {
        return Fault{FaultKind::BadInput, "no file of signals"};
    }
    if (file.value("version", Json()) != 1) {
        return Fault{FaultKind::Newer, "signals of another version"};
    }
    std::vector<std::string> faults;
    std::vector<Signal> signals;
    std::vector<int> seen(toneCount, 0);
    const Json list = file.value("signals", Json::array());
    for (std::size_t i = 0; list.is_array() && i < list.size(); ++i) {
        signals.push_back(SignalReader(list[i], "signals/" + std::to_string(i), faults).read());
        ++seen[static_cast<std::size_t>(signals.back().tone)];
    }
    for (int tone = 0; tone < toneCount; ++tone) {
        if (seen[static_cast<std::size_t>(tone)] != 1) {
            faults.push_back("signals must hold " + std::string(nameOf(static_cast<Tone>(tone))) + " exactly once");
        }
    }
    if (!faults.empty()) {
        return Fault{FaultKind::BadInput, joined(faults)};
    }
    return signals;
}

const std::vector<Signal>& shippedSignals()
{
    // A constant of the build, checked by the tests; not a state that anyone can change.
    static const std::vector<Signal> signals = [] {
        Result<std::vector<Signal>> parsed = parseSignals(shippedSignalsText);
        assert(parsed.isOk());
        return parsed.takeValue();
    }();
    return signals;
}

} // namespace mend::sound
