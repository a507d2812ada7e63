#include "app/bench/cardfield.h"

#include <QResizeEvent>
#include <algorithm>

namespace mend::app {

CardField::CardField(parts::TapGate& gate, const Picture& picture, Hands& hands, QWidget* parent)
    : ScrollView(gate, parent), m_picture(picture), m_hands(hands)
{
}

void CardField::lay(std::vector<PieceId> order, int columns, bool photos, bool keepHeights)
{
    m_single.reset();
    m_order = std::move(order);
    m_columns = std::max(1, columns);
    m_photos = photos;
    place(keepHeights);
    compose(false);
}

void CardField::laySingle(std::vector<PieceId> order, std::size_t shown, bool photos)
{
    m_order = std::move(order);
    m_single = m_order.empty() ? 0 : std::min(shown, m_order.size() - 1);
    m_photos = photos;
    placeSingle();
    compose(false);
}

void CardField::redraw()
{
    for (Slot& slot : m_slots) {
        slot.signature.clear();
    }
}

void CardField::place(bool keepHeights)
{
    const int gap = m_picture.look.measure.px(gapUnits);
    const bool mirrored = layoutDirection() == Qt::RightToLeft;
    const int wide = (width() - 2 * edge - gap * (m_columns - 1)) / m_columns;
    std::vector<Slot> slots;
    std::map<PieceId, int> heights;
    int y = edge;
    for (std::size_t row = 0; row < m_order.size(); row += static_cast<std::size_t>(m_columns)) {
        const std::size_t end = std::min(m_order.size(), row + static_cast<std::size_t>(m_columns));
        int high = 0;
        for (std::size_t i = row; i < end; ++i) {
            const auto kept = m_heights.find(m_order[i]);
            const bench::Card* card = m_picture.card(m_order[i]);
            const int needed = card ? cardHeight(*card, m_picture.look) : 0;
            heights[m_order[i]] = keepHeights && kept != m_heights.end() ? kept->second : needed;
            high = std::max(high, heights[m_order[i]]);
        }
        for (std::size_t i = row; i < end; ++i) {
            const int column = mirrored ? m_columns - 1 - static_cast<int>(i - row) : static_cast<int>(i - row);
            slots.push_back({m_order[i], QRect(edge + column * (wide + gap), y, wide, high), {}, {}});
        }
        y += high + gap;
    }
    for (Slot& slot : slots) {
        const auto old = std::ranges::find(m_slots, slot.piece, &Slot::piece);
        if (old != m_slots.end() && old->place.size() == slot.place.size()) {
            slot.signature = old->signature;
            slot.scene = old->scene;
        }
    }
    m_slots = std::move(slots);
    m_heights = std::move(heights);
    m_contentHigh = y;
}

void CardField::placeSingle()
{
    m_slots.clear();
    if (m_order.empty()) {
        return;
    }
    const auto& measure = m_picture.look.measure;
    const int steps = measure.mm(parts::benchActMm) + measure.px(gapUnits);
    const PieceId piece = m_order[*m_single];
    const int high = std::max(height() - 2 * edge - steps, 0);
    m_slots.push_back({piece, QRect(edge, edge, width() - 2 * edge, high), {}, {}});
    m_contentHigh = height();
}

parts::ScenePtr CardField::stepScene() const
{
    using parts::Scribe;
    const auto& look = m_picture.look;
    Scribe scribe(look, size(), layoutDirection() == Qt::RightToLeft);
    const int side = look.measure.mm(parts::benchActMm);
    const int gap = std::max(look.measure.mm(parts::gapMm), look.measure.px(gapUnits));
    const int wide = (width() - 2 * edge - 2 * gap) / 3;
    const int y = height() - edge - side;
    const auto button = [&](int column, const QString& key, const QString& label, const QString& below,
                            std::function<void()> act) {
        Scribe::Button made;
        made.label = label;
        made.below = below;
        made.role = parts::Role::Body;
        made.hit.key = key;
        made.hit.name = label;
        made.hit.more = below;
        made.hit.kind = parts::HitKind::BenchAct;
        made.hit.act = std::move(act);
        made.hit.rect = QRect(edge + column * (wide + gap), y, wide, side);
        scribe.button(made);
    };
    const QString place = tr("%1 of %2").arg(*m_single + 1).arg(m_order.size());
    button(0, QStringLiteral("step/back"), tr("Card before"), {}, [hands = &m_hands] { hands->step(-1); });
    button(1, QStringLiteral("mixnow"), tr("Mixing now"), {}, [hands = &m_hands] { hands->allMixes(); });
    button(2, QStringLiteral("step/on"), tr("Next card"), place, [hands = &m_hands] { hands->step(1); });
    return std::make_shared<const parts::Scene>(scribe.take());
}

void CardField::compose(bool inSight)
{
    const QRect seen(0, offset(), width(), height());
    std::vector<Part> parts;
    for (Slot& slot : m_slots) {
        const bench::Card* card = m_picture.card(slot.piece);
        if (!card) {
            continue;
        }
        if (!inSight || !slot.scene || slot.place.intersects(seen)) {
            const QString signature = cardSignature(*card, faceOf(*card, m_picture), m_picture.now, slot.place.width());
            if (!slot.scene || signature != slot.signature) {
                const bool inverted = card->standing == bench::Standing::DoNow;
                const CardPlace place{slot.place.size(), m_photos, false, inverted};
                slot.scene = std::make_shared<const parts::Scene>(
                    cardScene(*card, m_picture, place, layoutDirection() == Qt::RightToLeft, m_hands));
                slot.signature = signature;
            }
        }
        parts.push_back({slot.place.topLeft(), slot.scene, {}});
    }
    if (m_single && !m_order.empty()) {
        parts.push_back({QPoint(), stepScene(), {}});
    }
    setContent(std::move(parts), m_contentHigh, m_picture.look.tokens().hair);
}

QRect CardField::placeOf(PieceId piece) const
{
    const auto found = std::ranges::find(m_slots, piece, &Slot::piece);
    return found == m_slots.end() ? QRect() : found->place.translated(0, -offset());
}

void CardField::resizeEvent(QResizeEvent* event)
{
    ScrollView::resizeEvent(event);
    if (m_single) {
        placeSingle();
    } else {
        place(false);
    }
    compose(false);
}

} // namespace mend::app
