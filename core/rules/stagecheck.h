#pragma once

#include "core/rules/figurecheck.h"
#include "core/rules/rulebook.h"

namespace mend::rules {

/// Looks at one stage of a procedure: its words fit their places, what it names exists, it
/// hangs on stages that can be hung on, and its times can come in that order.
class StageCheck {
public:
    StageCheck(const Procedure& procedure, const RuleBook& book, Faults& faults)
        : m_procedure(procedure), m_book(book), m_faults(faults)
    {
    }

    /// `path` is the stage's own: "/stages/9".
    void look(const Stage& stage, const std::string& path);

private:
    void checkWords(const Stage& stage, const std::string& path);
    void checkReferences(const Stage& stage, const std::string& path);
    void checkMixed(const std::string& key, const std::string& path);
    void checkState(const std::string& key, const std::string& path);
    void checkWait(const Wait& wait, const std::string& path, bool last);
    /// The stage a time hangs on; null, and told, where there is none.
    const Stage* checkOrigin(const Lag& lag, const std::string& path);
    void checkOpening(const Stage& stage, const Lag& lag, const std::string& path);
    void checkClosing(const Stage& stage, const Lag& lag, const std::string& path);
    void checkCost(const Stage& stage, const std::string& path);
    void checkTimes(const Stage& stage, const std::string& path);

    const Procedure& m_procedure;
    const RuleBook& m_book;
    Faults& m_faults;
};

} // namespace mend::rules
