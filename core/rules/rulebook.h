#pragma once

#include "core/cure/law.h"
#include "core/rules/hazard.h"
#include "core/rules/material.h"
#include "core/rules/stage.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mend::rules {

/// Names one revision of a procedure for ever: the hash of its canonical text.
using RevisionHash = std::string;

/// The ordered stages for one kind of mend.
struct Procedure {
    std::string key;     ///< "goldLacquerSeam"
    std::string name;    ///< "Gold-dusted lacquer seam"
    std::string summary; ///< one sentence for whoever chooses it
    int revision = 1;
    std::vector<Stage> stages; ///< in the order of the work; a lag only names stages of the same procedure
    std::vector<std::string> materials;
    std::vector<std::string> cautions;
    RevisionHash hash; ///< filled in by the reader
    bool operator==(const Procedure&) const = default;

    const Stage* find(std::string_view stageKey) const;
    std::optional<std::size_t> indexOf(std::string_view stageKey) const;
};

/// One caution, said the same way everywhere.
struct Caution {
    std::string key;
    std::string text;
    Source source;
    bool operator==(const Caution&) const = default;
};

/// A cure law with its name and where its numbers come from.
struct NamedLaw {
    std::string key;
    cure::Law law;
    Source source;
    bool operator==(const NamedLaw&) const = default;
};

/// The practice figures that belong to no stage.
struct Practice {
    SpanFigure benchReadingAge;   ///< 4 h
    SpanFigure cabinetReadingAge; ///< 24 h, humid box too
    Figure<Length> runChip;       ///< how much chip one pair of hands lays and wipes in one run
    Figure<Length> runSeam;
    SpanFigure twoTapsFrom; ///< hands-on time from which a stage is begun and done by two taps: 5 min
    bool operator==(const Practice&) const = default;
};

/// Everything the trade knows, as read from the rule files: plain values.
struct RuleBook {
    std::vector<NamedLaw> laws;
    std::vector<Material> materials;
    std::vector<Procedure> procedures;
    std::vector<Hazard> hazards;
    std::vector<BenchState> states;
    std::vector<Caution> cautions;
    Practice practice;

    const Procedure* procedure(std::string_view key) const;    ///< the revision for new pieces
    const Procedure* revision(const RevisionHash& hash) const; ///< any revision held, new or old
    const Material* material(std::string_view key) const;
    const NamedLaw* law(std::string_view key) const;
    const Hazard* hazard(std::string_view key) const;
    const BenchState* state(std::string_view key) const;
    const Caution* caution(std::string_view key) const;

    std::vector<Procedure> formerRevisions; ///< revisions that events still use
    bool operator==(const RuleBook&) const = default;
};

} // namespace mend::rules
