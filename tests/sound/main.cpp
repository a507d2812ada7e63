#include "tests/support/soundserver.h"

#include <QCoreApplication>
#include <cstdio>
#include <gtest/gtest.h>

// The code that tells ctest "skipped"; anything else would pass as tried.
constexpr int skipped = 77;

int main(int argc, char** argv)
{
    ::testing::InitGoogleTest(&argc, argv);
    QCoreApplication app(argc, argv);
    if (!mend::test::SoundServer::isInstalled()) {
        std::fputs("\n*** pulseaudio and pulseaudio-utils are not installed: NO SOUND WAS TRIED. ***\n"
                   "*** Install them to prove that an alert is heard. ***\n\n",
                   stderr);
        return skipped;
    }
    return RUN_ALL_TESTS();
}
