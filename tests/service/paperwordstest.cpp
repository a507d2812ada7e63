#include "core/service/paperwords.h"

#include <gtest/gtest.h>

using namespace mend;
using mend::service::PaperWords;

namespace {

const std::map<std::string, exchange::PaperText> shipped = {{"care.food", {"x", {"Not food-safe.", "Really not."}}}};

} // namespace

TEST(PaperWords, SaysTheShippedTextWhereTheStudioHasNone)
{
    const PaperWords words(shipped, {});
    EXPECT_EQ(words.lines("care.food"), (QStringList{QStringLiteral("Not food-safe."), QStringLiteral("Really not.")}));
    EXPECT_FALSE(words.isOwn("care.food"));
    EXPECT_TRUE(words.lines("care.unheardOf").isEmpty());
}

TEST(PaperWords, SaysTheStudiosOwn)
{
    const PaperWords words(shipped, {{PaperWords::settingKey("care.food"), "For looking at."}});
    EXPECT_TRUE(words.isOwn("care.food"));
    EXPECT_EQ(words.lines("care.food"), QStringList{QStringLiteral("For looking at.")});
}

TEST(PaperWords, GivesTheShippedTextBack)
{
    const PaperWords words(shipped, {{PaperWords::settingKey("care.food"), "For looking at."}});
    EXPECT_EQ(words.settingValue("care.food", QStringLiteral(" Not food-safe. \n\nReally not.")), "");
    EXPECT_EQ(words.settingValue("care.food", QStringLiteral("  ")), "");
    EXPECT_EQ(words.settingValue("care.food", QStringLiteral("Mine.\n Own.")), "Mine.\nOwn.");
}
