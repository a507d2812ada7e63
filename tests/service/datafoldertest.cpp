#include "core/service/datafolder.h"

#include "tests/support/scratch.h"

#include <gtest/gtest.h>

namespace mend::service {

namespace fs = std::filesystem;

TEST(DataFolder, IsTheSourceTreeForAProgramInItsBuildFolder)
{
    ASSERT_TRUE(dataFolder());
    EXPECT_TRUE(fs::equivalent(*dataFolder(), fs::path(MEND_SOURCE_DIR) / "resources"));
}

TEST(DataFolder, IsBesideAnInstalledProgram)
{
    const test::Scratch root;
    const fs::path program = root / "bin" / "mendbench";
    EXPECT_EQ(dataFolderOf(program), std::nullopt) << "an installed program never reaches into a source tree";
    fs::create_directories(root / "share" / "mendbench" / "rules");
    EXPECT_EQ(dataFolderOf(program), root / "share" / "mendbench");
}

TEST(DataFolder, OfAPersonFollowsTheirEnvironment)
{
    ::setenv("XDG_CONFIG_HOME", "/somewhere/config", 1);
    EXPECT_EQ(configFolder(), fs::path("/somewhere/config/mendbench"));
    ::setenv("XDG_CONFIG_HOME", "not/absolute", 1); // to be passed over, XDG base directory specification
    ::setenv("HOME", "/home/someone", 1);
    EXPECT_EQ(configFolder(), fs::path("/home/someone/.config/mendbench"));
}

} // namespace mend::service
