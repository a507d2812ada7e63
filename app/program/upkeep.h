#pragma once

#include "app/program/keeping.h"
#include "core/base/clock.h"
#include "core/store/backups.h"
#include "core/store/check.h"

#include <QObject>

namespace mend::app {

/// Looks after the bench file while nobody has to wait for it: checks every record once the Bench
/// stands, makes a backup a day, notices when the file is moved away.
class Upkeep : public QObject {
    Q_OBJECT

public:
    Upkeep(Keeping& keeping, const Clock& clock, const std::filesystem::path& file, QObject* parent = nullptr);

    /// Once the Bench is painted.
    void begin();
    void backUpNow();
    std::vector<store::Backup> backups() const { return m_backups.all(); }
    const std::filesystem::path& folder() const { return m_folder; }

Q_SIGNALS:
    /// How many faults a check found; the file is left as it is.
    void damaged(int findings);
    void backedUp();
    void backupFailed(const mend::Fault& fault);

private:
    bool isBackupDue() const;

    Keeping& m_keeping;
    const Clock& m_clock;
    std::filesystem::path m_folder;
    store::Backups m_backups;
};

} // namespace mend::app
