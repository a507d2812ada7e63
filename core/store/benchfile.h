#pragma once

#include "core/base/result.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace mend::store {

/// Which file on the disk a name leads to, whatever it is called.
struct FileIdentity {
    std::uint64_t device = 0;
    std::uint64_t inode = 0;
    bool operator==(const FileIdentity&) const = default;
};
std::optional<FileIdentity> identityOf(const std::filesystem::path& file);

/// The one name of a file: absolute, links followed. Two names would mean two journals.
std::filesystem::path trueName(const std::filesystem::path& file);

/// Whether the same file stands under a second (hard) name.
bool hasSecondName(const std::filesystem::path& file);

/// Whether a path lies on a file system of another machine, where locks cannot be relied on.
bool isOnNetwork(const std::filesystem::path& file);

/// Whether this process may write the file and the folder its journal has to stand in.
bool isWritable(const std::filesystem::path& file);

/// Makes missing folders for their owner alone, whatever the umask says.
Outcome makePrivateFolder(const std::filesystem::path& folder);

/// Takes everyone else's rights away from a file (0600) or a folder (0700).
Outcome makePrivate(const std::filesystem::path& path);

/// Writes what the system holds back of a file or a folder's entries to the disk.
Outcome syncToDisk(const std::filesystem::path& path);

/// Gives `from` the name `to`, which must be free; both in one folder, which is synced.
Outcome renameIfFree(const std::filesystem::path& from, const std::filesystem::path& to);

/// What the first 100 bytes of a file say, before SQLite is let at it.
enum class Head { Bench, Damaged, Foreign };
Head judgeHead(const std::string& head, std::uintmax_t size);

/// The version of the tables, from the first 100 bytes.
std::uint32_t versionInHead(const std::string& head);

/// Whether a journal left beside the file was written for this very state of it. Played back
/// into another file it would ruin it. True where there is none.
bool journalBelongs(const std::filesystem::path& file, const std::string& head);

} // namespace mend::store
