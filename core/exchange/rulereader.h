#pragma once

#include "core/rules/ownfigures.h"
#include "core/rules/rulebook.h"
#include "core/rules/validation.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mend::exchange {

/// One rule file as it was found: its name, for pointing at, and its text.
struct RuleText {
    std::string file;
    std::string text;
};

/// What the rule files say, or everything that is wrong with them. With any fault the book
/// must not come into force; see rules::keepOrRefuse.
struct ReadRules {
    rules::RuleBook book;
    std::vector<rules::RuleFault> faults; ///< in the order of the files, then of their lines
    std::vector<rules::OwnFigure> own; ///< numbers a studio has put in the place of shipped ones, in the book already
    bool isGood() const { return faults.empty(); }
};

/// Reads rule files, shipped and a studio's own together, into one book. The layout is
/// resources/rules/FORMAT.md. Where a procedure has several revisions the highest is the one
/// for new pieces and the others stay findable. All faults of all files come at once: form
/// (unknown, missing or doubled keys, wrong kinds) and meaning (rules::validate). Only while
/// a file is not even JSON, meaning is not looked at, for what it held is not known.
ReadRules readRules(std::span<const RuleText> files);

/// A procedure as one line of JSON with sorted keys and seconds for every time: the same
/// procedure always has the same text. It is itself a valid procedure file.
std::string canonicalText(const rules::Procedure& procedure);

/// The same for people to read and change: one key a line.
std::string fileText(const rules::Procedure& procedure);

/// A studio's own numbers as a file of its own, for people to read and change.
std::string ownFiguresText(const std::vector<rules::OwnFigure>& own);

/// The name of this revision for ever: SHA-256 of the canonical text.
rules::RevisionHash revisionHash(const rules::Procedure& procedure);

/// One procedure read back from its canonical text or from a file, form only: what it names
/// outside itself is not looked up. Empty with faults if the form is broken.
struct ReadProcedure {
    std::optional<rules::Procedure> procedure;
    std::vector<rules::RuleFault> faults;
};
ReadProcedure readProcedure(const RuleText& file);

} // namespace mend::exchange
