#include "core/record/customer.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::record;
using Because = SamePerson::Because;

namespace {

Customer person(std::int64_t id, const char* name, const char* contact) { return {CustomerId(id), name, contact}; }

const std::vector<Customer> known{person(1, "Ana Müller", "+44 20 7946 0618"), person(2, "Jo", "jo@example.org"),
                                  person(3, "Danica Vrhovšek", "01632 960274"), person(4, "", "")};

} // namespace

TEST(Customer, TellsWaysToReachSomebodyApart)
{
    EXPECT_EQ(kindOfContact("ana@example.org"), ContactKind::Mail);
    EXPECT_EQ(kindOfContact("(212) 555-0142"), ContactKind::Phone);
    EXPECT_EQ(kindOfContact("٠٢٠ ٧٩٤٦ ٠٦١٨"), ContactKind::Phone);
    EXPECT_EQ(kindOfContact("Lark Lane 3\nUpper Mere"), ContactKind::Post);
    EXPECT_EQ(kindOfContact("comes by on Fridays"), ContactKind::Other);
}

TEST(Customer, TakesOnePhoneForOneWithAndWithoutItsCountry)
{
    EXPECT_EQ(phoneKey("+44 20 7946 0618"), phoneKey("020 7946 0618"));
    EXPECT_EQ(phoneKey("0044 20 79460618"), phoneKey("(020) 7946-0618"));
    EXPECT_EQ(phoneKey("1234"), "") << "too short to mean anybody";
}

TEST(Customer, AsksWhetherSomebodyWasHereBeforeF47)
{
    using List = std::vector<SamePerson>;
    EXPECT_EQ(alikePeople(person(0, "muller, ana", ""), known), (List{{CustomerId(1), Because::SameName}}));
    EXPECT_EQ(alikePeople(person(0, "A. Other", "020 7946 0618"), known),
              (List{{CustomerId(1), Because::SameContact}}));
    EXPECT_EQ(alikePeople(person(0, "Danica Vrhovsk", "new@example.org"), known),
              (List{{CustomerId(3), Because::NearlySameName}}));
    EXPECT_EQ(alikePeople(person(0, "Jo", ""), known), (List{{CustomerId(2), Because::SameName}}));
    EXPECT_TRUE(alikePeople(person(0, "Jon", ""), known).empty()) << "short names are only the same or not";
    EXPECT_TRUE(alikePeople(person(0, "Tadhg", "555-0189"), known).empty());
    EXPECT_TRUE(alikePeople(person(1, "Ana Müller", "+44 20 7946 0618"), known).empty()) << "the person themselves";
}

TEST(Customer, AsksTheSameOfManyAsOfOneAtATime)
{
    const KnownPeople here(known);
    for (const Customer& told : {person(0, "muller, ana", "jo@example.org"), person(2, "Jo", "jo@example.org"),
                                 person(0, "Danica Vrhovsk", "+44 1632 960274"), person(0, "", "")}) {
        EXPECT_EQ(here.alike(told), alikePeople(told, known)) << told.name;
    }
    EXPECT_EQ(here.alike(person(0, "muller, ana", "jo@example.org")),
              (std::vector<SamePerson>{{CustomerId(2), Because::SameContact}, {CustomerId(1), Because::SameName}}));
    EXPECT_TRUE(here.alike(person(0, "", "")).empty()) << "somebody erased is nobody";
}
