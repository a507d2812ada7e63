#pragma once

#include "core/exchange/rulereader.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace mend::test {

inline std::string textOf(const std::filesystem::path& path)
{
    std::ifstream stream(path, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

/// Every rule file that ships, in the order of their names.
inline std::vector<exchange::RuleText> shippedRuleFiles()
{
    std::vector<exchange::RuleText> files;
    const std::filesystem::path folder = std::filesystem::path(MEND_SOURCE_DIR) / "resources" / "rules";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == ".json") {
            files.push_back({entry.path().lexically_relative(folder).string(), textOf(entry.path())});
        }
    }
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.file < b.file; });
    return files;
}

/// The shipped rules as one book; tests of other floors start from here.
inline rules::RuleBook shippedRules() { return exchange::readRules(shippedRuleFiles()).book; }

} // namespace mend::test
