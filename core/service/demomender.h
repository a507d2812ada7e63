#pragma once

#include "core/bench/acts.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::service {

/// Plays a mender who works one piece after the other through its procedure, as soon as the rules and
/// the bench hours allow, and tells every act as the program would. All times come from the rules.
class DemoMender {
public:
    /// `now`: the instant the demo stands at; every bench day lies round the same time of day.
    DemoMender(const rules::RuleBook& book, bench::Roster roster, std::vector<bench::Event> air, Moment now);

    /// Takes the piece in and works on it until `stage` would be next; empty where it never is.
    /// It ends before `end`, on the last bench day on which it can. Gives the last touch.
    std::optional<Instant> workUpTo(PieceId piece, const std::string& stage, Instant end, PersonId hands);
    /// One stage more, told as begun and done at these times, with a new mix where it needs one.
    /// `keepsMix`: the mix stays alive.
    void work(PieceId piece, const std::string& stage, InstantRange when, PersonId hands, bool keepsMix = false);
    /// Takes back everything told of a piece since that instant.
    void forgetSince(PieceId piece, Instant since);
    void tell(bench::Event event);

    /// What the hands of this piece usually take for a stage.
    Span handsOn(PieceId piece, const std::string& stage) const;
    /// The window of the first repetition that is to do, as it looks at `at`.
    std::optional<bench::Window> windowOf(PieceId piece, const std::string& stage, Instant at) const;

    const bench::Roster& roster() const { return m_roster; }
    /// Everything told so far, numbered in the order in which it happened.
    std::vector<bench::Event> events() const;
    bench::Event toldAt(bench::What what, Instant at, PersonId person = {}) const;

private:
    struct Walk {
        std::vector<bench::Event> told;
        Instant at;
    };
    std::optional<Walk> walk(PieceId piece, const std::string& stage, Instant from, PersonId hands);
    std::optional<bench::Window> nextWindow(const Walk& walk, PieceId piece) const;
    void perform(Walk& walk, PieceId piece, const bench::StageInstance& stage, InstantRange when, PersonId hands,
                 bool keepsMix);
    void endMixes(Walk& walk, const bench::BenchFold& bench, const std::string& keep, Instant at, PersonId hands) const;
    bench::BenchFold foldOf(const std::vector<bench::Event>& told, PieceId piece, Instant at) const;
    Instant firstFree(Instant from, Span length, PersonId hands) const;
    std::vector<bench::Event> toldOf(PieceId piece) const;
    MixId newMix() { return MixId(++m_mixes); }

    const rules::RuleBook& m_book;
    bench::Roster m_roster;
    std::vector<bench::Event> m_air;
    std::vector<bench::Event> m_told;
    Moment m_now;
    std::int64_t m_mixes = 1'000'000; // renumbered when all is told
    std::vector<std::pair<PersonId, InstantRange>> m_busy;
};

/// The bench day of the demo that `at` falls into or follows: from six hours before the time of day
/// of `now` until four and a half after it.
InstantRange demoDay(Instant now, Instant at);

} // namespace mend::service
