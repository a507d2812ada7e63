#include "core/service/reachwording.h"

#include <gtest/gtest.h>

namespace mend::service {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

bench::Reach filler()
{
    bench::Reach reach;
    reach.material = "fillerPaste";
    reach.temperature = Temperature::fromCelsius(26);
    reach.life = minutes(25);
    reach.chipInOne = centimetres(5.49);
    reach.seamInOne = centimetres(19.2);
    reach.finish = "Wipe";
    return reach;
}

Names named()
{
    Names names;
    names.pieces = {{PieceId(1), QStringLiteral("heron")},
                    {PieceId(2), QStringLiteral("cup")},
                    {PieceId(3), QStringLiteral("jug")}};
    return names;
}

QString plain(QString words)
{
    words.remove(QChar(0x2068));
    words.remove(QChar(0x2069));
    return words;
}

} // namespace

TEST(ReachWording, NamesWhatOnePairOfHandsCanDoAndWhatWaits)
{
    bench::Reach reach = filler();
    reach.shares = {{PieceId(1), {}, 1, centimetres(0), centimetres(6)},
                    {PieceId(2), {}, 1, centimetres(0), centimetres(3.5)}};
    reach.nextMix = {PieceId(3)};
    EXPECT_EQ(plain(reachWords(reach, named(), {})).toStdString(),
              "at 26.0 °C one pair of hands: heron and cup, 9 cm of seam, then wipe; jug from the next mix");
}

TEST(ReachWording, GivesTheLongestRunWhereNothingIsReadyYet)
{
    EXPECT_EQ(reachWords(filler(), {}, {}).toStdString(),
              "at 26.0 °C one run is 5 cm of chip or 19 cm of seam at most, then wipe");
    EXPECT_EQ(reachShort(filler(), {}), QStringLiteral("5 cm of chip"));
    bench::Reach unread = filler();
    unread.temperature.reset();
    EXPECT_TRUE(reachWords(unread, {}, {}).startsWith(QStringLiteral("bench not read yet")));
}

TEST(ReachWording, NeverRoundsARunUp)
{
    EXPECT_EQ(runWords(centimetres(7.99), {}), QStringLiteral("7 cm"));
    EXPECT_EQ(runWords(centimetres(2.7), {}), QStringLiteral("2.5 cm"));
    Manner inches;
    inches.inches = true;
    EXPECT_EQ(runWords(centimetres(7.5), inches), QStringLiteral("2.9 in"));
}

TEST(ReachWording, SaysWhatToChangeOnAHotBench)
{
    bench::Reach glue;
    glue.temperature = Temperature::fromCelsius(29);
    glue.counted =
        bench::CountedReach{seconds(75), std::chrono::milliseconds(47'900), true, "Hot: half the joins", 3, 1};
    EXPECT_EQ(reachWords(glue, {}, {}).toStdString(), "only 47 s at 29.0 °C: Hot: half the joins. 1 join from one mix");
    EXPECT_EQ(reachShort(glue, {}), QStringLiteral("place in 47 s"));
    glue.counted = bench::CountedReach{seconds(75), seconds(75), false, "Hot: half the joins", 3, 3};
    EXPECT_FALSE(reachWords(glue, {}, {}).contains(QStringLiteral("Hot")));
}

} // namespace mend::service
