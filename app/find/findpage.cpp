// What stands beside the field: the list that was opened, or the one piece.
#include "app/find/findspace.h"

#include "core/service/wording.h"

namespace mend::app {

using parts::Sheet;

Sheet FindSpace::pageSheet()
{
    if (m_page) {
        return pieceSheet();
    }
    if (m_typed.simplified().isEmpty()) {
        return openedList();
    }
    Sheet sheet;
    if (!m_answer.pieces.empty()) {
        sheet.say(tr("Tap a piece to see when it may go and what is owed."), Sheet::Tone::Quiet);
    }
    return sheet;
}

Sheet FindSpace::openedList()
{
    Sheet sheet;
    const FindList* const list = opened();
    if (!list) {
        return sheet;
    }
    sheet.title = list->words;
    for (const FindPiece& piece : list->pieces) {
        sheet.add(rowOf(piece));
    }
    return sheet;
}

Sheet FindSpace::pieceSheet()
{
    const FindPage& held = *m_page;
    Sheet sheet;
    if (m_typed.simplified().isEmpty() && !isNarrow()) {
        sheet.back = {QStringLiteral("find/back"), tr("Back to the list"), {}, [this] {
                          m_chosen = {};
                          m_page.reset();
                          refresh();
                      }};
    }
    Sheet::Portrait portrait;
    portrait.sight = held.piece.sight;
    portrait.name = held.piece.name;
    // The one piece that was opened is whoever's is asked about: here its owner is named.
    portrait.lines.push_back(
        {service::joined({held.piece.number, service::isolated(held.piece.owner), service::isolated(held.contact)}),
         Sheet::Tone::Quiet});
    for (const QString& line : {held.piece.outside, held.cameIn}) {
        if (!line.isEmpty()) {
            portrait.lines.push_back({line, Sheet::Tone::Plain});
        }
    }
    sheet.add(std::move(portrait));
    sheet.add(Sheet::Facts{held.facts});
    if (!held.grave.isEmpty()) {
        sheet.say(held.grave, Sheet::Tone::Grave);
    }
    if (!held.because.isEmpty()) {
        sheet.say(held.because, Sheet::Tone::Quiet);
    }
    Sheet::Choices acts;
    acts.bench = true;
    acts.choices.push_back({QStringLiteral("find/open"),
                            tr("Open piece"),
                            {},
                            [this, id = held.piece.id] { Q_EMIT pieceWanted(id); },
                            true});
    if (m_handOver && held.inHouse) {
        acts.choices.push_back({QStringLiteral("find/handover"), tr("Hand over"), held.notYet,
                                [this, id = held.piece.id] { Q_EMIT handOverWanted(id); }});
    }
    sheet.add(std::move(acts));
    return sheet;
}

} // namespace mend::app
