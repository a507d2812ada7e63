#include "tests/plan/judge.h"

#include <algorithm>
#include <map>
#include <set>

namespace mend::test {
namespace {

using plan::slot;

/// Everything that lies on the bench at one minute from now on.
struct AtMinute {
    std::map<int, int> used;                          ///< resource: how much
    std::map<std::string, std::set<std::string>> who; ///< tag: steps and waits that carry it
    std::map<int, std::set<std::size_t>> hands;       ///< person: steps
};

class MinuteJudge {
public:
    MinuteJudge(const plan::Problem& problem, const plan::Timetable& table) : m_p(problem), m_t(table) {}

    std::vector<std::string> take()
    {
        for (std::size_t i = 0; i < m_p.steps.size(); ++i) {
            step(i);
        }
        for (const plan::Lag& lag : m_p.lags) {
            if (m_p.steps[slot(lag.from)].started && m_p.steps[slot(lag.to)].started) {
                continue;
            }
            const int gap = m_t.start[slot(lag.to)] - end(slot(lag.from));
            if (gap < lag.least) {
                say("LAG-MIN", m_p.steps[slot(lag.from)].id);
            }
            if (lag.most.has_value() && gap > lag.most.value()) {
                say("LAG-MAX", m_p.steps[slot(lag.from)].id);
            }
        }
        lay();
        minutes();
        return {m_said.begin(), m_said.end()};
    }

private:
    int end(std::size_t i) const { return m_t.start[i] + m_p.steps[i].duration; }
    void say(const std::string& code, const std::string& what) { m_said.insert(code + " " + what); }

    void step(std::size_t i)
    {
        const plan::Step& step = m_p.steps[i];
        if (step.started) {
            if (m_t.start[i] != step.started.value()) {
                say("STARTED-MOVED", step.id);
            }
            if (m_t.person[i] != step.person) {
                say("STARTED-PERSON", step.id);
            }
            return;
        }
        if (m_t.start[i] < m_p.now) {
            say("BEFORE-NOW", step.id);
        }
        if (end(i) > m_p.horizon) {
            say("AFTER-HORIZON", step.id);
        }
        if (step.earliest && m_t.start[i] < step.earliest.value()) {
            say("EARLIEST", step.id);
        }
        if (step.latestEnd && end(i) > step.latestEnd.value()) {
            say("LATEST-END", step.id);
        }
        openAllTheWhile(i);
        if (step.hands != m_t.person[i].has_value()) {
            say(step.hands ? "NO-PERSON" : "PERSON-ON-UNATTENDED", step.id);
        }
    }

    void openAllTheWhile(std::size_t i)
    {
        if (!m_p.steps[i].hands) {
            return;
        }
        int openings = 0; // the stretches touched; none touches another, so one and whole is inside
        int minutesOpen = 0;
        for (const plan::Stretch& open : m_p.open) {
            int inside = 0;
            for (int m = m_t.start[i]; m < end(i); ++m) {
                inside += m >= open.from && m < open.to ? 1 : 0;
            }
            openings += inside > 0 ? 1 : 0;
            minutesOpen += inside;
        }
        if (openings != 1 || minutesOpen != m_p.steps[i].duration) {
            say("BENCH-CLOSED", m_p.steps[i].id);
        }
    }

    void lay()
    {
        const auto stretch = [&](const std::string& id, int from, int to, const std::vector<plan::Use>& uses,
                                 const std::vector<std::string>& tags, bool history) {
            if (history) {
                m_history.insert(id);
            }
            for (int m = std::max(from, m_p.now); m < to; ++m) {
                AtMinute& at = m_minutes[m];
                for (const plan::Use& use : uses) {
                    at.used[use.resource] += use.amount;
                }
                for (const std::string& tag : tags) {
                    at.who[tag].insert(id);
                }
            }
        };
        for (std::size_t i = 0; i < m_p.steps.size(); ++i) {
            const plan::Step& s = m_p.steps[i];
            stretch(s.id, m_t.start[i], end(i), s.uses, s.tags, s.started.has_value());
            for (int m = m_t.start[i]; s.hands && m_t.person[i] && m < end(i); ++m) {
                m_minutes[m].hands[*m_t.person[i]].insert(i);
            }
        }
        for (const plan::Wait& w : m_p.waits) {
            stretch(w.id, end(slot(w.from)), m_t.start[slot(w.to)], w.uses, w.tags,
                    m_p.steps[slot(w.from)].started && m_p.steps[slot(w.to)].started);
        }
    }

    void minutes()
    {
        for (const auto& [minute, at] : m_minutes) {
            for (const auto& [resource, used] : at.used) {
                if (used > m_p.resources[slot(resource)].capacity) {
                    say("CAPACITY", m_p.resources[slot(resource)].id);
                }
            }
            for (const auto& [person, steps] : at.hands) {
                const auto todo = std::count_if(steps.begin(), steps.end(),
                                                [&](std::size_t i) { return !m_p.steps[i].started.has_value(); });
                if (steps.size() > 1 && todo > 0) {
                    say("PERSON-OVERLAP", m_p.people[slot(person)]);
                }
            }
            for (const auto& [one, other] : m_p.incompatible) {
                tags(at, one, other);
            }
        }
    }

    void tags(const AtMinute& at, const std::string& one, const std::string& other)
    {
        const auto a = at.who.find(one);
        const auto b = at.who.find(other);
        if (a == at.who.end() || b == at.who.end()) {
            return;
        }
        for (const std::string& x : a->second) {
            for (const std::string& y : b->second) {
                if (x != y && !(m_history.count(x) != 0 && m_history.count(y) != 0)) {
                    say("INCOMPATIBLE", std::min(x, y) + " and " + std::max(x, y));
                }
            }
        }
    }

    const plan::Problem& m_p;
    const plan::Timetable& m_t;
    std::set<std::string> m_said;
    std::set<std::string> m_history;
    std::map<int, AtMinute> m_minutes;
};

} // namespace

std::vector<std::string> judge(const plan::Problem& problem, const plan::Timetable& table)
{
    return MinuteJudge(problem, table).take();
}

plan::Score judgedScore(const plan::Problem& problem, const plan::Timetable& table)
{
    plan::Score score;
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        std::optional<int> done;
        for (std::size_t i = 0; i < problem.steps.size(); ++i) {
            if (slot(problem.steps[i].piece) == p) {
                done = std::max(done.value_or(-plan::farthest), table.start[i] + problem.steps[i].duration);
            }
        }
        score.flow += done.value_or(0) - problem.now;
        if (done.value_or(0) > problem.pieces[p].promised) {
            score.tardiness += problem.pieces[p].weight * (done.value_or(0) - problem.pieces[p].promised);
        }
    }
    return score;
}

} // namespace mend::test
