#pragma once

#include "app/bench/cardscene.h"
#include "app/parts/scrollview.h"

#include <map>

namespace mend::app {

/// The cards below the block, in columns, as many as there are. Draws a card anew only when
/// something on it has changed.
class CardField : public parts::ScrollView {
    Q_OBJECT

public:
    static constexpr int edge = 5; ///< room for the mark of the keys round an outermost card
    static constexpr double gapUnits = 12.0;

    CardField(parts::TapGate& gate, const Picture& picture, Hands& hands, QWidget* parent = nullptr);

    /// Which cards, in which order and columns. Heights are taken anew unless they are `kept`.
    void lay(std::vector<PieceId> order, int columns, bool photos, bool keepHeights);
    /// One card at a time, with buttons to the one before and after.
    void laySingle(std::vector<PieceId> order, std::size_t shown, bool photos);
    /// Draws what has changed: only cards in sight where `inSight`.
    void compose(bool inSight);
    /// Forgets what was drawn: the look has changed.
    void redraw();
    /// Where a card stands in the view now; empty where it is not shown.
    QRect placeOf(PieceId piece) const;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Slot {
        PieceId piece;
        QRect place; ///< as if nothing were scrolled
        QString signature;
        parts::ScenePtr scene;
    };
    void place(bool keepHeights);
    void placeSingle();
    parts::ScenePtr stepScene() const;

    const Picture& m_picture;
    Hands& m_hands;
    std::vector<PieceId> m_order;
    std::vector<Slot> m_slots;
    std::map<PieceId, int> m_heights;
    int m_columns = 2;
    bool m_photos = true;
    std::optional<std::size_t> m_single;
    int m_contentHigh = 0;
};

} // namespace mend::app
