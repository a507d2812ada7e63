#pragma once

#include "core/record/customer.h"

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace mend::exchange {

/// Somebody out of a list, as they would be taken in: shown before anything is kept.
struct ListedPerson {
    record::Customer person;
    int line = 0;                   ///< where they begin in the list
    std::vector<std::string> notes; ///< what was left out or could not be read, in words
};

/// One thing that was wrong, with its line.
struct ListFault {
    int line = 0;
    std::string text;
    bool operator==(const ListFault&) const = default;
};

/// Everybody a list holds, and what was wrong with it. One bad entry never loses the others.
struct PeopleList {
    std::vector<ListedPerson> people;
    std::vector<ListFault> faults;
};

/// Bounds of what is read; the rest of a longer list is left with a fault that says so.
constexpr std::size_t mostPeopleListed = 10'000;
constexpr std::size_t longestListField = 1'000'000;

/// Reads vCards: RFC 6350 (4.0), 3.0 and 2.1 as they are met: folded lines, quoted-printable, Latin-1, groups before
/// a name, cards within cards. Name, phones, mail, addresses and notes are taken, everything else (pictures,
/// birthdays) is left: it is not needed.
PeopleList readVcards(std::istream& in);

/// Reads a table whose first row names its columns: name, and any of contact, phone, mail, address, note. Nothing
/// is taken where the table itself is broken; a row without a name or contact is a fault of its own.
PeopleList readPeopleTable(std::istream& in);

} // namespace mend::exchange
