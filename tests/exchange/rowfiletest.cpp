#include "core/exchange/rowfile.h"

#include "core/exchange/eventfields.h"

#include <gtest/gtest.h>

#include <sstream>

using namespace mend;
using namespace mend::exchange;
using record::Sheet;

namespace {

FileRow row(const char* kind, const std::string& text)
{
    FileRow made{kind, {}};
    made.parts.members.emplace_back("text", Sheet::ofText(text));
    return made;
}

std::string fileOf(const std::vector<FileRow>& rows)
{
    std::ostringstream out;
    RowFileWriter writer(out, wholeExport);
    for (const FileRow& each : rows) {
        writer.write(each);
    }
    writer.end();
    return out.str();
}

struct Read {
    std::vector<FileRow> rows;
    std::optional<Fault> fault;
};

Read readFile(const std::string& text, const char* format = wholeExport)
{
    std::istringstream in(text);
    RowFileReader reader(in, format);
    Read read;
    for (;;) {
        auto next = reader.next();
        if (!next) {
            read.fault = next.fault();
            return read;
        }
        if (!next.value()) {
            return read;
        }
        read.rows.push_back(*next.value());
    }
}

std::string whyNot(const std::string& text)
{
    const Read read = readFile(text);
    return read.fault ? read.fault->detail : "taken";
}

const std::string good = fileOf({row("piece", "a"), row("visit", "b \"\n漆")});

std::string with(const std::string& from, const std::string& to)
{
    std::string changed = good;
    changed.replace(changed.find(from), from.size(), to);
    return changed;
}

} // namespace

TEST(RowFile, ReadsBackWhatItWrites)
{
    const Read read = readFile(good);
    EXPECT_FALSE(read.fault) << read.fault->detail;
    EXPECT_EQ(fileOf(read.rows), good);
    EXPECT_TRUE(readFile(fileOf({})).rows.empty());
    EXPECT_EQ(good.substr(0, 49), "[\n{\"format\":\"mendbench-export\",\"version\":1},\n{\"pi");
}

TEST(RowFile, RefusesWithItsPlaceF36)
{
    EXPECT_EQ(whyNot(with("\"a\"", "")).substr(0, 14), "line 3, column");
    EXPECT_NE(whyNot(with("\"text\":\"a\"", "\"text\":\"a\",\"text\":\"b\"")).find("given twice"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", "1e400")).find("line 3, column"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", "9223372036854775808")).find("line 3, column"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", "1.5")).find("not whole"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", "null")).find("nothing stands here"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", "\"\\ud800\"")).find("line 3, column"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", std::string(100'000, '['))).find("line 3, column"), std::string::npos);
    EXPECT_NE(whyNot(with("\"a\"", "\"" + std::string(5'000'000, 'x') + "\"")).find("longer than 4 MB"),
              std::string::npos);
    EXPECT_NE(whyNot(with("{\"piece\":", "{\"other\":1,\"piece\":")).find("one name"), std::string::npos);
}

TEST(RowFile, RefusesWhatEndsTooEarlyOrHoldsOtherRows)
{
    for (std::size_t length = 0; length + 2 < good.size(); ++length) {
        EXPECT_TRUE(readFile(good.substr(0, length)).fault) << length;
    }
    EXPECT_NE(whyNot(with("{\"piece\":{\"text\":\"a\"}},\n", "")).find("rows are missing"), std::string::npos);
    EXPECT_NE(whyNot(with("\"rows\":2", "\"rows\":3")).find("rows are missing"), std::string::npos);
    EXPECT_EQ(readFile(good, personExport).fault->kind, FaultKind::Foreign);
    EXPECT_EQ(readFile(with("\"version\":1", "\"version\":2")).fault->kind, FaultKind::Newer);
    EXPECT_EQ(readFile("{}").fault->kind, FaultKind::Foreign);
    EXPECT_TRUE(readFile("").fault);
}

TEST(RowFile, CarriesEveryPartOfAnEvent)
{
    bench::Event event;
    event.id = EventId(7);
    event.what = bench::What::GapAnswered;
    event.piece = PieceId(2);
    event.stage = {"wipeBack", 3};
    event.person = PersonId(1);
    event.place = PlaceId(2);
    event.mix = MixId(5);
    event.rules = "hash";
    event.happened = *fromRfc3339("2027-03-01T09:30:00.001Z");
    event.recorded = *fromRfc3339("2027-03-01T09:30:00.250Z");
    event.boot = {"boot", std::chrono::nanoseconds(9'007'199'254'740'993)};
    event.target = EventId(3);
    event.temperature = Temperature::fromCentidegrees(-50);
    event.humidity = percentHumidity(0);
    event.amount = -9'223'372'036'854'775'807;
    event.from = event.happened;
    event.until = event.recorded;
    event.word = "w";
    event.note = "n\n漆";
    const std::string text = record::sheetText(record::sheetOf(event));
    EXPECT_EQ(record::fromSheet<bench::Event>(record::sheetFromText(text).value()), event);
    std::vector<std::string> faults;
    EXPECT_FALSE(record::fromSheet<bench::Event>(record::sheetFromText("{}").value(), &faults));
    EXPECT_EQ(faults.front(), "happened: is missing");
}
