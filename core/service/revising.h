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

} // namespace mend::service
