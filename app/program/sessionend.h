#pragma once

#include <QString>
#include <filesystem>
#include <optional>

namespace mend::app {

/// What comes after a bench is put away: nothing, or the same window with another file.
struct Next {
    std::filesystem::path file;
    std::optional<std::filesystem::path> backup; ///< put in the place of `file` first
    bool takeOver = false;                       ///< a person said that the machine which held it is gone
    QString said;                                ///< stands as a notice once it is open
    bool atLanguage = false;                     ///< the language was chosen: Settings stand open there again
};

struct SessionEnd {
    int code = 0;
    std::optional<Next> next;
};

} // namespace mend::app
