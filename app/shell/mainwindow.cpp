#include "app/shell/mainwindow.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QResizeEvent>
#include <QScreen>
#include <algorithm>

namespace mend::app {

namespace {

const QString& benchKey()
{
    static const QString key = QStringLiteral("bench");
    return key;
}

const QString& standingKey()
{
    static const QString key = QStringLiteral("standing");
    return key;
}

const QString& putOffKey()
{
    static const QString key = QStringLiteral("putoff");
    return key;
}

bool isTyping(const QObject* focus)
{
    return qobject_cast<const QLineEdit*>(focus) || qobject_cast<const QPlainTextEdit*>(focus);
}

} // namespace

MainWindow::MainWindow(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_gate(gate), m_here(benchKey()), m_rail(new parts::ActView(gate, this)),
      m_bannerView(new parts::ActView(gate, this)), m_stack(new QStackedWidget(this)), m_bench(new BenchSpace(gate)),
      m_urgent(new parts::ActView(gate, this)), m_letters(new parts::LetterPad(gate, this))
{
    setWindowTitle(tr("Mendbench"));
    setAutoFillBackground(true);
    setMinimumSize(640, 400);
    m_rail->setAccessibleName(tr("Spaces"));
    m_bannerView->setAccessibleName(tr("Notices"));
    m_urgent->setAccessibleName(tr("Most urgent on the bench"));
    m_words.push_back({benchKey(), tr("Bench")});
    m_stack->addWidget(m_bench);
    connect(m_bench, &BenchSpace::blockCovered, this, [this](bool covered) {
        m_blockCovered = covered;
        arrange();
    });
    m_letters->hide();
    connect(m_letters, &parts::LetterPad::done, this, [this] {
        if (m_letters->line()) {
            m_letters->line()->clearFocus();
        }
    });
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) { focusMovedTo(now); });
    qApp->installEventFilter(this);
    applyLook();
}

/// A window that is closed while it goes moves the focus once more, when this is no longer a MainWindow.
MainWindow::~MainWindow() { disconnect(qApp, nullptr, this, nullptr); }

void MainWindow::addSpace(const QString& key, const QString& word, QWidget* space)
{
    m_words.push_back({key, word});
    m_stack->addWidget(space);
    arrange();
}

std::vector<RailWord> MainWindow::railWords() const
{
    std::vector<RailWord> words;
    std::ranges::copy_if(m_words, std::back_inserter(words), [](const RailWord& each) { return !each.word.isEmpty(); });
    return words;
}

void MainWindow::showSpace(const QString& key)
{
    const auto found = std::ranges::find(m_words, key, &RailWord::key);
    if (found == m_words.end()) {
        return;
    }
    m_here = key;
    m_railOpen = false;
    m_stack->setCurrentIndex(static_cast<int>(found - m_words.begin()));
    arrange();
    Q_EMIT spaceChanged(key);
}

void MainWindow::go(const QString& key)
{
    if (!key.isEmpty()) {
        showSpace(key);
        return;
    }
    m_railOpen = !m_railOpen;
    arrange();
}

void MainWindow::setLookSettings(const LookSettings& settings)
{
    m_settings = settings;
    applyLook();
}

parts::Measure MainWindow::measureHere() const
{
    return m_settings.dpi ? parts::Measure(*m_settings.dpi, m_settings.scale)
                          : parts::Measure::ofScreen(screen(), m_settings.scale);
}

void MainWindow::applyLook()
{
    m_look = parts::lookOf(m_settings.theme, measureHere());
    m_look.reduceMotion = m_settings.reduceMotion;
    m_look.actionsLeft = m_settings.actionsLeft;
    const auto& t = m_look.tokens();
    QPalette colours = palette();
    colours.setColor(QPalette::Window, t.ground);
    colours.setColor(QPalette::WindowText, t.ink);
    setPalette(colours);
    for (auto* view : {m_rail, m_bannerView, m_urgent}) {
        view->setFocusInk(view == m_urgent ? t.goldOnBlock : t.ink, m_look.measure.px(3));
        view->setGround(view == m_urgent ? t.block : t.ground);
    }
    m_bench->setLook(m_look);
    m_letters->setLook(m_look);
    focusMovedTo(m_letters->line());
    arrange();
    Q_EMIT lookChanged();
}

