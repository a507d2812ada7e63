#include "core/plan/strain.h"

#include <algorithm>

namespace mend::plan {
namespace {

bool hasWait(const Problem& problem, const Lag& lag)
{
    return std::any_of(problem.waits.begin(), problem.waits.end(),
                       [&](const Wait& wait) { return wait.from == lag.from && wait.to == lag.to; });
}

/// The least a lag may be asked for and still keep its order.
Minute shortest(const Problem& problem, const Lag& lag) { return hasWait(problem, lag) ? 1 : 0; }

/// Open through the gap before opening `which`.
void openThrough(Problem& problem, int which)
{
    auto& open = problem.open;
    if (open.empty()) {
        open.push_back({problem.now, problem.horizon});
    } else if (which == 0) {
        open.front().from = std::min(open.front().from, problem.now);
    } else if (slot(which) == open.size()) {
        open.back().to = std::max(open.back().to, problem.horizon);
    } else {
        open[slot(which) - 1].to = open[slot(which)].to;
        open.erase(open.begin() + which);
    }
}

void openBeyondHorizon(Problem& problem)
{
    constexpr Minute fortnight = 14 * 1440;
    const Minute end = problem.horizon;
    problem.horizon += fortnight;
    if (problem.open.empty() || problem.open.back().to < end) {
        problem.open.push_back({end, problem.horizon});
    } else {
        problem.open.back().to = std::max(problem.open.back().to, problem.horizon);
    }
}

} // namespace

std::vector<Strain> strainsOf(const Problem& problem)
{
    using Kind = Strain::Kind;
    std::vector<Strain> strains{{Kind::Horizon, 0}};
    const auto add = [&](Kind kind, std::size_t which) { strains.push_back({kind, static_cast<int>(which)}); };
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        if (problem.steps[i].earliest) {
            add(Kind::Earliest, i);
        }
        if (problem.steps[i].latestEnd) {
            add(Kind::LatestEnd, i);
        }
    }
    const auto isOpen = [&](const Lag& lag) {
        return !(problem.steps[slot(lag.from)].started && problem.steps[slot(lag.to)].started);
    };
    for (std::size_t i = 0; i < problem.lags.size(); ++i) {
        if (isOpen(problem.lags[i]) && problem.lags[i].least > shortest(problem, problem.lags[i])) {
            add(Kind::Minimum, i);
        }
    }
    for (std::size_t i = 0; i < problem.resources.size(); ++i) {
        add(Kind::Place, i);
    }
    for (std::size_t i = 0; i <= problem.open.size(); ++i) {
        const bool shut = problem.open.empty() || (i > 0 && i < problem.open.size()) ||
                          (i == 0 && problem.open.front().from > problem.now) ||
                          (i == problem.open.size() && problem.open.back().to < problem.horizon);
        if (shut) {
            add(Kind::Hours, i);
        }
    }
    for (std::size_t i = 0; i < problem.incompatible.size(); ++i) {
        add(Kind::Apart, i);
    }
    add(Kind::Hands, 0);
    for (std::size_t i = 0; i < problem.lags.size(); ++i) {
        if (isOpen(problem.lags[i]) && problem.lags[i].most) {
            add(Kind::Window, i);
        }
    }
    return strains;
}

Problem relaxed(const Problem& problem, const Strain& strain)
{
    Problem next = problem;
    const std::size_t which = slot(strain.which);
    switch (strain.kind) {
    case Strain::Kind::Window:
        next.lags[which].most.reset();
        break;
    case Strain::Kind::Minimum:
        next.lags[which].least = std::min(next.lags[which].least, shortest(problem, problem.lags[which]));
        break;
    case Strain::Kind::Hands:
        next.people.push_back("one more");
        while (std::count(problem.people.begin(), problem.people.end(), next.people.back()) > 0) {
            next.people.back() += " more";
        }
        break;
    case Strain::Kind::Place:
        ++next.resources[which].capacity;
        break;
    case Strain::Kind::Apart:
        next.incompatible.erase(next.incompatible.begin() + strain.which);
        break;
    case Strain::Kind::Hours:
        openThrough(next, strain.which);
        break;
    case Strain::Kind::Earliest:
        next.steps[which].earliest.reset();
        break;
    case Strain::Kind::LatestEnd:
        next.steps[which].latestEnd.reset();
        break;
    case Strain::Kind::Horizon:
        openBeyondHorizon(next);
        break;
    case Strain::Kind::Order: {
        const Lag lag = problem.lags[which];
        std::erase_if(next.waits, [&](const Wait& wait) { return wait.from == lag.from && wait.to == lag.to; });
        next.lags[which] = {lag.from, lag.to, -farthest, std::nullopt};
        break;
    }
    }
    return next;
}

Problem onlyPieces(const Problem& problem, const std::vector<bool>& kept)
{
    Problem less = problem;
    less.pieces.clear();
    less.steps.clear();
    less.lags.clear();
    less.waits.clear();
    std::vector<int> pieceAt(problem.pieces.size(), -1);
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        if (kept[p]) {
            pieceAt[p] = static_cast<int>(less.pieces.size());
            less.pieces.push_back(problem.pieces[p]);
        }
    }
    std::vector<int> stepAt(problem.steps.size(), -1);
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        const int piece = pieceAt[slot(problem.steps[i].piece)];
        if (piece >= 0) {
            stepAt[i] = static_cast<int>(less.steps.size());
            less.steps.push_back(problem.steps[i]);
            less.steps.back().piece = piece;
        }
    }
    const auto keep = [&](auto one, auto& list) {
        one.from = stepAt[slot(one.from)];
        one.to = stepAt[slot(one.to)];
        if (one.from >= 0 && one.to >= 0) {
            list.push_back(std::move(one));
        }
    };
    for (const Lag& lag : problem.lags) {
        keep(lag, less.lags);
    }
    for (const Wait& wait : problem.waits) {
        keep(wait, less.waits);
    }
    return less;
}

std::vector<int> piecesOf(const Problem& problem, const Strain& strain)
{
    std::vector<int> steps;
    switch (strain.kind) {
    case Strain::Kind::Window:
    case Strain::Kind::Minimum:
    case Strain::Kind::Order:
        steps = {problem.lags[slot(strain.which)].from, problem.lags[slot(strain.which)].to};
        break;
    case Strain::Kind::Earliest:
    case Strain::Kind::LatestEnd:
        steps = {strain.which};
        break;
    default:
        break;
    }
    std::vector<int> pieces;
    for (const int step : steps) {
        pieces.push_back(problem.steps[slot(step)].piece);
    }
    std::sort(pieces.begin(), pieces.end());
    pieces.erase(std::unique(pieces.begin(), pieces.end()), pieces.end());
    return pieces;
}

} // namespace mend::plan
