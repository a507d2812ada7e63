#include "app/intake/intakespace.h"

#include "app/intake/intakeform.h"
#include "core/service/doorwording.h"

#include <QEvent>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {
constexpr double slipUnits = 340.0;
constexpr double formUnits = 460.0; ///< the least that the page can be filled in
} // namespace

IntakeSpace::IntakeSpace(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_look(parts::lookOf(parts::Theme::Light, parts::Measure())),
      m_form(new parts::SheetView(gate, this)), m_slip(new parts::SheetView(gate, this)), m_pad(new parts::SignaturePad)
{
    setAutoFillBackground(true);
    m_page.piece.fragments = 0; // to be counted
    m_form->setAccessibleName(tr("Intake"));
    m_slip->setAccessibleName(tr("What is taken in"));
    m_form->setInset(QStringLiteral("intake/sign"), m_pad);
    connect(m_pad, &parts::SignaturePad::changed, this, [this] {
        record::Consent& consent = m_page.visit.consent;
        const bool drawn = !m_pad->isEmpty();
        if (drawn || consent.how == record::Signature::Drawn) {
            consent.how = drawn ? record::Signature::Drawn : record::Signature::None;
            consent.signedOn = drawn ? std::optional(m_now.today) : std::nullopt;
            change();
        }
    });
    const auto across = [this](parts::SheetView* to) {
        return [this, to](int dx, int) {
            if (dx != 0 && to->isVisibleTo(this)) {
                to->setFocus(Qt::OtherFocusReason);
            }
        };
    };
    connect(m_form, &parts::ActView::leftByKey, this, across(m_slip));
    connect(m_slip, &parts::ActView::leftByKey, this, across(m_form));
}

void IntakeSpace::setLook(const parts::Look& look)
{
    m_look = look;
    QPalette colours = palette();
    colours.setColor(QPalette::Window, look.tokens().ground);
    setPalette(colours);
    m_form->setLook(look);
    m_slip->setLook(look);
    m_pad->setLook(look);
    arrange();
}

void IntakeSpace::setNow(IntakeNow now)
{
    m_now = std::move(now);
    refresh();
}

void IntakeSpace::setKnown(std::vector<record::Customer> known)
{
    m_known = std::move(known);
    refresh();
}

void IntakeSpace::setHers(std::vector<record::Piece> pieces)
{
    m_hers = std::move(pieces);
    refresh();
}

void IntakeSpace::goOnWith(record::Intake page)
{
    if (!m_page.owner.name.empty() || !m_page.piece.benchName.empty()) {
        return;
    }
    m_page = std::move(page);
    if (m_page.visit.consent.how == record::Signature::Drawn) { // the strokes are not kept: to be signed again
        m_page.visit.consent.how = record::Signature::None;
        m_page.visit.consent.signedOn.reset();
    }
    m_told = tr("This page was left half filled; it goes on where you stopped.");
    refresh();
}

void IntakeSpace::showTaken(PieceId piece, const QString& number)
{
    m_told = tr("%1 is taken in as %2.").arg(service::isolated(text(m_page.piece.benchName)), number);
    clear();
    m_taken = piece;
    refresh();
}

void IntakeSpace::showRefused(const QString& why)
{
    m_busy = false;
    m_told = why;
    refresh();
}

void IntakeSpace::begin()
{
    refresh();
    if (QLineEdit* const line = m_form->field(QStringLiteral("owner/name"))) {
        line->setFocus(Qt::OtherFocusReason);
    }
}

void IntakeSpace::clear()
{
    m_page = {};
    m_page.piece.fragments = 0;
    m_typed.clear();
    m_known.clear();
    m_hers.clear();
    m_pad->clear();
    m_tried = m_busy = m_more = m_emptying = false;
    m_taken = {};
    m_form->scrollTo(0);
}

/// Everything that follows from a change on the page.
void IntakeSpace::change()
{
    m_told.clear();
    m_taken = {};
    m_emptying = false;
    refresh();
    Q_EMIT edited(m_page);
}

void IntakeSpace::choose(const record::Customer& person)
{
    m_page.owner = person;
    m_page.samePersonAnswered = true;
    m_hers.clear();
    change();
    Q_EMIT personChosen(person.id);
}

std::vector<record::IntakeFault> IntakeSpace::faults() const
{
    return m_answers ? m_answers->faultsOf(m_page, m_known) : std::vector<record::IntakeFault>{};
}

void IntakeSpace::takeIn(bool agreed)
{
    m_page.agreed = agreed;
    m_tried = true;
    m_told.clear();
    if (m_busy || !faults().empty()) {
        refresh();
        return;
    }
    m_busy = true; // told once, however often it is tapped
    refresh();
    const bool drawn = m_page.visit.consent.how == record::Signature::Drawn;
    Q_EMIT takeInTold(m_page, drawn ? m_pad->picture() : QImage());
}

void IntakeSpace::refresh()
{
    Sheet form = IntakeForm(*this).take();
    if (m_narrow) {
        addSlip(form);
    }
    m_form->setSheet(std::move(form));
    if (!m_narrow) {
        Sheet slip;
        slip.title = m_taken.isSet() ? tr("Taken in") : tr("What is taken in");
        addSlip(slip);
        m_slip->setSheet(std::move(slip));
    }
}

/// What stands on the page so far, what is missing, and the button.
void IntakeSpace::addSlip(Sheet& sheet)
{
    if (!m_told.isEmpty()) {
        sheet.say(m_told, Sheet::Tone::Grave);
    }
    if (m_taken.isSet()) {
        Sheet::Choices acts;
        acts.bench = true;
        acts.choices = {{QStringLiteral("intake/open"),
                         tr("Tag and papers"),
                         {},
                         [this, piece = m_taken] { Q_EMIT pieceWanted(piece); },
                         true},
                        {QStringLiteral("intake/bench"), tr("To the bench"), {}, [this] { Q_EMIT benchWanted(); }}};
        sheet.add(std::move(acts));
        return;
    }
    Sheet::Facts facts;
    const auto add = [&](const QString& label, const QString& value) {
        if (!value.isEmpty()) {
            facts.all.push_back({label, value});
        }
    };
    add(tr("Piece"), service::isolated(text(m_page.piece.benchName)));
    add(tr("Of"), service::isolated(text(m_page.owner.name)));
    add(tr("Fragments"), m_page.piece.fragments > 0 ? QString::number(m_page.piece.fragments) : QString());
    for (const record::Accessory& each : m_page.visit.accessories) {
        add(tr("With it"), text(each.what));
    }
    add(tr("Promised for"), m_page.promised ? service::dayWords(*m_page.promised, m_now.manner) : QString());
    if (!m_narrow && !facts.all.empty()) {
        sheet.add(std::move(facts));
    }
    addActs(sheet);
}

void IntakeSpace::addActs(Sheet& sheet)
{
    if (m_tried) {
        for (const record::IntakeFault fault : faults()) {
            sheet.say(service::intakeFaultWords(fault), Sheet::Tone::Grave);
        }
    }
    const QString name = text(m_page.piece.benchName).simplified();
    Sheet::Choices acts;
    acts.bench = true;
    acts.choices = {
        {QStringLiteral("intake/takein"), tr("On the bench"),
         name.isEmpty() ? tr("agreed and signed") : service::isolated(name), [this] { takeIn(true); }, true},
        {QStringLiteral("intake/receive"), tr("Only received"), tr("agreed later"), [this] { takeIn(false); }}};
    sheet.add(std::move(acts));
    Sheet::Choices rare;
    const auto ask = [this](bool asked) {
        return [this, asked] {
            m_emptying = asked;
            refresh();
        };
    };
    if (m_emptying) { // a slip of the finger loses no page
        rare.choices = {{QStringLiteral("intake/keep"), tr("Keep the page"), {}, ask(false)},
                        {QStringLiteral("intake/clear"), tr("Empty it"), {}, [this] {
                             m_told.clear();
                             clear();
                             refresh();
                             Q_EMIT cleared();
                         }}};
    } else {
        rare.choices = {{QStringLiteral("intake/empty"), tr("Empty the page"), {}, ask(true)}};
    }
    sheet.add(std::move(rare));
}

void IntakeSpace::arrange()
{
    const int slip = m_look.measure.px(slipUnits);
    m_narrow = width() < slip + m_look.measure.px(formUnits);
    const int form = m_narrow ? width() : width() - slip;
    const bool mirrored = layoutDirection() == Qt::RightToLeft;
    m_slip->setVisible(!m_narrow);
    m_form->setGeometry(mirrored ? width() - form : 0, 0, form, height());
    m_slip->setGeometry(mirrored ? 0 : form, 0, width() - form, height());
    refresh();
}

void IntakeSpace::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void IntakeSpace::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::LayoutDirectionChange || event->type() == QEvent::LanguageChange) {
        arrange();
    }
}

} // namespace mend::app
