#include "app/plan/planspace.h"

#include <QEvent>

#include <algorithm>
#include <memory>

namespace mend::app {

namespace {

/// From here on list and threads stand beside each other.
constexpr double leastForTwo = 900.0;
constexpr double shareOfList = 0.48;

parts::ActView::Part part(PlanDrawn& drawn, QPoint at)
{
    return {at, std::make_shared<const parts::Scene>(std::move(drawn.scene)), {}};
}

} // namespace

PlanSpace::PlanSpace(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_head(new parts::ActView(gate, this)), m_list(new parts::ScrollView(gate, this)),
      m_threads(new parts::ScrollView(gate, this))
{
    setAutoFillBackground(true);
    m_head->setAccessibleName(tr("How the plan is looked at"));
    m_list->setAccessibleName(tr("What to do"));
    m_threads->setAccessibleName(tr("Whose hands when, and what is waited for"));
    connectActs();
}

void PlanSpace::connectActs()
{
    PlanActs& acts = m_picture.acts;
    acts.openPiece = [this](PieceId piece) { Q_EMIT pieceWanted(piece); };
    acts.setAside = [this](PieceId piece) { Q_EMIT setAsideWanted(piece); };
    acts.takeOffer = [this] { Q_EMIT offerTaken(); };
    acts.refuseOffer = [this] { Q_EMIT offerRefused(); };
    acts.reach = [this](PlanReach reach) {
        m_picture.reach = reach;
        m_list->scrollTo(0);
        arrange();
    };
    acts.group = [this](PlanGroup group) {
        m_picture.group = group;
        m_list->scrollTo(0);
        arrange();
    };
}

void PlanSpace::setLook(const parts::Look& look)
{
    m_picture.look = look;
    QPalette colours = palette();
    colours.setColor(QPalette::Window, look.tokens().ground);
    setPalette(colours);
    for (parts::ActView* view :
         {m_head, static_cast<parts::ActView*>(m_list), static_cast<parts::ActView*>(m_threads)}) {
        view->setFocusInk(look.tokens().ink, look.measure.px(3));
        view->setGround(look.tokens().ground);
    }
    arrange();
}

void PlanSpace::setManner(const service::Manner& manner)
{
    m_picture.manner = manner;
    arrange();
}

void PlanSpace::setShown(PlanShown shown)
{
    m_picture.shown = std::move(shown);
    arrange();
}

void PlanSpace::arrange()
{
    if (width() <= 0 || height() <= 0) {
        return;
    }
    m_picture.mirrored = layoutDirection() == Qt::RightToLeft;
    const QColor bar = m_picture.look.tokens().hair;
    PlanDrawn head = planHead(m_picture, width());
    const int top = std::min(head.height, height() / 2);
    m_head->setGeometry(0, 0, width(), top);
    m_head->setParts({part(head, {})});
    const bool beside = width() >= m_picture.look.measure.px(leastForTwo);
    const int below = height() - top;
    const int listWide = beside ? static_cast<int>(width() * shareOfList) : width();
    const int threadsWide = beside ? width() - listWide - m_picture.look.measure.px(20) : width();
    m_threads->setVisible(beside);
    PlanDrawn threads = planThreads(m_picture, threadsWide);
    const int inner = beside ? listWide : width() - m_picture.look.measure.px(20);
    PlanDrawn list = planList(m_picture, inner);
    m_list->setGeometry(m_picture.mirrored ? width() - listWide : 0, top, listWide, below);
    if (beside) {
        m_list->setContent({part(list, {})}, list.height, bar);
        m_threads->setGeometry(m_picture.mirrored ? 0 : width() - threadsWide, top, threadsWide, below);
        m_threads->setContent({part(threads, {})}, threads.height, bar);
        return;
    }
    const int listHigh = list.height;
    m_list->setContent({part(list, {}), part(threads, {0, listHigh})}, listHigh + threads.height, bar);
}

void PlanSpace::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void PlanSpace::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::LanguageChange || event->type() == QEvent::LayoutDirectionChange) {
        arrange();
    }
}

} // namespace mend::app
