#pragma once

#include "core/base/time.h"
#include "core/store/check.h"
#include "core/store/pagecopy.h"
#include "core/store/storethread.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mend::store {

/// One backup: a bench file of its own without the pictures, which stand beside it.
struct Backup {
    std::filesystem::path file;
    Instant made;
    bool operator==(const Backup&) const = default;
};

/// What is in a backup.
struct BackupContents {
    std::int64_t pieces = 0;       ///< all that were ever taken in
    std::int64_t piecesInHand = 0; ///< in the house when it was made
    std::int64_t events = 0;
    std::optional<Instant> lastTold; ///< when the last of them was told
    std::int64_t missingPictures = 0;
};

/// What a restore brought back.
struct Restored {
    std::filesystem::path keptAside;          ///< the file that stood there before, never overwritten; empty if none
    std::vector<std::string> missingPictures; ///< hashes of pictures that are gone or damaged
    std::int64_t events = 0;
};

/// Which of these backups are kept: of the newest 7 days, 5 weeks and 12 months that have any,
/// the last of each. Days are counted in UTC, weeks from Monday.
std::vector<Backup> worthKeeping(const std::vector<Backup>& all);

/// The backups of one bench file: dated copies in a folder of their own, pictures beside them
/// once under their hash. A backup has been checked before it gets its name.
class Backups {
public:
    explicit Backups(std::filesystem::path folder) : m_folder(std::move(folder)) {}

    /// Newest first.
    std::vector<Backup> all() const;
    /// Those from before a moment, newest first: they still hold what was erased then.
    std::vector<Backup> madeBefore(Instant moment) const;
    /// Removes what an interrupted backup left behind.
    void sweep() const;
    /// Where a copy of all pages may be made first.
    std::filesystem::path unfinishedFile() const;
    /// Makes a backup of a finished page copy: pictures beside it, checked, synced, named by the
    /// time, older ones thinned out. The copy is used up. Needs no access to the live file.
    /// Damaged: the check found something (see `report`), the copy is kept as "damaged-...".
    Result<Backup> finish(const std::filesystem::path& copy, Instant now, CheckReport* report = nullptr) const;
    /// All of it in one go.
    Result<Backup> make(Store& store, Instant now) const;
    /// Puts a backup and its pictures in the place of `to`; what stood there is kept aside. Locked
    /// where a program has it open, Damaged where the backup itself is.
    /// Cut off at any moment it has lost nothing and may be done again. `step` is called where a step is over.
    Result<Restored> restore(const std::filesystem::path& backup, const std::filesystem::path& to, Instant now,
                             const std::function<void()>& step = {}) const;
    /// What a person wants to know of a backup before they go back to it. Damaged: it is not as it was made.
    Result<BackupContents> look(const std::filesystem::path& backup) const;

private:
    void movePicturesOut(Database& copy) const;
    void thinOut() const;
    std::vector<std::string> bringPicturesIn(Database& restored) const;
    std::filesystem::path pictureFile(const std::string& hash) const;

    std::filesystem::path m_folder;
};

/// A backup while the bench is in use: pages are copied between the taps, the rest is done aside.
/// `done` is called on a thread of its own.
class BackupJob : public LongJob {
public:
    using Done = std::function<void(const Result<Backup>&, const CheckReport&)>;
    BackupJob(Backups backups, Instant now, Done done);
    bool slice(Store& store, std::chrono::steady_clock::time_point until) override;
    std::function<void()> afterwards() override;

private:
    Backups m_backups;
    Instant m_now;
    Done m_done;
    std::unique_ptr<PageCopy> m_copy;
    std::optional<Fault> m_fault;
};

} // namespace mend::store
