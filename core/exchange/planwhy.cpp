#include "core/exchange/planwhy.h"

#include "core/exchange/planreader.h"

#include <nlohmann/json.hpp>

namespace mend::exchange {
namespace {

using WhyJson = nlohmann::ordered_json;
using plan::slot;
using plan::Strain;
using plan::WayOut;

WhyJson replaced(const std::string& path, WhyJson value)
{
    return WhyJson::array({{{"op", "replace"}, {"path", path}, {"value", std::move(value)}}});
}

/// All parts of the problem that differ, each put in place of the old one.
WhyJson changeTo(const plan::Problem& problem, const plan::Problem& changed)
{
    const WhyJson before = WhyJson::parse(planProblemText(problem));
    const WhyJson after = WhyJson::parse(planProblemText(changed));
    WhyJson patch = WhyJson::array();
    for (const auto& [key, value] : after.items()) {
        if (before.at(key) != value) {
            patch.push_back({{"op", "replace"}, {"path", "/" + key}, {"value", value}});
        }
    }
    return patch;
}

std::string kindWord(Strain::Kind kind)
{
    switch (kind) {
    case Strain::Kind::Window:
        return "window";
    case Strain::Kind::Minimum:
        return "minimum";
    case Strain::Kind::Hands:
        return "hands";
    case Strain::Kind::Place:
        return "place";
    case Strain::Kind::Apart:
        return "apart";
    case Strain::Kind::Hours:
        return "hours";
    case Strain::Kind::Earliest:
        return "earliest";
    case Strain::Kind::LatestEnd:
        return "latest_end";
    case Strain::Kind::Horizon:
        return "horizon";
    case Strain::Kind::Order:
        return "order";
    }
    return {};
}

/// When the bench is shut before an opening, as [from, to]; null where it is for good.
WhyJson shutHours(const plan::Problem& problem, int which)
{
    const auto& open = problem.open;
    return WhyJson::array({which == 0 ? WhyJson(nullptr) : WhyJson(open[slot(which) - 1].to),
                           slot(which) < open.size() ? WhyJson(open[slot(which)].from) : WhyJson(nullptr)});
}

WhyJson strainJson(const plan::Problem& problem, const Strain& strain)
{
    WhyJson json{{"kind", kindWord(strain.kind)}};
    const std::size_t which = slot(strain.which);
    const std::string number = std::to_string(strain.which);
    const auto tellLag = [&] {
        json["from"] = problem.steps[slot(problem.lags[which].from)].id;
        json["to"] = problem.steps[slot(problem.lags[which].to)].id;
    };
    const plan::Problem changed = plan::relaxed(problem, strain);
    WhyJson change;
    switch (strain.kind) {
    case Strain::Kind::Window:
        tellLag();
        json["at_most"] = problem.lags[which].most.value_or(0);
        change = replaced("/lags/" + number + "/max", nullptr);
        break;
    case Strain::Kind::Minimum:
        tellLag();
        json["at_least"] = problem.lags[which].least;
        change = replaced("/lags/" + number + "/min", changed.lags[which].least);
        break;
    case Strain::Kind::Hands:
        json["people"] = problem.people.size();
        break;
    case Strain::Kind::Place:
        json["resource"] = problem.resources[which].id;
        json["capacity"] = problem.resources[which].capacity;
        change = replaced("/resources/" + number + "/capacity", problem.resources[which].capacity + 1);
        break;
    case Strain::Kind::Apart:
        json["tags"] = {problem.incompatible[which].first, problem.incompatible[which].second};
        break;
    case Strain::Kind::Hours:
        json["shut"] = shutHours(problem, strain.which);
        break;
    case Strain::Kind::Earliest:
    case Strain::Kind::LatestEnd:
        json["step"] = problem.steps[which].id;
        change = WhyJson::array({{{"op", "remove"}, {"path", "/steps/" + number + "/" + kindWord(strain.kind)}}});
        break;
    case Strain::Kind::Horizon:
        json["horizon"] = problem.horizon;
        break;
    case Strain::Kind::Order:
        tellLag();
        break;
    }
    json["change"] = change.is_null() ? changeTo(problem, changed) : std::move(change);
    return json;
}

WhyJson planJson(const plan::Problem& problem, const plan::Timetable& table)
{
    return WhyJson::parse(planSolutionText(problem, table, "feasible"));
}

WhyJson conflictJson(const plan::Problem& problem, const plan::Conflict& conflict)
{
    WhyJson json{{"pieces", WhyJson::array()}, {"strains", WhyJson::array()}};
    for (const int piece : conflict.pieces) {
        json["pieces"].push_back(problem.pieces[slot(piece)].id);
    }
    for (std::size_t i = 0; i < conflict.strains.size(); ++i) {
        WhyJson strain = strainJson(problem, conflict.strains[i]);
        const plan::Problem changed = plan::relaxed(problem, conflict.strains[i]);
        strain["plan"] = conflict.without[i] ? planJson(changed, *conflict.without[i]) : WhyJson(nullptr);
        json["strains"].push_back(std::move(strain));
    }
    return json;
}

WhyJson wayJson(const plan::Problem& problem, const WayOut& way)
{
    WhyJson json;
    const std::size_t which = slot(way.which);
    switch (way.kind) {
    case WayOut::Kind::AnotherPlace:
        json = {{"kind", "another_place"}, {"resource", problem.resources[which].id}};
        break;
    case WayOut::Kind::HelpingHand:
        json = {{"kind", "helping_hand"}, {"minutes", way.minutes}, {"from", way.at}};
        break;
    case WayOut::Kind::StayOpen:
        json = {{"kind", way.sooner ? "open_sooner" : "stay_open"}, {"minutes", way.minutes}};
        json[way.sooner ? "from" : "until"] = way.at;
        break;
    case WayOut::Kind::SetAside:
        json = {{"kind", "set_aside"}, {"piece", problem.pieces[which].id}};
        break;
    case WayOut::Kind::LetLapse:
        json = {{"kind", "let_lapse"},
                {"from", problem.steps[slot(problem.lags[which].from)].id},
                {"to", problem.steps[slot(problem.lags[which].to)].id},
                {"minutes", way.minutes}};
        break;
    }
    json["change"] = changeTo(problem, way.changed);
    json["plan"] = planJson(way.changed, way.plan);
    return json;
}

} // namespace

std::string whyNotText(const plan::Problem& problem, const plan::WhyNot& why)
{
    WhyJson json{{"format", "bench-plan-why/1"},  {"instance", problem.name},    {"planned", false}, {"proven", true},
                 {"conflicts", WhyJson::array()}, {"ways_out", WhyJson::array()}};
    for (const plan::Conflict& conflict : why.conflicts) {
        json["conflicts"].push_back(conflictJson(problem, conflict));
    }
    for (const WayOut& way : why.waysOut) {
        json["ways_out"].push_back(wayJson(problem, way));
    }
    return json.dump(1) + "\n";
}

} // namespace mend::exchange
