#include "app/shell/scanear.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QKeyEvent>
#include <QLineEdit>
#include <QWidget>
#include <utility>

namespace mend::app {

namespace {

/// A whole piece number, with or without its hyphen: shorter than that is somebody's quick fingers.
constexpr int shortest = 7;
constexpr int longest = 8;

bool isOfNumber(QChar c)
{
    return (c >= QLatin1Char('0') && c <= QLatin1Char('9')) || c == QLatin1Char('X') || c == QLatin1Char('x') ||
           c == QLatin1Char('-');
}

ScanEar::Time ownTime()
{
    QElapsedTimer since;
    since.start();
    return [since] { return since.elapsed(); };
}

} // namespace

ScanEar::ScanEar(QWidget& window, Time time, QObject* parent)
    : QObject(parent), m_window(window), m_time(time ? std::move(time) : ownTime())
{
    qApp->installEventFilter(this);
}

ScanEar::~ScanEar() { qApp->removeEventFilter(this); }

bool ScanEar::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress) {
        return false;
    }
    // A key that nobody wants climbs through the widgets: it is heard once, where it comes first.
    const QWidget* const first = m_window.focusWidget() ? m_window.focusWidget() : &m_window;
    if (watched != first) {
        return false;
    }
    const auto* const key = static_cast<const QKeyEvent*>(event);
    return !key->isAutoRepeat() && take(*key, watched);
}

void ScanEar::begin(QObject* watched)
{
    m_typed.clear();
    m_line = qobject_cast<QLineEdit*>(watched);
    if (m_line) {
        m_before = m_line->text();
        m_cursor = m_line->cursorPosition();
    }
}

/// True where the key was a scanner's last one.
bool ScanEar::take(const QKeyEvent& key, QObject* watched)
{
    const qint64 now = m_time();
    const bool goesOn = !m_typed.isEmpty() && now - m_last <= longestPause;
    const bool ends = key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
    if (ends) {
        const bool whole = goesOn && m_typed.size() >= shortest && m_typed.size() <= longest;
        const QString number = std::exchange(m_typed, {});
        if (whole) {
            putBack();
            Q_EMIT heard(number);
        }
        return whole;
    }
    const QString words = key.text();
    if (words.size() != 1 || !isOfNumber(words.front()) || key.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) {
        if (!words.isEmpty()) {
            m_typed.clear();
        }
        return false;
    }
    if (!goesOn) {
        begin(watched);
    }
    m_typed += words;
    m_last = now;
    return false;
}

void ScanEar::putBack()
{
    if (m_line) {
        m_line->setText(m_before);
        m_line->setCursorPosition(m_cursor);
        Q_EMIT m_line->textEdited(m_before); // whoever keeps what is typed forgets the number, too
    }
}

} // namespace mend::app
