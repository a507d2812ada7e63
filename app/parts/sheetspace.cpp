#include "app/parts/sheetspace.h"

#include <QEvent>

namespace mend::parts {

namespace {
constexpr double listUnits = 420.0;
constexpr double pageUnits = 420.0; ///< the least that a page can be read in
} // namespace

SheetSpace::SheetSpace(TapGate& gate, QWidget* parent)
    : QWidget(parent), m_look(lookOf(Theme::Light, Measure())), m_list(new SheetView(gate, this)),
      m_page(new SheetView(gate, this))
{
    setAutoFillBackground(true);
    const auto across = [this](SheetView* to) {
        return [this, to](int dx, int) {
            if (dx != 0 && to->isVisibleTo(this)) {
                to->setFocus(Qt::OtherFocusReason);
            }
        };
    };
    connect(m_list, &ActView::leftByKey, this, across(m_page));
    connect(m_page, &ActView::leftByKey, this, across(m_list));
}

void SheetSpace::setLook(const Look& look)
{
    m_look = look;
    QPalette colours = palette();
    colours.setColor(QPalette::Window, look.tokens().ground);
    setPalette(colours);
    m_list->setLook(look);
    m_page->setLook(look);
    arrange();
}

void SheetSpace::refresh()
{
    m_list->setSheet(listSheet());
    Sheet page = pageSheet();
    if (m_narrow && page.back.key.isEmpty()) {
        page.back = {QStringLiteral("page/back"), tr("Back to the list"), {}, [this] {
                         m_pageOpen = false;
                         arrange();
                     }};
    }
    m_page->setSheet(std::move(page));
}

void SheetSpace::openPage()
{
    m_pageOpen = true;
    m_page->scrollTo(0);
    arrange();
}

void SheetSpace::arrange()
{
    const int list = m_look.measure.px(listUnits);
    m_narrow = width() < list + m_look.measure.px(pageUnits);
    m_list->setVisible(!m_narrow || !m_pageOpen);
    m_page->setVisible(!m_narrow || m_pageOpen);
    if (m_narrow) {
        m_list->setGeometry(rect());
        m_page->setGeometry(rect());
    } else {
        const bool mirrored = layoutDirection() == Qt::RightToLeft;
        m_list->setGeometry(mirrored ? width() - list : 0, 0, list, height());
        m_page->setGeometry(mirrored ? 0 : list, 0, width() - list, height());
    }
    refresh();
}

void SheetSpace::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void SheetSpace::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::LayoutDirectionChange || event->type() == QEvent::LanguageChange) {
        arrange();
    }
}

} // namespace mend::parts
