#pragma once

#include "core/rules/validation.h"
#include "tests/support/rulefiles.h"

#include <algorithm>
#include <string>

// What tests of validation share: the shipped rules to plant a fault in, and what was told.
namespace mend::test {

inline const rules::RuleBook& goodBook()
{
    static const rules::RuleBook book = shippedRules();
    return book;
}

inline rules::Procedure goldSeam() { return *goodBook().procedure("goldLacquerSeam"); }

inline rules::Stage& stageOf(rules::Procedure& procedure, const std::string& key)
{
    return procedure.stages[*procedure.indexOf(key)];
}

inline std::string pathOf(const rules::Procedure& procedure, const std::string& key, const std::string& rest)
{
    return "/stages/" + std::to_string(*procedure.indexOf(key)) + rest;
}

inline bool isTold(const std::vector<rules::RuleFault>& faults, const std::string& path)
{
    return std::any_of(faults.begin(), faults.end(), [&](const rules::RuleFault& fault) { return fault.path == path; });
}

inline std::string allTold(const std::vector<rules::RuleFault>& faults)
{
    std::string text;
    for (const rules::RuleFault& fault : faults) {
        text += fault.path + ": " + fault.text + "\n";
    }
    return text;
}

inline rules::SpanFigure minutesFigure(int value)
{
    return {std::chrono::minutes(value), Span{0}, std::chrono::days(10), {"x", {}}};
}

} // namespace mend::test
