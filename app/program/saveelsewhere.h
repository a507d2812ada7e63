#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetview.h"

#include <QString>
#include <filesystem>

namespace mend::app {

/// Asks where the bench is to go on when its file cannot be written any more: a line to type a path into,
/// with a free name to begin with.
class SaveElsewhere : public QWidget {
    Q_OBJECT

public:
    explicit SaveElsewhere(parts::TapGate& gate, QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    /// Begins anew with this suggestion.
    void ask(const std::filesystem::path& suggested);
    /// It did not work; what is typed stays.
    void showRefused(const QString& why);
    parts::SheetView& page() { return *m_page; }

    /// A name in `folder` that nothing has yet, for a bench that was called `file`.
    static std::filesystem::path freeName(const std::filesystem::path& folder, const std::filesystem::path& file);

Q_SIGNALS:
    void placeTold(const QString& path);
    void left();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void tell();

    parts::SheetView* m_page;
    QString m_path;
    QString m_fault;
    bool m_busy = false;
};

} // namespace mend::app
