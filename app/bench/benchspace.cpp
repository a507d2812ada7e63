#include "app/bench/benchspace.h"

#include "app/bench/scenes.h"

#include <algorithm>

namespace mend::app {

namespace {

constexpr qint64 wipeMs = 20'000;

std::vector<PieceId> orderOn(const bench::Board& board)
{
    std::vector<PieceId> order;
    for (const auto& card : board.cards) {
        order.push_back(card.piece);
    }
    return order;
}

bool callsA(const std::vector<Flashing>& flashing, PieceId piece)
{
    return std::ranges::find(flashing, Flashing{piece, bench::Urgency::A}) != flashing.end();
}

/// An alert of the highest urgency has come up that was not there before.
bool hasRisen(const std::vector<Flashing>& before, const std::vector<Flashing>& after)
{
    return std::ranges::any_of(
        after, [&](const Flashing& each) { return each.urgency == bench::Urgency::A && !callsA(before, each.piece); });
}

} // namespace

BenchSpace::BenchSpace(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_gate(gate), m_top(new parts::ActView(gate, this)), m_band(new parts::ActView(gate, this)),
      m_block(new parts::ActView(gate, this)), m_cards(new CardField(gate, m_picture, *this, this)),
      m_panel(new Panel(gate, m_picture, m_told, this)), m_wipe(new parts::ActView(gate, this)),
      m_pedal(new Pedal([&gate] { return gate.now(); }, [this] { return m_blockPiece; }, this))
{
    setAutoFillBackground(true);
    m_top->setAccessibleName(tr("Top line"));
    m_band->setAccessibleName(tr("The next hours of all pieces, and mixing"));
    m_block->setAccessibleName(tr("Do this now"));
    m_cards->setAccessibleName(tr("Pieces on the bench"));
    m_wipe->hide();
    m_wipe->setAccessibleName(tr("Wipe the glass"));
    m_flashTimer.setSingleShot(true);
    m_flashTimer.setTimerType(Qt::PreciseTimer);
    m_settleTimer.setSingleShot(true);
    connect(&m_flashTimer, &QTimer::timeout, this, &BenchSpace::flash);
    connect(&m_settleTimer, &QTimer::timeout, this, &BenchSpace::settle);
    connect(m_panel, &Panel::opened, this, [this] { arrange(true); });
    connect(m_panel, &Panel::closed, this, [this] { arrange(true); });
    connect(m_panel, &Panel::glassWipeWanted, this, &BenchSpace::wipeGlass);
    connect(&m_told, &Told::ownersHidden, this, &BenchSpace::hideOwners);
    connect(m_pedal, &Pedal::shortPress, this, [this](PieceId piece) { pedalPressed(piece, false); });
    connect(m_pedal, &Pedal::longPress, this, [this](PieceId piece) { pedalPressed(piece, true); });
    for (auto* view : {m_top, m_band, m_block, static_cast<parts::ActView*>(m_cards)}) {
        connect(view, &parts::ActView::leftByKey, this, [this, view](int dx, int dy) { moveOnByKey(view, dx, dy); });
    }
    setLook(m_picture.look);
}

void BenchSpace::setLook(const parts::Look& look)
{
    m_picture.look = look;
    const auto& t = look.tokens();
    QPalette colours = palette();
    colours.setColor(QPalette::Window, t.ground);
    colours.setColor(QPalette::WindowText, t.ink);
    colours.setColor(QPalette::Base, t.card);
    colours.setColor(QPalette::Text, t.ink);
    colours.setColor(QPalette::Highlight, t.block);
    colours.setColor(QPalette::HighlightedText, t.onBlock);
    colours.setColor(QPalette::PlaceholderText, t.ink2);
    setPalette(colours);
    for (auto* view : {m_top, m_band, m_block, static_cast<parts::ActView*>(m_cards),
                       static_cast<parts::ActView*>(m_panel), m_wipe}) {
        view->setFocusInk(t.ink, look.measure.px(3));
        view->setGround(t.ground);
    }
    m_block->setFocusInk(t.gold, look.measure.px(4));
    m_cards->redraw();
    arrange(false);
}

void BenchSpace::setManner(const service::Manner& manner)
{
    m_picture.manner = manner;
    compose(false);
}

void BenchSpace::setPlan(const BenchPlan& plan)
{
    if (plan != m_plan) {
        m_plan = plan;
        arrange(false);
    }
}

void BenchSpace::hideOwners(bool hidden)
{
    m_ownersHidden = hidden;
    m_picture.hideOwners = m_ownersHidden || m_ownersCovered;
    compose(false);
}

void BenchSpace::coverOwners(bool covered)
{
    m_ownersCovered = covered;
    hideOwners(m_ownersHidden);
}

PieceId BenchSpace::wantedBlock() const
{
    const auto& cards = m_picture.board.cards;
    // What is counted is in the hands at this moment and over in less than three minutes: it goes first.
    auto found = std::ranges::find(cards, bench::CountKind::Counted, &bench::Card::counts);
    if (found == cards.end()) {
        found = std::ranges::find(cards, bench::Standing::DoNow, &bench::Card::standing);
    }
    return found == cards.end() ? PieceId() : found->piece;
}

void BenchSpace::setBoard(const bench::Board& board, const Extras& extras)
{
    const bool rises = hasRisen(m_picture.extras.flashing, extras.flashing);
    m_picture.board = board;
    m_picture.extras = extras;
    m_picture.now = board.at;
    m_picture.names = service::namesOf(board);
    if (extras.counting) {
        const auto counted = std::ranges::find(m_picture.board.cards, extras.counting->piece, &bench::Card::piece);
        if (counted != m_picture.board.cards.end()) {
            counted->counts = bench::CountKind::Counted;
            counted->countTo = extras.counting->until;
        }
    }
    for (const auto& place : extras.places) {
        m_picture.names.places[place.place] = place.name;
    }
    m_order.want(orderOn(board), rises);
    const bool still = m_gate.sinceLastTouch() < SteadyOrder::rest && !rises;
    if (still) {
        m_settleTimer.start(static_cast<int>(SteadyOrder::rest - m_gate.sinceLastTouch()) + 1);
    } else {
        m_order.settle(SteadyOrder::rest);
    }
    arrange(still);
    m_panel->refresh();
    aimFlash();
}

void BenchSpace::settle()
{
    const qint64 since = m_gate.sinceLastTouch();
    if (since < SteadyOrder::rest) {
        m_settleTimer.start(static_cast<int>(SteadyOrder::rest - since) + 1);
        return;
    }
    m_order.settle(since);
    arrange(false);
}

void BenchSpace::setNow(Instant now)
{
    const bool minute =
        std::chrono::floor<std::chrono::minutes>(now) != std::chrono::floor<std::chrono::minutes>(m_picture.now);
    m_picture.now = now;
    compose(!minute);
    if (m_wipe->isVisible()) {
        composeWipe();
    }
}

bool BenchSpace::showsSeconds() const
{
    return m_wipe->isVisible() || m_picture.extras.sound.state == SoundNow::State::Paused ||
           std::ranges::any_of(m_picture.board.cards, [this](const bench::Card& card) {
               return service::countWords(card, m_picture.now, m_picture.manner).seconds;
           });
}

void BenchSpace::compose(bool inSight)
{
    const auto show = [](parts::ActView* view, parts::Scene scene) {
        view->setParts({{QPoint(), std::make_shared<const parts::Scene>(std::move(scene)), {}}});
    };
    if (!inSight || topCountsSeconds()) {
        show(m_top, topScene(m_picture, m_top->size(), mirrored(), *this));
    }
    if (inSight) {
        // The common axis moves by less than a pixel from one second to the next.
    } else if (m_band->isVisibleTo(this)) {
        show(m_band, bandScene(m_picture, m_band->size(), m_plan.stripRows, mirrored(), *this));
    } else {
        show(m_band, {});
    }
    const bench::Card* block = m_plan.oneAtATime ? nullptr : m_picture.card(m_blockPiece);
    show(m_block, block ? cardScene(*block, m_picture, {m_block->size(), m_plan.photos, m_plan.largeBlock, true},
                                    mirrored(), *this)
                        : parts::Scene());
    m_cards->compose(inSight);
    flash();
}

bool BenchSpace::topCountsSeconds() const
{
    return m_picture.extras.sound.state == SoundNow::State::Paused || !m_picture.extras.undo.empty() ||
           std::ranges::any_of(m_picture.board.mixes, [this](const bench::MixCard& mix) {
               return mix.stiffAt && *mix.stiffAt - m_picture.now < std::chrono::minutes(2);
           });
}

void BenchSpace::wipeGlass()
{
    m_gate.lockFor(wipeMs);
    m_wipe->setGeometry(rect());
    m_wipe->show();
    m_wipe->raise();
    composeWipe();
    QTimer::singleShot(static_cast<int>(wipeMs), this, [this] { composeWipe(); });
}

void BenchSpace::composeWipe()
{
    const qint64 left = m_gate.lockedFor();
    if (left <= 0) {
        m_wipe->hide();
        return;
    }
    m_wipe->setParts(
        {{QPoint(), std::make_shared<const parts::Scene>(wipeScene(m_picture.look, size(), left, mirrored())), {}}});
}

void BenchSpace::aimFlash()
{
    const auto& flashing = m_picture.extras.flashing;
    if (flashing.empty()) {
        m_flash.stop();
    } else {
        m_flash.start(std::ranges::max(flashing, {}, &Flashing::urgency).urgency, m_picture.look.reduceMotion,
                      m_gate.now());
    }
    flash();
}

void BenchSpace::flash()
{
    const auto& t = m_picture.look.tokens();
    const double pen = m_picture.look.measure.px(3);
    const double radius = m_picture.look.measure.px(6) - pen / 2.0;
    const bool lit = m_flash.isLit(m_gate.now());
    const auto& flashing = m_picture.extras.flashing;
    // One border at a time: the block's, else that of the first card that calls.
    const bool onBlock =
        m_blockPiece.isSet() && !m_plan.oneAtATime &&
        std::ranges::any_of(flashing, [this](const Flashing& each) { return each.piece == m_blockPiece; });
    m_block->setFlash(onBlock ? m_block->rect() : QRect(), lit ? t.goldOnBlock : QColor(), pen, radius);
    const QRect card = onBlock || flashing.empty() ? QRect() : m_cards->placeOf(flashing.front().piece);
    m_cards->setFlash(card, lit && !card.isEmpty() ? t.gold : QColor(), pen, radius);
    const auto turn = m_flash.untilTurn(m_gate.now());
    if (turn && isVisible()) {
        m_flashTimer.start(static_cast<int>(*turn));
    } else {
        m_flashTimer.stop();
    }
}

void BenchSpace::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    flash();
}

void BenchSpace::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    m_flashTimer.stop();
}

