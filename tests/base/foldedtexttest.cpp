#include "core/base/foldedtext.h"

#include <gtest/gtest.h>

#include <array>
#include <clocale>

using namespace mend;

TEST(FoldedText, BringsOneNameInAnyWritingToOneForm)
{
    EXPECT_EQ(foldedText("Müller-ÅNGSTRÖM"), "muller-angstrom");
    EXPECT_EQ(foldedText("Mu\xcc\x88ller"), foldedText("Müller")) << "an accent that follows its letter";
    EXPECT_EQ(foldedText("Straße STRAẞE"), "strasse strasse");
    EXPECT_EQ(foldedText("Łódź Øster Đorđe Þór Æbelø"), "lodz oster dorde thor aebelo");
    EXPECT_EQ(foldedText("Nguyễn Đặng Ơn Ư"), "nguyen dang on u");
    EXPECT_EQ(foldedText("Δανάη ΜΕΛΙΣΣΙΝΟΥ λόγος"), "δαναη μελισσινου λογοσ");
    EXPECT_EQ(foldedText("Йосиф Ёлка Ґ"), "иосиф елка Ґ");
    EXPECT_EQ(foldedText("漆 金継ぎ"), "漆 金継ぎ");
    EXPECT_EQ(foldedText("\xff\xfe"
                         "abc"),
              "abc")
        << "bytes that are no text";
}

// F31: the dotted and dotless i of Turkish, and digits of other scripts, whatever the locale.
TEST(FoldedText, KnowsTheTurkishIWhateverTheLocaleF31)
{
    for (const char* const locale : {"C", "tr_TR.UTF-8", "de_DE.UTF-8"}) {
        std::setlocale(LC_ALL, locale);
        EXPECT_EQ(foldedText("DİYARBAKIR ışık IŞIK"), "diyarbakir isik isik") << locale;
        EXPECT_EQ(digitsOf("٠٢٠ ۷۹۴۶ ०६"), "020794606") << locale;
    }
    std::setlocale(LC_ALL, "C");
}

TEST(FoldedText, TakesWordsApart)
{
    using Words = std::vector<std::string>;
    EXPECT_EQ(foldedWords("  O'Shea, Tadhg Ó Muirgheasa!"), (Words{"oshea", "tadhg", "o", "muirgheasa"}));
    EXPECT_EQ(foldedWords("blue-and-white bowl (heron)"), (Words{"blue", "and", "white", "bowl", "heron"}));
    EXPECT_EQ(foldedWords("金継ぎ bowl"), (Words{"金", "継", "ぎ", "bowl"})) << "no spaces between its words";
    EXPECT_EQ(foldedWords("—…«»"), Words{});
}

TEST(FoldedText, CountsSlipsOfTheFinger)
{
    EXPECT_EQ(lettersApart("heron", "heron", 2), 0);
    EXPECT_EQ(lettersApart("herron", "heron", 2), 1);
    EXPECT_EQ(lettersApart("hron", "heron", 2), 1);
    EXPECT_EQ(lettersApart("haron", "heron", 2), 1);
    EXPECT_EQ(lettersApart("ehron", "heron", 2), 1) << "two neighbours swapped";
    EXPECT_EQ(lettersApart("bleu", "blue", 2), 1);
    EXPECT_EQ(lettersApart("heron", "crane", 2), 3) << "more than was asked for";
    EXPECT_EQ(lettersApart("δαναη", "δανάη", 2), 1) << "characters, not bytes";
}

TEST(FoldedText, TakesControlCharactersOutF43)
{
    EXPECT_EQ(cleanText(std::string("An\0na\x07 \x1b[31mVane\x7f", 17)), "Anna [31mVane");
    EXPECT_EQ(cleanText("one\ntwo\tthree\r\n", false), "onetwothree");
    EXPECT_EQ(cleanText("one\ntwo\tthree\r\n", true), "one\ntwo\tthree");
    EXPECT_EQ(cleanText("  \xc2\xa0 Anna \xe3\x80\x80"), "Anna");
}

TEST(FoldedText, LetsNoMarkReorderItsNeighboursF44)
{
    EXPECT_EQ(cleanText("Anna\xe2\x80\xae"
                        "enaV\xe2\x81\xa6x\xe2\x81\xa9"),
              "AnnaenaVx");
    EXPECT_EQ(cleanText("zero\xe2\x80\x8bwidth\xef\xbb\xbf"), "zerowidth");
    EXPECT_EQ(cleanText("ن\xe2\x80\x8cن\xe2\x80\x8d"), "ن\xe2\x80\x8cن\xe2\x80\x8d") << "the joiners are spelling";
    std::string zalgo = "Z";
    for (int i = 0; i < 50; ++i) {
        zalgo += "\xcc\x81";
    }
    EXPECT_EQ(charactersOf(cleanText(zalgo)).size(), 5U);
}

TEST(FoldedText, KeepsPicturesWholeAndCutsBetweenLettersF45)
{
    const std::string family = "👩\xe2\x80\x8d👩\xe2\x80\x8d👧";
    EXPECT_EQ(cleanText(family), family);
    EXPECT_EQ(shortened("ab" + family, 4), "ab") << "never within a joined picture";
    EXPECT_EQ(shortened("nu\xcc\x88r", 2), "n") << "never between a letter and its accent";
    EXPECT_EQ(shortened("漆金継", 2), "漆金");
    EXPECT_EQ(shortened("short", 10), "short");
    EXPECT_EQ(charactersOf("\xed\xa0\x80").front(), char32_t{0xFFFD}) << "half of a surrogate pair is no letter";
}
