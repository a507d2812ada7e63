#pragma once

#include <cassert>
#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace mend {

/// Why the world said no. Tests compare the kind; wording for people lives in the app.
enum class FaultKind {
    NotFound,
    BadInput,
    Busy,
    ReadOnly,
    DiskFull,
    Damaged,
    Foreign,
    Newer,
    Unwritable,
    Locked,
    Conflict,
    Cancelled,
    Unavailable,
};

/// One failure: its kind, and a detail for the log (never a customer's name).
struct Fault {
    FaultKind kind = FaultKind::BadInput;
    std::string detail;
    bool operator==(const Fault&) const = default;
};

/// Either a value or the fault that stood in its way. (g++ 12 in C++20 has no std::expected.)
template <class T> class [[nodiscard]] Result {
public:
    Result(T value) : m_held(std::move(value)) {}     // NOLINT(google-explicit-constructor): reads as a return
    Result(Fault fault) : m_held(std::move(fault)) {} // NOLINT(google-explicit-constructor)

    bool isOk() const { return std::holds_alternative<T>(m_held); }
    explicit operator bool() const { return isOk(); }
    const T& value() const&
    {
        assert(isOk());
        return std::get<T>(m_held);
    }
    /// From a passing result the value itself, so that `for (x : read().value())` is safe.
    T value() &&
    {
        assert(isOk());
        return std::get<T>(std::move(m_held));
    }
    T takeValue()
    {
        assert(isOk());
        return std::move(std::get<T>(m_held));
    }
    const Fault& fault() const
    {
        assert(!isOk());
        return std::get<Fault>(m_held);
    }

private:
    std::variant<T, Fault> m_held;
};

/// A thing done or not done, with no value to give.
struct Done {
    bool operator==(const Done&) const = default;
};
using Outcome = Result<Done>;

} // namespace mend
