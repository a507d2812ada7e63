#include "app/program/endsignal.h"

#include <atomic>
#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <unistd.h>

namespace mend::app {

namespace {

std::atomic<int> writeEnd{-1};
constexpr std::array<int, 3> endings{SIGTERM, SIGINT, SIGHUP};

/// In a signal handler hardly anything is allowed; to write one byte is.
void passOn(int)
{
    const int kept = errno;
    const char byte = 0;
    static_cast<void>(!::write(writeEnd.load(), &byte, 1));
    errno = kept;
}

} // namespace

EndSignal::EndSignal(QObject* parent) : QObject(parent)
{
    if (::pipe2(m_pipe.data(), O_CLOEXEC | O_NONBLOCK) != 0) {
        return; // it then ends as a kill would end it, which loses nothing
    }
    m_notifier = std::make_unique<QSocketNotifier>(m_pipe[0], QSocketNotifier::Read);
    connect(m_notifier.get(), &QSocketNotifier::activated, this, [this] {
        char byte = 0;
        static_cast<void>(!::read(m_pipe[0], &byte, 1));
        Q_EMIT came();
    });
    writeEnd = m_pipe[1];
    for (const int ending : endings) {
        std::signal(ending, passOn);
    }
}

EndSignal::~EndSignal()
{
    if (m_notifier) {
        for (const int ending : endings) {
            std::signal(ending, SIG_DFL);
        }
        m_notifier.reset();
        ::close(m_pipe[0]);
        ::close(m_pipe[1]);
    }
}

} // namespace mend::app
