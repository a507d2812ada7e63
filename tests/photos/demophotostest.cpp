#include "app/photos/demophotos.h"

#include "app/photos/photoimport.h"
#include "core/service/ruleshelf.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <QImage>
#include <gtest/gtest.h>
#include <set>

using namespace mend;

namespace {

const Moment afternoon{std::chrono::sys_days(std::chrono::year(2026) / 11 / 28) + std::chrono::hours(12), {}};

service::DemoBench demo() { return service::demoBench(test::shippedRules(), afternoon, QTimeZone::utc()).takeValue(); }

TEST(DemoPhotos, AreTheSameEachTimeSmallAndNoTwoAlike)
{
    const auto photos = photos::drawDemoPhotos(demo().roster, afternoon.utc);
    const auto again = photos::drawDemoPhotos(demo().roster, afternoon.utc);
    ASSERT_GE(photos.size(), 8U);
    std::set<std::string> different;
    std::size_t bytes = 0;
    for (std::size_t i = 0; i < photos.size(); ++i) {
        EXPECT_EQ(photos[i].working, again[i].working);
        EXPECT_FALSE(QImage::fromData(QByteArray::fromStdString(photos[i].thumbnail)).isNull());
        different.insert(photos[i].working);
        bytes += photos[i].working.size() + photos[i].thumbnail.size();
    }
    EXPECT_EQ(different.size(), photos.size());
    EXPECT_LT(bytes, 1'200'000U);
}

TEST(DemoPhotos, StandInTheDemosFileEachUnderItsPiece)
{
    const test::Scratch scratch;
    const auto file = scratch / "demo.mendbench";
    ASSERT_TRUE(service::writeDemo(demo(), test::shippedRules(), file, photos::drawDemoPhotos));
    const auto store = store::Store::open(file, store::OpenMode::ReadOnly).takeValue();
    for (const record::Piece& piece : demo().roster.pieces) {
        const auto photos = store->notedPhotosOf(piece.id).value();
        ASSERT_EQ(photos.size(), 1U) << piece.benchName;
        EXPECT_EQ(photos.front().use.purpose, record::conditionPhoto);
        EXPECT_GE(photos.front().note.marks.size(), 2U);
        EXPECT_TRUE(store->photo(photos.front().use.photo).value());
    }
}

} // namespace
