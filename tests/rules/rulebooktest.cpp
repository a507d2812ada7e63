#include "core/rules/rulebook.h"

#include <gtest/gtest.h>

using namespace mend::rules;

namespace {

Procedure revisionOf(const std::string& key, int revision)
{
    Procedure procedure;
    procedure.key = key;
    procedure.revision = revision;
    procedure.hash = key + std::to_string(revision);
    procedure.stages.resize(3);
    procedure.stages[0].key = "first";
    procedure.stages[1].key = "second";
    procedure.stages[2].key = "third";
    return procedure;
}

} // namespace

TEST(RuleBook, FindsByKeyAndOldRevisionsByHash)
{
    RuleBook book;
    book.procedures = {revisionOf("seam", 2)};
    book.formerRevisions = {revisionOf("seam", 1)};
    ASSERT_NE(book.procedure("seam"), nullptr);
    EXPECT_EQ(book.procedure("seam")->revision, 2);
    EXPECT_EQ(book.revision("seam1")->revision, 1);
    EXPECT_EQ(book.revision("seam2")->revision, 2);
    EXPECT_EQ(book.revision("seam3"), nullptr);
    EXPECT_EQ(book.procedure("bowl"), nullptr);
    EXPECT_EQ(book.material("glue"), nullptr);
    EXPECT_EQ(book.law("epoxy"), nullptr);
    EXPECT_EQ(book.hazard("INC-01"), nullptr);
    EXPECT_EQ(book.state("flame"), nullptr);
    EXPECT_EQ(book.caution("gloves"), nullptr);
}

TEST(RuleBook, KnowsThePlaceOfAStageInItsProcedure)
{
    const Procedure procedure = revisionOf("seam", 1);
    EXPECT_EQ(procedure.indexOf("first"), 0U);
    EXPECT_EQ(procedure.indexOf("third"), 2U);
    EXPECT_FALSE(procedure.indexOf("fourth"));
    EXPECT_EQ(procedure.find("second"), &procedure.stages[1]);
    EXPECT_EQ(procedure.find("fourth"), nullptr);
}
