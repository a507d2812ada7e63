#pragma once

#include "core/exchange/people.h"

#include <optional>
#include <span>
#include <vector>

namespace mend::service {

/// Somebody out of a list beside the people who are here already.
struct Newcomer {
    exchange::ListedPerson listed;
    std::vector<record::SamePerson> known; ///< who of those here they may be, likeliest first
    std::optional<int> alikeLine;          ///< the line of somebody earlier in the list who may be the same

    /// Nothing speaks against keeping them as somebody new.
    bool isPlainlyNew() const { return known.empty() && !alikeLine; }
};

/// Everybody of a list, in its order. Whoever may be here already is a person's to decide: nobody is made one with
/// somebody else.
std::vector<Newcomer> compareList(const exchange::PeopleList& list, std::span<const record::Customer> known);

} // namespace mend::service
