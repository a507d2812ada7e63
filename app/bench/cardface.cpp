#include "app/bench/cardface.h"

#include "app/parts/seamdrawing.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::app {

namespace {

// What a translator finds these words under.
class CardFaceWords {
    Q_DECLARE_TR_FUNCTIONS(CardFaceWords)
};

} // namespace

CardFace faceOf(const bench::Card& card, const Picture& picture)
{
    using namespace mend::service;
    CardFace face;
    face.act = cardActWords(card);
    face.repetition = repetitionWords(card);
    face.name = joined({isolated(text(card.benchName)), numberWords(card.number)});
    const QString owner = picture.hideOwners ? QString() : isolated(text(card.ownerName));
    face.owner = owner;
    face.whose = joined({owner, text(card.placeName)});
    face.count = countWords(card, picture.now, picture.manner);
    for (const auto& reason : card.reasons) {
        const QString words = reasonWords(reason, picture.names, picture.now, picture.manner);
        // Every caution stands on the page behind "why"; on the card only where there is room for it.
        const bool crowded = reason.kind == bench::ReasonKind::Caution && face.lines.size() >= 2;
        if (!words.isEmpty() && !crowded) {
            face.lines.push_back({words, reasonIsGrave(reason), reason.kind == bench::ReasonKind::Fits});
        }
    }
    if (parts::isEmpty(card.seam) && face.lines.empty()) {
        face.lines.push_back({standingWords(card.standing), false, false});
    }
    face.window = joined(windowWords(card, picture.now, picture.manner));
    if (picture.extras.pending.contains(card.piece)) {
        face.mark = CardFaceWords::tr("not stored yet");
    }
    const auto offer = std::ranges::find_if(picture.extras.undo, [&](const UndoOffer& each) {
        return each.piece == card.piece && each.until > picture.now;
    });
    if (offer != picture.extras.undo.end()) {
        face.undo = *offer;
    }
    bench::Card said = card;
    if (picture.hideOwners) {
        said.ownerName.clear();
    }
    face.sentence = cardSentence(said, picture.names, picture.now, picture.manner);
    if (!face.mark.isEmpty()) {
        face.sentence += QStringLiteral(". ") + face.mark;
    }
    return face;
}

QString CardFace::key() const
{
    QStringList all{act, repetition, name, whose, count.digits, count.below, window, mark, sentence};
    for (const Line& line : lines) {
        all << line.words;
    }
    if (undo) {
        all << QString::number(undo->event.value());
    }
    return all.join(QLatin1Char('\n'));
}

} // namespace mend::app
