#include "app/bench/scenes.h"

#include "app/parts/seamdrawing.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Role;
using parts::Scribe;
using namespace std::chrono;

// What a translator finds these words under.
class StripWords {
    Q_DECLARE_TR_FUNCTIONS(StripWords)
};

constexpr double rowUnits = 20.0;
constexpr double axisUnits = 30.0;
constexpr double tilePadUnits = 10.0;

bool hasTime(const bench::Card& card)
{
    return card.seam.closes || card.seam.opens || card.seam.ends || card.seam.stalled;
}

// The cards that have something to show on a time axis, in the order of the bench.
std::vector<const bench::Card*> timed(const bench::Board& board)
{
    std::vector<const bench::Card*> found;
    for (const auto& card : board.cards) {
        if (hasTime(card)) {
            found.push_back(&card);
        }
    }
    return found;
}

struct Ruler {
    Span shown;
    Span step;
};

// How far ahead the strip looks: the shortest of these that holds half of what ends.
Ruler rulerFor(const std::vector<const bench::Card*>& cards, Instant now)
{
    std::vector<Span> ends;
    for (const auto* card : cards) {
        const auto& seam = card->seam;
        const auto end = seam.closes ? seam.closes : seam.ends ? seam.ends : seam.opens;
        if (end && *end > now) {
            ends.push_back(*end - now);
        }
    }
    std::ranges::sort(ends);
    const Span wanted = ends.empty() ? Span(hours{3}) : ends[(ends.size() - 1) / 2];
    for (const Ruler each : {Ruler{hours{3}, minutes{30}}, Ruler{hours{6}, hours{1}}, Ruler{hours{12}, hours{2}}}) {
        if (wanted <= each.shown) {
            return each;
        }
    }
    return {hours{24}, hours{4}};
}

class BandDrawing {
public:
    BandDrawing(const Picture& picture, QSize size, int rows, bool mirrored, Hands& hands)
        : m_picture(picture), m_hands(hands), m_scribe(picture.look, size, mirrored), m_size(size), m_rows(rows)
    {
    }

    parts::Scene draw()
    {
        const int tilesWide = tiles();
        if (m_rows > 0) {
            strip(m_size.width() - (tilesWide > 0 ? tilesWide + m_scribe.px(28) : 0));
        }
        return m_scribe.take();
    }

private:
    int tiles()
    {
        const auto& kinds = m_picture.extras.mixKinds;
        if (kinds.empty()) {
            return 0;
        }
        const int side = m_scribe.mm(parts::benchActMm);
        const int gap = std::max(m_scribe.mm(parts::gapMm), m_scribe.px(12));
        const int wide = tileWidth(side);
        const int down = std::max(1, (m_size.height() + gap) / (side + gap));
        const int across = std::clamp((static_cast<int>(kinds.size()) + down - 1) / down, 1,
                                      std::max(1, (m_size.width() / 2 + gap) / (wide + gap)));
        const int room = down * across;
        const bool all = static_cast<int>(kinds.size()) <= room;
        const int shownKinds = all ? static_cast<int>(kinds.size()) : room - 1;
        const int total = across * wide + (across - 1) * gap;
        const int high = (m_size.height() - (down - 1) * gap) / down;
        const int left = m_size.width() - total;
        for (int i = 0; i < shownKinds + (all ? 0 : 1); ++i) {
            const QRect rect(left + i / down * (wide + gap), i % down * (high + gap), wide, high);
            i < shownKinds ? mixTile(rect, kinds[static_cast<std::size_t>(i)]) : otherTile(rect);
        }
        return total;
    }

    /// As wide as the longest of its words, so that none is cut while there is room for it.
    int tileWidth(int side) const
    {
        double words = m_scribe.width(StripWords::tr("Mixing now"), Role::Reason);
        for (const MixKind& kind : m_picture.extras.mixKinds) {
            words =
                std::max({words, m_scribe.width(kind.tile, Role::BodyBold), m_scribe.width(kind.reach, Role::Reason)});
        }
        const int most = std::max(side, m_size.width() / 4);
        return std::clamp(static_cast<int>(std::ceil(words)) + 2 * m_scribe.px(tilePadUnits), side, most);
    }

