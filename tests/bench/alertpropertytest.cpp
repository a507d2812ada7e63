#include "core/bench/alertdesk.h"
#include "core/bench/alertlist.h"

#include "tests/bench/alertdesk_support.h"

#include <cstdlib>
#include <gtest/gtest.h>
#include <random>
#include <set>

// What must hold of the desk whatever happens: random benches, answers, pauses, hours, busy hands and restarts.
namespace mend::bench::test {

namespace {

class Dice {
public:
    explicit Dice(std::uint64_t seed) : m_random(seed) {}
    std::int64_t between(std::int64_t least, std::int64_t most)
    {
        return std::uniform_int_distribution<std::int64_t>(least, most)(m_random);
    }
    Span span(Span least, Span most) { return Span(between(least.count(), most.count())); }
    bool oneIn(int sides) { return between(1, sides) == 1; }

private:
    std::mt19937_64 m_random;
};

/// A few windows over three hours.
std::vector<Alert> randomAlerts(Dice& dice)
{
    std::vector<Alert> alerts;
    const auto count = dice.between(1, 8);
    for (std::int64_t i = 0; i < count; ++i) {
        const std::string name = "Piece " + std::to_string(i);
        const Instant opens = noon + dice.span(minutes(0), hours(2));
        if (dice.oneIn(3)) {
            alerts.push_back(opening(name, opens, dice.oneIn(2) ? Urgency::B : Urgency::C));
            continue;
        }
        const Span width = dice.span(minutes(3), minutes(90));
        const Span hands = dice.span(Span{0}, width - seconds(30));
        const auto miss = dice.oneIn(2) ? rules::Miss::Day : rules::Miss::FreshMix;
        const Alert alert = closing(name, opens, opens + width, hands, miss);
        alerts.push_back(alert);
        alerts.push_back(closed(alert));
    }
    return alerts;
}

/// What was said of a call, to be held against the rules.
struct Said {
    Instant at;
    std::string call;
    Alert alert;
};

/// Runs one random afternoon and hands every decision to a check.
class Afternoon {
public:
    explicit Afternoon(std::uint64_t seed) : dice(seed), run(noon), m_all(randomAlerts(dice))
    {
        for (const Alert& alert : m_all) {
            m_byKey[alert.key] = alert;
        }
    }

    /// What goes on besides the windows.
    struct Goings {
        bool answers = false;   ///< "heard", put off, acts
        bool restarts = false;  ///< killed and started again
        bool disturbed = false; ///< pauses, hours, counted windows, busy hands
    };

    template <class Check> void live(const Goings& goings, const Check& check)
    {
        const Instant end = noon + hours(4);
        while (run.inputs.now < end) {
            refresh();
            const Decision decision = run.look();
            note(decision);
            check(decision);
            if (goings.answers) {
                answerSomething(decision);
            }
            if (goings.disturbed && dice.oneIn(20)) {
                disturb();
            }
            if (goings.restarts && dice.oneIn(15)) {
                run.restart();
            }
            const Instant step = run.inputs.now + dice.span(milliseconds(1), minutes(3));
            const Instant next = decision.next.value_or(end);
            run.inputs.now = std::min(dice.oneIn(6) ? std::min(step, next) : next, end);
        }
    }

    /// Was every costly window heard before its latest start?
    testing::AssertionResult everyAWasHeard() const
    {
        for (const Alert& alert : m_all) {
            const bool inTime = std::ranges::any_of(
                said, [&](const Said& one) { return one.alert.key == alert.key && one.at < *alert.latestStart; });
            if (alert.kind == AlertKind::Closes && alert.urgency == Urgency::A && !inTime) {
                return testing::AssertionFailure() << alert.key << " of " << toRfc3339(*alert.closes);
            }
        }
        return testing::AssertionSuccess();
    }

    Dice dice;
    DeskRun run;
    std::vector<Said> said;

private:
    /// A window that has closed calls no more; one that has not is not closed yet; acts take both away.
    void refresh()
    {
        run.alerts.clear();
        for (const Alert& alert : m_all) {
            const auto act = m_acts.find(alert.benchName);
            const bool gone = (act != m_acts.end() && run.inputs.now >= act->second) ||
                              (alert.kind == AlertKind::Closes && run.inputs.now >= *alert.closes);
            if (!gone) {
                run.alerts.push_back(alert);
            }
        }
        if (m_step) {
            run.alerts.push_back(*m_step);
        }
    }

    /// Whatever was heard is acted on a while later, so that an afternoon is not all repeats.
    void note(const Decision& decision)
    {
        if (!decision.play) {
            return;
        }
        for (const std::string& key : decision.play->keys) {
            if (m_byKey.contains(key)) {
                const AlertAnswer* answered = lastAnswer(key);
                const bool wasPutOff = answered && answered->how != answeredKey(Answered::Shown);
                const std::string which = wasPutOff ? std::to_string(answered->at.time_since_epoch().count()) : "";
                said.push_back({run.inputs.now, decision.memory.heard.at(key).call + which, m_byKey.at(key)});
                m_acts.emplace(m_byKey.at(key).benchName, run.inputs.now + dice.span(seconds(1), minutes(4)));
            }
        }
    }

    const AlertAnswer* lastAnswer(const std::string& key) const
    {
        const auto found = std::ranges::find(run.answers, key, &AlertAnswer::key);
        return found == run.answers.end() ? nullptr : &*found;
    }

