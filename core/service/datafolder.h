#pragma once

#include <filesystem>
#include <optional>

namespace mend::service {

/// Where the files lie that came with the program (its rules among them): beside an installed
/// program in share/mendbench, or in the source tree where it was built. Empty where there are none.
std::optional<std::filesystem::path> dataFolder();

/// The same for a program at that path.
std::optional<std::filesystem::path> dataFolderOf(const std::filesystem::path& program);

/// Where a person's own files of this program lie: XDG_CONFIG_HOME, else ~/.config, and so on.
std::filesystem::path configFolder(); ///< own rules
std::filesystem::path benchFolder();  ///< bench files (XDG_DATA_HOME)
std::filesystem::path stateFolder();  ///< last seen, rules kept as last good (XDG_STATE_HOME)

} // namespace mend::service
