#pragma once

#include "app/parts/sheet.h"
#include "app/settings/settingsnow.h"
#include "core/service/wording.h"

#include <functional>
#include <vector>

namespace mend::app {

/// Owners taken over from a card file or a table: a file is chosen, everybody in it is shown, and only then kept.
struct OwnerListActs {
    std::function<void(const QString& file)> open;
    std::function<void(const QString& folder)> go;
    std::function<void()> leave;        ///< nobody is kept; back to the files
    std::function<void(int line)> turn; ///< taken in or left out
    std::function<void(int from)> show; ///< the lines from there on
    std::function<void()> keep;
};

/// Where such a file lies.
parts::Sheet ownerFilesSheet(const QString& folder, const service::Manner& manner, const OwnerListActs& acts);
/// Everybody in the file that was chosen; `taken` by line, shown from line `from` on.
parts::Sheet ownerListSheet(const OwnerListNow& list, const std::vector<bool>& taken, int from,
                            const OwnerListActs& acts);

} // namespace mend::app
