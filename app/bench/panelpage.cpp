#include "app/bench/panelpage.h"

#include <QCoreApplication>
#include <algorithm>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Role;
using parts::Scribe;
using Weight = Scribe::Button::Weight;

// What a translator finds these words under.
class PanelWords {
    Q_DECLARE_TR_FUNCTIONS(PanelWords)
};

class PanelDrawing {
public:
    PanelDrawing(const PanelPage& page, const parts::Look& look, int width, bool mirrored)
        : m_page(page), m_scribe(look, QSize(width, 100000), mirrored), m_width(width),
          m_gap(std::max(look.measure.mm(parts::gapMm), look.measure.px(12)))
    {
    }

    PanelDrawn draw(const std::function<void()>& close)
    {
        head(close);
        paragraphs();
        words();
        if (m_page.pad) {
            pad();
        }
        choices();
        return {m_scribe.take(), m_y + m_gap, m_words};
    }

private:
    const parts::Tokens& tokens() const { return m_scribe.tokens(); }

    void head(const std::function<void()>& close)
    {
        const int high = std::max(m_scribe.mm(parts::otherActMm), m_scribe.px(48));
        Scribe::Button back;
        back.label = PanelWords::tr("Back to the bench");
        back.role = Role::Body;
        back.hit.key = QStringLiteral("panel/close");
        back.hit.name = back.label;
        back.hit.act = close;
        const int wide = std::min(m_width / 2, int(m_scribe.width(back.label, Role::Body)) + m_scribe.px(36));
        back.hit.rect = QRect(m_width - wide, 0, wide, high);
        m_scribe.text({0.0, 0.0, double(m_width - wide - m_gap), double(high)}, m_page.title,
                      {Role::CardVerb, tokens().ink, tokens().ground});
        readOut(m_page.title, QRect(0, 0, m_width - wide - m_gap, high));
        if (!m_page.figure.isEmpty()) {
            const double title = m_scribe.width(m_page.title, Role::CardVerb) + m_scribe.px(24);
            const QRectF rect(title, 0.0, m_width - wide - m_gap - title, high);
            m_scribe.text(rect, m_page.figure, {Role::BlockAct, tokens().ink, tokens().ground});
            readOut(m_page.figure, rect.toRect());
        }
        m_scribe.button(back);
        m_y = high + m_gap;
    }

    void readOut(const QString& words, const QRect& rect)
    {
        Hit hit;
        hit.key = QStringLiteral("panel/words/%1").arg(m_readOut++);
        hit.rect = rect;
        hit.name = words;
        hit.kind = HitKind::Words;
        m_scribe.hit(hit);
    }

    void paragraphs()
    {
        for (const QString& each : m_page.text) {
            const double used = m_scribe.lines({0.0, double(m_y), double(m_width), 10000.0}, each,
                                               {Role::Body, tokens().ink, tokens().ground}, 12);
            readOut(each, QRect(0, m_y, m_width, int(used)));
            m_y += int(used) + m_scribe.px(4);
        }
        m_y += m_page.text.isEmpty() ? 0 : m_scribe.px(8);
    }

    void words()
    {
        if (m_page.wordsAsked.isEmpty()) {
            return;
        }
        const double row = m_scribe.lineHeight(Role::Reason);
        m_scribe.text({0.0, double(m_y), double(m_width), row}, m_page.wordsAsked,
                      {Role::Reason, tokens().ink2, tokens().ground});
        m_y += int(row) + m_scribe.px(2);
        m_words = QRect(0, m_y, m_width, std::max(m_scribe.mm(parts::otherActMm), m_scribe.px(48)));
        m_y += m_words.height() + m_gap;
    }

    void pad()
    {
        QString keys = QStringLiteral("12345<67890");
        keys += m_page.comma ? QLatin1Char('.') : QLatin1Char('-');
        const int side = std::max(m_scribe.mm(parts::benchActMm), m_scribe.px(76));
        const int wide = std::min((m_width - 5 * m_gap) / 6, std::max(side, m_scribe.px(110)));
        for (int i = 0; i < keys.size(); ++i) {
            Scribe::Button key;
            const QChar typed = keys[i];
            key.label = typed == QLatin1Char('<') ? PanelWords::tr("Back") : QString(typed);
            key.role = typed == QLatin1Char('<') ? Role::CardAct : Role::BlockAct;
            key.hit.key = QStringLiteral("pad/%1").arg(typed);
            key.hit.name = typed == QLatin1Char('<') ? PanelWords::tr("Back: last digit away") : key.label;
            key.hit.kind = HitKind::BenchAct;
            key.hit.act = [type = m_page.typed, typed] { type(typed); };
            key.hit.rect = QRect(i % 6 * (wide + m_gap), m_y + i / 6 * (side + m_gap), wide, side);
            m_scribe.button(key);
        }
        const int padWide = 6 * (wide + m_gap);
        if (m_width - padWide >= m_scribe.px(190)) {
            m_beside = padWide; // the answers stand at the side of the digits
        } else {
            m_y += 2 * (side + m_gap);
        }
    }

    void choices()
    {
        const int side = std::max(m_scribe.mm(parts::benchActMm), m_scribe.px(76));
        const int count = static_cast<int>(m_page.choices.size());
        if (count == 0) {
            return;
        }
        const int room = m_width - m_beside;
        const int most = m_beside > 0 ? 1 : std::clamp((room + m_gap) / (m_scribe.px(190) + m_gap), 1, 5);
        // Rows as even as can be: five answers stand as three and two, not as four and one.
        const int rows = (count + most - 1) / most;
        const int columns = (count + rows - 1) / rows;
        const int wide = std::min((room - m_gap * (columns - 1)) / columns, m_scribe.px(340));
        for (int i = 0; i < count; ++i) {
            const auto& choice = m_page.choices[static_cast<std::size_t>(i)];
            Scribe::Button button;
            button.label = choice.label;
            button.below = choice.below;
            button.weight = choice.strong ? Weight::Strong : Weight::Plain;
            button.role = choice.strong ? Role::CardAct : Role::Body;
            button.hit.key = choice.key;
            button.hit.name =
                choice.below.isEmpty() ? choice.label : choice.label + QStringLiteral(", ") + choice.below;
            button.hit.kind = HitKind::BenchAct;
            button.hit.act = choice.act;
            button.hit.rect =
                QRect(m_beside + i % columns * (wide + m_gap), m_y + i / columns * (side + m_gap), wide, side);
            m_scribe.button(button);
        }
        m_y += std::max(rows, m_beside > 0 ? 2 : 0) * (side + m_gap);
    }

    const PanelPage& m_page;
    Scribe m_scribe;
    int m_width;
    int m_gap;
    int m_y = 0;
    int m_beside = 0;
    int m_readOut = 0;
    QRect m_words;
};

} // namespace

PanelDrawn drawPanel(const PanelPage& page, const parts::Look& look, int width, bool mirrored,
                     const std::function<void()>& close)
{
    return PanelDrawing(page, look, width, mirrored).draw(close);
}

} // namespace mend::app
