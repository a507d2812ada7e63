#pragma once

#include "core/service/benchservice.h"
#include "core/service/ruleshelf.h"
#include "core/service/studio.h"
#include "core/store/store.h"

#include <set>
#include <string>

namespace mend::service {

/// A bench file as it was read: all that the bench needs to go on where it stood.
struct OpenBench {
    BenchRecord record;
    rules::RuleBook book; ///< the shelf's, with the revisions of this file
    Studio studio;
    std::set<std::string> storedRevisions; ///< hashes
    int unreadRevisions = 0;               ///< that this version of the program cannot read
};

/// Reads the bench out of an open file: its events, its people, places and pieces in hand, its hours as
/// UTC, and the rules of `shelf` with those the file keeps. The same for the window and the console.
Result<OpenBench> readBench(const store::Store& store, RuleShelf& shelf, Instant now);

} // namespace mend::service
