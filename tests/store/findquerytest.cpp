#include "core/store/findquery.h"

#include "core/record/piecenumber.h"
#include "core/store/store.h"
#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;
using bench::What;

namespace {

/// A small house with people and pieces that can be mistaken for each other.
struct House {
    House() : store(openOrDie(scratch / "bench.mend"))
    {
        furnish(*store, 0);
        add("Ana Müller", "+44 20 7946 0618", "Heron bowl", "small blue bowl with a heron");
        add("Ana Miller", "020 7946 0999", "Heron plate", "white plate, blue heron on the rim");
        add("Danica Vrhovšek", "01632 960274", "Celadon dish", "green dish with lotus");
        add("Δανάη Μελισσινού", "danae@example.org", "Oil jar", "brown oil jar, two handles");
        add("Tadhg O'Shea", "(503) 555-0189", "Tea bowl 漆", "black tea bowl, silver line; 金継ぎ");
        add("Tadhg O'Shea", "(503) 555-0144", "Sugar box", "white box");
    }
    PieceId add(const char* owner, const char* contact, const char* benchName, const char* looks)
    {
        record::Piece piece;
        piece.number = record::pieceNumber(2026, ++running).value();
        piece.benchName = benchName;
        piece.looks = looks;
        piece.procedure = "goldLacquerSeam";
        return store->takeIn({CustomerId(), owner, contact}, piece, {}).takeValue();
    }
    std::vector<std::string> find(const std::string& typed) const
    {
        std::vector<std::string> names;
        for (const FoundPiece& found : store->find(typed).value().pieces) {
            names.push_back(found.piece.benchName);
        }
        return names;
    }
    std::string first(const std::string& typed) const
    {
        const auto names = find(typed);
        return names.empty() ? "" : names.front();
    }
    std::vector<std::string> people(const std::string& typed) const
    {
        std::vector<std::string> names;
        for (const FoundPerson& found : store->findPeople(typed).value()) {
            names.push_back(found.person.name);
        }
        return names;
    }
    Scratch scratch;
    std::unique_ptr<Store> store;
    int running = 0;
};

} // namespace

TEST(Find, TakesNumbersNamesPhonesAndLooksInOneField)
{
    const House house;
    EXPECT_EQ(house.first("260001"), "Heron bowl") << "a number, half typed";
    EXPECT_EQ(house.first(record::shownPieceNumber(record::pieceNumber(2026, 3).value())), "Celadon dish");
    EXPECT_EQ(house.first("vrhovsek"), "Celadon dish");
    EXPECT_EQ(house.first("blue bowl heron"), "Heron bowl");
    EXPECT_EQ(house.first("0618"), "Heron bowl");
    EXPECT_EQ(house.first("danae"), "Oil jar") << "her mail address";
}

TEST(Find, ForgivesASlipAccentsOrderAndCase)
{
    const House house;
    EXPECT_EQ(house.first("bleu bowl herron"), "Heron bowl");
    EXPECT_EQ(house.first("HERON plat"), "Heron plate");
    EXPECT_EQ(house.first("vrhovšek danica"), "Celadon dish");
    EXPECT_EQ(house.first("Vrhovshek"), "Celadon dish");
    EXPECT_EQ(house.first("μελισσινου"), "Oil jar");
    EXPECT_EQ(house.first("oshea tea"), "Tea bowl 漆");
    EXPECT_EQ(house.first("O’Shea box"), "Sugar box");
    EXPECT_EQ(house.first("lotos dish"), "Celadon dish");
    EXPECT_EQ(house.first("金継ぎ"), "Tea bowl 漆");
    EXPECT_EQ(house.first("mu\xcc\x88ller"), "Heron bowl") << "the other encoding of the same letter";
}

TEST(Find, KnowsAPhoneWithOrWithoutItsCountry)
{
    const House house;
    for (const char* const typed :
         {"020 7946 0618", "+44 20 7946 0618", "0044 20 79460618", "7946 0618", "(020) 7946-06"}) {
        EXPECT_EQ(house.first(typed), "Heron bowl") << typed;
    }
    EXPECT_EQ(house.first("+1 503 555 0189"), "Tea bowl 漆") << "kept without its country";
    EXPECT_TRUE(house.find("020 7946 0000").empty());
}

