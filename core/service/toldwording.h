#pragma once

#include "core/bench/boardmoves.h"
#include "core/service/cardwording.h"

#include <QString>
#include <QStringList>

#include <span>

namespace mend::service {

/// What an event says, in the words with which it was told: "Filler is in", "Bench: 24.1 °C, 41 %".
QString toldWords(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book,
                  const Manner& manner);

/// What becomes of each window, one line each: "Heron bowl: “Wipe back” closes 13:44 instead of 13:49".
QStringList moveWords(std::span<const bench::WindowMove> moves, const Names& names, Instant now, const Manner& manner);

} // namespace mend::service
