#include "app/bench/cardscene.h"
#include "app/bench/cardmeasure.h"

#include "app/parts/linebreak.h"
#include "app/parts/outline.h"
#include "app/parts/seamdrawing.h"

#include <QCoreApplication>
#include <QFontMetricsF>

#include <algorithm>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Role;
using parts::Scribe;
using Weight = Scribe::Button::Weight;
using bench::Standing;

// What a translator finds these words under.
class CardWords {
    Q_DECLARE_TR_FUNCTIONS(CardWords)
};

// Draws one card; each member draws one part of it.
class CardDrawing {
public:
    CardDrawing(const bench::Card& card, const Picture& picture, const CardPlace& place, bool mirrored, Hands& hands)
        : m_card(card), m_picture(picture), m_place(place), m_hands(hands), m_face(faceOf(card, picture)),
          m_scribe(picture.look, place.size, mirrored), m_frame(picture.look, place.large),
          m_dark(place.inverted || place.large)
    {
        const auto& t = m_scribe.tokens();
        m_ground = m_dark ? t.block : t.card;
        m_ink = m_dark ? t.onBlock : t.ink;
        m_ink2 = m_dark ? t.onBlock2 : t.ink2;
    }

    parts::Scene draw()
    {
        sheet();
        layOut();
        m_place.large ? blockHead() : cardHead();
        seam();
        reasons();
        acts();
        askWhy();
        return m_scribe.take();
    }

private:
    const parts::Look& look() const { return m_picture.look; }
    int rows(Role role) const { return rowHeight(look(), role); }

    void sheet()
    {
        const QRectF all(QPointF(), QSizeF(m_place.size));
        const double radius = m_scribe.px(6);
        m_scribe.fill(all, m_ground, radius);
        if (!m_dark) {
            const bool open = m_card.standing == Standing::Open || m_card.standing == Standing::UnderHands ||
                              m_card.standing == Standing::DoNow;
            const bool asks = m_card.standing == Standing::Past; // only with an answer
            const bool stopped = m_card.standing == Standing::Stopped || m_card.standing == Standing::OnHold;
            const auto& t = m_scribe.tokens();
            m_scribe.frame(all,
                           open || asks ? t.ink
                           : stopped    ? t.ink2
                                        : t.hair,
                           m_scribe.px(open || asks ? 3 : 1.2), t.ground, radius,
                           stopped || asks ? Qt::DashLine : Qt::SolidLine);
        }
        Hit whole;
        whole.key = cardKey(m_card.piece);
        whole.rect = all.toRect();
        whole.name = m_face.sentence;
        whole.kind = HitKind::Card;
        m_scribe.hit(whole);
    }

    void layOut()
    {
        const QRect inner =
            QRect(QPoint(), m_place.size).adjusted(m_frame.pad, m_frame.pad, -m_frame.pad, -m_frame.pad);
        if (actsBelow(m_card, m_place.large)) {
            const int height = m_frame.act;
            m_actArea = QRect(inner.left(), inner.bottom() + 1 - height, inner.width(), height);
            m_text = inner.adjusted(0, 0, 0, -(height + m_scribe.px(6)));
            return;
        }
        const int width = columnWidth(inner.width());
        const bool left = look().actionsLeft;
        m_actArea = QRect(left ? inner.left() : inner.right() + 1 - width, inner.top(), width, inner.height());
        const int beside = width + m_frame.gap + (m_place.large ? m_scribe.px(6) : 0);
        m_text = left ? inner.adjusted(beside, 0, 0, 0) : inner.adjusted(0, 0, -beside, 0);
    }

    int columnWidth(int room) const
    {
        const int extra = std::max(0, static_cast<int>(m_card.acts.size()) - 1);
        if (m_place.large) {
            const int wanted =
                extra == 0 ? m_scribe.px(232) : extra * (m_scribe.px(112) + m_frame.gap) + m_scribe.px(92);
            return std::max(extra * (m_frame.act + m_frame.gap) + m_frame.act, std::min(wanted, room * 45 / 100));
        }
        const int more = std::max({m_frame.other, m_scribe.px(54), moreWidth()});
        const int least = extra == 0 ? m_frame.act : m_frame.act + m_frame.gap + more;
        return std::max(least, std::min(m_scribe.px(extra == 0 ? 128 : 158), room * 3 / 10));
    }

