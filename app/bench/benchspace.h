#pragma once

#include "app/bench/benchplan.h"
#include "app/bench/cardfield.h"
#include "app/bench/flash.h"
#include "app/bench/panel.h"
#include "app/bench/pedal.h"
#include "app/bench/steadyorder.h"
#include "app/bench/told.h"

#include <QTimer>
#include <QWidget>
#include <optional>

namespace mend::app {

/// The Bench: what is in hand now, what to do, by when, and one button a card that says it is
/// done. It draws what it is given and says what was told; it holds no rule.
class BenchSpace : public QWidget, private Hands {
    Q_OBJECT

public:
    explicit BenchSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    void setManner(const service::Manner& manner);
    void setDetails(const Details* details) { m_panel->setDetails(details); }
    void setBoard(const bench::Board& board, const Extras& extras);
    /// The clock moved on; the board is the same.
    void setNow(Instant now);
    /// True where something shown changes every second, so that the one tick knows its next edge.
    bool showsSeconds() const;
    /// How the whole window shares out its room; this is the larger part of it.
    void setPlan(const BenchPlan& plan);
    void hideOwners(bool hidden);
    /// Owners are hidden for as long as somebody else may look over the shoulder, whatever was wished.
    void coverOwners(bool covered);
    /// No touch is taken for 20 s.
    void wipeGlass();
    /// Asks which living mix was used, where there is not exactly one.
    /// `told`: when it happened, where that was told already.
    void askWhichMix(PieceId piece, const bench::CardAct& act, const std::vector<MixId>& mixes,
                     std::optional<Instant> told);

    /// Lists what closes meanwhile before something long is begun.
    void askBegin(PieceId piece, const bench::CardAct& act, const QStringList& lines);

    /// Everything that is told here comes out of this.
    Told& told() { return m_told; }
    Pedal& pedal() { return *m_pedal; }
    const Picture& picture() const { return m_picture; }
    PieceId blockPiece() const { return m_blockPiece; }

    parts::ActView& top() { return *m_top; }
    parts::ActView& band() { return *m_band; }
    parts::ActView& block() { return *m_block; }
    CardField& cards() { return *m_cards; }
    Panel& panel() { return *m_panel; }

Q_SIGNALS:
    void addPieceWanted();
    /// The panel lies over the block: the most urgent thing has to be shown elsewhere.
    void blockCovered(bool covered);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void act(PieceId piece, const bench::CardAct& act) override;
    void more(PieceId piece) override;
    void why(PieceId piece) override;
    void undo(EventId event) override;
    void openPlace(PlaceId place) override;
    void mixNow(const QString& material) override;
    void openMix(MixId mix) override;
    void openPeople() override;
    void openSound() override;
    void allMixes() override;
    void allPlaces() override;
    void step(int cards) override;

    void arrange(bool keep);
    void arrangePanel(int top);
    void compose(bool inSight);
    bool topCountsSeconds() const;
    void composeWipe();
    void settle();
    void flash();
    void aimFlash();
    void moveOnByKey(parts::ActView* from, int dx, int dy);
    void pedalPressed(PieceId piece, bool isLong);
    PieceId wantedBlock() const;
    bool mirrored() const { return layoutDirection() == Qt::RightToLeft; }

    parts::TapGate& m_gate;
    Told m_told;
    Picture m_picture;
    BenchPlan m_plan;
    SteadyOrder m_order;
    PieceId m_blockPiece;
    int m_blockHigh = 0;
    std::size_t m_single = 0;
    Flash m_flash;
    QTimer m_flashTimer;
    QTimer m_settleTimer;
    parts::ActView* m_top;
    parts::ActView* m_band;
    parts::ActView* m_block;
    CardField* m_cards;
    Panel* m_panel;
    parts::ActView* m_wipe;
    Pedal* m_pedal;
    bool m_covered = false;
    bool m_ownersHidden = false;  ///< as wished
    bool m_ownersCovered = false; ///< while a piece is taken in
};

} // namespace mend::app
