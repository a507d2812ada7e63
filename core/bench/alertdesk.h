#pragma once

#include "core/bench/alert.h"
#include "core/bench/alertanswer.h"
#include "core/bench/alertcall.h"
#include "core/bench/alertcounting.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mend::bench {

/// The tone that leads. How each sounds is the sound process's business.
enum class Signal { None, Tick, C, B, A };

/// How long a burst lasts and how long it is silent before it comes again. C and the tick never do.
Span burstLength(Signal signal);

/// Everything besides the alerts that decides what is heard at one instant.
struct DeskInputs {
    Instant now;
    bool benchOpen = true;                   ///< bench hours of whoever is at the bench
    std::optional<Instant> hoursChange;      ///< when that changes
    std::optional<Instant> soundPausedUntil; ///< at most ten minutes are granted
    bool soundOff = false;                   ///< by setting
    bool soundWorks = true;                  ///< a device takes the sound
    std::optional<Counting> counting;
    std::optional<InstantRange> gap; ///< asleep or not running from, to: once, at the first look after it
};

/// What has been heard of one calling alert since it called.
struct HeardAlert {
    std::string call;                    ///< which call of it; a later one is heard anew
    CallStage stage = CallStage::First;  ///< of `call`
    std::optional<Instant> sounded;      ///< this call, by a burst of its own or in another's list
    std::optional<Instant> firstSounded; ///< since it was last answered: escalation counts from here
    bool shown = false;                  ///< the fact has been told
    bool notified = false;
    bool operator==(const HeardAlert&) const = default;
};

/// What the desk carries from one look to the next. May be lost at any time: what matters is in the
/// stored answers.
struct AlertMemory {
    std::map<std::string, HeardAlert> heard;
    std::optional<Instant> looked;
    std::optional<Instant> burst; ///< when the last one began
    Signal burstOf = Signal::None;
    int linesSaid = 0; ///< since the last burst
    int unsaid = 0;    ///< joined since, but the voice had no room for them
    bool operator==(const AlertMemory&) const = default;
};

/// One thing to be heard now: a tone, then the voice.
struct Play {
    Signal signal = Signal::None;
    int decibelsLouder = 0;          ///< 0, or 6 once it has gone unanswered for a minute; the user's ceiling holds
    bool cutsOff = false;            ///< whatever is being said stops
    std::vector<std::string> speech; ///< three lines at most, then "And 4 more."
    std::vector<std::string> keys;   ///< the alerts it announces for the first time, most urgent first
    bool operator==(const Play&) const = default;
};

/// How a calling alert is seen. One block flashes at a time; everything else is steady.
enum class Look { Steady, Inverted, FlashSlow, FlashFast };
constexpr int milliHertz(Look look) { return look == Look::FlashFast ? 1500 : look == Look::FlashSlow ? 500 : 0; }

struct VisibleAlert {
    std::string key;
    Urgency urgency = Urgency::C;
    Look look = Look::Steady;
    bool lastCall = false;
    bool waits = false; ///< due, but held: busy hands, a counted window, after hours, a piece on hold
    bool operator==(const VisibleAlert&) const = default;
};

/// Put off on purpose: stands in a strip with its count.
struct ShelvedAlert {
    std::string key;
    std::optional<Instant> until;
    bool operator==(const ShelvedAlert&) const = default;
};

enum class BannerKind { SoundOff, SoundPaused, NoSoundDevice };
struct Banner {
    BannerKind kind = BannerKind::SoundOff;
    std::optional<Instant> until;
    bool operator==(const Banner&) const = default;
};

/// One line of what happened while nobody looked.
struct MissedAlert {
    std::string key;
    bool savable = false; ///< there is still time to start
    Span time{0};         ///< until the latest start where savable, else since it closed or opened
    bool operator==(const MissedAlert&) const = default;
};

/// Shown once after sleep or a start: still savable first, soonest first, then what closed, newest last.
struct MissedReport {
    InstantRange asleep;
    std::vector<MissedAlert> lines;
    bool operator==(const MissedReport&) const = default;
};

/// A fact about an alert that has to be recorded: it was shown, and sounded unless the sound is off.
struct AlertFact {
    std::string key; ///< the alert's, or that of one of its later calls
    PieceId piece;
    StageInstance stage;
    bool operator==(const AlertFact&) const = default;
};

/// The event that keeps a fact; times and boot are the recorder's.
Event factEvent(const AlertFact& fact, PersonId by);

/// What is heard and seen from now on, until `next` or until something else happens.
struct Decision {
    AlertMemory memory;
    std::optional<Play> play;
    std::vector<VisibleAlert> visible; ///< most urgent first, then by latest start
    std::vector<ShelvedAlert> shelved;
    std::vector<Banner> banners;
    std::vector<AlertFact> facts;
    std::vector<std::string> notify; ///< wants a critical desktop notification now
    std::optional<MissedReport> missed;
    std::optional<Busy> busy;
    std::optional<Instant> next; ///< the first instant at which anything of this changes by itself
};

/// Ten minutes at most.
Instant pausedUntil(Instant now, Span asked);

/// Decides what is heard and seen: memory, alerts and answers in, memory and decision out. It has no clock and
/// plays nothing. Calling it twice at one instant plays nothing twice; calling it earlier than `next` with the same
/// alerts changes nothing; never calling it between two instants loses no sound that is still due.
Decision decide(const AlertMemory& memory, std::span<const Alert> alerts, std::span<const AlertAnswer> answers,
                const DeskInputs& inputs);

} // namespace mend::bench
