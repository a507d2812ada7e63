#include "tests/app/samples.h"

namespace mend::app::samples {

namespace {

using namespace std::chrono;
using bench::ActKind;
using bench::Card;
using bench::CountKind;
using bench::ReasonKind;
using bench::Standing;

Card cardOf(std::int64_t id, const char* number, const char* name, const char* owner, const char* place,
            const char* act)
{
    Card card;
    card.piece = PieceId(id);
    card.number = number;
    card.benchName = name;
    card.ownerName = owner;
    card.placeName = place;
    card.act = act;
    card.stage = {"stage" + std::to_string(id), 1};
    return card;
}

void windowOf(Card& card, Span origin, std::optional<Span> opens, Span handsOn, Span closes, rules::Miss miss)
{
    bench::Window window;
    window.piece = card.piece;
    window.stage = card.stage;
    window.act = card.act;
    window.handsOn = handsOn;
    if (opens) {
        window.opens = now() + *opens;
    }
    window.closes = now() + closes;
    window.latestStart = now() + closes - handsOn;
    window.miss = miss;
    bench::Reckoning opening;
    opening.event = EventId(40 + card.piece.value());
    opening.origin = now() + origin;
    opening.figure = minutes{2};
    opening.reference = Temperature::fromCelsius(24.0);
    opening.source = {"common practice", rules::Mark::Practice};
    opening.air.steps.push_back(
        {now() - hours{2}, Temperature::fromCelsius(26.4), percentHumidity(41), cure::Trust::Read});
    opening.result = window.opens;
    bench::Reckoning closing = opening;
    closing.closing = true;
    closing.figure = closes - origin;
    closing.result = window.closes;
    window.why = {opening, closing};
    card.window = window;
    card.seam.opens = window.opens;
    card.seam.closes = window.closes;
    card.seam.latestStart = window.latestStart;
}

bench::Reason reasonOf(ReasonKind kind, const char* text = "")
{
    bench::Reason reason;
    reason.kind = kind;
    reason.text = text;
    return reason;
}

Card heron()
{
    Card card = cardOf(1, "2604175", "Heron bowl", "Ines Varga", "Bench", "Wipe back the filler");
    card.standing = Standing::DoNow;
    card.counts = CountKind::StartBy;
    windowOf(card, -minutes{13}, -minutes{11}, minutes{5}, minutes{7} + seconds{12}, rules::Miss::Afternoon);
    card.acts = {{ActKind::HandsOnIt, card.stage, ""}};
    bench::Reason sooner = reasonOf(ReasonKind::Sooner);
    sooner.span = minutes{3};
    sooner.temperature = Temperature::fromCelsius(26.4);
    bench::Reason miss = reasonOf(ReasonKind::MissCosts, "cut back, fill again");
    miss.miss = rules::Miss::Afternoon;
    card.reasons = {reasonOf(ReasonKind::Caution, "then a second, clean pad"), sooner, miss};
    card.mended = 0.7;
    return card;
}

Card celadon()
{
    Card card = cardOf(2, "2604028", "Celadon dish", "Piet Aldous", "Gold tray", "Dust the gold");
    card.standing = Standing::Open;
    card.counts = CountKind::StartBy;
    windowOf(card, -minutes{48}, -minutes{33}, minutes{10}, minutes{72}, rules::Miss::Day);
    card.acts = {{ActKind::Confirm, card.stage, "Line takes powder"}, {ActKind::NotYet, card.stage, ""}};
    bench::Reason miss = reasonOf(ReasonKind::MissCosts);
    miss.miss = rules::Miss::Day;
    card.reasons = {reasonOf(ReasonKind::TestByTouch, "brush the test line lightly"), miss};
    card.mended = 0.9;
    return card;
}

Card teapot()
{
    Card card = cardOf(3, "2604204", "Brown teapot", "R. Castellan", "Bench", "Trim the squeeze-out");
    card.standing = Standing::Waiting;
    card.stage.repetition = 2;
    card.repetitions = 4;
    card.counts = CountKind::Opens;
    windowOf(card, -minutes{16}, minutes{14}, minutes{5}, minutes{54}, rules::Miss::Minutes);
    card.countTo = now() + minutes{14};
    card.acts = {{ActKind::Finish, card.stage, "Trimmed"}};
    bench::Reason chain = reasonOf(ReasonKind::ChainThen);
    chain.piece = PieceId(2);
    chain.stage = {"stage2", 1};
    card.reasons = {chain};
    card.mended = 0.25;
    return card;
}

Card plate()
{
    Card card = cardOf(4, "2603981", "Fish plate", "Odile Marsh", "Bench", "Warm the old glue");
    card.standing = Standing::Stopped;
    card.counts = CountKind::Nothing;
    card.countTo = now() + minutes{37};
    card.seam.ends = now() + minutes{37};
    card.acts = {{ActKind::AskHazard, card.stage, ""}};
    bench::Reason hazard = reasonOf(ReasonKind::Hazard, "No flame: the heron bowl will be wiped");
    hazard.until = now() + minutes{37};
    card.reasons = {hazard};
    card.mended = 0.0;
    return card;
}

Card jug()
{
    Card card = cardOf(5, "2603770", "Banded jug", "Tomasz Lund", "Cabinet", "Cure the fill");
    card.standing = Standing::Waiting;
    card.counts = CountKind::Ends;
    card.countTo = now() + minutes{70};
    card.countToAtLatest = now() + minutes{95};
    card.seam.ends = card.countTo;
    card.seam.opensAtLatest = card.countToAtLatest;
    card.acts = {{ActKind::Finish, card.stage, "Out of the cabinet"}};
    card.reasons = {reasonOf(ReasonKind::MayStay), reasonOf(ReasonKind::TestByTouch, "then: nail leaves no mark")};
    card.mended = 0.5;
    return card;
}

Card cup()
{
    Card card = cardOf(6, "2604301", "Egg cup", "Jun Hollis", "Bench", "Press filler into the chips");
    card.standing = Standing::Past;
    card.counts = CountKind::Late;
    card.countTo = now() - minutes{42};
    card.seam.closes = now() - minutes{42};
    card.seam.lost = now() + minutes{18};
    card.acts = {
        {ActKind::WasInTime, card.stage, ""}, {ActKind::DoingLate, card.stage, ""}, {ActKind::NotDone, card.stage, ""}};
    bench::Reason miss = reasonOf(ReasonKind::MissCosts);
    miss.miss = rules::Miss::FreshMix;
    card.reasons = {miss};
    card.mended = 0.4;
    return card;
}

Card vase()
{
    Card card = cardOf(7, "2603552", "Ash glaze vase", "Noor El-Amin", "Humid box", "Second urushi coat");
    card.standing = Standing::Stalled;
    card.counts = CountKind::Nothing;
    card.seam.stalled = true;
    bench::Reason stalled = reasonOf(ReasonKind::Stalled);
    stalled.temperature = Temperature::fromCelsius(16.5);
    bench::Reason stale = reasonOf(ReasonKind::StaleReading);
    stale.place = PlaceId(3);
    stale.span = hours{26};
    card.reasons = {stalled, stale};
    card.acts = {{ActKind::Finish, card.stage, "Coat is dry"}};
    card.mended = 0.6;
    return card;
}

Card saucer()
{
    Card card = cardOf(8, "2604330", "Willow saucer", "Ines Varga", "Shelf B", "");
    card.standing = Standing::Ready;
    card.acts = {{ActKind::HandOver, card.stage, ""}};
    card.mended = 1.0;
    return card;
}

} // namespace

Instant now() { return sys_days{2026y / November / 28} + hours{12} + minutes{42}; }

service::Manner manner()
{
    service::Manner manner;
    manner.zone = QTimeZone(QByteArrayLiteral("Europe/Berlin"));
    return manner;
}

bench::Board richBoard()
{
    bench::Board board;
    board.at = now();
    board.cards = {heron(), celadon(), cup(), teapot(), plate(), jug(), vase(), saucer()};
    board.mixes = {{MixId(1), "Filler", "F-0311", now() - minutes{15}, now() + minutes{7}, {PieceId(1)}}};
    board.freeUntil = now() + minutes{2} + seconds{12};
    for (const Card& card : board.cards) {
        if (card.window) {
            board.windows.push_back(*card.window);
        }
    }
    return board;
}

Extras richExtras()
{
    Extras extras;
    extras.places = {{PlaceId(1), QStringLiteral("Bench"), Temperature::fromCelsius(26.4), percentHumidity(41),
                      now() - minutes{4}, false, true, false, 0, 3},
                     {PlaceId(2), QStringLiteral("Cabinet"), Temperature::fromCelsius(44.0), std::nullopt,
                      now() - hours{1}, false, false, true, 4, 2},
                     {PlaceId(3), QStringLiteral("Humid box"), Temperature::fromCelsius(16.5), percentHumidity(62),
                      now() - hours{26}, true, true, true, 0, 1}};
    extras.mixKinds = {{QStringLiteral("adhesive"), QStringLiteral("Adhesive"), QStringLiteral("A-0192"),
                        QStringLiteral("place in 75 s"), QStringLiteral("in place 75 s after mixing begins")},
                       {QStringLiteral("filler"), QStringLiteral("Filler"), QStringLiteral("F-0311"),
                        QStringLiteral("7 cm of chip"), QStringLiteral("at 26.4 °C one run is 7 cm of chip at most")},
                       {QStringLiteral("lacquer"), QStringLiteral("Lacquer"), {}, {}, {}},
                       {QStringLiteral("mugi"), QStringLiteral("Mugi"), {}, {}, {}}};
    extras.people = {{PersonId(1), QStringLiteral("Ruta")}, {PersonId(2), QStringLiteral("Jonas")}};
    extras.atBench = PersonId(1);
    extras.sound.nextAlert = now() + minutes{1};
    extras.flashing = {{PieceId(1), bench::Urgency::A}};
    extras.pending = {PieceId(5)};
    extras.undo = {{PieceId(3), {}, EventId(77), QStringLiteral("Set 1 is on"), now() + seconds{8}}};
    return extras;
}

bench::Board quietBoard()
{
    bench::Board board = richBoard();
    board.cards = {jug(), saucer()};
    board.mixes.clear();
    board.windows.clear();
    board.freeUntil.reset();
    return board;
}

bench::Board emptyBoard()
{
    bench::Board board;
    board.at = now();
    return board;
}

bench::Board handsBoard()
{
    bench::Board board = quietBoard();
    Card counted = cardOf(20, "2605001", "Lidded jar", "Marte Osei", "Bench", "Place the second join");
    counted.standing = Standing::UnderHands;
    counted.counts = CountKind::Counted;
    counted.countTo = now() + seconds{95};
    counted.acts = {{ActKind::Finish, counted.stage, "Joined"}};
    Card calling = heron();
    calling.acts = {{ActKind::HandsOnIt, calling.stage, ""},
                    {ActKind::Begin, calling.stage, "Pad is on"},
                    {ActKind::Finish, calling.stage, "Wiped back"}};
    Card begun = celadon();
    begun.standing = Standing::UnderHands;
    begun.countTo = begun.window->closes;
    begun.acts = {{ActKind::Finish, begun.stage, "Powder is on"}};
    Card free = cardOf(21, "2605002", "Tall water bottle", "Ana de la Fuente y Robles", "Shelf A, upper board",
                       "Clean the break edges");
    free.standing = Standing::Free;
    free.acts = {{ActKind::Begin, free.stage, "Started cleaning"}, {ActKind::Finish, free.stage, "Edges are clean"}};
    Card held = cardOf(22, "2605003", "Cracked platter", "Jun Hollis", "Shelf B",
                       "Join the rim fragments dry, without adhesive");
    held.standing = Standing::OnHold;
    held.acts = {{ActKind::EndHold, held.stage, ""}};
    held.reasons = {reasonOf(ReasonKind::Hold, "waiting for the owner")};
    Card resting = cardOf(23, "2605004", "Moon jar", "Piet Aldous", "Shelf B", "");
    resting.standing = Standing::Waiting;
    resting.counts = CountKind::Ends;
    resting.countTo = now() + hours{60};
    resting.countToAtLatest = resting.countTo;
    resting.seam.ends = resting.countTo;
    board.cards = {calling, counted, begun, free, held, resting};
    return board;
}

bench::Board crowdedBoard(int count)
{
    bench::Board board = richBoard();
    board.cards.clear();
    for (int i = 0; i < count; ++i) {
        Card card = celadon();
        card.piece = PieceId(100 + i);
        card.benchName = "Dish " + std::to_string(i + 1);
        card.acts = {{ActKind::Finish, card.stage, "Powder is on"}};
        windowOf(card, -minutes{48}, -minutes{33}, minutes{10}, minutes{40} + seconds{i * 7}, rules::Miss::Day);
        board.cards.push_back(card);
    }
    return board;
}

bench::Board alarmedBoard(int count)
{
    bench::Board board = richBoard();
    board.cards.clear();
    for (int i = 0; i < count; ++i) {
        Card card = heron();
        card.piece = PieceId(200 + i);
        card.benchName = "Bowl " + std::to_string(i + 1);
        board.cards.push_back(card);
    }
    return board;
}

} // namespace mend::app::samples
