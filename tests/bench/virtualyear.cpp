#include "tests/bench/virtualyear.h"

#include "tests/bench/yearjudge.h"
#include "tests/bench/yearmender.h"

#include <algorithm>
#include <array>
#include <deque>

namespace mend::bench::test {

namespace {

using std::chrono::days;
using std::chrono::hours;
using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

const Instant newYear = std::chrono::sys_days{std::chrono::year{2027} / 1 / 4}; // a Monday

/// Central European time in 2027: summer from 28 March to 31 October, each at 01:00 UTC (tz database).
Span offsetFromUtc(Instant utc)
{
    const Instant summer = std::chrono::sys_days{std::chrono::year{2027} / 3 / 28} + hours(1);
    const Instant winter = std::chrono::sys_days{std::chrono::year{2027} / 10 / 31} + hours(1);
    return utc >= summer && utc < winter ? hours(2) : hours(1);
}

/// What happens to the studio, not by the mender's hand.
enum class Turn { Opens, Closes, Reading, Sleeps, Wakes, Killed, Started, Rebooted, StepsOn, StepsBack, Arrives };
struct Happening {
    Instant at; ///< true time, whatever the wall clock says
    Turn turn = Turn::Reading;
    Span by{0};
};

class Year {
public:
    Year(std::uint64_t seed, const rules::RuleBook& book, int dayCount)
        : m_dice(seed), m_bench(book), m_mender(m_bench, m_dice), m_judge(m_bench, m_figures)
    {
        m_figures.days = dayCount;
        for (int day = 0; day < dayCount; ++day) {
            planDay(day);
        }
        std::ranges::stable_sort(m_ahead, {}, &Happening::at);
        for (int i = 0; i < 8; ++i) {
            receive(newYear);
        }
        read(newYear);
        m_bench.refresh(newYear);
    }

    YearFigures live()
    {
        m_now = newYear;
        const Instant end = newYear + days(m_figures.days);
        while (m_now < end) {
            while (!m_ahead.empty() && m_ahead.front().at <= m_now) {
                const Happening happening = m_ahead.front();
                m_ahead.pop_front();
                turn(happening);
            }
            m_bench.refresh(wall());
            if (m_gap) {
                look(); // before anybody can tap
            }
            m_mender.live(wall(), day());
            handOverMended();
            m_bench.refresh(wall());
            look();
            goOn(end);
        }
        m_judge.finish();
        m_figures.inHand /= static_cast<double>(m_figures.days) * 24.0;
        return m_figures;
    }

private:
    Instant wall() const { return m_now + m_skew; }
    bool isAwake() const { return m_asleepSince == Instant{}; }
    YearMender::Day day() const { return {m_open && isAwake(), m_dayEnds + m_skew, isAwake()}; }

    void happen(Instant at, Turn turn, Span by = Span{0}) { m_ahead.push_back({at, turn, by}); }

    void planDay(int number)
    {
        const Instant midnight = newYear + days(number) - offsetFromUtc(newYear + days(number));
        const Instant opens = newYear + days(number) + hours(9) - offsetFromUtc(newYear + days(number) + hours(9));
        const Instant closes = opens + hours(8);
        const bool works = number % 7 < 5;
        for (const int hour : {9, 13, 16}) {
            happen(opens + hours(hour - 9) + minutes(5), Turn::Reading);
        }
        if (works) {
            happen(opens, Turn::Opens);
            happen(closes, Turn::Closes);
            m_bench.roster().openHours.push_back({opens, closes});
            for (int i = 0; i < 2; ++i) {
                happen(opens + m_dice.span(minutes(10), hours(7)), Turn::Arrives);
            }
        }
        if (m_dice.chance(0.75)) { // the night that ends this morning
            happen(midnight - hours(6) + m_dice.span(minutes(0), hours(3)), Turn::Sleeps);
            happen(opens - m_dice.span(minutes(-5), minutes(20)), Turn::Wakes);
        }
        if (works && m_dice.chance(0.3)) {
            const Instant naps = opens + m_dice.span(minutes(30), hours(6));
            happen(naps, Turn::Sleeps);
            happen(naps + m_dice.span(minutes(1), minutes(90)), Turn::Wakes);
        }
        if (works && m_dice.chance(0.5)) {
            const Instant killed = opens + m_dice.span(minutes(30), hours(7));
            happen(killed, m_dice.chance(0.2) ? Turn::Rebooted : Turn::Killed);
            happen(killed + m_dice.span(seconds(3), minutes(10)), Turn::Started);
        }
        planClock(opens);
    }

