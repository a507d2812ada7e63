#include "tests/app/walker.h"

#include "tests/language/escaped.h"

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <cmath>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Item;
using parts::Look;

// What is demanded, told apart from what the program draws by: Chen et al., Applied Ergonomics 44, 2013 (20 mm).
constexpr double benchActMm = 20.0;
constexpr double otherActMm = 12.0;
constexpr double gapMm = 3.0;
constexpr double lenient = 0.05; // millimetres: half a pixel of rounding at 250 dpi

QString placeOf(const QRectF& rect)
{
    return QStringLiteral("(%1,%2 %3x%4)").arg(rect.x()).arg(rect.y()).arg(rect.width()).arg(rect.height());
}

/// Where the letters themselves are, inside the box that they were given.
QRectF inked(const Item& item)
{
    const QFontMetricsF metrics(item.font);
    const double wide = metrics.horizontalAdvance(item.text);
    const double high = metrics.capHeight();
    double left = item.rect.left();
    if (item.align & Qt::AlignRight) {
        left = item.rect.right() - wide;
    } else if (item.align & Qt::AlignHCenter) {
        left = item.rect.center().x() - wide / 2.0;
    }
    const double middle = item.rect.center().y();
    return {left, middle - high / 2.0, wide, high};
}

/// WCAG 2.2, 1.4.3: 3:1 is enough from 18 pt, or 14 pt bold.
double wantedContrast(const Item& item, const Look& look)
{
    if (item.kind != Item::Kind::Text) {
        return 3.0;
    }
    const double points = item.font.pixelSize() / look.measure.exact(1.0) * 72.0 / 96.0;
    return points >= 18.0 || (points >= 14.0 && item.font.weight() >= QFont::Bold) ? 3.0 : 4.5;
}

void walkHits(Walk& walk, const parts::ActView& view, const Look& look)
{
    for (const Hit& hit : view.hits()) {
        if (hit.name.trimmed().isEmpty()) {
            walk.faults << QStringLiteral("no name: %1").arg(hit.key);
        }
        if (!hit.isButton() || !hit.canAct()) {
            continue;
        }
        ++walk.acts;
        walk.benchActs += hit.kind == HitKind::BenchAct ? 1 : 0;
        const double least = hit.kind == HitKind::BenchAct ? benchActMm : otherActMm;
        const double wide = look.measure.inMillimetres(hit.rect.width());
        const double high = look.measure.inMillimetres(hit.rect.height());
        if (wide < least - lenient || high < least - lenient) {
            walk.faults
                << QStringLiteral("too small: %1 is %2 x %3 mm").arg(hit.key).arg(wide, 0, 'f', 1).arg(high, 0, 'f', 1);
        }
    }
}

/// The letters alone: what keeps a name together where it is drawn (UAX #9, isolates) is not heard.
QString heard(QString words) { return words.remove(QChar(0x2068)).remove(QChar(0x2069)); }

bool isSaidWhole(const parts::ActView& view, const QString& drawn)
{
    const QString words = heard(drawn);
    return std::ranges::any_of(view.hits(), [&words](const Hit& hit) {
        const QString name = heard(hit.name);
        const QString more = heard(hit.more);
        return name.contains(words) || more.contains(words) ||
               std::ranges::all_of(words.split(QStringLiteral(" · ")), [&name, &more](const QString& part) {
                   return name.contains(part) || more.contains(part);
               });
    });
}

/// What stands on a button says what it does: it is never shortened, whatever the language.
bool isLabel(const parts::ActView::Part& part, const Item& item)
{
    return std::ranges::any_of(part.scene->hits, [&](const Hit& hit) {
        return hit.kind == HitKind::BenchAct && hit.canAct() && QRectF(hit.rect).contains(item.rect);
    });
}