    // Where the words begin beside a pot of that size, if there is room for one.
    double besidePot(double size) const
    {
        const bool fits = m_place.photo && m_text.width() >= m_scribe.px(300);
        return fits ? m_text.left() + size + m_scribe.px(14) : m_text.left();
    }

    void pot(double size)
    {
        const QRectF rect(m_text.left(), m_text.top() + m_scribe.px(2), size, size);
        const auto photo = m_picture.extras.photos.find(m_card.piece);
        if (photo != m_picture.extras.photos.end() && !photo->second.isNull()) {
            m_scribe.picture(rect, photo->second);
        } else {
            parts::drawOutline(m_scribe, rect, parts::shapeFor(service::text(m_card.benchName), m_card.piece.value()),
                               m_card.mended, m_dark);
        }
    }

    void cardHead()
    {
        double left = besidePot(m_scribe.px(56));
        const double top = m_text.top() - m_scribe.px(2);
        const double right = m_text.left() + m_text.width();
        const double digitsWide = std::max(m_scribe.width(m_face.count.digits, Role::CardDigits),
                                           m_scribe.width(m_face.count.below, Role::Reason));
        const bool longBelow = m_scribe.width(m_face.count.below, Role::Reason) > (right - left) * 0.42;
        const double digits = longBelow ? std::max(m_scribe.width(m_face.count.digits, Role::CardDigits),
                                                   m_scribe.width(m_face.count.below, Role::Reason) * 0.62)
                                        : std::min(digitsWide, (right - left) * 0.55);
        const double digitsHigh = rows(Role::CardDigits);
        m_scribe.text({right - digits, top - m_scribe.px(3), digits, digitsHigh}, m_face.count.digits,
                      {Role::CardDigits, m_ink, m_ground}, Qt::AlignRight);
        m_scribe.lines({right - digits, top + digitsHigh - m_scribe.px(5), digits, 2.0 * rows(Role::Reason)},
                       m_face.count.below, {Role::Reason, m_ink2, m_ground}, 2, Qt::AlignRight);
        m_figure = QRectF(right - digits, top, digits, digitsHigh + rows(Role::Reason));
        const double end = right - digits - m_scribe.px(12);
        if (!isActWhole(end - left)) {
            left = m_text.left(); // what to do comes before what it looks like
        }
        if (left > m_text.left()) {
            pot(m_scribe.px(56));
        }
        const double wide = end - left;
        const double row = rows(Role::Reason);
        double head = headHeight(look());
        if (m_scribe.width(m_face.act, Role::CardVerb) <= wide) {
            title(left, top, wide, Role::CardVerb);
            const double second = top + rows(Role::CardVerb);
            m_scribe.text({left, second, wide, row}, m_face.name, {Role::Reason, m_ink2, m_ground});
            m_scribe.text({left, second + row, wide, row}, whose(wide), {Role::Reason, m_ink2, m_ground});
        } else {
            // What to do must be whole; whose it is may be shortened where the card has no room left for it.
            const double spare = spareHeight();
            const int most = mostActLines();
            const double verb = m_scribe.lines({left, top, wide, most * double(rows(Role::BodyBold))}, m_face.act,
                                               {Role::BodyBold, m_ink, m_ground}, most);
            const double whole = verb + 2.0 * row;
            const bool apart = whole <= headHeight(look()) + std::max(0.0, spare);
            m_scribe.text({left, top + verb, wide, row},
                          apart ? m_face.name : service::joined({m_face.name, m_face.whose}),
                          {Role::Reason, m_ink2, m_ground});
            if (apart) {
                m_scribe.text({left, top + verb + row, wide, row}, whose(wide), {Role::Reason, m_ink2, m_ground});
                head = std::max(head, whole);
            }
        }
        m_below = top + head + m_scribe.px(4);
    }

