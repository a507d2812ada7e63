#include "app/settings/backuppages.h"
#include "app/settings/settingsspace.h"

#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

Sheet SettingsSpace::studioSheet()
{
    Sheet sheet;
    sheet.title = tr("Studio");
    sheet.add(Sheet::Field{QStringLiteral("studio/name"),
                           tr("What the studio is called on papers"),
                           m_name,
                           {},
                           {},
                           [this](const QString& typed) { m_name = typed; }});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("studio/keep"),
                     tr("Call it so"),
                     {},
                     [this] {
                         service::Studio studio = m_now.studio;
                         studio.name = m_name.simplified().toStdString();
                         Q_EMIT studioTold(studio);
                     },
                     true}};
    sheet.add(acts);
    sheet.say(tr("Time zone: %1").arg(m_now.studio.zone.empty() ? tr("this machine's") : text(m_now.studio.zone)),
              Sheet::Tone::Quiet);
    return sheet;
}

Sheet SettingsSpace::hoursSheet()
{
    Sheet sheet;
    const auto whose = std::ranges::find(m_now.people, m_hoursOf, &record::Person::id);
    const bool own = whose != m_now.people.end();
    sheet.title = own ? tr("Hours of %1").arg(service::isolated(text(whose->name))) : tr("Bench hours");
    if (own) {
        sheet.back = {QStringLiteral("hours/people"), tr("Back to the people"), {}, [this] {
                          openSettings(SettingsPage::People);
                      }};
    }
    sheet.say(
        own ? tr("Nothing told: there whenever the bench is.")
            : tr("Outside them only what can still be saved and is costly sounds; the rest waits for the morning."),
        Sheet::Tone::Quiet);
    for (std::size_t day = 0; day < m_hours.size(); ++day) {
        sheet.add(Sheet::Field{QStringLiteral("hours/%1").arg(day),
                               m_manner.locale.standaloneDayName(static_cast<int>(day) + 1),
                               m_hours[day],
                               {},
                               m_hoursFaults[day],
                               [this, day](const QString& typed) { m_hours[day] = typed; }});
    }
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("hours/keep"), tr("These are the hours"), tr("an empty day is a day off"),
                     [this] { keepHours(); }, true},
                    {QStringLiteral("hours/asmonday"), tr("Tuesday to Friday as Monday"), {}, [this] {
                         std::fill(m_hours.begin() + 1, m_hours.begin() + 5, m_hours[0]);
                         refresh();
                     }}};
    sheet.add(acts);
    sayDates(sheet);
    return sheet;
}

void SettingsSpace::sayDates(Sheet& sheet)
{
    sheet.head(tr("Dates that are not like their weekday"));
    for (const auto& [date, parts] : hoursNow().exceptions) {
        record::Hours one;
        one.exceptions[date] = parts;
        const QString line = text(record::hoursText(one)).simplified();
        const QString day = line.section(QLatin1Char(' '), 0, 0);
        Sheet::Choices drop;
        drop.label = parts.empty() ? tr("%1: closed").arg(day) : line;
        drop.choices = {
            {QStringLiteral("hours/date/%1/drop").arg(day), tr("As its weekday again"), {}, [this, date = date] {
                 dropDate(date);
             }}};
        sheet.add(drop);
    }
    sheet.add(Sheet::Field{QStringLiteral("hours/date"),
                           tr("Date: year-month-day"),
                           m_date,
                           {},
                           m_dateFault,
                           [this](const QString& typed) { m_date = typed; }});
    sheet.add(Sheet::Field{QStringLiteral("hours/date/parts"),
                           tr("Hours on that date; nothing: closed"),
                           m_dateHours,
                           {},
                           {},
                           [this](const QString& typed) { m_dateHours = typed; }});
    Sheet::Choices keep;
    keep.choices = {{QStringLiteral("hours/date/keep"), tr("That day is different"), {}, [this] { keepDate(); }, true}};
    sheet.add(keep);
}

