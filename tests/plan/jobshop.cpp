#include "tests/plan/jobshop.h"

#include <cassert>
#include <map>
#include <sstream>

namespace mend::test {
namespace {

/// One row a job: machine and minutes by turns, in the order of its operations.
const std::map<std::string, const char*> shopTables{
    {"FT06", "2 1 0 3 1 6 3 7 5 3 4 6\n"
             "1 8 2 5 4 10 5 10 0 10 3 4\n"
             "2 5 3 4 5 8 0 9 1 1 4 7\n"
             "1 5 0 5 2 5 3 3 4 8 5 9\n"
             "2 9 1 3 4 5 5 4 0 3 3 1\n"
             "1 3 3 3 5 9 0 10 4 4 2 1\n"},
    {"FT10", "0 29 1 78 2 9 3 36 4 49 5 11 6 62 7 56 8 44 9 21\n"
             "0 43 2 90 4 75 9 11 3 69 1 28 6 46 5 46 7 72 8 30\n"
             "1 91 0 85 3 39 2 74 8 90 5 10 7 12 6 89 9 45 4 33\n"
             "1 81 2 95 0 71 4 99 6 9 8 52 7 85 3 98 9 22 5 43\n"
             "2 14 0 6 1 22 5 61 3 26 4 69 8 21 7 49 9 72 6 53\n"
             "2 84 1 2 5 52 3 95 8 48 9 72 0 47 6 65 4 6 7 25\n"
             "1 46 0 37 3 61 2 13 6 32 5 21 9 32 8 89 7 30 4 55\n"
             "2 31 0 86 1 46 5 74 4 32 6 88 8 19 9 48 7 36 3 79\n"
             "0 76 1 69 3 76 5 51 2 85 9 11 6 40 7 89 4 26 8 74\n"
             "1 85 0 13 2 61 6 7 8 64 9 76 5 47 3 52 4 90 7 45\n"},
    {"LA01", "1 21 0 53 4 95 3 55 2 34\n"
             "0 21 3 52 4 16 2 26 1 71\n"
             "3 39 4 98 1 42 2 31 0 12\n"
             "1 77 0 55 4 79 2 66 3 77\n"
             "0 83 3 34 2 64 1 19 4 37\n"
             "1 54 2 43 4 79 0 92 3 62\n"
             "3 69 4 77 1 87 2 87 0 93\n"
             "2 38 0 60 1 41 3 24 4 83\n"
             "3 17 1 49 4 25 0 44 2 98\n"
             "4 77 3 79 2 43 1 75 0 96\n"},
    {"LA02", "0 20 3 87 1 31 4 76 2 17\n"
             "4 25 2 32 0 24 1 18 3 81\n"
             "1 72 2 23 4 28 0 58 3 99\n"
             "2 86 1 76 4 97 0 45 3 90\n"
             "4 27 0 42 3 48 2 17 1 46\n"
             "1 67 0 98 4 48 3 27 2 62\n"
             "4 28 1 12 3 19 0 80 2 50\n"
             "1 63 0 94 2 98 3 50 4 80\n"
             "4 14 0 75 2 50 1 41 3 55\n"
             "4 72 2 18 1 37 3 79 0 61\n"},
    {"LA03", "1 23 2 45 0 82 4 84 3 38\n"
             "2 21 1 29 0 18 4 41 3 50\n"
             "2 38 3 54 4 16 0 52 1 52\n"
             "4 37 0 54 2 74 1 62 3 57\n"
             "4 57 0 81 1 61 3 68 2 30\n"
             "4 81 0 79 1 89 2 89 3 11\n"
             "3 33 2 20 0 91 4 20 1 66\n"
             "4 24 1 84 0 32 2 55 3 8\n"
             "4 56 0 7 3 54 2 64 1 39\n"
             "4 40 1 83 0 19 2 8 3 7\n"},
    {"LA04", "0 12 2 94 3 92 4 91 1 7\n"
             "1 19 3 11 4 66 2 21 0 87\n"
             "1 14 0 75 3 13 4 16 2 20\n"
             "2 95 4 66 0 7 3 7 1 77\n"
             "1 45 3 6 4 89 0 15 2 34\n"
             "3 77 2 20 0 76 4 88 1 53\n"
             "2 74 1 88 0 52 3 27 4 9\n"
             "1 88 3 69 0 62 4 98 2 52\n"
             "2 61 4 9 0 62 1 52 3 90\n"
             "2 54 4 5 3 59 1 15 0 88\n"},
    {"LA05", "1 72 0 87 4 95 2 66 3 60\n"
             "4 5 3 35 0 48 2 39 1 54\n"
             "1 46 3 20 2 21 0 97 4 55\n"
             "0 59 3 19 4 46 1 34 2 37\n"
             "4 23 2 73 3 25 1 24 0 28\n"
             "3 28 0 45 4 5 1 78 2 83\n"
             "0 53 3 71 1 37 4 29 2 12\n"
             "4 12 2 87 3 33 1 55 0 38\n"
             "2 49 3 83 1 40 0 48 4 7\n"
             "2 65 3 17 0 90 4 27 1 23\n"},
};

} // namespace

plan::Problem jobShop(const std::string& name, plan::Minute horizon, std::optional<double> longestGap)
{
    plan::Problem problem;
    problem.name = name;
    problem.horizon = horizon;
    problem.people = {"nobody"};
    std::istringstream table(shopTables.at(name));
    std::string row;
    while (std::getline(table, row)) {
        const int job = static_cast<int>(problem.pieces.size());
        problem.pieces.push_back({"J" + std::to_string(job), 0, 0});
        std::istringstream figures(row);
        int machine = 0;
        plan::Minute duration = 0;
        for (bool first = true; figures >> machine >> duration; first = false) {
            while (problem.resources.size() <= static_cast<std::size_t>(machine)) {
                problem.resources.push_back({"M" + std::to_string(problem.resources.size()), 1});
            }
            plan::Step step;
            step.piece = job;
            step.id = problem.pieces.back().id + "." + std::to_string(problem.steps.size());
            step.duration = duration;
            step.hands = false;
            step.uses = {{machine, 1}};
            const int index = static_cast<int>(problem.steps.size());
            if (!first) {
                plan::Lag lag{index - 1, index, 0, std::nullopt};
                if (longestGap) {
                    lag.most = static_cast<plan::Minute>(*longestGap * problem.steps.back().duration);
                }
                problem.lags.push_back(lag);
            }
            problem.steps.push_back(std::move(step));
        }
    }
    return problem;
}

const std::vector<ShopOptimum>& shopOptima()
{
    static const std::vector<ShopOptimum> optima = [] {
        // Rows: longest gap to the next operation as a part of the duration; columns FT06, LA01 to LA05.
        const char* names[] = {"FT06", "LA01", "LA02", "LA03", "LA04", "LA05"};
        const std::vector<std::pair<std::optional<double>, std::vector<plan::Minute>>> rows{
            {std::nullopt, {55, 666, 655, 597, 590, 593}}, {0.0, {73, 971, 937, 820, 887, 777}},
            {0.5, {61, 760, 749, 679, 708, 642}},          {1.0, {58, 697, 692, 650, 652, 593}},
            {2.0, {55, 666, 672, 630, 605, 593}},
        };
        std::vector<ShopOptimum> all;
        for (const auto& [gap, figures] : rows) {
            for (std::size_t i = 0; i < figures.size(); ++i) {
                all.push_back({names[i], gap, figures[i]});
            }
        }
        all.push_back({"FT10", std::nullopt, 930});
        return all;
    }();
    return optima;
}

} // namespace mend::test
