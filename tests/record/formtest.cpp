#include "core/record/form.h"

#include "core/record/fields.h"
#include "tests/record/somepage.h"

#include <gmock/gmock.h>

using namespace mend;
using namespace mend::record;
using testing::ElementsAre;
using testing::HasSubstr;

namespace {

/// Reads a page out of a text and gives what was wrong with it.
std::vector<std::string> wrongIn(const std::string& text)
{
    std::vector<std::string> faults;
    EXPECT_FALSE(fromSheet<Intake>(sheetFromText(text).value(), &faults)) << text;
    return faults;
}

} // namespace

TEST(Form, GivesBackEveryPartOfAPage)
{
    const Intake page = test::somePage();
    const std::string text = sheetText(sheetOf(page));
    EXPECT_EQ(fromSheet<Intake>(sheetFromText(text).value()), page);
    EXPECT_EQ(fromSheet<Intake>(sheetFromText(sheetText(sheetOf(Intake{}))).value()), Intake{});
}

TEST(Form, LeavesOutWhatIsAsUsual)
{
    EXPECT_EQ(sheetText(sheetOf(Consent{})), "{}") << "the ticks start as most jobs have them";
    Consent consent;
    consent.reversible = false;
    EXPECT_EQ(sheetText(sheetOf(consent)), R"({"reversible":false})");
}

TEST(Form, NamesEverythingWrongByItsPath)
{
    EXPECT_THAT(wrongIn(R"({"owner":{"id":"x","nane":"Ana"},"promised":"2027-02-29","agreed":1})"),
                ElementsAre(HasSubstr("owner/id: is not a whole number"), HasSubstr("owner/nane: is not known"),
                            HasSubstr("promised: \"2027-02-29\" is no day"), HasSubstr("agreed: is of another kind")));
    EXPECT_THAT(wrongIn(R"({"piece":{"body":"glass"},"deposit":{"minor":5,"currency":"euro"}})"),
                ElementsAre(HasSubstr("piece/body"), HasSubstr("deposit: is not an amount")));
    EXPECT_THAT(wrongIn(R"({"visit":{"accessories":[{"what":"lid"},7]}})"),
                ElementsAre(HasSubstr("visit/accessories/1/")));
    EXPECT_THAT(wrongIn(R"({"agreed":true,"agreed":true})"), ElementsAre(HasSubstr("agreed: is given twice")));
    EXPECT_THAT(wrongIn(R"({"piece":{"fragments":99999999999}})"), ElementsAre(HasSubstr("too large")));
}
