#pragma once

#include <QObject>
#include <QPointer>
#include <QString>
#include <functional>

class QKeyEvent;
class QLineEdit;
class QWidget;

namespace mend::app {

/// Hears a hand scanner, which types a number faster than a person and ends with Return, whatever is in front.
/// What it typed does not stay in the line that happened to have the focus, and its Return presses no button.
class ScanEar : public QObject {
    Q_OBJECT

public:
    /// Milliseconds that only ever grow.
    using Time = std::function<qint64()>;
    explicit ScanEar(QWidget& window, Time time = {}, QObject* parent = nullptr);
    ~ScanEar() override;

    bool eventFilter(QObject* watched, QEvent* event) override;

    /// The longest pause between two keys of a scanner; the fastest typists need twice that (common practice, no
    /// source).
    static constexpr qint64 longestPause = 45;

Q_SIGNALS:
    /// A number as it was typed; its check character is not looked at.
    void heard(const QString& number);

private:
    bool take(const QKeyEvent& key, QObject* watched);
    void begin(QObject* watched);
    void putBack();

    QWidget& m_window;
    Time m_time;
    QString m_typed;
    qint64 m_last = 0;
    QPointer<QLineEdit> m_line;
    QString m_before; ///< what stood in that line
    int m_cursor = 0;
};

} // namespace mend::app
