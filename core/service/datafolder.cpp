#include "core/service/datafolder.h"

#include <cstdlib>
#include <string>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

bool holdsRules(const fs::path& folder)
{
    std::error_code ignored;
    return fs::is_directory(folder / "rules", ignored);
}

bool isInside(const fs::path& path, const fs::path& folder)
{
    const fs::path inside = path.lexically_relative(folder);
    return !inside.empty() && *inside.begin() != "..";
}

/// A relative path in such a variable is to be passed over (XDG base directory specification 0.8).
fs::path homeFolder(const char* variable, const char* underHome)
{
    const char* given = std::getenv(variable);
    if (given && fs::path(given).is_absolute()) {
        return fs::path(given) / "mendbench";
    }
    const char* home = std::getenv("HOME");
    return fs::path(home ? home : "/") / underHome / "mendbench";
}

} // namespace

std::optional<fs::path> dataFolderOf(const fs::path& program)
{
    const fs::path installed = program.parent_path().parent_path() / "share" / "mendbench";
    if (holdsRules(installed)) {
        return installed;
    }
    const fs::path source = fs::path(MEND_SOURCE_DIR) / "resources";
    if (isInside(program, MEND_BINARY_DIR) && holdsRules(source)) {
        return source;
    }
    return std::nullopt;
}

std::optional<fs::path> dataFolder()
{
    std::error_code failed;
    const fs::path program = fs::read_symlink("/proc/self/exe", failed);
    return failed ? std::nullopt : dataFolderOf(program);
}

fs::path configFolder() { return homeFolder("XDG_CONFIG_HOME", ".config"); }
fs::path benchFolder() { return homeFolder("XDG_DATA_HOME", ".local/share"); }
fs::path stateFolder() { return homeFolder("XDG_STATE_HOME", ".local/state"); }

} // namespace mend::service
