#include "core/service/lastseen.h"

#include <fstream>

namespace mend::service {

std::optional<Instant> LastSeen::read() const
{
    std::ifstream file(m_file);
    std::string text;
    std::getline(file, text);
    return fromRfc3339(text);
}

void LastSeen::touch(Instant now) const
{
    std::error_code ignored;
    std::filesystem::create_directories(m_file.parent_path(), ignored);
    std::ofstream file(m_file, std::ios::trunc);
    file << toRfc3339(now) << '\n';
}

} // namespace mend::service
