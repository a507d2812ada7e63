#include "tests/plan/problems.h"

#include "core/exchange/planreader.h"
#include "core/plan/planner.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

namespace mend::test {
namespace {

using plan::Minute;
using plan::Problem;
using plan::slot;

class BenchMaker {
public:
    BenchMaker(const BenchKind& kind, std::uint64_t seed) : m_kind(kind), m_random(seed * 7919 + 13) {}

    Problem make(std::uint64_t seed)
    {
        m_p.name = "invented-" + std::to_string(seed);
        m_p.now = 540;
        m_p.horizon = (m_kind.days + 1) * 1440;
        for (int i = 0; i < m_kind.people; ++i) {
            m_p.people.push_back("P" + std::to_string(i + 1));
        }
        const int opens = 540 + 60 * some(0, 1);
        const int half = some(180, 220);
        const int lunch = some(45, 60);
        for (int day = 0; day <= m_kind.days; ++day) {
            const int at = day * 1440 + opens;
            m_p.open.push_back({at, at + half});
            if (day % 6 != 5) {
                m_p.open.push_back({at + half + lunch, at + half + lunch + some(250, 255)});
            }
        }
        m_p.resources = {{"cabinet", m_kind.crowded ? 1 : some(2, 3)},
                         {"flame_spot", 1},
                         {"gold_tray", 1},
                         {"humid_box", m_kind.crowded ? 1 : some(1, 3)}};
        m_p.incompatible = {{"flame", "solvent"}, {"sanding", "tacky"}};
        for (int i = 0; i < m_kind.pieces; ++i) {
            addPiece(i);
        }
        return std::move(m_p);
    }

private:
    int some(int least, int most) { return std::uniform_int_distribution<int>(least, most)(m_random); }
    bool oneIn(int count) { return some(1, count) == 1; }

    int step(const std::string& kind, Minute duration, std::vector<std::string> tags = {},
             std::vector<plan::Use> uses = {})
    {
        plan::Step made;
        made.piece = static_cast<int>(m_p.pieces.size()) - 1;
        made.id = m_p.pieces.back().id + "." + std::to_string(m_p.steps.size()) + "-" + kind;
        made.kind = kind;
        made.duration = duration;
        made.tags = std::move(tags);
        made.uses = std::move(uses);
        m_p.steps.push_back(std::move(made));
        return static_cast<int>(m_p.steps.size()) - 1;
    }

    void lag(int from, int to, Minute least, std::optional<Minute> most = std::nullopt)
    {
        m_p.lags.push_back({from, to, least, most});
    }

    void wait(int from, int to, std::vector<std::string> tags, int resource)
    {
        m_p.waits.push_back(
            {m_p.steps[slot(from)].id + ">" + m_p.steps[slot(to)].id, from, to, {{resource, 1}}, std::move(tags)});
    }

    int follow(int before, int next, Minute least = 0)
    {
        if (before >= 0) {
            lag(before, next, least);
        }
        return next;
    }

    int glue(int last)
    {
        last = follow(last, step("dryfit", some(12, 40)));
        std::vector<int> trims;
        int before = -1;
        for (int run = some(1, 3); run > 0; --run) {
            const int laid = step("glue", some(6, 18));
            before < 0 ? lag(last, laid, 0) : lag(before, laid, some(8, 12));
            const int trim = step("trim", some(5, 12));
            lag(laid, trim, 30, 180);
            trims.push_back(trim);
            before = laid;
        }
        const int check = step("check", some(3, 6));
        for (const int trim : trims) {
            lag(trim, check, 0);
        }
        lag(before, check, 60);
        return check;
    }

    int fill(int last)
    {
        const int laid = follow(last, step("fill", some(10, 25)));
        const int wiped = step("wipe", some(4, 9), {"solvent"});
        lag(laid, wiped, 2, 20 - m_p.steps[slot(wiped)].duration);
        int rested = wiped;
        if (oneIn(2)) {
            const int load = step("load", some(3, 6));
            lag(wiped, load, 0, 30);
            rested = step("unload", some(3, 6));
            lag(load, rested, some(240, 320));
            wait(load, rested, {"curing"}, 0);
        }
        const int sand = step("sand", some(12, 40), {"sanding"});
        lag(rested, sand, rested == wiped ? 1440 : 15);
        return sand;
    }

    int gild(int last)
    {
        const int lacquer = follow(last, step("lacquer", some(14, 30)), 5);
        const int dust = step("dust", some(8, 16), {}, {{2, 1}});
        lag(lacquer, dust, 15, 120);
        wait(lacquer, dust, {"tacky"}, 3);
        const int recover = step("recover", some(5, 9), {}, {{2, 1}});
        lag(dust, recover, 0, 60);
        const int burnish = step("burnish", some(10, 30));
        lag(dust, burnish, 960);
        lag(recover, burnish, 0);
        wait(dust, burnish, {"curing"}, 3);
        return burnish;
    }

