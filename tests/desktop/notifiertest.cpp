#include "app/desktop/notifier.h"

#include "tests/desktop/fakedesktop.h"
#include "tests/support/messagebus.h"

#include <QTest>
#include <gtest/gtest.h>

using namespace mend::desktop;
using mend::test::FakeNotices;
using mend::test::MessageBus;

namespace {

class NoticeTest : public testing::Test {
protected:
    void SetUp() override { ASSERT_FALSE(bus.address().isEmpty()); }
    static Notice wipe(const QString& detail = QStringLiteral("Start by 13:44"))
    {
        return {QStringLiteral("7/wipe"), QStringLiteral("Wipe back"), QStringLiteral("2604175"), detail};
    }
    bool waitForAsked(qsizetype count)
    {
        return QTest::qWaitFor([&] { return desktop.asked.size() >= count; }, 3000);
    }
    static void settle() { QTest::qWait(50); }

    MessageBus bus;
    FakeNotices desktop{bus.connection(QStringLiteral("desktop"))};
    Notifier notifier{bus.connection(QStringLiteral("program"))};
};

} // namespace

TEST_F(NoticeTest, IsCriticalStaysAndSaysNumberAndTime)
{
    notifier.show(wipe());
    ASSERT_TRUE(waitForAsked(1));
    const auto& asked = desktop.asked.front();
    EXPECT_EQ(asked.summary, QStringLiteral("Wipe back"));
    EXPECT_EQ(asked.body, QStringLiteral("2604175\nStart by 13:44"));
    EXPECT_EQ(asked.hints.value(QStringLiteral("urgency")).value<uchar>(), 2);
    EXPECT_EQ(asked.expires, 0);
    EXPECT_TRUE(QTest::qWaitFor([&] { return notifier.offer() == Offer::Present; }, 3000));
}

TEST_F(NoticeTest, NeverLetsANameStandWhereANumberBelongs)
{
    for (const QString& text :
         {QStringLiteral("Ada Vale"), QStringLiteral("2604175 Vale"), QStringLiteral("260417-5")}) {
        Notice notice = wipe(QString());
        notice.pieceNumber = text;
        notice.key = text;
        const qsizetype before = desktop.asked.size();
        notifier.show(notice);
        ASSERT_TRUE(waitForAsked(before + 1));
        EXPECT_EQ(desktop.asked.back().body, QString());
    }
}

TEST_F(NoticeTest, ALaterOneTakesThePlaceOfTheEarlier)
{
    notifier.show(wipe());
    notifier.show(wipe(QStringLiteral("never shown")));
    notifier.show(wipe(QStringLiteral("Last call")));
    ASSERT_TRUE(waitForAsked(2));
    settle();
    ASSERT_EQ(desktop.asked.size(), 2);
    EXPECT_EQ(desktop.asked.front().replaces, 0U);
    EXPECT_EQ(desktop.asked.back().replaces, 41U);
    EXPECT_EQ(desktop.asked.back().body, QStringLiteral("2604175\nLast call"));
}

TEST_F(NoticeTest, IsWithdrawnAlsoWhileStillBeingAsked)
{
    notifier.show(wipe());
    notifier.withdraw(QStringLiteral("7/wipe"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return desktop.closed == QList<uint>{41}; }, 3000));
    notifier.show(wipe());
    ASSERT_TRUE(waitForAsked(2));
    settle();
    EXPECT_EQ(desktop.asked.back().replaces, 0U);
    notifier.withdraw(QStringLiteral("7/wipe"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return desktop.closed.size() == 2; }, 3000));
}

TEST_F(NoticeTest, AClosedOneIsNotReplacedOrClosedAgain)
{
    notifier.show(wipe());
    ASSERT_TRUE(waitForAsked(1));
    settle();
    Q_EMIT desktop.NotificationClosed(41, 2);
    settle();
    notifier.withdraw(QStringLiteral("7/wipe"));
    notifier.show(wipe());
    ASSERT_TRUE(waitForAsked(2));
    EXPECT_EQ(desktop.asked.back().replaces, 0U);
    EXPECT_TRUE(desktop.closed.isEmpty());
}

TEST_F(NoticeTest, ChoosingItNamesTheAlert)
{
    QString chosen;
    QObject::connect(&notifier, &Notifier::chosen, &notifier, [&chosen](const QString& key) { chosen = key; });
    notifier.show(wipe());
    ASSERT_TRUE(waitForAsked(1));
    settle();
    Q_EMIT desktop.ActionInvoked(41, QStringLiteral("default"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return chosen == QStringLiteral("7/wipe"); }, 3000));
}

TEST(NoticeWithoutService, IsAbsentAndHarmless)
{
    MessageBus bus;
    Notifier notifier(bus.connection(QStringLiteral("program")));
    notifier.show({QStringLiteral("k"), QStringLiteral("Wipe back"), QStringLiteral("2604175"), QString()});
    EXPECT_TRUE(QTest::qWaitFor([&] { return notifier.offer() == Offer::Absent; }, 3000));
    notifier.withdraw(QStringLiteral("k"));
    QTest::qWait(50);
}
