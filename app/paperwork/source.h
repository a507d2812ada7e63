#pragma once

#include "app/papers/paper.h"
#include "core/service/paperwords.h"
#include "core/service/piecefile.h"
#include "core/service/studio.h"
#include "core/service/wording.h"

#include <functional>

namespace mend::paperwork {

/// Everything a paper about one piece is made of. It is only looked at while the paper is made.
struct Source {
    const service::PieceFile& file;
    const bench::BenchFold& bench; ///< names of people and places, the air they had
    const rules::RuleBook& book;
    const service::Studio& studio;
    const service::PaperWords& words;
    service::Manner manner;
    Instant now;
    std::function<QImage(const std::string& hash)> picture; ///< null where there is none
};

} // namespace mend::paperwork
