// What the owner agrees to: one text with ticks, one signature.
#include "app/intake/intakeform.h"

namespace mend::app {

using parts::Sheet;
using record::Consent;

namespace {

/// One tick of the text: the words where it is set and where it is not.
struct Tick {
    const char* key;
    bool Consent::*held;
    const char* yes;
    const char* no;
};
constexpr Tick ticks[] = {
    {"reversible", &Consent::reversible, QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Can be undone"),
     QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Need not be undone")},
    {"visible", &Consent::visible, QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "May show"),
     QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Should not show")},
    {"metal", &Consent::metal, QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Metal on it"),
     QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "No metal")},
    {"noFood", &Consent::noFoodUse, QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Not for food"),
     QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Food not spoken of")},
    {"hidden", &Consent::hiddenDamage, QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Hidden damage told"),
     QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Hidden damage untold")},
    {"photos", &Consent::photoUse, QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Pictures may be shown"),
     QT_TRANSLATE_NOOP("mend::app::IntakeSpace", "Pictures kept here")}};

} // namespace

void IntakeForm::addConsent()
{
    m_sheet.head(IntakeSpace::tr("What is agreed"));
    m_sheet.say(
        IntakeSpace::tr("I ask the studio to mend my piece as said above. Damage that cannot be seen now may come "
                        "to light, and a mended piece is not for food or drink. What is ticked below holds."));
    Sheet::Choices all;
    all.label = IntakeSpace::tr("Tap to change");
    for (const Tick& each : ticks) {
        const bool set = m_page.visit.consent.*each.held;
        all.choices.push_back({QStringLiteral("intake/consent/") + QLatin1String(each.key),
                               IntakeSpace::tr(set ? each.yes : each.no),
                               {},
                               changing([held = each.held](record::Intake& page) {
                                   page.visit.consent.*held = !(page.visit.consent.*held);
                               }),
                               false,
                               set});
    }
    m_sheet.add(std::move(all));
    addSigning();
}

void IntakeForm::addSigning()
{
    const Consent& consent = m_page.visit.consent;
    if (consent.how != record::Signature::OnPaper) {
        m_sheet.say(IntakeSpace::tr("Signed here by the owner:"), Sheet::Tone::Quiet);
        m_sheet.add(Sheet::Inset{QStringLiteral("intake/sign"), 120});
    }
    Sheet::Choices how;
    const bool onPaper = consent.how == record::Signature::OnPaper;
    how.choices.push_back({QStringLiteral("intake/onpaper"),
                           IntakeSpace::tr("Signed on paper"),
                           {},
                           [space = &m_space, onPaper] {
                               space->m_pad->clear();
                               Consent& held = space->m_page.visit.consent;
                               held.how = onPaper ? record::Signature::None : record::Signature::OnPaper;
                               held.signedOn = onPaper ? std::nullopt : std::optional(space->m_now.today);
                               space->change();
                           },
                           false,
                           onPaper});
    if (consent.how == record::Signature::Drawn) {
        how.choices.push_back({QStringLiteral("intake/signanew"), IntakeSpace::tr("Sign anew"), {}, [space = &m_space] {
                                   space->m_pad->clear();
                               }});
    }
    m_sheet.add(std::move(how));
    if (const QString wrong = fault("visit/consent/how"); !wrong.isEmpty()) {
        m_sheet.say(wrong, Sheet::Tone::Grave);
    }
}

} // namespace mend::app