    void mixTile(const QRect& rect, const MixKind& kind)
    {
        Hit hit;
        hit.key = QStringLiteral("mixnow/") + kind.material;
        if (const UndoOffer* offer = m_picture.undoAt(hit.key)) {
            hit.key = QStringLiteral("undo/%1").arg(offer->event.value());
            hit.name = StripWords::tr("Undo: %1").arg(offer->told);
            hit.act = [hands = &m_hands, event = offer->event] { hands->undo(event); };
            tile(rect, std::move(hit), offer->told, StripWords::tr("Undo"));
            return;
        }
        hit.name = StripWords::tr("Mixing now: %1").arg(kind.tile);
        hit.more = kind.batch.isEmpty()    ? kind.advice
                   : kind.advice.isEmpty() ? StripWords::tr("batch %1").arg(kind.batch)
                                           : StripWords::tr("batch %1. %2").arg(kind.batch, kind.advice);
        hit.act = [hands = &m_hands, material = kind.material] { hands->mixNow(material); };
        tile(rect, std::move(hit), StripWords::tr("Mixing now"), kind.tile, kind.reach);
    }

    void otherTile(const QRect& rect)
    {
        Hit hit;
        hit.key = QStringLiteral("mixnow");
        hit.name = StripWords::tr("Mixing now: something else");
        hit.act = [hands = &m_hands] { hands->allMixes(); };
        tile(rect, std::move(hit), StripWords::tr("Mixing now"), StripWords::tr("Other"));
    }

    void tile(const QRect& rect, Hit hit, const QString& small, const QString& strong, const QString& below = {})
    {
        const auto& t = m_scribe.tokens();
        const double radius = m_scribe.px(6);
        m_scribe.fill(rect, t.card, radius);
        m_scribe.frame(rect, t.hair, m_scribe.px(1.4), t.ground, radius);
        const double pad = m_scribe.px(tilePadUnits);
        const double inner = rect.width() - 2 * pad;
        const double smallHigh = m_scribe.lineHeight(Role::Reason);
        const double strongHigh = m_scribe.lineHeight(Role::BodyBold);
        const bool third = !below.isEmpty() && 2 * smallHigh + strongHigh <= rect.height();
        const double top = rect.top() + (rect.height() - (third ? 2 : 1) * smallHigh - strongHigh) / 2.0;
        m_scribe.text({rect.left() + pad, top, inner, smallHigh}, small, {Role::Reason, t.ink2, t.card});
        m_scribe.text({rect.left() + pad, top + smallHigh, inner, strongHigh}, strong, {Role::BodyBold, t.ink, t.card});
        if (third) {
            m_scribe.text({rect.left() + pad, top + smallHigh + strongHigh, inner, smallHigh}, below,
                          {Role::Reason, t.ink, t.card});
        }
        hit.rect = rect;
        hit.kind = HitKind::BenchAct;
        m_scribe.hit(std::move(hit));
    }

    void strip(int wide)
    {
        auto cards = timed(m_picture.board);
        const Ruler ruler = rulerFor(cards, m_picture.now);
        if (static_cast<int>(cards.size()) > m_rows) {
            cards.resize(static_cast<std::size_t>(m_rows));
        }
        const auto& t = m_scribe.tokens();
        double names = 0.0;
        for (const auto* card : cards) {
            names = std::max(names, m_scribe.width(service::text(card->benchName), Role::Reason));
        }
        names = std::min(names + m_scribe.px(14), wide * 0.3);
        const parts::TimeAxis axis{m_picture.now, ruler.shown, names, wide - names - m_scribe.px(6)};
        const double top = m_scribe.px(axisUnits) - m_scribe.px(6);
        const double row = std::min(
            m_scribe.px(rowUnits) * 1.5,
            std::max<double>(m_scribe.px(rowUnits), (m_size.height() - top) / std::max<double>(1, cards.size())));
        const double bottom = top + row * static_cast<double>(cards.size());
        hourLines(axis, ruler, bottom);
        double y = top;
        for (const auto* card : cards) {
            const bool due = card->standing == bench::Standing::DoNow;
            m_scribe.text({0.0, y, names - m_scribe.px(10), row}, service::text(card->benchName),
                          {due ? Role::ReasonBold : Role::Reason, t.ink, t.ground});
            parts::SeamInk ink{due ? t.ink : t.gold, t.hair, t.ink, t.ground};
            parts::drawSeam(m_scribe, card->seam, axis, y + row / 2.0, m_scribe.px(9), ink, parts::SeamDetail::Common);
            hands(*card, axis, y + m_scribe.px(1));
            Hit hit;
            hit.key = QStringLiteral("strip/%1").arg(card->piece.value());
            hit.rect = QRect(0, int(y), wide, int(row));
            hit.name = service::joined({service::text(card->benchName),
                                        service::countWords(*card, m_picture.now, m_picture.manner).below,
                                        service::joined(service::windowWords(*card, m_picture.now, m_picture.manner))});
            hit.kind = HitKind::Words;
            m_scribe.hit(hit);
            y += row;
        }
        const parts::AlongTime straight(m_scribe, axis.left, axis.right());
        m_scribe.line({axis.left, top - m_scribe.px(2)}, {axis.left, bottom}, t.ink, m_scribe.px(2), t.ground);
    }

