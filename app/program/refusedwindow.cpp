#include "app/program/refusedwindow.h"

#include "app/program/opening.h"

#include <QResizeEvent>
#include <algorithm>

namespace mend::app {

using parts::Sheet;

std::vector<BackupLine> backupLines(const std::vector<store::Backup>& backups)
{
    std::vector<BackupLine> lines;
    for (const store::Backup& backup : backups) {
        std::error_code gone;
        const auto bytes = std::filesystem::file_size(backup.file, gone);
        lines.push_back({backup.made, QString::fromStdString(backup.file.filename().native()),
                         gone ? 0 : static_cast<qint64>(bytes)});
    }
    return lines;
}

BackupSeen backupSeen(const BackupLooked& looked)
{
    BackupSeen seen;
    seen.file = QString::fromStdString(looked.file.filename().native());
    if (looked.fault) {
        seen.fault = looked.fault->kind == FaultKind::Damaged
                         ? QObject::tr("This backup is not as it was made. Choose another.")
                         : openingWords(*looked.fault);
    } else if (looked.contents) {
        seen.pieces = looked.contents->pieces;
        seen.inHand = looked.contents->piecesInHand;
        seen.told = looked.contents->events;
        seen.lastTold = looked.contents->lastTold;
        seen.missingPictures = looked.contents->missingPictures;
    }
    return seen;
}

RefusedWindow::RefusedWindow(parts::TapGate& gate, std::filesystem::path file, Fault fault, Instant now,
                             service::Manner manner, QWidget* parent)
    : QWidget(parent), m_file(std::move(file)), m_fault(std::move(fault)), m_now(now), m_manner(std::move(manner)),
      m_backups(Upkeep::folderFor(m_file)), m_lines(backupLines(m_backups.all())),
      m_page(new parts::SheetView(gate, this))
{
    setWindowTitle(tr("Mendbench"));
    setAutoFillBackground(true);
    m_page->setAccessibleName(tr("The bench was not opened"));
}

void RefusedWindow::setLook(const parts::Look& look)
{
    QPalette colours = palette();
    colours.setColor(QPalette::Window, look.tokens().ground);
    setPalette(colours);
    m_page->setLook(look);
    refresh();
}

void RefusedWindow::refresh()
{
    BackupActs acts;
    acts.leave = [this] {
        m_picked.clear();
        refresh();
    };
    acts.goBack = [this](const QString& name) {
        Next next;
        next.file = m_file;
        next.backup = Upkeep::folderFor(m_file) / name.toStdString();
        go(next);
    };
    const auto picked = std::ranges::find(m_lines, m_picked, &BackupLine::file);
    m_page->setSheet(picked == m_lines.end() ? reasonSheet() : backupSheetOf(*picked, m_seen, m_now, m_manner, acts));
}

Sheet RefusedWindow::reasonSheet()
{
    Sheet sheet;
    sheet.title = tr("The bench was not opened");
    sheet.say(openingWords(m_fault), Sheet::Tone::Grave);
    sheet.say(QString::fromStdString(m_file.native()), Sheet::Tone::Quiet);
    Sheet::Choices acts;
    if (m_fault.kind == FaultKind::Locked) {
        acts.choices.push_back({QStringLiteral("refused/again"),
                                tr("Try again"),
                                {},
                                [this] {
                                    go({m_file, {}, false, {}});
                                },
                                true,
                                false});
        if (store::isHeldElsewhere(m_file)) {
            sheet.say(tr("Two programs writing at once would ruin the file. Only where that machine is surely off or "
                         "the bench there is closed, take it over."));
            acts.choices.push_back({QStringLiteral("refused/takeover"),
                                    tr("It is closed there: open it here"),
                                    {},
                                    [this] {
                                        go({m_file, {}, true, {}});
                                    },
                                    false,
                                    false});
        }
    } else if (m_fault.kind != FaultKind::Foreign && m_fault.kind != FaultKind::Newer) {
        acts.choices.push_back({QStringLiteral("refused/again"),
                                tr("Try again"),
                                {},
                                [this] {
                                    go({m_file, {}, false, {}});
                                },
                                m_fault.kind != FaultKind::Damaged,
                                false});
    }
    acts.choices.push_back({QStringLiteral("refused/close"), tr("Close"), {}, [this] { close(); }, false, false});
    sheet.add(acts);
    if (m_fault.kind == FaultKind::Damaged || m_fault.kind == FaultKind::NotFound) {
        sheet.head(m_lines.empty() ? tr("There is no backup of it") : tr("Go back to a backup"));
        BackupActs hands;
        hands.pick = [this](const QString& file) { lookThrough(file); };
        addBackups(sheet, m_lines, m_now, m_manner, hands);
    }
    return sheet;
}

void RefusedWindow::lookThrough(const QString& file)
{
    m_picked = file;
    m_seen.reset();
    refresh();
    m_looking = std::async(std::launch::async, [this, backup = Upkeep::folderFor(m_file) / file.toStdString()] {
        BackupLooked looked{backup, {}, {}};
        if (const auto contents = m_backups.look(backup)) {
            looked.contents = contents.value();
        } else {
            looked.fault = contents.fault();
        }
        QMetaObject::invokeMethod(
            this,
            [this, looked] {
                m_seen = backupSeen(looked);
                refresh();
            },
            Qt::QueuedConnection);
    });
}

void RefusedWindow::go(Next next)
{
    m_next = std::move(next);
    close();
}

void RefusedWindow::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_page->setGeometry(rect());
}

} // namespace mend::app
