#include "core/rules/rulebook.h"

#include <algorithm>

namespace mend::rules {
namespace {

template <class Row> const Row* rowByKey(const std::vector<Row>& rows, std::string_view key)
{
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.key == key; });
    return found == rows.end() ? nullptr : &*found;
}

const Procedure* byHash(const std::vector<Procedure>& procedures, const RevisionHash& hash)
{
    const auto found =
        std::find_if(procedures.begin(), procedures.end(), [&](const Procedure& one) { return one.hash == hash; });
    return found == procedures.end() ? nullptr : &*found;
}

} // namespace

const Stage* Procedure::find(std::string_view stageKey) const { return rowByKey(stages, stageKey); }

std::optional<std::size_t> Procedure::indexOf(std::string_view stageKey) const
{
    const Stage* stage = find(stageKey);
    if (stage == nullptr) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(stage - stages.data());
}

const Procedure* RuleBook::procedure(std::string_view key) const { return rowByKey(procedures, key); }

const Procedure* RuleBook::revision(const RevisionHash& hash) const
{
    const Procedure* current = byHash(procedures, hash);
    return current != nullptr ? current : byHash(formerRevisions, hash);
}

const Material* RuleBook::material(std::string_view key) const { return rowByKey(materials, key); }

const NamedLaw* RuleBook::law(std::string_view key) const { return rowByKey(laws, key); }

const Hazard* RuleBook::hazard(std::string_view key) const { return rowByKey(hazards, key); }

const BenchState* RuleBook::state(std::string_view key) const { return rowByKey(states, key); }

const Caution* RuleBook::caution(std::string_view key) const { return rowByKey(cautions, key); }

} // namespace mend::rules
