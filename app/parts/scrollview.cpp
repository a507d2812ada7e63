#include "app/parts/scrollview.h"

#include <QWheelEvent>
#include <algorithm>

namespace mend::parts {

namespace {
constexpr int barWide = 4;
} // namespace

ScrollView::ScrollView(TapGate& gate, QWidget* parent) : ActView(gate, parent)
{
    connect(this, &ActView::dragged, this, [this](int pixels) { scrollTo(m_offset - pixels); });
}

void ScrollView::setContent(std::vector<Part> parts, int height, const QColor& bar)
{
    m_content = std::move(parts);
    m_height = height;
    m_bar = bar;
    m_offset = std::clamp(m_offset, 0, std::max(0, m_height - this->height()));
    place();
}

void ScrollView::scrollTo(int offset)
{
    const int wanted = std::clamp(offset, 0, std::max(0, m_height - height()));
    if (wanted != m_offset) {
        m_offset = wanted;
        place();
    }
}

void ScrollView::reveal(const QString& key)
{
    const Hit* found = hit(key);
    if (!found || height() <= 0) {
        return;
    }
    constexpr int air = 12;
    if (found->rect.top() < air) {
        scrollTo(m_offset + found->rect.top() - air);
    } else if (found->rect.bottom() > height() - air) {
        scrollTo(m_offset + found->rect.bottom() - height() + air);
    }
}

void ScrollView::place()
{
    std::vector<Part> placed = m_content;
    for (Part& part : placed) {
        part.at.ry() -= m_offset;
    }
    if (m_height > height() && height() > 0) {
        auto bar = std::make_shared<Scene>();
        const double share = double(height()) / m_height;
        const double x = layoutDirection() == Qt::RightToLeft ? 0.0 : width() - barWide;
        Item thumb;
        thumb.rect = QRectF(x, m_offset * share, barWide, std::max(24.0, height() * share));
        thumb.ink = thumb.ground = m_bar;
        thumb.radius = barWide / 2.0;
        thumb.bears = false;
        bar->items.push_back(thumb);
        placed.push_back({QPoint(), bar, {}});
    }
    setParts(std::move(placed));
    scrolledTo(m_offset);
}

void ScrollView::wheelEvent(QWheelEvent* event)
{
    const int pixels = event->pixelDelta().isNull() ? event->angleDelta().y() / 2 : event->pixelDelta().y();
    scrollTo(m_offset - pixels);
    event->accept();
}

void ScrollView::resizeEvent(QResizeEvent* event)
{
    ActView::resizeEvent(event);
    m_offset = std::clamp(m_offset, 0, std::max(0, m_height - height()));
    place();
}

} // namespace mend::parts
