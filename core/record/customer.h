#pragma once

#include "core/base/civil.h"
#include "core/base/id.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mend::record {

/// How somebody can be reached.
enum class ContactKind { Phone, Mail, Post, Other };

/// One more way to reach somebody, as they told it: never rewritten.
struct ContactWay {
    ContactKind kind = ContactKind::Other;
    std::string text;
    bool operator==(const ContactWay&) const = default;
};

/// Whoever a piece belongs to. A name and one contact are enough; the rest may stay empty.
struct Customer {
    CustomerId id;
    std::string name;
    std::string contact;
    std::vector<ContactWay> more = {}; ///< further ways to reach them
    std::string note = {};             ///< "rings back in the evening"
    /// Asked last whether their data may go on being kept; see `retention.h`.
    std::optional<CivilDay> keptOn = {};
    bool operator==(const Customer&) const = default;

    /// Their name and contacts were taken out of the file for good.
    bool isErased() const { return id.isSet() && name.empty() && contact.empty() && more.empty(); }
};

/// What kind of contact a text looks like: an at sign is mail, five digits or more a phone, several lines a
/// postal address.
ContactKind kindOfContact(std::string_view text);

/// What two numbers of one phone have in common, with a country code or without: the last nine digits.
/// Empty where there are fewer than five digits.
std::string phoneKey(std::string_view text);

/// All ways to reach somebody, the one contact first.
std::vector<ContactWay> contactsOf(const Customer& customer);

/// Somebody already known who may be the same person, and why it looks so.
struct SamePerson {
    CustomerId id;
    enum class Because { SameContact, SameName, NearlySameName } because = Because::SameName;
    bool operator==(const SamePerson&) const = default;
};

/// The people known already, made ready for asking many times who of them somebody could be.
class KnownPeople {
public:
    /// The people themselves are not kept.
    explicit KnownPeople(std::span<const Customer> known);

    /// Who of them could be the one whose name and contacts are told; likeliest first. Only ever asked about: two
    /// people are never made one without a person saying so.
    std::vector<SamePerson> alike(const Customer& told) const;

private:
    struct Known {
        CustomerId id;
        std::string name; ///< its words in one order, folded
    };
    std::vector<Known> m_people;
    std::multimap<std::string, std::size_t, std::less<>> m_byContact; ///< into `m_people`
};

/// The same for one question.
std::vector<SamePerson> alikePeople(const Customer& told, std::span<const Customer> known);

} // namespace mend::record