/// Letters come with a line that is typed into and go with it.
void MainWindow::focusMovedTo(QWidget* widget)
{
    const bool line = widget && isTyping(widget) && widget->window() == this;
    m_letters->typeInto(line ? widget : nullptr);
    if ((m_settings.letters && line) != m_letters->isVisibleTo(this)) {
        m_letters->setVisible(m_settings.letters && line);
        arrange();
    }
}

void MainWindow::setBanners(std::vector<Banner> banners)
{
    if (banners != m_told) {
        m_told = std::move(banners);
        gatherBanners();
        arrange();
    }
}

void MainWindow::setBoard(const bench::Board& board, const Extras& extras)
{
    m_bench->setBoard(board, extras);
    gatherBanners();
    arrange();
}

/// How many wait on purpose, and which of them calls first again.
QString MainWindow::putOffWords(const Picture& picture)
{
    const PutOffNow& first = picture.extras.putOff.front();
    const auto name = picture.names.pieces.find(first.piece);
    const QString act =
        name == picture.names.pieces.end() ? first.act : tr("%1, %2").arg(service::isolated(name->second), first.act);
    const QString count = tr("%1 put off").arg(picture.extras.putOff.size());
    return first.until
               ? tr("%1: %2 until %3").arg(count, act, service::clockTime(*first.until, picture.now, picture.manner))
               : tr("%1: %2").arg(count, act);
}

void MainWindow::gatherBanners()
{
    m_banners = m_told;
    const Picture& picture = m_bench->picture();
    if (picture.extras.sound.state == SoundNow::State::Off) {
        m_banners.push_back({QStringLiteral("soundoff"), tr("Sound is off in Settings: alerts are only seen."), {}});
    }
    if (!picture.extras.putOff.empty()) {
        m_banners.push_back({putOffKey(), putOffWords(picture), tr("See all")});
    }
    QStringList grave;
    for (const auto& finding : picture.board.standing) {
        if (finding.hazard && finding.verdict != rules::Verdict::Remind) {
            grave << service::hazardWords(finding, picture.names, picture.now, picture.manner);
        }
    }
    if (!grave.isEmpty()) {
        const auto others = grave.size() - 1;
        const QString words =
            others == 0 ? grave.first() : tr("%1, and %n more", nullptr, static_cast<int>(others)).arg(grave.first());
        m_banners.push_back({standingKey(), words, tr("See all")});
    }
}

void MainWindow::banner(const QString& key)
{
    if (key == standingKey()) {
        showSpace(benchKey());
        m_bench->panel().openStanding();
        return;
    }
    if (key == putOffKey()) {
        showSpace(benchKey());
        m_bench->panel().openPutOff();
        return;
    }
    Q_EMIT bannerActed(key);
}

void MainWindow::setNow(Instant now)
{
    m_bench->setNow(now);
    composeUrgent();
}

void MainWindow::arrange()
{
    if (width() <= 0 || height() <= 0) {
        return;
    }
    m_plan = planFor(size(), m_look, static_cast<int>(m_bench->picture().board.cards.size()));
    const auto words = railWords();
    const bool tooLow = height() < railHeight(m_look, words.size());
    const bool asButton = (m_plan.railIsButton || tooLow) && !m_railOpen;
    const bool mirrored = layoutDirection() == Qt::RightToLeft;
    const int rail = railWidth(m_look, words, asButton);
    const int kept = m_railOpen ? railWidth(m_look, words, true) : rail; // an opened rail lies over the space
    m_rail->setGeometry(mirrored ? width() - rail : 0, 0, rail, height());
    const int left = mirrored ? 0 : kept;
    const int wide = width() - kept;
    const int across = bannersAcross(wide);
    const int banners = (static_cast<int>(m_banners.size()) + across - 1) / across * bannerHeight(m_look);
    m_bannerView->setVisible(banners > 0);
    m_bannerView->setGeometry(left, 0, wide, banners);
    // The letters have room of their own, so that the line that is typed into is never under them.
    const int letters = m_letters->isVisibleTo(this) ? parts::LetterPad::heightFor(m_look) : 0;
    m_letters->setGeometry(left, height() - letters, wide, letters);
    const bool strip = (m_here != benchKey() || m_blockCovered) && mostUrgent(m_bench->picture());
    const int foot = strip ? urgentHeight(m_look) : 0;
    m_urgent->setVisible(strip);
    m_urgent->setGeometry(left, height() - letters - foot, wide, foot);
    m_stack->setGeometry(left, banners, wide, height() - banners - foot - letters);
    m_bench->setPlan(m_plan);
    if (m_railOpen) {
        m_rail->raise();
    }
    compose();
}

