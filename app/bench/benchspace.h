#pragma once

#include "app/bench/benchplan.h"
#include "app/bench/hands.h"
#include "app/bench/picture.h"
#include "app/parts/actview.h"

#include <QWidget>

#include <optional>

namespace mend::app {

/// The Bench: what is in hand now, what to do, by when, and one button a card that says it is
/// done. It draws what it is given and says what was tapped; it holds no rule.
class BenchSpace : public QWidget, private Hands {
    Q_OBJECT
public:
    explicit BenchSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    void setManner(const service::Manner& manner);
    void setBoard(const bench::Board& board, const Extras& extras);
    /// The clock moved on; the board is the same.
    void setNow(Instant now);
    /// True where something shown changes every second, so that the one tick knows its next edge.
    bool showsSeconds() const;
    /// The plan of the whole window, of which this is the larger part.
    void setPlan(const BenchPlan& plan);

    const Picture& picture() const { return m_picture; }
    parts::ActView& top() { return *m_top; }
    parts::ActView& band() { return *m_band; }
    parts::ActView& block() { return *m_block; }
    parts::ActView& cards() { return *m_cards; }

Q_SIGNALS:
    void acted(mend::PieceId piece, const mend::bench::CardAct& act, std::optional<mend::Instant> told);
    void mixStarted(const QString& material);
    void undone(mend::EventId event);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

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
    void step(int cards) override;

    void arrange();
    void compose();
    void composeCards();
    const bench::Card* blockCard() const;
    bool mirrored() const { return layoutDirection() == Qt::RightToLeft; }

    parts::TapGate& m_gate;
    Picture m_picture;
    BenchPlan m_plan;
    parts::ActView* m_top;
    parts::ActView* m_band;
    parts::ActView* m_block;
    parts::ActView* m_cards;
    int m_scroll = 0;
    int m_contentHigh = 0;
};

} // namespace mend::app
