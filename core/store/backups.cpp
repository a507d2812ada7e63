#include "core/store/backups.h"

#include "core/store/eventrows.h"
#include "core/store/ownerlock.h"
#include "core/store/photorows.h"
#include "core/store/seal.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

#include <fcntl.h>
#include <unistd.h>

namespace mend::store {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view nameStart = "bench-";
constexpr std::string_view nameEnd = ".mendbackup";
constexpr std::string_view unfinished = "unfinished-";
constexpr std::size_t dailies = 7;
constexpr std::size_t weeklies = 5;
constexpr std::size_t monthlies = 12;

/// RFC 3339 with the colons, which not every file system takes, written as hyphens.
std::string stamp(Instant instant)
{
    std::string text = toRfc3339(instant);
    std::ranges::replace(text, ':', '-');
    return text;
}

std::optional<Instant> readStamp(std::string text)
{
    if (text.size() != 24) {
        return std::nullopt;
    }
    text[13] = ':';
    text[16] = ':';
    return fromRfc3339(text);
}

Bytes readWhole(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// Under another name first, so that a picture under its hash is always whole.
void writeWhole(const fs::path& file, const Bytes& bytes)
{
    const fs::path made = file.parent_path() / (std::string(unfinished) + file.filename().native());
    std::ofstream stream(made, std::ios::binary | std::ios::trunc);
    stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    stream.close();
    if (!stream || readWhole(made).size() != bytes.size()) {
        throw SqlError(Fault{FaultKind::DiskFull, "a picture could not be copied"});
    }
    demand(makePrivate(made));
    demand(syncToDisk(made));
    fs::rename(made, file);
    demand(syncToDisk(file.parent_path()));
}

CheckReport checkAll(const Database& database)
{
    Check check(database, Check::Depth::Record);
    while (!check.slice(std::chrono::steady_clock::time_point::max())) {}
    CheckReport report = check.report();
    for (const char* const sql : {"PRAGMA integrity_check(20)", "PRAGMA foreign_key_check"}) {
        Statement rows = database.prepare(sql);
        while (rows.step()) {
            if (rows.text(0) != "ok") {
                report.findings.push_back({Finding::Part::Structure, rows.text(0)});
            }
        }
    }
    return report;
}

/// A name beside `file` that nothing has yet.
fs::path freeNameBeside(const fs::path& file, const std::string& reason, Instant now)
{
    fs::path name = file.native() + "." + reason + "-" + stamp(now);
    for (int i = 2; fs::exists(name); ++i) {
        name = file.native() + "." + reason + "-" + stamp(now) + "-" + std::to_string(i);
    }
    return name;
}

/// Puts `made` in the place of `to`; at no moment is there nothing under that name. What stood
/// there, with a journal that belongs to it, gets `aside` for a name.
void exchange(const fs::path& made, const fs::path& to, const fs::path& aside, const std::function<void()>& step)
{
    if (!fs::exists(to)) {
        demand(renameIfFree(made, to));
        return;
    }
    const fs::path journal = to.native() + "-journal";
    const bool hot = fs::exists(journal);
    if (hot) {
        fs::create_hard_link(journal, aside.native() + "-journal");
    }
    // The copy takes the name of what is kept first: cut off right after the exchange, the old file
    // then stands under it already, and under no name that the next try clears away.
    demand(renameIfFree(made, aside));
    step();
    if (::renameat2(AT_FDCWD, aside.c_str(), AT_FDCWD, to.c_str(), RENAME_EXCHANGE) != 0) {
        throw SqlError(Fault{FaultKind::Unwritable, "the files could not be exchanged"});
    }
    demand(syncToDisk(to.parent_path()));
    step();
    if (hot) {
        fs::remove(journal); // it goes on standing beside the file it was written for
    }
}

} // namespace

std::vector<Backup> worthKeeping(const std::vector<Backup>& all)
{
    using namespace std::chrono;
    std::vector<Backup> newestFirst = all;
    std::ranges::sort(newestFirst, std::greater(), &Backup::made);
    std::set<fs::path> kept;
    const auto keepLastOfEach = [&](std::size_t most, auto periodOf) {
        std::set<std::int64_t> periods;
        for (const Backup& backup : newestFirst) {
            const std::int64_t period = periodOf(floor<days>(backup.made));
            if (periods.size() < most && periods.insert(period).second) {
                kept.insert(backup.file);
            }
        }
    };
    keepLastOfEach(dailies, [](sys_days day) { return std::int64_t{day.time_since_epoch().count()}; });
    // 1970-01-01 was a Thursday.
    keepLastOfEach(weeklies, [](sys_days day) { return (std::int64_t{day.time_since_epoch().count()} + 3) / 7; });
    keepLastOfEach(monthlies, [](sys_days day) {
        const year_month_day date(day);
        return std::int64_t{static_cast<int>(date.year())} * 12 + static_cast<unsigned>(date.month());
    });
    std::erase_if(newestFirst, [&](const Backup& backup) { return !kept.contains(backup.file); });
    return newestFirst;
}

std::vector<Backup> Backups::all() const
{
    std::vector<Backup> found;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator(m_folder, ignored)) {
        const std::string name = entry.path().filename();
        if (name.starts_with(nameStart) && name.ends_with(nameEnd)) {
            const auto length = name.size() - nameStart.size() - nameEnd.size();
            if (const auto made = readStamp(name.substr(nameStart.size(), length))) {
                found.push_back({entry.path(), *made});
            }
        }
    }
    std::ranges::sort(found, std::greater(), &Backup::made);
    return found;
}