/// Two notices stand beside each other where there is room, so that the cards keep theirs.
int MainWindow::bannersAcross(int wide) const
{
    constexpr double leastForTwo = 1000.0;
    return m_banners.size() > 1 && wide >= m_look.measure.px(leastForTwo) ? 2 : 1;
}

void MainWindow::compose()
{
    const bool mirrored = layoutDirection() == Qt::RightToLeft;
    const auto words = railWords();
    const bool asButton = (m_plan.railIsButton || height() < railHeight(m_look, words.size())) && !m_railOpen;
    m_rail->setParts(
        {{QPoint(),
          std::make_shared<const parts::Scene>(railScene(m_look, m_rail->size(), mirrored, words, m_here, asButton,
                                                         [this](const QString& key) { go(key); })),
          {}}});
    std::vector<parts::ActView::Part> shown;
    const int high = bannerHeight(m_look);
    const int across = bannersAcross(m_bannerView->width());
    for (int i = 0; i < static_cast<int>(m_banners.size()); ++i) {
        const bool alone = i % across == 0 && i + 1 == static_cast<int>(m_banners.size());
        const int width = alone ? m_bannerView->width() : m_bannerView->width() / across;
        const int x = i % across * width;
        shown.push_back({QPoint(mirrored ? m_bannerView->width() - x - width : x, i / across * high),
                         std::make_shared<const parts::Scene>(
                             bannerScene(m_look, QSize(width, high), mirrored, m_banners[static_cast<std::size_t>(i)],
                                         [this](const QString& key) { this->banner(key); })),
                         {}});
    }
    m_bannerView->setParts(std::move(shown));
    composeUrgent();
}

void MainWindow::composeUrgent()
{
    const bench::Card* card = m_urgent->isVisibleTo(this) ? mostUrgent(m_bench->picture()) : nullptr;
    if (!card) {
        m_urgent->setParts({});
        return;
    }
    m_urgent->setParts({{QPoint(),
                         std::make_shared<const parts::Scene>(urgentScene(*card, m_bench->picture(), m_urgent->size(),
                                                                          layoutDirection() == Qt::RightToLeft, *this)),
                         {}}});
}

void MainWindow::act(PieceId piece, const bench::CardAct& act)
{
    if (act.kind == bench::ActKind::AskHazard) {
        showSpace(benchKey());
        m_bench->panel().openHazards(piece, act.stage);
        return;
    }
    Q_EMIT m_bench->told().acted(piece, act, std::nullopt);
}

void MainWindow::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void MainWindow::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::LayoutDirectionChange || event->type() == QEvent::LanguageChange) {
        arrange();
    }
    QWidget::changeEvent(event);
}

void MainWindow::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (measureHere() != m_look.measure) { // only now is it certain which screen it is on
        applyLook();
    }
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
    // The pedal works from every space and every view, but never while somebody is typing a letter.
    if (event->type() == QEvent::KeyPress || event->type() == QEvent::KeyRelease) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool letter = !key->text().isEmpty() && isTyping(watched);
        const auto* widget = qobject_cast<QWidget*>(watched);
        if (!letter && widget && widget->window() == this) {
            const bool taken =
                event->type() == QEvent::KeyPress ? m_bench->pedal().press(*key) : m_bench->pedal().release(*key);
            if (taken) {
                return true;
            }
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace mend::app