    /// Somebody sets the clock an hour wrong and right again; a time server puts it right by seconds.
    void planClock(Instant opens)
    {
        if (m_dice.chance(0.03)) {
            const Span by = m_dice.chance(0.5) ? hours(1) : hours(-1);
            const Instant at = opens + m_dice.span(hours(1), hours(6));
            happen(at, Turn::StepsOn, by);
            happen(at + m_dice.span(minutes(5), minutes(40)), Turn::StepsBack, -by);
        }
        if (m_dice.chance(0.03)) {
            happen(opens + m_dice.span(hours(1), hours(6)), Turn::StepsOn, m_dice.span(seconds(-9), seconds(9)));
        }
    }

    void turn(const Happening& happening)
    {
        switch (happening.turn) {
        case Turn::Opens:
            m_open = true;
            m_dayEnds = happening.at + hours(8);
            break;
        case Turn::Closes:
            m_open = false;
            break;
        case Turn::Reading:
            read(wall());
            break;
        case Turn::Sleeps:
            sleep();
            break;
        case Turn::Killed:
        case Turn::Rebooted:
            kill(happening.turn == Turn::Rebooted);
            break;
        case Turn::Wakes:
        case Turn::Started:
            wake();
            break;
        case Turn::StepsOn:
        case Turn::StepsBack:
            step(happening.by);
            break;
        case Turn::Arrives:
            if (m_bench.bench().pieces.size() < 9) {
                receive(wall());
            }
            break;
        }
    }

    void receive(Instant now)
    {
        static constexpr std::array procedures{"goldLacquerSeam", "goldLacquerSeam", "goldLacquerSeam", "invisibleMend",
                                               "invisibleMend",   "metalFilledSeam", "reversibleJoin",  "urushiSeam"};
        m_bench.receive(procedures[m_dice.below(procedures.size())], now, m_dice);
    }

    void read(Instant now)
    {
        const double season =
            -5.0 * std::cos(2.0 * 3.14159265 * static_cast<double>((m_now - newYear) / hours(24)) / 365.0);
        const double room = 21.0 + 0.5 * season + 6.0 * (m_dice.share() - 0.5);
        for (const auto& [place, celsius, percent] : std::vector<std::tuple<PlaceId, double, double>>{
                 {YearBench::benchPlace, room, 45.0},
                 {YearBench::shelf, room - 1.0, 45.0},
                 {YearBench::tray, room, 45.0},
                 {YearBench::cabinet, 40.0 + 2.0 * (m_dice.share() - 0.5), 30.0},
                 {YearBench::humidBox, 23.0, 75.0}}) {
            Event reading;
            reading.what = What::ReadingTaken;
            reading.place = place;
            reading.temperature = Temperature::fromCelsius(celsius);
            reading.humidity = percentHumidity(percent);
            m_bench.tell(reading, now);
        }
    }

    void sleep()
    {
        if (isAwake() && !m_mender.isBusy()) {
            m_asleepSince = m_now;
            ++m_figures.sleeps;
        }
    }

    void kill(bool reboots)
    {
        if (!isAwake()) {
            return;
        }
        m_asleepSince = m_now;
        m_memory = {};
        m_bench.refresh(wall());
        m_figures.unlikeAfterRestart += m_bench.isSameAfterRestart() ? 0 : 1;
        ++m_figures.restarts;
        if (reboots) {
            m_bench.reboot();
        }
    }

    void wake()
    {
        if (isAwake()) {
            return;
        }
        m_gap = InstantRange{m_asleepSince + m_skew, wall()};
        m_asleepSince = Instant{};
    }

