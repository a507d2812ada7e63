#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/shell/findlink.h"
#include "app/shell/intakelink.h"
#include "app/shell/mainwindow.h"
#include "app/shell/scanear.h"

namespace mend::app {

/// Ties the spaces in which a piece comes in and is looked up to the door. What leads to one piece goes by
/// `openPiece`, from whatever space.
class DoorLink : public QObject {
    Q_OBJECT

public:
    using Services = FindLink::Services;
    DoorLink(Services services, MainWindow& window, parts::TapGate& gate, const service::Manner& manner,
             QObject* parent = nullptr);

    void setManner(const service::Manner& manner);
    /// One piece is to be seen whole.
    void openPiece(PieceId piece) { Q_EMIT pieceWanted(piece); }
    /// Brings Find to the front, ready to type.
    void openFind();
    FindSpace& find() { return *m_findSpace; }
    IntakeSpace& intake() { return *m_intakeSpace; }
    ScanEar& ear() { return m_ear; }

Q_SIGNALS:
    /// Whoever shows pieces brings this one to the front.
    void pieceWanted(mend::PieceId piece);

private:
    void connectFind();
    void connectIntake();
    void show();

    Services m_services;
    MainWindow& m_window;
    FindSpace* m_findSpace;     ///< the window's
    IntakeSpace* m_intakeSpace; ///< the window's
    FindLink m_find;
    IntakeLink m_intake;
    ScanEar m_ear;
};

} // namespace mend::app
