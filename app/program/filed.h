#pragma once

#include "app/program/benchlink.h"
#include "app/program/upkeep.h"
#include "app/shell/doorlink.h"
#include "app/shell/spaceslink.h"
#include "app/sound/player.h"
#include "core/service/ruleshelf.h"

#include <QObject>
#include <QSettings>

namespace mend::app {

/// Carries out what the spaces beside the Bench want to have in a file: a revision of
/// the rules, the studio's settings, a backup; and what this machine is to remember of the window.
class Filed : public QObject {
    Q_OBJECT

public:
    struct Parts {
        service::BenchService& bench;
        service::RuleShelf& shelf;
        Keeping& keeping;
        Upkeep& upkeep;
        sound::Player& player;
        MainWindow& window;
        BenchLink& link;
        SpacesLink& spaces;
        DoorLink& door;
        const Clock& clock;
    };
    Filed(Parts parts, service::Studio studio, service::Manner manner, QSettings& settings, QObject* parent = nullptr);

Q_SIGNALS:
    void levelChosen(int percent);
    void soundOffChosen(bool off);
    /// Another language is kept: the window has to be made anew to speak it.
    void languageChosen();
    /// The bench is to go on from that backup.
    void goingBackWanted(const std::filesystem::path& backup);

private:
    void connectRules();
    void connectStudio();
    void connectSound();
    void connectBackup();
    void revise(const rules::Procedure& edited);
    void ownFigures(const Result<std::vector<rules::RuleFault>>& kept);
    void keepPerson(record::Person person);
    void keepPlace(record::Place place);
    void keepStudio(const service::Studio& studio);
    void chooseLanguage(const QString& code);
    void wishLook(const LookWishes& wishes);
    void showSettings();
    void reloadRoster();
    Instant now() const { return m_parts.clock.now().utc; }

    Parts m_parts;
    service::Studio m_studio;
    service::Manner m_manner;
    QSettings& m_settings;
    LookWishes m_look;
    SoundSettings m_sound;
    QString m_backupState;
    std::optional<BackupSeen> m_seen;
};

/// The look that was wished on this machine last.
LookWishes wishedLook(const QSettings& settings);
LookSettings lookSettings(const LookWishes& wishes);

} // namespace mend::app
