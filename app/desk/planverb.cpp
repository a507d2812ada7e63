#include "app/desk/planwords.h"
#include "app/desk/verbs.h"

#include "core/exchange/planreader.h"
#include "core/exchange/planwhy.h"
#include "core/plan/planner.h"

#include <QJsonArray>
#include <QJsonDocument>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace mend::desk {

namespace {

Answer faultsIn(const std::string& file, const std::vector<exchange::JsonFault>& found)
{
    Answer answer;
    answer.ending = Ending::BadInput;
    QJsonArray faults;
    for (const exchange::JsonFault& fault : found) {
        answer.text += QStringLiteral("%1:%2:%3: %4\n")
                           .arg(QString::fromStdString(file))
                           .arg(fault.place.line)
                           .arg(fault.place.column)
                           .arg(QString::fromStdString(fault.text));
        faults.append(QJsonObject{{QStringLiteral("line"), fault.place.line},
                                  {QStringLiteral("column"), fault.place.column},
                                  {QStringLiteral("path"), QString::fromStdString(fault.path)},
                                  {QStringLiteral("text"), QString::fromStdString(fault.text)}});
    }
    answer.data = {{QStringLiteral("good"), false},
                   {QStringLiteral("fault"), QStringLiteral("badInput")},
                   {QStringLiteral("faults"), faults}};
    return answer;
}

/// "optimal", "promises_optimal" (the flow may still be better) or "feasible".
std::string statusOf(const plan::Planned& planned)
{
    if (planned.flowProven) {
        return "optimal";
    }
    return planned.promisesProven ? "promises_optimal" : "feasible";
}

/// How long the reasons are looked for, once it is proven that there is no plan.
constexpr std::chrono::seconds longestWhy{5};

Answer whyNone(const plan::Problem& problem)
{
    const auto until = std::chrono::steady_clock::now() + longestWhy;
    const plan::WhyNot why = plan::whyNot(problem, [until] { return std::chrono::steady_clock::now() >= until; });
    Answer answer;
    answer.ending = Ending::NoPlan;
    answer.text = whyNotWords(problem, why);
    const std::string json = exchange::whyNotText(problem, why);
    answer.data = QJsonDocument::fromJson(QByteArray::fromStdString(json)).object();
    return answer;
}

} // namespace

Answer planProblem(const std::string& file, const PlanEffort& effort)
{
    std::error_code failed;
    std::ifstream stream(file, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    if (!stream || !std::filesystem::is_regular_file(file, failed)) {
        return refusal({FaultKind::NotFound, {}}, QString::fromStdString(file));
    }
    const exchange::ReadProblem read = exchange::readPlanProblem(text.str());
    if (!read.problem) {
        return faultsIn(file, read.faults);
    }

    const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double>(effort.seconds);
    plan::Effort search;
    search.seed = effort.seed;
    search.enough = [until] { return std::chrono::steady_clock::now() >= until; };
    const plan::Planned planned = plan::planBench(*read.problem, search);

    Answer answer;
    switch (planned.verdict) {
    case plan::Planned::Verdict::Plan: {
        const std::string solution = exchange::planSolutionText(*read.problem, *planned.table, statusOf(planned));
        answer.text = QString::fromStdString(solution);
        answer.data = QJsonDocument::fromJson(QByteArray::fromStdString(solution)).object();
        return answer;
    }
    case plan::Planned::Verdict::NoPlan:
        return whyNone(*read.problem);
    case plan::Planned::Verdict::NotFound:
        break;
    }
    answer.ending = Ending::NotFound;
    answer.text = QStringLiteral("no plan was found in the time, which does not mean that there is none\n");
    answer.data = {{QStringLiteral("planned"), false}, {QStringLiteral("proven"), false}};
    return answer;
}

} // namespace mend::desk
