#pragma once

#include "core/bench/alert.h"
#include "core/bench/card.h"
#include "core/service/cardwording.h"

#include <QJsonObject>
#include <QString>

#include <vector>

namespace mend::desk {

/// Everything that one look at the bench has to say, in the words of the screen.
struct Look {
    QString studio;
    const bench::BenchFold& bench;
    const bench::Board& board;
    std::vector<bench::Alert> alerts;
    service::Manner manner;
};

QString boardText(const Look& look);
QJsonObject boardJson(const Look& look);

} // namespace mend::desk
