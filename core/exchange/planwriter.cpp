#include "core/exchange/planreader.h"

#include <nlohmann/json.hpp>

namespace mend::exchange {
namespace {

using Ordered = nlohmann::ordered_json;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

Ordered usesJson(const plan::Problem& problem, const std::vector<plan::Use>& uses)
{
    Ordered list = Ordered::array();
    for (const plan::Use& use : uses) {
        list.push_back({{"resource", problem.resources[at(use.resource)].id}, {"amount", use.amount}});
    }
    return list;
}

Ordered stepJson(const plan::Problem& problem, const plan::Step& step)
{
    Ordered json{{"id", step.id},
                 {"piece", problem.pieces[at(step.piece)].id},
                 {"kind", step.kind},
                 {"duration", step.duration},
                 {"hands", step.hands ? 1 : 0},
                 {"uses", usesJson(problem, step.uses)},
                 {"tags", step.tags},
                 {"state", step.started ? "started" : "todo"}};
    if (step.earliest) {
        json["earliest"] = *step.earliest;
    }
    if (step.latestEnd) {
        json["latest_end"] = *step.latestEnd;
    }
    if (step.started) {
        json["start"] = *step.started;
        if (step.person) {
            json["person"] = problem.people[at(*step.person)];
        }
    }
    return json;
}

} // namespace

std::string planProblemText(const plan::Problem& problem)
{
    Ordered json{{"format", "bench-plan/1"}, {"name", problem.name}};
    if (!problem.note.empty()) {
        json["note"] = problem.note;
    }
    json["now"] = problem.now;
    json["horizon"] = problem.horizon;
    json["people"] = problem.people;
    for (const char* key : {"open", "resources", "pieces", "steps", "lags", "waits", "incompatible"}) {
        json[key] = Ordered::array();
    }
    for (const plan::Stretch& open : problem.open) {
        json["open"].push_back(Ordered::array({open.from, open.to}));
    }
    for (const plan::Resource& resource : problem.resources) {
        json["resources"].push_back({{"id", resource.id}, {"capacity", resource.capacity}});
    }
    for (const plan::Piece& piece : problem.pieces) {
        json["pieces"].push_back({{"id", piece.id}, {"weight", piece.weight}, {"promised", piece.promised}});
    }
    for (const plan::Step& step : problem.steps) {
        json["steps"].push_back(stepJson(problem, step));
    }
    for (const plan::Lag& lag : problem.lags) {
        json["lags"].push_back({{"from", problem.steps[at(lag.from)].id},
                                {"to", problem.steps[at(lag.to)].id},
                                {"min", lag.least},
                                {"max", lag.most ? Ordered(*lag.most) : Ordered(nullptr)}});
    }
    for (const plan::Wait& wait : problem.waits) {
        json["waits"].push_back({{"id", wait.id},
                                 {"from", problem.steps[at(wait.from)].id},
                                 {"to", problem.steps[at(wait.to)].id},
                                 {"uses", usesJson(problem, wait.uses)},
                                 {"tags", wait.tags}});
    }
    for (const auto& [one, other] : problem.incompatible) {
        json["incompatible"].push_back(Ordered::array({one, other}));
    }
    return json.dump(1) + "\n";
}

std::string planSolutionText(const plan::Problem& problem, const plan::Timetable& table, const std::string& status)
{
    Ordered json{{"format", "bench-plan-solution/1"}, {"instance", problem.name}, {"status", status}};
    json["steps"] = Ordered::array();
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        const auto person = table.person[i];
        json["steps"].push_back({{"id", problem.steps[i].id},
                                 {"start", table.start[i]},
                                 {"person", person ? Ordered(problem.people[at(*person)]) : Ordered(nullptr)}});
    }
    return json.dump(1) + "\n";
}

} // namespace mend::exchange
