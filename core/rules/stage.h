#pragma once

#include "core/rules/figure.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::rules {

/// How often a stage comes back on one piece.
enum class Repeat { Once, Set, Run, Pass, Join };

/// Which touch of a stage a time counts from.
enum class Touch { First, Last, Mixing };

/// Which repetition of the named stage a time counts from.
enum class Which {
    Same,     ///< the same repetition (a run's own filler)
    Previous, ///< the repetition before (the set before this one); none before the first
    First,
    Last,   ///< the last one then known: every repetition has to be done
    Latest, ///< whichever was done most recently, if any was
};

/// Where a time counts from: a touch of a stage. `Touch::Mixing` means the mix that
/// this repetition of that stage was made with.
struct Origin {
    std::string stage;
    Touch touch = Touch::Last;
    Which which = Which::Same;
    bool operator==(const Origin&) const = default;
};

/// What must be true of a piece for a figure to hold; empty: always.
/// "porous", "vitrified", "lifted" (sub-assembly lifted or turned), "supported".
using Condition = std::string;

/// A stretch of time after an origin. `waitOfStage`: the stretch is that stage's own wait.
struct Lag {
    Origin from;
    SpanFigure span;
    bool waitOfStage = false;
    Condition when;
    std::optional<SpanFigure> lost; ///< closings: the upper figure of a range; between both "test by touch"
    bool soft = false;              ///< closings: past it the work is harder, not lost
    bool operator==(const Lag&) const = default;
};

/// What is waited for after the last touch of a stage.
struct Wait {
    SpanFigure span;
    Condition when;
    std::optional<SpanFigure> longest; ///< upper figure where the trade gives a range (1 to 3 days)
    bool operator==(const Wait&) const = default;
};

/// What the trade gives for a heated place in a wait's stead: at this temperature, so
/// long. The lowest heat limit of everything in the piece rules over it.
struct WarmCure {
    TemperatureFigure temperature;
    SpanFigure span;             ///< without the time the pot itself takes to warm through
    std::optional<Span> fromAge; ///< only when the youngest join is at least so old; empty: always
    bool operator==(const WarmCure&) const = default;
};

/// A state that the fingers decide, not the clock.
struct TouchTest {
    std::string passed;  ///< what the mender says when it is so: "Test line takes powder"
    std::string how;     ///< how it is tested
    SpanFigure askAgain; ///< how long after "Not yet" it is asked again
    bool operator==(const TouchTest&) const = default;
};

/// Minutes of hands for a stage: fixed and by what there is to do.
struct HandsOn {
    SpanFigure fixed;
    std::optional<SpanFigure> perFragment;
    std::optional<SpanFigure> perJoin;
    std::optional<SpanFigure> perCmSeam;
    std::optional<SpanFigure> perCmChip;
    bool operator==(const HandsOn&) const = default;
};

/// A window too short for an alarm: it is counted in large seconds with a soft tick.
struct Counted {
    Touch from = Touch::Mixing; ///< what the seconds count from
    SpanFigure goal;
    SpanFigure red;
    std::vector<Span> ticks; ///< marks after `from`
    std::string hotAdvice;   ///< said before the mixing when heat cuts the goal under `hotBelow`
    SpanFigure hotBelow;
    bool operator==(const Counted&) const = default;
};

/// What a missed closing costs, mildest first: decides order, size and urgency.
enum class Miss { Nothing, Minutes, FreshMix, Afternoon, Day, Piece };

/// A state of the bench that a stage leaves behind: pads that dry, powder that lies open.
/// It ends when the time is over or when somebody says so, whichever is first.
struct Leaves {
    std::string state;               ///< key of a state in the hazard file: "padsDrying"
    std::optional<SpanFigure> lasts; ///< empty: until told
    bool operator==(const Leaves&) const = default;
};

/// One thing the hands do, then what must be waited for.
struct Stage {
    std::string key;     ///< "wipeBack"
    std::string row;     ///< its place in the printed procedure: "10"
    std::string act;     ///< what to do, verb first: "Wipe back the filler"
    std::string begun;   ///< said when it is begun, for stages with two taps: "Pad is on"
    std::string done;    ///< said when it is done: "Wiped back"
    std::string spoken;  ///< one or two words for the voice: "Wipe"
    std::string waiting; ///< what is waited for after it, shown meanwhile: "alcohol flashes off"
    Repeat repeat = Repeat::Once;
    bool optional = false;
    bool byItself = false; ///< no hands: begins and ends by the clock (a rest)
    HandsOn handsOn;
    std::vector<Wait> waits;               ///< the first whose condition holds rules
    std::vector<Lag> opens;                ///< all have to be over
    std::optional<SpanFigure> recommended; ///< after the first opening lag's origin
    std::optional<TouchTest> test;
    std::vector<Lag> closes; ///< the earliest rules
    bool closesAtEndOfDay = false;
    Miss miss = Miss::Nothing;
    std::string missText; ///< "cut back, fill again"
    std::optional<Counted> counted;
    std::string law;        ///< key of the cure law of what its own touch starts: lags that count from it follow it
    Temperature reference;  ///< what every time of this stage is true at
    std::string mix;        ///< key of the material this stage needs a living mix of; empty: none
    bool mixesHere = false; ///< the mixing is part of this stage
    std::vector<std::string> places;    ///< kinds of place it happens or waits in; the first is the usual one
    std::vector<std::string> resources; ///< "hands", "solvent", "tray", "sandBox", "blade", "heat"
    std::optional<TemperatureFigure> warnBelow;
    std::optional<TemperatureFigure> noForecastBelow;
    std::vector<WarmCure> warmCures;       ///< for stages that may cure in the heated cabinet
    std::optional<SpanFigure> warmThrough; ///< how long a pot lags the cabinet's air
    std::vector<std::string> during;       ///< states that hold while hands are on it: "solventOpen", "flame"
    std::vector<Leaves> leaves;
    std::vector<std::string> ends;     ///< states of this piece that are over once it is done: powder is covered
    std::vector<std::string> uses;     ///< keys of materials that go into the piece here
    std::vector<std::string> cautions; ///< keys of caution texts
    bool operator==(const Stage&) const = default;
};

} // namespace mend::rules
