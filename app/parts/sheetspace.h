#pragma once

#include "app/parts/sheetview.h"

namespace mend::parts {

/// A space made of a list and, beside it, the page of what is chosen there. Where there is no
/// room for both, one at a time, with a way back.
class SheetSpace : public QWidget {
    Q_OBJECT

public:
    explicit SheetSpace(TapGate& gate, QWidget* parent = nullptr);

    void setLook(const Look& look);
    const Look& look() const { return m_look; }
    SheetView& list() { return *m_list; }
    SheetView& page() { return *m_page; }
    /// One at a time: the list or the page.
    bool isNarrow() const { return m_narrow; }

protected:
    /// What the two show now; worked out anew by `refresh`.
    virtual Sheet listSheet() = 0;
    virtual Sheet pageSheet() = 0;
    void refresh();
    /// Something was chosen in the list: where only one has room, its page comes.
    void openPage();
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void arrange();

    Look m_look;
    SheetView* m_list;
    SheetView* m_page;
    bool m_narrow = false;
    bool m_pageOpen = false;
};

} // namespace mend::parts
