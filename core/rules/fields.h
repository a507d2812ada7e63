#pragma once

// The names of every part of a rule, said once. Reading a rule file, writing its canonical
// text, checking its figures and listing what differs between two revisions all walk along
// these names, so a new part of a rule is added here and nowhere else.
//
// A walker W offers:
//   static constexpr bool reading    whether it fills the values in
//   text(name, string, Need)         words
//   texts(name, vector<string>)      a list of keys or words
//   flag(name, bool)                 left out where false
//   number(name, int)                a whole number without a unit
//   choice(name, E, names, Need)     one of a fixed set of words
//   choice(name, optional<E>, names)
//   part(name, T, Need)              something with fields of its own
//   part(name, optional<T>)
//   list(name, vector<T>, Need)
//   amount(value)                    a unit and a number
//   amount(value, least, most)       the same with the range beside it

#include "core/rules/ownfigures.h"
#include "core/rules/rulebook.h"

#include <array>
#include <concepts>
#include <string_view>
#include <type_traits>

namespace mend::rules {

enum class Need { Must, May };

template <class E> struct Word {
    E value;
    std::string_view text;
};

/// One way to write an amount: the name of the unit and how many internal units it has.
struct UnitWord {
    std::string_view name;
    std::int64_t factor;
};

/// The units an amount may be written in; the first is the one that canonical text uses.
template <class T> struct Units;
template <> struct Units<Span> {
    static constexpr std::array<UnitWord, 4> words = {
        {{"seconds", 1000}, {"minutes", 60'000}, {"hours", 3'600'000}, {"days", 86'400'000}}};
    static std::int64_t count(Span value) { return value.count(); }
    static Span from(std::int64_t count) { return Span(count); }
};
template <> struct Units<Temperature> {
    static constexpr std::array<UnitWord, 1> words = {{{"celsius", 100}}};
    static std::int64_t count(Temperature value) { return value.centidegrees(); }
    static Temperature from(std::int64_t count) { return Temperature::fromCentidegrees(count); }
};
template <> struct Units<Humidity> {
    static constexpr std::array<UnitWord, 1> words = {{{"percent", 100}}};
    static std::int64_t count(Humidity value) { return value.count(); }
    static Humidity from(std::int64_t count) { return Humidity::fromCount(count); }
};
template <> struct Units<Length> {
    static constexpr std::array<UnitWord, 2> words = {{{"centimetres", 10'000}, {"millimetres", 1'000}}};
    static std::int64_t count(Length value) { return value.count(); }
    static Length from(std::int64_t count) { return Length::fromCount(count); }
};
template <> struct Units<ActivationEnergy> {
    static constexpr std::array<UnitWord, 1> words = {{{"kilojoulesPerMole", 1000}}};
    static std::int64_t count(ActivationEnergy value) { return value.count(); }
    static ActivationEnergy from(std::int64_t count) { return ActivationEnergy::fromCount(count); }
};
template <class T>
concept Measured = requires
{
    Units<std::remove_const_t<T>>::words;
};

/// T or const T, so that one list of fields serves readers and lookers.
template <class S, class T>
concept Like = std::same_as<std::remove_const_t<S>, T>;

inline constexpr std::array<Word<Mark>, 6> markWords = {{{Mark::Agency, "agency"},
                                                         {Mark::Museum, "museum"},
                                                         {Mark::Studio, "studio"},
                                                         {Mark::Derived, "derived"},
                                                         {Mark::Memory, "memory"},
                                                         {Mark::Practice, "practice"}}};
inline constexpr std::array<Word<Repeat>, 5> repeatWords = {{{Repeat::Once, "once"},
                                                             {Repeat::Set, "set"},
                                                             {Repeat::Run, "run"},
                                                             {Repeat::Pass, "pass"},
                                                             {Repeat::Join, "join"}}};
inline constexpr std::array<Word<Touch>, 3> touchWords = {
    {{Touch::First, "first"}, {Touch::Last, "last"}, {Touch::Mixing, "mixing"}}};
inline constexpr std::array<Word<Which>, 5> whichWords = {{{Which::Same, "same"},
                                                           {Which::Previous, "previous"},
                                                           {Which::First, "first"},
                                                           {Which::Last, "last"},
                                                           {Which::Latest, "latest"}}};
inline constexpr std::array<Word<Miss>, 6> missWords = {{{Miss::Nothing, "nothing"},
                                                         {Miss::Minutes, "minutes"},
                                                         {Miss::FreshMix, "freshMix"},
                                                         {Miss::Afternoon, "afternoon"},
                                                         {Miss::Day, "day"},
                                                         {Miss::Piece, "piece"}}};
inline constexpr std::array<Word<Verdict>, 3> verdictWords = {
    {{Verdict::Block, "block"}, {Verdict::Warn, "warn"}, {Verdict::Remind, "remind"}}};
inline constexpr std::array<Word<Meeting>, 7> meetingWords = {{{Meeting::Overlap, "overlap"},
                                                               {Meeting::HeatLimit, "heatLimit"},
                                                               {Meeting::Climate, "climate"},
                                                               {Meeting::Hands, "hands"},
                                                               {Meeting::Assembly, "assembly"},
                                                               {Meeting::EndOfDay, "endOfDay"},
                                                               {Meeting::Standing, "standing"}}};
inline constexpr std::array<Word<Reach>, 4> reachWords = {
    {{Reach::Room, "room"}, {Reach::Piece, "piece"}, {Reach::Place, "place"}, {Reach::Tray, "tray"}}};
inline constexpr std::array<Word<Spares>, 3> sparesWords = {
    {{Spares::Nothing, "nothing"}, {Spares::SameOwner, "sameOwner"}, {Spares::SamePowder, "samePowder"}}};
enum class LawKind { Clock, Arrhenius, HumidBand };
inline constexpr std::array<Word<LawKind>, 3> lawWords = {
    {{LawKind::Clock, "clock"}, {LawKind::Arrhenius, "arrhenius"}, {LawKind::HumidBand, "humidBand"}}};

template <class W, Measured T> void fields(W& w, T& value) { w.amount(value); }

template <class W, Like<Source> S> void fields(W& w, S& source)
{
    w.text("source", source.text, Need::Must);
    w.choice("mark", source.mark, markWords, Need::Must);
}

template <class T> struct IsFigure : std::false_type {
};
template <class T> struct IsFigure<Figure<T>> : std::true_type {
};
template <class S>
concept AnyFigure = IsFigure<std::remove_const_t<S>>::value;

template <class W, AnyFigure S> void fields(W& w, S& figure)
{
    w.amount(figure.value, figure.least, figure.most);
    fields(w, figure.source);
}

template <class W, Like<Origin> S> void fields(W& w, S& origin)
{
    w.text("stage", origin.stage, Need::Must);
    w.choice("touch", origin.touch, touchWords, Need::May);
    w.choice("which", origin.which, whichWords, Need::May);
}

template <class W, Like<Lag> S> void fields(W& w, S& lag)
{
    w.part("from", lag.from, Need::Must);
    w.flag("waitOfStage", lag.waitOfStage);
    if (!lag.waitOfStage) {
        w.part("span", lag.span, Need::Must);
    }
    w.text("when", lag.when, Need::May);
    w.part("lost", lag.lost);
    w.flag("soft", lag.soft);
}

template <class W, Like<Wait> S> void fields(W& w, S& wait)
{
    w.part("span", wait.span, Need::Must);
    w.text("when", wait.when, Need::May);
    w.part("longest", wait.longest);
}

template <class W, Like<WarmCure> S> void fields(W& w, S& cure)
{
    w.part("temperature", cure.temperature, Need::Must);
    w.part("span", cure.span, Need::Must);
    w.part("fromAge", cure.fromAge);
}

template <class W, Like<TouchTest> S> void fields(W& w, S& test)
{
    w.text("passed", test.passed, Need::Must);
    w.text("how", test.how, Need::Must);
    w.part("askAgain", test.askAgain, Need::Must);
}

template <class W, Like<HandsOn> S> void fields(W& w, S& hands)
{
    w.part("fixed", hands.fixed, Need::Must);
    w.part("perFragment", hands.perFragment);
    w.part("perJoin", hands.perJoin);
    w.part("perCmSeam", hands.perCmSeam);
    w.part("perCmChip", hands.perCmChip);
}

template <class W, Like<Counted> S> void fields(W& w, S& counted)
{
    w.choice("from", counted.from, touchWords, Need::May);
    w.part("goal", counted.goal, Need::Must);
    w.part("red", counted.red, Need::Must);
    w.list("ticks", counted.ticks, Need::Must);
    w.text("hotAdvice", counted.hotAdvice, Need::Must);
    w.part("hotBelow", counted.hotBelow, Need::Must);
}

template <class W, Like<Leaves> S> void fields(W& w, S& leaves)
{
    w.text("state", leaves.state, Need::Must);
    w.part("lasts", leaves.lasts);
}

template <class W, class S> void fieldsOfTimes(W& w, S& stage)
{
    w.part("handsOn", stage.handsOn, Need::Must);
    w.list("waits", stage.waits, Need::May);
    w.list("opens", stage.opens, Need::May);
    w.part("recommended", stage.recommended);
    w.part("test", stage.test);
    w.list("closes", stage.closes, Need::May);
    w.flag("closesAtEndOfDay", stage.closesAtEndOfDay);
    w.choice("miss", stage.miss, missWords, Need::May);
    w.text("missText", stage.missText, Need::May);
    w.part("counted", stage.counted);
    w.text("law", stage.law, Need::Must);
    w.part("reference", stage.reference, Need::Must);
    w.part("warnBelow", stage.warnBelow);
    w.part("noForecastBelow", stage.noForecastBelow);
    w.list("warmCures", stage.warmCures, Need::May);
    w.part("warmThrough", stage.warmThrough);
}

template <class W, Like<Stage> S> void fields(W& w, S& stage)
{
    w.text("key", stage.key, Need::Must);
    w.text("row", stage.row, Need::Must);
    w.text("act", stage.act, Need::Must);
    w.text("begun", stage.begun, Need::May);
    w.text("done", stage.done, Need::Must);
    w.text("spoken", stage.spoken, Need::Must);
    w.text("waiting", stage.waiting, Need::May);
    w.choice("repeat", stage.repeat, repeatWords, Need::May);
    w.flag("optional", stage.optional);
    w.flag("byItself", stage.byItself);
    fieldsOfTimes(w, stage);
    w.text("mix", stage.mix, Need::May);
    w.flag("mixesHere", stage.mixesHere);
    w.texts("places", stage.places);
    w.texts("resources", stage.resources);
    w.texts("during", stage.during);
    w.list("leaves", stage.leaves, Need::May);
    w.texts("ends", stage.ends);
    w.texts("uses", stage.uses);
    w.texts("cautions", stage.cautions);
}

template <class W, Like<Procedure> S> void fields(W& w, S& procedure)
{
    w.text("key", procedure.key, Need::Must);
    w.text("name", procedure.name, Need::Must);
    w.text("summary", procedure.summary, Need::Must);
    w.number("revision", procedure.revision);
    w.texts("materials", procedure.materials);
    w.texts("cautions", procedure.cautions);
    w.list("stages", procedure.stages, Need::Must);
}

template <class W, Like<HeatLimit> S> void fields(W& w, S& limit)
{
    w.part("warmest", limit.warmest, Need::Must);
    w.part("fromAge", limit.fromAge);
    w.part("untilAge", limit.untilAge);
}

template <class W, Like<Material> S> void fields(W& w, S& material)
{
    w.text("key", material.key, Need::Must);
    w.text("name", material.name, Need::Must);
    w.text("tile", material.tile, Need::May);
    w.text("family", material.family, Need::Must);
    w.text("law", material.law, Need::Must);
    w.part("potLife", material.potLife);
    w.part("potReference", material.potReference, Need::Must);
    w.text("ratio", material.ratio, Need::May);
    w.list("heatLimits", material.heatLimits, Need::May);
    w.part("handOverWait", material.handOverWait);
    w.part("fullCure", material.fullCure);
    w.part("cureReference", material.cureReference);
    w.texts("cautions", material.cautions);
}

template <class W, Like<Answer> S> void fields(W& w, S& answer)
{
    w.text("key", answer.key, Need::Must);
    w.text("text", answer.text, Need::Must);
    w.text("ends", answer.ends, Need::May);
}

template <class W, Like<BenchState> S> void fields(W& w, S& state)
{
    w.text("key", state.key, Need::Must);
    w.text("text", state.text, Need::Must);
    w.text("toldOver", state.toldOver, Need::May);
    w.text("toldOn", state.toldOn, Need::May);
    w.part("lasts", state.lasts);
}

template <class W, Like<Hazard> S> void fields(W& w, S& hazard)
{
    w.text("key", hazard.key, Need::Must);
    w.text("title", hazard.title, Need::Must);
    w.text("why", hazard.why, Need::Must);
    w.choice("meeting", hazard.meeting, meetingWords, Need::Must);
    w.choice("verdict", hazard.verdict, verdictWords, Need::Must);
    w.choice("reach", hazard.reach, reachWords, Need::Must);
    w.texts("one", hazard.one);
    w.texts("other", hazard.other);
    w.part("temperature", hazard.temperature);
    w.part("margin", hazard.margin);
    w.part("humidity", hazard.humidity);
    w.part("span", hazard.span);
    w.choice("startingOne", hazard.startingOne, verdictWords);
    w.choice("nearby", hazard.nearby, verdictWords);
    w.choice("spares", hazard.spares, sparesWords, Need::May);
    w.flag("whenDrier", hazard.whenDrier);
    w.texts("exceptStages", hazard.exceptStages);
    w.list("answers", hazard.answers, Need::May);
    w.text("said", hazard.said, Need::Must);
    fields(w, hazard.source);
}

template <class W, Like<Caution> S> void fields(W& w, S& caution)
{
    w.text("key", caution.key, Need::Must);
    w.text("text", caution.text, Need::Must);
    fields(w, caution.source);
}

template <class W, Like<Practice> S> void fields(W& w, S& practice)
{
    w.part("benchReadingAge", practice.benchReadingAge, Need::Must);
    w.part("cabinetReadingAge", practice.cabinetReadingAge, Need::Must);
    w.part("runChip", practice.runChip, Need::Must);
    w.part("runSeam", practice.runSeam, Need::Must);
    w.part("twoTapsFrom", practice.twoTapsFrom, Need::Must);
}

template <class W, Like<OwnFigure> S> void fields(W& w, S& own)
{
    w.text("of", own.of, Need::Must);
    w.text("path", own.path, Need::Must);
    w.part("span", own.span);
    w.part("temperature", own.temperature);
    fields(w, own.source);
}

template <class W, Like<cure::EnergyBand> S> void fields(W& w, S& band) { w.amount(band.typical, band.low, band.high); }

template <class W, Like<cure::ClockOnly> S> void fields(W&, S&) {}

template <class W, Like<cure::Arrhenius> S> void fields(W& w, S& law)
{
    w.part("energy", law.energy, Need::Must);
    w.part("bend", law.bend);
    if (law.bend) {
        w.part("aboveBend", law.aboveBend, Need::Must);
    }
    w.part("noCreditBelow", law.noCreditBelow, Need::Must);
    w.part("noExtraAbove", law.noExtraAbove, Need::Must);
}

template <class W, Like<cure::HumidBand> S> void fields(W& w, S& law)
{
    w.part("coldest", law.coldest, Need::Must);
    w.part("warmest", law.warmest, Need::Must);
    w.part("driest", law.driest, Need::Must);
    w.part("dampest", law.dampest, Need::Must);
}

template <class W, Like<NamedLaw> S> void fields(W& w, S& named)
{
    w.text("key", named.key, Need::Must);
    auto kind = static_cast<LawKind>(named.law.index());
    w.choice("kind", kind, lawWords, Need::Must);
    if constexpr (W::reading) {
        switch (kind) {
        case LawKind::Clock:
            named.law = cure::ClockOnly{};
            break;
        case LawKind::Arrhenius:
            named.law = cure::Arrhenius{};
            break;
        case LawKind::HumidBand:
            named.law = cure::HumidBand{};
            break;
        }
    }
    std::visit([&w](auto& law) { fields(w, law); }, named.law);
    fields(w, named.source);
}

} // namespace mend::rules
