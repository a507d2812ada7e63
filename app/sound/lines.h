#pragma once

#include "app/sound/signal.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

// What the program and its sound process say to each other: one line of UTF-8 text each,
// words parted by one space, free text last.
namespace mend::sound {

/// Whether this machine can be heard at all.
enum class DeviceState {
    Unknown,  ///< not asked yet
    Ready,    ///< a sink is there and not silenced
    Muted,    ///< a sink is there, but muted or at volume 0
    NoDevice, ///< no sound server, no sink, or only the server's dummy
};

/// Why a sound, or its words, did not reach the sink whole.
enum class Unheard {
    NoServer,   ///< no sound server answered
    NoDevice,   ///< the server has no sink of its own
    Lost,       ///< the server or the stream went in the middle
    Stalled,    ///< the sink stopped taking samples
    Muted,      ///< played into a muted sink or stream
    Replaced,   ///< a newer alert cut it
    Stopped,    ///< asked to be silent
    NoEngine,   ///< words only: no speech engine
    LateEngine, ///< words only: the engine took longer than its limit
    Crashed,    ///< the sound process ended or hung
};

// From the program to the sound process.
struct Play {
    std::int64_t id = 0;
    Tone tone = Tone::A;
    Decibels gain;
    std::string words; ///< spoken after the burst where an engine works; may be empty
    bool operator==(const Play&) const = default;
};
/// Words that follow a burst that has sounded: said once nothing else sounds or is said.
struct Say {
    std::int64_t id = 0;
    Decibels gain;
    std::string words;
    bool operator==(const Say&) const = default;
};
struct Stop {
    bool operator==(const Stop&) const = default;
};
struct Probe {
    bool operator==(const Probe&) const = default;
};
struct ListDevices {
    bool operator==(const ListDevices&) const = default;
};
struct UseDevice {
    std::string name; ///< empty: whatever the desktop's default is
    bool operator==(const UseDevice&) const = default;
};
struct UseVoice {
    std::string language; ///< BCP 47 tag such as "en"
    bool operator==(const UseVoice&) const = default;
};
struct Quit {
    bool operator==(const Quit&) const = default;
};
using Command = std::variant<Play, Say, Stop, Probe, ListDevices, UseDevice, UseVoice, Quit>;

// From the sound process to the program.
struct FirstSample {
    std::int64_t id = 0;
    std::chrono::microseconds steady{0}; ///< steady_clock reading when the samples were handed over
    bool operator==(const FirstSample&) const = default;
};
struct Heard {
    std::int64_t id = 0;
    bool operator==(const Heard&) const = default;
};
struct NotHeard {
    std::int64_t id = 0;
    Unheard why = Unheard::Lost;
    bool operator==(const NotHeard&) const = default;
};
struct Spoken {
    std::int64_t id = 0;
    bool operator==(const Spoken&) const = default;
};
struct NotSpoken {
    std::int64_t id = 0;
    Unheard why = Unheard::Lost;
    bool operator==(const NotSpoken&) const = default;
};
struct StateNow {
    DeviceState state = DeviceState::Unknown;
    std::string device; ///< name of the sink in use, empty for none
    bool operator==(const StateNow&) const = default;
};
struct Device {
    std::string name;
    std::string description;
    bool operator==(const Device&) const = default;
};
struct DevicesEnd {
    bool operator==(const DevicesEnd&) const = default;
};
using Reply = std::variant<FirstSample, Heard, NotHeard, Spoken, NotSpoken, StateNow, Device, DevicesEnd>;

/// Without the line's end. Line breaks inside a text become spaces.
std::string toLine(const Command& command);
std::string toLine(const Reply& reply);
/// Nothing where the line is not one of ours; a gain above 0 dB or not a number is refused.
std::optional<Command> commandFrom(std::string_view line);
std::optional<Reply> replyFrom(std::string_view line);

} // namespace mend::sound