    /// Whose it is and where; where both have no room, whose it is.
    QString whose(double wide) const
    {
        const bool both = m_face.owner.isEmpty() || m_scribe.width(m_face.whose, Role::Reason) <= wide;
        return both ? m_face.whose : m_face.owner;
    }
    /// What a card is higher by than it has to be.
    double spareHeight() const
    {
        return m_text.height() - headHeight(look()) - m_scribe.px(30) - 2.0 * rows(Role::Reason);
    }
    int mostActLines() const { return spareHeight() >= rows(Role::Reason) + rows(Role::BodyBold) ? 3 : 2; }
    bool isActWhole(double wide) const
    {
        parts::Widths& widths = look().type.widths(Role::BodyBold);
        return m_scribe.width(m_face.act, Role::CardVerb) <= wide ||
               parts::isWhole(parts::brokenLines(m_face.act, widths, wide, mostActLines()), m_face.act, widths, wide);
    }

    // Every figure can be asked why.
    void askWhy()
    {
        if (!m_card.window || m_face.count.digits.isEmpty()) {
            return;
        }
        const double grown = std::max(0.0, m_frame.other - m_figure.width());
        Hit hit;
        hit.key = QStringLiteral("piece/%1/why").arg(m_card.piece.value());
        hit.rect = m_figure.adjusted(-grown, 0.0, 0.0, std::max(0.0, m_frame.other - m_figure.height())).toRect();
        hit.name = CardWords::tr("%1, %2: why").arg(m_face.count.digits, m_face.count.below);
        hit.more = m_picture.names.pieces.at(m_card.piece);
        hit.act = [hands = &m_hands, piece = m_card.piece] { hands->why(piece); };
        m_scribe.hit(hit);
    }

    void title(double left, double top, double wide, Role role)
    {
        const double taken = m_scribe.text({left, top, wide, double(rows(role))}, m_face.act, {role, m_ink, m_ground});
        const Role small = m_place.large ? Role::BlockText : Role::Reason;
        const double gap = m_scribe.px(8);
        if (!m_face.repetition.isEmpty() && taken + gap + m_scribe.width(m_face.repetition, small) <= wide) {
            m_scribe.text({left + taken + gap, top + (m_place.large ? m_scribe.px(8) : m_scribe.px(2)),
                           wide - taken - gap, double(rows(role))},
                          m_face.repetition, {small, m_ink2, m_ground});
        }
    }

    void blockHead()
    {
        const double left = besidePot(m_scribe.px(62));
        if (left > m_text.left()) {
            pot(m_scribe.px(62));
        }
        const double top = m_text.top() - m_scribe.px(6);
        const double right = m_text.left() + m_text.width();
        const double digitsWide = m_scribe.width(m_face.count.digits, Role::BlockDigits);
        const double digitsHigh = m_scribe.px(74);
        m_scribe.text({right - digitsWide, top - m_scribe.px(4), digitsWide, digitsHigh}, m_face.count.digits,
                      {Role::BlockDigits, m_ink, m_ground}, Qt::AlignRight);
        m_figure = QRectF(right - digitsWide, top, digitsWide, digitsHigh);
        const QString below = service::joined({m_face.count.below, m_face.window});
        const double verbWide = right - digitsWide - m_scribe.px(18) - left;
        const bool far = m_scribe.width(m_face.act, Role::BlockVerb) <= verbWide;
        const Role verb = far ? Role::BlockVerb : Role::BlockAct;
        title(left, top, verbWide, verb);
        const double second = top + rows(verb);
        const double row = rows(Role::BlockText);
        const double belowWide = std::min(m_scribe.width(below, Role::BlockText), (right - left) * 0.5);
        const double belowTop = top + digitsHigh - m_scribe.px(6);
        m_scribe.text({right - belowWide, belowTop, belowWide, row}, below, {Role::BlockText, m_ink2, m_ground},
                      Qt::AlignRight);
        m_scribe.text({left, far ? belowTop : second,
                       (far ? right - belowWide : right - digitsWide) - m_scribe.px(18) - left, row},
                      service::joined({m_face.name, m_face.whose}), {Role::BlockText, m_ink2, m_ground});
        m_below = belowTop + row;
    }

