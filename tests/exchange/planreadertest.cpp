#include "core/exchange/planreader.h"

#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

#include <functional>

using namespace mend;
using namespace mend::exchange;
using nlohmann::json;

namespace {

/// A bowl that is filled and wiped, with one of everything.
json smallest()
{
    return json::parse(R"({
 "format": "bench-plan/1", "name": "bowl", "now": 10, "horizon": 900, "people": ["A"], "open": [[0, 300], [400, 900]],
 "resources": [{"id": "spot", "capacity": 2}],
 "pieces": [{"id": "Q1", "weight": 1, "promised": 100}],
 "steps": [
  {"id": "fill", "piece": "Q1", "kind": "fill", "duration": 5, "hands": 1, "uses": [], "tags": [], "state": "started",
   "start": 8, "person": "A"},
  {"id": "wipe", "piece": "Q1", "kind": "wipe", "duration": 4, "hands": 1, "uses": [{"resource": "spot", "amount": 2}],
   "tags": ["solvent"], "state": "todo", "earliest": 12, "latest_end": 40}],
 "lags": [{"from": "fill", "to": "wipe", "min": 2, "max": 13}],
 "waits": [{"id": "w", "from": "fill", "to": "wipe", "uses": [], "tags": ["tacky"]}],
 "incompatible": [["flame", "solvent"]]})");
}

std::vector<std::string> faultsOf(const json& problem)
{
    std::vector<std::string> paths;
    for (const JsonFault& fault : readPlanProblem(problem.dump(1)).faults) {
        EXPECT_GT(fault.place.line, 0);
        paths.push_back(fault.path);
    }
    return paths;
}

TEST(PlanReader, ReadsEveryPartAndWritesItBackTheSame)
{
    const ReadProblem read = readPlanProblem(smallest().dump(1));
    ASSERT_TRUE(read.problem);
    EXPECT_EQ(read.problem->steps[0].started, 8);
    EXPECT_EQ(read.problem->steps[1].uses[0].amount, 2);
    EXPECT_EQ(read.problem->lags[0].most, 13);
    EXPECT_EQ(readPlanProblem(planProblemText(*read.problem)).problem, read.problem);
    for (const std::string& name : test::benchmarkNames()) {
        const plan::Problem problem = test::benchmarkProblem(name);
        EXPECT_EQ(readPlanProblem(planProblemText(problem)).problem, problem) << name;
    }
}

