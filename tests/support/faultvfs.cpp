#include "tests/support/faultvfs.h"

#include <sqlite3.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <new>

namespace mend::test {

namespace fs = std::filesystem;

namespace {

std::string readWhole(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// SQLite lays files out in memory it owns: this, then the real layer's file behind it.
struct FaultFile {
    sqlite3_file base;
    sqlite3_file* real;
    std::string* path;
};

FaultFile* of(sqlite3_file* file) { return reinterpret_cast<FaultFile*>(file); }
const sqlite3_io_methods* realMethods(sqlite3_file* file) { return of(file)->real->pMethods; }
sqlite3_vfs* realLayer() { return sqlite3_vfs_find("unix"); }
FaultVfs& faults() { return FaultVfs::instance(); }

int closeFile(sqlite3_file* file)
{
    const int code = realMethods(file)->xClose(of(file)->real);
    delete of(file)->path;
    of(file)->path = nullptr;
    return code;
}

int readFile(sqlite3_file* file, void* into, int count, sqlite3_int64 at)
{
    return realMethods(file)->xRead(of(file)->real, into, count, at);
}

int writeFile(sqlite3_file* file, const void* from, int count, sqlite3_int64 at)
{
    if (const int code = faults().call()) {
        return code;
    }
    const int code = realMethods(file)->xWrite(of(file)->real, from, count, at);
    if (code == SQLITE_OK) {
        faults().wrote(*of(file)->path, at, {static_cast<const char*>(from), static_cast<std::size_t>(count)});
    }
    return code;
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size)
{
    if (const int code = faults().call()) {
        return code;
    }
    const int code = realMethods(file)->xTruncate(of(file)->real, size);
    if (code == SQLITE_OK) {
        faults().truncated(*of(file)->path, size);
    }
    return code;
}

int syncFile(sqlite3_file* file, int)
{
    if (const int code = faults().call()) {
        return code;
    }
    // The machine stays up while the test runs: only the memory of what is synced matters, not the disk's time.
    faults().synced(*of(file)->path);
    return SQLITE_OK;
}

int sizeOfFile(sqlite3_file* file, sqlite3_int64* size) { return realMethods(file)->xFileSize(of(file)->real, size); }
int lockFile(sqlite3_file* file, int level) { return realMethods(file)->xLock(of(file)->real, level); }
int unlockFile(sqlite3_file* file, int level) { return realMethods(file)->xUnlock(of(file)->real, level); }
int isReserved(sqlite3_file* file, int* out) { return realMethods(file)->xCheckReservedLock(of(file)->real, out); }
int control(sqlite3_file* file, int what, void* with)
{
    return realMethods(file)->xFileControl(of(file)->real, what, with);
}
int sectorSize(sqlite3_file* file) { return realMethods(file)->xSectorSize(of(file)->real); }
int traits(sqlite3_file* file) { return realMethods(file)->xDeviceCharacteristics(of(file)->real); }

const sqlite3_io_methods methods = {1,        closeFile,  readFile,   writeFile, truncateFile, syncFile, sizeOfFile,
                                    lockFile, unlockFile, isReserved, control,   sectorSize,   traits,   nullptr,
                                    nullptr,  nullptr,    nullptr,    nullptr,   nullptr};

int openFile(sqlite3_vfs*, const char* path, sqlite3_file* file, int flags, int* outFlags)
{
    FaultFile* const made = of(file);
    made->base.pMethods = nullptr;
    made->real = reinterpret_cast<sqlite3_file*>(made + 1);
    const bool journal = (flags & SQLITE_OPEN_MAIN_JOURNAL) != 0;
    if (journal && (flags & SQLITE_OPEN_CREATE)) {
        if (const int code = faults().call()) {
            return code == SQLITE_FULL ? SQLITE_CANTOPEN : code;
        }
    }
    const int code = realLayer()->xOpen(realLayer(), path, made->real, flags, outFlags);
    if (made->real->pMethods) {
        made->path = new std::string(path ? path : "");
        made->base.pMethods = &methods;
    }
    return code;
}

int deleteFile(sqlite3_vfs*, const char* path, int syncFolder)
{
    if (const int code = faults().call()) {
        return code == SQLITE_FULL ? SQLITE_IOERR_DELETE : code;
    }
    const int code = realLayer()->xDelete(realLayer(), path, 0);
    if (code != SQLITE_OK) {
        return code;
    }
    // The name is gone; whether that is on the disk is another call, which can fail of its own.
    const int unsynced = syncFolder ? faults().call() : 0;
    faults().deleted(path, syncFolder && !unsynced);
    return unsynced ? SQLITE_IOERR_DIR_FSYNC : SQLITE_OK;
}

} // namespace

FaultVfs& FaultVfs::instance()
{
    static FaultVfs faultVfs;
    static sqlite3_vfs layer = [] {
        sqlite3_vfs made = *realLayer();
        made.pNext = nullptr;
        made.zName = name;
        made.szOsFile += static_cast<int>(sizeof(FaultFile));
        made.xOpen = openFile;
        made.xDelete = deleteFile;
        return made;
    }();
    static const bool registered = sqlite3_vfs_register(&layer, 0) == SQLITE_OK;
    static_cast<void>(registered);
    return faultVfs;
}

void FaultVfs::arm(Mode mode, int atCall, int code)
{
    m_mode = mode;
    m_at = atCall;
    m_code = code;
    m_calls = 0;
    m_struck = false;
}

int FaultVfs::call()
{
    ++m_calls;
    if (m_mode == Mode::Sound || m_calls < m_at || (m_mode == Mode::FailOnce && m_calls > m_at)) {
        return 0;
    }
    m_struck = true;
    return m_mode == Mode::CutPower ? SQLITE_IOERR : m_code;
}

void FaultVfs::watch(const fs::path& folder)
{
    m_watched = folder;
    m_files.clear();
    for (const auto& entry : fs::directory_iterator(folder)) {
        m_files[entry.path().native()].durable = readWhole(entry.path());
    }
}

void FaultVfs::wrote(const std::string& file, std::int64_t at, std::string bytes)
{
    m_files[file].pending.push_back({std::nullopt, at, std::move(bytes)});
}

void FaultVfs::truncated(const std::string& file, std::int64_t size) { m_files[file].pending.push_back({size, 0, {}}); }

void FaultVfs::synced(const std::string& file) { m_files[file] = {readWhole(file), {}, false, std::nullopt}; }

void FaultVfs::deleted(const std::string& file, bool folderSynced)
{
    const std::optional<std::string> before = m_files[file].durable;
    m_files[file] = {std::nullopt, {}, !folderSynced, before};
}

void FaultVfs::disk(const fs::path& folder, unsigned seed) const
{
    std::mt19937 random(seed);
    const auto coin = [&] { return (random() & 1U) != 0; };
    for (const auto& [path, file] : m_files) {
        std::optional<std::string> bytes = file.durable;
        if (file.deletedUnsynced && coin()) {
            bytes = file.beforeDelete;
        }
        std::vector<Change> pending = file.pending;
        std::ranges::shuffle(pending, random);
        for (const Change& change : pending) {
            if (coin()) {
                std::string& whole = bytes ? *bytes : bytes.emplace();
                const auto end = static_cast<std::size_t>(change.at) + change.bytes.size();
                if (change.truncateTo) {
                    whole.resize(static_cast<std::size_t>(*change.truncateTo));
                } else {
                    whole.resize(std::max(whole.size(), end));
                    whole.replace(static_cast<std::size_t>(change.at), change.bytes.size(), change.bytes);
                }
            }
        }
        if (bytes) {
            std::ofstream(folder / fs::path(path).filename(), std::ios::binary) << *bytes;
        }
    }
}

} // namespace mend::test
