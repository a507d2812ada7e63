#include "app/program/benchlink.h"

#include "core/bench/boardmoves.h"
#include "core/service/nightwording.h"
#include "core/service/toldwording.h"

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
            facts.push_back(
                {event.id, service::toldWords(event, bench.bench(), bench.book(), m_manner), event.happened});
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

QStringList BenchLink::closingLines(const std::vector<bench::Alert>& closing, PieceId piece,
                                    const bench::StageInstance& own) const
{
    QStringList lines;
    const auto add = [&](PieceId of, const bench::StageInstance& stage, Instant latestStart) {
        const bench::PieceState* state = m_services.bench.bench().piece(of);
        const rules::Stage* rule = stageOf(of, stage.stage);
        if (state && rule && !(of == piece && stage == own)) {
            lines << tr("%1: %2, start by %3")
                         .arg(service::isolated(text(state->piece.benchName)), text(rule->act),
                              service::clockTime(latestStart, now(), m_manner));
        }
    };
    for (const bench::Alert& alert : closing) {
        if (alert.chain.empty()) {
            add(alert.piece, alert.stage, *alert.latestStart);
        }
        for (std::size_t i = 0; i < alert.chain.size(); ++i) {
            add(alert.chainPieces[i], alert.chain[i], *alert.latestStart);
        }
    }
    return lines;
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

QStringList BenchLink::nightAhead() const
{
    const bench::Board& board = m_services.bench.board();
    service::Names names = service::namesOf(board);
    for (const record::Place& place : m_services.bench.bench().roster.places) {
        names.places[place.id] = text(place.name);
    }
    return service::nightWords(bench::nightAhead(board.windows, m_services.bench.bench(), now()), names, now(),
                               m_manner);
}

QStringList BenchLink::movedBy(EventId event, Instant happened, PieceId piece) const
{
    const bench::Board& before = m_services.bench.board();
    const auto moves = bench::windowMoves(before, m_services.bench.ifRetold(event, happened, piece));
    return service::moveWords(moves, service::namesOf(before), now(), m_manner);
}

} // namespace mend::app
