#include "core/store/benchfile.h"

#include "core/store/migrator.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>
#include <string_view>

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/vfs.h>
#include <unistd.h>

namespace mend::store {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view magic{"SQLite format 3\0", 16};
constexpr std::string_view journalMagic{"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8};
constexpr std::size_t headSize = 100;
constexpr std::size_t changeCounterAt = 24;
constexpr std::size_t versionAt = 60;
constexpr std::size_t applicationAt = 68;

std::uint32_t bigEndian(std::string_view bytes, std::size_t at)
{
    std::uint32_t value = 0;
    for (const char byte : bytes.substr(at, 4)) {
        value = value << 8U | static_cast<unsigned char>(byte);
    }
    return value;
}

Fault failed(const char* what) { return {FaultKind::Unwritable, std::string(what) + ": " + std::strerror(errno)}; }

/// The file system type of the mount that holds a path, as the kernel names it.
std::string mountType(const fs::path& path)
{
    std::ifstream mounts("/proc/self/mountinfo");
    std::string best;
    std::string type;
    for (std::string line; std::getline(mounts, line);) {
        std::istringstream words(line);
        std::string skipped;
        std::string mountPoint;
        words >> skipped >> skipped >> skipped >> skipped >> mountPoint;
        const std::size_t dash = line.find(" - ");
        const bool holds = mountPoint == "/" || path == mountPoint || path.native().starts_with(mountPoint + '/');
        if (dash != std::string::npos && holds && mountPoint.size() >= best.size()) {
            best = mountPoint;
            std::istringstream(line.substr(dash + 3)) >> type;
        }
    }
    return type;
}

/// Finds the first page in a journal and says whether it is the one the file had before.
bool firstPageFits(std::istream& journal, std::uint32_t sector, std::uint32_t page, const std::string& head)
{
    std::string record(page + 8, '\0');
    for (journal.seekg(sector); journal.read(record.data(), static_cast<std::streamsize>(record.size()));) {
        if (bigEndian(record, 0) == 1) {
            const std::string_view before = std::string_view(record).substr(4);
            const std::uint32_t then = bigEndian(before, changeCounterAt);
            const std::uint32_t now = bigEndian(head, changeCounterAt);
            return bigEndian(before, applicationAt) == applicationId && (now == then || now == then + 1);
        }
    }
    journal.clear();
    journal.seekg(0, std::ios::end);
    // Every transaction of ours writes the first page first; a journal without any page undoes nothing.
    return journal.tellg() <= static_cast<std::streamoff>(sector);
}

} // namespace

std::optional<FileIdentity> identityOf(const fs::path& file)
{
    struct stat status = {};
    if (::stat(file.c_str(), &status) != 0) {
        return std::nullopt;
    }
    return FileIdentity{status.st_dev, status.st_ino};
}

fs::path trueName(const fs::path& file) { return fs::weakly_canonical(fs::absolute(file)); }

bool hasSecondName(const fs::path& file)
{
    struct stat status = {};
    return ::stat(file.c_str(), &status) == 0 && status.st_nlink > 1;
}

bool isOnNetwork(const fs::path& file)
{
    // From linux/magic.h and the file systems' own headers: NFS, SMB, CIFS, SMB2, Coda, AFS, Ceph, 9P of another host.
    constexpr std::array<std::uint32_t, 8> networks{0x6969,     0x517B,     0xFF534D42, 0xFE534D42,
                                                    0x73757245, 0x5346414F, 0x00C36400, 0x01021997};
    struct statfs status = {};
    if (::statfs(file.parent_path().c_str(), &status) != 0) {
        return false;
    }
    if (std::ranges::find(networks, static_cast<std::uint32_t>(status.f_type)) != networks.end()) {
        return true;
    }
    // A file system in user space may be a local one (an encrypted folder) or a far one: its name tells.
    const std::string type = mountType(file);
    return type.starts_with("fuse.sshfs") || type.starts_with("fuse.rclone") || type.starts_with("fuse.dav") ||
           type.starts_with("fuse.gvfs");
}

bool isWritable(const fs::path& file)
{
    return ::faccessat(AT_FDCWD, file.c_str(), W_OK, AT_EACCESS) == 0 &&
           ::faccessat(AT_FDCWD, file.parent_path().c_str(), W_OK | X_OK, AT_EACCESS) == 0;
}

Outcome makePrivateFolder(const fs::path& folder)
{
    if (fs::exists(folder) || folder.empty()) {
        return Done{};
    }
    if (const Outcome above = makePrivateFolder(folder.parent_path()); !above) {
        return above;
    }
    if (::mkdir(folder.c_str(), S_IRWXU) != 0 && errno != EEXIST) {
        return failed("make folder");
    }
    return Done{};
}

Outcome makePrivate(const fs::path& path)
{
    const mode_t mode = fs::is_directory(path) ? S_IRWXU : S_IRUSR | S_IWUSR;
    if (::chmod(path.c_str(), mode) != 0) {
        return failed("make private");
    }
    return Done{};
}

Outcome syncToDisk(const fs::path& path)
{
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return failed("open to sync");
    }
    const bool synced = ::fsync(descriptor) == 0;
    const Fault fault = synced ? Fault{} : failed("sync");
    ::close(descriptor);
    if (!synced) {
        return fault;
    }
    return Done{};
}

Outcome renameIfFree(const fs::path& from, const fs::path& to)
{
    if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) != 0) {
        return errno == EEXIST ? Fault{FaultKind::Conflict, "the name is taken"} : failed("rename");
    }
    return syncToDisk(to.parent_path());
}

Head judgeHead(const std::string& head, std::uintmax_t size)
{
    if (size == 0) {
        return Head::Damaged; // cut to nothing: an empty bench must never take its place
    }
    const std::uint32_t id = bigEndian(head, applicationAt);
    const bool ours = id == applicationId;
    if (!head.starts_with(magic)) {
        return ours ? Head::Damaged : Head::Foreign;
    }
    if (!ours) {
        // One flipped bit does not make somebody else's file of it.
        return std::popcount(id ^ static_cast<std::uint32_t>(applicationId)) == 1 ? Head::Damaged : Head::Foreign;
    }
    return size < headSize ? Head::Damaged : Head::Bench;
}

std::uint32_t versionInHead(const std::string& head) { return bigEndian(head, versionAt); }

bool journalBelongs(const fs::path& file, const std::string& head)
{
    std::ifstream journal(file.native() + "-journal", std::ios::binary);
    std::string start(28, '\0');
    if (!journal.read(start.data(), static_cast<std::streamsize>(start.size())) || !start.starts_with(journalMagic)) {
        return true; // none, or one that SQLite does not play back
    }
    const std::uint32_t sector = bigEndian(start, 20);
    const std::uint32_t page = bigEndian(start, 24);
    const auto plausible = [](std::uint32_t size) { return std::has_single_bit(size) && size >= 32 && size <= 65536; };
    if (!plausible(sector) || !plausible(page)) {
        return true; // SQLite takes such a header for the end of the journal
    }
    const std::uint32_t pageInFile =
        (static_cast<unsigned char>(head[16]) << 8U) | static_cast<unsigned char>(head[17]);
    return page == (pageInFile == 1 ? 65536 : pageInFile) && firstPageFits(journal, sector, page, head);
}

} // namespace mend::store
