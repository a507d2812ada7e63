#pragma once

#include "core/store/store.h"

#include <memory>

namespace mend::store {

/// Everything that is asked of a file before it may be called the bench file: is it one name for
/// one file, may it be written, does anyone else hold it, is it ours, whole, of a known version,
/// with no foreign journal and no foreign tables in it. Throws SqlError.
class Opening {
public:
    Opening(const std::filesystem::path& file, const OpenOptions& options);
    std::unique_ptr<Store> run();

private:
    void prepareFolder();
    void createIfMissing();
    void takeLock();
    void connect();
    void judge();
    void bringUpToDate();
    void makeFindable();
    bool writes() const { return m_standing == Standing::Writable; }

    OpenOptions m_options;
    std::filesystem::path m_file;
    Migrator m_migrator;
    Migration m_migration = Migration::UpToDate;
    Standing m_standing = Standing::Writable;
    OwnerLock m_lock;
    Database m_database;
};

} // namespace mend::store