    void answerSomething(const Decision& decision)
    {
        if (decision.visible.empty() || !dice.oneIn(4)) {
            return;
        }
        const std::string key = decision.visible.front().key;
        if (!m_byKey.contains(key)) {
            return;
        }
        switch (dice.between(0, 3)) {
        case 0:
            run.answer(key, Answered::Heard);
            break;
        case 1:
            run.answer(key, Answered::StartAt, run.inputs.now + dice.span(minutes(1), minutes(30)));
            break;
        case 2:
            run.answer(key, Answered::AfterStep);
            break;
        default:
            m_acts[m_byKey.at(key).benchName] = run.inputs.now;
            break;
        }
    }

    void disturb()
    {
        switch (dice.between(0, 4)) {
        case 0:
            run.inputs.soundPausedUntil = pausedUntil(run.inputs.now, dice.span(minutes(1), minutes(20)));
            break;
        case 1:
            run.inputs.benchOpen = !run.inputs.benchOpen;
            break;
        case 2:
            run.inputs.counting = Counting{run.inputs.now + seconds(90), {run.inputs.now + seconds(50)}};
            break;
        case 3: {
            Alert step = opening("Step", run.inputs.now);
            step.handsOn = dice.span(minutes(1), minutes(20));
            m_step = underHands(step, run.inputs.now)[1];
            break;
        }
        default:
            m_step.reset();
            break;
        }
    }

    std::vector<Alert> m_all;
    std::map<std::string, Alert> m_byKey;
    std::map<std::string, Instant> m_acts; ///< when the mender acts on a piece
    std::optional<Alert> m_step;
};

/// Five properties over 2,000 afternoons each; MEND_ALERT_AFTERNOONS asks for more.
const std::uint64_t cases = [] {
    const char* asked = std::getenv("MEND_ALERT_AFTERNOONS");
    return asked ? std::strtoull(asked, nullptr, 10) : 2'000ULL;
}();
const auto unchecked = [](const Decision&) {};

} // namespace

TEST(AlertProperty, NothingIsSaidEarlyOrTwiceNotEvenOverRestarts)
{
    for (std::uint64_t seed = 1; seed <= cases; ++seed) {
        Afternoon afternoon(seed);
        afternoon.live({.answers = true, .restarts = seed % 2 == 0, .disturbed = true}, unchecked);
        std::set<std::string> calls;
        for (const Said& said : afternoon.said) {
            ASSERT_GE(said.at, said.alert.due) << "seed " << seed << ' ' << said.call;
            ASSERT_TRUE(calls.insert(said.call).second) << "seed " << seed << ' ' << said.call;
        }
    }
}

TEST(AlertProperty, EveryAIsHeardBeforeItsLatestStart)
{
    for (std::uint64_t seed = 1; seed <= cases; ++seed) {
        Afternoon afternoon(seed);
        afternoon.live({.restarts = seed % 2 == 0}, unchecked);
        ASSERT_TRUE(afternoon.everyAWasHeard()) << "seed " << seed;
    }
}

TEST(AlertProperty, EveryAIsHeardInTimeOverBusyHandsAndCountedWindows)
{
    for (std::uint64_t seed = 1; seed <= cases; ++seed) {
        Afternoon afternoon(seed);
        // Pauses and hours are a person's own wish and may keep it silent; hands and counting may not.
        afternoon.live({.disturbed = true}, [&](const Decision&) {
            afternoon.run.inputs.benchOpen = true;
            afternoon.run.inputs.soundPausedUntil.reset();
        });
        ASSERT_TRUE(afternoon.everyAWasHeard()) << "seed " << seed;
    }
}

TEST(AlertProperty, OneSoundAtATimeAndTheMostUrgentFirst)
{
    for (std::uint64_t seed = 1; seed <= cases; ++seed) {
        Afternoon afternoon(seed);
        afternoon.live({.answers = true, .disturbed = true}, [&](const Decision& decision) {
            ASSERT_LE(decision.play ? decision.play->speech.size() : 0u, 4u);
            ASSERT_TRUE(std::ranges::is_sorted(decision.visible, std::greater{}, &VisibleAlert::urgency));
            ASSERT_LE(std::ranges::count_if(decision.visible,
                                            [](const VisibleAlert& alert) { return milliHertz(alert.look) > 0; }),
                      1);
        });
        const auto& heard = afternoon.run.heard;
        for (std::size_t i = 1; i < heard.size(); ++i) {
            const Signal before = heard[i - 1].play.signal;
            const Signal after = heard[i].play.signal;
            const bool overlaps = heard[i].at < heard[i - 1].at + burstLength(before);
            ASSERT_TRUE(!overlaps || after == Signal::None || after > before) << "seed " << seed;
        }
    }
}

TEST(AlertProperty, NothingChangesBeforeTheNextInstantThatIsNamed)
{
    for (std::uint64_t seed = 1; seed <= cases; ++seed) {
        Afternoon afternoon(seed);
        afternoon.live({.answers = true, .disturbed = true}, [&](const Decision& decision) {
            const Instant now = afternoon.run.inputs.now;
            const Instant next = decision.next.value_or(now + hours(10));
            if (next - now < milliseconds(2)) {
                return;
            }
            DeskInputs between = afternoon.run.inputs;
            between.now = now + afternoon.dice.span(milliseconds(1), next - now - milliseconds(1));
            const Decision then = decide(decision.memory, afternoon.run.alerts, afternoon.run.answers, between);
            ASSERT_FALSE(then.play.has_value()) << "seed " << seed;
            ASSERT_EQ(then.visible, decision.visible) << "seed " << seed;
            ASSERT_EQ(then.shelved, decision.shelved) << "seed " << seed;
            ASSERT_EQ(then.busy, decision.busy) << "seed " << seed;
            ASSERT_TRUE(then.notify.empty() && then.facts.empty()) << "seed " << seed;
        });
        if (HasFatalFailure()) {
            return;
        }
    }
}

} // namespace mend::bench::test
