#include "core/record/customer.h"

#include "core/base/foldedtext.h"

#include <algorithm>

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

bool shareContact(const Customer& one, const Customer& other)
{
    const auto ways = contactsOf(other);
    return std::ranges::any_of(contactsOf(one), [&](const ContactWay& way) {
        return std::ranges::any_of(ways,
                                   [&](const ContactWay& theirs) { return contactKey(way) == contactKey(theirs); });
    });
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

std::vector<SamePerson> alikePeople(const Customer& told, std::span<const Customer> known)
{
    using Because = SamePerson::Because;
    const std::string name = sortedName(told.name);
    std::vector<SamePerson> alike;
    for (const Customer& each : known) {
        if (each.isErased() || (told.id.isSet() && each.id == told.id)) {
            continue;
        }
        const std::string theirs = sortedName(each.name);
        if (shareContact(told, each)) {
            alike.push_back({each.id, Because::SameContact});
        } else if (!name.empty() && theirs == name) {
            alike.push_back({each.id, Because::SameName});
        } else if (name.size() > 3 && lettersApart(name, theirs, 2) <= (name.size() > 7 ? 2 : 1)) {
            alike.push_back({each.id, Because::NearlySameName});
        }
    }
    std::ranges::stable_sort(alike, {}, &SamePerson::because);
    return alike;
}

} // namespace mend::record
