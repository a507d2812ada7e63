#pragma once

#include <QDBusConnection>

namespace mend::desktop {

/// Whether the desktop offers something. What is Absent is switched off and costs nothing.
enum class Offer { Unknown, Present, Absent };

/// How long an answer of the desktop is awaited, in milliseconds; nothing stands still meanwhile.
inline constexpr int answerLimitMs = 5000;

/// The message bus of this login. Where there is none, an unconnected one at once: none is
/// started and none is waited for.
QDBusConnection sessionBus();
/// The message bus of the machine; likewise.
QDBusConnection systemBus();

} // namespace mend::desktop
