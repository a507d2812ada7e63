#pragma once

#include "core/base/units.h"
#include "core/bench/event.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::service {

/// Everything that is told when a piece goes out of the door. It becomes one act: all of it stands in the file or
/// none, and one tap takes all of it back.
struct HandingOver {
    PieceId piece;
    std::optional<int> fragmentsOut; ///< unset: not counted
    std::optional<int> accessoriesOut;
    std::string missing;       ///< what was agreed about that which does not go out; empty: nothing is missing
    std::string waitReason;    ///< why it goes before its wait is over; empty: it is over
    std::string unmended;      ///< why it goes back unmended; empty: it is mended
    std::optional<Money> paid; ///< what was paid at the counter
    std::string owedReason;    ///< why something stays owed
    std::string takenBy;
    std::string signedHow; ///< "drawn", "onPaper"
    bool operator==(const HandingOver&) const = default;
};

/// The events of it, without numbers, in the order in which they are told; the last one is that it is gone.
/// `blank` carries time, person and boot.
std::vector<bench::Event> eventsOf(const HandingOver& told, const bench::Event& blank);

} // namespace mend::service