TEST(Find, NamesTheNumberThatWasMeantWhenOneDigitIsWrong)
{
    const House house;
    const std::string number = record::pieceNumber(2026, 3).value();
    for (std::size_t at = 2; at < number.size(); ++at) {
        std::string typed = number;
        typed[at] = typed[at] == '7' ? '8' : '7';
        const auto names = house.find(typed);
        EXPECT_NE(std::ranges::find(names, "Celadon dish"), names.end()) << typed;
    }
    std::string swapped = number;
    std::swap(swapped[1], swapped[2]);
    EXPECT_EQ(house.first(swapped), "Celadon dish");
}

TEST(Find, PutsThePieceInTheHouseBeforeOneThatIsGone)
{
    const House house;
    Event gone = someEvent(1, What::HandedOver, PieceId(5));
    ASSERT_TRUE(house.store->append(std::vector{gone}).isOk());
    EXPECT_EQ(house.find("oshea"), (std::vector<std::string>{"Sugar box", "Tea bowl 漆"}));
    EXPECT_FALSE(house.store->find("oshea").value().pieces.back().inHand);
}

TEST(Find, TellsTwoPeopleOfOneNameApartF47)
{
    const House house;
    EXPECT_EQ(house.people("tadhg o'shea").size(), 2U);
    EXPECT_EQ(house.people("a").size(), 2U) << "one letter finds those whose words begin so";
    EXPECT_EQ(house.people("ana m").size(), 2U);
    EXPECT_EQ(house.people("   ").size(), 0U);
    EXPECT_EQ(house.find("").size(), 0U);
    EXPECT_EQ(house.people("heron").size(), 0U) << "a piece is nobody";
}

TEST(Find, TakesEverySignAsTextF42)
{
    const House house;
    for (const char* const typed :
         {"'; DROP TABLE piece; --", "%_*\"", "heron AND NOT bowl OR NEAR(x)", "\"heron", "he*", "col:heron", "^heron",
          "?1", "{}", "\\", "'", "a'b\"c", "\x01\x02", "\xff\xfe"}) {
        const auto found = house.store->find(typed);
        ASSERT_TRUE(found.isOk()) << typed << ": " << found.fault().detail;
    }
    EXPECT_EQ(house.first("\"heron\" bowl;"), "Heron bowl");
    EXPECT_EQ(house.first("he*"), house.first("he"));
    EXPECT_TRUE(house.find("%_*\"").empty());
    EXPECT_EQ(house.store->pieces().value().size(), 6U);
}

TEST(Find, AnswersAnEndlessQuestionF46)
{
    const House house;
    std::string typed;
    for (int i = 0; i < 100'000; ++i) {
        typed += "heron ";
    }
    EXPECT_TRUE(house.store->find(typed).isOk());
    EXPECT_TRUE(house.store->find(std::string(1'000'000, '7')).isOk());
}

TEST(Find, FollowsEveryChangeOfARow)
{
    const House house;
    record::Customer ana = house.store->customers().value().front();
    ana.name = "Ana Kestemont";
    ana.contact = "07700 900461";
    ASSERT_TRUE(house.store->put(ana).isOk());
    EXPECT_EQ(house.first("kestemont"), "Heron bowl") << "the owner's new name finds the piece";
    EXPECT_TRUE(house.find("0618").empty());
    EXPECT_EQ(house.first("900461"), "Heron bowl");
    record::Piece bowl = house.store->pieces().value().front();
    bowl.looks = "small red bowl with a carp";
    ASSERT_TRUE(house.store->put(bowl).isOk());
    EXPECT_EQ(house.first("carp"), "Heron bowl");
    EXPECT_EQ(house.first("blue heron"), "Heron plate");
    EXPECT_EQ(house.store->database().number("SELECT count(*) FROM find_word WHERE uses < 1"), 0);
    EXPECT_EQ(house.store->database().number("SELECT count(*) FROM find_post p LEFT JOIN find_word w ON w.id = p.word "
                                             "WHERE w.id IS NULL"),
              0);
    EXPECT_EQ(house.store->database().number("SELECT count(*) FROM find_word w WHERE w.uses <> "
                                             "(SELECT count(*) FROM find_post p WHERE p.word = w.id)"),
              0);
}
