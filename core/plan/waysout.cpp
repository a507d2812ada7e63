#include "core/plan/waysout.h"

#include <algorithm>
#include <functional>

namespace mend::plan {
namespace {

constexpr std::int64_t moment = 150'000; ///< steps

Planned planBriefly(const Problem& problem, const Enough& enough)
{
    Effort effort;
    effort.steps = moment;
    bool found = false;
    effort.improved = [&](const Timetable&, const Score&) { found = true; };
    effort.enough = [&] { return found || (enough && enough()); };
    return planBench(problem, effort);
}

/// The smallest amount in (0, most] for which the changed bench has a plan; doubling, then halving.
std::optional<WayOut> leastChange(Minute most, const std::function<WayOut(Minute)>& change, const Enough& enough)
{
    const auto tried = [&](Minute minutes) -> std::optional<WayOut> {
        WayOut way = change(minutes);
        way.minutes = minutes;
        auto plan = planFor(way.changed, enough);
        if (!plan) {
            return std::nullopt;
        }
        way.plan = std::move(*plan);
        return way;
    };
    std::optional<WayOut> best;
    Minute below = 0;
    for (Minute amount = std::min(most, 8); !best && below < most; amount = std::min(most, 4 * amount)) {
        best = tried(amount);
        below = best ? below : amount;
    }
    while (best && best->minutes - below > 1) {
        const Minute middle = below + (best->minutes - below) / 2;
        if (auto less = tried(middle)) {
            best = std::move(less);
        } else {
            below = middle;
        }
    }
    return best;
}

/// When more hands are at work than there are people: from when, and for how long altogether.
void tellHelp(const Problem& problem, WayOut& way)
{
    const auto people = static_cast<int>(problem.people.size());
    std::vector<std::pair<Minute, int>> changes;
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        if (problem.steps[i].hands) {
            const Minute from = std::max(problem.now, way.plan.start[i]);
            const Minute to = way.plan.start[i] + problem.steps[i].duration;
            if (from < to) {
                changes.emplace_back(from, 1);
                changes.emplace_back(to, -1);
            }
        }
    }
    std::sort(changes.begin(), changes.end());
    int level = 0;
    Minute last = 0;
    way.minutes = 0;
    for (const auto& [minute, change] : changes) {
        if (level > people) {
            way.at = way.minutes == 0 ? last : way.at;
            way.minutes += minute - last;
        }
        level += change;
        last = minute;
    }
}

class WayFinder {
public:
    WayFinder(const Problem& problem, const Enough& enough) : m_problem(problem), m_enough(enough) {}

    std::vector<WayOut> take() { return std::move(m_ways); }

    void tryPlace(int resource)
    {
        add({WayOut::Kind::AnotherPlace,
             resource,
             0,
             0,
             false,
             relaxed(m_problem, {Strain::Kind::Place, resource}),
             {}});
    }

    void tryHand()
    {
        WayOut way{WayOut::Kind::HelpingHand, 0, 0, 0, false, relaxed(m_problem, {Strain::Kind::Hands, 0}), {}};
        if (auto plan = planFor(way.changed, m_enough)) {
            way.plan = std::move(*plan);
            tellHelp(m_problem, way);
            m_ways.push_back(std::move(way));
        }
    }

    /// Closing an opening later, or opening it sooner, by as little as helps.
    void tryHours(int which)
    {
        const auto& open = m_problem.open;
        const bool hasBefore = which > 0 && !open.empty();
        const bool hasAfter = slot(which) < open.size();
        const Minute from = hasBefore ? open[slot(which) - 1].to : m_problem.now;
        const Minute to = hasAfter ? open[slot(which)].from : m_problem.horizon;
        // One minute stays shut, for two openings never touch.
        if (hasBefore && to - from > 1) {
            keep(leastChange(
                to - from - 1,
                [&](Minute minutes) {
                    WayOut way{WayOut::Kind::StayOpen, which - 1, minutes, from + minutes, false, m_problem, {}};
                    way.changed.open[slot(which) - 1].to = way.at;
                    return way;
                },
                m_enough));
        }
        if (hasAfter && to - from > 1) {
            keep(leastChange(
                to - from - 1,
                [&](Minute minutes) {
                    WayOut way{WayOut::Kind::StayOpen, which, minutes, to - minutes, true, m_problem, {}};
                    way.changed.open[slot(which)].from = way.at;
                    return way;
                },
                m_enough));
        }
    }

    /// Only a piece of which nothing is under way can wait.
    void trySetAside(int piece)
    {
        std::vector<bool> kept(m_problem.pieces.size(), true);
        kept[slot(piece)] = false;
        const bool begun = std::any_of(m_problem.steps.begin(), m_problem.steps.end(), [&](const Step& step) {
            return step.piece == piece && step.started.has_value();
        });
        if (!begun && kept.size() > 1) {
            add({WayOut::Kind::SetAside, piece, 0, 0, false, onlyPieces(m_problem, kept), {}});
        }
    }

    void tryLapse(int lag)
    {
        constexpr Minute week = 7 * 1440;
        keep(leastChange(
            week,
            [&](Minute minutes) {
                WayOut way{WayOut::Kind::LetLapse, lag, minutes, 0, false, m_problem, {}};
                *way.changed.lags[slot(lag)].most += minutes;
                return way;
            },
            m_enough));
    }

private:
    void add(WayOut way)
    {
        if (auto plan = planFor(way.changed, m_enough)) {
            way.plan = std::move(*plan);
            m_ways.push_back(std::move(way));
        }
    }
    void keep(std::optional<WayOut> way)
    {
        if (way) {
            m_ways.push_back(std::move(*way));
        }
    }

    const Problem& m_problem;
    const Enough& m_enough;
    std::vector<WayOut> m_ways;
};

} // namespace

bool hasNoPlan(const Problem& problem, const Enough& enough)
{
    return planBriefly(problem, enough).verdict == Planned::Verdict::NoPlan;
}

std::optional<Timetable> planFor(const Problem& problem, const Enough& enough)
{
    return planBriefly(problem, enough).table;
}

std::vector<WayOut> waysOut(const Problem& problem, const std::vector<Conflict>& conflicts, const Enough& enough)
{
    WayFinder finder(problem, enough);
    std::vector<int> pieces;
    for (const Conflict& conflict : conflicts) {
        pieces.insert(pieces.end(), conflict.pieces.begin(), conflict.pieces.end());
        for (const Strain& strain : conflict.strains) {
            if (strain.kind == Strain::Kind::Place) {
                finder.tryPlace(strain.which);
            } else if (strain.kind == Strain::Kind::Hours) {
                finder.tryHours(strain.which);
            } else if (strain.kind == Strain::Kind::Hands) {
                finder.tryHand();
            } else if (strain.kind == Strain::Kind::Window) {
                finder.tryLapse(strain.which);
            }
        }
    }
    std::sort(pieces.begin(), pieces.end());
    pieces.erase(std::unique(pieces.begin(), pieces.end()), pieces.end());
    for (const int piece : pieces) {
        finder.trySetAside(piece);
    }
    std::vector<WayOut> ways = finder.take();
    std::stable_sort(ways.begin(), ways.end(), [](const WayOut& a, const WayOut& b) {
        return std::pair(a.kind, a.minutes) < std::pair(b.kind, b.minutes);
    });
    return ways;
}

} // namespace mend::plan
