#pragma once

#include "app/parts/sheet.h"

#include <QLocale>
#include <QStringList>
#include <QTimeZone>

#include <functional>

namespace mend::parts {

/// A folder of the machine as rows to tap: the one above, those in it, and its files of some kinds, newest first.
struct FolderRows {
    QString key;       ///< rows are called key + "/folder/up", "/folder/N", "/file/N"
    QString folder;    ///< empty: the user's own
    QStringList kinds; ///< "*.jpg"
    QLocale locale;
    QTimeZone zone;
    std::function<void(const QString& folder)> go;
    std::function<void(const QString& file)> pick;
    std::function<bool(const QString& file)> isPicked{}; ///< empty: none ever is

    static constexpr int most = 60; ///< of folders and of files
    /// The folder, written out.
    QString path() const;
    /// Adds the rows; gives how many such files there are, shown or not.
    int addTo(Sheet& sheet) const;
};

} // namespace mend::parts