    void seam()
    {
        if (parts::isEmpty(m_card.seam)) {
            m_below += m_scribe.px(6);
            return;
        }
        const auto ink = parts::seamInk(m_scribe.tokens(), m_dark);
        const double breadth = m_scribe.px(m_place.large ? 16 : 11);
        const double left = m_text.left() + 1.0;
        const double height = m_scribe.px(m_place.large ? 40 : 28);
        const auto axis = parts::axisOf(m_card, m_picture.now, left, m_text.width() - 2.0);
        const double room = m_text.bottom() + 1 - m_below;
        if (room < height) {
            return; // a card that keeps its place while it has more to say than before
        }
        const double reasonsHigh = rows(m_place.large ? Role::BlockText : Role::Reason);
        const double slack = std::max(0.0, room - height - reasonsHigh * (m_place.large ? 1 : 2));
        const double middle = m_below + slack * 0.4 + height / 2.0;
        parts::drawSeam(m_scribe, m_card.seam, axis, middle, breadth, ink, parts::SeamDetail::Card);
        m_below = middle + height / 2.0;
    }

    void reasons()
    {
        const Role plain = m_place.large ? Role::BlockText : Role::Reason;
        const double row = rows(plain);
        const double bottom = m_text.bottom() + 1;
        double top = m_below;
        if (!m_face.mark.isEmpty()) {
            m_scribe.text({double(m_text.left()), top, double(m_text.width()), row}, m_face.mark,
                          {Role::ReasonBold, m_ink, m_ground});
            top += row;
        }
        std::vector<CardFace::Line> lines = m_face.lines;
        if (!m_place.large && !m_face.window.isEmpty()) {
            // The window's own times go beside the first quiet reason, or stand alone.
            const auto quiet =
                std::ranges::find_if(lines, [](const CardFace::Line& each) { return !each.grave && !each.fits; });
            lines.insert(quiet, {m_face.window, false, false});
        }
        for (std::size_t i = 0; i < lines.size() && top + row <= bottom + 1.0; ++i) {
            QString words = lines[i].words;
            const QString fits = lines[i].fits ? words : QString();
            const Role role = lines[i].grave ? Role::ReasonBold : plain;
            // As many quiet reasons on one line as fit whole.
            while (!lines[i].grave && i + 1 < lines.size() && !lines[i + 1].grave) {
                const QString longer = service::joined({words, lines[i + 1].words});
                if (m_scribe.width(longer, role) > m_text.width()) {
                    break;
                }
                words = longer;
                ++i;
            }
            const bool bold = role == Role::ReasonBold;
            const double rest = bottom + 1.0 - top;
            const bool wraps = m_scribe.width(words, role) > m_text.width() && rest >= 2.0 * row;
            const Scribe::Ink ink{role, bold ? m_ink : m_ink2, m_ground};
            if (wraps) { // what there is room for is said whole
                top += m_scribe.lines({double(m_text.left()), top, double(m_text.width()), rest}, words, ink,
                                      static_cast<int>(rest / row));
            } else {
                const double gold = goldFirst(fits, role, top);
                m_scribe.text({m_text.left() + gold, top, m_text.width() - gold, row}, words.mid(fits.size()), ink);
                top += row;
            }
        }
    }

    /// What a whole plan stands behind is said in gold; gives the width that it takes.
    double goldFirst(const QString& fits, Role role, double top)
    {
        if (fits.isEmpty()) {
            return 0.0;
        }
        const auto& t = m_scribe.tokens();
        return m_scribe.text({double(m_text.left()), top, double(m_text.width()), double(rows(role))}, fits,
                             {role, m_dark ? t.goldOnBlock : t.goldText, m_ground});
    }

    Scribe::Button actButton(const bench::CardAct& act, bool first)
    {
        Scribe::Button button;
        button.label = service::actWords(act);
        button.hit.key = actKey(m_card.piece, act);
        button.hit.name = CardWords::tr("%1, %2").arg(button.label, m_picture.names.pieces.at(m_card.piece));
        button.hit.more = m_face.act;
        button.hit.kind = HitKind::BenchAct;
        button.hit.act = [hands = &m_hands, piece = m_card.piece, act] { hands->act(piece, act); };
        button.role = m_place.large ? Role::BlockAct : Role::CardAct;
        const bool barred = act.kind == bench::ActKind::AskHazard;
        const bool equal = areEqual(m_card) && act.kind != bench::ActKind::HandsOnIt;
        button.weight = m_dark           ? (first || equal ? Weight::OnBlock : Weight::OnBlockPlain)
                        : barred         ? Weight::Barred
                        : first || equal ? Weight::Strong
                                         : Weight::Plain;
        return button;
    }

