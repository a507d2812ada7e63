#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/program/keeping.h"
#include "core/base/clock.h"
#include "core/store/backups.h"
#include "core/store/check.h"

#include <functional>
#include <future>
#include <memory>
#include <optional>

namespace mend::app {

/// What was seen of one backup when a person asked.
struct BackupLooked {
    std::filesystem::path file;
    std::optional<store::BackupContents> contents; ///< empty: see `fault`
    std::optional<Fault> fault;
};

/// Looks after the bench file while nobody has to wait for it: checks every record once the Bench
/// stands, makes a backup after each day's first change and one at the end, notices within a minute
/// when the file is moved away.
class Upkeep : public QObject {
    Q_OBJECT

public:
    struct File {
        std::filesystem::path path;
        bool writable = true;
        std::optional<Instant> lastTold; ///< the newest event in it, as it was opened
    };
    Upkeep(Keeping& keeping, const Clock& clock, File file, QObject* parent = nullptr);
    ~Upkeep() override;

    /// Where the backups of a bench file lie: a folder of its own for each.
    static std::filesystem::path folderFor(const std::filesystem::path& file);

    /// Once the Bench is painted.
    void begin();
    /// Once a minute.
    void look();
    void backUpNow();
    /// At the end: what was changed since the last backup gets one; at most so long.
    void finish(std::chrono::milliseconds longest);
    /// Looks through a backup, aside; `looked` says what is in it.
    void lookThrough(const std::filesystem::path& backup);
    std::vector<store::Backup> backups() const { return m_backups.all(); }
    const std::filesystem::path& folder() const { return m_folder; }

Q_SIGNALS:
    /// How many faults a check found; the file is left as it is.
    void damaged(int findings);
    void backedUp();
    void backupFailed(const mend::Fault& fault);
    void looked(const mend::app::BackupLooked& seen);
    /// The name no longer leads to the open file.
    void fileGone();
    /// It does again.
    void fileBack();

private:
    void changed();
    void checked(int findings);
    void copied(const std::optional<Fault>& fault, int findings);
    bool hasBackupOfToday() const;
    std::function<void(std::function<void(Upkeep&)>)> teller();

    Keeping& m_keeping;
    const Clock& m_clock;
    File m_file;
    std::optional<store::FileIdentity> m_identity;
    std::filesystem::path m_folder;
    store::Backups m_backups;
    std::future<void> m_looking;
    bool m_begun = false;
    bool m_changed = false; ///< since the last backup
    bool m_running = false;
    bool m_damaged = false;
    bool m_gone = false;
};

} // namespace mend::app
