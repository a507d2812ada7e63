#include "tests/trial/screen.h"

#include <QCoreApplication>
#include <cstdio>
#include <gtest/gtest.h>

// The code that tells ctest "skipped"; anything else would pass as tried.
constexpr int untried = 77;

int main(int argc, char** argv)
{
    ::testing::InitGoogleTest(&argc, argv);
    QCoreApplication app(argc, argv);
    if (!mend::test::Screen::isInstalled()) {
        std::fputs("\n*** Xvfb or xdotool is not installed: THE PROGRAM WAS NOT TRIED. ***\n\n", stderr);
        return untried;
    }
    return RUN_ALL_TESTS();
}
