#include "core/store/pagecopy.h"

#include "core/store/benchfile.h"

#include <sqlite3.h>

#include <system_error>

namespace mend::store {

namespace {

constexpr int pagesAtOnce = 64; ///< 256 KiB: well under a slice even on a slow disk

} // namespace

PageCopy::PageCopy(Database& from, std::filesystem::path to) : m_to(std::move(to))
{
    std::error_code ignored;
    std::filesystem::remove(m_to, ignored);
    m_target = std::make_unique<Database>(Database::open(m_to, Access::Create));
    demand(makePrivate(m_to));
    // Nothing of a copy counts before it is finished, so it needs no journal and no syncs on the way.
    m_target->run("PRAGMA journal_mode = OFF");
    m_target->run("PRAGMA synchronous = OFF");
    m_copy.reset(sqlite3_backup_init(m_target->handle(), "main", from.handle(), "main"));
    if (!m_copy) {
        throw SqlError(Fault{kindOfCode(sqlite3_extended_errcode(m_target->handle())), "the copy does not start"});
    }
}

PageCopy::~PageCopy()
{
    m_copy.reset(); // before its target
    m_target.reset();
    if (!m_finished) {
        std::error_code ignored;
        std::filesystem::remove(m_to, ignored);
    }
}

void PageCopy::Ender::operator()(sqlite3_backup* copy) const { sqlite3_backup_finish(copy); }

bool PageCopy::copyUntil(std::chrono::steady_clock::time_point until)
{
    do {
        const int code = sqlite3_backup_step(m_copy.get(), pagesAtOnce);
        if (code == SQLITE_DONE) {
            end();
            return true;
        }
        if (code == SQLITE_BUSY || code == SQLITE_LOCKED) {
            return false; // another program has the file: later
        }
        if (code != SQLITE_OK) {
            throw SqlError(Fault{kindOfCode(code), "the copy stops"});
        }
    } while (std::chrono::steady_clock::now() < until);
    return false;
}

/// On the thread of the source, which still counts the copy among its own.
void PageCopy::end()
{
    const int code = sqlite3_backup_finish(m_copy.release());
    if (code != SQLITE_OK) {
        throw SqlError(Fault{kindOfCode(code), "the copy does not end well"});
    }
    m_target.reset();
}

void PageCopy::finish()
{
    demand(syncToDisk(m_to));
    demand(syncToDisk(m_to.parent_path()));
    m_finished = true;
}

void copyWhole(Database& from, const std::filesystem::path& to)
{
    PageCopy copy(from, to);
    const auto patience = std::chrono::steady_clock::now() + std::chrono::seconds(5);
    while (!copy.copyUntil(std::chrono::steady_clock::time_point::max())) {
        if (std::chrono::steady_clock::now() > patience) {
            throw SqlError(Fault{FaultKind::Busy, "another program holds the file"});
        }
        sqlite3_sleep(50);
    }
    copy.finish();
}

} // namespace mend::store
