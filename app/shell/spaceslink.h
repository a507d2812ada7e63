#pragma once

#include "app/daylog/daylogspace.h"
#include "app/rules/rulesspace.h"
#include "app/settings/settingsspace.h"
#include "app/shell/mainwindow.h"
#include "app/whileaway/whileawayspace.h"
#include "core/service/alertservice.h"
#include "core/service/benchservice.h"

#include <QObject>

namespace mend::app {

/// Puts the spaces beside the Bench into the window and ties them to the services: log, rules
/// and the questions after a gap. What has to reach the file (a revision, a setting) is left to
/// whoever holds it: see `rules()` and `settings()`.
class SpacesLink : public QObject, private LogAnswers, private RulesAnswers {
    Q_OBJECT

public:
    struct Services {
        service::BenchService& bench;
        service::AlertService& alerts;
        const Clock& clock;
    };
    SpacesLink(Services services, MainWindow& window, parts::TapGate& gate, const service::Manner& manner,
               QObject* parent = nullptr);

    void setManner(const service::Manner& manner);
    /// The space in front is shown anew; called by itself when the bench or the space changes.
    void show();
    /// Nobody looked from then to then: heated places and the night are asked about.
    void nobodyLooked(InstantRange away);

    DayLogSpace& log() { return *m_log; }
    RulesSpace& rules() { return *m_rules; }
    SettingsSpace& settings() { return *m_settings; }
    WhileAwaySpace& whileAway() { return *m_away; }

Q_SIGNALS:
    /// Settings has come to the front: whoever holds the file says what it shows.
    void settingsShown();

private:
    QStringList movedBy(EventId event, Instant happened, PieceId piece) const override;
    QStringList movedByTakingBack(EventId event) const override;
    QStringList goesWith(EventId event) const override;
    QStringList movedIf(const rules::Procedure& procedure, const std::vector<PieceId>& pieces) const override;
    QStringList movedIfOwn(const rules::OwnFigure& own) const override;

    void addSpaces();
    void connectLog();
    void connectWhileAway();
    void showLog();
    void showRules();
    void askAfter(InstantRange away);
    void missed(const bench::MissedReport& report);
    QStringList moveLines(const bench::Board& after) const;
    Instant now() const { return m_services.clock.now().utc; }

    Services m_services;
    MainWindow& m_window;
    service::Manner m_manner;
    DayLogSpace* m_log; ///< the window's, as the others
    RulesSpace* m_rules;
    SettingsSpace* m_settings;
    WhileAwaySpace* m_away;
    WhileAwayNow m_asked;
    int m_daysBack = 0; ///< of the log
};

} // namespace mend::app
