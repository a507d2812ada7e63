#pragma once

#include <QByteArray>
#include <QObject>
#include <QTimer>

class QWidget;

namespace mend::app {

/// Tells another program what can be tapped now and where, so that a trial in a real window
/// need not guess: the option --say-acts.
///
/// Each time anything changes, standard output gets one block:
///
///     acts
///     act KEY X Y WIDTH HEIGHT NAME     a spot that does something when it is tapped
///     words KEY X Y WIDTH HEIGHT NAME   a spot that is only read
///     end
///
/// in pixels of the screen, only the part that is really seen. A KEY holds no space (it is
/// percent-encoded); the NAME is the rest of the line, as a screen reader says it.
class SayActs : public QObject {
    Q_OBJECT

public:
    explicit SayActs(QWidget& window, QObject* parent = nullptr);

private:
    void look();

    QWidget& m_window;
    QByteArray m_said;
    QTimer m_timer;
};

} // namespace mend::app
