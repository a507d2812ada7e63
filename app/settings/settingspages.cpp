#include "app/settings/settingsspace.h"

#include <algorithm>
#include <cmath>

namespace mend::app {

using parts::Sheet;
using parts::Theme;
using service::text;

namespace {

/// A bank card: ISO/IEC 7810, size ID-1, in millimetres.
constexpr QSizeF bankCard(85.60, 53.98);
/// A screen reads 70 to 350 dots an inch; a card held against anything else is not a card.
constexpr double leastDpi = 70.0;
constexpr double mostDpi = 350.0;

} // namespace

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
    sheet.title = tr("Bench hours");
    sheet.say(tr("Outside them only what can still be saved and is costly sounds; the rest waits for the morning."),
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
    for (const auto& [date, parts] : m_now.studio.hours.exceptions) {
        record::Hours one;
        one.exceptions[date] = parts;
        sheet.say(text(record::hoursText(one)), Sheet::Tone::Quiet);
    }
    return sheet;
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
                             place.slots > 0 ? tr("%1 slots").arg(place.slots) : QString(),
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

Sheet SettingsSpace::soundSheet()
{
    const SoundSettings& sound = m_now.sound;
    Sheet sheet;
    sheet.title = tr("Sound");
    if (!sound.works) {
        sheet.say(tr("No device takes the sound now. Every alert is still seen."), Sheet::Tone::Grave);
    }
    if (m_asking) {
        sheet.head(tr("Did you hear it, from where you work?"));
        const auto answer = [this](bool heard) {
            return [this, heard] {
                m_asking = false;
                m_now.sound.heard = heard ? SoundSettings::Heard::Yes : SoundSettings::Heard::No;
                refresh();
                Q_EMIT soundHeard(heard);
            };
        };
        Sheet::Choices answers;
        answers.bench = true;
        answers.choices = {
            {QStringLiteral("sound/yes"), tr("I heard it"), {}, answer(true)},
            {QStringLiteral("sound/no"), tr("I heard nothing"), {}, answer(false)},
            {QStringLiteral("sound/again"), tr("Play it again"), {}, [this] { Q_EMIT soundTestWanted(); }}};
        sheet.add(answers);
    } else {
        if (sound.heard == SoundSettings::Heard::No) {
            sheet.say(tr("It was not heard: try it louder, or another device."), Sheet::Tone::Grave);
        }
        Sheet::Choices test;
        test.bench = true;
        test.choices = {{QStringLiteral("sound/test"),
                         tr("Play the most urgent sound"),
                         {},
                         [this] {
                             askHeard();
                             Q_EMIT soundTestWanted();
                         },
                         true}};
        sheet.add(test);
    }
    Sheet::Choices levels;
    levels.label = tr("How loud");
    for (const int percent : {40, 55, 70, 85, 100}) {
        levels.choices.push_back({QStringLiteral("sound/level/%1").arg(percent),
                                  tr("%1 %").arg(percent),
                                  {},
                                  [this, percent] {
                                      m_now.sound.level = percent;
                                      refresh();
                                      Q_EMIT soundLevelChosen(percent);
                                  },
                                  false,
                                  percent == sound.level});
    }
    sheet.add(levels);
    sheet.head(tr("Where it is played"));
    QStringList devices = sound.devices;
    devices.prepend(QString());
    for (const QString& device : devices) {
        sheet.add(Sheet::Row{QStringLiteral("sound/device/") + device,
                             device.isEmpty() ? tr("Wherever this machine plays") : device,
                             {},
                             {},
                             [this, device] {
                                 m_now.sound.device = device;
                                 refresh();
                                 Q_EMIT soundDeviceChosen(device);
                             },
                             device == sound.device});
    }
    return sheet;
}

Sheet SettingsSpace::lookSheet()
{
    const LookWishes& look = m_now.look;
    Sheet sheet;
    sheet.title = tr("Look");
    Sheet::Choices themes;
    themes.label = tr("Colours");
    for (const auto& [theme, words] : {std::pair{Theme::Light, tr("Light")}, std::pair{Theme::Dark, tr("Dark")},
                                       std::pair{Theme::HighContrast, tr("Black and white")}}) {
        themes.choices.push_back({QStringLiteral("look/theme/%1").arg(int(theme)),
                                  words,
                                  {},
                                  [this, theme = theme] {
                                      LookWishes wished = m_now.look;
                                      wished.theme = theme;
                                      wish(wished);
                                  },
                                  false,
                                  theme == look.theme});
    }
    sheet.add(themes);
    Sheet::Choices sizes;
    sizes.label = tr("Size of everything");
    for (const int percent : {100, 125, 150, 175, 200}) {
        sizes.choices.push_back({QStringLiteral("look/scale/%1").arg(percent),
                                 tr("%1 %").arg(percent),
                                 {},
                                 [this, percent] {
                                     LookWishes wished = m_now.look;
                                     wished.scale = percent / 100.0;
                                     wish(wished);
                                 },
                                 false,
                                 qRound(look.scale * 100.0) == percent});
    }
    sheet.add(sizes);
    Sheet::Choices motion;
    motion.label = tr("What flashes when an alert calls");
    for (const bool still : {false, true}) {
        motion.choices.push_back({QStringLiteral("look/motion/%1").arg(int(still)),
                                  still ? tr("Nothing: it stands still") : tr("The block's border"),
                                  {},
                                  [this, still] {
                                      LookWishes wished = m_now.look;
                                      wished.reduceMotion = still;
                                      wish(wished);
                                  },
                                  false,
                                  look.reduceMotion == still});
    }
    sheet.add(motion);
    return sheet;
}

Sheet SettingsSpace::screenSheet()
{
    Sheet sheet;
    sheet.title = tr("Size of the screen");
    sheet.say(tr("Hold a bank card against the frame. Make the frame as large as the card; every button is then as "
                 "large as a gloved thumb."));
    const double dpi = m_now.look.dpi.value_or(std::clamp(m_now.screenDpi, leastDpi, mostDpi));
    Sheet::Choices steps;
    for (const auto& [percent, words] : {std::pair{-5.0, tr("Much smaller")}, std::pair{-1.0, tr("Smaller")},
                                         std::pair{1.0, tr("Larger")}, std::pair{5.0, tr("Much larger")}}) {
        const double then = dpi * (1.0 + percent / 100.0);
        const bool good = then >= leastDpi && then <= mostDpi;
        steps.choices.push_back({QStringLiteral("screen/%1").arg(percent),
                                 words,
                                 {},
                                 good ? std::function<void()>([this, then] {
                                     LookWishes wished = m_now.look;
                                     wished.dpi = then;
                                     wish(wished);
                                 })
                                      : nullptr});
    }
    sheet.add(steps);
    sheet.add(Sheet::Ruler{bankCard, tr("A frame as large as a bank card")});
    Sheet::Choices asItSays;
    asItSays.choices = {{QStringLiteral("screen/own"), tr("Take what the screen says"),
                         tr("%1 dots an inch").arg(qRound(m_now.screenDpi)),
                         [this] {
                             LookWishes wished = m_now.look;
                             wished.dpi.reset();
                             wish(wished);
                         },
                         false, !m_now.look.dpi}};
    sheet.add(asItSays);
    return sheet;
}

Sheet SettingsSpace::handsSheet()
{
    Sheet sheet;
    sheet.title = tr("Hands and pedal");
    Sheet::Choices sides;
    sides.label = tr("Where the buttons of a card stand");
    for (const bool left : {false, true}) {
        sides.choices.push_back({QStringLiteral("hands/left/%1").arg(int(left)),
                                 left ? tr("At the left") : tr("At the right"),
                                 {},
                                 [this, left] {
                                     LookWishes wished = m_now.look;
                                     wished.actionsLeft = left;
                                     wish(wished);
                                 },
                                 false,
                                 m_now.look.actionsLeft == left});
    }
    sheet.add(sides);
    sheet.head(tr("Pedal or one key"));
    sheet.say(tr("Pressed short: hands on it. Held for a second: done, on the large block alone. Each answers with a "
                 "sound of its own."));
    sheet.add(Sheet::Row{QStringLiteral("hands/pedal/now"),
                         tr("The key now"),
                         {},
                         m_now.pedalKey.isEmpty() ? tr("none") : m_now.pedalKey});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("hands/pedal/choose"),
                     m_capturing ? tr("Press the pedal now") : tr("Choose another key"),
                     m_capturing ? tr("Esc leaves it as it is") : QString(),
                     [this] {
                         m_capturing = !m_capturing;
                         page().setFocus(Qt::OtherFocusReason);
                         refresh();
                     },
                     true, m_capturing}};
    if (!m_now.pedalKey.isEmpty()) {
        acts.choices.push_back(
            {QStringLiteral("hands/pedal/none"), tr("No pedal"), {}, [this] { Q_EMIT pedalKeyChosen(0); }});
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

Sheet SettingsSpace::backupSheet()
{
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
    sheet.head(tr("To go back to one"));
    sheet.say(tr("Close the bench, then run: mendbench-desk restore BACKUP FILE. The file that stood there is kept "
                 "aside, never overwritten."));
    sheet.head(tr("Kept"));
    if (m_now.backups.empty()) {
        sheet.say(tr("None yet. One is made every day that the bench is open."));
    }
    for (const BackupLine& backup : m_now.backups) {
        sheet.add(Sheet::Row{QStringLiteral("backup/") + backup.file,
                             service::clockTime(backup.made, m_now.at, m_manner), backup.file,
                             service::agoWords(m_now.at - backup.made)});
    }
    return sheet;
}

} // namespace mend::app
