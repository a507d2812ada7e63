#include "app/parts/letterpad.h"

#include "app/parts/scribe.h"

#include <QCoreApplication>
#include <QKeyEvent>

#include <array>

namespace mend::parts {

namespace {

constexpr std::size_t letterRows = 3;
constexpr int rowsInAll = 4; ///< the last holds what is not a letter
constexpr double padGapUnits = 6.0;

/// The letters of a page, row by row. Every European language that names in the Latin script is served by the third.
std::array<QString, letterRows> lettersOf(int page)
{
    switch (page) {
    case 1:
        return {QStringLiteral("1234567890"), QStringLiteral("@-_/:;()&+"), QStringLiteral(".,?!'\"#%")};
    case 2:
        return {QStringLiteral("áàâäãåąæçć"), QStringLiteral("éèêëęíîïłñ"), QStringLiteral("óôöøśšúüýž")};
    default:
        return {QStringLiteral("qwertyuiop"), QStringLiteral("asdfghjkl"), QStringLiteral("zxcvbnm.")};
    }
}

} // namespace

LetterPad::LetterPad(TapGate& gate, QWidget* parent) : ActView(gate, parent)
{
    setAccessibleName(tr("Letters"));
    setFocusPolicy(Qt::NoFocus);
}

int LetterPad::heightFor(const Look& look)
{
    const int key = look.measure.mm(otherActMm);
    const int gap = look.measure.px(padGapUnits);
    return rowsInAll * (key + gap) + gap;
}

/// A line for an amount or a count begins with figures, any other with letters.
void LetterPad::typeInto(QWidget* line)
{
    const bool other = line && line != m_line;
    m_line = line;
    if (other) {
        m_page = line->inputMethodHints() & Qt::ImhPreferNumbers ? Page::Figures : Page::Letters;
        compose();
    }
}

void LetterPad::setLook(const Look& look)
{
    m_look = look;
    setGround(look.tokens().ground);
    compose();
}

void LetterPad::press(int key)
{
    if (!m_line) {
        return;
    }
    QKeyEvent down(QEvent::KeyPress, key, Qt::NoModifier);
    QKeyEvent up(QEvent::KeyRelease, key, Qt::NoModifier);
    QCoreApplication::sendEvent(m_line, &down);
    QCoreApplication::sendEvent(m_line, &up);
}

void LetterPad::type(const QString& letters)
{
    if (!m_line) {
        return;
    }
    QKeyEvent down(QEvent::KeyPress, 0, Qt::NoModifier, letters);
    QKeyEvent up(QEvent::KeyRelease, 0, Qt::NoModifier, letters);
    QCoreApplication::sendEvent(m_line, &down);
    QCoreApplication::sendEvent(m_line, &up);
    if (m_capital) { // one capital, as a name begins
        m_capital = false;
        compose();
    }
}

void LetterPad::compose()
{
    if (width() <= 0 || height() <= 0) {
        return;
    }
    Scribe scribe(m_look, size(), layoutDirection() == Qt::RightToLeft);
    const int gap = m_look.measure.px(padGapUnits);
    const int high = std::max(m_look.measure.mm(otherActMm), (height() - gap) / rowsInAll - gap);
    const auto key = [&](const QRect& rect, const QString& name, const QString& label, std::function<void()> act,
                         bool chosen = false) {
        Scribe::Button button;
        button.label = label;
        button.role = Role::Body;
        button.weight = chosen ? Scribe::Button::Weight::Strong : Scribe::Button::Weight::Plain;
        button.hit.key = QStringLiteral("letter/") + name;
        button.hit.name = label;
        button.hit.act = std::move(act);
        button.hit.rect = rect;
        scribe.button(button);
    };
    const auto rows = lettersOf(static_cast<int>(m_page));
    constexpr int across = 10;
    const int wide = (width() - (across + 1) * gap) / across;
    int y = gap;
    for (const QString& row : rows) {
        const int used = static_cast<int>(row.size()) * (wide + gap) - gap;
        int x = (width() - used) / 2;
        for (const QChar letter : row) {
            const QString shown = m_capital ? QString(letter).toUpper() : QString(letter);
            key({x, y, wide, high}, QString(letter), shown, [this, shown] { type(shown); });
            x += wide + gap;
        }
        y += high + gap;
    }
    struct Wide {
        QString name;
        QString label;
        int share;
        std::function<void()> act;
        bool chosen = false;
    };
    const auto turn = [this](Page page) {
        return [this, page] {
            m_page = m_page == page ? Page::Letters : page;
            compose();
        };
    };
    const std::vector<Wide> last{
        {QStringLiteral("capital"), tr("Capital"), 3,
         [this] {
             m_capital = !m_capital;
             compose();
         },
         m_capital},
        {QStringLiteral("figures"), tr("123"), 2, turn(Page::Figures), m_page == Page::Figures},
        {QStringLiteral("accents"), tr("äéø"), 2, turn(Page::Accents), m_page == Page::Accents},
        {QStringLiteral("space"), tr("Space"), 6, [this] { type(QStringLiteral(" ")); }},
        {QStringLiteral("back"), tr("Back"), 3, [this] { press(Qt::Key_Backspace); }},
        {QStringLiteral("done"), tr("Done"), 3, [this] { Q_EMIT done(); }}};
    constexpr int shares = 19;
    const int unit = (width() - gap * (static_cast<int>(last.size()) + 1)) / shares;
    int x = gap;
    for (const Wide& each : last) {
        const int own = unit * each.share;
        key({x, y, own, high}, each.name, each.label, each.act, each.chosen);
        x += own + gap;
    }
    setParts({{QPoint(), std::make_shared<const Scene>(scribe.take()), {}}});
}

void LetterPad::resizeEvent(QResizeEvent* event)
{
    ActView::resizeEvent(event);
    compose();
}

void LetterPad::changeEvent(QEvent* event)
{
    ActView::changeEvent(event);
    if (event->type() == QEvent::LayoutDirectionChange || event->type() == QEvent::LanguageChange) {
        compose();
    }
}

} // namespace mend::parts
