#pragma once

#include "core/base/time.h"

#include <filesystem>
#include <optional>

namespace mend::service {

/// Remembers when the program last ran: a small file touched once a minute, not a row.
class LastSeen {
public:
    explicit LastSeen(std::filesystem::path file) : m_file(std::move(file)) {}

    /// Empty where it never ran or the file cannot be read.
    std::optional<Instant> read() const;
    /// Failing to write it is no failure of anything else.
    void touch(Instant now) const;

private:
    std::filesystem::path m_file;
};

} // namespace mend::service
