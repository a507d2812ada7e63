#pragma once

#include "app/handover/handoverspace.h"
#include "app/piece/piecespace.h"

namespace mend::app::samples {

/// A bowl that came a second time: photos with marks, an accessory, money owed, a promise.
std::shared_ptr<PieceNow> pieceNow();
/// The same, mended and waiting, at the counter.
std::shared_ptr<HandOverNow> handOverNow();
service::Manner pieceManner();

} // namespace mend::app::samples
