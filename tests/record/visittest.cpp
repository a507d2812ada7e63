#include "core/record/visit.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::record;

TEST(Visit, CountsWhatCameWithThePiece)
{
    Visit visit;
    EXPECT_EQ(accessoriesOf(visit), 0);
    visit.accessories = {{"lid", 1}, {"feet", 3}};
    EXPECT_EQ(accessoriesOf(visit), 4);
}

TEST(Visit, IsSignedOnlyWithADay)
{
    Consent consent;
    EXPECT_FALSE(consent.isSigned());
    consent.how = Signature::OnPaper;
    EXPECT_FALSE(consent.isSigned());
    consent.signedOn = dayFrom("2027-03-01");
    EXPECT_TRUE(consent.isSigned());
}
