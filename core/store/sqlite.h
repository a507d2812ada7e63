#pragma once

#include "core/base/result.h"

#include <QSqlDatabase>
#include <QSqlQuery>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <new>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

struct sqlite3;

namespace mend::store {

/// Raw bytes: hashes and pictures.
using Bytes = std::string;

/// Bytes to be stored as such, not as text.
struct Blob {
    std::string_view bytes;
};

/// What SQLite said no to. Lives inside this floor only; `guarded` turns it into a Result.
class SqlError {
public:
    explicit SqlError(Fault fault) : m_fault(std::move(fault)) {}
    const Fault& fault() const { return m_fault; }

private:
    Fault m_fault;
};

/// Goes on only with what was done; else throws its fault.
inline void demand(const Outcome& outcome)
{
    if (!outcome) {
        throw SqlError(outcome.fault());
    }
}

/// What an (extended) result code of SQLite means for people.
FaultKind kindOfCode(int code);

/// One prepared sentence of SQL. Values are bound, never written into it.
class Statement {
public:
    Statement(const QSqlDatabase& connection, std::string_view sql);

    /// Binds all values in order and starts anew.
    template <class... Values> Statement& with(const Values&... values)
    {
        reset();
        int position = 0;
        (bind(++position, values), ...);
        return *this;
    }
    /// Goes on to the next row; false at the end.
    bool step();
    /// Runs to the end and is ready for use again.
    void run();
    void reset();

    std::int64_t integer(int column) const;
    std::optional<std::int64_t> maybeInteger(int column) const;
    /// Text or bytes.
    std::string text(int column) const;
    bool isNull(int column) const;

    void bind(int position, std::int64_t value);
    void bind(int position, int value) { bind(position, static_cast<std::int64_t>(value)); }
    void bind(int position, std::string_view value);
    void bind(int position, const std::string& value) { bind(position, std::string_view(value)); }
    void bind(int position, Blob value);
    template <class Value> void bind(int position, const std::optional<Value>& value)
    {
        value ? bind(position, *value) : bindNull(position);
    }

private:
    void bindNull(int position);
    [[noreturn]] void fail() const;

    sqlite3* m_handle;
    QSqlQuery m_query;
    bool m_running = false;
};

enum class Access { ReadOnly, ReadWrite, Create };

/// One connection, set up so that a hostile or damaged file can do the least harm and a
/// power cut loses nothing that was acknowledged. Throws SqlError.
class Database {
public:
    Database() = default;
    ~Database();
    Database(Database&& other) noexcept;
    Database& operator=(Database&& other) noexcept;

    /// `vfs` names a file layer of tests; empty is the system's own.
    static Database open(const std::filesystem::path& file, Access access, const std::string& vfs = {});
    static Database inMemory();

    /// Durable and strict settings; nothing is read from the file before this.
    void settle(std::chrono::milliseconds busyTimeout);

    void run(const std::string& sql);
    Statement prepare(std::string_view sql) const { return {m_connection, sql}; }
    std::int64_t number(std::string_view sql) const;
    std::string word(std::string_view sql) const;

    bool inTransaction() const;
    bool isReadOnly() const;
    /// The first bytes of the file, read through the connection itself: opening it a second
    /// time by other means and closing that would drop the connection's locks.
    std::string head(std::size_t count) const;
    /// For what Qt's SQL access has no words: limits, hardening, page copies.
    sqlite3* handle() const { return m_handle; }

private:
    void close();

    QSqlDatabase m_connection;
    sqlite3* m_handle = nullptr;
};

/// All or nothing: what is done between its making and `commit` is undone unless committed.
class Transaction {
public:
    explicit Transaction(Database& database);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();

private:
    Database& m_database;
};

/// What work gives back, or Done where it gives nothing.
template <class Work>
using ResultOf =
    Result<std::conditional_t<std::is_void_v<std::invoke_result_t<Work>>, Done, std::invoke_result_t<Work>>>;

/// Runs work that may throw and hands its fault back as a value; no exception leaves this floor.
template <class Work> ResultOf<Work> guarded(Work&& work)
{
    try {
        if constexpr (std::is_void_v<std::invoke_result_t<Work>>) {
            work();
            return Done{};
        } else {
            return work();
        }
    } catch (const SqlError& error) {
        return error.fault();
    } catch (const std::filesystem::filesystem_error& error) {
        return Fault{FaultKind::Unwritable, error.code().message()};
    } catch (const std::bad_alloc&) {
        return Fault{FaultKind::Unavailable, "out of memory"};
    }
}

} // namespace mend::store
