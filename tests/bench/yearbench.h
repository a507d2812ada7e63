#pragma once

#include "core/bench/alertdesk.h"

#include <map>
#include <random>
#include <string>
#include <vector>

namespace mend::bench::test {

/// Chance with a fixed seed.
class YearDice {
public:
    explicit YearDice(std::uint64_t seed) : m_random(seed) {}
    double share() { return std::uniform_real_distribution<double>(0.0, 1.0)(m_random); }
    bool chance(double of) { return share() < of; }
    Span span(Span least, Span most)
    {
        return Span(std::uniform_int_distribution<std::int64_t>(least.count(), most.count())(m_random));
    }
    std::size_t below(std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(m_random); }

private:
    std::mt19937_64 m_random;
};

/// Names one run of one window over a whole year.
struct WindowRun {
    PieceId piece;
    StageInstance stage;
    EventId run;
    auto operator<=>(const WindowRun&) const = default;
};
WindowRun runOfWindow(const Window& window);

/// The bench of a virtual year: what was told, and what the real fold, windows and alerts make of it. Each piece is
/// folded by itself, for speed; a restart folds everything and says whether that is the same.
class YearBench {
public:
    explicit YearBench(const rules::RuleBook& book);

    static constexpr PlaceId benchPlace{1};
    static constexpr PlaceId shelf{2};
    static constexpr PlaceId cabinet{3};
    static constexpr PlaceId humidBox{4};
    static constexpr PlaceId tray{5};
    static constexpr PlaceId outside{6};
    PlaceId placeOf(const rules::Stage& stage) const;

    PieceId receive(const std::string& procedure, Instant now, YearDice& dice);
    EventId tell(Event event, Instant now);
    /// Gone from the bench with everything told of it.
    void handOver(PieceId piece);
    void reboot() { ++m_boots; }

    /// Works out anew what the last events changed.
    void refresh(Instant now);
    /// Whether folding everything told gives the same pieces and answers.
    bool isSameAfterRestart();

    const BenchFold& bench() const { return m_bench; }
    const std::vector<Window>& windows() const { return m_windows; }
    const std::vector<Alert>& alerts() const { return m_alerts; }
    const rules::RuleBook& book() const { return m_book; }
    const rules::Stage* stageOf(const Window& window) const;
    Roster& roster() { return m_bench.roster; }
    /// When a window closes next: the alerts have to be worked out again then.
    std::optional<Instant> nextClose() const { return m_nextClose; }

private:
    void foldPiece(PieceId piece);
    void foldShared();
    std::vector<Event> everything() const;
    void answer(const Event& event);
    void forgetOldReadings();

    const rules::RuleBook& m_book;
    BenchFold m_bench;
    std::map<PieceId, std::vector<Event>> m_told;
    std::map<PieceId, std::vector<Event>> m_answers;
    std::vector<Event> m_shared;
    std::set<PieceId> m_changed;
    std::map<PieceId, std::vector<Window>> m_windowsOf;
    std::vector<Window> m_windows;
    std::vector<Alert> m_alerts;
    std::optional<Instant> m_nextClose;
    bool m_airChanged = true;
    bool m_answersChanged = false;
    bool m_stepped = false;
    std::int64_t m_lastEvent = 0;
    std::int64_t m_lastPiece = 0;
    int m_boots = 1;
};

} // namespace mend::bench::test
