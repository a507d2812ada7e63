#pragma once

#include "app/program/programoptions.h"
#include "core/base/clock.h"

#include <functional>

class QApplication;

namespace mend::service {
class ClockWatch;
}
namespace mend::sound {
class Player;
}

namespace mend::app {

/// What a session is given from outside: the clock of the machine, or that of a trial.
struct Surroundings {
    const Clock& clock;
    service::ClockWatch& watch; ///< says when the clock was set; outlives the session
    /// Told what sounds the alerts of a session before it plays anything; empty: nobody listens.
    std::function<void(sound::Player&)> playerMade{};
};

/// Opens the bench that was asked for and keeps it until the window is closed. The exit code:
/// 0 well, 2 where the file or the options make it impossible (said on standard error and, with a
/// display, in a window), 1 otherwise.
int runSession(QApplication& program, ProgramOptions options, const Surroundings& surroundings);

} // namespace mend::app
