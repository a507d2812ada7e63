#include "app/program/upkeep.h"

namespace mend::app {

namespace {
constexpr Span backupEvery = std::chrono::hours(24);
}

Upkeep::Upkeep(Keeping& keeping, const Clock& clock, const std::filesystem::path& file, QObject* parent)
    : QObject(parent), m_keeping(keeping), m_clock(clock), m_folder(file.parent_path() / "backups"), m_backups(m_folder)
{
}

bool Upkeep::isBackupDue() const
{
    const auto held = m_backups.all();
    return held.empty() || m_clock.now().utc - held.front().made >= backupEvery;
}

void Upkeep::begin()
{
    m_backups.sweep();
    m_keeping.thread().start(std::make_unique<store::RecordCheck>([this](const store::CheckReport& report) {
        const int findings = static_cast<int>(report.findings.size());
        QMetaObject::invokeMethod(
            this,
            [this, findings] {
                if (findings > 0) {
                    Q_EMIT damaged(findings);
                } else if (isBackupDue()) {
                    backUpNow();
                }
            },
            Qt::QueuedConnection);
    }));
}

void Upkeep::backUpNow()
{
    const auto done = [this](const Result<store::Backup>& made, const store::CheckReport& report) {
        const std::optional<Fault> fault = made.isOk() ? std::nullopt : std::optional(made.fault());
        const int findings = static_cast<int>(report.findings.size());
        QMetaObject::invokeMethod(
            this,
            [this, fault, findings] {
                if (findings > 0) {
                    Q_EMIT damaged(findings);
                }
                if (fault) {
                    Q_EMIT backupFailed(*fault);
                } else {
                    Q_EMIT backedUp();
                }
            },
            Qt::QueuedConnection);
    };
    m_keeping.thread().start(std::make_unique<store::BackupJob>(m_backups, m_clock.now().utc, done));
}

} // namespace mend::app
