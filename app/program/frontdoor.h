#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/desktop/oneprogram.h"

#include <QWidget>
#include <filesystem>
#include <functional>
#include <optional>

namespace mend::app {

/// Brings a window to the front, or asks the desktop to where only the desktop may.
void bringToFront(QWidget& window, const QString& activationToken);

/// Answers whoever starts the program a second time while a bench is open: its window comes to the
/// front, and it goes over to the file that is asked for unless that would leave a window unwatched.
class FrontDoor : public QObject {
    Q_OBJECT

public:
    explicit FrontDoor(std::filesystem::path file, QObject* parent = nullptr);

    /// Whether something on the bench is running out, asked at each knock.
    void setBusy(std::function<bool()> isBusy) { m_isBusy = std::move(isBusy); }
    /// The bench is being put away: whoever comes now is to wait and be the first.
    void leave() { m_leaving = true; }
    desktop::KnockAnswer answer(const desktop::Knock& knock);

Q_SIGNALS:
    void raiseWanted(const QString& activationToken);
    void fileWanted(const QString& file);
    /// It keeps its file: a window is open and nobody said why it should go.
    void keptFile(const QString& wanted);

private:
    std::filesystem::path m_file;
    std::function<bool()> m_isBusy;
    bool m_leaving = false;
};

/// What a second start says and ends with; empty: it is the first, or may go on as if it were.
struct SecondStart {
    QString words;
    int code = 0;
};
std::optional<SecondStart> enter(desktop::OneProgram& program, const QString& folder, const desktop::Knock& knock,
                                 std::chrono::milliseconds patience = std::chrono::seconds(20));

} // namespace mend::app
