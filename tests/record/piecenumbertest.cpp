#include "core/record/piecenumber.h"

#include <gtest/gtest.h>

#include <random>

using namespace mend::record;

TEST(PieceNumber, HasThePublishedCheckCharacters)
{
    struct Row {
        const char* digits;
        char check;
        const char* source;
    };
    const Row rows[] = {
        {"0794", '0', "ISO/IEC 7064 MOD 11-2 example in the documentation of a public check-digit library"},
        {"079", 'X', "the same"},
        {"000000021825009", '7', "ISNI / ORCID style example of MOD 11-2"},
        {"000000012146438", 'X', "the same"},
        {"260417", '5', "recomputed by hand"},
        {"260418", '3', "recomputed by hand"},
        {"000000", '1', "recomputed by hand"},
        {"999999", '0', "recomputed by hand"},
    };
    for (const Row& row : rows) {
        EXPECT_EQ(checkCharacter(row.digits), row.check) << row.digits << ": " << row.source;
    }
    EXPECT_FALSE(checkCharacter("").has_value());
    EXPECT_FALSE(checkCharacter("12a4").has_value());
}

TEST(PieceNumber, IsReadAsPeopleTypeIt)
{
    EXPECT_EQ(readPieceNumber("260417-5"), "2604175");
    EXPECT_EQ(readPieceNumber(" 26O4l7 5"), "2604175");
    EXPECT_FALSE(readPieceNumber("260417-6").has_value());
    EXPECT_FALSE(readPieceNumber("26041").has_value());
    EXPECT_EQ(pieceNumber(2026, 417), "2604175");
    EXPECT_FALSE(pieceNumber(2026, 10000).has_value());
    EXPECT_EQ(shownPieceNumber("2604175"), "260417-5");
}

TEST(PieceNumber, NoticesEverySingleSwapJumpAndTwinError)
{
    std::mt19937 random(20261125); // fixed seed
    std::uniform_int_distribution<int> digit(0, 9);
    for (int round = 0; round < 10000; ++round) {
        std::string body;
        for (int i = 0; i < 6; ++i) {
            body += static_cast<char>('0' + digit(random));
        }
        const std::string good = body + *checkCharacter(body);
        const auto mustBeNoticed = [&](const std::string& bad) {
            if (bad != good) {
                ASSERT_FALSE(readPieceNumber(bad).has_value()) << good << " as " << bad;
            }
        };
        for (std::size_t at = 0; at < good.size(); ++at) {
            for (char c = '0'; c <= '9'; ++c) {
                std::string bad = good;
                bad[at] = c;
                mustBeNoticed(bad);
                if (at + 1 < 6 && good[at] == good[at + 1]) {
                    bad[at + 1] = c;
                    mustBeNoticed(bad);
                }
            }
            for (const std::size_t step : {std::size_t{1}, std::size_t{2}}) {
                if (at + step < good.size()) {
                    std::string bad = good;
                    std::swap(bad[at], bad[at + step]);
                    mustBeNoticed(bad);
                }
            }
        }
    }
}
