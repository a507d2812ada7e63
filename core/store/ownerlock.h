#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <optional>
#include <string>

namespace mend::store {

/// Who holds a bench file open for writing.
struct Owner {
    std::string host; ///< machine id and name
    std::int64_t pid = 0;
    bool operator==(const Owner&) const = default;
};

/// This program, on this machine.
Owner thisOwner();

/// Whether another machine wrote its name into the lock beside that file and did not take it out.
bool isHeldElsewhere(const std::filesystem::path& benchFile);

/// Keeps a second writer away from a bench file: a small file beside it that says who writes,
/// held by a lock which the system drops when its holder dies. Over a network that lock may not
/// hold, so the name of another machine in it is believed until a person says otherwise.
class OwnerLock {
public:
    OwnerLock() = default;
    OwnerLock(OwnerLock&& other) noexcept;
    OwnerLock& operator=(OwnerLock&& other) noexcept;
    ~OwnerLock();

    /// Locked (detail "pid 123 on name") where someone holds it; Unwritable where the file cannot be made.
    /// `takeOver`: a person said that the other machine is gone.
    static Result<OwnerLock> take(const std::filesystem::path& benchFile, bool takeOver = false,
                                  const Owner& self = thisOwner());
    /// Who wrote it last, if anyone did and did not leave.
    static std::optional<Owner> holder(const std::filesystem::path& benchFile);
    static std::filesystem::path fileFor(const std::filesystem::path& benchFile);
    bool isHeld() const { return m_descriptor >= 0; }

private:
    void release();
    int m_descriptor = -1;
    std::filesystem::path m_file;
};

} // namespace mend::store
