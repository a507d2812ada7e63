#pragma once

#include <QObject>
#include <QSocketNotifier>
#include <array>
#include <memory>

namespace mend::app {

/// Hears the system ask the program to end (SIGTERM, SIGINT, SIGHUP), so that a shutdown puts the bench away as
/// a closed window does. One at a time.
class EndSignal : public QObject {
    Q_OBJECT

public:
    explicit EndSignal(QObject* parent = nullptr);
    ~EndSignal() override;

Q_SIGNALS:
    void came();

private:
    std::array<int, 2> m_pipe{-1, -1};
    std::unique_ptr<QSocketNotifier> m_notifier;
};

} // namespace mend::app
