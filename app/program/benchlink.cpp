#include "app/program/benchlink.h"

#include "app/program/extras.h"

#include <algorithm>

namespace mend::app {

using bench::ActKind;
using bench::CardAct;
using bench::StageInstance;

namespace {
std::string utf8(const QString& text) { return text.toStdString(); }
} // namespace

BenchLink::BenchLink(Services services, MainWindow& window, service::Manner manner, QObject* parent)
    : QObject(parent), m_services(services), m_window(window), m_manner(std::move(manner))
{
    m_window.bench().setManner(m_manner);
    m_window.bench().setDetails(this);
    connect(&m_services.alerts, &service::AlertService::decided, this, &BenchLink::show);
    connect(&m_services.bench, &service::BenchService::storedChanged, this, &BenchLink::show);
    connect(&m_services.heart, &service::Heartbeat::ticked, this, [this](Instant at) {
        m_window.setNow(at);
        m_services.heart.ticker().showSeconds(m_window.showsSeconds());
    });
    connectActs();
    connectRarerActs();
}

void BenchLink::setManner(const service::Manner& manner)
{
    m_manner = manner;
    m_window.bench().setManner(m_manner);
    show();
}

void BenchLink::setSoundWorks(bool works)
{
    m_soundWorks = works;
    m_services.alerts.setSoundWorks(works);
    show();
}

void BenchLink::show()
{
    m_window.setBoard(m_services.bench.board(),
                      extrasOf(m_services.bench, m_services.alerts, m_manner, m_soundWorks, now()));
    m_services.heart.ticker().showSeconds(m_window.showsSeconds());
}

void BenchLink::connectActs()
{
    Told& told = m_window.bench().told();
    service::BenchService& bench = m_services.bench;
    connect(&told, &Told::acted, this, [this](PieceId piece, const CardAct& tapped, std::optional<Instant> at) {
        if (!closesMeanwhile(piece, tapped, at) && !needsMix(piece, tapped, at)) {
            act(piece, tapped, at, {});
        }
    });
    connect(&told, &Told::begunAllTheSame, this, [this](PieceId piece, const CardAct& tapped) {
        if (!needsMix(piece, tapped, {})) {
            act(piece, tapped, {}, {});
        }
    });
    connect(&told, &Told::actedWithMix, this,
            [this](PieceId piece, const CardAct& tapped, MixId mix, std::optional<Instant> at) {
                act(piece, tapped, at, mix);
            });
    connect(&told, &Told::hazardAnswered, this,
            [&bench](PieceId piece, const StageInstance& stage, const QString& key, const QString& answer,
                     const QString& words) {
                const rules::Hazard* hazard = bench.book().hazard(utf8(key));
                if (!hazard) {
                    return;
                }
                const auto given = std::ranges::find(hazard->answers, utf8(answer), &rules::Answer::key);
                if (given != hazard->answers.end()) {
                    bench.answerHazard(piece, stage, *hazard, *given, utf8(words));
                }
            });
    connect(&told, &Told::undone, this, &BenchLink::undo);
    connect(&told, &Told::factMoved, &bench, &service::BenchService::retell);
    connect(&told, &Told::mixStarted, this, [&bench](const QString& material) { bench.startMix(utf8(material)); });
    connect(&told, &Told::mixEnded, this, [&bench](MixId mix, const QString& how) { bench.endMix(mix, utf8(how)); });
    connect(&told, &Told::readingEntered, &bench, &service::BenchService::read);
}

void BenchLink::connectRarerActs()
{
    Told& told = m_window.bench().told();
    service::BenchService& bench = m_services.bench;
    service::AlertService& alerts = m_services.alerts;
    connect(&told, &Told::noted, this,
            [&bench](PieceId piece, const QString& words) { bench.note(piece, utf8(words)); });
    connect(&told, &Told::placed, &bench, &service::BenchService::lay);
    connect(&told, &Told::skipped, this, [&bench](PieceId piece, const StageInstance& stage, const QString& reason) {
        bench.skip(piece, stage, utf8(reason));
    });
    connect(&told, &Told::sentBack, this, [&bench](PieceId piece, const StageInstance& stage, const QString& reason) {
        bench.sendBack(piece, stage, utf8(reason));
    });
    connect(&told, &Told::holdBegun, this,
            [&bench](PieceId piece, const QString& reason) { bench.hold(piece, utf8(reason)); });
    connect(&told, &Told::stateTold, this,
            [&bench](const QString& state, bool begins) { bench.tellState(utf8(state), begins); });
    connect(&told, &Told::personChosen, &bench, &service::BenchService::comeToBench);
    connect(&told, &Told::awayTold, &bench, &service::BenchService::goAway);
    connect(&told, &Told::soundPaused, this, [this, &alerts](bool paused) {
        alerts.pauseSound(paused ? Span(std::chrono::minutes(10)) : Span{0}, now());
    });
    connect(&told, &Told::ownersHidden, this, [this](bool hidden) { m_window.bench().hideOwners(hidden); });
    connect(&told, &Told::calledBack, this,
            [this, &alerts](const QString& key) { alerts.answer(utf8(key), bench::Answered::StartAt, now()); });
    connect(&told, &Told::putOff, this, [&alerts](PieceId, const QString& how) {
        // "key|how|instant in milliseconds", as putOffsOf made it.
        const QStringList parts = how.split(QLatin1Char('|'));
        const auto answered = parts.size() >= 2 ? bench::answeredFromKey(utf8(parts[1])) : std::nullopt;
        if (answered) {
            const bool timed = parts.size() > 2;
            alerts.answer(utf8(parts[0]), *answered,
                          timed ? std::optional(Instant(Span(parts[2].toLongLong()))) : std::nullopt);
        }
    });
}

const rules::Stage* BenchLink::stageOf(PieceId piece, const std::string& key) const
{
    const bench::PieceState* state = m_services.bench.bench().piece(piece);
    const rules::Procedure* procedure = state ? bench::procedureOf(*state, m_services.bench.book()) : nullptr;
    return procedure ? procedure->find(key) : nullptr;
}

/// Before hands begin something that takes them past the latest start of something costly, that is listed, once.
bool BenchLink::closesMeanwhile(PieceId piece, const CardAct& tapped, std::optional<Instant> at)
{
    const rules::Stage* stage = stageOf(piece, tapped.stage.stage);
    if (tapped.kind != ActKind::Begin || at || !stage) {
        return false;
    }
    const Span length = bench::handsOn(*stage, *m_services.bench.bench().piece(piece), m_services.bench.book());
    const QStringList lines =
        closingLines(bench::closingWithin(m_services.alerts.alerts(), now(), length), piece, tapped.stage);
    if (lines.isEmpty()) {
        return false;
    }
    m_window.bench().askBegin(piece, tapped, lines);
    return true;
}

/// Asks which mix was used where there is not exactly one; a stage that mixes for itself never asks.
bool BenchLink::needsMix(PieceId piece, const CardAct& tapped, std::optional<Instant> at)
{
    const bool takesMix = tapped.kind == ActKind::Begin || tapped.kind == ActKind::Finish;
    const rules::Stage* stage = stageOf(piece, tapped.stage.stage);
    if (!takesMix || !stage || stage->mix.empty() || stage->mixesHere) {
        return false;
    }
    const bench::StageRecord* told = m_services.bench.bench().piece(piece)->record(tapped.stage);
    if (told && told->mix.isSet()) {
        return false;
    }
    const auto mixes = bench::mixesFor(*stage, m_services.bench.bench(), m_services.bench.book(), at.value_or(now()));
    if (mixes.size() == 1) {
        return false;
    }
    m_window.bench().askWhichMix(piece, tapped, mixes, at);
    return true;
}

/// A stage whose own work begins with mixing starts its mix by being told.
MixId BenchLink::mixOnTheWay(const rules::Stage& stage, const CardAct& tapped, PieceId piece, Instant when)
{
    const bench::PieceState& state = *m_services.bench.bench().piece(piece);
    const bench::StageRecord* told = state.record(tapped.stage);
    const bool needed = stage.mixesHere && (tapped.kind == ActKind::Begin || tapped.kind == ActKind::Finish) &&
                        !(told && told->mix.isSet());
    const auto living = bench::mixesFor(stage, m_services.bench.bench(), m_services.bench.book(), when);
    if (!needed || !living.empty()) {
        return living.empty() ? MixId{} : living.back();
    }
    bench::Event mixing = m_services.bench.told(bench::What::MixStarted);
    mixing.word = stage.mix;
    mixing.happened = when;
    if (tapped.kind == ActKind::Finish) {
        mixing.happened -= bench::handsOn(stage, state, m_services.bench.book());
    }
    return MixId(m_services.bench.tell({mixing}).front().value());
}

void BenchLink::act(PieceId piece, const CardAct& tapped, std::optional<Instant> at, MixId mix)
{
    if (tapped.kind == ActKind::HandsOnIt) {
        handsOn(piece);
        return;
    }
    bench::Tap tap;
    tap.piece = piece;
    tap.act = tapped;
    tap.happened = at;
    tap.mix = mix;
    const rules::Stage* stage = stageOf(piece, tapped.stage.stage);
    if (stage && !mix.isSet() && stage->mixesHere) {
        tap.mix = mixOnTheWay(*stage, tapped, piece, at.value_or(now()));
    }
    m_services.bench.tap(tap);
}

/// Hands on what calls loudest of this piece.
void BenchLink::handsOn(PieceId piece)
{
    for (const bench::VisibleAlert& visible : m_services.alerts.decision().visible) {
        const bench::Alert* alert = m_services.alerts.alert(visible.key);
        if (alert && alert->piece == piece) {
            m_services.alerts.answer(visible.key, bench::Answered::HandsOn);
            return;
        }
    }
}

void BenchLink::undo(EventId event)
{
    const auto offer = m_services.bench.undoOffer(now());
    if (offer && std::ranges::find(offer->events, event) != offer->events.end()) {
        m_services.bench.undo(offer->events);
        return;
    }
    std::vector<EventId> gone = m_services.bench.wouldGoWith(event);
    gone.push_back(event);
    m_services.bench.undo(gone);
}

} // namespace mend::app
