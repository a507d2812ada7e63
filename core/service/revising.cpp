#include "core/service/revising.h"

#include "core/exchange/rulereader.h"
#include "core/rules/figurelist.h"

#include <fstream>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

/// Whole or not at all: half a rule file would be refused, and the studio's own number with it.
bool writeRevision(const fs::path& file, const std::string& text)
{
    const fs::path half = file.string() + ".new";
    {
        std::ofstream stream(half, std::ios::binary | std::ios::trunc);
        stream << text;
        if (!stream.flush()) {
            return false;
        }
    }
    std::error_code failed;
    fs::rename(half, file, failed);
    return !failed;
}

} // namespace

Result<Revised> keepRevision(RuleShelf& shelf, const fs::path& own, const rules::Procedure& edited)
{
    const rules::Procedure next = rules::nextRevision(edited, shelf.book());
    Revised revised;
    revised.faults = rules::validate(next, shelf.book());
    if (!revised.faults.empty()) {
        return revised;
    }
    std::error_code failed;
    fs::create_directories(own, failed);
    const fs::path file = own / (next.key + "-" + std::to_string(next.revision) + ".json");
    if (failed || fs::exists(file, failed) || !writeRevision(file, exchange::fileText(next))) {
        return Fault{FaultKind::Unwritable, file.string()};
    }
    shelf.look();
    const rules::RevisionHash hash = exchange::revisionHash(next);
    if (shelf.book().revision(hash) == nullptr) {
        revised.faults = shelf.faults();
        fs::remove(file, failed);
        shelf.look();
        return revised;
    }
    revised.hash = hash;
    return revised;
}

} // namespace mend::service
