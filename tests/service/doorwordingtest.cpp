#include "core/service/doorwording.h"

#include <gtest/gtest.h>

#include <set>

using namespace mend;
using namespace mend::service;
using bench::Event;
using bench::What;

namespace {

Manner in(QLocale::Language language)
{
    Manner manner;
    manner.locale = QLocale(language);
    return manner;
}

CivilDay day(const char* text) { return dayFrom(text).value(); }

} // namespace

TEST(DoorWording, WritesMoneyAsTheLanguageDoesF31F49)
{
    EXPECT_EQ(moneyWords(Money(123450, "EUR"), in(QLocale::English)), QStringLiteral("1,234.50 EUR"));
    EXPECT_EQ(moneyWords(Money(123450, "EUR"), in(QLocale::German)), QStringLiteral("1.234,50 EUR"));
    EXPECT_EQ(moneyWords(Money(1200, "JPY"), in(QLocale::English)), QStringLiteral("1,200 JPY"));
    EXPECT_EQ(moneyWords(Money(1234, "KWD"), in(QLocale::English)), QStringLiteral("1.234 KWD"));
    EXPECT_EQ(moneyWords(Money(-5, "EUR"), in(QLocale::English)), QStringLiteral("-0.05 EUR"));
    EXPECT_EQ(moneyWords(Money(9'007'199'254'740'993, "EUR"), in(QLocale::English)),
              QStringLiteral("90,071,992,547,409.93 EUR"))
        << "no double in between";
}

TEST(DoorWording, SaysADayInWords)
{
    EXPECT_EQ(dayWords(day("2027-03-20"), in(QLocale::English)), QStringLiteral("Saturday, March 20, 2027"));
    EXPECT_TRUE(dayWords(day("2028-02-29"), in(QLocale::German)).contains(QStringLiteral("29. Februar 2028")));
}

TEST(DoorWording, SaysWhatWasToldAtTheDoorAndNeverAName)
{
    for (int what = static_cast<int>(What::Received); what <= static_cast<int>(What::ConsentGiven); ++what) {
        Event event;
        event.what = static_cast<What>(what);
        event.word = event.what == What::Promised ? "2027-03-20" : "EUR";
        event.amount = 5;
        event.note = "Euphrosyne";
        const QString words = doorTold(event, in(QLocale::English));
        EXPECT_FALSE(words.isEmpty()) << what;
        EXPECT_FALSE(words.contains(QStringLiteral("Euphrosyne"))) << what;
    }
    Event promised;
    promised.what = What::Promised;
    promised.word = "2027-03-20";
    EXPECT_EQ(doorTold(promised, in(QLocale::English)), QStringLiteral("Promised for Saturday, March 20, 2027"));
    Event back;
    back.what = What::Paid;
    back.word = "EUR";
    back.amount = -500;
    EXPECT_EQ(doorTold(back, in(QLocale::English)), QStringLiteral("Given back: 5.00 EUR"));
    EXPECT_TRUE(doorTold({}, in(QLocale::English)).isEmpty());
}

TEST(DoorWording, CountsInSentences)
{
    bench::CounterFacts facts;
    EXPECT_TRUE(mayBeCollectedWords(facts).isEmpty());
    facts.mayBeCollected.resize(1);
    facts.late.resize(3);
    facts.unclaimed.resize(1);
    EXPECT_EQ(mayBeCollectedWords(facts), QStringLiteral("1 piece may be collected"));
    EXPECT_EQ(lateWords(facts), QStringLiteral("3 pieces are late"));
    EXPECT_TRUE(unclaimedWords(facts).contains(QStringLiteral("local law")));
    EXPECT_TRUE(waitsForOwnerWords(facts).isEmpty());
    EXPECT_TRUE(toCallWords(facts).isEmpty());
}

TEST(DoorWording, SaysAtOnceWhenAPromiseIsTooEarly)
{
    bench::PromiseJudgement judgement{day("2027-03-23"), "fastAdhesive", 3};
    const QString words = promiseWords(judgement, QStringLiteral("adhesive"), in(QLocale::English));
    EXPECT_EQ(words, QStringLiteral(
                         "That is 3 days too early: its adhesive waits until Tuesday, March 23, 2027 at the least"));
    judgement.daysTooEarly = 0;
    EXPECT_TRUE(promiseWords(judgement, {}, in(QLocale::English)).isEmpty());
}

TEST(IntakeWording, SaysForEveryFaultWhatToDoAndWhere)
{
    std::set<QString> all;
    for (int fault = 0; fault <= static_cast<int>(record::IntakeFault::TextTooLong); ++fault) {
        const QString words = intakeFaultWords(static_cast<record::IntakeFault>(fault));
        EXPECT_TRUE(words.endsWith(QLatin1Char('.')) || words.endsWith(QLatin1Char('?'))) << fault;
        EXPECT_STRNE(intakeFaultField(static_cast<record::IntakeFault>(fault)), "") << fault;
        all.insert(words);
    }
    EXPECT_EQ(all.size(), static_cast<std::size_t>(record::IntakeFault::TextTooLong) + 1) << "each its own sentence";
}
