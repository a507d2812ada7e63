#include "core/store/opening.h"

#include "core/store/pagecopy.h"
#include "core/store/seal.h"

#include <random>
#include <system_error>

#include <unistd.h>

namespace mend::store {

namespace fs = std::filesystem;

namespace {

[[noreturn]] void refuse(FaultKind kind, std::string detail) { throw SqlError(Fault{kind, std::move(detail)}); }

std::string randomId()
{
    std::random_device source;
    std::string bytes;
    for (int i = 0; i < 16; ++i) {
        bytes += static_cast<char>(source() & 0xffU);
    }
    return toHex(bytes);
}

/// The rows without which no file is whole.
void writeFirstRows(Database& database)
{
    Transaction transaction(database);
    const std::string fileId = randomId();
    WordRows(database).setMeta("fileId", fileId);
    Prepared ready(database);
    FindRows(ready).rebuild();
    database.prepare("INSERT INTO chain VALUES (1, 0, 0, ?1)").with(Blob{firstLink(fileId)}).run();
    transaction.commit();
}

} // namespace

Opening::Opening(const fs::path& file, const OpenOptions& options)
    : m_options(options), m_file(trueName(file)), m_migrator(options.schema)
{
}

std::unique_ptr<Store> Opening::run()
{
    if (hasSecondName(m_file)) {
        refuse(FaultKind::Conflict, "the file stands under two names");
    }
    if (m_options.mode == OpenMode::CreateIfMissing) {
        prepareFolder();
        createIfMissing();
    }
    if (!fs::exists(m_file)) {
        refuse(FaultKind::NotFound, "no such file");
    }
    if (m_options.mode == OpenMode::ReadOnly) {
        m_standing = Standing::ReadOnlyAsAsked;
    } else if (m_options.onNetwork(m_file)) {
        m_standing = Standing::OnNetwork;
    } else if (!isWritable(m_file)) {
        m_standing = Standing::ReadOnlyFile;
    } else {
        takeLock();
    }
    connect();
    judge();
    bringUpToDate();
    makeFindable();
    return std::unique_ptr<Store>(new Store(std::move(m_database), m_file, std::move(m_lock), m_standing));
}

/// A file from before its pieces could be looked for by their words, or by other words.
void Opening::makeFindable()
{
    Prepared ready(m_database);
    if (!writes() || FindRows(ready).isUpToDate()) {
        return;
    }
    Transaction transaction(m_database);
    FindRows(ready).rebuild();
    ready.rest();
    transaction.commit();
}

void Opening::prepareFolder()
{
    const fs::path folder = m_file.parent_path();
    demand(makePrivateFolder(folder));
    if (m_options.ownFolder) {
        demand(makePrivate(folder));
    }
}

/// Built under another name, so that no half made file is ever found under its own.
void Opening::createIfMissing()
{
    if (fs::exists(m_file) || m_options.onNetwork(m_file)) {
        return;
    }
    const fs::path made = m_file.native() + ".new-" + std::to_string(::getpid());
    fs::remove(made);
    {
        Database database = Database::open(made, Access::Create, m_options.vfs);
        demand(makePrivate(made));
        database.settle(m_options.busyTimeout);
        m_migrator.create(database);
        writeFirstRows(database);
    }
    const Outcome named = renameIfFree(made, m_file);
    if (!named) {
        fs::remove(made);
        if (named.fault().kind != FaultKind::Conflict) { // someone else was quicker: theirs is opened
            demand(named);
        }
    }
}

void Opening::takeLock()
{
    Result<OwnerLock> lock = OwnerLock::take(m_file, m_options.takeOverLock);
    if (!lock && lock.fault().kind == FaultKind::Unwritable) {
        m_standing = Standing::ReadOnlyFile;
        return;
    }
    if (!lock) {
        throw SqlError(lock.fault());
    }
    m_lock = lock.takeValue();
}

void Opening::connect()
{
    if (writes()) {
        demand(makePrivate(m_file));
    }
    m_database = Database::open(m_file, writes() ? Access::ReadWrite : Access::ReadOnly, m_options.vfs);
    const std::string head = m_database.head(100);
    switch (judgeHead(head, fs::file_size(m_file))) {
    case Head::Foreign:
        refuse(FaultKind::Foreign, "not a bench file");
    case Head::Damaged:
        refuse(FaultKind::Damaged, "the file is cut short or its first page is damaged");
    case Head::Bench:
        break;
    }
    if (!journalBelongs(m_file, head)) {
        refuse(FaultKind::Damaged, "the journal beside the file was not written for it");
    }
    if (versionInHead(head) > static_cast<std::uint32_t>(m_migrator.newest())) {
        refuse(FaultKind::Newer, std::to_string(versionInHead(head)));
    }
    m_database.settle(m_options.busyTimeout);
}

void Opening::judge()
{
    m_migration = m_migrator.assess(m_database);
    switch (m_migration) {
    case Migration::Foreign:
        refuse(FaultKind::Foreign, "not a bench file");
    case Migration::Newer:
        refuse(FaultKind::Newer, m_database.word("PRAGMA user_version"));
    case Migration::Strange:
        refuse(FaultKind::Damaged, "the tables are not those of a bench file");
    case Migration::Outdated:
        if (!writes()) {
            refuse(FaultKind::ReadOnly, "the file has to be brought up to date and cannot be written");
        }
        break;
    default:
        break;
    }
    if (writes()) {
        m_database.run("PRAGMA journal_mode = DELETE");
    }
    const auto fileId = WordRows(m_database).meta("fileId");
    if (!fileId || m_database.number("SELECT count(*) FROM chain") != 1) {
        refuse(FaultKind::Damaged, "the file does not say which it is");
    }
}

void Opening::bringUpToDate()
{
    if (m_migration != Migration::Outdated) {
        return;
    }
    const fs::path folder = m_options.copies.empty() ? m_file.parent_path() : m_options.copies;
    const std::string version = m_database.word("PRAGMA user_version");
    const fs::path copy = folder / (m_file.filename().native() + ".before-version-" + version);
    const auto makeCopy = [&] {
        return guarded([&] {
                   demand(makePrivateFolder(folder));
                   copyWhole(m_database, copy);
               })
            .isOk();
    };
    switch (m_migrator.migrate(m_database, makeCopy)) {
    case Migration::UpToDate:
    case Migration::Migrated:
        return;
    case Migration::NoCopy:
        refuse(FaultKind::Unwritable, "no copy could be made before bringing the file up to date");
    default:
        refuse(FaultKind::Damaged, "the file could not be brought up to date");
    }
}

} // namespace mend::store
