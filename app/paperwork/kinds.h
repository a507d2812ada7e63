#pragma once

#include "app/paperwork/source.h"

// One function for each paper about a piece; `paperOf` chooses.
namespace mend::paperwork {

papers::Paper intakeReceipt(const Source& source);
papers::Paper quote(const Source& source);
papers::Paper treatmentRecord(const Source& source);
papers::Paper careSheet(const Source& source);
papers::Paper outReceipt(const Source& source);
papers::Paper unclaimedNotice(const Source& source);

} // namespace mend::paperwork
