#include "core/exchange/planwhy.h"

#include "core/exchange/planreader.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

using namespace mend;
using nlohmann::json;

namespace {

/// Makes the change on the problem's own text and judges the plan that is said to hold then.
void expectTried(const std::string& name, const json& told)
{
    const json before = json::parse(exchange::planProblemText(test::benchmarkProblem(name)));
    const exchange::ReadProblem read = exchange::readPlanProblem(before.patch(told.at("change")).dump());
    ASSERT_TRUE(read.problem) << name << told.at("change").dump();
    plan::Timetable table;
    const auto& people = read.problem->people;
    for (const json& step : told.at("plan").at("steps")) {
        table.start.push_back(step.at("start"));
        table.person.push_back(std::nullopt);
        if (step.at("person").is_string()) {
            const auto person = std::find(people.begin(), people.end(), step.at("person").get<std::string>());
            table.person.back() = static_cast<int>(person - people.begin());
        }
    }
    EXPECT_EQ(test::judge(*read.problem, table), std::vector<std::string>{}) << name << told.dump();
}

TEST(PlanWhy, EveryChangeItTellsCanBeMadeAndItsPlanHolds)
{
    for (const std::string& name : test::benchmarkNames("infeasible")) {
        const plan::Problem problem = test::benchmarkProblem(name);
        const json why = json::parse(exchange::whyNotText(problem, plan::whyNot(problem)));
        EXPECT_EQ(why.at("planned"), false);
        for (const json& strain : why.at("conflicts").at(0).at("strains")) {
            expectTried(name, strain);
        }
        for (const json& way : why.at("ways_out")) {
            expectTried(name, way);
        }
    }
}

} // namespace
