#include "app/program/programoptions.h"
#include "app/program/session.h"
#include "core/service/clockwatch.h"
#include "core/service/systemclock.h"

#include <QApplication>
#include <cstdio>

// Builds clock, store, services and window, once; everything else is given what it needs.
int main(int argc, char** argv)
{
    QStringList arguments;
    for (int at = 0; at < argc; ++at) {
        arguments += QString::fromLocal8Bit(argv[at]);
    }
    QCoreApplication::setApplicationName(QStringLiteral("mendbench"));
    const mend::app::ReadOptions read = mend::app::readOptions(arguments);
    if (read.end) {
        std::fputs(read.end->words.toLocal8Bit().constData(), read.end->code == 0 ? stdout : stderr);
        return read.end->code;
    }
    const bool hasDisplay = qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
                            qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
    if (!hasDisplay) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        std::puts("There is no display here, so no window is opened.");
        if (read.options.picture.isEmpty() && !read.options.print) {
            std::puts("Ask for --picture FILE or --print to see the Bench all the same.");
            return 1;
        }
    }
    QApplication program(argc, argv);
    QGuiApplication::setDesktopFileName(QStringLiteral("net.mendbench.Mendbench"));
    const mend::service::SystemClock clock;
    mend::service::ClockWatch watch;
    return mend::app::runSession(program, read.options, {clock, watch});
}
