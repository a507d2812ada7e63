#include "app/papers/glyphs.h"

#include <QFontInfo>
#include <gtest/gtest.h>

using namespace mend::papers;

TEST(Glyphs, HasAFaceAtAll) { EXPECT_EQ(QFontInfo(paperFont(10)).family(), QStringLiteral("Lato")); }

TEST(Glyphs, DrawsTheAlphabetsOfOwnersNames)
{
    for (const char* name :
         {"Ren\u00e9e M\u00fcller", "\u0394\u03b1\u03bd\u03ac\u03b7", "\u0418\u0440\u0438\u043d\u0430",
          "\u0644\u064a\u0644\u0649", "\u05e0\u05d5\u05e2\u05d4", "Demirhano\u011flu", "10 \u20ac \u00b5 \u00bd"}) {
        const QString words = QString::fromUtf8(name);
        EXPECT_EQ(undrawable(words), QStringList()) << name;
        EXPECT_EQ(drawable(words), words);
    }
}

TEST(Glyphs, SaysByNumberWhatNoFaceHas)
{
    const QString rare = QString(QChar(0xE123));
    EXPECT_EQ(undrawable(QStringLiteral("a") + rare + QStringLiteral("b") + rare), QStringList{rare});
    EXPECT_EQ(drawable(QStringLiteral("a") + rare + QStringLiteral("b")), QStringLiteral("a[U+E123]b"));
}

TEST(Glyphs, MissesNoMarkOfDirection)
{
    EXPECT_EQ(undrawable(QString::fromUtf8("a\u2068b\u2069\u200d\tc\n")), QStringList());
}
