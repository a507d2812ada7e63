#pragma once

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace mend::test {

/// A folder of its own for one test, gone afterwards.
class Scratch {
public:
    Scratch()
    {
        std::string name = (std::filesystem::temp_directory_path() / "mendbench-test-XXXXXX").native();
        if (!::mkdtemp(name.data())) {
            throw std::runtime_error("no scratch folder");
        }
        m_folder = name;
    }
    ~Scratch()
    {
        std::error_code ignored;
        std::filesystem::remove_all(m_folder, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    const std::filesystem::path& folder() const { return m_folder; }
    std::filesystem::path operator/(const std::string& name) const { return m_folder / name; }

private:
    std::filesystem::path m_folder;
};

} // namespace mend::test
