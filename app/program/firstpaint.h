#pragma once

#include <QElapsedTimer>
#include <QObject>

namespace mend::app {

/// Says on standard output that the window is painted, and how long that took since this was
/// made, and ends the program: the option --measure-start.
class FirstPaint : public QObject {
    Q_OBJECT

public:
    explicit FirstPaint(QObject* parent = nullptr);
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    bool m_seen = false;
    QElapsedTimer m_since;
};

} // namespace mend::app
