#pragma once

#include "app/parts/actview.h"
#include "app/parts/look.h"

#include <QPointer>

namespace mend::parts {

/// Letters on the glass, for a tablet without a keyboard. It types into whatever line has the focus and never takes
/// the focus itself. Whoever shows it gives it room of its own at the foot of the window, so that it covers nothing.
class LetterPad : public ActView {
    Q_OBJECT

public:
    explicit LetterPad(TapGate& gate, QWidget* parent = nullptr);

    void setLook(const Look& look);
    /// The line that is typed into; none hides nothing, its keys then do nothing.
    void typeInto(QWidget* line);
    QWidget* line() const { return m_line; }
    /// How high it is for all its rows to have keys of the least size.
    static int heightFor(const Look& look);

Q_SIGNALS:
    /// "Done" was tapped: the pad may go.
    void done();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    enum class Page { Letters, Figures, Accents };
    void compose();
    void type(const QString& letters);
    void press(int key);

    Look m_look;
    QPointer<QWidget> m_line;
    Page m_page = Page::Letters;
    bool m_capital = false;
};

} // namespace mend::parts
