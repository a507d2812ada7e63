#include <QCoreApplication>
#include <gtest/gtest.h>

// Tests of services need an event loop's application object and no display.
int main(int argc, char** argv)
{
    ::testing::InitGoogleTest(&argc, argv);
    QCoreApplication app(argc, argv);
    return RUN_ALL_TESTS();
}
