#pragma once

#include "app/bench/told.h"
#include "app/shell/mainwindow.h"
#include "core/service/alertservice.h"
#include "core/service/benchservice.h"
#include "core/service/heartbeat.h"

#include <QObject>

namespace mend::app {

/// Ties the window to the services: what is told in the window becomes an act, what changes on
/// the bench is shown. It decides nothing and knows no figure.
class BenchLink : public QObject, private Details {
    Q_OBJECT

public:
    struct Services {
        service::BenchService& bench;
        service::AlertService& alerts;
        service::Heartbeat& heart;
        const Clock& clock;
    };
    BenchLink(Services services, MainWindow& window, service::Manner manner, QObject* parent = nullptr);

    /// Shows the bench as it is now.
    void show();
    void setManner(const service::Manner& manner);
    /// Whether sound can be heard, as the sound process says.
    void setSoundWorks(bool works);

private:
    std::vector<Fact> factsOf(PieceId piece) const override;
    std::vector<StageDone> stagesDoneOf(PieceId piece) const override;
    std::vector<PutOff> putOffsOf(PieceId piece) const override;
    std::vector<StateTold> states() const override;
    QStringList nightAhead() const override;
    QStringList movedBy(EventId event, Instant happened, PieceId piece) const override;

    void connectActs();
    void connectRarerActs();
    void act(PieceId piece, const bench::CardAct& act, std::optional<Instant> told, MixId mix);
    bool closesMeanwhile(PieceId piece, const bench::CardAct& act, std::optional<Instant> at);
    bool needsMix(PieceId piece, const bench::CardAct& act, std::optional<Instant> at);
    MixId mixOnTheWay(const rules::Stage& stage, const bench::CardAct& act, PieceId piece, Instant when);
    void handsOn(PieceId piece);
    void undo(EventId event);
    /// One line for each window that closes, but for the one that is about to be begun.
    QStringList closingLines(const std::vector<bench::Alert>& closing, PieceId piece,
                             const bench::StageInstance& own) const;
    Instant now() const { return m_services.clock.now().utc; }
    const rules::Stage* stageOf(PieceId piece, const std::string& key) const;

    Services m_services;
    MainWindow& m_window;
    service::Manner m_manner;
    bool m_soundWorks = true;
};

} // namespace mend::app
