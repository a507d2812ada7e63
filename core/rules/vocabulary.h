#pragma once

#include "core/rules/figurecheck.h"
#include "core/rules/rulebook.h"

#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mend::rules {

/// Some of the words a rule file may use in one place.
using Words = std::span<const std::string_view>;

/// What a rule file may say where it cannot name a row of its own: the conditions of a piece,
/// the kinds of place, what a stage needs, the families of materials.
Words knownConditions();
Words knownPlaces();
Words knownResources();
Words knownFamilies();

bool isOneOf(std::string_view word, Words words);

/// "bench, shelf, cabinet": what could have been said instead.
std::string listed(Words words);

/// A fault for each word that is none of the known ones.
void checkWords(const std::vector<std::string>& used, Words known, const std::string& path, std::string_view what,
                Faults& faults);
/// A fault where a condition is given that no piece can meet.
void checkCondition(const Condition& when, const std::string& path, Faults& faults);
/// A fault for each caution that the book does not hold.
void checkCautions(const std::vector<std::string>& keys, const RuleBook& book, const std::string& path, Faults& faults);
/// A fault where the book holds no such material.
void checkMaterial(const std::string& key, const RuleBook& book, const std::string& path, Faults& faults);
/// A fault where a key could not name a row: letters, digits and hyphens after a letter.
bool checkKey(std::string_view key, const std::string& path, Faults& faults);

/// A fault for each key that could not name a row, or names two.
template <class Row> void checkKeys(const std::vector<Row>& rows, const std::string& path, Faults& faults)
{
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string at = path + "/" + std::to_string(i) + "/key";
        if (checkKey(rows[i].key, at, faults) && !seen.insert(rows[i].key).second) {
            faults.add(at, "\"" + rows[i].key + "\" is given twice");
        }
    }
}

} // namespace mend::rules
