#include "app/settings/settingsspace.h"

#include "app/settings/ownerpages.h"
#include "app/settings/paperpages.h"

#include <QKeyEvent>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

// What is wanted often or in need stands where no list has to be scrolled for it.
constexpr std::array<SettingsPage, 13> allPages{
    SettingsPage::Studio,   SettingsPage::Hours,  SettingsPage::People,     SettingsPage::Places, SettingsPage::Sound,
    SettingsPage::Backup,   SettingsPage::Look,   SettingsPage::ScreenSize, SettingsPage::Hands,  SettingsPage::Units,
    SettingsPage::Language, SettingsPage::Papers, SettingsPage::Owners};

bool isModifier(int key)
{
    return key == Qt::Key_Shift || key == Qt::Key_Control || key == Qt::Key_Alt || key == Qt::Key_Meta;
}

} // namespace

SettingsSpace::SettingsSpace(parts::TapGate& gate, QWidget* parent) : SheetSpace(gate, parent)
{
    list().setAccessibleName(tr("Settings"));
    page().setAccessibleName(tr("One setting"));
    page().installEventFilter(this);
}

void SettingsSpace::setManner(const service::Manner& manner)
{
    m_manner = manner;
    refresh();
}

void SettingsSpace::setNow(SettingsNow now)
{
    const bool studioChanged = now.studio != m_now.studio || now.people != m_now.people;
    m_now = std::move(now);
    if (studioChanged) {
        beginEditing();
    }
    refresh();
}

void SettingsSpace::setPaperTexts(std::vector<PaperTextNow> texts)
{
    m_paperTexts = std::move(texts);
    refresh();
}

void SettingsSpace::setOwnerList(OwnerListNow list)
{
    const bool isFresh = list.lines.size() != m_ownersTaken.size() || list.file != m_ownerList.file;
    m_ownerList = std::move(list);
    if (isFresh) {
        m_ownersFrom = 0;
        m_ownersTaken.clear();
        std::ranges::transform(m_ownerList.lines, std::back_inserter(m_ownersTaken),
                               [](const OwnerLine& line) { return !line.unclear; });
    }
    refresh();
}

void SettingsSpace::openSettings(SettingsPage page)
{
    m_page = page;
    m_hoursOf = {};
    m_asking = m_capturing = false;
    m_place = {};
    m_slots.clear();
    m_backup.clear();
    m_paper.clear();
    beginEditing();
    openPage();
}

void SettingsSpace::askHeard()
{
    m_asking = true;
    refresh();
}

void SettingsSpace::beginEditing()
{
    m_fault.clear();
    m_name = m_page == SettingsPage::Studio ? text(m_now.studio.name) : QString();
    m_hoursFaults = {};
    m_date.clear();
    m_dateHours.clear();
    m_dateFault.clear();
    const record::Hours hours = hoursNow();
    for (std::size_t day = 0; day < m_hours.size(); ++day) {
        record::Hours one;
        one.week[day] = hours.week[day];
        // "mon 09:00-12:30 13:00-17:30": the first word is the day's, which the label says already.
        m_hours[day] = text(record::hoursText(one)).section(QLatin1Char(' '), 1).simplified();
        if (one.week[day].empty()) {
            m_hours[day].clear();
        }
    }
    m_people.clear();
    for (const record::Person& person : m_now.people) {
        m_people[person.id] = text(person.name);
    }
}

Sheet SettingsSpace::listSheet()
{
    const auto words = [](SettingsPage page) {
        switch (page) {
        case SettingsPage::Studio:
            return tr("Studio");
        case SettingsPage::Hours:
            return tr("Bench hours");
        case SettingsPage::People:
            return tr("People");
        case SettingsPage::Places:
            return tr("Places");
        case SettingsPage::Sound:
            return tr("Sound");
        case SettingsPage::Look:
            return tr("Look");
        case SettingsPage::ScreenSize:
            return tr("Size of the screen");
        case SettingsPage::Hands:
            return tr("Hands and pedal");
        case SettingsPage::Units:
            return tr("Units");
        case SettingsPage::Language:
            return tr("Language");
        case SettingsPage::Papers:
            return tr("Words on papers");
        case SettingsPage::Owners:
            return tr("Owners from a list");
        case SettingsPage::Backup:
            return tr("Backup");
        }
        return QString();
    };
    Sheet sheet;
    sheet.title = tr("Settings");
    for (const SettingsPage page : allPages) {
        sheet.add(Sheet::Row{QStringLiteral("settings/%1").arg(int(page)),
                             words(page),
                             valueOf(page),
                             {},
                             [this, page] { openSettings(page); },
                             page == m_page});
    }
    return sheet;
}

