#include "app/program/benchlink.h"

#include "app/program/extras.h"

#include <algorithm>

namespace mend::app {

using bench::What;
using service::text;

namespace {

/// How far back a fact can be told differently.
constexpr Span lastDay = std::chrono::hours(24);

bool canBeToldAgain(What what)
{
    switch (what) {
    case What::Begun:
    case What::Done:
    case What::NotYet:
    case What::Skipped:
    case What::Missed:
    case What::DoingLate:
    case What::Placed:
        return true;
    default:
        return false;
    }
}

} // namespace

std::vector<Fact> BenchLink::factsOf(PieceId piece) const
{
    const service::BenchService& bench = m_services.bench;
    std::vector<Fact> facts;
    for (const bench::Event& event : bench::effective(bench.events())) {
        if (event.piece == piece && canBeToldAgain(event.what) && now() - event.happened < lastDay) {
            facts.push_back({event.id, factWords(event, bench.bench(), bench.book()), event.happened});
        }
    }
    std::ranges::reverse(facts);
    return facts;
}

std::vector<StageDone> BenchLink::stagesDoneOf(PieceId piece) const
{
    std::vector<StageDone> stages;
    const bench::PieceState* state = m_services.bench.bench().piece(piece);
    const rules::Procedure* procedure = state ? bench::procedureOf(*state, m_services.bench.book()) : nullptr;
    if (!procedure) {
        return stages;
    }
    for (const rules::Stage& stage : procedure->stages) {
        const bench::StageRecord* told = state->record({stage.key, 1});
        if (told && told->isSettled()) {
            stages.push_back({{stage.key, 1}, text(stage.act)});
        }
    }
    std::ranges::reverse(stages);
    return stages;
}

std::vector<PutOff> BenchLink::putOffsOf(PieceId piece) const
{
    std::vector<PutOff> ways;
    for (const bench::VisibleAlert& visible : m_services.alerts.decision().visible) {
        const bench::Alert* alert = m_services.alerts.alert(visible.key);
        if (!alert || alert->piece != piece || visible.lastCall) {
            continue;
        }
        const auto way = [&](bench::Answered how, const QString& words, std::optional<Instant> at = std::nullopt) {
            QString key = text(visible.key) + QLatin1Char('|') + text(bench::answeredKey(how));
            if (at) {
                key += QLatin1Char('|') + QString::number(at->time_since_epoch().count());
            }
            ways.push_back({key, words});
        };
        way(bench::Answered::Heard, tr("Heard"));
        way(bench::Answered::AfterStep, tr("After this step"));
        if (alert->lastCall && *alert->lastCall > now()) {
            way(bench::Answered::StartAt,
                tr("In time to start at %1").arg(service::timeOfDay(*alert->latestStart, m_manner)),
                alert->latestStart);
        }
        break;
    }
    return ways;
}

std::vector<StateTold> BenchLink::states() const
{
    std::vector<StateTold> told;
    const auto& inForce = m_services.bench.board().states;
    for (const rules::BenchState& state : m_services.bench.book().states) {
        const bool holds = std::ranges::find(inForce, state.key, &bench::StateInForce::state) != inForce.end();
        if (holds && !state.toldOver.empty()) {
            told.push_back({text(state.key), text(state.toldOver), false});
        } else if (!holds && !state.toldOn.empty()) {
            told.push_back({text(state.key), text(state.toldOn), true});
        }
    }
    return told;
}

QStringList BenchLink::movedBy(EventId event, Instant happened, PieceId piece) const
{
    QStringList lines;
    const bench::Board after = m_services.bench.ifRetold(event, happened, piece);
    for (const bench::Window& window : m_services.bench.board().windows) {
        const auto moved = std::ranges::find_if(after.windows, [&](const bench::Window& each) {
            return each.piece == window.piece && each.stage == window.stage;
        });
        const record::Piece* owner = m_services.bench.bench().roster.piece(window.piece);
        const QString name = owner ? text(owner->benchName) : QString();
        if (moved == after.windows.end()) {
            lines += tr("%1: “%2” no longer stands").arg(name, text(window.act));
        } else if (moved->closes != window.closes && moved->closes && window.closes) {
            lines += tr("%1: “%2” closes %3 instead of %4")
                         .arg(name, text(window.act), service::clockTime(*moved->closes, now(), m_manner),
                              service::clockTime(*window.closes, now(), m_manner));
        } else if (moved->opens != window.opens && moved->opens && window.opens) {
            lines += tr("%1: “%2” opens %3 instead of %4")
                         .arg(name, text(window.act), service::clockTime(*moved->opens, now(), m_manner),
                              service::clockTime(*window.opens, now(), m_manner));
        }
    }
    return lines;
}

} // namespace mend::app