    /// Ink bars over the seam: the hands that the plan has for this piece, or, without a plan, when they are wanted at
    /// the latest.
    void hands(const bench::Card& card, const parts::TimeAxis& axis, double top)
    {
        for (const InstantRange& wanted : handsFor(card, m_picture.board)) {
            bar(wanted, axis, top);
        }
    }

    void bar(const InstantRange& wanted, const parts::TimeAxis& axis, double top)
    {
        if (axis.x(wanted.from) >= axis.right() || axis.x(wanted.to) <= axis.left) {
            return;
        }
        const auto& t = m_scribe.tokens();
        const parts::AlongTime straight(m_scribe, axis.left, axis.right());
        const double from = std::max(axis.left, axis.x(wanted.from));
        const double to = std::min(axis.right(), std::max(axis.x(wanted.to), from + m_scribe.px(3)));
        m_scribe.fill({from, top, to - from, double(m_scribe.px(2.5))}, t.ink);
    }

    void hourLines(const parts::TimeAxis& axis, const Ruler& ruler, double bottom)
    {
        const auto& t = m_scribe.tokens();
        const parts::AlongTime straight(m_scribe, axis.left, axis.right());
        const double high = m_scribe.lineHeight(Role::Reason);
        const QString nowWords = service::timeOfDay(m_picture.now, m_picture.manner);
        const double nowWide = m_scribe.width(nowWords, Role::ReasonBold);
        m_scribe.text({axis.left, 0.0, nowWide, high}, nowWords, {Role::ReasonBold, t.ink, t.ground});
        double free = axis.left + nowWide + m_scribe.px(10);
        for (const Instant at : parts::wallTicks(axis, ruler.step, m_picture.manner.zone)) {
            const double x = axis.x(at);
            m_scribe.line({x, high}, {x, bottom}, t.edge, 1.2, t.ground, Qt::SolidLine, false);
            const QString words = service::timeOfDay(at, m_picture.manner);
            const double half = m_scribe.width(words, Role::Reason) / 2.0;
            if (x - half > free && x + half <= axis.right()) {
                free = x + half + m_scribe.px(10);
                m_scribe.text({x - half, 0.0, half * 2.0, high}, words, {Role::Reason, t.ink2, t.ground},
                              Qt::AlignHCenter);
            }
        }
    }

    const Picture& m_picture;
    Hands& m_hands;
    Scribe m_scribe;
    QSize m_size;
    int m_rows;
};

} // namespace

std::optional<InstantRange> handsWanted(const bench::Card& card, Instant now)
{
    if (!card.window || card.window->handsOn <= Span{0}) {
        return std::nullopt;
    }
    const bench::Window& window = *card.window;
    if (window.begunAt) {
        const Instant off = *window.begunAt + window.handsOn;
        return off > now ? std::optional(InstantRange{now, off}) : std::nullopt;
    }
    if (!window.latestStart || !window.closes || window.soft || *window.closes <= now) {
        return std::nullopt;
    }
    const Instant from = std::max(now, *window.latestStart);
    return InstantRange{from, std::max(from, std::min(from + window.handsOn, *window.closes))};
}

std::vector<InstantRange> handsFor(const bench::Card& card, const bench::Board& board)
{
    if (!board.planned) {
        const auto wanted = handsWanted(card, board.at);
        return wanted ? std::vector<InstantRange>{*wanted} : std::vector<InstantRange>();
    }
    std::vector<InstantRange> all;
    for (const bench::PlannedHands& hands : board.hands) {
        if (hands.piece == card.piece) {
            all.push_back({hands.from, hands.to});
        }
    }
    return all;
}

int bandHeight(const Picture& picture, int rows)
{
    const auto& measure = picture.look.measure;
    const int side = measure.mm(parts::benchActMm);
    const int gap = std::max(measure.mm(parts::gapMm), measure.px(12));
    const int shown = std::min<int>(rows, static_cast<int>(timed(picture.board).size()));
    const int strip = shown > 0 ? measure.px(axisUnits + rowUnits * shown) : 0;
    const int kinds = static_cast<int>(picture.extras.mixKinds.size());
    const int tiles = kinds == 0 ? 0 : kinds > 3 && rows > 3 ? 2 * side + gap : side;
    return std::max(strip, tiles);
}

parts::Scene bandScene(const Picture& picture, QSize size, int rows, bool mirrored, Hands& hands)
{
    return BandDrawing(picture, size, rows, mirrored, hands).draw();
}

} // namespace mend::app
