#include "app/program/saveelsewhere.h"

#include <QFileInfo>
#include <QResizeEvent>

namespace mend::app {

using parts::Sheet;

SaveElsewhere::SaveElsewhere(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_page(new parts::SheetView(gate, this))
{
    m_page->setAccessibleName(tr("Save it elsewhere"));
    connect(m_page, &parts::SheetView::entered, this, &SaveElsewhere::tell);
}

void SaveElsewhere::setLook(const parts::Look& look)
{
    m_page->setLook(look);
    refresh();
}

std::filesystem::path SaveElsewhere::freeName(const std::filesystem::path& folder, const std::filesystem::path& file)
{
    const std::string stem = file.stem().native();
    std::filesystem::path name = folder / (stem + "-2.mendbench");
    std::error_code ignored;
    for (int number = 3; std::filesystem::exists(name, ignored); ++number) {
        name = folder / (stem + "-" + std::to_string(number) + ".mendbench");
    }
    return name;
}

void SaveElsewhere::ask(const std::filesystem::path& suggested)
{
    m_path = QString::fromStdString(suggested.native());
    m_fault.clear();
    m_busy = false;
    refresh();
}

void SaveElsewhere::showRefused(const QString& why)
{
    m_fault = why;
    m_busy = false;
    refresh();
}

void SaveElsewhere::refresh()
{
    Sheet sheet;
    sheet.title = tr("Save it elsewhere");
    sheet.back = {QStringLiteral("saveas/leave"), tr("Not now"), {}, [this] { Q_EMIT left(); }, false, false};
    sheet.say(tr("The whole bench is copied there, with everything you told that is not stored yet, and goes on "
                 "there. Nothing is written over; what stands in the old place is left alone."));
    sheet.add(Sheet::Field{QStringLiteral("saveas/path"),
                           tr("Where: a folder of yours and a new name"),
                           m_path,
                           {},
                           m_fault,
                           [this](const QString& typed) { m_path = typed; }});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("saveas/keep"), tr("Save it there and go on"),
                     m_busy ? tr("being copied") : QString(), m_busy ? std::function<void()>() : [this] { tell(); },
                     true, false}};
    sheet.add(acts);
    m_page->setSheet(std::move(sheet));
}

void SaveElsewhere::tell()
{
    const QString path = m_path.trimmed();
    if (m_busy) {
        return;
    }
    m_fault = !path.startsWith(QLatin1Char('/')) ? tr("The whole path is needed, from the first / on.")
              : QFileInfo::exists(path)          ? tr("Something stands there already. Choose another name.")
                                                 : QString();
    m_busy = m_fault.isEmpty();
    refresh();
    if (m_busy) {
        Q_EMIT placeTold(path);
    }
}

void SaveElsewhere::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_page->setGeometry(rect());
}

} // namespace mend::app
