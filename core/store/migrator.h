#pragma once

#include "core/store/sqlite.h"

#include <functional>
#include <string>
#include <vector>

namespace mend::store {

/// One numbered SQL file of resources/schema. Never edited once released.
struct SchemaStep {
    int version = 0;
    std::string sql;
};

/// The steps that this program ships, in order, built in.
std::vector<SchemaStep> shippedSchema();

/// "Mndb": what tells a bench file from any other SQLite file.
constexpr std::int64_t applicationId = 0x4D6E6462;

/// How a file stands to this program, or what became of bringing it up to date.
enum class Migration {
    UpToDate,
    Outdated, ///< older: would be brought up to date by a writing open
    Migrated,
    Newer,       ///< written by a later program: left alone
    Foreign,     ///< not a bench file
    Strange,     ///< its tables are not those of its version: someone else's hand was in it
    NoCopy,      ///< the copy to be made beforehand could not be: nothing was changed
    StepFailed,  ///< a step failed: the file is as it was before that step
    LinksBroken, ///< a step left rows that name rows that are not there: undone
};

/// Brings an old bench file up to the present shape, one transaction a version, after a copy was made.
class Migrator {
public:
    explicit Migrator(std::vector<SchemaStep> steps = shippedSchema()) : m_steps(std::move(steps)) {}

    int newest() const { return m_steps.back().version; }
    /// Throws SqlError where the file cannot be read.
    Migration assess(const Database& database) const;
    /// Lays an empty file out. Throws SqlError.
    void create(Database& database) const;
    /// `copyBefore` makes the copy and says whether it stands. Empty: the faults are those of the last step.
    Migration migrate(Database& database, const std::function<bool()>& copyBefore) const;
    /// Everything that makes up the shape of a file of this version, as text.
    std::string textOf(int version) const;
    static std::string textOf(const Database& database);

private:
    Migration take(Database& database, const SchemaStep& step) const;
    std::vector<SchemaStep> m_steps;
};

} // namespace mend::store
