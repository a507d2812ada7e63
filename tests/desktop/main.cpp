#include "app/desktop/oneprogram.h"
#include "tests/support/messagebus.h"

#include <QCoreApplication>
#include <cstdio>
#include <cstring>
#include <gtest/gtest.h>

// The code that tells ctest "skipped"; anything else would pass as tried.
constexpr int skipped = 77;

namespace {

/// Plays the first program for a test that kills it.
int holdPlace(const char* folder)
{
    mend::desktop::OneProgram first(QString::fromLocal8Bit(folder));
    std::puts(first.claim().isOk() ? "held" : "not held");
    std::fflush(stdout);
    return QCoreApplication::exec();
}

} // namespace

int main(int argc, char** argv)
{
    QCoreApplication app(argc, argv);
    if (argc == 3 && std::strcmp(argv[1], "--hold") == 0) {
        return holdPlace(argv[2]);
    }
    ::testing::InitGoogleTest(&argc, argv);
    if (!mend::test::MessageBus::isInstalled()) {
        std::fputs("\n*** dbus-daemon is not installed: NOTHING OF THE DESKTOP WAS TRIED. ***\n\n", stderr);
        return skipped;
    }
    return RUN_ALL_TESTS();
}
