#pragma once

#include "core/store/sqlite.h"

#include <chrono>
#include <filesystem>
#include <memory>

struct sqlite3_backup;

namespace mend::store {

/// Copies a bench file page by page while it is in use: what is written in between is in the
/// copy too, and the copy is always of one single moment. Throws SqlError.
class PageCopy {
public:
    /// `to` is replaced; it is removed again unless the copy is finished.
    PageCopy(Database& from, std::filesystem::path to);
    ~PageCopy();
    PageCopy(const PageCopy&) = delete;
    PageCopy& operator=(const PageCopy&) = delete;

    /// Copies until about `until`; true once all is copied and the source is let go.
    bool copyUntil(std::chrono::steady_clock::time_point until);
    /// Puts the copy on the disk for good. Does not touch the file it was made of, so any thread may.
    void finish();

private:
    struct Ender {
        void operator()(sqlite3_backup* copy) const;
    };
    void end();

    std::filesystem::path m_to;
    std::unique_ptr<Database> m_target;
    std::unique_ptr<sqlite3_backup, Ender> m_copy;
    bool m_finished = false;
};

/// The whole copy in one go.
void copyWhole(Database& from, const std::filesystem::path& to);

} // namespace mend::store
