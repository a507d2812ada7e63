#pragma once

#include "core/bench/night.h"
#include "core/service/cardwording.h"

#include <QStringList>

namespace mend::service {

/// What is said when the bench is closed for the day, one line each: what to do before going, what will not be cured
/// by morning, what will be, what has to stay on. Never empty.
QStringList nightWords(const bench::NightAhead& night, const Names& names, Instant now, const Manner& manner);

/// What came to its end while nobody looked: "Heron bowl: Scrape and key may be done since 04:10".
QStringList endedWords(const std::vector<bench::Window>& ended, const Names& names, Instant now, const Manner& manner);

} // namespace mend::service
