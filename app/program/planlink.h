#pragma once

#include "app/plan/planspace.h"
#include "app/shell/mainwindow.h"
#include "core/service/planservice.h"

#include <QObject>

namespace mend::app {

/// Puts the Plan space into the window and ties it to the planner: shows what was planned, hands on what is told.
class PlanLink : public QObject {
    Q_OBJECT

public:
    struct Services {
        service::BenchService& bench;
        service::PlanService& plans;
        const Clock& clock;
    };
    PlanLink(Services services, MainWindow& window, parts::TapGate& gate, service::Manner manner,
             QObject* parent = nullptr);

    /// A tick: the planner looks whether time has overtaken the plan, the space shows the minute.
    void look(Instant now);
    void useStudio(const service::Studio& studio);
    PlanSpace& space() { return *m_space; }

Q_SIGNALS:
    void pieceWanted(mend::PieceId piece);

private:
    bool isInFront() const;
    void show();
    PlanShown shown() const;
    void setAside(PieceId piece);

    Services m_services;
    MainWindow& m_window;
    service::Manner m_manner;
    PlanSpace* m_space; ///< the window's
    Instant m_minute;   ///< that is shown
};

} // namespace mend::app
