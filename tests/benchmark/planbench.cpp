#include "core/exchange/planreader.h"
#include "core/plan/maystart.h"
#include "core/plan/repair.h"
#include "core/plan/whynot.h"
#include "tests/plan/jobshop.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>

// What the planner reaches on the project's benchmark set (tests/data/plan), on invented benches of 25 pieces, and on
// published job shops, each figure beside its floor. One thread. MEND_PLAN_SECONDS shortens or lengthens the ten
// seconds; MEND_PLAN_PROOF the sixty for proofs.
namespace {

using namespace mend;
using namespace mend::plan;
using Stopwatch = std::chrono::steady_clock;

double secondsSince(Stopwatch::time_point began)
{
    return std::chrono::duration<double>(Stopwatch::now() - began).count();
}

double asked(const char* name, double usual)
{
    const char* value = std::getenv(name);
    return value != nullptr ? std::atof(value) : usual;
}

int failures = 0;

void compare(const char* what, double figure, const char* sign, double floor)
{
    const bool good = sign[0] == '<' ? figure <= floor : figure >= floor;
    failures += good ? 0 : 1;
    std::printf("  %-58s %10.2f  floor %s %g  %s\n", what, figure, sign, floor, good ? "kept" : "MISSED");
}

struct Known {
    bool exists = false;
    Score score;
};

std::map<std::string, Known> knownBest()
{
    std::map<std::string, Known> known;
    std::ifstream file(MEND_SOURCE_DIR "/tests/data/plan/best.csv");
    std::string line;
    std::getline(file, line);
    while (std::getline(file, line)) {
        char name[64];
        char exists[16];
        long long tardiness = 0;
        long long flow = 0;
        std::sscanf(line.c_str(), "%63[^,],%15[^,],%lld,%lld", name, exists, &tardiness, &flow);
        known[name] = {std::string(exists) == "plan", {tardiness, flow}};
    }
    return known;
}

/// One problem over time.
struct Course {
    double first = -1;
    Score atTwo;
    Score atTen;
    double proven = -1;
    bool holds = true;
};

Course follow(const Problem& problem)
{
    const double ten = asked("MEND_PLAN_SECONDS", 10);
    Course course;
    const auto began = Stopwatch::now();
    Effort effort;
    effort.improved = [&](const Timetable& table, const Score& score) {
        const double at = secondsSince(began);
        course.first = course.first < 0 ? at : course.first;
        course.holds = course.holds && test::judge(problem, table).empty();
        if (at <= ten / 5) {
            course.atTwo = score;
        }
        course.atTen = score;
    };
    effort.enough = [&] { return secondsSince(began) >= ten; };
    const Planned planned = planBench(problem, effort);
    if (planned.promisesProven) {
        course.proven = secondsSince(began);
    }
    return course;
}

struct Family {
    int count = 0;
    int equalAtTwo = 0;
    int equalAtTen = 0;
    int proven = 0;
    int lessFlow = 0;
    double worstAtTwo = 0;
    double worstAtTen = 0;
    double worstFlow = 0;
    double slowestFirst = 0;
    int wrong = 0;
};

double above(std::int64_t figure, std::int64_t known)
{
    return 100.0 * static_cast<double>(figure - known) / static_cast<double>(std::max<std::int64_t>(known, 1));
}

Family measureFamily(const std::string& name, const std::map<std::string, Known>& known)
{
    Family family;
    for (const std::string& one : test::benchmarkNames(name)) {
        const Score best = known.at(one).score;
        const Course course = follow(test::benchmarkProblem(one));
        const auto tardy = [](const Score& score) { return static_cast<long long>(score.tardiness); };
        const double flow = above(course.atTen.flow, best.flow);
        std::printf("  %-12s first %5.1f ms, 2 s %lld, 10 s %lld of %lld, flow %lld (%+.2f %%)%s\n", one.c_str(),
                    1000 * course.first, tardy(course.atTwo), tardy(course.atTen), tardy(best),
                    static_cast<long long>(course.atTen.flow), flow, course.proven >= 0 ? ", proven" : "");
        ++family.count;
        family.equalAtTwo += course.atTwo.tardiness <= best.tardiness ? 1 : 0;
        family.equalAtTen += course.atTen.tardiness <= best.tardiness ? 1 : 0;
        family.proven += course.proven >= 0 ? 1 : 0;
        family.worstAtTwo = std::max(family.worstAtTwo, above(course.atTwo.tardiness, best.tardiness));
        family.worstAtTen = std::max(family.worstAtTen, above(course.atTen.tardiness, best.tardiness));
        family.slowestFirst = std::max(family.slowestFirst, 1000 * course.first);
        family.wrong += course.holds ? 0 : 1;
        if (course.atTen.tardiness == best.tardiness) {
            family.worstFlow = std::max(family.worstFlow, flow);
            family.lessFlow += course.atTen.flow < best.flow ? 1 : 0;
        }
    }
    return family;
}

void measureSet()
{
    const auto known = knownBest();
    Family few = measureFamily("small", known);
    const Family midday = measureFamily("midday", known);
    compare("small and midday: promises as known in 2 s, of 9", few.equalAtTwo + midday.equalAtTwo, ">=", 8);
    compare("small and midday: in 10 s, of 9", few.equalAtTen + midday.equalAtTen, ">=", 9);
    compare("small and midday: promises proven optimal, of 9", few.proven + midday.proven, ">=", 7);
    const Family medium = measureFamily("medium", known);
    compare("medium: worst of promises in 2 s, % above", medium.worstAtTwo, "<=", 2);
    compare("medium: promises as known in 10 s, of 6", medium.equalAtTen, ">=", 5);
    const Family large = measureFamily("large", known);
    compare("large: worst of promises in 2 s, % above", large.worstAtTwo, "<=", 5);
    compare("large: promises as known in 10 s, of 4", large.equalAtTen, ">=", 3);
    compare("large: worst of promises in 10 s, % above", large.worstAtTen, "<=", 1);
    compare("large: less flow than known, of 4", large.lessFlow, ">=", 2);
    const auto all = {few, midday, medium, large};
    const auto worst = [&](double Family::*what) {
        double figure = 0;
        for (const Family& family : all) {
            figure = std::max(figure, family.*what);
        }
        return figure;
    };
    compare("all: worst flow at equal promises, % above", worst(&Family::worstFlow), "<=", 3);
    compare("all: slowest first plan, ms", worst(&Family::slowestFirst), "<=", 20);
    compare("all: plans the judge refuses", few.wrong + midday.wrong + medium.wrong + large.wrong, "<=", 0);
}

void measureNone()
{
    double slowest = 0;
    int minimal = 0;
    for (const std::string& name : test::benchmarkNames("infeasible")) {
        const Problem problem = test::benchmarkProblem(name);
        const auto began = Stopwatch::now();
        const bool none = planBench(problem, {}).verdict == Planned::Verdict::NoPlan;
        const WhyNot why = whyNot(problem);
        slowest = std::max(slowest, secondsSince(began));
        minimal += none && why.conflicts.front().eachIsEnough() ? 1 : 0;
    }
    compare("no plan: said with a minimal conflict, of 3", minimal, ">=", 3);
    compare("no plan: slowest, with the ways out, s", slowest, "<=", 1);
}

double percentile(std::vector<double> figures, double part)
{
    std::sort(figures.begin(), figures.end());
    return figures[static_cast<std::size_t>(part * static_cast<double>(figures.size() - 1))];
}

/// A bench of 25 pieces in the middle of a day, its hands just free.
Problem busyBench(std::uint64_t seed)
{
    test::BenchKind kind;
    kind.pieces = 25;
    kind.people = 1 + static_cast<int>(seed % 3);
    kind.days = 12;
    kind.midday = true;
    Problem problem = test::inventBench(kind, seed);
    for (const Step& step : problem.steps) {
        problem.now = step.started ? std::max(problem.now, *step.started + step.duration) : problem.now;
    }
    return problem;
}

void measureQuestions()
{
    std::vector<double> boards;
    std::vector<double> workers;
    std::vector<double> repairs;
    int yes = 0;
    int all = 0;
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const Problem problem = busyBench(seed);
        Effort brief;
        brief.steps = 200'000;
        const Planned planned = planBench(problem, brief);
        if (!planned.table) {
            continue;
        }
        auto began = Stopwatch::now();
        MayStart may(problem, *planned.table);
        std::vector<int> good;
        for (const int step : may.nextSteps()) {
            ++all;
            if (may.ask(step).may == StartAnswer::May::Yes) {
                good.push_back(step);
            }
        }
        boards.push_back(1000 * secondsSince(began));
        yes += static_cast<int>(good.size());
        began = Stopwatch::now();
        const Problem slow = slowHands(problem);
        MayStart slower(slow, *planned.table);
        for (const int step : good) {
            static_cast<void>(may.latestYes(step));
            static_cast<void>(slower.ask(step));
        }
        workers.push_back(1000 * secondsSince(began));
        Problem later = problem;
        later.now += 10;
        const std::vector<std::optional<Minute>> before(planned.table->start.begin(), planned.table->start.end());
        began = Stopwatch::now();
        static_cast<void>(repair(later, before, brief));
        repairs.push_back(1000 * secondsSince(began));
    }
    std::printf("  25-piece benches: %zu; %d of %d next steps may start\n", boards.size(), yes, all);
    compare("may this start, all cards, p99 ms", percentile(boards, 0.99), "<=", 10);
    compare("latest minute and a quarter longer, all cards, worst ms", percentile(workers, 1), "<=", 100);
    compare("a plan repaired after one event, worst ms", percentile(repairs, 1), "<=", 100);
}

void measureShops()
{
    int found = 0;
    int proven = 0;
    const double seconds = asked("MEND_PLAN_PROOF", 60);
    const auto began = Stopwatch::now();
    for (const test::ShopOptimum& shop : test::shopOptima()) {
        for (const Minute less : {0, 1}) {
            const auto start = Stopwatch::now();
            bool any = false;
            Effort effort;
            effort.improved = [&](const Timetable&, const Score&) { any = true; };
            effort.enough = [&] { return any || secondsSince(start) > seconds; };
            const Planned planned = planBench(test::jobShop(shop.name, shop.makespan - less, shop.longestGap), effort);
            found += less == 0 && planned.verdict == Planned::Verdict::Plan ? 1 : 0;
            proven += less == 1 && planned.verdict == Planned::Verdict::NoPlan ? 1 : 0;
        }
    }
    std::printf("  all job shops: %.1f s\n", secondsSince(began));
    compare("published job shops: optimum found, of 31", found, ">=", 31);
    compare("published job shops: proven that none is shorter, of 31", proven, ">=", 31);
}

} // namespace

int main()
{
    measureQuestions();
    measureNone();
    measureShops();
    measureSet();
    return failures == 0 ? 0 : 1;
}
