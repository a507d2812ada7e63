#include "core/store/migrator.h"

namespace mend::store {

namespace {

std::string versionPragma(int version) { return "PRAGMA user_version = " + std::to_string(version); }

int versionOf(const Database& database) { return static_cast<int>(database.number("PRAGMA user_version")); }

} // namespace

Migration Migrator::assess(const Database& database) const
{
    if (database.number("PRAGMA application_id") != applicationId) {
        return Migration::Foreign;
    }
    const int version = versionOf(database);
    if (version > newest()) {
        return Migration::Newer;
    }
    if (version < m_steps.front().version || textOf(database) != textOf(version)) {
        return Migration::Strange;
    }
    return version == newest() ? Migration::UpToDate : Migration::Outdated;
}

void Migrator::create(Database& database) const
{
    Transaction transaction(database);
    for (const SchemaStep& step : m_steps) {
        database.run(step.sql);
    }
    database.run("PRAGMA application_id = " + std::to_string(applicationId));
    database.run(versionPragma(newest()));
    transaction.commit();
}

Migration Migrator::migrate(Database& database, const std::function<bool()>& copyBefore) const
{
    const Migration standing = assess(database);
    if (standing != Migration::Outdated) {
        return standing;
    }
    if (!copyBefore()) {
        return Migration::NoCopy;
    }
    for (const SchemaStep& step : m_steps) {
        if (step.version > versionOf(database)) {
            const Migration outcome = take(database, step);
            if (outcome != Migration::Migrated) {
                return outcome;
            }
        }
    }
    return textOf(database) == textOf(newest()) ? Migration::Migrated : Migration::Strange;
}

/// SQLite's way of rebuilding tables wants enforcement off, which only works outside a transaction.
Migration Migrator::take(Database& database, const SchemaStep& step) const
{
    Migration outcome = Migration::StepFailed;
    try {
        database.run("PRAGMA foreign_keys = OFF");
        Transaction transaction(database);
        database.run(step.sql);
        database.run(versionPragma(step.version));
        if (database.prepare("PRAGMA foreign_key_check").step()) {
            outcome = Migration::LinksBroken;
        } else {
            transaction.commit();
            outcome = Migration::Migrated;
        }
    } catch (const SqlError&) {
        outcome = Migration::StepFailed;
    }
    database.run("PRAGMA foreign_keys = ON");
    return outcome;
}

std::string Migrator::textOf(int version) const
{
    Database fresh = Database::inMemory();
    for (const SchemaStep& step : m_steps) {
        if (step.version <= version) {
            fresh.run(step.sql);
        }
    }
    return textOf(fresh);
}

std::string Migrator::textOf(const Database& database)
{
    std::string text;
    Statement rows = database.prepare("SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema "
                                      "WHERE name NOT LIKE 'sqlite\\_stat%' ESCAPE '\\' ORDER BY type, name");
    while (rows.step()) {
        text += rows.text(0) + ' ' + rows.text(1) + ' ' + rows.text(2) + '\n' + rows.text(3) + '\n';
    }
    return text;
}

} // namespace mend::store
