#include "app/bench/panel.h"

#include <QKeyEvent>

namespace mend::app {

Panel::Panel(parts::TapGate& gate, const Picture& picture, Told& told, QWidget* parent)
    : ScrollView(gate, parent), m_picture(picture), m_told(told), m_words(new QLineEdit(this))
{
    setAccessibleName(tr("More"));
    m_words->hide();
    m_words->setAccessibleName(tr("Your words"));
    m_words->setMaxLength(500);
    hide();
}

void Panel::open(Build build)
{
    const bool wasOpen = isOpen();
    m_build = std::move(build);
    m_page = m_build();
    m_typed.clear();
    m_words->clear();
    if (!wasOpen) {
        Q_EMIT opened();
    }
    show();
    raise();
    scrollTo(0);
    compose();
    setFocus(Qt::OtherFocusReason);
}

void Panel::close()
{
    if (!isOpen()) {
        return;
    }
    m_page.reset();
    m_build = {};
    m_temperature.reset();
    hide();
    Q_EMIT closed();
}

void Panel::refresh()
{
    if (m_build) {
        m_page = m_build();
        compose();
    }
}

std::function<void()> Panel::closing(std::function<void()> act)
{
    return [this, act = std::move(act)] {
        const auto keep = act; // closing drops the page that holds this
        close();
        keep();
    };
}

void Panel::compose()
{
    if (!m_page || width() <= 0) {
        return;
    }
    const auto& look = m_picture.look;
    const bool mirrored = layoutDirection() == Qt::RightToLeft;
    const int bar = look.measure.px(barUnits);
    auto drawn = drawPanel(*m_page, look, width() - bar, mirrored, [this] { close(); });
    const QPoint at(mirrored ? bar : 0, 0);
    const QRect place = drawn.words;
    m_words->setVisible(!place.isEmpty());
    if (!place.isEmpty()) {
        m_words->setGeometry(place.translated(at.x(), -offset()));
        m_words->setFont(look.type.font(parts::Role::Body));
        m_words->setAccessibleName(m_page->wordsAsked);
    }
    setContent({{at, std::make_shared<const parts::Scene>(std::move(drawn.scene)), {}}}, drawn.height,
               look.tokens().hair);
}

void Panel::resizeEvent(QResizeEvent* event)
{
    compose();
    ScrollView::resizeEvent(event);
    if (m_words->hasFocus() && (m_words->y() < 0 || m_words->geometry().bottom() > height())) {
        scrollTo(offset() + m_words->geometry().center().y() - height() / 2);
        compose();
    }
}

void Panel::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        close();
        return;
    }
    const QString typed = event->text();
    const bool digit =
        m_page && m_page->pad && typed.size() == 1 && (typed[0].isDigit() || QStringLiteral(".,-").contains(typed[0]));
    if (digit) {
        m_page->typed(typed[0] == QLatin1Char(',') ? QLatin1Char('.') : typed[0]);
        return;
    }
    if (m_page && m_page->pad && event->key() == Qt::Key_Backspace) {
        m_page->typed(QLatin1Char('<'));
        return;
    }
    ScrollView::keyPressEvent(event);
}

QString Panel::pieceName(PieceId piece) const
{
    const auto found = m_picture.names.pieces.find(piece);
    return found == m_picture.names.pieces.end() ? QString() : service::isolated(found->second);
}

QString Panel::titleFor(PieceId piece, const QString& words) const { return tr("%1: %2").arg(pieceName(piece), words); }

void Panel::openMore(PieceId piece)
{
    open([this, piece] { return morePage(piece); });
}
void Panel::openWhy(PieceId piece)
{
    open([this, piece] { return whyPage(piece); });
}
void Panel::openHazards(PieceId piece, const bench::StageInstance& stage)
{
    open([this, piece, stage] { return hazardPage(piece, stage); });
}
void Panel::openMix(MixId mix)
{
    open([this, mix] { return mixPage(mix); });
}

void Panel::askWhichMix(PieceId piece, const bench::CardAct& act, const std::vector<MixId>& mixes,
                        std::optional<Instant> told)
{
    open([this, piece, act, mixes, told] {
        PanelPage page;
        page.title = titleFor(piece, tr("from which mix?"));
        for (const auto& mix : m_picture.board.mixes) {
            if (std::ranges::find(mixes, mix.mix) == mixes.end()) {
                continue;
            }
            page.choices.push_back(
                {QStringLiteral("whichmix/%1").arg(mix.mix.value()), service::text(mix.materialName),
                 tr("mixed %1").arg(service::agoWords(m_picture.now - mix.mixedAt)),
                 closing([this, piece, act, told, id = mix.mix] { Q_EMIT m_told.actedWithMix(piece, act, id, told); }),
                 true});
        }
        page.choices.push_back(
            {QStringLiteral("whichmix/none"),
             tr("None of these"),
             {},
             closing([this, piece, act, told] { Q_EMIT m_told.actedWithMix(piece, act, MixId(), told); }),
             false});
        return page;
    });
}

void Panel::askBegin(PieceId piece, const bench::CardAct& act, const QStringList& lines)
{
    open([this, piece, act, lines] {
        PanelPage page;
        page.title = titleFor(piece, tr("this closes meanwhile"));
        page.text = lines;
        page.choices.push_back({QStringLiteral("begin/anyway"), service::actWords(act), tr("all the same"),
                                closing([this, piece, act] { Q_EMIT m_told.begunAllTheSame(piece, act); }), false});
        page.choices.push_back({QStringLiteral("begin/later"), tr("Not now"), {}, closing([] {}), true});
        return page;
    });
}

} // namespace mend::app
