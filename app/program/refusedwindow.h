#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetview.h"
#include "app/program/sessionend.h"
#include "app/program/upkeep.h"
#include "app/settings/backuppages.h"

#include <future>

namespace mend::app {

std::vector<BackupLine> backupLines(const std::vector<store::Backup>& backups);
BackupSeen backupSeen(const BackupLooked& looked);

/// Stands in the place of the window when a bench file cannot be opened: says why, and offers what a person
/// can do about it. The file is left as it is.
class RefusedWindow : public QWidget {
    Q_OBJECT

public:
    RefusedWindow(parts::TapGate& gate, std::filesystem::path file, Fault fault, Instant now, service::Manner manner,
                  QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    const std::optional<Next>& next() const { return m_next; }
    parts::SheetView& page() { return *m_page; }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    parts::Sheet reasonSheet();
    void go(Next next);
    void lookThrough(const QString& file);

    std::filesystem::path m_file;
    Fault m_fault;
    Instant m_now;
    service::Manner m_manner;
    store::Backups m_backups;
    std::vector<BackupLine> m_lines;
    QString m_picked;
    std::optional<BackupSeen> m_seen;
    std::optional<Next> m_next;
    parts::SheetView* m_page;
    std::future<void> m_looking;
};

} // namespace mend::app
