#include "core/store/ownerlock.h"

#include "core/store/benchfile.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <utility>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace mend::store {

namespace fs = std::filesystem;

namespace {

std::string hostName()
{
    std::array<char, 256> name{};
    ::gethostname(name.data(), name.size() - 1);
    std::string machine;
    std::ifstream("/etc/machine-id") >> machine;
    return std::string(name.data()) + "/" + machine;
}

std::string textOf(const Owner& owner) { return std::to_string(owner.pid) + '\n' + owner.host + '\n'; }

/// Opens and locks the file that stands under the name, not one that was just removed by its holder.
int lockedDescriptor(const fs::path& file)
{
    for (;;) {
        const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, S_IRUSR | S_IWUSR);
        if (descriptor < 0 || ::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
            const int why = errno;
            if (descriptor >= 0) {
                ::close(descriptor);
            }
            errno = why;
            return -1;
        }
        struct stat held = {};
        struct stat named = {};
        ::fstat(descriptor, &held);
        if (::stat(file.c_str(), &named) == 0 && held.st_ino == named.st_ino && held.st_dev == named.st_dev) {
            return descriptor;
        }
        ::close(descriptor);
    }
}

Fault lockedBy(const std::optional<Owner>& owner)
{
    return {FaultKind::Locked,
            owner ? "pid " + std::to_string(owner->pid) + " on " + owner->host : std::string("someone")};
}

} // namespace

Owner thisOwner() { return {hostName(), ::getpid()}; }

fs::path OwnerLock::fileFor(const fs::path& benchFile) { return benchFile.native() + ".lock"; }

std::optional<Owner> OwnerLock::holder(const fs::path& benchFile)
{
    std::ifstream file(fileFor(benchFile));
    Owner owner;
    if (!(file >> owner.pid) || !(file >> std::ws) || !std::getline(file, owner.host)) {
        return std::nullopt;
    }
    return owner;
}

bool isHeldElsewhere(const fs::path& benchFile)
{
    const std::optional<Owner> holder = OwnerLock::holder(trueName(benchFile));
    return holder && holder->host != thisOwner().host;
}

Result<OwnerLock> OwnerLock::take(const fs::path& benchFile, bool takeOver, const Owner& self)
{
    OwnerLock lock;
    lock.m_file = fileFor(benchFile);
    lock.m_descriptor = lockedDescriptor(lock.m_file);
    if (!lock.isHeld()) {
        if (errno == EWOULDBLOCK) {
            return lockedBy(holder(benchFile));
        }
        return Fault{FaultKind::Unwritable, std::string("lock file: ") + std::strerror(errno)};
    }
    const std::optional<Owner> former = holder(benchFile);
    if (former && former->host != self.host && !takeOver) {
        ::close(std::exchange(lock.m_descriptor, -1)); // theirs: it stays as it is
        return lockedBy(former);
    }
    const std::string text = textOf(self);
    if (::ftruncate(lock.m_descriptor, 0) != 0 ||
        ::pwrite(lock.m_descriptor, text.data(), text.size(), 0) != static_cast<ssize_t>(text.size())) {
        return Fault{FaultKind::Unwritable, std::string("lock file: ") + std::strerror(errno)};
    }
    return lock;
}

OwnerLock::OwnerLock(OwnerLock&& other) noexcept
    : m_descriptor(std::exchange(other.m_descriptor, -1)), m_file(std::move(other.m_file))
{
}

OwnerLock& OwnerLock::operator=(OwnerLock&& other) noexcept
{
    if (this != &other) {
        release();
        m_descriptor = std::exchange(other.m_descriptor, -1);
        m_file = std::move(other.m_file);
    }
    return *this;
}

OwnerLock::~OwnerLock() { release(); }

void OwnerLock::release()
{
    if (isHeld()) {
        ::unlink(m_file.c_str()); // while still held, so that no one's fresh lock is removed
        ::close(std::exchange(m_descriptor, -1));
    }
}

} // namespace mend::store
