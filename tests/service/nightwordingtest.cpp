#include "core/service/nightwording.h"

#include <gtest/gtest.h>

namespace mend::service {
namespace {

using namespace std::chrono;

const Instant evening = sys_days{year{2026} / 11 / 25} + hours(17);

bench::Window window(std::int64_t piece, const char* act)
{
    bench::Window made;
    made.piece = PieceId(piece);
    made.act = act;
    return made;
}

std::string plain(QStringList lines)
{
    QString all = lines.join(QLatin1Char('\n'));
    all.remove(QChar(0x2068)).remove(QChar(0x2069));
    return all.toStdString();
}

} // namespace

TEST(NightWording, SaysWhatToDoFirstAndWhatWillNotBeCured)
{
    bench::NightAhead night;
    night.morning = evening + hours(16);
    night.isTold = true;
    bench::Window wipe = window(1, "Wipe back the filler");
    wipe.latestStart = evening + minutes(14);
    wipe.closes = evening + minutes(19);
    wipe.miss = rules::Miss::Afternoon;
    night.closesAlone = {wipe};
    bench::Window cure = window(2, "Sand the fill");
    cure.opens = evening + hours(17);
    cure.opensAtLatest = evening + hours(18);
    bench::Window cold = window(3, "Burnish");
    cold.stalled = true;
    night.notCured = {cold, cure};
    night.staysOn = {PlaceId(3)};
    Names names;
    names.pieces = {{PieceId(1), QStringLiteral("Heron bowl")},
                    {PieceId(2), QStringLiteral("Jug")},
                    {PieceId(3), QStringLiteral("Cup")}};
    names.places = {{PlaceId(3), QStringLiteral("Cabinet")}};
    EXPECT_EQ(plain(nightWords(night, names, evening, {})),
              "Before you go: Heron bowl: Wipe back the filler, start by 17:14 (a miss costs an afternoon)\n"
              "Not cured by Thu 09:00: Cup: Burnish, stalled: it makes no progress where it lies\n"
              "Not cured by Thu 09:00: Jug: Sand the fill, about Thu 10:00 to Thu 11:00\n"
              "Has to stay on: Cabinet");
}

TEST(NightWording, SaysSoWhereNothingIsLeft)
{
    bench::NightAhead night;
    night.morning = evening + hours(12);
    const QStringList lines = nightWords(night, {}, evening, {});
    ASSERT_EQ(lines.size(), 2);
    EXPECT_TRUE(lines[0].startsWith(QStringLiteral("Nothing closes")));
    EXPECT_TRUE(lines[1].contains(QStringLiteral("twelve hours")));
}

TEST(NightWording, TellsSinceWhenAThingMayBeDone)
{
    bench::Window scrape = window(1, "Scrape and key");
    scrape.opens = evening;
    EXPECT_EQ(plain(endedWords({scrape}, {}, evening + hours(2), {})), "Scrape and key, may be done since 17:00");
}

} // namespace mend::service
