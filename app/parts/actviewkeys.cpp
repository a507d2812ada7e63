// The keyboard's way through an ActView: arrows go to the nearest spot, Enter does it.
#include "app/parts/actview.h"

#include <QAccessible>
#include <QFocusEvent>
#include <QKeyEvent>

#include <algorithm>
#include <limits>

namespace mend::parts {

std::vector<const Hit*> ActView::buttons() const
{
    std::vector<const Hit*> found;
    for (const Hit& each : m_hits) {
        if (each.canAct() && !each.rect.isEmpty()) {
            found.push_back(&each);
        }
    }
    return found;
}

void ActView::setFocusKey(const QString& key)
{
    repaintHit(m_focus);
    m_focus = key;
    focusMoved(key);
    repaintHit(m_focus);
    if (hasFocus() && QAccessible::isActive()) {
        const auto at = std::ranges::find(m_hits, key, &Hit::key);
        QAccessibleEvent moved(this, QAccessible::Focus);
        moved.setChild(static_cast<int>(at - m_hits.begin()));
        QAccessible::updateAccessibility(&moved);
    }
}

void ActView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    const auto all = buttons();
    if (m_focus.isEmpty() && !all.empty() && event->reason() != Qt::MouseFocusReason) {
        const bool backwards = event->reason() == Qt::BacktabFocusReason;
        setFocusKey(backwards ? all.back()->key : all.front()->key);
    }
    repaintHit(m_focus);
}

void ActView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    repaintHit(m_focus);
}

bool ActView::focusNextPrevChild(bool next)
{
    const auto all = buttons();
    const auto here = std::ranges::find(all, m_focus, &Hit::key);
    if (here != all.end()) {
        if (next && here + 1 != all.end()) {
            setFocusKey((*(here + 1))->key);
            return true;
        }
        if (!next && here != all.begin()) {
            setFocusKey((*(here - 1))->key);
            return true;
        }
    }
    const bool left = QWidget::focusNextPrevChild(next);
    if (left) {
        m_focus.clear();
    }
    return left;
}

bool ActView::moveFocus(int dx, int dy)
{
    const auto all = buttons();
    const Hit* from = hit(m_focus);
    if (!from) {
        if (!all.empty()) {
            setFocusKey(all.front()->key);
        }
        return !all.empty();
    }
    const QPoint at = from->rect.center();
    const Hit* best = nullptr;
    int least = std::numeric_limits<int>::max();
    for (const Hit* each : all) {
        const QPoint way = each->rect.center() - at;
        const int along = way.x() * dx + way.y() * dy;
        const int across = std::abs(way.x() * dy) + std::abs(way.y() * dx);
        if (each != from && along > 0 && along + 2 * across < least) {
            least = along + 2 * across;
            best = each;
        }
    }
    if (best) {
        setFocusKey(best->key);
    }
    return best != nullptr;
}

void ActView::keyPressEvent(QKeyEvent* event)
{
    const auto arrow = [&](int dx, int dy) {
        if (!moveFocus(dx, dy)) {
            Q_EMIT leftByKey(dx, dy);
        }
    };
    switch (event->key()) {
    case Qt::Key_Left:
        arrow(-1, 0);
        break;
    case Qt::Key_Right:
        arrow(1, 0);
        break;
    case Qt::Key_Up:
        arrow(0, -1);
        break;
    case Qt::Key_Down:
        arrow(0, 1);
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if (!event->isAutoRepeat() && !m_focus.isEmpty()) {
            activate(m_focus);
        }
        break;
    default:
        QWidget::keyPressEvent(event);
    }
}

} // namespace mend::parts