QString SettingsSpace::valueOf(SettingsPage page) const
{
    switch (page) {
    case SettingsPage::Studio:
        return m_now.studio.name.empty() ? tr("no name yet") : text(m_now.studio.name);
    case SettingsPage::Hours:
        return m_now.studio.hours.isTold() ? tr("told") : tr("not told: alerts sound at any hour");
    case SettingsPage::People:
        return m_now.people.size() == 1 ? tr("1 at work here")
                                        : tr("%n at work here", nullptr, static_cast<int>(m_now.people.size()));
    case SettingsPage::Places:
        return m_now.places.size() == 1 ? tr("1 place")
                                        : tr("%n places", nullptr, static_cast<int>(m_now.places.size()));
    case SettingsPage::Sound:
        return m_now.sound.off                                         ? tr("off")
               : !m_now.sound.works                                    ? tr("no device takes it")
               : m_now.sound.heard == SoundSettings::Heard::Yes        ? tr("was heard")
               : m_now.sound.heard == SoundSettings::Heard::NeverAsked ? tr("not tried yet")
                                                                       : tr("was not heard");
    case SettingsPage::Look:
        return tr("%1 %").arg(qRound(m_now.look.scale * 100.0));
    case SettingsPage::ScreenSize:
        return m_now.look.dpi ? tr("checked with a card") : tr("as the screen says");
    case SettingsPage::Hands:
        return m_now.pedalKey.isEmpty() ? tr("no pedal") : tr("pedal: %1").arg(m_now.pedalKey);
    case SettingsPage::Units:
        return service::joined(
            {m_now.studio.fahrenheit ? tr("°F") : tr("°C"), m_now.studio.inches ? tr("in") : tr("mm")});
    case SettingsPage::Language:
        return m_now.spoken;
    case SettingsPage::Papers: {
        const auto own = std::ranges::count_if(m_paperTexts, [](const PaperTextNow& text) { return text.isOwn; });
        return own == 0 ? tr("as they ship") : tr("%1 of them your own").arg(own);
    }
    case SettingsPage::Owners:
        return tr("out of a phone or an address book");
    case SettingsPage::Backup:
        return m_now.backups.empty() ? tr("none yet")
                                     : tr("last one %1").arg(service::agoWords(m_now.at - m_now.backups.front().made));
    }
    return {};
}

Sheet SettingsSpace::pageSheet()
{
    switch (m_page) {
    case SettingsPage::Studio:
        return studioSheet();
    case SettingsPage::Hours:
        return hoursSheet();
    case SettingsPage::People:
        return peopleSheet();
    case SettingsPage::Places:
        return placesSheet();
    case SettingsPage::Sound:
        return soundSheet();
    case SettingsPage::Look:
        return lookSheet();
    case SettingsPage::ScreenSize:
        return screenSheet();
    case SettingsPage::Hands:
        return handsSheet();
    case SettingsPage::Units:
        return unitsSheet();
    case SettingsPage::Language:
        return languageSheet();
    case SettingsPage::Papers:
        return papersSheet();
    case SettingsPage::Owners:
        return ownersSheet();
    case SettingsPage::Backup:
        return backupSheet();
    }
    return {};
}

Sheet SettingsSpace::papersSheet()
{
    PaperActs acts;
    acts.open = [this](const QString& key) {
        const auto text = std::ranges::find(m_paperTexts, key, &PaperTextNow::key);
        m_paper = key;
        m_paragraphs = text == m_paperTexts.end() ? QStringList() : text->lines;
        refresh();
    };
    acts.leave = [this] {
        m_paper.clear();
        refresh();
    };
    acts.edited = [this](int paragraph, const QString& words) {
        while (m_paragraphs.size() <= paragraph) {
            m_paragraphs += QString();
        }
        m_paragraphs[paragraph] = words;
        refresh();
    };
    const auto tell = [this](const QStringList& words) {
        const QString key = m_paper;
        m_paper.clear();
        refresh();
        Q_EMIT paperTextTold(key, words.join(QLatin1Char('\n')));
    };
    acts.keep = [this, tell] { tell(m_paragraphs); };
    acts.reset = [tell] { tell({}); };
    const auto text = std::ranges::find(m_paperTexts, m_paper, &PaperTextNow::key);
    return text == m_paperTexts.end() ? paperTextsSheet(m_paperTexts, acts) : paperTextSheet(*text, m_paragraphs, acts);
}

Sheet SettingsSpace::ownersSheet()
{
    OwnerListActs acts;
    acts.open = [this](const QString& file) { Q_EMIT ownerListChosen(file); };
    acts.go = [this](const QString& folder) {
        m_ownerFolder = folder;
        refresh();
        page().scrollTo(0);
    };
    acts.leave = [this] {
        setOwnerList({});
        Q_EMIT ownerListLeft();
    };
    acts.turn = [this](int line) {
        const auto at = static_cast<std::size_t>(line);
        m_ownersTaken[at] = !m_ownersTaken[at];
        refresh();
    };
    acts.show = [this](int from) {
        m_ownersFrom = from;
        refresh();
        page().scrollTo(0);
    };
    acts.keep = [this] {
        std::vector<int> lines;
        for (std::size_t i = 0; i < m_ownersTaken.size(); ++i) {
            if (m_ownersTaken[i]) {
                lines.push_back(static_cast<int>(i));
            }
        }
        Q_EMIT ownersTold(lines);
    };
    return m_ownerList.file.isEmpty() ? ownerFilesSheet(m_ownerFolder, m_manner, acts)
                                      : ownerListSheet(m_ownerList, m_ownersTaken, m_ownersFrom, acts);
}