TEST(PlanReader, PointsAtEachThingThatIsWrong)
{
    struct Case {
        const char* path; ///< where the fault must be told
        std::function<void(json&)> spoil;
    };
    const std::vector<Case> cases{
        {"", [](json& p) { p.erase("lags"); }},
        {"/extra", [](json& p) { p["extra"] = 1; }},
        {"/format", [](json& p) { p["format"] = "bench-plan/2"; }},
        {"/name", [](json& p) { p["name"] = ""; }},
        {"/now", [](json& p) { p["now"] = -1; }},
        {"/now", [](json& p) { p["now"] = 10.0; }},
        {"/horizon", [](json& p) { p["horizon"] = 10; }},
        {"/people", [](json& p) { p["people"] = json::array(); }},
        {"/people/1",
         [](json& p) {
             p["people"] = {"A", "A"};
         }},
        {"/open/1", [](json& p) { p["open"][1][0] = 300; }},
        {"/open/0",
         [](json& p) {
             p["open"][0] = {300, 0};
         }},
        {"/open/0", [](json& p) { p["open"][0] = {1}; }},
        {"/resources/0/capacity", [](json& p) { p["resources"][0]["capacity"] = 0; }},
        {"/pieces/0/weight", [](json& p) { p["pieces"][0]["weight"] = true; }},
        {"/pieces/1",
         [](json& p) {
             p["pieces"].push_back({{"id", "Q2"}, {"weight", 0}, {"promised", 0}});
         }},
        {"/steps/0/piece", [](json& p) { p["steps"][0]["piece"] = "Q9"; }},
        {"/steps/0/duration", [](json& p) { p["steps"][0]["duration"] = 0; }},
        {"/steps/0/hands", [](json& p) { p["steps"][0]["hands"] = 2; }},
        {"/steps/0/start", [](json& p) { p["steps"][0]["start"] = 11; }},
        {"/steps/0/person", [](json& p) { p["steps"][0]["person"] = "B"; }},
        {"/steps/0", [](json& p) { p["steps"][0].erase("person"); }},
        {"/steps/0", [](json& p) { p["steps"][0]["earliest"] = 1; }},
        {"/steps/1", [](json& p) { p["steps"][1]["start"] = 5; }},
        {"/steps/1/id", [](json& p) { p["steps"][1]["id"] = "fill"; }},
        {"/steps/1/state", [](json& p) { p["steps"][1]["state"] = "done"; }},
        {"/steps/1/uses/0/amount", [](json& p) { p["steps"][1]["uses"][0]["amount"] = 3; }},
        {"/steps/1/uses/1",
         [](json& p) {
             p["steps"][1]["uses"].push_back({{"resource", "spot"}, {"amount", 1}});
         }},
        {"/steps/1/tags/1",
         [](json& p) {
             p["steps"][1]["tags"] = {"a", "a"};
         }},
        {"/lags/0/to", [](json& p) { p["lags"][0]["to"] = "dust"; }},
        {"/lags/0/max", [](json& p) { p["lags"][0]["max"] = "soon"; }},
        {"/lags/1", [](json& p) { p["lags"].push_back(p["lags"][0]); }},
        {"/lags/0/min", [](json& p) { p["lags"][0]["min"] = 1e12; }},
        {"/waits/0", [](json& p) { p["lags"][0]["min"] = 0; }},
        {"/waits/0/id", [](json& p) { p["waits"][0]["id"] = "wipe"; }},
        {"/incompatible/0",
         [](json& p) {
             p["incompatible"][0] = {"a", "a"};
         }},
        {"/incompatible/1",
         [](json& p) {
             p["incompatible"].push_back({"solvent", "flame"});
         }},
    };
    for (std::size_t i = 0; i < cases.size(); ++i) {
        json problem = smallest();
        cases[i].spoil(problem);
        const std::vector<std::string> paths = faultsOf(problem);
        EXPECT_NE(std::find(paths.begin(), paths.end(), cases[i].path), paths.end()) << i << " " << cases[i].path;
        EXPECT_FALSE(readPlanProblem(problem.dump()).problem) << i;
    }
}

TEST(PlanReader, TellsAllFaultsAtOnceInTheOrderOfTheText)
{
    const std::string text =
        "{\"format\": \"bench-plan/1\", \"name\": \"x\", \"now\": 0, \"horizon\": 10, \"people\": [],\n"
        " \"open\": [[5, 5]], \"resources\": [], \"pieces\": [], \"steps\": [],\n"
        " \"lags\": [], \"waits\": [], \"incompatible\": [[\"a\"]]}";
    const std::vector<JsonFault> faults = readPlanProblem(text).faults;
    ASSERT_EQ(faults.size(), 4U);
    EXPECT_EQ(faults[0].path, "/people");
    EXPECT_EQ(faults[1].path, "/open/0");
    EXPECT_EQ(faults[1].place, (TextPlace{2, 11}));
    EXPECT_EQ(faults[2].path, "/pieces");
    EXPECT_EQ(faults[3].place.line, 3);
    EXPECT_EQ(readPlanProblem("{\"now\": 1, \"now\": 2}").faults.at(0).path, "/now");
    EXPECT_EQ(readPlanProblem("{").faults.size(), 1U);
}

TEST(PlanReader, WritesAPlanWithItsPeople)
{
    const plan::Problem problem = readPlanProblem(smallest().dump()).problem.value();
    const plan::Timetable table{{8, 15}, {0, 0}};
    ASSERT_TRUE(test::judge(problem, table).empty());
    const json plan = json::parse(planSolutionText(problem, table, "optimal"));
    EXPECT_EQ(plan["format"], "bench-plan-solution/1");
    EXPECT_EQ(plan["instance"], "bowl");
    EXPECT_EQ(plan["steps"][1], (json{{"id", "wipe"}, {"start", 15}, {"person", "A"}}));
}

} // namespace
