#include "app/program/opening.h"

#include "app/photos/demophotos.h"
#include "core/service/datafolder.h"
#include "core/service/demobench.h"
#include "core/service/wording.h"

#include <QCoreApplication>
#include <QSettings>
#include <sys/stat.h>

namespace mend::app {

namespace {

QSettings ownSettings()
{
    return {QString::fromStdString((service::configFolder() / "window.ini").native()), QSettings::IniFormat};
}

QString ownFileKey() { return QStringLiteral("file/own"); }

bool isRemembered() { return ownSettings().contains(ownFileKey()); }

// What a translator finds these words under.
class OpeningWords {
    Q_DECLARE_TR_FUNCTIONS(OpeningWords)
};

Result<std::filesystem::path> fileFor(const ProgramOptions& options, const service::RuleShelf& shelf, const Moment& now)
{
    if (!options.demo) {
        return options.file.isEmpty() ? ownFile() : std::filesystem::path(options.file.toStdString());
    }
    const std::filesystem::path file = service::demoFile();
    const Outcome made = service::prepareDemo(file, shelf.book(), now, QTimeZone::systemTimeZone(), options.fresh,
                                              photos::drawDemoPhotos);
    if (!made) {
        return made.fault();
    }
    return file;
}

} // namespace

namespace {
/// Another file under the same name has another number.
ino_t inodeOf(const std::filesystem::path& file)
{
    struct stat found = {};
    return ::stat(file.c_str(), &found) == 0 ? found.st_ino : 0;
}
} // namespace

std::filesystem::path ownFile()
{
    const QString remembered = ownSettings().value(ownFileKey()).toString();
    return remembered.isEmpty() ? service::benchFolder() / "bench.mendbench"
                                : std::filesystem::path(remembered.toStdString());
}

void rememberOwnFile(const std::filesystem::path& file)
{
    ownSettings().setValue(ownFileKey(), QString::fromStdString(file.native()));
}

Result<Opened> openFor(const ProgramOptions& options, const Moment& now, std::filesystem::path* looked)
{
    Opened opened;
    opened.shelf = std::make_unique<service::RuleShelf>(service::RuleShelf::usualFolders());
    if (!opened.shelf->isUsable()) {
        return Fault{FaultKind::NotFound, "rules"};
    }
    const ino_t before = options.demo ? inodeOf(service::demoFile()) : 0;
    auto file = fileFor(options, *opened.shelf, now);
    if (!file) {
        return file.fault();
    }
    opened.file = file.takeValue();
    if (looked) {
        *looked = opened.file;
    }
    opened.isNew = options.demo && inodeOf(opened.file) != before;
    if (options.file.isEmpty() && (options.demo || !isRemembered())) {
        std::error_code unmade; // where the folder cannot be made, opening the file says so
        std::filesystem::create_directories(opened.file.parent_path(), unmade);
    }
    store::OpenOptions how;
    // A bench that was saved elsewhere is looked for there: an empty one in its place would hide that it is gone.
    const bool mayBeNew = !options.file.isEmpty() || options.demo || !isRemembered();
    how.mode = mayBeNew ? store::OpenMode::CreateIfMissing : store::OpenMode::ReadWrite;
    how.ownFolder = options.file.isEmpty() && mayBeNew;
    how.takeOverLock = options.takeOver;
    auto store = store::Store::open(opened.file, how);
    if (!store) {
        return store.fault();
    }
    opened.store = store.takeValue();
    auto bench = service::readBench(*opened.store, *opened.shelf, now.utc);
    if (!bench) {
        return bench.fault();
    }
    opened.bench = bench.takeValue();
    return opened;
}

QString openingWords(const Fault& fault)
{
    const QString detail = service::text(fault.detail);
    switch (fault.kind) {
    case FaultKind::NotFound:
        return fault.detail == "rules"
                   ? OpeningWords::tr(
                         "The rule files that come with the program are missing. Install it again, or start it "
                         "from its source tree.")
                   : OpeningWords::tr("There is no such file (%1). Check the path.").arg(detail);
    case FaultKind::Foreign:
        return OpeningWords::tr("This is not a bench file (%1). It was left as it is. Choose another file.")
            .arg(detail);
    case FaultKind::Newer:
        return OpeningWords::tr(
                   "This bench file was written by a newer version of the program (%1). It was left as it is. "
                   "Install the newer version to open it.")
            .arg(detail);
    case FaultKind::Damaged:
        return OpeningWords::tr(
                   "This bench file is damaged (%1). It was left as it is. Go back to the newest good backup, here "
                   "or with “mendbench-desk restore BACKUP TO”; nothing is overwritten.")
            .arg(detail);
    case FaultKind::Locked:
        return OpeningWords::tr("This bench is open already (%1). Close it there first.").arg(detail);
    case FaultKind::Busy:
        return OpeningWords::tr("Another program is using the bench file. Close it and try again.");
    case FaultKind::Unwritable:
    case FaultKind::ReadOnly:
        return OpeningWords::tr(
                   "The bench file or its folder cannot be written (%1). Check whose it is, and that the disk "
                   "is not full.")
            .arg(detail);
    case FaultKind::Conflict:
        return OpeningWords::tr("The file has two names or is something else than the demo (%1). It was left as it is.")
            .arg(detail);
    default:
        return OpeningWords::tr("The bench could not be opened (%1).").arg(detail);
    }
}

} // namespace mend::app
