#include "app/bench/scenes.h"

#include <QCoreApplication>

namespace mend::app {

parts::Scene wipeScene(const parts::Look& look, QSize size, qint64 millisecondsLeft, bool mirrored)
{
    using parts::Role;
    parts::Scribe scribe(look, size, mirrored);
    const auto& t = look.tokens();
    const QRectF all(0.0, 0.0, size.width(), size.height());
    scribe.fill(all, t.ground);
    const QString digits = service::waitDigits(std::chrono::milliseconds(millisecondsLeft));
    const QString words = QCoreApplication::translate("Wipe", "The glass may be wiped: touch does nothing");
    const double digitsHigh = scribe.lineHeight(Role::BlockDigits);
    const double wordsHigh = scribe.lineHeight(Role::CardVerb);
    const double top = (size.height() - digitsHigh - wordsHigh) / 2.0;
    scribe.text({0.0, top, all.width(), digitsHigh}, digits, {Role::BlockDigits, t.ink, t.ground}, Qt::AlignHCenter);
    scribe.text({0.0, top + digitsHigh, all.width(), wordsHigh}, words, {Role::CardVerb, t.ink, t.ground},
                Qt::AlignHCenter);
    parts::Hit hit;
    hit.key = QStringLiteral("wipe");
    hit.rect = all.toRect();
    hit.name = words;
    hit.kind = parts::HitKind::Words;
    scribe.hit(hit);
    return scribe.take();
}

} // namespace mend::app
