#include "app/parts/scribe.h"
#include "app/parts/seamdrawing.h"
#include "app/shell/mainwindow.h"
#include "tests/app/samples.h"

#include <QRegularExpression>

#include <algorithm>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

class Mirrored : public testing::Test {
protected:
    void dress(MainWindow& window, Qt::LayoutDirection direction)
    {
        window.setLayoutDirection(direction);
        window.resize(1280, 800);
        window.setLookSettings({parts::Theme::Light, 1.0, false, false, 96.0});
        window.bench().setManner(samples::manner());
        window.setBoard(samples::richBoard(), samples::richExtras());
        window.show();
    }

    static QRect in(const QWidget& window, const QWidget& part) { return {part.mapTo(&window, QPoint()), part.size()}; }

    parts::TapGate m_gate;
};

QRect turned(const QRect& rect, int wide)
{
    return {wide - rect.x() - rect.width(), rect.y(), rect.width(), rect.height()};
}

/// How many spots of a view stand where they are mirrored in the other.
int spotsTurned(const parts::ActView& left, const parts::ActView& right)
{
    int spots = 0;
    for (const parts::Hit& hit : left.hits()) {
        const parts::Hit* same = right.hit(hit.key);
        EXPECT_TRUE(same) << hit.key.toStdString();
        const QRect wanted = turned(hit.rect, left.width());
        const bool stands = same && std::abs(same->rect.x() - wanted.x()) <= 2 && same->rect.y() == wanted.y();
        EXPECT_TRUE(stands) << hit.key.toStdString(); // half units are rounded
        spots += stands ? 1 : 0;
    }
    return spots;
}

TEST_F(Mirrored, EveryPartOfTheWindowStandsOnTheOtherSide)
{
    MainWindow left(m_gate);
    MainWindow right(m_gate);
    dress(left, Qt::LeftToRight);
    dress(right, Qt::RightToLeft);
    EXPECT_EQ(left.rail().x(), 0);
    EXPECT_EQ(right.rail().geometry(), turned(left.rail().geometry(), 1280));
    EXPECT_EQ(in(right, right.bench().top()), turned(in(left, left.bench().top()), 1280));
    EXPECT_EQ(in(right, right.bench().block()), turned(in(left, left.bench().block()), 1280));
    EXPECT_GT(spotsTurned(left.bench().cards(), right.bench().cards()), 10);
    EXPECT_GT(spotsTurned(left.bench().block(), right.bench().block()), 1);
}

/// What is drawn of a seam whose window closes in ten minutes, on an axis of 100 to 300 in a view 1000 wide.
parts::Scene seamDrawn(bool mirrored)
{
    const parts::Look look = parts::lookOf(parts::Theme::Light, parts::Measure());
    parts::Scribe scribe(look, {1000, 100}, mirrored);
    bench::Seam seam;
    seam.opens = samples::now();
    seam.latestStart = samples::now() + std::chrono::minutes(5);
    seam.closes = samples::now() + std::chrono::minutes(10);
    const parts::TimeAxis axis{samples::now(), std::chrono::minutes(20), 100.0, 200.0};
    parts::drawSeam(scribe, seam, axis, 50.0, 10.0, parts::seamInk(look.tokens(), false), parts::SeamDetail::Card);
    return scribe.take();
}

TEST_F(Mirrored, ASeamMovesToTheOtherSideAndStillBeginsAtItsLeft)
{
    const parts::Scene left = seamDrawn(false);
    const parts::Scene right = seamDrawn(true);
    ASSERT_EQ(left.items.size(), right.items.size());
    ASSERT_FALSE(left.items.empty());
    for (std::size_t i = 0; i < left.items.size(); ++i) {
        // The axis from 100 to 300 stands at 700 to 900: 600 on, and not turned round.
        EXPECT_NEAR(right.items[i].path.boundingRect().left(), left.items[i].path.boundingRect().left() + 600.0, 0.01);
        EXPECT_NEAR(right.items[i].path.elementAt(0).x, left.items[i].path.elementAt(0).x + 600.0, 0.01);
    }
}

TEST_F(Mirrored, TheHoursOfTheCommonAxisRunOnToTheRight)
{
    MainWindow window(m_gate);
    dress(window, Qt::RightToLeft);
    std::vector<std::pair<double, QString>> hours; // from the left
    for (const auto& part : window.bench().band().shown()) {
        for (const parts::Item& item : part.scene->items) {
            static const QRegularExpression clock(QStringLiteral("^[0-9]{2}:[0-9]{2}$"));
            if (item.kind == parts::Item::Kind::Text && clock.match(item.text).hasMatch()) {
                hours.emplace_back(item.rect.left(), item.text);
            }
        }
    }
    std::ranges::sort(hours, {}, [](const auto& each) { return each.first; });
    ASSERT_GE(hours.size(), 3U);
    EXPECT_EQ(hours.front().second, QStringLiteral("13:42")) << "now stands at the left end";
    EXPECT_TRUE(std::ranges::is_sorted(hours, {}, [](const auto& each) { return each.second; }));
}

TEST_F(Mirrored, DigitsThatCountAreWrittenAsTheyAre)
{
    MainWindow left(m_gate);
    MainWindow right(m_gate);
    dress(left, Qt::LeftToRight);
    dress(right, Qt::RightToLeft);
    const auto texts = [](const parts::ActView& view) {
        QStringList all;
        for (const auto& part : view.shown()) {
            for (const parts::Item& item : part.scene->items) {
                all << item.text;
            }
        }
        return all;
    };
    EXPECT_EQ(texts(left.bench().block()), texts(right.bench().block()));
}

} // namespace
} // namespace mend::app
