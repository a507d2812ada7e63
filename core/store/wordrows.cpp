#include "core/store/wordrows.h"

#include "core/store/seal.h"

namespace mend::store {

namespace {

Bytes sealOf(std::string_view kind, std::string_view key, std::string_view value)
{
    return Canon(kind).add(key).add(value).seal();
}

/// `row` holds key, value, seal.
std::string sealedValue(const Statement& row, const char* kind)
{
    const std::string key = row.text(0);
    std::string value = row.text(1);
    if (row.text(2) != sealOf(kind, key, value)) {
        throw SqlError(Fault{FaultKind::Damaged, std::string(kind) + " " + key});
    }
    return value;
}

std::optional<std::string> find(Statement statement, const std::string& key, const char* kind)
{
    statement.with(key);
    return statement.step() ? std::optional(sealedValue(statement, kind)) : std::nullopt;
}

void put(Statement statement, const char* kind, const std::string& key, const std::string& value)
{
    statement.with(key, value, Blob{sealOf(kind, key, value)}).run();
}

} // namespace

std::optional<std::string> WordRows::setting(const std::string& key) const
{
    return find(m_database->prepare("SELECT key, value, seal FROM setting WHERE key = ?1"), key, "setting");
}

std::map<std::string, std::string> WordRows::settings() const
{
    std::map<std::string, std::string> all;
    Statement statement = m_database->prepare("SELECT key, value, seal FROM setting");
    while (statement.step()) {
        all[statement.text(0)] = sealedValue(statement, "setting");
    }
    return all;
}

void WordRows::setSetting(const std::string& key, const std::string& value)
{
    put(m_database->prepare("INSERT INTO setting VALUES (?1, ?2, ?3) ON CONFLICT (key) DO UPDATE "
                            "SET value = excluded.value, seal = excluded.seal"),
        "setting", key, value);
}

std::optional<std::string> WordRows::meta(const std::string& key) const
{
    return find(m_database->prepare("SELECT key, value, seal FROM meta WHERE key = ?1"), key, "meta");
}

void WordRows::setMeta(const std::string& key, const std::string& value)
{
    put(m_database->prepare("INSERT INTO meta VALUES (?1, ?2, ?3) ON CONFLICT (key) DO UPDATE "
                            "SET value = excluded.value, seal = excluded.seal"),
        "meta", key, value);
}

void WordRows::checkMeta() const
{
    Statement statement = m_database->prepare("SELECT key, value, seal FROM meta");
    while (statement.step()) {
        sealedValue(statement, "meta");
    }
}

void WordRows::putRules(const RuleText& revision)
{
    const auto held = rules(revision.hash);
    if (held && *held != revision.text) {
        throw SqlError(Fault{FaultKind::Conflict, "another text stands under rule hash " + revision.hash});
    }
    if (!held) {
        put(m_database->prepare("INSERT INTO rule_revision VALUES (?1, ?2, ?3)"), "rule_revision", revision.hash,
            revision.text);
    }
}

std::optional<std::string> WordRows::rules(const std::string& hash) const
{
    return find(m_database->prepare("SELECT hash, text, seal FROM rule_revision WHERE hash = ?1"), hash,
                "rule_revision");
}

std::vector<RuleText> WordRows::allRules() const
{
    std::vector<RuleText> all;
    Statement statement = m_database->prepare("SELECT hash, text, seal FROM rule_revision ORDER BY hash");
    while (statement.step()) {
        all.push_back({statement.text(0), sealedValue(statement, "rule_revision")});
    }
    return all;
}

} // namespace mend::store
