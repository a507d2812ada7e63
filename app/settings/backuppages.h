#pragma once

#include "app/parts/sheet.h"
#include "app/settings/settingsnow.h"
#include "core/service/wording.h"

#include <functional>

namespace mend::app {

/// Going back to a backup: the list of those there are, and what is in the one that was picked. The same
/// in Settings and where a damaged file keeps the bench from opening.
struct BackupActs {
    std::function<void(const QString& file)> pick;
    std::function<void()> leave; ///< back to the list
    std::function<void(const QString& file)> goBack;
};

/// The backups as rows, newest first.
void addBackups(parts::Sheet& sheet, const std::vector<BackupLine>& backups, Instant now, const service::Manner& manner,
                const BackupActs& acts);
/// One backup: what it holds, what going back to it does, and the button that does it.
parts::Sheet backupSheetOf(const BackupLine& backup, const std::optional<BackupSeen>& seen, Instant now,
                           const service::Manner& manner, const BackupActs& acts);

} // namespace mend::app
