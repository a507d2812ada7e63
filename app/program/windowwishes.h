#pragma once

#include "app/program/programoptions.h"
#include "app/shell/mainwindow.h"

#include <QSettings>
#include <QSize>

namespace mend::app {

/// As wished on this machine, with what the command line says on top.
LookSettings lookOf(const ProgramOptions& options, const QSettings& settings);

/// As asked for on the command line; 1280x800 where nothing was, or nothing that a bench fits into.
QSize sizeOf(const ProgramOptions& options);

} // namespace mend::app
