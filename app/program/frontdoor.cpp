#include "app/program/frontdoor.h"

#include "core/store/benchfile.h"

#include <QCoreApplication>
#include <QDeadlineTimer>
#include <QWindow>
#include <cstdio>
#include <thread>

namespace mend::app {

using desktop::Knock;
using desktop::KnockAnswer;

namespace {
// What a translator finds these words under.
class FrontDoorWords {
    Q_DECLARE_TR_FUNCTIONS(FrontDoorWords)
};
} // namespace

void bringToFront(QWidget& window, const QString& activationToken)
{
    if (!activationToken.isEmpty()) {
        qputenv("XDG_ACTIVATION_TOKEN", activationToken.toUtf8()); // read by the window system's own part of Qt
    }
    window.setWindowState((window.windowState() & ~Qt::WindowMinimized) | Qt::WindowActive);
    window.show();
    window.raise();
    window.activateWindow();
}

FrontDoor::FrontDoor(std::filesystem::path file, QObject* parent)
    : QObject(parent), m_file(store::trueName(std::move(file)))
{
}

KnockAnswer FrontDoor::answer(const Knock& knock)
{
    if (m_leaving) {
        return KnockAnswer::Leaving;
    }
    Q_EMIT raiseWanted(knock.activationToken);
    if (knock.file.isEmpty() || store::trueName(knock.file.toStdString()) == m_file) {
        return KnockAnswer::Raised;
    }
    if (knock.reason.isEmpty() && m_isBusy && m_isBusy()) {
        Q_EMIT keptFile(knock.file);
        return KnockAnswer::Refused;
    }
    Q_EMIT fileWanted(knock.file);
    return KnockAnswer::Changed;
}

std::optional<SecondStart> enter(desktop::OneProgram& program, const QString& folder, const Knock& knock,
                                 std::chrono::milliseconds patience)
{
    const QDeadlineTimer deadline(patience);
    for (;;) {
        const Outcome claimed = program.claim();
        if (claimed) {
            return std::nullopt;
        }
        if (claimed.fault().kind != FaultKind::Busy) {
            std::fprintf(stderr, "A second start will not find this one: %s.\n", claimed.fault().detail.c_str());
            return std::nullopt; // the bench file keeps a lock of its own
        }
        switch (desktop::OneProgram::knock(folder, knock)) {
        case KnockAnswer::Raised:
            return SecondStart{FrontDoorWords::tr("The bench is open already: its window comes to the front."), 0};
        case KnockAnswer::Changed:
            return SecondStart{FrontDoorWords::tr("The window that is open goes over to this bench."), 0};
        case KnockAnswer::Refused:
            return SecondStart{
                FrontDoorWords::tr("The window that is open keeps its bench: something on it is running out. "
                                   "Finish that, or say why with --because WORDS."),
                1};
        case KnockAnswer::NoAnswer:
            if (program.claim()) { // it ended while it was asked
                return std::nullopt;
            }
            return SecondStart{
                FrontDoorWords::tr("The program runs already but does not answer. Wait a moment and start it "
                                   "again."),
                1};
        case KnockAnswer::Leaving: // it is putting its bench away: its place is free in a moment
            break;
        }
        if (deadline.hasExpired()) {
            return SecondStart{
                FrontDoorWords::tr("The program is still putting its bench away. Start it again in a moment."), 1};
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
}

} // namespace mend::app
