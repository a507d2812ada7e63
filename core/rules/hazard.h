#pragma once

#include "core/rules/figure.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::rules {

/// What the program does about a combination: it stops the start until answered, says
/// it, or reminds.
enum class Verdict { Block, Warn, Remind };

/// How two things of a combination meet.
enum class Meeting {
    Overlap,     ///< a start brings a state that must not meet a state in force
    HeatLimit,   ///< a place is warmer than something inside may get
    Climate,     ///< the air of a place against a material in it
    Hands,       ///< two windows that need one pair of hands
    Assembly,    ///< the order of joining
    EndOfDay,    ///< a window that would close while nobody is there
    Standing,    ///< a reminder for as long as work is open
};

/// How far apart two things still meet.
enum class Reach { Room, Piece, Place, Tray };

/// One of a few large answers that let a blocked start go on.
struct Answer {
    std::string key;                ///< "padsInCan"
    std::string text;               ///< "Pads are in the can"
    std::string ends;               ///< the state that it ends; empty: the start goes on and the state stays
    bool operator==(const Answer&) const = default;
};

/// Two things that must not meet on one bench.
struct Hazard {
    std::string key;   ///< "INC-01"
    std::string title; ///< "Flame and open solvent"
    std::string why;
    Meeting meeting = Meeting::Overlap;
    Verdict verdict = Verdict::Warn;
    Reach reach = Reach::Room;
    std::vector<std::string> one;   ///< states or material keys of one side (for Overlap: what a start brings, or is in force)
    std::vector<std::string> other; ///< of the other side; either may come first
    std::optional<TemperatureFigure> temperature; ///< for HeatLimit and Climate rows
    std::optional<TemperatureFigure> margin;      ///< degrees above the dew point, as a temperature difference from 0
    std::optional<Figure<Humidity>> humidity;
    std::optional<SpanFigure> span; ///< how close in time counts as meeting
    std::vector<std::string> exceptStages; ///< stages whose own act is meant to meet it
    std::vector<Answer> answers;
    std::string said;  ///< the line on a card that is stopped: "No flame: pads are drying"
    Source source;
    bool operator==(const Hazard&) const = default;
};

/// A state of the bench that hazards speak of.
struct BenchState {
    std::string key;                  ///< "padsDrying"
    std::string text;                 ///< "Solvent pads are drying"
    std::string toldOver;             ///< the act that ends it: "Pads are in the can"; empty: time alone
    std::string toldOn;               ///< the act that says it is so, where people may tell it: "Flame is lit"
    std::optional<SpanFigure> lasts;  ///< how long it lasts unless told; empty: until told
    bool operator==(const BenchState&) const = default;
};

} // namespace mend::rules
