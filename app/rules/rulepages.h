#pragma once

#include "app/parts/sheet.h"
#include "core/rules/figurelist.h"
#include "core/service/figurewording.h"

#include <functional>
#include <vector>

namespace mend::app {

/// What a page of rules is made from. Pages only lay out what the rules say.
struct RulePage {
    const rules::RuleBook& book;
    const service::Manner& manner;
    const std::vector<rules::RuleFault>& faults;  ///< of the procedure as it is being changed
    std::function<void(const std::string&)> open; ///< a number was tapped; empty: numbers are only read
};

/// The key of a number's row on its page.
QString figureKey(const std::string& path);

/// One stage whole: hands, waits, what opens and closes it, what a miss costs, warmth, hazards, cautions, each
/// number with its unit, range and source.
parts::Sheet stagePage(const rules::Procedure& procedure, std::size_t stage, const RulePage& page);

/// What the procedures share.
enum class SharedRules { Materials, Laws, Hazards, Cautions, Practice };
/// A number is opened as "material/fillerPaste|/potLife": what it is of, then its path.
parts::Sheet sharedPage(SharedRules which, const RulePage& page);

/// What a number is called on its page: "Wipe back the filler: closes".
QString figureTitle(const rules::Procedure& procedure, const std::string& path);

} // namespace mend::app