void SettingsSpace::wish(LookWishes look)
{
    if (look == m_now.look) {
        return;
    }
    m_now.look = look; // seen at once; whoever applies it tells again what holds
    refresh();
    Q_EMIT lookWished(look);
}

void SettingsSpace::keepHours()
{
    static constexpr std::array<const char*, 7> days{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
    record::Hours hours = hoursNow();
    bool good = true;
    for (std::size_t day = 0; day < days.size(); ++day) {
        const QString typed = m_hours[day].simplified();
        const std::string line = std::string(days[day]) + " " + (typed.isEmpty() ? "closed" : typed.toStdString());
        const auto read = record::hoursFromText(line);
        m_hoursFaults[day] = read ? QString() : tr("Times rise and do not overlap: 09:00-12:30 13:00-17:30");
        good = good && read;
        if (read) {
            hours.week[day] = read->week[day];
        }
    }
    refresh();
    if (good) {
        tellHours(hours);
    }
}

record::Hours SettingsSpace::hoursNow() const
{
    if (!m_hoursOf.isSet()) {
        return m_now.studio.hours;
    }
    const auto own = m_now.studio.ownHours.find(m_hoursOf);
    return own == m_now.studio.ownHours.end() ? record::Hours{} : own->second;
}

void SettingsSpace::tellHours(const record::Hours& hours)
{
    service::Studio studio = m_now.studio;
    (m_hoursOf.isSet() ? studio.ownHours[m_hoursOf] : studio.hours) = hours;
    Q_EMIT studioTold(studio);
}

void SettingsSpace::openHoursOf(PersonId person)
{
    m_hoursOf = person;
    beginEditing();
    openPage();
}

/// A date that is not like its weekday: as it is written in the file, so that it is read by the same hand.
void SettingsSpace::keepDate()
{
    const QString typed = m_dateHours.simplified();
    const QString line = m_date.simplified() + QLatin1Char(' ') + (typed.isEmpty() ? QStringLiteral("closed") : typed);
    const auto read = record::hoursFromText(line.toStdString());
    const bool isDate = read && read->exceptions.size() == 1;
    m_dateFault = isDate ? QString() : tr("A date such as 2026-12-24, and times that rise: 09:00-12:30");
    if (!isDate) {
        refresh();
        return;
    }
    record::Hours hours = hoursNow();
    hours.exceptions[read->exceptions.begin()->first] = read->exceptions.begin()->second;
    m_date.clear();
    m_dateHours.clear();
    refresh();
    tellHours(hours);
}

void SettingsSpace::dropDate(std::chrono::year_month_day date)
{
    record::Hours hours = hoursNow();
    hours.exceptions.erase(date);
    tellHours(hours);
}

void SettingsSpace::keepPerson(PersonId id)
{
    const QString name = (id.isSet() ? m_people[id] : m_name).simplified();
    m_fault = name.isEmpty() ? tr("A name is needed.") : QString();
    if (!name.isEmpty()) {
        m_name.clear();
        Q_EMIT personTold({id, name.toStdString()});
    }
    refresh();
}

void SettingsSpace::editPlace(const record::Place& place)
{
    m_place = place;
    m_slots = place.slots > 0 ? QString::number(place.slots) : QString();
    m_fault.clear();
    refresh();
}

void SettingsSpace::keepPlace()
{
    bool whole = true;
    const QString typed = m_slots.trimmed();
    const int slotCount = typed.isEmpty() ? 0 : typed.toInt(&whole);
    constexpr int mostSlots = 999;
    record::Place place = m_place;
    place.name = text(place.name).simplified().toStdString();
    place.slots = slotCount;
    m_fault = place.name.empty() ? tr("A place needs a name.")
              : !whole || slotCount < 0 || slotCount > mostSlots
                  ? tr("A whole number, or nothing for as many as you like.")
                  : QString();
    if (m_fault.isEmpty()) {
        editPlace({});
        Q_EMIT placeTold(place);
        return;
    }
    refresh();
}

bool SettingsSpace::eventFilter(QObject* watched, QEvent* event)
{
    if (m_capturing && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->isAutoRepeat() || isModifier(key->key())) {
            return true;
        }
        m_capturing = false;
        refresh();
        if (key->key() != Qt::Key_Escape) {
            Q_EMIT pedalKeyChosen(key->key());
        }
        return true;
    }
    return SheetSpace::eventFilter(watched, event);
}

} // namespace mend::app