std::vector<Backup> Backups::madeBefore(Instant moment) const
{
    std::vector<Backup> older = all();
    std::erase_if(older, [moment](const Backup& backup) { return backup.made >= moment; });
    return older;
}

void Backups::sweep() const
{
    std::error_code ignored;
    for (const fs::path& folder : {m_folder, m_folder / "pictures"}) {
        for (const auto& entry : fs::directory_iterator(folder, ignored)) {
            if (entry.path().filename().native().starts_with(unfinished)) {
                fs::remove(entry.path(), ignored);
            }
        }
    }
}

fs::path Backups::unfinishedFile() const { return m_folder / (std::string(unfinished) + std::to_string(::getpid())); }

fs::path Backups::pictureFile(const std::string& hash) const { return m_folder / "pictures" / hash; }

void Backups::movePicturesOut(Database& copy) const
{
    const PhotoRows photos(copy);
    demand(makePrivateFolder(m_folder / "pictures"));
    for (const std::string& hash : photos.hashes()) {
        const fs::path file = pictureFile(hash);
        // Read whole and by its hash, so that neither a damaged picture nor a damaged copy passes.
        if (!fs::exists(file) || toHex(sha256(readWhole(file))) != hash) {
            const auto bytes = photos.bytes(hash);
            if (!bytes) {
                throw SqlError(Fault{FaultKind::Damaged, "picture " + hash + " is missing"});
            }
            writeWhole(file, *bytes);
        }
    }
    copy.run("DELETE FROM photo_bytes");
    copy.run("VACUUM");
}

Result<Backup> Backups::finish(const fs::path& copy, Instant now, CheckReport* report) const
{
    return guarded([&] {
        demand(makePrivateFolder(m_folder));
        CheckReport found;
        {
            Database database = Database::open(copy, Access::ReadWrite);
            database.run("PRAGMA journal_mode = DELETE");
            database.run("PRAGMA cell_size_check = ON");
            found = checkAll(database);
            if (found.isGood()) {
                try {
                    movePicturesOut(database);
                } catch (const SqlError& error) {
                    if (error.fault().kind != FaultKind::Damaged) {
                        throw;
                    }
                    found.findings.push_back({Finding::Part::Photos, error.fault().detail});
                }
            }
        }
        if (report) {
            *report = found;
        }
        if (!found.isGood()) {
            fs::rename(copy, freeNameBeside(m_folder / "bench", "damaged", now));
            throw SqlError(Fault{FaultKind::Damaged, found.findings.front().detail});
        }
        demand(syncToDisk(copy));
        const Backup backup{m_folder / (std::string(nameStart) + stamp(now) + std::string(nameEnd)), now};
        demand(renameIfFree(copy, backup.file));
        thinOut();
        return backup;
    });
}

void Backups::thinOut() const
{
    const std::vector<Backup> kept = worthKeeping(all());
    for (const Backup& backup : all()) {
        if (std::ranges::find(kept, backup) == kept.end()) {
            fs::remove(backup.file);
        }
    }
}

Result<Backup> Backups::make(Store& store, Instant now) const
{
    const Outcome copied = guarded([&] {
        demand(makePrivateFolder(m_folder));
        copyWhole(store.database(), unfinishedFile());
    });
    return copied ? finish(unfinishedFile(), now) : Result<Backup>(copied.fault());
}

