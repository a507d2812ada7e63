#pragma once

#include "core/store/sqlite.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace mend::store {

/// One revision of a rule, whole, under its hash.
struct RuleText {
    std::string hash;
    std::string text;
    bool operator==(const RuleText&) const = default;
};

/// Words kept under a key: what the studio has set, what the file says of itself, and the
/// text of every rule revision an event was told under. Throws SqlError; Damaged where a seal is broken.
class WordRows {
public:
    explicit WordRows(const Database& database) : m_database(&database) {}

    std::optional<std::string> setting(const std::string& key) const;
    std::map<std::string, std::string> settings() const;
    void setSetting(const std::string& key, const std::string& value);

    std::optional<std::string> meta(const std::string& key) const;
    void setMeta(const std::string& key, const std::string& value);

    /// Reads what the file says of itself; throws where a seal is broken.
    void checkMeta() const;

    /// Written once: the same hash with another text is a Conflict.
    void putRules(const RuleText& rules);
    std::optional<std::string> rules(const std::string& hash) const;
    std::vector<RuleText> allRules() const;

private:
    const Database* m_database;
};

} // namespace mend::store
