#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetview.h"
#include "core/base/units.h"
#include "core/service/whileaway.h"

#include <map>
#include <optional>
#include <vector>

namespace mend::app {

/// What has to be asked once somebody is back: what was missed, whether heated places stayed on, how cold and
/// warm the night was.
struct WhileAwayNow {
    struct Place {
        PlaceId id;
        QString name;
    };
    InstantRange away;                       ///< nobody looked from then to then
    std::vector<service::MissedLine> missed; ///< what can still be saved first
    QStringList ended;                       ///< waits that were over meanwhile: only to be read
    std::vector<Place> heated;               ///< stayed on, went off, do not know
    std::vector<Place> nights;               ///< whose lowest and highest are asked
};

/// One screen for what went on while nobody looked. Nothing on it has to be answered; what is left
/// open is reckoned to the safe side.
class WhileAwaySpace : public QWidget {
    Q_OBJECT

public:
    explicit WhileAwaySpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    void setManner(const service::Manner& manner);
    void setNow(WhileAwayNow now, Instant at);
    /// Whether anything is left to answer.
    bool hasQuestions() const;

    parts::SheetView& sheet() { return *m_sheet; }

Q_SIGNALS:
    void missedAnswered(const QString& alertKey, mend::PieceId piece, const mend::bench::CardAct& act);
    void gapAnswered(mend::PlaceId place, mend::InstantRange away,
                     const QString& how); ///< "stayedOn", "wentOff", "unknown"
    void nightTold(mend::PlaceId place, mend::InstantRange away, mend::Temperature lowest, mend::Temperature highest);
    void benchWanted();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Night {
        QString lowest;
        QString highest;
        QString fault;
    };
    void refresh();
    void sayMissed(parts::Sheet& sheet);
    void askHeated(parts::Sheet& sheet);
    void askNights(parts::Sheet& sheet);
    void tellNight(const WhileAwayNow::Place& place);
    std::optional<Temperature> read(const QString& typed) const;

    WhileAwayNow m_now;
    Instant m_at;
    service::Manner m_manner;
    std::map<PlaceId, Night> m_nights;
    parts::SheetView* m_sheet;
};

} // namespace mend::app
