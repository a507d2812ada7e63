#pragma once

#include "app/program/programoptions.h"

class QApplication;

namespace mend::app {

/// Opens the bench that was asked for and keeps it until the window is closed. The exit code:
/// 0 well, 2 where the file or the options make it impossible (said on standard error and, with a
/// display, in a window), 1 otherwise.
int runSession(QApplication& program, ProgramOptions options);

} // namespace mend::app