void walkItems(Walk& walk, const parts::ActView& view, const parts::ActView::Part& part, const Look& look)
{
    QRectF all;
    for (const Item& item : part.scene->items) {
        all |= item.rect;
    }
    QImage under(all.toAlignedRect().size().expandedTo({1, 1}), QImage::Format_RGB32);
    under.fill(look.tokens().ground);
    QPainter painter(&under);
    painter.translate(-all.topLeft());
    std::vector<const Item*> texts;
    for (const Item& item : part.scene->items) {
        if (item.kind == Item::Kind::Text) {
            ++walk.texts;
            const QRectF ink = inked(item);
            const QPoint at = (QPointF(ink.left() - 1.0, ink.center().y()) - all.topLeft()).toPoint();
            if (under.rect().contains(at) && under.pixelColor(at) != item.ground) {
                walk.faults << QStringLiteral("\"%1\" stands on %2, not on %3")
                                   .arg(item.text, under.pixelColor(at).name(), item.ground.name());
            }
            if (item.text != item.whole && (walk.wholeLabels || isTestLanguage()) && isLabel(part, item)) {
                walk.faults << QStringLiteral("a button's words are cut off: \"%1\"").arg(item.whole);
            }
            if (item.text != item.whole && !isSaidWhole(view, item.whole)) {
                walk.faults << QStringLiteral("cut off and said nowhere: \"%1\"").arg(item.whole);
            }
            if (item.rect.height() + 1.0 < QFontMetricsF(item.font).capHeight() * 1.2) {
                walk.faults << QStringLiteral("too low for its letters: \"%1\"").arg(item.text);
            }
            for (const Item* other : texts) {
                const QRectF both = inked(*other) & ink;
                if (both.width() > 1.0 && both.height() > 1.0) {
                    walk.faults
                        << QStringLiteral("\"%1\" lies over \"%2\" at %3").arg(item.text, other->text, placeOf(both));
                }
            }
            texts.push_back(&item);
        }
        if (item.bears) {
            ++walk.pairs;
            const double ratio = parts::contrast(item.ink, item.ground);
            const bool hidden = item.kind == Item::Kind::Path && item.ink == item.ground; // the hole of a ring
            if (!hidden && ratio < wantedContrast(item, look)) {
                walk.faults << QStringLiteral("weak: %1 on %2 is %3 (\"%4\")")
                                   .arg(item.ink.name(), item.ground.name())
                                   .arg(ratio, 0, 'f', 2)
                                   .arg(item.text);
            }
        }
        paintItem(painter, item);
    }
}

double apart(const QRect& a, const QRect& b)
{
    const int across = std::max({0, b.left() - a.right() - 1, a.left() - b.right() - 1});
    const int down = std::max({0, b.top() - a.bottom() - 1, a.top() - b.bottom() - 1});
    return std::hypot(across, down);
}

} // namespace

void Walk::over(const parts::ActView& view, const Look& look)
{
    walkHits(*this, view, look);
    faults << escapedFrom(view);
    for (const auto& part : view.shown()) {
        walkItems(*this, view, part, look);
    }
}

void Walk::gaps(const std::vector<const parts::ActView*>& views, const Look& look)
{
    struct Spot {
        const Hit* hit;
        QRect rect;
    };
    std::vector<Spot> spots;
    for (const auto* view : views) {
        const QPoint at = view->mapTo(view->window(), QPoint());
        for (const Hit& hit : view->hits()) {
            const QRect seen = hit.rect & view->rect();
            if (hit.isButton() && hit.canAct() && !seen.isEmpty()) {
                spots.push_back({&hit, seen.translated(at)});
            }
        }
    }
    for (std::size_t i = 0; i < spots.size(); ++i) {
        for (std::size_t j = i + 1; j < spots.size(); ++j) {
            const bool bench = spots[i].hit->kind == HitKind::BenchAct || spots[j].hit->kind == HitKind::BenchAct;
            const double gap = look.measure.inMillimetres(apart(spots[i].rect, spots[j].rect));
            if (spots[i].rect.intersects(spots[j].rect) || (bench && gap < gapMm - lenient)) {
                faults << QStringLiteral("too near: %1 and %2, %3 mm")
                              .arg(spots[i].hit->key, spots[j].hit->key)
                              .arg(gap, 0, 'f', 2);
            }
        }
    }
}

} // namespace mend::app
