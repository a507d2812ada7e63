#include "app/desk/boardtext.h"

#include "core/bench/alertspeech.h"

#include <QJsonArray>

#include <algorithm>

namespace mend::desk {

using service::text;

namespace {

/// Names carry invisible marks that keep them together on the screen; a terminal prints them as boxes.
QString plain(QString words)
{
    words.remove(QChar(0x2068));
    words.remove(QChar(0x2069));
    return words;
}

service::Names namesOf(const Look& look)
{
    service::Names names = service::namesOf(look.board);
    for (const record::Place& place : look.bench.roster.places) {
        names.places[place.id] = text(place.name);
    }
    return names;
}

QStringList reasonsOf(const bench::Card& card, const service::Names& names, const Look& look)
{
    QStringList lines;
    for (const bench::Reason& reason : card.reasons) {
        lines << plain(service::reasonWords(reason, names, look.board.at, look.manner));
    }
    lines.removeAll(QString());
    return lines;
}

QString countOf(const bench::Card& card, const Look& look)
{
    const service::CountWords count = service::countWords(card, look.board.at, look.manner);
    return count.below.isEmpty() ? QString() : plain(count.digits + QStringLiteral(", ") + count.below);
}

/// What calls for this piece, and when: soonest first.
std::vector<bench::Alert> alertsOf(PieceId piece, const Look& look)
{
    std::vector<bench::Alert> own;
    std::ranges::copy_if(look.alerts, std::back_inserter(own),
                         [piece](const bench::Alert& alert) { return alert.piece == piece; });
    std::ranges::sort(own, {}, &bench::Alert::due);
    return own;
}

QString urgencyKey(bench::Urgency urgency)
{
    return urgency == bench::Urgency::A   ? QStringLiteral("A")
           : urgency == bench::Urgency::B ? QStringLiteral("B")
                                          : QStringLiteral("C");
}

/// "calls at 15:15:20 (A): Wipe. Heron bowl. 4 minutes."
QString alertLine(const bench::Alert& alert, const Look& look)
{
    const bool calls = alert.due <= look.board.at;
    const QString when = service::clockTime(alert.due, look.board.at, look.manner);
    const QString said = text(bench::spokenText(alert, std::max(alert.due, look.board.at)));
    return plain(
        QStringLiteral("%1 %2 (%3): %4")
            .arg(calls ? QStringLiteral("called") : QStringLiteral("calls"), when, urgencyKey(alert.urgency), said));
}

QString cardText(const bench::Card& card, const service::Names& names, const Look& look)
{
    QStringList head{text(card.benchName), service::numberWords(card.number), text(card.ownerName),
                     text(card.placeName), text(card.procedureName)};
    head.removeAll(QString());
    QStringList act{service::standingWords(card.standing)};
    if (!card.act.empty()) {
        act << text(card.act);
    }
    act << service::repetitionWords(card) << countOf(card, look);
    act << service::windowWords(card, look.board.at, look.manner);
    act.removeAll(QString());
    QString block = head.join(QStringLiteral(" · ")) + QLatin1Char('\n');
    block += QStringLiteral("    ") + act.join(QStringLiteral(" · ")) + QLatin1Char('\n');
    for (const QString& line : reasonsOf(card, names, look)) {
        block += QStringLiteral("    ") + line + QLatin1Char('\n');
    }
    QStringList acts;
    for (const bench::CardAct& button : card.acts) {
        acts << QStringLiteral("[%1]").arg(service::actWords(button));
    }
    if (!acts.isEmpty()) {
        block += QStringLiteral("    ") + acts.join(QLatin1Char(' ')) + QLatin1Char('\n');
    }
    for (const bench::Alert& alert : alertsOf(card.piece, look)) {
        block += QStringLiteral("    ") + alertLine(alert, look) + QLatin1Char('\n');
    }
    return plain(block);
}

QString headline(const Look& look)
{
    QStringList parts{
        look.studio,
        QStringLiteral("%1 %2").arg(
            look.manner.locale.toString(
                QDateTime::fromMSecsSinceEpoch(look.board.at.time_since_epoch().count(), look.manner.zone).date(),
                QLocale::LongFormat),
            service::timeOfDay(look.board.at, look.manner))};
    if (const record::Person* person = look.bench.roster.person(look.bench.atBench)) {
        parts << text(person->name);
    }
    if (look.board.freeUntil) {
        parts << QStringLiteral("free until %1")
                     .arg(service::clockTime(*look.board.freeUntil, look.board.at, look.manner));
    }
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString mixLine(const bench::MixCard& mix, const Look& look)
{
    QString line =
        QStringLiteral("Mix: %1, mixed %2").arg(text(mix.materialName), service::timeOfDay(mix.mixedAt, look.manner));
    if (mix.stiffAt) {
        line += *mix.stiffAt > look.board.at
                    ? QStringLiteral(", stiff at %1, %2 left")
                          .arg(service::timeOfDay(*mix.stiffAt, look.manner),
                               service::countDigits(*mix.stiffAt - look.board.at))
                    : QStringLiteral(", stiff since %1").arg(service::timeOfDay(*mix.stiffAt, look.manner));
    }
    return line;
}

void put(QJsonObject& object, const QString& key, const std::optional<Instant>& at)
{
    if (at) {
        object[key] = QString::fromStdString(toRfc3339(*at));
    }
}

QJsonObject windowJson(const bench::Window& window)
{
    QJsonObject object{{QStringLiteral("act"), text(window.act)}};
    put(object, QStringLiteral("opens"), window.opens);
    put(object, QStringLiteral("opensAtLatest"), window.opensAtLatest);
    put(object, QStringLiteral("startBy"), window.latestStart);
    put(object, QStringLiteral("closes"), window.closes);
    put(object, QStringLiteral("lost"), window.lost);
    object[QStringLiteral("stalled")] = window.stalled;
    object[QStringLiteral("handsOnSeconds")] = static_cast<qint64>(window.handsOn.count() / 1000);
    return object;
}

QJsonObject alertJson(const bench::Alert& alert, const Look& look)
{
    QJsonObject object{{QStringLiteral("urgency"), urgencyKey(alert.urgency)},
                       {QStringLiteral("says"), text(bench::spokenText(alert, std::max(alert.due, look.board.at)))}};
    put(object, QStringLiteral("due"), alert.due);
    put(object, QStringLiteral("lastCall"), alert.lastCall);
    return object;
}

QJsonObject cardJson(const bench::Card& card, const service::Names& names, const Look& look)
{
    QJsonObject object{{QStringLiteral("piece"), text(card.benchName)},
                       {QStringLiteral("number"), text(card.number)},
                       {QStringLiteral("owner"), text(card.ownerName)},
                       {QStringLiteral("place"), text(card.placeName)},
                       {QStringLiteral("procedure"), text(card.procedureName)},
                       {QStringLiteral("standing"), service::standingWords(card.standing)},
                       {QStringLiteral("act"), text(card.act)},
                       {QStringLiteral("count"), countOf(card, look)},
                       {QStringLiteral("reasons"), QJsonArray::fromStringList(reasonsOf(card, names, look))}};
    if (card.window) {
        object[QStringLiteral("window")] = windowJson(*card.window);
    }
    QJsonArray alerts;
    for (const bench::Alert& alert : alertsOf(card.piece, look)) {
        alerts.append(alertJson(alert, look));
    }
    object[QStringLiteral("alerts")] = alerts;
    return object;
}

} // namespace

QString boardText(const Look& look)
{
    const service::Names names = namesOf(look);
    QString words = headline(look) + QStringLiteral("\n\n");
    for (const bench::Card& card : look.board.cards) {
        words += cardText(card, names, look) + QLatin1Char('\n');
    }
    if (look.board.cards.empty()) {
        words += QStringLiteral("Nothing is on the bench.\n");
    }
    for (const bench::MixCard& mix : look.board.mixes) {
        words += plain(mixLine(mix, look)) + QLatin1Char('\n');
    }
    for (const bench::HazardFinding& hazard : look.board.standing) {
        words += plain(service::hazardWords(hazard, names, look.board.at, look.manner)) + QLatin1Char('\n');
    }
    return words;
}

QJsonObject boardJson(const Look& look)
{
    const service::Names names = namesOf(look);
    QJsonArray cards;
    for (const bench::Card& card : look.board.cards) {
        cards.append(cardJson(card, names, look));
    }
    QJsonArray mixes;
    for (const bench::MixCard& mix : look.board.mixes) {
        QJsonObject object{{QStringLiteral("material"), text(mix.materialName)}};
        put(object, QStringLiteral("mixedAt"), mix.mixedAt);
        put(object, QStringLiteral("stiffAt"), mix.stiffAt);
        mixes.append(object);
    }
    QJsonArray notices;
    for (const bench::HazardFinding& hazard : look.board.standing) {
        notices.append(plain(service::hazardWords(hazard, names, look.board.at, look.manner)));
    }
    QJsonObject object{{QStringLiteral("good"), true},
                       {QStringLiteral("studio"), look.studio},
                       {QStringLiteral("cards"), cards},
                       {QStringLiteral("mixes"), mixes},
                       {QStringLiteral("notices"), notices}};
    put(object, QStringLiteral("at"), look.board.at);
    put(object, QStringLiteral("freeUntil"), look.board.freeUntil);
    return object;
}

} // namespace mend::desk
