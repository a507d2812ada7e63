#include "core/rules/vocabulary.h"

#include <algorithm>
#include <array>

namespace mend::rules {
namespace {

constexpr std::array<std::string_view, 4> conditions = {"porous", "vitrified", "lifted", "supported"};
constexpr std::array<std::string_view, 6> places = {"bench", "shelf", "cabinet", "humidBox", "tray", "outside"};
constexpr std::array<std::string_view, 6> resources = {"hands", "solvent", "tray", "sandBox", "blade", "heat"};
constexpr std::array<std::string_view, 11> families = {"epoxy",   "lacquer", "urushi", "acrylicResin",
                                                       "plaster", "filler",  "colour", "metalPowder",
                                                       "solvent", "support", "oldMend"};

bool isKey(std::string_view key)
{
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    return !key.empty() && letter(key.front()) &&
           std::all_of(key.begin(), key.end(), [&](char c) { return letter(c) || (c >= '0' && c <= '9') || c == '-'; });
}

} // namespace

Words knownConditions() { return conditions; }
Words knownPlaces() { return places; }
Words knownResources() { return resources; }
Words knownFamilies() { return families; }

bool isOneOf(std::string_view word, Words words) { return std::find(words.begin(), words.end(), word) != words.end(); }

std::string listed(Words words)
{
    std::string text;
    for (const std::string_view word : words) {
        text += (text.empty() ? "" : ", ") + std::string(word);
    }
    return text;
}

void checkWords(const std::vector<std::string>& used, Words known, const std::string& path, std::string_view what,
                Faults& faults)
{
    for (std::size_t i = 0; i < used.size(); ++i) {
        if (!isOneOf(used[i], known)) {
            faults.add(path + "/" + std::to_string(i),
                       "\"" + used[i] + "\" is no " + std::string(what) + ": " + listed(known));
        }
    }
}

void checkCondition(const Condition& when, const std::string& path, Faults& faults)
{
    if (!when.empty() && !isOneOf(when, conditions)) {
        faults.add(path + "/when", "\"" + when + "\" is no condition: " + listed(conditions));
    }
}

void checkCautions(const std::vector<std::string>& keys, const RuleBook& book, const std::string& path, Faults& faults)
{
    for (std::size_t i = 0; i < keys.size(); ++i) {
        if (book.caution(keys[i]) == nullptr) {
            faults.add(path + "/cautions/" + std::to_string(i), "there is no caution \"" + keys[i] + "\"");
        }
    }
}

void checkMaterial(const std::string& key, const RuleBook& book, const std::string& path, Faults& faults)
{
    if (book.material(key) == nullptr) {
        faults.add(path, "there is no material \"" + key + "\"");
    }
}

bool checkKey(std::string_view key, const std::string& path, Faults& faults)
{
    if (!isKey(key)) {
        faults.add(path, "a key is made of letters, digits and hyphens and begins with a letter");
    }
    return isKey(key);
}

} // namespace mend::rules
