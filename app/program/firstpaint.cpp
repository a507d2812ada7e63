#include "app/program/firstpaint.h"

#include <QCoreApplication>
#include <QEvent>
#include <QTimer>
#include <cstdio>

namespace mend::app {

FirstPaint::FirstPaint(QObject* parent) : QObject(parent)
{
    m_since.start();
    QCoreApplication::instance()->installEventFilter(this);
}

bool FirstPaint::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::Paint && !m_seen) {
        m_seen = true;
        // All that stands in the window is painted in one go: at the next turn it is done.
        QTimer::singleShot(0, this, [this] {
            std::printf("painted %lld ms after it was ready\n", static_cast<long long>(m_since.elapsed()));
            std::fflush(stdout);
            QCoreApplication::quit();
        });
    }
    return QObject::eventFilter(watched, event);
}

} // namespace mend::app
