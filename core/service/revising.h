#pragma once

#include "core/base/result.h"
#include "core/service/ruleshelf.h"

#include <filesystem>

namespace mend::service {

/// What became of a procedure that was edited: kept under this hash, or everything that is wrong with it.
struct Revised {
    rules::RevisionHash hash; ///< empty: it was not kept
    std::vector<rules::RuleFault> faults;
};

/// Keeps an edited procedure as its next revision in a file of its own in the studio's folder, beside the shipped
/// one, and puts it on the shelf. Where the rules refuse it, no file is left behind and what was in force stays so.
/// Unwritable where the folder or the file cannot be made.
Result<Revised> keepRevision(RuleShelf& shelf, const std::filesystem::path& own, const rules::Procedure& edited);

/// Puts a studio's own number in the place of a shipped one, in one file of the studio's folder beside the shipped
/// ones, and puts it on the shelf. What is wrong with it where it was refused: then the file is as it was and what
/// was in force stays so. Unwritable where the folder or the file cannot be made.
Result<std::vector<rules::RuleFault>> keepOwnFigure(RuleShelf& shelf, const std::filesystem::path& own,
                                                    const rules::OwnFigure& figure);
/// The shipped number is in force again.
Result<std::vector<rules::RuleFault>> dropOwnFigure(RuleShelf& shelf, const std::filesystem::path& own,
                                                    const std::string& of, const std::string& path);

} // namespace mend::service
