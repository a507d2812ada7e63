#include "app/shell/spaceslink.h"

#include "core/bench/night.h"
#include "core/service/nightwording.h"
#include "core/service/toldwording.h"

#include <QDateTime>
#include <algorithm>
#include <set>

namespace mend::app {

using service::text;

namespace {

/// From such a gap on it was a night: its lowest and highest are asked (common practice, no source).
constexpr Span nightFrom = std::chrono::hours(4);

bool isHeated(record::PlaceKind kind)
{
    return kind == record::PlaceKind::Cabinet || kind == record::PlaceKind::HumidBox;
}

/// The local day that lies so many days back.
InstantRange localDayBack(Instant now, int back, const service::Manner& manner)
{
    const QDate day = QDateTime::fromMSecsSinceEpoch(now.time_since_epoch().count(), manner.zone).date().addDays(-back);
    const auto begin = [&](const QDate& date) {
        return Instant(Span(date.startOfDay(manner.zone).toMSecsSinceEpoch()));
    };
    return {begin(day), begin(day.addDays(1))};
}

} // namespace

SpacesLink::SpacesLink(Services services, MainWindow& window, parts::TapGate& gate, const service::Manner& manner,
                       QObject* parent)
    : QObject(parent), m_services(services), m_window(window), m_log(new DayLogSpace(gate)),
      m_rules(new RulesSpace(gate)), m_settings(new SettingsSpace(gate)), m_away(new WhileAwaySpace(gate))
{
    m_log->setAnswers(this);
    m_rules->setAnswers(this);
    addSpaces();
    setManner(manner);
    connectLog();
    connectWhileAway();
    connect(m_rules, &RulesSpace::adopted, this, [this](const QString& key, const std::vector<PieceId>& pieces) {
        if (const rules::Procedure* newest = m_services.bench.book().procedure(key.toStdString())) {
            m_services.bench.tell(
                bench::adoptions(pieces, newest->hash, {m_services.clock.now(), m_services.bench.atBench()}));
        }
    });
    connect(&m_services.bench, &service::BenchService::benchChanged, this, &SpacesLink::show);
}

void SpacesLink::addSpaces()
{
    m_window.addSpace(QStringLiteral("log"), tr("Log"), m_log);
    m_window.addSpace(QStringLiteral("rules"), tr("Rules"), m_rules);
    m_window.addSpace(QStringLiteral("settings"), tr("Settings"), m_settings);
    m_window.addSpace(QStringLiteral("whileaway"), {}, m_away);
    const auto dress = [this] {
        for (auto* space : std::initializer_list<parts::SheetSpace*>{m_log, m_rules, m_settings}) {
            space->setLook(m_window.look());
        }
        m_away->setLook(m_window.look());
    };
    dress();
    connect(&m_window, &MainWindow::lookChanged, this, dress);
    connect(&m_window, &MainWindow::spaceChanged, this, [this](const QString& key) {
        // Whoever brings or fetches a piece stands at the screen and reads no other owner's name on it.
        m_window.bench().coverOwners(key == QLatin1String("intake") || key == QLatin1String("handover"));
        m_daysBack = 0;
        show();
    });
    const auto lead = [this](const char* key) { return [this, key] { m_window.showSpace(QString::fromLatin1(key)); }; };
    connect(m_away, &WhileAwaySpace::benchWanted, this, lead("bench"));
}

void SpacesLink::setManner(const service::Manner& manner)
{
    m_manner = manner;
    m_log->setManner(manner);
    m_rules->setManner(manner);
    m_settings->setManner(manner);
    m_away->setManner(manner);
    show();
}

void SpacesLink::show()
{
    const QString here = m_window.spaceShown();
    if (here == QLatin1String("log")) {
        showLog();
    } else if (here == QLatin1String("rules")) {
        showRules();
    } else if (here == QLatin1String("settings")) {
        Q_EMIT settingsShown();
    }
}

void SpacesLink::showLog()
{
    const service::BenchService& bench = m_services.bench;
    const InstantRange day = localDayBack(now(), m_daysBack, m_manner);
    DayLogNow shown;
    shown.lines = service::dayLog(bench.events(), bench.bench(), bench.book(), day, now(), m_manner);
    for (const auto& [id, piece] : bench.bench().pieces) {
        shown.pieces.push_back({id, text(piece.piece.benchName)});
    }
    const QDate date = QDateTime::fromMSecsSinceEpoch(day.from.time_since_epoch().count(), m_manner.zone).date();
    shown.day = m_manner.locale.toString(date, QLocale::LongFormat);
    shown.hasLater = m_daysBack > 0;
    m_log->setNow(std::move(shown), now());
}

void SpacesLink::showRules()
{
    const service::BenchService& bench = m_services.bench;
    RulesNow shown;
    shown.book = std::make_shared<const rules::RuleBook>(bench.book());
    for (const auto& [id, piece] : bench.bench().pieces) {
        shown.pieces.push_back({id, text(piece.piece.benchName), piece.piece.procedure, piece.rules});
    }
    m_rules->setNow(std::move(shown));
}

void SpacesLink::connectLog()
{
    connect(m_log, &DayLogSpace::factMoved, &m_services.bench, &service::BenchService::retell);
    connect(m_log, &DayLogSpace::factTakenBack, this, [this](EventId event, const QString& reason) {
        std::vector<EventId> gone = m_services.bench.wouldGoWith(event);
        gone.push_back(event);
        const auto& events = m_services.bench.events();
        const auto told = std::ranges::find(events, event, &bench::Event::id);
        const PieceId piece = told == events.end() ? PieceId() : told->piece;
        m_services.bench.undo(gone);
        if (!reason.isEmpty()) {
            m_services.bench.note(piece, tr("Taken back: %1").arg(reason).toStdString());
        }
    });
    connect(m_log, &DayLogSpace::dayWanted, this, [this](int step) {
        m_daysBack = std::max(0, m_daysBack - step);
        showLog();
    });
}

void SpacesLink::connectWhileAway()
{
    connect(&m_services.alerts, &service::AlertService::missedWhileAsleep, this, &SpacesLink::missed);
    connect(m_away, &WhileAwaySpace::missedAnswered, this,
            [this](const QString& key, PieceId piece, const bench::CardAct& act) {
                if (act.kind == bench::ActKind::HandsOnIt) {
                    m_services.alerts.answer(key.toStdString(), bench::Answered::HandsOn);
                    return;
                }
                bench::Tap tap;
                tap.piece = piece;
                tap.act = act;
                m_services.bench.tap(tap);
            });
    connect(m_away, &WhileAwaySpace::gapAnswered, this, [this](PlaceId place, InstantRange away, const QString& how) {
        m_services.bench.answerGap(place, away.from, away.to, how.toStdString());
    });
    connect(m_away, &WhileAwaySpace::nightTold, &m_services.bench, &service::BenchService::tellNight);
}

void SpacesLink::askAfter(InstantRange away)
{
    m_asked.away = away;
    m_asked.heated.clear();
    m_asked.nights.clear();
    const bench::Board& board = m_services.bench.board();
    m_asked.ended =
        service::endedWords(bench::endedMeanwhile(board.windows, away), service::namesOf(board), now(), m_manner);
    for (const record::Place& place : m_services.bench.bench().roster.places) {
        if (isHeated(place.kind)) {
            m_asked.heated.push_back({place.id, text(place.name)});
        } else if (away.to - away.from >= nightFrom && place.kind != record::PlaceKind::Outside) {
            m_asked.nights.push_back({place.id, text(place.name)});
        }
    }
}

void SpacesLink::nobodyLooked(InstantRange away)
{
    askAfter(away);
    m_away->setNow(m_asked, now());
    if (m_away->hasQuestions()) {
        m_window.showSpace(QStringLiteral("whileaway"));
    }
}

void SpacesLink::missed(const bench::MissedReport& report)
{
    if (m_asked.away != report.asleep) {
        askAfter(report.asleep);
    }
    m_asked.missed = service::missedLines(report, m_services.alerts.alerts());
    m_away->setNow(m_asked, now());
    m_asked.missed.clear(); // shown once
    m_window.showSpace(QStringLiteral("whileaway"));
}

QStringList SpacesLink::moveLines(const bench::Board& after) const
{
    const bench::Board& before = m_services.bench.board();
    const auto moves = bench::windowMoves(before, after);
    return service::moveWords(moves, service::namesOf(before), now(), m_manner);
}

QStringList SpacesLink::movedBy(EventId event, Instant happened, PieceId piece) const
{
    return moveLines(m_services.bench.ifRetold(event, happened, piece));
}

QStringList SpacesLink::movedByTakingBack(EventId event) const
{
    const service::BenchService& bench = m_services.bench;
    std::vector<EventId> gone = bench.wouldGoWith(event);
    gone.push_back(event);
    const std::set<EventId> out(gone.begin(), gone.end());
    std::vector<bench::Event> left;
    std::ranges::copy_if(bench.events(), std::back_inserter(left),
                         [&](const bench::Event& each) { return !out.contains(each.id); });
    return moveLines(bench::boardOf(bench::fold(bench.bench().roster, left, bench.book()), bench.book(), now()));
}

QStringList SpacesLink::goesWith(EventId event) const
{
    const service::BenchService& bench = m_services.bench;
    QStringList lines;
    for (const EventId id : bench.wouldGoWith(event)) {
        const auto told = std::ranges::find(bench.events(), id, &bench::Event::id);
        if (told != bench.events().end()) {
            lines << tr("%1 %2").arg(service::clockTime(told->happened, now(), m_manner),
                                     service::toldWords(*told, bench.bench(), bench.book(), m_manner));
        }
    }
    return lines;
}

QStringList SpacesLink::movedIf(const rules::Procedure& procedure, const std::vector<PieceId>& pieces) const
{
    const service::BenchService& bench = m_services.bench;
    return moveLines(
        bench::boardIfAdopted(bench.bench().roster, bench.events(), bench.book(), procedure, pieces, now()));
}

QStringList SpacesLink::movedIfOwn(const rules::OwnFigure& own) const
{
    const service::BenchService& bench = m_services.bench;
    rules::RuleBook book = bench.book();
    if (!rules::putOwn(book, own)) {
        return {};
    }
    const bench::Board after = bench::boardOf(bench.bench(), book, now());
    QStringList lines = moveLines(after);
    const auto stiff = [this](const bench::MixCard& mix) {
        return mix.stiffAt ? service::clockTime(*mix.stiffAt, now(), m_manner) : tr("never");
    };
    for (const bench::MixCard& mix : bench.board().mixes) {
        const auto then = std::ranges::find(after.mixes, mix.mix, &bench::MixCard::mix);
        if (then != after.mixes.end() && then->stiffAt != mix.stiffAt) {
            lines << tr("%1 mix: stiff %2 instead of %3").arg(text(mix.materialName), stiff(*then), stiff(mix));
        }
    }
    return lines;
}

} // namespace mend::app
