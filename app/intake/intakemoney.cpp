// What is promised and what it may cost.
#include "app/intake/intakeform.h"

#include "core/base/currency.h"
#include "core/service/doorwording.h"

#include <QDate>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

constexpr int daysOfWeek = 7;

/// A day as people of this language type it, or as ISO 8601 has it.
std::optional<CivilDay> typedDay(const QString& typed, const service::Manner& manner)
{
    QDate date = QDate::fromString(typed.trimmed(), Qt::ISODate);
    if (!date.isValid()) {
        date = manner.locale.toDate(typed.trimmed(), QLocale::ShortFormat);
        constexpr int century = 100;
        if (date.isValid() && date.year() < 1950) { // "14.5.27" is read as 1927
            date = date.addYears(century);
        }
    }
    return date.isValid() ? dayFrom(date.toString(Qt::ISODate).toStdString()) : std::nullopt;
}

} // namespace

Sheet::Field IntakeForm::money(const char* key, const QString& label, std::optional<Money>& to, bool pair)
{
    const QString name = QString::fromLatin1(key);
    Sheet::Field field;
    field.key = name;
    field.label = label + QStringLiteral(", ") + text(m_space.m_now.currency);
    field.value = typedOr(name, to ? text(plainAmount(*to)) : QString());
    field.figures = true;
    field.pair = pair;
    const bool unread = !field.value.trimmed().isEmpty() && !to;
    field.fault = unread ? IntakeSpace::tr("An amount such as 120 or 120.50, nothing else.") : fault(key);
    field.edited = [space = &m_space, held = &to, name](const QString& words) {
        space->m_typed[name] = words;
        *held = moneyFrom(words.trimmed().toStdString(), space->m_now.currency);
        space->change();
    };
    return field;
}

void IntakeForm::addPromise()
{
    const CivilDay today = m_space.m_now.today;
    Sheet::Choices weeks;
    weeks.label = IntakeSpace::tr("Promised in");
    for (const int count : {2, 3, 4, 6, 8}) {
        const CivilDay day = plusDays(today, count * daysOfWeek);
        weeks.choices.push_back({QStringLiteral("intake/promise/%1").arg(count),
                                 IntakeSpace::tr("%n weeks", nullptr, count),
                                 service::shortDayWords(day, m_space.m_now.manner),
                                 [space = &m_space, day] {
                                     space->m_typed.erase(QStringLiteral("promised"));
                                     space->m_page.promised = day;
                                     space->change();
                                 },
                                 false, m_page.promised == day});
    }
    m_sheet.add(std::move(weeks));
    Sheet::Field other;
    other.key = QStringLiteral("promised");
    other.label = IntakeSpace::tr("or on another day, such as %1")
                      .arg(m_space.m_now.manner.locale.toString(service::dateOf(plusDays(today, daysOfWeek)),
                                                                QLocale::ShortFormat));
    other.figures = true;
    other.value = typedOr(other.key, {});
    const bool unread = !other.value.trimmed().isEmpty() && !m_page.promised;
    other.fault = unread ? IntakeSpace::tr("That is no day of the calendar.") : fault("promised");
    other.edited = [space = &m_space, key = other.key](const QString& words) {
        space->m_typed[key] = words;
        space->m_page.promised = typedDay(words, space->m_now.manner);
        space->change();
    };
    m_sheet.add(std::move(other));
    const QString judged = m_space.m_answers ? m_space.m_answers->promiseWords(m_page) : QString();
    if (!judged.isEmpty()) {
        m_sheet.say(judged, Sheet::Tone::Grave);
    }
}

void IntakeForm::addMoney()
{
    record::Consent& consent = m_page.visit.consent;
    m_sheet.add(money("visit/consent/priceFrom", IntakeSpace::tr("Price from"), consent.priceFrom));
    m_sheet.add(money("visit/consent/priceTo", IntakeSpace::tr("to"), consent.priceTo, true));
    m_sheet.add(money("deposit", IntakeSpace::tr("Deposit paid now"), m_page.deposit));
}

} // namespace mend::app
