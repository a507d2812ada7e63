#pragma once

#include "core/bench/acts.h"
#include "core/bench/card.h"

#include <random>
#include <string>
#include <vector>

namespace mend::test {

/// A bench at which somebody taps at random, but only what the cards offer: several pieces over the
/// procedures of a book, with mixes, readings warm and cold, moves, gaps, voids, retellings, holds and
/// clock steps between. The same seed tells the same; times run forward only.
class RandomBench {
public:
    RandomBench(unsigned seed, const rules::RuleBook& book, int pieces = 4);

    /// Lets some time go by and tells one act: its events, numbered on, already among `events`.
    std::vector<bench::Event> step();

    const bench::Roster& roster() const { return m_roster; }
    const std::vector<bench::Event>& events() const { return m_events; }
    Instant now() const { return m_now; }
    Moment moment() const;
    bench::BenchFold fold() const { return bench::fold(m_roster, m_events, m_book); }
    bench::Board board() const { return bench::boardOf(fold(), m_book, m_now); }

    int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }
    bool oneIn(int many) { return upTo(many - 1) == 0; }

private:
    template <class T> const T& anyOf(const std::vector<T>& of)
    {
        return of[static_cast<std::size_t>(upTo(static_cast<int>(of.size()) - 1))];
    }
    void furnish(int pieces);
    void takeIn();
    void passTime(const bench::BenchFold& bench);
    std::vector<bench::Event> tap(const bench::BenchFold& bench);
    std::vector<bench::Event> aside(const bench::BenchFold& bench);
    std::vector<bench::Event> mix(const bench::BenchFold& bench);
    std::vector<bench::Event> takeBack();
    std::vector<bench::Event> ofAPiece(const bench::BenchFold& bench);
    bench::Event reading();
    bench::Event told(bench::What what) const { return bench::toldNow(what, {moment(), PersonId(1)}); }
    void number(std::vector<bench::Event>& events);

    std::mt19937 m_random;
    const rules::RuleBook& m_book;
    bench::Roster m_roster;
    std::vector<bench::Event> m_events;
    Instant m_now;
    Instant m_boot;
};

} // namespace mend::test
