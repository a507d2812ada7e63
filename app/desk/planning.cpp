#include "app/desk/planning.h"

#include "app/desk/planwords.h"

#include "core/exchange/planwhy.h"

#include <QJsonDocument>

#include <chrono>

namespace mend::desk {

namespace {

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

plan::Planned planFor(const plan::Problem& problem, const PlanEffort& effort)
{
    const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double>(effort.seconds);
    plan::Effort search;
    search.seed = effort.seed;
    search.enough = [until] { return std::chrono::steady_clock::now() >= until; };
    return plan::planBench(problem, search);
}

std::string statusOf(const plan::Planned& planned)
{
    if (planned.flowProven) {
        return "optimal";
    }
    return planned.promisesProven ? "promises_optimal" : "feasible";
}

Answer withoutPlan(const plan::Problem& problem, const plan::Planned& planned)
{
    if (planned.verdict == plan::Planned::Verdict::NoPlan) {
        return whyNone(problem);
    }
    Answer answer;
    answer.ending = Ending::NotFound;
    answer.text = QStringLiteral("no plan was found in the time, which does not mean that there is none\n");
    answer.data = {{QStringLiteral("planned"), false}, {QStringLiteral("proven"), false}};
    return answer;
}

} // namespace mend::desk
