// What flashes, looked at on the pixels; and whether states differ when there is no colour.
#include "app/bench/cardscene.h"
#include "app/shell/mainwindow.h"
#include "tests/app/samples.h"

#include <QPainter>
#include <deque>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

class NoHands : public Hands {
public:
    void act(PieceId, const bench::CardAct&) override {}
    void more(PieceId) override {}
    void why(PieceId) override {}
    void undo(EventId) override {}
    void openPlace(PlaceId) override {}
    void mixNow(const QString&) override {}
    void openMix(MixId) override {}
    void openPeople() override {}
    void openSound() override {}
    void allMixes() override {}
    void allPlaces() override {}
    void step(int) override {}
};

/// Pixels whose luminance differs by a tenth or more.
qint64 areaBetween(const QImage& a, const QImage& b)
{
    qint64 area = 0;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            if (a.pixel(x, y) != b.pixel(x, y)) {
                area += std::abs(parts::luminance(a.pixelColor(x, y)) - parts::luminance(b.pixelColor(x, y))) >= 0.1
                            ? 1
                            : 0;
            }
        }
    }
    return area;
}

class Flashing30 : public testing::TestWithParam<parts::Theme> {};

// WCAG 2.2, 2.3.1: no more than three flashes in any one second. A flash is a pair of opposing changes.
TEST_P(Flashing30, AlertsNeverFlashMoreThanThreeTimesASecond)
{
    qint64 clock = 0;
    parts::TapGate gate([&clock] { return clock; });
    MainWindow window(gate);
    window.resize(1280, 800);
    window.setLookSettings({GetParam(), 1.0, false, false, 96.0});
    window.bench().setManner(samples::manner());
    Extras extras = samples::richExtras();
    extras.flashing.clear();
    const bench::Board board = samples::alarmedBoard(30);
    for (const auto& card : board.cards) {
        extras.flashing.push_back({card.piece, bench::Urgency::A});
    }
    window.show();
    window.setBoard(board, extras);
    // The same words at every step, so that only what flashes can differ.
    QImage last;
    std::deque<qint64> turns;
    int turned = 0;
    qint64 largest = 0;
    for (clock = 50; clock <= 60'000; clock += 50) {
        window.setNow(board.at);
        const QImage after = window.bench().block().grab().toImage();
        if (!last.isNull() && last != after) {
            largest = std::max(largest, areaBetween(last, after));
            turns.push_back(clock);
            ++turned;
        }
        last = after;
        while (!turns.empty() && turns.front() <= clock - 1000) {
            turns.pop_front();
        }
        EXPECT_LE(turns.size(), 6U) << "more than three pairs of changes in the second before " << clock;
    }
    EXPECT_GT(turned, 100) << "it does flash";
    EXPECT_LE(largest, 21'824) << "a quarter of 341 by 256";
    // Nothing but the block flashes: everything else is the same, lit or not.
    clock = 60'400;
    window.setNow(board.at);
    const QImage one = window.bench().cards().grab().toImage();
    clock += 333;
    window.setNow(board.at);
    EXPECT_EQ(window.bench().cards().grab().toImage(), one);
}

INSTANTIATE_TEST_SUITE_P(Themes, Flashing30,
                         testing::Values(parts::Theme::Light, parts::Theme::Dark, parts::Theme::HighContrast));

/// A card without its words, in greys.
QImage shapeOf(const bench::Card& card, const Picture& picture, NoHands& hands)
{
    const QSize size(544, 172);
    const bool inverted = card.standing == bench::Standing::DoNow;
    const auto scene = cardScene(card, picture, {size, true, false, inverted}, false, hands);
    QImage image(size, QImage::Format_RGB32);
    image.fill(picture.look.tokens().ground);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const auto& item : scene.items) {
        if (item.kind != parts::Item::Kind::Text) {
            paintItem(painter, item);
        }
    }
    painter.end();
    return image.convertToFormat(QImage::Format_Grayscale8);
}

TEST(Shapes, TellTheStatesApartWithoutColourOrWords)
{
    Picture picture;
    picture.look = parts::lookOf(parts::Theme::Light, parts::Measure());
    picture.manner = samples::manner();
    picture.board = samples::richBoard();
    picture.now = samples::now();
    picture.names = service::namesOf(picture.board);
    NoHands hands;
    // One piece, one act: only what the states themselves draw may differ.
    bench::Card base = picture.board.cards[1];
    base.acts = {{bench::ActKind::Finish, base.stage, "Powder is on"}};
    std::vector<std::pair<const char*, bench::Card>> states;
    const auto add = [&](const char* name, bench::Standing standing, auto change) {
        bench::Card card = base;
        card.standing = standing;
        change(card);
        states.emplace_back(name, card);
    };
    const Instant now = picture.now;
    using std::chrono::minutes;
    add("do now", bench::Standing::DoNow, [](bench::Card&) {});
    add("open", bench::Standing::Open, [](bench::Card&) {});
    add("opens soon", bench::Standing::Waiting, [&](bench::Card& card) { card.seam.opens = now + minutes(30); });
    add("waiting", bench::Standing::Waiting, [&](bench::Card& card) {
        card.seam = {};
        card.seam.ends = now + minutes(70);
    });
    add("stalled", bench::Standing::Stalled, [](bench::Card& card) {
        card.seam = {};
        card.seam.stalled = true;
    });
    add("stopped", bench::Standing::Stopped, [](bench::Card& card) { card.seam = {}; });
    add("past", bench::Standing::Past, [&](bench::Card& card) {
        card.seam.opens = now - minutes(90);
        card.seam.latestStart = now - minutes(52);
        card.seam.closes = now - minutes(42);
        card.seam.lost = now + minutes(18);
    });
    for (std::size_t i = 0; i < states.size(); ++i) {
        for (std::size_t j = i + 1; j < states.size(); ++j) {
            const QImage a = shapeOf(states[i].second, picture, hands);
            const QImage b = shapeOf(states[j].second, picture, hands);
            qint64 differ = 0;
            for (int y = 0; y < a.height(); ++y) {
                for (int x = 0; x < a.width(); ++x) {
                    differ += std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y))) > 40 ? 1 : 0;
                }
            }
            EXPECT_GT(differ, 250) << states[i].first << " and " << states[j].first;
            EXPECT_NE(service::cardSentence(states[i].second, picture.names, now, picture.manner),
                      service::cardSentence(states[j].second, picture.names, now, picture.manner));
        }
    }
}

} // namespace
} // namespace mend::app
