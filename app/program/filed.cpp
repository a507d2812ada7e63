#include "app/program/filed.h"

#include "app/program/banners.h"
#include "app/program/refusedwindow.h"
#include "app/program/tongue.h"
#include "core/service/openhours.h"
#include "core/service/revising.h"

#include <QKeySequence>
#include <QScreen>
#include <algorithm>

namespace mend::app {

using service::text;

namespace {

/// Hands on to the window's thread what the store's thread answers.
template <class Answer> void onMain(QObject* receiver, Answer answer)
{
    QMetaObject::invokeMethod(receiver, std::move(answer), Qt::QueuedConnection);
}

} // namespace

Filed::Filed(Parts parts, service::Studio studio, service::Manner manner, QSettings& settings, QObject* parent)
    : QObject(parent), m_parts(parts), m_studio(std::move(studio)), m_manner(std::move(manner)), m_settings(settings),
      m_look(wishedLook(settings))
{
    connectRules();
    connectStudio();
    connectSound();
    connectBackup();
}

LookWishes wishedLook(const QSettings& settings)
{
    LookWishes look;
    const QString theme = settings.value(QStringLiteral("look/theme")).toString();
    look.theme = theme == QLatin1String("dark")       ? parts::Theme::Dark
                 : theme == QLatin1String("contrast") ? parts::Theme::HighContrast
                                                      : parts::Theme::Light;
    look.scale = std::clamp(settings.value(QStringLiteral("look/scale"), 1.0).toDouble(), 1.0, 2.0);
    look.reduceMotion = settings.value(QStringLiteral("look/reduceMotion")).toBool();
    look.letters = settings.value(QStringLiteral("look/letters")).toBool();
    look.actionsLeft = settings.value(QStringLiteral("look/actionsLeft")).toBool();
    if (const double dpi = settings.value(QStringLiteral("look/dpi")).toDouble(); dpi >= 70 && dpi <= 350) {
        look.dpi = dpi;
    }
    return look;
}

LookSettings lookSettings(const LookWishes& wishes)
{
    return {wishes.theme, wishes.scale, wishes.reduceMotion, wishes.actionsLeft, wishes.dpi, wishes.letters};
}

void Filed::showSettings()
{
    SettingsNow shown;
    shown.studio = m_studio;
    shown.people = m_parts.bench.bench().roster.people;
    shown.places = m_parts.bench.bench().roster.places;
    shown.look = m_look;
    if (const QScreen* screen = m_parts.window.screen()) {
        shown.screenDpi = screen->physicalDotsPerInch();
    }
    m_sound.works = m_parts.player.deviceState() == sound::DeviceState::Ready;
    m_sound.device = m_settings.value(QStringLiteral("sound/device")).toString();
    m_sound.level = m_settings.value(QStringLiteral("sound/level"), 70).toInt();
    m_sound.off = m_settings.value(QStringLiteral("sound/off")).toBool();
    shown.sound = m_sound;
    if (const int key = m_settings.value(QStringLiteral("pedal/key")).toInt()) {
        shown.pedalKey = QKeySequence(key).toString(QKeySequence::NativeText);
    }
    for (const Language& each : languages()) {
        shown.languages.push_back({each.code, each.name});
    }
    shown.spoken = spokenLanguage();
    shown.backups = backupLines(m_parts.upkeep.backups());
    shown.seen = m_seen;
    shown.backupFolder = QString::fromStdString(m_parts.upkeep.folder().native());
    shown.backupState = m_backupState;
    shown.at = now();
    m_parts.spaces.settings().setNow(std::move(shown));
}

/// Reads who and what there is from the file once more.
void Filed::reloadRoster()
{
    m_parts.keeping.thread().read([this](store::Store& store) {
        auto pieces = store.piecesInHand();
        auto owners = store.ownersInHand();
        auto places = store.places();
        auto people = store.people();
        if (!pieces || !owners || !places || !people) {
            return;
        }
        bench::Roster roster;
        roster.pieces = pieces.takeValue();
        roster.customers = owners.takeValue();
        roster.places = places.takeValue();
        roster.people = people.takeValue();
        onMain(this, [this, roster]() mutable {
            roster.openHours = service::openHoursOf(m_studio, now());
            m_parts.bench.changeRoster(roster);
            m_parts.spaces.show();
        });
    });
}

void Filed::keepStudio(const service::Studio& studio)
{
    m_studio = studio;
    const auto settings = service::settingsOf(studio);
    m_parts.keeping.write([settings](store::Store& store) -> Outcome {
        for (const auto& [key, value] : settings) {
            if (const Outcome kept = store.setSetting(key, value); !kept) {
                return kept;
            }
        }
        return Done{};
    });
    m_manner.zone = studio.timeZone();
    m_manner.fahrenheit = studio.fahrenheit;
    m_manner.inches = studio.inches;
    m_parts.link.setManner(m_manner);
    m_parts.spaces.setManner(m_manner);
    m_parts.door.setManner(m_manner);
    reloadRoster();
}

void Filed::chooseLanguage(const QString& code)
{
    if (code == text(m_studio.language)) {
        return;
    }
    service::Studio studio = m_studio;
    studio.language = code.toStdString();
    keepStudio(studio);
    Q_EMIT languageChosen();
}

void Filed::wishLook(const LookWishes& wishes)
{
    m_look = wishes;
    const char* const theme = wishes.theme == parts::Theme::Dark           ? "dark"
                              : wishes.theme == parts::Theme::HighContrast ? "contrast"
                                                                           : "light";
    m_settings.setValue(QStringLiteral("look/theme"), QLatin1String(theme));
    m_settings.setValue(QStringLiteral("look/scale"), wishes.scale);
    m_settings.setValue(QStringLiteral("look/reduceMotion"), wishes.reduceMotion);
    m_settings.setValue(QStringLiteral("look/actionsLeft"), wishes.actionsLeft);
    m_settings.setValue(QStringLiteral("look/letters"), wishes.letters);
    m_settings.setValue(QStringLiteral("look/dpi"), wishes.dpi.value_or(0.0));
    m_parts.window.setLookSettings(lookSettings(wishes));
    showSettings();
}

void Filed::keepPerson(record::Person person)
{
    if (!person.id.isSet()) { // a queued write may be tried twice: its number is given once, here
        for (const record::Person& known : m_parts.bench.bench().roster.people) {
            person.id = std::max(person.id, known.id);
        }
        person.id = PersonId(person.id.value() + 1);
    }
    m_parts.keeping.write([person](store::Store& store) -> Outcome {
        const auto kept = store.put(person);
        return kept ? Outcome(Done{}) : Outcome(kept.fault());
    });
    reloadRoster();
}

void Filed::keepPlace(record::Place place)
{
    if (!place.id.isSet()) {
        for (const record::Place& known : m_parts.bench.bench().roster.places) {
            place.id = std::max(place.id, known.id);
        }
        place.id = PlaceId(place.id.value() + 1);
    }
    m_parts.keeping.write([place](store::Store& store) -> Outcome {
        const auto kept = store.put(place);
        return kept ? Outcome(Done{}) : Outcome(kept.fault());
    });
    reloadRoster();
}

void Filed::revise(const rules::Procedure& edited)
{
    const auto kept = service::keepRevision(m_parts.shelf, service::RuleShelf::usualFolders().own, edited);
    if (!kept) {
        m_parts.spaces.rules().showRefused(troubleWords(kept.fault()));
    } else if (kept.value().hash.empty()) {
        const auto& faults = kept.value().faults;
        m_parts.spaces.rules().showRefused(faults.empty() ? QString() : text(faults.front().text));
    } else {
        m_parts.bench.useRules(m_parts.shelf.book());
        m_parts.spaces.rules().showKept(text(edited.key));
    }
}

/// What became of a number of the studio's own.
void Filed::ownFigures(const Result<std::vector<rules::RuleFault>>& kept)
{
    RulesSpace& space = m_parts.spaces.rules();
    if (!kept) {
        space.showRefused(troubleWords(kept.fault()));
    } else if (!kept.value().empty()) {
        space.showRefused(text(kept.value().front().text));
    } else {
        m_parts.bench.useRules(m_parts.shelf.book());
        m_parts.spaces.show();
    }
    space.setOwn(m_parts.shelf.ownFigures());
}

void Filed::connectRules()
{
    RulesSpace& rulesSpace = m_parts.spaces.rules();
    rulesSpace.setOwn(m_parts.shelf.ownFigures());
    const auto own = service::RuleShelf::usualFolders().own;
    connect(&rulesSpace, &RulesSpace::ownTold, this, [this, own](const rules::OwnFigure& figure) {
        ownFigures(service::keepOwnFigure(m_parts.shelf, own, figure));
    });
    connect(&rulesSpace, &RulesSpace::ownDropped, this, [this, own](const QString& of, const QString& path) {
        ownFigures(service::dropOwnFigure(m_parts.shelf, own, of.toStdString(), path.toStdString()));
    });
    connect(&m_parts.spaces.rules(), &RulesSpace::revised, this, &Filed::revise);
}

void Filed::connectStudio()
{
    SettingsSpace& space = m_parts.spaces.settings();
    connect(&m_parts.spaces, &SpacesLink::settingsShown, this, &Filed::showSettings);
    connect(&space, &SettingsSpace::studioTold, this, &Filed::keepStudio);
    connect(&space, &SettingsSpace::languageChosen, this, &Filed::chooseLanguage);
    connect(&space, &SettingsSpace::personTold, this, &Filed::keepPerson);
    connect(&space, &SettingsSpace::placeTold, this, &Filed::keepPlace);
    connect(&space, &SettingsSpace::lookWished, this, &Filed::wishLook);
    connect(&space, &SettingsSpace::pedalKeyChosen, this, [this](int key) {
        m_settings.setValue(QStringLiteral("pedal/key"), key);
        if (m_parts.keeping.isWritable()) {
            m_parts.window.bench().pedal().setKey(key);
        }
        showSettings();
    });
}

void Filed::connectSound()
{
    SettingsSpace& space = m_parts.spaces.settings();
    connect(&space, &SettingsSpace::soundDeviceChosen, this, [this](const QString& device) {
        m_settings.setValue(QStringLiteral("sound/device"), device);
        m_parts.player.useDevice(device);
        showSettings();
    });
    connect(&space, &SettingsSpace::soundLevelChosen, this, [this](int percent) {
        m_settings.setValue(QStringLiteral("sound/level"), percent);
        Q_EMIT levelChosen(percent);
        showSettings();
    });
    connect(&space, &SettingsSpace::soundOffChosen, this, [this](bool off) {
        m_settings.setValue(QStringLiteral("sound/off"), off);
        Q_EMIT soundOffChosen(off);
        showSettings();
    });
    connect(&space, &SettingsSpace::soundTestWanted, this, [this] {
        m_parts.player.play(sound::Tone::B, {0.0});
        m_parts.spaces.settings().askHeard();
    });
    connect(&space, &SettingsSpace::soundHeard, this, [this](bool heard) {
        m_sound.heard = heard ? SoundSettings::Heard::Yes : SoundSettings::Heard::No;
        showSettings();
    });
    connect(&m_parts.player, &sound::Player::devicesListed, this, [this](const auto& devices) {
        m_sound.devices.clear();
        for (const sound::OutputDevice& device : devices) {
            m_sound.devices += device.name;
        }
    });
}

void Filed::connectBackup()
{
    connect(&m_parts.spaces.settings(), &SettingsSpace::backupWanted, this, [this] {
        m_backupState = tr("being made");
        m_parts.upkeep.backUpNow();
        showSettings();
    });
    connect(&m_parts.spaces.settings(), &SettingsSpace::backupPicked, this, [this](const QString& file) {
        m_seen.reset();
        m_parts.upkeep.lookThrough(m_parts.upkeep.folder() / file.toStdString());
    });
    connect(&m_parts.upkeep, &Upkeep::looked, this, [this](const BackupLooked& looked) {
        m_seen = backupSeen(looked);
        showSettings();
    });
    connect(&m_parts.spaces.settings(), &SettingsSpace::goingBackWanted, this,
            [this](const QString& file) { Q_EMIT goingBackWanted(m_parts.upkeep.folder() / file.toStdString()); });
    connect(&m_parts.upkeep, &Upkeep::backedUp, this, [this] {
        m_backupState.clear();
        m_parts.spaces.show();
    });
    connect(&m_parts.upkeep, &Upkeep::backupFailed, this, [this](const Fault& fault) {
        m_backupState = backupFailedWords(fault);
        m_parts.spaces.show();
    });
}

} // namespace mend::app
