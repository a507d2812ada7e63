#include "app/parts/folderrows.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QDir>

namespace mend::parts {

namespace {

// What a translator finds these words under.
class FolderWords {
    Q_DECLARE_TR_FUNCTIONS(FolderWords)
};

} // namespace

QString FolderRows::path() const { return QDir(folder.isEmpty() ? QDir::homePath() : folder).absolutePath(); }

int FolderRows::addTo(Sheet& sheet) const
{
    const QDir here(path());
    if (QDir above = here; above.cdUp()) {
        sheet.add(Sheet::Row{key + QStringLiteral("/folder/up"),
                             FolderWords::tr("One folder up"),
                             {},
                             {},
                             [go = go, to = above.absolutePath()] { go(to); }});
    }
    int folders = 0;
    for (const QFileInfo& each : here.entryInfoList(QDir::Dirs | QDir::NoDotAndDotDot | QDir::Readable, QDir::Name)) {
        if (++folders <= most) {
            sheet.add(Sheet::Row{key + QStringLiteral("/folder/%1").arg(folders),
                                 each.fileName(),
                                 {},
                                 FolderWords::tr("folder"),
                                 [go = go, to = each.absoluteFilePath()] { go(to); }});
        }
    }
    int files = 0;
    for (const QFileInfo& each : here.entryInfoList(kinds, QDir::Files | QDir::Readable, QDir::Time)) {
        const QString file = each.absoluteFilePath();
        if (++files <= most) {
            sheet.add(Sheet::Row{key + QStringLiteral("/file/%1").arg(files),
                                 each.fileName(),
                                 {},
                                 locale.toString(each.lastModified().toTimeZone(zone), QLocale::ShortFormat),
                                 [pick = pick, file] { pick(file); },
                                 isPicked && isPicked(file)});
        }
    }
    return files;
}

} // namespace mend::parts
