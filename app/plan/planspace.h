#pragma once

#include "app/parts/scrollview.h"
#include "app/plan/planscenes.h"

#include <QWidget>

namespace mend::app {

/// What to do next today and in the coming days, and why then: a numbered list, and beside it one thread for each
/// person. It shows the plan it is given and plans nothing itself.
class PlanSpace : public QWidget {
    Q_OBJECT

public:
    explicit PlanSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    void setManner(const service::Manner& manner);
    void setShown(PlanShown shown);

    parts::ActView& head() { return *m_head; }
    parts::ScrollView& list() { return *m_list; }
    parts::ScrollView& threads() { return *m_threads; }

Q_SIGNALS:
    void pieceWanted(mend::PieceId piece);
    void setAsideWanted(mend::PieceId piece);
    void offerTaken();
    void offerRefused();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void connectActs();
    void arrange();

    PlanPicture m_picture;
    parts::ActView* m_head;
    parts::ScrollView* m_list;
    parts::ScrollView* m_threads; ///< beside the list; where there is no room, under it
};

} // namespace mend::app
