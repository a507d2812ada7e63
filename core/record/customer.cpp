#include "core/record/customer.h"

#include "core/base/foldedtext.h"

#include <algorithm>
#include <set>

namespace mend::record {

namespace {

constexpr std::size_t fewestDigits = 5;
constexpr std::size_t phoneTail = 9;

/// The words of a name in one order, so that "Müller, Ana" and "Ana Muller" are alike.
std::string sortedName(std::string_view name)
{
    std::vector<std::string> words = foldedWords(name);
    std::ranges::sort(words);
    std::string sorted;
    for (const std::string& word : words) {
        sorted += (sorted.empty() ? "" : " ") + word;
    }
    return sorted;
}

std::string contactKey(const ContactWay& way)
{
    const std::string phone = way.kind == ContactKind::Mail ? std::string() : phoneKey(way.text);
    return phone.empty() ? foldedText(way.text) : phone;
}

} // namespace

ContactKind kindOfContact(std::string_view text)
{
    if (text.find('@') != std::string_view::npos) {
        return ContactKind::Mail;
    }
    if (text.find('\n') != std::string_view::npos) {
        return ContactKind::Post;
    }
    return digitsOf(text).size() >= fewestDigits ? ContactKind::Phone : ContactKind::Other;
}

std::string phoneKey(std::string_view text)
{
    const std::string digits = digitsOf(text);
    if (digits.size() < fewestDigits) {
        return {};
    }
    return digits.substr(digits.size() - std::min(digits.size(), phoneTail));
}

std::vector<ContactWay> contactsOf(const Customer& customer)
{
    std::vector<ContactWay> ways;
    if (!customer.contact.empty()) {
        ways.push_back({kindOfContact(customer.contact), customer.contact});
    }
    ways.insert(ways.end(), customer.more.begin(), customer.more.end());
    return ways;
}

KnownPeople::KnownPeople(std::span<const Customer> known)
{
    for (const Customer& each : known) {
        if (each.isErased()) {
            continue;
        }
        for (const ContactWay& way : contactsOf(each)) {
            m_byContact.emplace(contactKey(way), m_people.size());
        }
        m_people.push_back({each.id, sortedName(each.name)});
    }
}

std::vector<SamePerson> KnownPeople::alike(const Customer& told) const
{
    using Because = SamePerson::Because;
    constexpr std::size_t shortName = 3; // any two of them are nearly the same
    constexpr std::size_t longName = 7;
    std::set<std::size_t> sharing;
    for (const ContactWay& way : contactsOf(told)) {
        const auto [first, last] = m_byContact.equal_range(contactKey(way));
        std::for_each(first, last, [&](const auto& entry) { sharing.insert(entry.second); });
    }
    const std::string name = sortedName(told.name);
    const int mostApart = name.size() > longName ? 2 : 1;
    std::vector<SamePerson> alike;
    for (std::size_t i = 0; i < m_people.size(); ++i) {
        const Known& each = m_people[i];
        if (told.id.isSet() && each.id == told.id) {
            continue;
        }
        if (sharing.contains(i)) {
            alike.push_back({each.id, Because::SameContact});
        } else if (!name.empty() && each.name == name) {
            alike.push_back({each.id, Because::SameName});
        } else if (name.size() > shortName && lettersApart(name, each.name, 2) <= mostApart) {
            alike.push_back({each.id, Because::NearlySameName});
        }
    }
    std::ranges::stable_sort(alike, {}, &SamePerson::because);
    return alike;
}

std::vector<SamePerson> alikePeople(const Customer& told, std::span<const Customer> known)
{
    return KnownPeople(known).alike(told);
}

} // namespace mend::record
