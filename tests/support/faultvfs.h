#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace mend::test {

/// A disk that breaks on purpose: a file layer under SQLite that lets the n-th call that
/// changes anything fail, once or for ever, or cuts the power there, after which only what
/// was synced is sure to be on the disk and of the rest any part may be.
class FaultVfs {
public:
    enum class Mode { Sound, FailOnce, FailForEver, CutPower };

    static constexpr const char* name = "mendfaults";
    /// The one in this process, registered with SQLite at first use.
    static FaultVfs& instance();

    /// Starts counting anew. `code` is what the failing call answers, such as SQLITE_FULL.
    void arm(Mode mode, int atCall, int code);
    void calm() { arm(Mode::Sound, 0, 0); }
    int calls() const { return m_calls; }
    bool hasStruck() const { return m_struck; }

    /// What lies on the disk after the power came back, written into `folder`: of each file the
    /// synced state plus a random part of what was written since, in random order.
    void disk(const std::filesystem::path& folder, unsigned seed) const;
    /// From here on remembers what is synced of the files in a folder.
    void watch(const std::filesystem::path& folder);

    // For the layer itself.
    /// 0, or the code with which this call has to fail.
    int call();
    void wrote(const std::string& file, std::int64_t at, std::string bytes);
    void truncated(const std::string& file, std::int64_t size);
    void synced(const std::string& file);
    void deleted(const std::string& file, bool folderSynced);

private:
    struct Change {
        std::optional<std::int64_t> truncateTo;
        std::int64_t at = 0;
        std::string bytes;
    };
    struct File {
        std::optional<std::string> durable; ///< empty: not on the disk
        std::vector<Change> pending;
        bool deletedUnsynced = false;
        std::optional<std::string> beforeDelete;
    };

    Mode m_mode = Mode::Sound;
    int m_at = 0;
    int m_code = 0;
    int m_calls = 0;
    bool m_struck = false;
    std::filesystem::path m_watched;
    std::map<std::string, File> m_files;
};

} // namespace mend::test
