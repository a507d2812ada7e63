#include "core/service/peoplelist.h"

#include <algorithm>

namespace mend::service {

namespace {

/// Somebody's place in the list as a number to find them by, from 1.
CustomerId placeInList(std::size_t index) { return CustomerId(static_cast<std::int64_t>(index) + 1); }

} // namespace

std::vector<Newcomer> compareList(const exchange::PeopleList& list, std::span<const record::Customer> known)
{
    std::vector<record::Customer> listed;
    for (std::size_t i = 0; i < list.people.size(); ++i) {
        listed.push_back(list.people[i].person);
        listed.back().id = placeInList(i);
    }
    const record::KnownPeople here(known);
    const record::KnownPeople inList(listed);
    std::vector<Newcomer> newcomers;
    for (std::size_t i = 0; i < list.people.size(); ++i) {
        Newcomer each{list.people[i], here.alike(list.people[i].person), {}};
        const auto alike = inList.alike(listed[i]);
        const auto earlier = std::ranges::find_if(
            alike, [&](const record::SamePerson& other) { return other.id.value() < placeInList(i).value(); });
        if (earlier != alike.end()) {
            each.alikeLine = list.people[static_cast<std::size_t>(earlier->id.value() - 1)].line;
        }
        newcomers.push_back(std::move(each));
    }
    return newcomers;
}

} // namespace mend::service
