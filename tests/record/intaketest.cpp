#include "core/record/intake.h"

#include "tests/record/somepage.h"

#include <gmock/gmock.h>

using namespace mend;
using namespace mend::record;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

namespace {

IntakeSituation quietDay()
{
    IntakeSituation situation;
    situation.today = dayFrom("2027-03-01").value();
    return situation;
}

template <class Change> std::vector<IntakeFault> after(Change change)
{
    Intake page = test::somePage();
    change(page);
    return faultsOf(page, quietDay());
}

} // namespace

TEST(Intake, TakesATypicalPage) { EXPECT_THAT(faultsOf(test::somePage(), quietDay()), IsEmpty()); }

TEST(Intake, IsContentWithANameAndOneContact)
{
    Intake page;
    page.owner.name = "Ana";
    page.owner.contact = "555-0142";
    page.piece.benchName = "Blue jug";
    EXPECT_THAT(faultsOf(page, quietDay()), IsEmpty()) << "received; nothing is agreed yet";
}

TEST(Intake, NamesEverythingThatIsMissingAtOnce)
{
    Intake page;
    page.agreed = true;
    page.piece.fragments = 0;
    EXPECT_THAT(faultsOf(page, quietDay()),
                ElementsAre(IntakeFault::NoOwnerName, IntakeFault::NoContact, IntakeFault::NoBenchName,
                            IntakeFault::NoProcedure, IntakeFault::FragmentsOutOfRange, IntakeFault::NotSigned));
}

TEST(Intake, AsksForATellApart)
{
    IntakeSituation situation = quietDay();
    situation.namesInHand = {"Herons bowl"};
    Intake page = test::somePage();
    EXPECT_THAT(faultsOf(page, situation), ElementsAre(IntakeFault::BenchNameAlike));
    page.alikeNamesAccepted = true;
    EXPECT_THAT(faultsOf(page, situation), IsEmpty());
}

TEST(Intake, MakesTwoPeopleOneOnlyWhenToldF47)
{
    IntakeSituation situation = quietDay();
    situation.peopleAlike = {{CustomerId(3), SamePerson::Because::SameName}};
    Intake page = test::somePage();
    EXPECT_THAT(faultsOf(page, situation), ElementsAre(IntakeFault::PersonMayBeKnown));
    page.samePersonAnswered = true;
    EXPECT_THAT(faultsOf(page, situation), IsEmpty()) << "another person of that name";
    page.samePersonAnswered = false;
    page.owner.id = CustomerId(3);
    EXPECT_THAT(faultsOf(page, situation), IsEmpty()) << "the same one";
}

TEST(Intake, RefusesFiguresThatCannotBeF48F51)
{
    EXPECT_THAT(after([](Intake& page) { page.piece.fragments = 0; }), Contains(IntakeFault::FragmentsOutOfRange));
    EXPECT_THAT(after([](Intake& page) { page.piece.fragments = 1; }), IsEmpty());
    EXPECT_THAT(after([](Intake& page) { page.piece.fragments = 300; }), IsEmpty());
    EXPECT_THAT(after([](Intake& page) { page.piece.fragments = 1000; }), Contains(IntakeFault::FragmentsOutOfRange));
    EXPECT_THAT(after([](Intake& page) { page.piece.size.height = millimetres(0); }),
                Contains(IntakeFault::MeasureOutOfRange));
    EXPECT_THAT(after([](Intake& page) { page.piece.size.mass = grams(-1); }),
                Contains(IntakeFault::MeasureOutOfRange));
    EXPECT_THAT(after([](Intake& page) { page.piece.size.width = centimetres(1001); }),
                Contains(IntakeFault::MeasureOutOfRange));
    EXPECT_THAT(after([](Intake& page) {
                    page.visit.accessories = {{"lid", 0}};
                }),
                Contains(IntakeFault::AccessoryCountOutOfRange));
    EXPECT_THAT(after([](Intake& page) {
                    page.visit.accessories = {{"", 1}};
                }),
                Contains(IntakeFault::AccessoryUnnamed));
    EXPECT_THAT(after([](Intake& page) { page.visit.declaredValue = Money(-1, "EUR"); }),
                Contains(IntakeFault::ValueOutOfRange));
    EXPECT_THAT(after([](Intake& page) { page.deposit = Money(1, "euros"); }),
                Contains(IntakeFault::DepositOutOfRange));
}

TEST(Intake, WantsConsentWholeOrNotAtAll)
{
    EXPECT_THAT(after([](Intake& page) { page.visit.consent.how = Signature::None; }),
                ElementsAre(IntakeFault::NotSigned));
    EXPECT_THAT(after([](Intake& page) { page.visit.consent.signedOn.reset(); }),
                ElementsAre(IntakeFault::SignatureWithoutDay));
    EXPECT_THAT(after([](Intake& page) { std::swap(page.visit.consent.priceFrom, page.visit.consent.priceTo); }),
                ElementsAre(IntakeFault::PriceBandUpsideDown));
    EXPECT_THAT(after([](Intake& page) { page.visit.consent.priceTo = Money(90000, "JPY"); }),
                ElementsAre(IntakeFault::PriceBandUpsideDown));
    EXPECT_THAT(after([](Intake& page) { page.promised = dayFrom("2027-02-28"); }),
                ElementsAre(IntakeFault::PromisedInThePast));
}

TEST(Intake, RefusesAWholeFileInAFieldKindlyF46)
{
    EXPECT_THAT(after([](Intake& page) { page.visit.story = std::string(10'000, 'x'); }), IsEmpty());
    EXPECT_THAT(after([](Intake& page) { page.visit.story = std::string(1'000'000, 'x'); }),
                ElementsAre(IntakeFault::TextTooLong));
}

TEST(Intake, KeepsNoHiddenSignsF43F44)
{
    Intake page = test::somePage();
    page.owner.name = "  Ana\xe2\x80\xaeM\x07 ";
    page.visit.story = "one\ntwo\x01";
    page.owner.more.push_back({ContactKind::Other, " \x02 "});
    const Intake clean = cleaned(page);
    EXPECT_EQ(clean.owner.name, "AnaM");
    EXPECT_EQ(clean.visit.story, "one\ntwo");
    EXPECT_EQ(clean.owner.more.size(), page.owner.more.size() - 1);
}