void BenchSpace::pedalPressed(PieceId piece, bool isLong)
{
    const bench::Card* card = m_picture.card(piece);
    if (!card) {
        return;
    }
    const auto wanted = isLong ? bench::ActKind::Finish : bench::ActKind::HandsOnIt;
    const auto found = std::ranges::find(card->acts, wanted, &bench::CardAct::kind);
    if (found != card->acts.end()) {
        act(piece, *found);
    }
}

void BenchSpace::act(PieceId piece, const bench::CardAct& act)
{
    if (act.kind == bench::ActKind::AskHazard) {
        m_panel->openHazards(piece, act.stage);
        return;
    }
    Q_EMIT m_told.acted(piece, act, std::nullopt);
}

void BenchSpace::more(PieceId piece) { m_panel->openMore(piece); }
void BenchSpace::why(PieceId piece) { m_panel->openWhy(piece); }
void BenchSpace::undo(EventId event) { Q_EMIT m_told.undone(event); }
void BenchSpace::openPlace(PlaceId place) { m_panel->openPlace(place); }
void BenchSpace::mixNow(const QString& material) { Q_EMIT m_told.mixStarted(material); }
void BenchSpace::openMix(MixId mix) { m_panel->openMix(mix); }
void BenchSpace::openPeople() { m_panel->openPeople(); }
void BenchSpace::openSound() { m_panel->openSound(); }
void BenchSpace::allMixes() { m_panel->openMixKinds(); }
void BenchSpace::allPlaces() { m_panel->openPlaces(); }

void BenchSpace::step(int cards)
{
    const auto count = static_cast<std::ptrdiff_t>(m_order.order().size());
    if (count > 0) {
        m_single = static_cast<std::size_t>((static_cast<std::ptrdiff_t>(m_single) + cards % count + count) % count);
        arrange(true);
    }
}

void BenchSpace::askBegin(PieceId piece, const bench::CardAct& act, const QStringList& lines)
{
    m_panel->askBegin(piece, act, lines);
}

void BenchSpace::askWhichMix(PieceId piece, const bench::CardAct& act, const std::vector<MixId>& mixes,
                             std::optional<Instant> told)
{
    m_panel->askWhichMix(piece, act, mixes, told);
}

} // namespace mend::app
