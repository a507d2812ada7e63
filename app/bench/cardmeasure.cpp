#include "app/bench/cardmeasure.h"

#include "app/bench/cardscene.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

namespace mend::app {

using bench::Standing;
using parts::Role;

CardFrame::CardFrame(const parts::Look& look, bool large)
    : pad(look.measure.px(large ? 22 : 13)), gap(std::max(look.measure.mm(parts::gapMm), look.measure.px(12))),
      act(look.measure.mm(parts::benchActMm)), other(look.measure.mm(parts::otherActMm))
{
}

bool areEqual(const bench::Card& card)
{
    return card.standing == Standing::Past ||
           std::ranges::any_of(card.acts, [](const bench::CardAct& act) { return act.kind == bench::ActKind::NotYet; });
}

bool actsBelow(const bench::Card& card, bool large)
{
    return large ? card.standing == Standing::Past : card.acts.size() > 2 || (card.acts.size() > 1 && areEqual(card));
}

int rowHeight(const parts::Look& look, Role role)
{
    return static_cast<int>(std::ceil(look.type.widths(role).height()));
}

int headHeight(const parts::Look& look) { return rowHeight(look, Role::CardVerb) + 2 * rowHeight(look, Role::Reason); }

QString actKey(PieceId piece, const bench::CardAct& act)
{
    return QStringLiteral("piece/%1/act/%2/%3/%4")
        .arg(piece.value())
        .arg(static_cast<int>(act.kind))
        .arg(service::text(act.stage.stage))
        .arg(act.stage.repetition);
}

QString moreKey(PieceId piece) { return QStringLiteral("piece/%1/more").arg(piece.value()); }
QString cardKey(PieceId piece) { return QStringLiteral("piece/%1").arg(piece.value()); }

namespace {

int heightOf(const bench::Card& card, const parts::Look& look, bool large)
{
    const CardFrame frame(look, large);
    const int reason = rowHeight(look, large ? Role::BlockText : Role::Reason);
    const int words =
        large ? look.measure.px(74 + 40) + 2 * reason : headHeight(look) + look.measure.px(30) + 2 * reason;
    if (actsBelow(card, large)) {
        return 2 * frame.pad + words - (large ? 0 : reason) + look.measure.px(6) + frame.act;
    }
    const int lower = card.acts.size() > 1 ? frame.act : std::max(frame.other, large ? look.measure.px(50) : 0);
    return 2 * frame.pad + std::max(words, frame.act + frame.gap + lower);
}

} // namespace

int cardHeight(const bench::Card& card, const parts::Look& look) { return heightOf(card, look, false); }
int blockHeight(const bench::Card& card, const parts::Look& look) { return heightOf(card, look, true); }

} // namespace mend::app
