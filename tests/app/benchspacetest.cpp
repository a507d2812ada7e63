#include "app/bench/scenes.h"
#include "app/shell/mainwindow.h"
#include "tests/app/details.h"
#include "tests/app/samples.h"

#include <QAccessible>
#include <QApplication>
#include <QTest>
#include <algorithm>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

/// A window with the rich board, on a clock of its own, and everything that was told.
class BenchAtWork : public testing::Test {
protected:
    BenchAtWork() : gate([this] { return clock; }), window(gate), bench(window.bench())
    {
        window.resize(1280, 800);
        window.setLookSettings({parts::Theme::Light, 1.0, false, false, 96.0});
        bench.setManner(samples::manner());
        bench.setDetails(&details);
        auto& told = bench.told();
        QObject::connect(&told, &Told::acted, &told,
                         [this](PieceId piece, const bench::CardAct& act, std::optional<Instant> when) {
                             acts.push_back({piece, act, when});
                         });
        QObject::connect(&told, &Told::undone, &told, [this](EventId event) { undone.push_back(event); });
        QObject::connect(&told, &Told::mixStarted, &told, [this](const QString& material) { mixes << material; });
        QObject::connect(&told, &Told::readingEntered, &told,
                         [this](PlaceId place, Temperature t, std::optional<Humidity> h) {
                             readings.push_back({place, t, h});
                         });
        window.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&window));
        QApplication::setActiveWindow(&window);
        window.setBoard(samples::richBoard(), samples::richExtras());
        clock += 10'000;
    }

    static QPoint middle(const parts::ActView& view, const QString& key)
    {
        const parts::Hit* hit = view.hit(key);
        EXPECT_NE(hit, nullptr) << key.toStdString();
        return hit ? hit->rect.center() : QPoint();
    }
    static QString keyOf(const bench::Card& card, std::size_t act = 0) { return actKey(card.piece, card.acts.at(act)); }
    const bench::Card& card(int piece) { return *bench.picture().card(PieceId(piece)); }
    void tap(parts::ActView& view, const QString& key)
    {
        QTest::mouseClick(&view, Qt::LeftButton, {}, middle(view, key));
    }

    static QPointingDevice* glass()
    {
        static QPointingDevice* const device = QTest::createTouchDevice();
        return device;
    }

    struct Act {
        PieceId piece;
        bench::CardAct act;
        std::optional<Instant> when;
    };
    struct ReadingTold {
        PlaceId place;
        Temperature temperature;
        std::optional<Humidity> humidity;
    };
    qint64 clock = 0;
    parts::TapGate gate;
    MainWindow window;
    BenchSpace& bench;
    samples::SampleDetails details;
    std::vector<Act> acts;
    std::vector<EventId> undone;
    QStringList mixes;
    std::vector<ReadingTold> readings;
};

TEST_F(BenchAtWork, ATapTellsOneFactOfThatPiece)
{
    tap(bench.block(), keyOf(card(1)));
    tap(bench.cards(), keyOf(card(2)));
    ASSERT_EQ(acts.size(), 2U);
    EXPECT_EQ(acts[0].piece, PieceId(1));
    EXPECT_EQ(acts[0].act.kind, bench::ActKind::HandsOnIt);
    EXPECT_FALSE(acts[0].when);
    EXPECT_EQ(acts[1].piece, PieceId(2));
    EXPECT_EQ(acts[1].act.words, "Line takes powder");
}

