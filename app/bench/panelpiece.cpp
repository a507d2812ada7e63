// Pages of the panel that are about one piece.
#include "app/bench/panel.h"

#include <QTimer>
#include <algorithm>

namespace mend::app {

namespace {

using bench::ActKind;

/// Acts that say something happened, and so may have happened a while ago.
bool tellsAFact(const bench::CardAct& act)
{
    switch (act.kind) {
    case ActKind::Begin:
    case ActKind::Finish:
    case ActKind::Confirm:
    case ActKind::WasInTime:
    case ActKind::NotYet:
    case ActKind::HandOver:
        return true;
    default:
        return false;
    }
}

QString instantKey(Instant at) { return QString::number(at.time_since_epoch().count()); }

} // namespace

PanelPage Panel::morePage(PieceId piece)
{
    const bench::Card* card = m_picture.card(piece);
    PanelPage page;
    page.key = QStringLiteral("more");
    if (!card) {
        page.title = tr("This piece is not on the bench any more");
        return page;
    }
    page.title = titleFor(piece, service::cardActWords(*card));
    const auto choice = [&page](const char* key, const QString& label, std::function<void()> act) {
        page.choices.push_back({QStringLiteral("more/") + QLatin1String(key), label, {}, std::move(act), false});
    };
    if (std::ranges::any_of(card->acts, tellsAFact)) {
        choice("time", tr("It happened a while ago"),
               [this, piece] { open([this, piece] { return timePage(piece); }); });
    }
    choice("piece", tr("Open this piece"), closing([this, piece] { Q_EMIT m_told.pieceWanted(piece); }));
    choice("why", tr("Why these times"), [this, piece] { openWhy(piece); });
    choice("place", tr("Put it in another place"), [this, piece] { open([this, piece] { return placePage(piece); }); });
    choice("note", tr("Write a note"), [this, piece] { open([this, piece] { return notePage(piece); }); });
    const bench::StageInstance stage = card->stage;
    if (!stage.stage.empty()) {
        choice("skip", tr("Leave this stage out"), [this, piece, stage] {
            open([this, piece, stage] {
                return reasonPage(
                    piece, tr("leave this stage out, because"),
                    {tr("The owner does not want it"), tr("Not needed on this piece"), tr("Done another way")},
                    [this, piece, stage](const QString& why) { Q_EMIT m_told.skipped(piece, stage, why); });
            });
        });
    }
    choice("sendback", tr("Send it back a stage"),
           [this, piece] { open([this, piece] { return sendBackPage(piece); }); });
    const bool held = card->standing == bench::Standing::OnHold;
    if (!held) {
        choice("hold", tr("Stop work on it"), [this, piece] {
            open([this, piece] {
                return reasonPage(
                    piece, tr("stop work, because"),
                    {tr("Waiting for the owner"), tr("Waiting for material"), tr("It needs another look")},
                    [this, piece](const QString& why) { Q_EMIT m_told.holdBegun(piece, why); });
            });
        });
    }
    choice("facts", tr("Take back or move a fact"),
           [this, piece] { open([this, piece] { return factsPage(piece); }); });
    if (m_details) {
        for (const PutOff& offer : m_details->putOffsOf(piece)) {
            page.choices.push_back({QStringLiteral("putoff/") + offer.key, offer.words, tr("call me then"),
                                    closing([this, piece, key = offer.key] { Q_EMIT m_told.putOff(piece, key); }),
                                    false});
        }
    }
    return page;
}

PanelPage Panel::timePage(PieceId piece)
{
    const bench::Card* card = m_picture.card(piece);
    std::vector<bench::CardAct> acts;
    if (card) {
        std::ranges::copy_if(card->acts, std::back_inserter(acts), tellsAFact);
    }
    if (acts.size() == 1) {
        return agoPage(piece, acts.front());
    }
    PanelPage page;
    page.title = titleFor(piece, tr("what happened a while ago?"));
    for (const auto& act : acts) {
        page.choices.push_back({QStringLiteral("time/%1").arg(static_cast<int>(act.kind)),
                                service::actWords(act),
                                {},
                                [this, piece, act] { open([this, piece, act] { return agoPage(piece, act); }); },
                                true});
    }
    return page;
}

PanelPage Panel::agoPage(PieceId piece, const bench::CardAct& act)
{
    PanelPage page;
    page.title = titleFor(piece, service::actWords(act));
    page.text << tr("When was that? It is %1 now.").arg(service::timeOfDay(m_picture.now, m_picture.manner));
    for (const int minutes : {1, 2, 3, 4, 5, 7, 10, 15, 20, 30, 45, 60, 90, 120, 180}) {
        const Instant then = m_picture.now - std::chrono::minutes(minutes);
        page.choices.push_back({QStringLiteral("ago/%1").arg(minutes), service::agoWords(std::chrono::minutes(minutes)),
                                service::clockTime(then, m_picture.now, m_picture.manner),
                                closing([this, piece, act, then] { Q_EMIT m_told.acted(piece, act, then); }), false});
    }
    return page;
}

PanelPage Panel::placePage(PieceId piece)
{
    PanelPage page;
    page.title = titleFor(piece, tr("where is it now?"));
    for (const auto& place : m_picture.extras.places) {
        const QString slots = place.slots > 0 ? tr("%1 of %2 slots").arg(place.taken).arg(place.slots) : QString();
        page.choices.push_back({QStringLiteral("putin/%1").arg(place.place.value()), place.name, slots,
                                closing([this, piece, id = place.place] { Q_EMIT m_told.placed(piece, id); }), true});
    }
    return page;
}

PanelPage Panel::notePage(PieceId piece)
{
    PanelPage page;
    page.title = titleFor(piece, tr("a note"));
    page.wordsAsked = tr("Your words, kept with the piece");
    page.choices.push_back({QStringLiteral("note/keep"),
                            tr("Keep the note"),
                            {},
                            [this, piece] {
                                const QString words = m_words->text().trimmed();
                                if (!words.isEmpty()) {
                                    close();
                                    Q_EMIT m_told.noted(piece, words);
                                }
                            },
                            true});
    QTimer::singleShot(0, m_words, [this] { m_words->setFocus(Qt::OtherFocusReason); });
    return page;
}

PanelPage Panel::reasonPage(PieceId piece, const QString& title, const QStringList& reasons,
                            const std::function<void(const QString&)>& tell)
{
    PanelPage page;
    page.title = titleFor(piece, title);
    page.wordsAsked = tr("Your own words, if you like");
    int number = 0;
    for (const QString& reason : reasons) {
        page.choices.push_back({QStringLiteral("reason/%1").arg(number++),
                                reason,
                                {},
                                [this, reason, tell] {
                                    const QString own = m_words->text().trimmed();
                                    const QString all = own.isEmpty() ? reason : reason + QStringLiteral(": ") + own;
                                    const auto keep = tell;
                                    close();
                                    keep(all);
                                },
                                true});
    }
    page.choices.push_back({QStringLiteral("reason/own"),
                            tr("For the reason written above"),
                            {},
                            [this, tell] {
                                const QString own = m_words->text().trimmed();
                                if (!own.isEmpty()) {
                                    const auto keep = tell;
                                    close();
                                    keep(own);
                                }
                            },
                            false});
    return page;
}

PanelPage Panel::sendBackPage(PieceId piece)
{
    PanelPage page;
    page.title = titleFor(piece, tr("from which stage must it be done again?"));
    const auto done = m_details ? m_details->stagesDoneOf(piece) : std::vector<StageDone>();
    if (done.empty()) {
        page.text << tr("No stage of it is done yet.");
    }
    for (const StageDone& each : done) {
        const QString again = each.stage.repetition > 1 ? tr("no. %1").arg(each.stage.repetition) : QString();
        page.choices.push_back(
            {QStringLiteral("sendback/%1/%2").arg(service::text(each.stage.stage)).arg(each.stage.repetition), each.act,
             again,
             [this, piece, each] {
                 open([this, piece, each] {
                     return reasonPage(
                         piece, tr("%1 again, because").arg(each.act),
                         {tr("It did not hold"), tr("It is out of line"), tr("The surface is not right")},
                         [this, piece, each](const QString& why) { Q_EMIT m_told.sentBack(piece, each.stage, why); });
                 });
             },
             false});
    }
    return page;
}

PanelPage Panel::factsPage(PieceId piece)
{
    PanelPage page;
    page.title = titleFor(piece, tr("told of the last day"));
    const auto facts = m_details ? m_details->factsOf(piece) : std::vector<Fact>();
    if (facts.empty()) {
        page.text << tr("Nothing was told of it in the last day.");
    }
    for (const Fact& fact : facts) {
        page.choices.push_back({QStringLiteral("fact/%1").arg(fact.event.value()), fact.words,
                                service::clockTime(fact.happened, m_picture.now, m_picture.manner),
                                [this, piece, fact] { open([this, piece, fact] { return factPage(piece, fact); }); },
                                false});
    }
    return page;
}

PanelPage Panel::factPage(PieceId piece, const Fact& fact)
{
    PanelPage page;
    page.title = titleFor(piece, fact.words);
    page.text << tr("Told for %1.").arg(service::clockTime(fact.happened, m_picture.now, m_picture.manner));
    page.choices.push_back({QStringLiteral("fact/undo"),
                            tr("It did not happen"),
                            {},
                            closing([this, event = fact.event] { Q_EMIT m_told.undone(event); }),
                            true});
    page.choices.push_back({QStringLiteral("fact/time"),
                            tr("It was at another time"),
                            {},
                            [this, piece, fact] { open([this, piece, fact] { return moveFactPage(piece, fact); }); },
                            true});
    page.choices.push_back({QStringLiteral("fact/piece"),
                            tr("It was another piece"),
                            {},
                            [this, piece, fact] { open([this, piece, fact] { return moveToPiecePage(piece, fact); }); },
                            true});
    return page;
}

PanelPage Panel::moveFactPage(PieceId piece, const Fact& fact)
{
    PanelPage page;
    page.title = titleFor(piece, tr("%1, at").arg(fact.words));
    for (const int minutes : {-60, -30, -20, -15, -10, -5, -4, -3, -2, -1, 1, 2, 5, 10, 20}) {
        const Instant then = fact.happened + std::chrono::minutes(minutes);
        if (then > m_picture.now) {
            continue;
        }
        const QString apart = service::spanWords(std::chrono::minutes(std::abs(minutes)));
        page.choices.push_back(
            {QStringLiteral("move/%1").arg(minutes), service::clockTime(then, m_picture.now, m_picture.manner),
             minutes < 0 ? tr("%1 sooner").arg(apart) : tr("%1 later").arg(apart),
             [this, piece, fact, then] { open([this, piece, fact, then] { return keepMovePage(fact, then, piece); }); },
             false});
    }
    return page;
}

PanelPage Panel::moveToPiecePage(PieceId piece, const Fact& fact)
{
    PanelPage page;
    page.title = tr("%1: which piece was it?").arg(fact.words);
    for (const auto& card : m_picture.board.cards) {
        if (card.piece == piece) {
            continue;
        }
        page.choices.push_back({QStringLiteral("topiece/%1").arg(card.piece.value()), pieceName(card.piece),
                                service::numberWords(card.number),
                                [this, fact, id = card.piece] {
                                    open([this, fact, id] { return keepMovePage(fact, fact.happened, id); });
                                },
                                false});
    }
    return page;
}

PanelPage Panel::keepMovePage(const Fact& fact, Instant happened, PieceId piece)
{
    PanelPage page;
    page.title =
        titleFor(piece, tr("%1 at %2").arg(fact.words, service::clockTime(happened, m_picture.now, m_picture.manner)));
    const QStringList moved = m_details ? m_details->movedBy(fact.event, happened, piece) : QStringList();
    page.text << (moved.isEmpty() ? QStringList{tr("No window moves.")} : moved);
    page.choices.push_back(
        {QStringLiteral("keepmove/") + instantKey(happened),
         tr("Tell it so"),
         {},
         closing([this, event = fact.event, happened, piece] { Q_EMIT m_told.factMoved(event, happened, piece); }),
         true});
    page.choices.push_back({QStringLiteral("keepmove/no"), tr("Leave it as it was"), {}, [this] { close(); }, false});
    return page;
}

PanelPage Panel::whyPage(PieceId piece)
{
    PanelPage page;
    page.title = titleFor(piece, tr("why these times"));
    const bench::Card* card = m_picture.card(piece);
    if (!card || !card->window) {
        page.text << tr("Nothing on this card is counted.");
        return page;
    }
    for (const auto* list : {&card->window->why, &card->window->whyElse}) {
        for (const auto& reckoning : *list) {
            const QStringList lines = service::whyWords(reckoning, m_picture.now, m_picture.manner);
            page.text << lines.mid(0, 1) << service::joined(lines.mid(1));
        }
    }
    if (card->window->latestStart && card->window->closes) {
        page.text << tr("Start by %1: the close, less %2 of hands")
                         .arg(service::clockTime(*card->window->latestStart, m_picture.now, m_picture.manner),
                              service::spanWords(*card->window->closes - *card->window->latestStart));
    }
    for (const auto& reason : card->reasons) {
        page.text << service::reasonWords(reason, m_picture.names, m_picture.now, m_picture.manner);
    }
    page.text.removeAll(QString());
    return page;
}

PanelPage Panel::hazardPage(PieceId piece, const bench::StageInstance& stage)
{
    PanelPage page;
    const bench::Card* card = m_picture.card(piece);
    if (!card || card->hazards.empty()) {
        page.title = titleFor(piece, tr("nothing stands against it any more"));
        return page;
    }
    page.title = titleFor(piece, tr("before you start"));
    for (const auto& finding : card->hazards) {
        page.text << service::hazardWords(finding, m_picture.names, m_picture.now, m_picture.manner);
        if (!finding.hazard->why.empty()) {
            page.text << service::text(finding.hazard->why);
        }
        for (const auto& answer : finding.hazard->answers) {
            const QString hazard = service::text(finding.hazard->key);
            const QString key = service::text(answer.key);
            page.choices.push_back({QStringLiteral("hazard/%1/%2").arg(hazard, key),
                                    service::text(answer.text),
                                    {},
                                    [this, piece, stage, hazard, key] {
                                        const QString words = m_words->text().trimmed();
                                        close();
                                        Q_EMIT m_told.hazardAnswered(piece, stage, hazard, key, words);
                                    },
                                    true});
        }
    }
    page.text << tr("The product's safety data sheet and local rules come before any line on this screen.");
    page.wordsAsked = tr("Your own words, if you like");
    return page;
}

} // namespace mend::app
