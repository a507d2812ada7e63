#include "app/bench/cardscene.h"
#include "app/parts/seamdrawing.h"

#include <QStringList>
#include <cmath>

namespace mend::app {

QString cardSignature(const bench::Card& card, const CardFace& face, Instant now, int width)
{
    QStringList all{face.key(), QString::number(static_cast<int>(card.standing)), QString::number(card.mended)};
    const auto axis = parts::axisOf(card, now, 0.0, width);
    for (const auto& at : {card.seam.opens, card.seam.opensAtLatest, card.seam.latestStart, card.seam.closes,
                           card.seam.lost, card.seam.ends}) {
        all << (at ? QString::number(std::lround(std::clamp(axis.x(*at), -10.0, width + 10.0))) : QString());
    }
    for (const auto& act : card.acts) {
        all << actKey(card.piece, act) << service::actWords(act);
    }
    return all.join(QLatin1Char('\n'));
}

} // namespace mend::app