    /// As wide as its word wants it in the smallest letters of a button.
    int moreWidth() const
    {
        return static_cast<int>(m_scribe.width(CardWords::tr("More"), Role::Reason)) + m_scribe.px(2 * 8 + 1);
    }

    Scribe::Button moreButton()
    {
        Scribe::Button button;
        button.label = m_face.undo ? CardWords::tr("Undo") : CardWords::tr("More");
        button.hit.key =
            m_face.undo ? QStringLiteral("undo/%1").arg(m_face.undo->event.value()) : moreKey(m_card.piece);
        button.hit.name = CardWords::tr("%1, %2").arg(button.label, m_picture.names.pieces.at(m_card.piece));
        if (m_face.undo) {
            button.below = m_face.undo->told;
            button.hit.more = m_face.undo->told;
            button.hit.act = [hands = &m_hands, event = m_face.undo->event] { hands->undo(event); };
        } else {
            button.hit.act = [hands = &m_hands, piece = m_card.piece] { hands->more(piece); };
        }
        button.hit.kind = HitKind::Other;
        button.role = Role::Body;
        button.weight = m_dark ? Weight::OnBlockPlain : Weight::Plain;
        return button;
    }

    void acts() { actsBelow(m_card, m_place.large) ? actsInRow() : actsInColumn(); }

    void actsInRow()
    {
        const int count = static_cast<int>(m_card.acts.size());
        const int moreWide = std::max(m_frame.act, m_scribe.px(92));
        const int wide = (m_actArea.width() - moreWide - m_frame.gap * count) / count;
        int left = m_actArea.left();
        for (int i = 0; i < count; ++i) {
            Scribe::Button button = actButton(m_card.acts[static_cast<std::size_t>(i)], i == 0);
            button.hit.rect = QRect(left, m_actArea.top(), wide, m_actArea.height());
            m_scribe.button(button);
            left += wide + m_frame.gap;
        }
        Scribe::Button more = moreButton();
        more.hit.rect = QRect(left, m_actArea.top(), m_actArea.right() + 1 - left, m_actArea.height());
        m_scribe.button(more);
    }

    void actsInColumn()
    {
        QRect lower = m_actArea;
        const int extra = static_cast<int>(m_card.acts.size()) - 1;
        const int least = extra > 0 ? m_frame.act : std::max(m_frame.other, m_place.large ? m_scribe.px(50) : 0);
        lower.setTop(m_actArea.bottom() + 1 - least);
        if (extra >= 0) {
            Scribe::Button button = actButton(m_card.acts.front(), true);
            button.hit.rect =
                QRect(m_actArea.left(), m_actArea.top(), m_actArea.width(), m_actArea.height() - least - m_frame.gap);
            m_scribe.button(button);
        }
        const int most = lower.width() - extra * (m_frame.act + m_frame.gap);
        const int wanted = std::max({m_frame.other, m_place.large ? m_frame.act : m_scribe.px(54), moreWidth()});
        const int moreWide = extra > 0 ? std::max(m_frame.other, std::min(wanted, most)) : lower.width();
        const int wide = extra > 0 ? (lower.width() - moreWide - m_frame.gap * extra) / extra : 0;
        int left = lower.left();
        for (int i = 1; i <= extra; ++i) {
            Scribe::Button button = actButton(m_card.acts[static_cast<std::size_t>(i)], false);
            button.hit.rect = QRect(left, lower.top(), wide, lower.height());
            m_scribe.button(button);
            left += wide + m_frame.gap;
        }
        Scribe::Button button = moreButton();
        button.hit.rect = QRect(left, lower.top(), lower.right() + 1 - left, lower.height());
        m_scribe.button(button);
    }

    const bench::Card& m_card;
    const Picture& m_picture;
    CardPlace m_place;
    Hands& m_hands;
    CardFace m_face;
    Scribe m_scribe;
    CardFrame m_frame;
    bool m_dark;
    QColor m_ground;
    QColor m_ink;
    QColor m_ink2;
    QRect m_actArea;
    QRect m_text;
    QRectF m_figure;
    double m_below = 0.0;
};

} // namespace

parts::Scene cardScene(const bench::Card& card, const Picture& picture, const CardPlace& place, bool mirrored,
                       Hands& hands)
{
    return CardDrawing(card, picture, place, mirrored, hands).draw();
}

} // namespace mend::app