std::vector<std::string> Backups::bringPicturesIn(Database& restored) const
{
    std::vector<std::string> missing;
    Transaction transaction(restored);
    for (const std::string& hash : PhotoRows(restored).hashes()) {
        const Bytes bytes = readWhole(pictureFile(hash));
        if (toHex(sha256(bytes)) == hash) {
            restored.prepare("INSERT INTO photo_bytes VALUES (?1, ?2)").with(Blob{sha256(bytes)}, Blob{bytes}).run();
        } else {
            missing.push_back(hash);
        }
    }
    transaction.commit();
    return missing;
}

Result<BackupContents> Backups::look(const fs::path& backup) const
{
    return guarded([&] {
        auto source = Store::open(backup, OpenMode::ReadOnly);
        if (!source) {
            throw SqlError(source.fault());
        }
        const CheckReport report = checkAll(source.value()->database());
        if (!report.isGood()) {
            throw SqlError(Fault{FaultKind::Damaged, report.findings.front().detail});
        }
        const Database& database = source.value()->database();
        BackupContents contents;
        contents.events = report.events;
        contents.pieces = database.number("SELECT count(*) FROM piece");
        contents.piecesInHand = database.number("SELECT count(*) FROM in_hand");
        if (const auto last = EventRows(database).find(EventRows(database).end().last)) {
            contents.lastTold = last->recorded;
        }
        for (const std::string& hash : PhotoRows(database).hashes()) {
            contents.missingPictures += toHex(sha256(readWhole(pictureFile(hash)))) == hash ? 0 : 1;
        }
        return contents;
    });
}

Result<Restored> Backups::restore(const fs::path& backup, const fs::path& to, Instant now,
                                  const std::function<void()>& step) const
{
    const auto stepOver = [&step] {
        if (step) {
            step();
        }
    };
    return guarded([&] {
        const fs::path target = trueName(to);
        Result<OwnerLock> lock = OwnerLock::take(target);
        if (!lock) {
            throw SqlError(lock.fault());
        }
        auto source = Store::open(backup, OpenMode::ReadOnly);
        if (!source) {
            throw SqlError(source.fault());
        }
        const CheckReport report = checkAll(source.value()->database());
        if (!report.isGood()) {
            throw SqlError(Fault{FaultKind::Damaged, "the backup: " + report.findings.front().detail});
        }
        const fs::path made = target.native() + ".restoring";
        copyWhole(source.value()->database(), made);
        stepOver();
        Restored restored;
        restored.events = report.events;
        {
            Database database = Database::open(made, Access::ReadWrite);
            database.settle(std::chrono::milliseconds(50));
            restored.missingPictures = bringPicturesIn(database);
        }
        demand(syncToDisk(made));
        if (fs::exists(target)) {
            restored.keptAside = freeNameBeside(target, "kept", now);
        }
        stepOver();
        exchange(made, target, restored.keptAside, stepOver);
        return restored;
    });
}

BackupJob::BackupJob(Backups backups, Instant now, Done done)
    : m_backups(std::move(backups)), m_now(now), m_done(std::move(done))
{
}

bool BackupJob::slice(Store& store, std::chrono::steady_clock::time_point until)
{
    bool over = false;
    const Outcome outcome = guarded([&] {
        if (!m_copy) {
            demand(makePrivateFolder(m_backups.unfinishedFile().parent_path()));
            m_copy = std::make_unique<PageCopy>(store.database(), m_backups.unfinishedFile());
        }
        over = m_copy->copyUntil(until);
    });
    if (!outcome) {
        m_fault = outcome.fault();
    }
    return over || m_fault;
}

std::function<void()> BackupJob::afterwards()
{
    return [backups = m_backups, now = m_now, done = m_done, fault = m_fault,
            copy = std::shared_ptr<PageCopy>(std::move(m_copy))] {
        CheckReport report;
        Result<Backup> backup = fault ? Result<Backup>(*fault) : guarded([&] {
            copy->finish();
            const Result<Backup> finished = backups.finish(backups.unfinishedFile(), now, &report);
            if (!finished) {
                throw SqlError(finished.fault());
            }
            return finished.value();
        });
        if (done) {
            done(backup, report);
        }
    };
}

} // namespace mend::store
