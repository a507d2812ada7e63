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
    Overlap,   ///< a start brings a state that must not meet a state in force
    HeatLimit, ///< a place is warmer than something inside may get
    Climate,   ///< the air of a place against a material in it
    Hands,     ///< two windows that need one pair of hands
    Assembly,  ///< the order of joining
    EndOfDay,  ///< a window that would close while nobody is there
    Standing,  ///< a reminder for as long as work is open
};

/// How far apart two things still meet.
enum class Reach { Room, Piece, Place, Tray };

/// What two sides may have in common so that they do not count as meeting: fragments of
/// the same owner, powder of the same kind.
enum class Spares { Nothing, SameOwner, SamePowder };

/// One of a few large answers that let a blocked start go on.
struct Answer {
    std::string key;  ///< "padsInCan"
    std::string text; ///< "Pads are in the can"
    std::string ends; ///< the state that it ends; empty: the start goes on and the state stays
    bool operator==(const Answer&) const = default;
};

/// Two things that must not meet on one bench.
///
/// `one` and `other` hold names of what is or comes to the bench:
///   - the key of a state ("padsDrying"), told or brought by a stage (its `during`, its `leaves`);
///   - the key or the family of a material in a piece ("plaster", "urushi"); "uncured:" before
///     it means only until its full cure, in equivalent age;
///   - a condition of the piece ("porous"), a resource of a stage ("heat"), the key of a stage;
///   - a kind of place ("cabinet"), where a piece lies or is put.
/// For Assembly rows `one` is "lockOut" or "ringClosure".
struct Hazard {
    std::string key;   ///< "INC-01"
    std::string title; ///< "Flame and open solvent"
    std::string why;
    Meeting meeting = Meeting::Overlap;
    Verdict verdict = Verdict::Warn;
    Reach reach = Reach::Room;
    std::vector<std::string>
        one; ///< states or material keys of one side (for Overlap: what a start brings, or is in force)
    std::vector<std::string> other;               ///< of the other side; either may come first
    std::optional<TemperatureFigure> temperature; ///< for HeatLimit and Climate rows
    std::optional<TemperatureFigure> margin;      ///< degrees above the dew point, as a temperature difference from 0
    std::optional<Figure<Humidity>> humidity;
    std::optional<SpanFigure> span;     ///< how close in time counts as meeting
    std::optional<Verdict> startingOne; ///< Overlap: bringing `one` to a bench that holds `other` weighs otherwise
    std::optional<Verdict> nearby;      ///< Reach::Piece: what it is for other pieces in the room; empty: nothing
    Spares spares = Spares::Nothing;
    bool whenDrier = false;                ///< Climate: under `humidity` it is met; else at or above it
    std::vector<std::string> exceptStages; ///< stages whose own act is meant to meet it
    std::vector<Answer> answers;
    std::string said; ///< the line on a card that is stopped: "No flame: pads are drying"
    Source source;
    bool operator==(const Hazard&) const = default;
};

/// A state of the bench that hazards speak of.
struct BenchState {
    std::string key;                 ///< "padsDrying"
    std::string text;                ///< "Solvent pads are drying"
    std::string toldOver;            ///< the act that ends it: "Pads are in the can"; empty: time alone
    std::string toldOn;              ///< the act that says it is so, where people may tell it: "Flame is lit"
    std::optional<SpanFigure> lasts; ///< how long it lasts unless told; empty: until told
    bool operator==(const BenchState&) const = default;
};

} // namespace mend::rules