    void addPiece(int number)
    {
        const int weights[] = {1, 1, 2, 3, 5};
        const int dues[] = {1020, 750, 2460, 3900, 2190, 5340};
        m_p.pieces.push_back({"Q" + std::to_string(number + 1), weights[some(0, 4)],
                              dues[some(0, 5)] + 1440 * some(0, std::max(0, m_kind.days - 6))});
        int last = -1;
        if (oneIn(2)) {
            last = glue(last);
        }
        if (oneIn(2) || last < 0) {
            last = fill(last);
        }
        if (oneIn(6)) {
            last = follow(last, step("torch", some(6, 14), {"flame"}, {{1, 1}}));
        }
        if (oneIn(3)) {
            last = gild(last);
        }
        if (oneIn(3)) {
            last = follow(last, step("retouch", some(10, 40)));
        }
        follow(last, step("pack", some(6, 14)));
    }

    BenchKind m_kind;
    std::mt19937_64 m_random;
    Problem m_p;
};

/// The same bench some hours later, while its plan was kept: what had begun by then is history.
Problem later(const Problem& problem, Minute hours)
{
    plan::Effort effort;
    effort.steps = 1;
    const plan::Planned planned = plan::planBench(problem, effort);
    Problem next = problem;
    next.now = problem.now + hours * 60;
    for (std::size_t i = 0; planned.table && i < next.steps.size(); ++i) {
        if (planned.table->start[i] <= next.now) {
            next.steps[i].started = planned.table->start[i];
            next.steps[i].person = planned.table->person[i];
        }
    }
    return next;
}

} // namespace

Problem inventBench(const BenchKind& kind, std::uint64_t seed)
{
    Problem problem = BenchMaker(kind, seed).make(seed);
    return kind.midday ? later(problem, static_cast<Minute>(2 + seed % 5)) : problem;
}

Problem inventTiny(std::uint64_t seed)
{
    std::mt19937_64 random(seed * 104729 + 7);
    const auto some = [&](int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); };
    Problem p;
    p.name = "tiny-" + std::to_string(seed);
    p.now = some(0, 5);
    p.horizon = p.now + some(8, 11);
    p.people = {"A"};
    if (some(0, 2) == 0) {
        p.people.push_back("B");
    }
    const int closes = p.now + some(3, 8);
    p.open = {{p.now, closes}, {closes + some(1, 2), p.horizon + 2}};
    p.resources = {{"slots", some(1, 3)}, {"spot", 1}};
    p.incompatible = {{"a", "b"}, {"b", "c"}};
    const char* tags[] = {"a", "b", "c", "d"};
    const int pieces = some(1, 3);
    for (int i = 0; i < pieces; ++i) {
        p.pieces.push_back({"Q" + std::to_string(i), some(0, 3), p.now + some(-2, 9)});
    }
    const auto someUses = [&] {
        std::vector<plan::Use> uses;
        if (some(0, 2) == 0) {
            uses.push_back({0, some(1, p.resources[0].capacity)});
        }
        if (some(0, 3) == 0) {
            uses.push_back({1, 1});
        }
        return uses;
    };
    const auto someTags = [&] {
        return some(0, 1) == 0 ? std::vector<std::string>{} : std::vector<std::string>{tags[some(0, 3)]};
    };
    const int steps = some(pieces, 5);
    for (int i = 0; i < steps; ++i) {
        plan::Step step;
        step.id = "s" + std::to_string(i);
        step.piece = i < pieces ? i : some(0, pieces - 1);
        step.duration = some(1, 3);
        step.hands = some(0, 3) != 0;
        step.uses = someUses();
        step.tags = someTags();
        if (some(0, 5) == 0) {
            step.started = p.now - some(0, 3);
            step.person = step.hands ? std::optional(some(0, static_cast<int>(p.people.size()) - 1)) : std::nullopt;
        } else if (some(0, 7) == 0) {
            step.earliest = p.now + some(0, 4);
        } else if (some(0, 7) == 0) {
            step.latestEnd = p.horizon - some(0, 3);
        }
        p.steps.push_back(std::move(step));
    }
    for (int from = 0; from < steps; ++from) {
        for (int to = 0; to < steps; ++to) {
            if (from == to || some(0, 3) != 0 || (to < from && some(0, 2) != 0)) {
                continue;
            }
            const int least = to < from ? some(-9, -4) : some(-1, 3);
            p.lags.push_back({from, to, least, some(0, 2) == 0 ? std::optional(least + some(0, 3)) : std::nullopt});
            if (least >= 1 && some(0, 1) == 0) {
                p.waits.push_back({"w" + std::to_string(p.waits.size()), from, to, someUses(), someTags()});
            }
        }
    }
    return p;
}

Problem benchmarkProblem(const std::string& name)
{
    std::ifstream file(std::string(MEND_SOURCE_DIR) + "/tests/data/plan/" + name + ".json");
    std::ostringstream text;
    text << file.rdbuf();
    return exchange::readPlanProblem(text.str()).problem.value();
}

std::vector<std::string> benchmarkNames(const std::string& family)
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(MEND_SOURCE_DIR) + "/tests/data/plan")) {
        const std::string name = entry.path().stem().string();
        if (entry.path().extension() == ".json" && name.starts_with(family)) {
            names.push_back(name);
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

} // namespace mend::test
