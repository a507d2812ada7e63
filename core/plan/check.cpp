#include "core/plan/check.h"

#include <algorithm>
#include <cassert>
#include <tuple>

namespace mend::plan {
namespace {

/// A step or a wait as it lies in the timetable.
struct Lying {
    const std::string* id = nullptr;
    Minute from = 0;
    Minute to = 0;
    const std::vector<Use>* uses = nullptr;
    const std::vector<std::string>* tags = nullptr;
    bool history = false;
};

class PlanGate {
public:
    PlanGate(const Problem& problem, const Timetable& table) : m_problem(problem), m_table(table) {}

    std::vector<Violation> take()
    {
        for (std::size_t i = 0; i < m_problem.steps.size(); ++i) {
            m_problem.steps[i].started ? judgeStarted(i) : judgeTodo(i);
        }
        judgeLags();
        judgePeople();
        const std::vector<Lying> lying = lyingAll();
        for (std::size_t r = 0; r < m_problem.resources.size(); ++r) {
            judgeCapacity(lying, static_cast<int>(r));
        }
        for (const auto& [one, other] : m_problem.incompatible) {
            judgePair(lying, one, other);
        }
        return std::move(m_found);
    }

private:
    void add(Broken what, std::string text) { m_found.push_back({what, std::move(text)}); }
    Minute start(std::size_t i) const { return m_table.start[i]; }
    Minute end(std::size_t i) const { return m_table.start[i] + m_problem.steps[i].duration; }
    static std::size_t at(int index) { return static_cast<std::size_t>(index); }

    void judgeStarted(std::size_t i)
    {
        const Step& step = m_problem.steps[i];
        if (start(i) != *step.started) {
            add(Broken::StartedMoved, step.id);
        }
        if (m_table.person[i] != step.person) {
            add(Broken::StartedPerson, step.id);
        }
    }

    void judgeTodo(std::size_t i)
    {
        const Step& step = m_problem.steps[i];
        if (start(i) < m_problem.now) {
            add(Broken::BeforeNow, step.id);
        }
        if (end(i) > m_problem.horizon) {
            add(Broken::AfterHorizon, step.id);
        }
        if (step.earliest && start(i) < *step.earliest) {
            add(Broken::Earliest, step.id);
        }
        if (step.latestEnd && end(i) > *step.latestEnd) {
            add(Broken::LatestEnd, step.id);
        }
        if (!step.hands) {
            if (m_table.person[i]) {
                add(Broken::PersonOnUnattended, step.id);
            }
            return;
        }
        if (!m_table.person[i] || at(*m_table.person[i]) >= m_problem.people.size()) {
            add(Broken::NoPerson, step.id);
        }
        const bool inside = std::any_of(m_problem.open.begin(), m_problem.open.end(), [&](const Stretch& open) {
            return open.from <= start(i) && end(i) <= open.to;
        });
        if (!inside) {
            add(Broken::BenchClosed, step.id);
        }
    }

    void judgeLags()
    {
        for (const Lag& lag : m_problem.lags) {
            const Step& from = m_problem.steps[at(lag.from)];
            const Step& to = m_problem.steps[at(lag.to)];
            if (from.started && to.started) {
                continue;
            }
            const Minute gap = start(at(lag.to)) - end(at(lag.from));
            if (gap < lag.least) {
                add(Broken::LagMin, from.id + " -> " + to.id);
            }
            if (lag.most && gap > *lag.most) {
                add(Broken::LagMax, from.id + " -> " + to.id);
            }
        }
    }

    void judgePeople()
    {
        // By person and time, each need only be held against those that begin before it ends.
        std::vector<std::size_t> hands;
        for (std::size_t i = 0; i < m_problem.steps.size(); ++i) {
            if (m_problem.steps[i].hands && m_table.person[i]) {
                hands.push_back(i);
            }
        }
        std::sort(hands.begin(), hands.end(), [this](std::size_t a, std::size_t b) {
            return std::tuple(*m_table.person[a], start(a), a) < std::tuple(*m_table.person[b], start(b), b);
        });
        for (std::size_t i = 0; i < hands.size(); ++i) {
            for (std::size_t k = i + 1; k < hands.size() && m_table.person[hands[k]] == m_table.person[hands[i]] &&
                                        start(hands[k]) < end(hands[i]);
                 ++k) {
                const Step& one = m_problem.steps[hands[i]];
                const Step& other = m_problem.steps[hands[k]];
                if (!(one.started && other.started)) {
                    add(Broken::PersonOverlap, one.id + " and " + other.id);
                }
            }
        }
    }

    std::vector<Lying> lyingAll() const
    {
        std::vector<Lying> lying;
        for (std::size_t i = 0; i < m_problem.steps.size(); ++i) {
            const Step& step = m_problem.steps[i];
            lying.push_back({&step.id, start(i), end(i), &step.uses, &step.tags, step.started.has_value()});
        }
        for (const Wait& wait : m_problem.waits) {
            const bool history = m_problem.steps[at(wait.from)].started && m_problem.steps[at(wait.to)].started;
            lying.push_back({&wait.id, end(at(wait.from)), start(at(wait.to)), &wait.uses, &wait.tags, history});
        }
        return lying;
    }

    void judgeCapacity(const std::vector<Lying>& lying, int resource)
    {
        std::vector<std::pair<Minute, int>> changes;
        for (const Lying& one : lying) {
            const Minute from = std::max(one.from, m_problem.now);
            for (const Use& use : *one.uses) {
                if (use.resource == resource && from < one.to) {
                    changes.emplace_back(from, use.amount);
                    changes.emplace_back(one.to, -use.amount);
                }
            }
        }
        std::sort(changes.begin(), changes.end()); // what is given back comes before what is taken
        int level = 0;
        for (const auto& [minute, change] : changes) {
            level += change;
            if (level > m_problem.resources[at(resource)].capacity) {
                add(Broken::Capacity, m_problem.resources[at(resource)].id + " from minute " + std::to_string(minute));
                return;
            }
        }
    }

    void judgePair(const std::vector<Lying>& lying, const std::string& one, const std::string& other)
    {
        const auto carrying = [&](const std::string& tag) {
            std::vector<const Lying*> found;
            for (const Lying& what : lying) {
                if (std::find(what.tags->begin(), what.tags->end(), tag) != what.tags->end()) {
                    found.push_back(&what);
                }
            }
            return found;
        };
        const std::vector<const Lying*> others = carrying(other);
        for (const Lying* a : carrying(one)) {
            for (const Lying* b : others) {
                const bool judged = a->id != b->id && !(a->history && b->history);
                if (judged && std::max({a->from, b->from, m_problem.now}) < std::min(a->to, b->to)) {
                    add(Broken::Incompatible, *a->id + " (" + one + ") and " + *b->id + " (" + other + ")");
                }
            }
        }
    }

    const Problem& m_problem;
    const Timetable& m_table;
    std::vector<Violation> m_found;
};

} // namespace

std::vector<Violation> violations(const Problem& problem, const Timetable& table)
{
    assert(table.start.size() == problem.steps.size() && table.person.size() == problem.steps.size());
    return PlanGate(problem, table).take();
}

} // namespace mend::plan
