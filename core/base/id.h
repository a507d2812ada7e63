#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace mend {

/// The number that names one row for ever. An id of one kind never turns into
/// another kind's or into a plain number by accident; 0 is no id.
template <class Tag> class Id {
public:
    constexpr Id() = default;
    constexpr explicit Id(std::int64_t value) : m_value(value) {}
    constexpr std::int64_t value() const { return m_value; }
    constexpr bool isSet() const { return m_value != 0; }
    constexpr auto operator<=>(const Id&) const = default;

private:
    std::int64_t m_value = 0;
};

struct PieceTag {};
struct PersonTag {};
struct PlaceTag {};
struct MixTag {};
struct EventTag {};
struct CustomerTag {};
using PieceId = Id<PieceTag>;
using PersonId = Id<PersonTag>; ///< someone who works at the bench
using PlaceId = Id<PlaceTag>;
using MixId = Id<MixTag>;
using EventId = Id<EventTag>;
using CustomerId = Id<CustomerTag>; ///< someone who owns a piece

} // namespace mend

template <class Tag> struct std::hash<mend::Id<Tag>> {
    std::size_t operator()(mend::Id<Tag> id) const noexcept { return std::hash<std::int64_t>{}(id.value()); }
};