    void step(Span by)
    {
        Event step;
        step.what = What::ClockStepped;
        step.amount = by.count();
        m_skew += by;
        m_bench.tell(step, wall());
        m_mender.moveClock(by);
        ++m_figures.clockSteps;
    }

    void handOverMended()
    {
        std::vector<PieceId> mended;
        for (const auto& [id, piece] : m_bench.bench().pieces) {
            const bool hasNone =
                std::ranges::none_of(m_bench.windows(), [&](const Window& window) { return window.piece == id; });
            if (hasNone && !piece.stages.empty()) {
                mended.push_back(id);
            }
        }
        for (const PieceId id : mended) {
            m_judge.handedOver(id);
            m_bench.handOver(id);
        }
    }

    void look()
    {
        m_judge.watch(wall(), m_skew, isAwake());
        if (!isAwake()) {
            return;
        }
        DeskInputs inputs;
        inputs.now = wall();
        inputs.benchOpen = m_open;
        inputs.counting = countingOf(m_bench.bench(), m_bench.windows(), m_bench.book(), wall());
        inputs.gap = m_gap;
        const Decision decision = decide(m_memory, m_bench.alerts(), m_bench.bench().answers, inputs);
        ++m_figures.looks;
        m_memory = decision.memory;
        m_gap.reset();
        m_next = decision.next;
        m_judge.hear(decision, wall(), m_now);
        for (const AlertFact& fact : decision.facts) {
            m_bench.tell(factEvent(fact, PersonId(1)), wall());
        }
        const std::vector<Alert> alerts = m_bench.alerts();
        if (decision.play) {
            for (const Alert& alert : alerts) {
                if (std::ranges::find(decision.play->keys, alert.key) != decision.play->keys.end()) {
                    m_mender.hear(alert, wall(), m_open);
                }
            }
        }
        m_bench.refresh(wall());
        fallAsleep();
    }

    /// Now and then the mender walks off and the machine goes to sleep over an open costly window.
    void fallAsleep()
    {
        const bool isOpen = std::ranges::any_of(m_bench.windows(), [&](const Window& window) {
            return rules::Miss::Afternoon <= window.miss && window.closes && phaseOf(window, wall()) == Phase::Open;
        });
        if (m_open && isOpen && m_dice.chance(0.02)) {
            const Happening wakes{m_now + m_dice.span(minutes(5), hours(2)), Turn::Wakes, {}};
            sleep();
            m_ahead.insert(std::ranges::upper_bound(m_ahead, wakes.at, {}, &Happening::at), wakes);
        }
    }

    void goOn(Instant end)
    {
        Instant next = m_ahead.empty() ? end : std::min(end, m_ahead.front().at);
        const auto consider = [&](std::optional<Instant> atWall) {
            if (atWall && *atWall - m_skew > m_now) {
                next = std::min(next, *atWall - m_skew);
            }
        };
        if (isAwake()) {
            consider(m_next);
        }
        consider(m_mender.next(wall(), day()));
        consider(m_bench.nextClose());
        consider(m_judge.next(wall()));
        m_figures.inHand += static_cast<double>(m_bench.bench().pieces.size()) *
                            std::chrono::duration<double, std::ratio<3600>>(next - m_now).count();
        if (m_open) {
            m_figures.benchTenMinutes += std::chrono::duration<double, std::ratio<600>>(next - m_now).count();
        }
        m_now = next;
    }

    YearFigures m_figures;
    YearDice m_dice;
    YearBench m_bench;
    YearMender m_mender;
    YearJudge m_judge;
    std::deque<Happening> m_ahead;
    AlertMemory m_memory;
    Instant m_now;
    Instant m_dayEnds;
    Instant m_asleepSince{};
    Span m_skew{0};
    std::optional<InstantRange> m_gap;
    std::optional<Instant> m_next;
    bool m_open = false;
};

} // namespace

YearFigures liveAYear(std::uint64_t seed, const rules::RuleBook& book, int days)
{
    return Year(seed, book, days).live();
}

} // namespace mend::bench::test