TEST_F(BenchAtWork, SlidingOffTakesTheTapBack)
{
    const QPoint at = middle(bench.block(), keyOf(card(1)));
    QTest::mousePress(&bench.block(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(acts.empty()) << "an act happens on release";
    QTest::mouseMove(&bench.block(), QPoint(5, 5));
    QTest::mouseRelease(&bench.block(), Qt::LeftButton, {}, QPoint(5, 5));
    EXPECT_TRUE(acts.empty());
}

TEST_F(BenchAtWork, TwoTapsWithinAQuarterOfASecondAreOne)
{
    const QString key = keyOf(card(1));
    tap(bench.block(), key);
    clock += 200;
    tap(bench.block(), key);
    EXPECT_EQ(acts.size(), 1U);
    clock += 300;
    tap(bench.block(), key);
    EXPECT_EQ(acts.size(), 2U);
}

TEST_F(BenchAtWork, AFingerOnGlassDoesTheSame)
{
    // By the window, because the made-up screen is smaller than it.
    const QPoint at = bench.block().mapTo(&window, middle(bench.block(), keyOf(card(1))));
    QTest::touchEvent(window.windowHandle(), glass()).press(0, at);
    EXPECT_TRUE(acts.empty()) << "an act happens on release";
    QTest::touchEvent(window.windowHandle(), glass()).release(0, at);
    EXPECT_EQ(acts.size(), 1U);
}

TEST_F(BenchAtWork, AFingerPushesTheCardsUp)
{
    auto& cards = bench.cards();
    ASSERT_GT(cards.contentHeight(), cards.height());
    const QPoint at = middle(cards, keyOf(card(2)));
    QTest::touchEvent(&cards, glass()).press(0, at);
    for (int y = 10; y <= 120; y += 10) {
        QTest::touchEvent(&cards, glass()).move(0, at - QPoint(0, y));
    }
    QTest::touchEvent(&cards, glass()).release(0, at - QPoint(0, 120));
    EXPECT_GT(cards.offset(), 60);
    EXPECT_TRUE(acts.empty()) << "pushing is no tap";
}

TEST_F(BenchAtWork, ASpotThatHasJustChangedTakesNoTap)
{
    bench::Board board = samples::richBoard();
    board.cards[1].acts = {{bench::ActKind::Finish, board.cards[1].stage, "Powder is on"}};
    window.setBoard(board, samples::richExtras());
    const QString key = keyOf(card(2));
    clock += 499;
    tap(bench.cards(), key);
    EXPECT_TRUE(acts.empty());
    clock += 1;
    tap(bench.cards(), key);
    EXPECT_EQ(acts.size(), 1U);
}

TEST_F(BenchAtWork, NothingMovesUnderAHandForTwoSeconds)
{
    tap(bench.cards(), keyOf(card(2)));
    const QRect before = bench.cards().placeOf(PieceId(2));
    bench::Board board = samples::richBoard();
    std::swap(board.cards[1], board.cards[3]);
    window.setBoard(board, samples::richExtras());
    EXPECT_EQ(bench.cards().placeOf(PieceId(2)), before);
    EXPECT_EQ(bench.blockPiece(), PieceId(1));
    clock += 1'900;
    window.setBoard(board, samples::richExtras());
    EXPECT_EQ(bench.cards().placeOf(PieceId(2)), before);
    clock += 200;
    window.setBoard(board, samples::richExtras());
    EXPECT_NE(bench.cards().placeOf(PieceId(2)), before);
}

TEST_F(BenchAtWork, TheBlockStaysWhileItsAlertIsAnswered)
{
    tap(bench.block(), keyOf(card(1)));
    bench::Board board = samples::richBoard();
    board.cards[0].standing = bench::Standing::UnderHands;
    board.cards[0].acts = {{bench::ActKind::Finish, board.cards[0].stage, "Wiped back"}};
    const QRect before = bench.block().geometry();
    Extras quiet = samples::richExtras();
    quiet.flashing.clear();
    window.setBoard(board, quiet);
    EXPECT_EQ(bench.blockPiece(), PieceId(1));
    EXPECT_EQ(bench.block().geometry(), before);
    EXPECT_NE(bench.block().hit(actKey(PieceId(1), board.cards[0].acts[0])), nullptr);
}

TEST_F(BenchAtWork, AnAlertOfTheHighestUrgencyMovesAtOnce)
{
    tap(bench.cards(), keyOf(card(2)));
    bench::Board board = samples::richBoard();
    std::rotate(board.cards.begin(), board.cards.begin() + 1, board.cards.begin() + 2);
    board.cards[0].standing = bench::Standing::DoNow;
    Extras extras = samples::richExtras();
    extras.flashing.push_back({PieceId(2), bench::Urgency::A});
    window.setBoard(board, extras);
    EXPECT_EQ(bench.blockPiece(), PieceId(2));
}

TEST_F(BenchAtWork, KeysAloneReachAndDoEverything)
{
    bench.block().setFocus(Qt::TabFocusReason);
    QTest::keyClick(&bench.block(), Qt::Key_Return);
    EXPECT_EQ(acts.size(), 1U);
    QTest::keyClick(&bench.block(), Qt::Key_Down);
    EXPECT_EQ(bench.block().focusKey(), moreKey(PieceId(1)));
    QTest::keyClick(&bench.block(), Qt::Key_Return);
    EXPECT_TRUE(bench.panel().isOpen());
    QTest::keyClick(&bench.panel(), Qt::Key_Escape);
    EXPECT_FALSE(bench.panel().isOpen());
    QSet<QString> reached;
    for (const auto* view :
         {&bench.top(), &bench.band(), &bench.block(), static_cast<parts::ActView*>(&bench.cards())}) {
        auto* each = const_cast<parts::ActView*>(view);
        each->setFocusKey({});
        each->clearFocus();
        each->setFocus(Qt::TabFocusReason);
        for (std::size_t i = 0; i < each->hits().size() && each->hasFocus(); ++i) {
            reached << each->focusKey();
            QTest::keyClick(each, Qt::Key_Tab);
        }
        for (const auto& hit : each->hits()) {
            if (hit.canAct()) {
                EXPECT_TRUE(reached.contains(hit.key)) << hit.key.toStdString();
            }
        }
    }
}

TEST_F(BenchAtWork, ThePedalActsOnTheBlockFromAnySpace)
{
    window.addSpace(QStringLiteral("rules"), QStringLiteral("Rules"), new QWidget);
    window.showSpace(QStringLiteral("rules"));
    QTest::keyPress(&window, Qt::Key_F13);
    clock += 100;
    QTest::keyRelease(&window, Qt::Key_F13);
    ASSERT_EQ(acts.size(), 1U);
    EXPECT_EQ(acts[0].act.kind, bench::ActKind::HandsOnIt);
}

TEST_F(BenchAtWork, AReadingIsTypedOnOurOwnDigits)
{
    tap(bench.top(), QStringLiteral("place/1"));
    clock += 600;
    for (const char* key : {"2", "7", ".", "5"}) {
        tap(bench.panel(), QStringLiteral("pad/") + QLatin1String(key));
        clock += 600;
    }
    tap(bench.panel(), QStringLiteral("reading/keep"));
    clock += 600;
    tap(bench.panel(), QStringLiteral("pad/4"));
    clock += 600;
    tap(bench.panel(), QStringLiteral("pad/4"));
    clock += 600;
    tap(bench.panel(), QStringLiteral("reading/keep"));
    ASSERT_EQ(readings.size(), 1U);
    EXPECT_EQ(readings[0].place, PlaceId(1));
    EXPECT_EQ(readings[0].temperature, Temperature::fromCelsius(27.5));
    EXPECT_EQ(readings[0].humidity, percentHumidity(44));
    EXPECT_FALSE(bench.panel().isOpen());
}

TEST_F(BenchAtWork, LettersOnTheGlassTypeAndNeverCoverTheLine)
{
    LookSettings look;
    look.letters = true;
    look.dpi = 96.0;
    window.setLookSettings(look);
    EXPECT_FALSE(window.letters().isVisible()) << "nothing is typed into yet";
    tap(bench.cards(), moreKey(PieceId(2)));
    clock += 600;
    const PanelPage more = *bench.panel().page();
    const auto note = std::ranges::find(more.choices, QStringLiteral("more/note"), &PanelPage::Choice::key);
    ASSERT_NE(note, more.choices.end());
    note->act();
    clock += 600;
    QLineEdit& words = bench.panel().words();
    words.setFocus();
    QCoreApplication::processEvents();
    ASSERT_TRUE(window.letters().isVisible());
    const QRect line(words.mapTo(&window, QPoint()), words.size());
    EXPECT_FALSE(line.intersects(window.letters().geometry()));
    EXPECT_TRUE(window.rect().contains(line));
    for (const char* key : {"capital", "r", "i", "m", "space", "accents", "ó", "back", "k"}) {
        clock += 600;
        if (QLatin1String(key) == QLatin1String("k")) {
            tap(window.letters(), QStringLiteral("letter/accents"));
            clock += 600;
        }
        tap(window.letters(), QStringLiteral("letter/") + QString::fromUtf8(key));
    }
    EXPECT_EQ(words.text(), QStringLiteral("Rim k"));
    EXPECT_TRUE(words.hasFocus());
    clock += 600;
    tap(window.letters(), QStringLiteral("letter/done"));
    EXPECT_FALSE(window.letters().isVisible());
}

TEST_F(BenchAtWork, ATimeThatWasToldIsKeptWhenItIsAskedWhichMix)
{
    std::vector<std::optional<Instant>> when;
    QObject::connect(
        &bench.told(), &Told::actedWithMix, &bench.told(),
        [to = &when](PieceId, const bench::CardAct&, MixId, std::optional<Instant> at) { to->push_back(at); });
    const Instant earlier = samples::now() - std::chrono::minutes(4);
    bench.askWhichMix(PieceId(3), {bench::ActKind::Finish, {}, "Glue is on"}, {MixId(1)}, earlier);
    clock += 600;
    tap(bench.panel(), QStringLiteral("whichmix/1"));
    EXPECT_EQ(when, (std::vector<std::optional<Instant>>{earlier}));
}

TEST_F(BenchAtWork, ClosingForTheDaySaysWhatWillNotBeCured)
{
    std::vector<bool> away;
    QObject::connect(&bench.told(), &Told::awayTold, &bench.told(), [to = &away](bool told) { to->push_back(told); });
    tap(bench.top(), QStringLiteral("person"));
    clock += 600;
    tap(bench.panel(), QStringLiteral("person/closing"));
    clock += 600;
    ASSERT_TRUE(bench.panel().page());
    EXPECT_EQ(bench.panel().page()->text, details.nightAhead());
    EXPECT_NE(bench.panel().hit(QStringLiteral("closing/read/3")), nullptr) << "a heated place nobody has read lately";
    EXPECT_EQ(bench.panel().hit(QStringLiteral("closing/read/2")), nullptr);
    tap(bench.panel(), QStringLiteral("closing/away"));
    EXPECT_EQ(away, std::vector{true});
}

TEST_F(BenchAtWork, OwnersStayHiddenWhileAPieceIsTakenInWhateverIsWished)
{
    bench.coverOwners(true);
    EXPECT_TRUE(bench.picture().hideOwners);
    bench.hideOwners(false);
    EXPECT_TRUE(bench.picture().hideOwners);
    bench.coverOwners(false);
    EXPECT_FALSE(bench.picture().hideOwners);
    bench.hideOwners(true);
    bench.coverOwners(false);
    EXPECT_TRUE(bench.picture().hideOwners) << "the wish stands when the form is closed";
}

TEST(HandsWanted, AtTheLatestThatTheCloseAllowsOrUntilItIsDone)
{
    const Instant now = samples::now();
    const auto minutes = [](int count) { return Span(std::chrono::minutes(count)); };
    bench::Card card;
    EXPECT_FALSE(handsWanted(card, now));
    bench::Window window;
    window.handsOn = minutes(5);
    card.window = window;
    EXPECT_FALSE(handsWanted(card, now)) << "at no certain time";
    card.window->closes = now + minutes(20);
    card.window->latestStart = now + minutes(15);
    EXPECT_EQ(handsWanted(card, now), (InstantRange{now + minutes(15), now + minutes(20)}));
    EXPECT_EQ(handsWanted(card, now + minutes(18)), (InstantRange{now + minutes(18), now + minutes(20)}));
    EXPECT_FALSE(handsWanted(card, now + minutes(20)));
    card.window->begunAt = now - minutes(2);
    EXPECT_EQ(handsWanted(card, now), (InstantRange{now, now + minutes(3)}));
    EXPECT_FALSE(handsWanted(card, now + minutes(4)));
}

TEST_F(BenchAtWork, AFactMayBeToldForFourMinutesAgo)
{
    tap(bench.cards(), moreKey(PieceId(2)));
    clock += 600;
    tap(bench.panel(), QStringLiteral("more/time"));
    clock += 600;
    // Two acts of this card say that something happened.
    tap(bench.panel(), QStringLiteral("time/%1").arg(int(bench::ActKind::Confirm)));
    clock += 600;
    tap(bench.panel(), QStringLiteral("ago/4"));
    ASSERT_EQ(acts.size(), 1U);
    EXPECT_EQ(acts[0].when, samples::now() - std::chrono::minutes(4));
}

TEST_F(BenchAtWork, UndoStandsOnTheCardWhileItIsOffered)
{
    tap(bench.cards(), QStringLiteral("undo/77"));
    EXPECT_EQ(undone, std::vector{EventId(77)});
    window.setNow(samples::now() + std::chrono::seconds(9));
    EXPECT_EQ(bench.cards().hit(QStringLiteral("undo/77")), nullptr);
    EXPECT_NE(bench.cards().hit(moreKey(PieceId(3))), nullptr);
}

TEST_F(BenchAtWork, MixingNowIsOneTapAndNoQuestion)
{
    tap(bench.band(), QStringLiteral("mixnow/filler"));
    EXPECT_EQ(mixes, QStringList{QStringLiteral("filler")});
    EXPECT_FALSE(bench.panel().isOpen());
}

TEST_F(BenchAtWork, NoTouchIsTakenWhileTheGlassIsWiped)
{
    bench.wipeGlass();
    tap(bench.block(), keyOf(card(1)));
    EXPECT_TRUE(acts.empty());
    clock += 20'001;
    tap(bench.block(), keyOf(card(1)));
    EXPECT_EQ(acts.size(), 1U);
}

TEST_F(BenchAtWork, HiddenOwnersAreNowhere)
{
    const auto says = [this](const QString& words) {
        for (const auto* view :
             {&bench.block(), static_cast<parts::ActView*>(&bench.cards()), &bench.band(), &bench.top()}) {
            for (const auto& part : view->shown()) {
                for (const auto& item : part.scene->items) {
                    if (item.whole.contains(words)) {
                        return true;
                    }
                }
            }
            for (const auto& hit : view->hits()) {
                if (hit.name.contains(words) || hit.more.contains(words)) {
                    return true;
                }
            }
        }
        return false;
    };
    EXPECT_TRUE(says(QStringLiteral("Ines Varga")));
    bench.hideOwners(true);
    EXPECT_FALSE(says(QStringLiteral("Ines Varga")));
    EXPECT_FALSE(says(QStringLiteral("Piet Aldous")));
    EXPECT_TRUE(says(QStringLiteral("Heron bowl")));
}

TEST_F(BenchAtWork, ASecondRepaintsLittleAndTheSameSecondNothing)
{
    const std::vector<parts::ActView*> views{&bench.top(), &bench.band(), &bench.block(), &bench.cards(),
                                             &window.rail()};
    const auto repainted = [&] {
        qint64 all = 0;
        for (auto* view : views) {
            all += view->takeRepainted();
        }
        return all;
    };
    window.setNow(samples::now() + std::chrono::seconds(1));
    repainted();
    window.setNow(samples::now() + std::chrono::seconds(1));
    EXPECT_EQ(repainted(), 0);
    window.setNow(samples::now() + std::chrono::seconds(2));
    const qint64 second = repainted();
    EXPECT_GT(second, 0);
    EXPECT_LT(second, 1280 * 800 / 8);
    window.hide();
    repainted(); // losing the focus
    window.setNow(samples::now() + std::chrono::seconds(3));
    EXPECT_EQ(repainted(), 0);
}

TEST_F(BenchAtWork, AScreenReaderSeesEveryCardAndMayPress)
{
    int cards = 0;
    int buttons = 0;
    for (auto* view :
         {&bench.top(), &bench.band(), &bench.block(), static_cast<parts::ActView*>(&bench.cards()), &window.rail()}) {
        QAccessibleInterface* seen = QAccessible::queryAccessibleInterface(view);
        ASSERT_NE(seen, nullptr);
        EXPECT_FALSE(seen->text(QAccessible::Name).isEmpty());
        EXPECT_EQ(seen->childCount(), static_cast<int>(view->hits().size()));
        for (int i = 0; i < seen->childCount(); ++i) {
            QAccessibleInterface* child = seen->child(i);
            ASSERT_NE(child, nullptr);
            const QString name = child->text(QAccessible::Name);
            EXPECT_FALSE(name.trimmed().isEmpty());
            EXPECT_FALSE(name.contains(QLatin1Char('<')));
            EXPECT_EQ(child->parent(), seen);
            EXPECT_EQ(seen->indexOfChild(child), i);
            EXPECT_EQ(child->rect().size(), view->hits()[static_cast<std::size_t>(i)].rect.size());
            cards += child->role() == QAccessible::ListItem ? 1 : 0;
            buttons += child->role() == QAccessible::PushButton ? 1 : 0;
        }
    }
    EXPECT_EQ(cards, 8);
    EXPECT_GT(buttons, 20);
    for (const auto* field : window.findChildren<QLineEdit*>()) {
        EXPECT_FALSE(field->accessibleName().isEmpty());
    }
    QAccessibleInterface* block = QAccessible::queryAccessibleInterface(&bench.block());
    for (int i = 0; i < block->childCount(); ++i) {
        if (block->child(i)->text(QAccessible::Name).startsWith(QStringLiteral("Hands on it"))) {
            block->child(i)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
        }
    }
    EXPECT_EQ(acts.size(), 1U);
}

} // namespace
} // namespace mend::app
