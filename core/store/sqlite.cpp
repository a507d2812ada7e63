#include "core/store/sqlite.h"

#include <QSqlDriver>
#include <QSqlError>
#include <QVariant>
#include <atomic>
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

namespace {

sqlite3* handleOf(const QSqlDatabase& connection)
{
    const QVariant handle = connection.driver() ? connection.driver()->handle() : QVariant();
    return handle.isValid() ? *static_cast<sqlite3* const*>(handle.constData()) : nullptr;
}

QString utf16(std::string_view utf8) { return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size())); }

/// The file's name as SQLite's own URI, which alone can say "do not create" and name a file layer.
QString uriOf(const std::filesystem::path& file, Access access, const std::string& vfs)
{
    const QByteArray path = QByteArray::fromStdString(std::filesystem::absolute(file).native());
    const char* const mode = access == Access::ReadOnly ? "ro" : access == Access::ReadWrite ? "rw" : "rwc";
    QString uri =
        QStringLiteral("file:%1?mode=%2").arg(QString::fromLatin1(path.toPercentEncoding("/")), QLatin1String(mode));
    return vfs.empty() ? uri : uri + QStringLiteral("&vfs=") + utf16(vfs);
}

/// Qt knows its connections by name; each of ours gets one that is never used again.
QString freshName()
{
    static std::atomic<std::int64_t> count{0};
    return QStringLiteral("bench-%1").arg(++count);
}

} // namespace

Statement::Statement(const QSqlDatabase& connection, std::string_view sql)
    : m_handle(handleOf(connection)), m_query(connection)
{
    m_query.setForwardOnly(true);
    if (!m_query.prepare(utf16(sql))) {
        fail();
    }
}

void Statement::fail() const
{
    const int code = sqlite3_extended_errcode(m_handle);
    if (code == SQLITE_OK) { // it never came to SQLite: a value too many or too few
        throw SqlError(Fault{FaultKind::BadInput, m_query.lastError().text().toStdString()});
    }
    mend::store::fail(m_handle, code);
}

bool Statement::step()
{
    if (!m_running && !m_query.exec()) {
        try {
            fail();
        } catch (const SqlError&) {
            reset();
            throw;
        }
    }
    m_running = true;
    if (m_query.next()) {
        return true;
    }
    if (m_query.lastError().isValid()) {
        const SqlError error(Fault{kindOfCode(sqlite3_extended_errcode(m_handle)), sqlite3_errmsg(m_handle)});
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

void Statement::reset()
{
    m_query.finish();
    m_running = false;
}

std::int64_t Statement::integer(int column) const { return m_query.value(column).toLongLong(); }

std::optional<std::int64_t> Statement::maybeInteger(int column) const
{
    return isNull(column) ? std::nullopt : std::optional(integer(column));
}

std::string Statement::text(int column) const
{
    const QVariant value = m_query.value(column);
    return value.typeId() == QMetaType::QByteArray ? value.toByteArray().toStdString() : value.toString().toStdString();
}

bool Statement::isNull(int column) const { return m_query.isNull(column); }

void Statement::bind(int position, std::int64_t value)
{
    m_query.bindValue(position - 1, static_cast<qlonglong>(value));
}

void Statement::bind(int position, std::string_view value)
{
    const QString text = utf16(value);
    m_query.bindValue(position - 1, text.isNull() ? QStringLiteral("") : text); // a null string would become NULL
}

void Statement::bind(int position, Blob value)
{
    const QByteArray bytes(value.bytes.data(), static_cast<qsizetype>(value.bytes.size()));
    m_query.bindValue(position - 1, bytes.isNull() ? QByteArray("") : bytes);
}

void Statement::bindNull(int position) { m_query.bindValue(position - 1, QVariant()); }

Database::~Database() { close(); }

Database::Database(Database&& other) noexcept
    : m_connection(std::exchange(other.m_connection, {})), m_handle(std::exchange(other.m_handle, nullptr))
{
}

Database& Database::operator=(Database&& other) noexcept
{
    if (this != &other) {
        close();
        m_connection = std::exchange(other.m_connection, {});
        m_handle = std::exchange(other.m_handle, nullptr);
    }
    return *this;
}

void Database::close()
{
    const QString name = m_connection.connectionName();
    if (name.isEmpty()) {
        return;
    }
    m_connection.close();
    m_connection = {};
    m_handle = nullptr;
    QSqlDatabase::removeDatabase(name);
}

Database Database::open(const std::filesystem::path& file, Access access, const std::string& vfs)
{
    Database database;
    database.m_connection = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), freshName());
    if (!database.m_connection.isValid()) {
        throw SqlError(Fault{FaultKind::Unavailable, "Qt's SQLite driver is missing: install libqt6sql6-sqlite"});
    }
    database.m_connection.setConnectOptions(QStringLiteral("QSQLITE_OPEN_URI;QSQLITE_BUSY_TIMEOUT=0"));
    const bool inMemory = file == ":memory:";
    database.m_connection.setDatabaseName(inMemory ? QStringLiteral(":memory:") : uriOf(file, access, vfs));
    if (!database.m_connection.open()) {
        const QSqlError error = database.m_connection.lastError();
        throw SqlError(Fault{kindOfCode(error.nativeErrorCode().toInt()), error.databaseText().toStdString()});
    }
    database.m_handle = handleOf(database.m_connection);
    sqlite3_extended_result_codes(database.m_handle, 1);
    return database;
}

Database Database::inMemory() { return open(":memory:", Access::Create); }

void Database::settle(std::chrono::milliseconds busyTimeout)
{
    sqlite3* const database = m_handle;
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
    check(m_handle, sqlite3_exec(m_handle, sql.c_str(), nullptr, nullptr, nullptr));
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

bool Database::inTransaction() const { return sqlite3_get_autocommit(m_handle) == 0; }

bool Database::isReadOnly() const { return sqlite3_db_readonly(m_handle, "main") == 1; }

std::string Database::head(std::size_t count) const
{
    sqlite3_file* file = nullptr;
    check(m_handle, sqlite3_file_control(m_handle, "main", SQLITE_FCNTL_FILE_POINTER, &file));
    std::string bytes(count, '\0');
    if (file && file->pMethods) {
        const int code = file->pMethods->xRead(file, bytes.data(), static_cast<int>(count), 0);
        if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ) {
            fail(nullptr, code);
        }
    }
    return bytes;
}

Transaction::Transaction(Database& database) : m_database(database)
{
    m_database.run("BEGIN IMMEDIATE");
    try {
        // Writes the first page as it is, so that it stands first in the journal: by it a journal that
        // is left behind is known to belong to this file (see journalBelongs). It also makes every commit
        // a real one that syncs: what is told again after a commit that failed at its very last sync is
        // there already, but only this makes sure that it stays.
        m_database.run("PRAGMA user_version = " + m_database.word("PRAGMA user_version"));
    } catch (const SqlError&) {
        sqlite3_exec(m_database.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
        throw;
    }
}

Transaction::~Transaction()
{
    // A failed commit may have rolled back by itself; only an open transaction is undone here.
    if (m_database.inTransaction()) {
        sqlite3_exec(m_database.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
    }
}

void Transaction::commit() { m_database.run("COMMIT"); }

} // namespace mend::store
