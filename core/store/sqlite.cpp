#include "core/store/sqlite.h"

#include <sqlite3.h>

namespace mend::store {

namespace {

constexpr int longestValue = 200'000'000; ///< bytes: the largest picture that is kept
constexpr int longestSql = 100'000;

[[noreturn]] void fail(sqlite3* database, int code)
{
    const std::string detail = database ? sqlite3_errmsg(database) : sqlite3_errstr(code);
    throw SqlError(Fault{kindOfCode(code), detail + " (" + std::to_string(code) + ")"});
}

void check(sqlite3* database, int code)
{
    if (code != SQLITE_OK) {
        fail(database, code);
    }
}

} // namespace

FaultKind kindOfCode(int code)
{
    if (code == SQLITE_IOERR_NOMEM) {
        return FaultKind::Unavailable;
    }
    switch (code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return FaultKind::Busy;
    case SQLITE_FULL:
        return FaultKind::DiskFull;
    case SQLITE_READONLY:
        return FaultKind::ReadOnly;
    case SQLITE_CORRUPT:
        return FaultKind::Damaged;
    case SQLITE_NOTADB:
        return FaultKind::Foreign;
    case SQLITE_CONSTRAINT:
        return FaultKind::Conflict;
    case SQLITE_MISMATCH:
    case SQLITE_TOOBIG:
    case SQLITE_RANGE:
        return FaultKind::BadInput;
    case SQLITE_INTERRUPT:
        return FaultKind::Cancelled;
    case SQLITE_NOMEM:
        return FaultKind::Unavailable;
    default:
        return FaultKind::Unwritable;
    }
}

Statement::Statement(sqlite3* database, std::string_view sql)
{
    sqlite3_stmt* made = nullptr;
    const int code = sqlite3_prepare_v2(database, sql.data(), static_cast<int>(sql.size()), &made, nullptr);
    m_statement.reset(made);
    check(database, code);
}

void Statement::Finalizer::operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }

bool Statement::step()
{
    const int code = sqlite3_step(m_statement.get());
    if (code == SQLITE_ROW) {
        return true;
    }
    if (code != SQLITE_DONE) {
        sqlite3* const database = sqlite3_db_handle(m_statement.get());
        const SqlError error(Fault{kindOfCode(sqlite3_extended_errcode(database)),
                                   std::string(sqlite3_errmsg(database)) + " (" + std::to_string(code) + ")"});
        reset();
        throw error;
    }
    return false;
}

void Statement::run()
{
    while (step()) {}
    reset();
}

void Statement::reset() { sqlite3_reset(m_statement.get()); }

std::int64_t Statement::integer(int column) const { return sqlite3_column_int64(m_statement.get(), column); }

std::optional<std::int64_t> Statement::maybeInteger(int column) const
{
    return isNull(column) ? std::nullopt : std::optional(integer(column));
}

std::string Statement::text(int column) const
{
    const void* const bytes = sqlite3_column_blob(m_statement.get(), column);
    const int size = sqlite3_column_bytes(m_statement.get(), column);
    return bytes ? std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(size)) : std::string();
}

bool Statement::isNull(int column) const { return sqlite3_column_type(m_statement.get(), column) == SQLITE_NULL; }

void Statement::bind(int position, std::int64_t value)
{
    check(sqlite3_db_handle(m_statement.get()), sqlite3_bind_int64(m_statement.get(), position, value));
}

void Statement::bind(int position, std::string_view value)
{
    check(sqlite3_db_handle(m_statement.get()),
          sqlite3_bind_text64(m_statement.get(), position, value.data() ? value.data() : "", value.size(),
                              SQLITE_TRANSIENT, SQLITE_UTF8));
}

void Statement::bind(int position, Blob value)
{
    check(sqlite3_db_handle(m_statement.get()),
          sqlite3_bind_blob64(m_statement.get(), position, value.bytes.data() ? value.bytes.data() : "",
                              value.bytes.size(), SQLITE_TRANSIENT));
}

void Statement::bindNull(int position)
{
    check(sqlite3_db_handle(m_statement.get()), sqlite3_bind_null(m_statement.get(), position));
}

Database Database::open(const std::filesystem::path& file, Access access, const std::string& vfs)
{
    const int how = access == Access::ReadOnly    ? SQLITE_OPEN_READONLY
                    : access == Access::ReadWrite ? SQLITE_OPEN_READWRITE
                                                  : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    sqlite3* opened = nullptr;
    const int code = sqlite3_open_v2(file.c_str(), &opened, how | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE,
                                     vfs.empty() ? nullptr : vfs.c_str());
    Database database;
    database.m_handle.reset(opened);
    check(opened, code);
    return database;
}

Database Database::inMemory() { return open(":memory:", Access::Create); }

void Database::settle(std::chrono::milliseconds busyTimeout)
{
    sqlite3* const database = m_handle.get();
    sqlite3_busy_timeout(database, static_cast<int>(busyTimeout.count()));
    sqlite3_limit(database, SQLITE_LIMIT_LENGTH, longestValue);
    sqlite3_limit(database, SQLITE_LIMIT_SQL_LENGTH, longestSql);
    sqlite3_limit(database, SQLITE_LIMIT_ATTACHED, 0);
    sqlite3_limit(database, SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 50);
    for (const auto& [option, value] :
         {std::pair(SQLITE_DBCONFIG_DEFENSIVE, 1), std::pair(SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0),
          std::pair(SQLITE_DBCONFIG_ENABLE_TRIGGER, 0), std::pair(SQLITE_DBCONFIG_ENABLE_VIEW, 0),
          std::pair(SQLITE_DBCONFIG_ENABLE_FKEY, 1)}) {
        check(database, sqlite3_db_config(database, option, value, nullptr));
    }
    run("PRAGMA cell_size_check = ON");
    run("PRAGMA mmap_size = 0");
    run("PRAGMA secure_delete = ON");
    run("PRAGMA synchronous = EXTRA");
    run("PRAGMA temp_store = MEMORY");
}

void Database::run(const std::string& sql)
{
    check(m_handle.get(), sqlite3_exec(m_handle.get(), sql.c_str(), nullptr, nullptr, nullptr));
}

std::int64_t Database::number(std::string_view sql) const
{
    Statement statement = prepare(sql);
    return statement.step() ? statement.integer(0) : 0;
}

std::string Database::word(std::string_view sql) const
{
    Statement statement = prepare(sql);
    return statement.step() ? statement.text(0) : std::string();
}

bool Database::inTransaction() const { return sqlite3_get_autocommit(m_handle.get()) == 0; }

bool Database::isReadOnly() const { return sqlite3_db_readonly(m_handle.get(), "main") == 1; }

std::string Database::head(std::size_t count) const
{
    sqlite3_file* file = nullptr;
    check(m_handle.get(), sqlite3_file_control(m_handle.get(), "main", SQLITE_FCNTL_FILE_POINTER, &file));
    std::string bytes(count, '\0');
    if (file && file->pMethods) {
        const int code = file->pMethods->xRead(file, bytes.data(), static_cast<int>(count), 0);
        if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ) {
            fail(nullptr, code);
        }
    }
    return bytes;
}

void Database::Closer::operator()(sqlite3* database) const { sqlite3_close_v2(database); }

Transaction::Transaction(Database& database) : m_database(database) { m_database.run("BEGIN IMMEDIATE"); }

Transaction::~Transaction()
{
    // A failed commit may have rolled back by itself; only an open transaction is undone here.
    if (m_database.inTransaction()) {
        sqlite3_exec(m_database.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
    }
}

void Transaction::commit() { m_database.run("COMMIT"); }

} // namespace mend::store
