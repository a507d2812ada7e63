#include "core/bench/fits.h"

#include "core/plan/maystart.h"

namespace mend::bench {

namespace {
Fit::May mayOf(plan::StartAnswer::May may)
{
    switch (may) {
    case plan::StartAnswer::May::Yes:
        return Fit::May::Yes;
    case plan::StartAnswer::May::No:
        return Fit::May::No;
    case plan::StartAnswer::May::Unsure:
        break;
    }
    return Fit::May::Unsure;
}
} // namespace

std::vector<Fit> fitsOf(const BenchProblem& made, const plan::Timetable& current)
{
    std::vector<Fit> fits;
    plan::MayStart mayStart(made.problem, current);
    for (const int step : mayStart.nextSteps()) {
        const PlanStep& means = made.steps[plan::slot(step)];
        if (means.stage.stage.empty()) {
            continue; // somebody's absence, or what goes by itself
        }
        const plan::StartAnswer answer = mayStart.ask(step);
        Fit fit;
        fit.piece = means.piece;
        fit.stage = means.stage;
        fit.may = mayOf(answer.may);
        if (answer.window) {
            fit.clash = made.steps[plan::slot(made.problem.lags[plan::slot(*answer.window)].to)];
            const plan::Step& closing =
                made.problem.steps[plan::slot(made.problem.lags[plan::slot(*answer.window)].to)];
            fit.closes = made.at(answer.windowCloses + closing.duration);
        }
        if (answer.notBefore) {
            fit.notBefore = made.at(*answer.notBefore);
        }
        fits.push_back(fit);
    }
    return fits;
}

} // namespace mend::bench
