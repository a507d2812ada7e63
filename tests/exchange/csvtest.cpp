#include "core/exchange/csv.h"

#include "core/exchange/flattable.h"

#include <gtest/gtest.h>

#include <clocale>
#include <random>
#include <sstream>

using namespace mend::exchange;
using Row = std::vector<std::string>;
using Rows = std::vector<Row>;

namespace {

std::string written(const Rows& rows)
{
    std::ostringstream out;
    CsvWriter csv(out);
    for (const Row& row : rows) {
        for (const std::string& field : row) {
            csv.text(field);
        }
        csv.endRow();
    }
    return out.str();
}

struct Reading {
    Rows rows;
    std::vector<CsvFault> faults;
};

Reading readBack(const std::string& text, const CsvLimits& limits = {})
{
    std::istringstream in(text);
    Reading reading;
    reading.faults = readCsv(
        in, [&](const Row& row, std::int64_t) { reading.rows.push_back(row); }, limits);
    return reading;
}

} // namespace

// RFC 4180, section 2.
TEST(Csv, IsWrittenAsTheStandardSays)
{
    EXPECT_EQ(written({{"a", "b,c", "d\"e", "f\ng", ""}}), "a,\"b,c\",\"d\"\"e\",\"f\ng\",\"\"\r\n");
    std::ostringstream out;
    CsvWriter csv(out, true);
    csv.number(-5);
    csv.endRow();
    EXPECT_EQ(out.str(), "\xef\xbb\xbf-5\r\n") << "a number stays a number";
}

TEST(Csv, RunsNoFormulaF41)
{
    const Rows risky{{"=1+1", "+44 20", "-5", "@SUM(A1)", "\tx", "\rx", "'quoted", "''=1", "plain"}};
    const std::string text = written(risky);
    for (const char* const begin : {"'=1+1", "'+44", "'-5", "'@SUM"}) {
        EXPECT_NE(text.find(begin), std::string::npos) << begin;
    }
    EXPECT_EQ(readBack(text).rows, risky) << "taken away again by our own import";
    EXPECT_EQ(written({{std::string("\0x", 2)}}).front(), '\'');
}

TEST(Csv, GivesBackWhateverWasWrittenInAnyLocaleF31)
{
    std::mt19937 random(3);
    const auto upTo = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
    constexpr std::string_view letters = "ab,\"'=+-@\t\n\r ;1";
    for (const char* const locale : {"C", "de_DE.UTF-8", "tr_TR.UTF-8"}) {
        std::setlocale(LC_ALL, locale);
        for (int i = 0; i < 500; ++i) {
            const int width = 1 + upTo(4);
            Rows rows;
            for (int r = 0; r <= upTo(3); ++r) {
                Row row;
                for (int c = 0; c < width; ++c) {
                    std::string field = upTo(5) == 0 ? "漆" : "";
                    for (int l = upTo(6); l > 0; --l) {
                        field += letters[static_cast<std::size_t>(upTo(static_cast<int>(letters.size()) - 1))];
                    }
                    row.push_back(field);
                }
                rows.push_back(row);
            }
            const Reading reading = readBack(written(rows));
            ASSERT_TRUE(reading.faults.empty()) << reading.faults.front().text;
            ASSERT_EQ(reading.rows, rows) << written(rows);
        }
    }
    std::setlocale(LC_ALL, "C");
}

TEST(Csv, TakesAnyLineEndAMarkAndEmptyLinesF35)
{
    const Rows expected{{"a", "b"}, {"1", "2"}, {"3", "4"}};
    EXPECT_EQ(readBack("a,b\n1,2\r\n3,4\r").rows, expected);
    EXPECT_EQ(readBack("\xef\xbb\xbf"
                       "a,b\r\n\r\n1,2\n\n3,4")
                  .rows,
              expected);
    EXPECT_EQ(readBack("").rows, Rows{});
    EXPECT_EQ(readBack("\"a\",\"b\"\n\"1\",2\n3,\"4\"").rows, expected);
}

TEST(Csv, NamesTheRowThatIsBrokenF35)
{
    EXPECT_EQ(readBack("a,b\n1\n").faults, (std::vector<CsvFault>{{2, "it has 1 fields instead of 2"}}));
    EXPECT_EQ(readBack("a,b\n1,\"2\n3,4\n").faults, (std::vector<CsvFault>{{2, "a quote is never closed"}}));
    EXPECT_EQ(readBack(std::string("a,b\n1,\0\n", 8)).faults, (std::vector<CsvFault>{{2, "a NUL stands in it"}}));
    EXPECT_EQ(readBack("a\n\xff\xfe\n").faults, (std::vector<CsvFault>{{2, "it is not written in UTF-8"}}));
    EXPECT_EQ(readBack(std::string("\xff\xfe"
                                   "a\0,\0b\0",
                                   8))
                  .faults.front()
                  .row,
              0)
        << "UTF-16";
    EXPECT_EQ(readBack(std::string(2'000'000, ',')).faults.front().text, "it has too many columns");
    EXPECT_EQ(readBack(std::string(2'000'000, 'x')).faults.front().text, "a field is too long");
    CsvLimits few;
    few.rows = 3;
    EXPECT_EQ(readBack("1\n2\n3\n4\n5\n", few).faults,
              (std::vector<CsvFault>{{4, "more rows than can be taken at once"}}));
}

TEST(FlatTable, HasAColumnForEveryPartThatAnyRowHas)
{
    using mend::record::Sheet;
    Sheet one;
    one.members.emplace_back("id", Sheet::ofNumber(1));
    Sheet list = Sheet::list();
    list.items = {Sheet::ofText("lid"), Sheet::ofText("=box")};
    one.members.emplace_back("with", list);
    Sheet two;
    two.members.emplace_back("id", Sheet::ofNumber(-2));
    Sheet inner;
    inner.members.emplace_back("signed", Sheet::ofFlag(true));
    two.members.emplace_back("consent", inner);
    std::ostringstream out;
    writeFlatTable(out, std::vector{one, two});
    EXPECT_EQ(out.str(), "id,with.1,with.2,consent.signed\r\n1,lid,'=box,\"\"\r\n-2,\"\",\"\",yes\r\n");
}