Sheet SettingsSpace::peopleSheet()
{
    Sheet sheet;
    sheet.title = tr("People");
    sheet.beside = tr("no accounts: a name is enough");
    if (!m_fault.isEmpty()) {
        sheet.say(m_fault, Sheet::Tone::Grave);
    }
    for (const record::Person& person : m_now.people) {
        const QString typed = m_people[person.id];
        sheet.add(Sheet::Field{QStringLiteral("person/%1").arg(person.id.value()),
                               tr("Name"),
                               typed,
                               {},
                               {},
                               [this, id = person.id](const QString& words) {
                                   m_people[id] = words;
                                   refresh();
                               }});
        const bool ownHours = m_now.studio.ownHours.contains(person.id);
        sheet.add(Sheet::Row{QStringLiteral("person/%1/hours").arg(person.id.value()),
                             tr("Hours of %1").arg(service::isolated(text(person.name))),
                             {},
                             ownHours ? tr("their own") : tr("as the bench"),
                             [this, id = person.id] {
                                 m_page = SettingsPage::Hours;
                                 openHoursOf(id);
                             }});
        if (typed.simplified() != text(person.name)) {
            Sheet::Choices rename;
            rename.choices = {{QStringLiteral("person/%1/keep").arg(person.id.value()),
                               tr("Rename %1").arg(service::isolated(text(person.name))),
                               {},
                               [this, id = person.id] { keepPerson(id); },
                               true}};
            sheet.add(rename);
        }
    }
    sheet.head(tr("Somebody new"));
    sheet.add(Sheet::Field{
        QStringLiteral("person/new"), tr("Name"), m_name, {}, {}, [this](const QString& typed) { m_name = typed; }});
    Sheet::Choices add;
    add.choices = {
        {QStringLiteral("person/new/keep"), tr("Works here from now on"), {}, [this] { keepPerson({}); }, true}};
    sheet.add(add);
    return sheet;
}

Sheet SettingsSpace::placesSheet()
{
    using record::PlaceKind;
    const std::pair<PlaceKind, QString> kinds[] = {
        {PlaceKind::Bench, tr("Bench")},        {PlaceKind::Shelf, tr("Shelf")}, {PlaceKind::Cabinet, tr("Cabinet")},
        {PlaceKind::HumidBox, tr("Humid box")}, {PlaceKind::Tray, tr("Tray")},   {PlaceKind::Outside, tr("Outside")}};
    Sheet sheet;
    sheet.title = tr("Places");
    sheet.beside = tr("each has an air of its own");
    for (const record::Place& place : m_now.places) {
        const auto* kind = std::ranges::find(kinds, place.kind, &std::pair<PlaceKind, QString>::first);
        sheet.add(Sheet::Row{QStringLiteral("place/%1").arg(place.id.value()), text(place.name), kind->second,
                             place.slots == 1  ? tr("1 slot")
                             : place.slots > 1 ? tr("%n slots", nullptr, place.slots)
                                               : QString(),
                             [this, place] { editPlace(place); }, place.id == m_place.id});
    }
    sheet.head(m_place.id.isSet() ? tr("Change it") : tr("A new place"));
    sheet.add(Sheet::Field{
        QStringLiteral("place/name"), tr("Name"), text(m_place.name), {}, m_fault, [this](const QString& typed) {
            m_place.name = typed.toStdString();
        }});
    Sheet::Choices choices;
    choices.label = tr("What it is");
    for (const auto& [kind, words] : kinds) {
        choices.choices.push_back({QStringLiteral("place/kind/%1").arg(int(kind)),
                                   words,
                                   {},
                                   [this, kind = kind] {
                                       m_place.kind = kind;
                                       refresh();
                                   },
                                   false,
                                   kind == m_place.kind});
    }
    sheet.add(choices);
    sheet.add(Sheet::Field{QStringLiteral("place/slots"),
                           tr("How many pieces it holds; nothing: as many as you like"),
                           m_slots,
                           tr("pieces"),
                           {},
                           [this](const QString& typed) { m_slots = typed; }});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("place/keep"),
                     m_place.id.isSet() ? tr("Keep it so") : tr("Add the place"),
                     {},
                     [this] { keepPlace(); },
                     true}};
    if (m_place.id.isSet()) {
        acts.choices.push_back({QStringLiteral("place/leave"), tr("Leave it as it is"), {}, [this] { editPlace({}); }});
    }
    sheet.add(acts);
    return sheet;
}

