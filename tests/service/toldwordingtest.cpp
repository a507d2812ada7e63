#include "core/service/toldwording.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::service;
using namespace mend::test;
using bench::What;
using bench::Window;
using bench::WindowMove;

namespace {

QStringList said(std::optional<Window> before, std::optional<Window> after)
{
    Names names;
    names.pieces[PieceId(1)] = QStringLiteral("Heron bowl");
    const std::vector<WindowMove> moves{
        {PieceId(1), {"wipeBack", 1}, "Wipe back", std::move(before), std::move(after)}};
    return moveWords(moves, names, TestBench::at(0), Manner());
}

Window closing(double minute)
{
    Window window;
    window.closes = TestBench::at(minute);
    return window;
}

} // namespace

TEST(MoveWords, GiveTheNewTimeBeforeTheOld)
{
    EXPECT_EQ(said(closing(49), closing(44)),
              QStringList{QStringLiteral("Heron bowl: “Wipe back” closes 09:44 instead of 09:49")});
}

TEST(MoveWords, SayWhatIsGoneAndWhatComesUp)
{
    EXPECT_EQ(said(closing(49), {}), QStringList{QStringLiteral("Heron bowl: “Wipe back” no longer stands")});
    EXPECT_EQ(said({}, closing(44)), QStringList{QStringLiteral("Heron bowl: “Wipe back” comes up: closes 09:44")});
    EXPECT_EQ(said(closing(49), Window()),
              QStringList{QStringLiteral("Heron bowl: “Wipe back” no longer closes 09:49")});
}

TEST(ToldWords, HaveWordsForEveryKindOfEvent)
{
    TestBench bench(shippedRules());
    const PieceId piece = bench.add("goldLacquerSeam").id;
    const auto fold = bench::fold(bench.roster(), bench.events(), bench.book());
    for (int what = 1; what <= 35; ++what) {
        bench::Event event = bench.event(static_cast<What>(what), 1);
        event.piece = piece;
        event.place = TestBench::cabinet;
        event.temperature = Temperature::fromCelsius(44);
        event.word = "padsDrying";
        event.note = "a remark";
        EXPECT_FALSE(toldWords(event, fold, bench.book(), Manner()).isEmpty()) << what;
        event.stage = {"wipeBack", 1};
        EXPECT_FALSE(toldWords(event, fold, bench.book(), Manner()).isEmpty()) << what;
    }
}

TEST(ToldWords, AStageOfAPieceThatHasLeftIsStillSaidInWords)
{
    TestBench bench(shippedRules());
    bench::Event done = bench.event(What::Done, 1);
    done.piece = PieceId(77); // not in the house
    done.stage = {"wipeBack", 1};
    const auto fold = bench::fold(bench.roster(), bench.events(), bench.book());
    const rules::Procedure* gold = bench.book().procedure("goldLacquerSeam");
    const QString words = QString::fromStdString(gold->find("wipeBack")->done);
    done.rules = gold->hash;
    EXPECT_EQ(toldWords(done, fold, bench.book(), Manner()), words);
    done.rules.clear();
    EXPECT_EQ(toldWords(done, fold, bench.book(), Manner()), words);
}

TEST(ToldWords, AReadingSaysItsFigures)
{
    TestBench bench(shippedRules());
    bench::Event event = bench.event(What::ReadingTaken, 1);
    event.place = TestBench::cabinet;
    event.temperature = Temperature::fromCelsius(44);
    event.humidity = percentHumidity(30);
    const auto fold = bench::fold(bench.roster(), bench.events(), bench.book());
    EXPECT_EQ(toldWords(event, fold, bench.book(), Manner()), QStringLiteral("Cabinet: 44.0 °C, 30 %"));
    event.what = What::GapAnswered;
    event.word = "wentOff";
    EXPECT_EQ(toldWords(event, fold, bench.book(), Manner()), QStringLiteral("Cabinet went off"));
}
