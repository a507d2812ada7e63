#include "app/bench/benchspace.h"

#include "app/bench/cardscene.h"
#include "app/bench/scenes.h"

#include <QEvent>

#include <algorithm>

namespace mend::app {

namespace {
constexpr double marginUnits = 24.0;
constexpr double gapUnits = 12.0;
} // namespace

BenchSpace::BenchSpace(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_gate(gate), m_top(new parts::ActView(gate, this)), m_band(new parts::ActView(gate, this)),
      m_block(new parts::ActView(gate, this)), m_cards(new parts::ActView(gate, this))
{
    setAutoFillBackground(true);
    m_top->setAccessibleName(tr("Top line"));
    m_band->setAccessibleName(tr("The next hours of all pieces, and mixing"));
    m_block->setAccessibleName(tr("Do this now"));
    m_cards->setAccessibleName(tr("Pieces on the bench"));
    connect(m_cards, &parts::ActView::dragged, this, [this](int pixels) {
        m_scroll = std::clamp(m_scroll - pixels, 0, std::max(0, m_contentHigh - m_cards->height()));
        composeCards();
    });
    setLook(m_picture.look);
}

void BenchSpace::setLook(const parts::Look& look)
{
    m_picture.look = look;
    const auto& t = look.tokens();
    QPalette colours = palette();
    colours.setColor(QPalette::Window, t.ground);
    colours.setColor(QPalette::WindowText, t.ink);
    setPalette(colours);
    for (auto* view : {m_top, m_band, m_block, m_cards}) {
        view->setFocusInk(t.ink, look.measure.px(3));
        view->setGround(t.ground);
    }
    arrange();
}

void BenchSpace::setManner(const service::Manner& manner)
{
    m_picture.manner = manner;
    compose();
}

void BenchSpace::setPlan(const BenchPlan& plan)
{
    m_plan = plan;
    arrange();
}

void BenchSpace::setBoard(const bench::Board& board, const Extras& extras)
{
    m_picture.board = board;
    m_picture.extras = extras;
    m_picture.now = board.at;
    m_picture.names = service::namesOf(board);
    for (const auto& place : extras.places) {
        m_picture.names.places[place.place] = place.name;
    }
    arrange();
}

void BenchSpace::setNow(Instant now)
{
    m_picture.now = now;
    compose();
}

bool BenchSpace::showsSeconds() const
{
    return std::ranges::any_of(m_picture.board.cards, [this](const bench::Card& card) {
        return service::countWords(card, m_picture.now, m_picture.manner).seconds;
    });
}

const bench::Card* BenchSpace::blockCard() const
{
    const auto& cards = m_picture.board.cards;
    const auto found = std::ranges::find_if(cards, [](const bench::Card& card) {
        return card.standing == bench::Standing::DoNow || card.counts == bench::CountKind::Counted;
    });
    return found == cards.end() ? nullptr : &*found;
}

void BenchSpace::arrange()
{
    const auto& measure = m_picture.look.measure;
    const int margin = measure.px(marginUnits);
    const int gap = measure.px(gapUnits);
    const int wide = width() - 2 * margin;
    if (wide <= 0) {
        return;
    }
    int y = 0;
    m_top->setGeometry(margin, y, wide, topHeight(m_picture.look));
    y += m_top->height() + measure.px(10);
    const int bandHigh = bandHeight(m_picture, m_plan.stripRows);
    m_band->setGeometry(margin, y, wide, bandHigh);
    m_band->setVisible(bandHigh > 0);
    y += bandHigh > 0 ? bandHigh + gap : 0;
    const bench::Card* block = blockCard();
    m_block->setVisible(block != nullptr);
    if (block) {
        const int high =
            m_plan.largeBlock ? blockHeight(*block, m_picture.look, wide) : cardHeight(*block, m_picture.look, wide);
        m_block->setGeometry(margin, y, wide, high);
        y += high + gap;
    }
    m_cards->setGeometry(margin - 4, y - 4, wide + 8, height() - y + 4);
    compose();
}

void BenchSpace::compose()
{
    const auto show = [](parts::ActView* view, parts::Scene scene) {
        view->setParts({{QPoint(), std::make_shared<const parts::Scene>(std::move(scene)), {}}});
    };
    show(m_top, topScene(m_picture, m_top->size(), mirrored(), *this));
    show(m_band, bandScene(m_picture, m_band->size(), m_plan.stripRows, mirrored(), *this));
    if (const bench::Card* block = blockCard()) {
        show(m_block, cardScene(*block, m_picture, {m_block->size(), m_plan.photos, m_plan.largeBlock, true},
                                mirrored(), *this));
    } else {
        show(m_block, {});
    }
    composeCards();
}

void BenchSpace::composeCards()
{
    const auto& measure = m_picture.look.measure;
    const int gap = measure.px(gapUnits);
    const int columns = std::max(1, m_plan.columns);
    const int wide = (m_cards->width() - 8 - gap * (columns - 1)) / columns;
    std::vector<const bench::Card*> shown;
    const bench::Card* block = blockCard();
    for (const auto& card : m_picture.board.cards) {
        if (&card != block) {
            shown.push_back(&card);
        }
    }
    std::vector<parts::ActView::Part> parts;
    int y = 4;
    for (std::size_t i = 0; i < shown.size(); i += static_cast<std::size_t>(columns)) {
        const std::size_t end = std::min(shown.size(), i + static_cast<std::size_t>(columns));
        int high = 0;
        for (std::size_t each = i; each < end; ++each) {
            high = std::max(high, cardHeight(*shown[each], m_picture.look, wide));
        }
        for (std::size_t each = i; each < end; ++each) {
            const int column = static_cast<int>(each - i);
            const int at = mirrored() ? columns - 1 - column : column;
            const bool inverted = shown[each]->standing == bench::Standing::DoNow;
            auto scene = cardScene(*shown[each], m_picture, {QSize(wide, high), m_plan.photos, false, inverted},
                                   mirrored(), *this);
            parts.push_back({QPoint(4 + at * (wide + gap), y - m_scroll),
                             std::make_shared<const parts::Scene>(std::move(scene)),
                             {}});
        }
        y += high + gap;
    }
    m_contentHigh = y;
    m_cards->setParts(std::move(parts));
}

void BenchSpace::resizeEvent(QResizeEvent*) { arrange(); }

void BenchSpace::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::LayoutDirectionChange || event->type() == QEvent::LanguageChange) {
        arrange();
    }
    QWidget::changeEvent(event);
}

void BenchSpace::act(PieceId piece, const bench::CardAct& act) { Q_EMIT acted(piece, act, std::nullopt); }
void BenchSpace::more(PieceId) {}
void BenchSpace::why(PieceId) {}
void BenchSpace::undo(EventId event) { Q_EMIT undone(event); }
void BenchSpace::openPlace(PlaceId) {}
void BenchSpace::mixNow(const QString& material) { Q_EMIT mixStarted(material); }
void BenchSpace::openMix(MixId) {}
void BenchSpace::openPeople() {}
void BenchSpace::openSound() {}
void BenchSpace::allMixes() {}
void BenchSpace::step(int) {}

} // namespace mend::app
