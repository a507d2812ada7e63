#include "app/paperwork/facts.h"
#include "app/paperwork/papers.h"
#include "core/service/cardwording.h"

namespace mend::paperwork {

papers::Paper wallList(const bench::Board& board, const service::Studio& studio, const service::Manner& manner,
                       Instant now)
{
    papers::Paper paper;
    paper.kind = PapersWords::tr("On the bench");
    paper.studio = service::text(studio.name);
    const QDateTime printed = QDateTime::fromMSecsSinceEpoch(now.time_since_epoch().count(), manner.zone);
    paper.date = PapersWords::tr("as of %1; what was told later is not on it")
                     .arg(manner.locale.toString(printed, QStringLiteral("dddd, d MMMM, HH:mm")));
    paper.locale = manner.locale;
    papers::Table table;
    table.head = {PapersWords::tr("Piece"), PapersWords::tr("Next"), PapersWords::tr("Start by"),
                  PapersWords::tr("Closes"), PapersWords::tr("Otherwise")};
    for (const bench::Card& card : board.cards) {
        const auto clock = [&](const std::optional<Instant>& at) {
            return at ? service::clockTime(*at, now, manner) : QString();
        };
        QString otherwise = service::standingWords(card.standing);
        if (card.seam.opens && *card.seam.opens > now) {
            otherwise = PapersWords::tr("opens %1").arg(clock(card.seam.opens));
        } else if (card.seam.ends && *card.seam.ends > now) {
            otherwise = PapersWords::tr("waits until %1").arg(clock(card.seam.ends));
        }
        table.rows.push_back({service::text(card.benchName) + QLatin1Char('\n') + service::numberWords(card.number),
                              service::cardActWords(card), clock(card.seam.latestStart), clock(card.seam.closes),
                              otherwise});
    }
    paper.blocks.emplace_back(std::move(table));
    paper.blocks.emplace_back(papers::Paragraph{
        PapersWords::tr(
            "A time is a reason to test with a fingertip or a witness sample, not a promise. Warm air closes a window "
            "sooner."),
        true});
    return paper;
}

} // namespace mend::paperwork
