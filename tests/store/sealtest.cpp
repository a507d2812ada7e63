#include "core/store/seal.h"

#include "tests/store/benchmaker.h"

#include <gtest/gtest.h>

#include <functional>
#include <set>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;

TEST(Seal, HashesAsPublished)
{
    // NIST's example values for SHA-256 (FIPS 180-4): one block, and two.
    EXPECT_EQ(toHex(sha256("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(toHex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

TEST(Seal, ReadsHexadecimalBack)
{
    EXPECT_EQ(fromHex(toHex(sha256("abc"))), sha256("abc"));
    for (const char* const bad : {"abc", "0g", "0G", "AB", " 0"}) {
        EXPECT_FALSE(fromHex(bad).has_value()) << bad;
    }
}

TEST(Seal, TellsRowsApartThatReadTheSameWithoutSeams)
{
    EXPECT_NE(Canon("a").add("bc").add("d").text(), Canon("a").add("b").add("cd").text());
    EXPECT_NE(Canon("a").add("").text(), Canon("a").add(std::optional<std::int64_t>()).text());
    EXPECT_NE(Canon("a").add("0").add("").text(), Canon("a").add("").add("0").text());
    EXPECT_NE(Canon("a").add("1:b,").text(), Canon("a").add("b").text());
}

TEST(Seal, CoversEveryFieldOfAnEventButItsNote)
{
    using namespace std::chrono_literals;
    const Event plain = someEvent(1, bench::What::Done);
    std::set<std::string> texts{canonical(plain)};
    const auto differs = [&](const std::function<void(Event&)>& change) {
        Event event = plain;
        change(event);
        return texts.insert(canonical(event)).second;
    };
    EXPECT_TRUE(differs([](Event& event) { event.id = EventId(2); }));
    EXPECT_TRUE(differs([](Event& event) { event.what = bench::What::Begun; }));
    EXPECT_TRUE(differs([](Event& event) { event.piece = PieceId(2); }));
    EXPECT_TRUE(differs([](Event& event) { event.stage.stage = "burnish"; }));
    EXPECT_TRUE(differs([](Event& event) { event.stage.repetition = 2; }));
    EXPECT_TRUE(differs([](Event& event) { event.person = PersonId(2); }));
    EXPECT_TRUE(differs([](Event& event) { event.place = PlaceId(2); }));
    EXPECT_TRUE(differs([](Event& event) { event.mix = MixId(2); }));
    EXPECT_TRUE(differs([](Event& event) { event.rules = "r"; }));
    EXPECT_TRUE(differs([](Event& event) { event.happened += 1ms; }));
    EXPECT_TRUE(differs([](Event& event) { event.recorded += 1ms; }));
    EXPECT_TRUE(differs([](Event& event) { event.boot.bootId = "another"; }));
    EXPECT_TRUE(differs([](Event& event) { event.boot.sinceBoot += 1ns; }));
    EXPECT_TRUE(differs([](Event& event) { event.target = EventId(7); }));
    EXPECT_TRUE(differs([](Event& event) { event.temperature = Temperature::fromCelsius(0); }));
    EXPECT_TRUE(differs([](Event& event) { event.humidity = percentHumidity(0); }));
    EXPECT_TRUE(differs([](Event& event) { event.amount = 0; }));
    EXPECT_TRUE(differs([](Event& event) { event.from = event.happened; }));
    EXPECT_TRUE(differs([](Event& event) { event.until = event.happened; }));
    EXPECT_TRUE(differs([](Event& event) { event.word = "w"; }));
    EXPECT_FALSE(differs([](Event& event) { event.note = "forgotten one day"; }));
}

TEST(Seal, ChainsARowToTheOneBeforeAndToItsFile)
{
    const Event event = someEvent(1, bench::What::Done);
    EXPECT_NE(linkOf(firstLink("one file"), event), linkOf(firstLink("another file"), event));
    EXPECT_EQ(linkOf(firstLink("one file"), event).size(), 32U);
}
