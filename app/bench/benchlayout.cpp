// Where the parts of the Bench stand. Nothing moves while somebody is touching the screen.
#include "app/bench/benchspace.h"
#include "app/bench/scenes.h"

#include <QEvent>
#include <QResizeEvent>
#include <algorithm>

namespace mend::app {

namespace {
constexpr double marginUnits = 24.0;
constexpr double leastPanel = 280.0;
constexpr int edge = CardField::edge;
} // namespace

void BenchSpace::arrange(bool keep)
{
    const auto& measure = m_picture.look.measure;
    const int margin = measure.px(m_plan.oneAtATime ? CardField::gapUnits : marginUnits);
    const int gap = measure.px(CardField::gapUnits);
    const int wide = width() - 2 * margin;
    if (wide <= 0 || height() <= 0) {
        return;
    }
    if (!keep || !m_picture.card(m_blockPiece)) {
        m_blockPiece = wantedBlock();
        m_blockHigh = 0;
    }
    const bench::Card* block = m_plan.oneAtATime ? nullptr : m_picture.card(m_blockPiece);
    int y = 0;
    m_top->setGeometry(margin, y, wide, topHeight(m_picture.look));
    y += m_top->height() + measure.px(10);
    const int below = y;
    const int bandHigh = m_plan.oneAtATime ? 0 : bandHeight(m_picture, m_plan.stripRows);
    m_band->setVisible(bandHigh > 0);
    m_band->setGeometry(margin, y, wide, bandHigh);
    y += bandHigh > 0 ? bandHigh + gap : 0;
    m_block->setVisible(block != nullptr);
    if (block) {
        if (m_blockHigh == 0) {
            m_blockHigh = m_plan.largeBlock ? blockHeight(*block, m_picture.look) : cardHeight(*block, m_picture.look);
        }
        m_block->setGeometry(margin, y, wide, m_blockHigh);
        y += m_blockHigh + gap;
    }
    m_cards->setGeometry(margin - edge, y - edge, wide + 2 * edge, height() - y + edge);
    std::vector<PieceId> order = m_order.order();
    if (m_plan.oneAtATime) {
        m_cards->laySingle(std::move(order), m_single, m_plan.photos);
    } else {
        std::erase(order, block ? m_blockPiece : PieceId());
        m_cards->lay(std::move(order), m_plan.columns, m_plan.photos, keep);
    }
    arrangePanel(below);
    if (m_wipe->isVisible()) {
        m_wipe->setGeometry(rect());
    }
    compose(false);
}

void BenchSpace::arrangePanel(int top)
{
    const bool roomy = m_cards->height() >= m_picture.look.measure.px(leastPanel);
    const QRect cards = m_cards->geometry().adjusted(edge, edge, -edge, 0);
    QRect panel = roomy ? cards : QRect(cards.left(), top, cards.width(), height() - top);
    // Its bar stands in the margin, so that its edge lies under that of the block.
    const int bar = m_picture.look.measure.px(Panel::barUnits);
    panel.adjust(mirrored() ? -bar : 0, 0, mirrored() ? 0 : bar, 0);
    m_panel->setGeometry(panel);
    m_cards->setVisible(!m_panel->isOpen());
    if (m_panel->isOpen()) {
        m_panel->raise();
        m_panel->refresh();
    }
    const bool over = m_panel->isOpen() && !roomy;
    m_band->setVisible(!over && m_band->height() > 0 && !m_plan.oneAtATime);
    m_block->setVisible(!over && m_block->isVisibleTo(this));
    const bool covered = over && m_blockPiece.isSet();
    if (covered != m_covered) {
        m_covered = covered;
        Q_EMIT blockCovered(covered);
    }
}

void BenchSpace::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    arrange(false);
}

void BenchSpace::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::LayoutDirectionChange || event->type() == QEvent::LanguageChange) {
        m_cards->redraw();
        arrange(false);
    }
    QWidget::changeEvent(event);
}

void BenchSpace::moveOnByKey(parts::ActView* from, int dx, int dy)
{
    const std::vector<parts::ActView*> views{m_top, m_band, m_block, m_cards};
    const auto here = std::ranges::find(views, from) - views.begin();
    const int way = dy != 0 ? dy : mirrored() ? -dx : dx;
    for (auto at = here + way; at >= 0 && at < static_cast<std::ptrdiff_t>(views.size()); at += way) {
        parts::ActView* next = views[static_cast<std::size_t>(at)];
        if (next->isVisible() && std::ranges::any_of(next->hits(), &parts::Hit::canAct)) {
            next->setFocus(way > 0 ? Qt::TabFocusReason : Qt::BacktabFocusReason);
            return;
        }
    }
}

} // namespace mend::app
