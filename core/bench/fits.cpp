#include "core/bench/fits.h"

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

/// How far ahead a yes is followed, minute by minute at first. What fits then still needs no figure.
constexpr plan::Minute closely = 30;
constexpr plan::Minute farAhead = 240;
constexpr plan::Minute stride = 5;

/// The last minute up to which the answer stays yes without a break: a start that fits again once something else is
/// done does not count. Empty: it stays so as far as is looked.
std::optional<plan::Minute> lastYes(plan::MayStart& mayStart, int step, plan::Minute now)
{
    plan::Minute last = now;
    for (plan::Minute ahead = 1; ahead <= farAhead; ahead += ahead < closely ? 1 : stride) {
        if (mayStart.ask(step, now + ahead, plan::MayStart::Depth::Quick).may != plan::StartAnswer::May::Yes) {
            return last;
        }
        last = now + ahead;
    }
    return std::nullopt;
}
} // namespace

std::vector<Fit> fitsOf(const BenchProblem& made, const plan::Timetable& current, plan::MayStart::Depth depth,
                        const plan::Enough& enough)
{
    std::vector<Fit> fits;
    plan::MayStart mayStart(made.problem, current);
    for (const int step : mayStart.nextSteps()) {
        if (enough && enough()) {
            break;
        }
        const PlanStep& means = made.steps[plan::slot(step)];
        if (means.stage.stage.empty()) {
            continue; // somebody's absence, or what goes by itself
        }
        const plan::StartAnswer answer = mayStart.ask(step, depth);
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
        if (fit.may == Fit::May::Yes && depth == plan::MayStart::Depth::Thorough) {
            const auto last = lastYes(mayStart, step, made.problem.now);
            fit.until = last ? std::optional(made.at(*last)) : std::nullopt;
        }
        fits.push_back(fit);
    }
    return fits;
}

} // namespace mend::bench