Sheet SettingsSpace::unitsSheet()
{
    Sheet sheet;
    sheet.title = tr("Units");
    const auto choose = [this](bool service::Studio::*unit, bool wanted) {
        return [this, unit, wanted] {
            m_now.studio.*unit = wanted;
            refresh();
            Q_EMIT studioTold(m_now.studio);
        };
    };
    Sheet::Choices heat;
    heat.label = tr("Temperatures");
    heat.choices = {{QStringLiteral("units/celsius"),
                     tr("°C"),
                     {},
                     choose(&service::Studio::fahrenheit, false),
                     false,
                     !m_now.studio.fahrenheit},
                    {QStringLiteral("units/fahrenheit"),
                     tr("°F"),
                     {},
                     choose(&service::Studio::fahrenheit, true),
                     false,
                     m_now.studio.fahrenheit}};
    sheet.add(heat);
    Sheet::Choices lengths;
    lengths.label = tr("Lengths");
    lengths.choices = {
        {QStringLiteral("units/mm"),
         tr("mm"),
         {},
         choose(&service::Studio::inches, false),
         false,
         !m_now.studio.inches},
        {QStringLiteral("units/in"), tr("in"), {}, choose(&service::Studio::inches, true), false, m_now.studio.inches}};
    sheet.add(lengths);
    sheet.say(tr("What is told is kept in °C and mm whatever is shown."), Sheet::Tone::Quiet);
    return sheet;
}

/// Each by its own name: whoever cannot read what stands here now finds the way back.
Sheet SettingsSpace::languageSheet()
{
    Sheet sheet;
    sheet.title = tr("Language");
    const QString told = text(m_now.studio.language);
    const auto add = [&](const QString& code, const QString& words, const QString& below) {
        sheet.add(Sheet::Row{QStringLiteral("language/") + code,
                             words,
                             below,
                             {},
                             [this, code] { Q_EMIT languageChosen(code); },
                             code == told});
    };
    add({}, tr("As this machine"), {});
    for (const LanguageLine& each : m_now.languages) {
        add(each.code, each.name, {});
    }
    sheet.say(tr("The window is written anew at once. What you typed yourself stays as it is, and so do the words of "
                 "procedures, cautions and papers."),
              Sheet::Tone::Quiet);
    return sheet;
}

Sheet SettingsSpace::backupSheet()
{
    BackupActs hands;
    hands.pick = [this](const QString& file) {
        m_backup = file;
        m_now.seen.reset();
        refresh();
        Q_EMIT backupPicked(file);
    };
    hands.leave = [this] {
        m_backup.clear();
        refresh();
    };
    hands.goBack = [this](const QString& file) { Q_EMIT goingBackWanted(file); };
    const auto picked = std::ranges::find(m_now.backups, m_backup, &BackupLine::file);
    if (picked != m_now.backups.end()) {
        return backupSheetOf(*picked, m_now.seen, m_now.at, m_manner, hands);
    }
    Sheet sheet;
    sheet.title = tr("Backup");
    if (!m_now.backupState.isEmpty()) {
        sheet.say(m_now.backupState, Sheet::Tone::Grave);
    }
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("backup/now"), tr("Make one now"), {}, [this] { Q_EMIT backupWanted(); }, true}};
    sheet.add(acts);
    sheet.say(tr("They lie in %1. Copy the whole folder to another disk: the pictures stand beside the backups.")
                  .arg(m_now.backupFolder));
    sheet.head(tr("Kept: tap one to see what is in it, and to go back to it"));
    if (m_now.backups.empty()) {
        sheet.say(tr("None yet. One is made after the first change of each day, and one when the bench is closed."));
    }
    addBackups(sheet, m_now.backups, m_now.at, m_manner, hands);
    return sheet;
}

} // namespace mend::app
