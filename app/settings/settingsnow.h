#pragma once

#include "app/parts/tokens.h"
#include "core/base/time.h"
#include "core/record/piece.h"
#include "core/service/studio.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace mend::app {

/// How a person likes the window; the program makes the look from it.
struct LookWishes {
    parts::Theme theme = parts::Theme::Light;
    double scale = 1.0; ///< 1 to 2
    bool reduceMotion = false;
    bool actionsLeft = false;
    std::optional<double> dpi; ///< measured with a card; empty: what the screen says
    bool letters = false;      ///< letters on the glass, for a tablet without a keyboard
    bool operator==(const LookWishes&) const = default;
};

/// What is known of the sound and what a person heard of it.
struct SoundSettings {
    QStringList devices; ///< as the sound process names them
    QString device;      ///< empty: the usual one
    int level = 70;      ///< per cent of the ceiling
    bool off = false;    ///< by choice: alerts are only seen
    bool works = true;   ///< a device takes the sound
    enum class Heard { NeverAsked, Yes, No } heard = Heard::NeverAsked;
    bool operator==(const SoundSettings&) const = default;
};

/// One backup, as it lies in its folder.
struct BackupLine {
    Instant made;
    QString file;
    qint64 bytes = 0;
};

/// What is in the backup that a person picked, once it was looked through.
struct BackupSeen {
    QString file;
    QString fault; ///< why it cannot be gone back to; empty: it can
    qint64 pieces = 0;
    qint64 inHand = 0; ///< in the house when it was made
    qint64 told = 0;   ///< events
    std::optional<Instant> lastTold;
    qint64 missingPictures = 0;
};

/// One standing text of a paper, as it would be printed now.
struct PaperTextNow {
    QString key;
    QString says; ///< where it stands: "On every care sheet"
    QStringList lines;
    bool isOwn = false;
};

/// Somebody out of a list of owners, as they would be kept.
struct OwnerLine {
    QString name;
    QString contacts;
    QStringList notes;    ///< what was left out or could not be read
    QString alike;        ///< who they may be already, in words; empty: plainly somebody new
    bool unclear = false; ///< may be somebody who is here: kept only where a person says so
};

/// A list of owners that was chosen, before and after anybody of it is kept.
struct OwnerListNow {
    QString file;         ///< its name; empty: none is chosen
    bool reading = false; ///< it is being looked through, or kept
    QString fault;        ///< why it cannot be read or was not kept
    QStringList faults;   ///< entries that could not be read, each in words
    std::vector<OwnerLine> lines;
    std::optional<int> kept; ///< so many were kept
};

/// One language that the program speaks.
struct LanguageLine {
    QString code;
    QString name; ///< what it calls itself
};

/// Everything that Settings shows.
struct SettingsNow {
    service::Studio studio;
    std::vector<record::Person> people;
    std::vector<record::Place> places;
    LookWishes look;
    double screenDpi = 96.0; ///< what the screen says of itself
    SoundSettings sound;
    std::vector<LanguageLine> languages; ///< English first
    QString spoken;                      ///< what the program speaks now, by its own name
    QString pedalKey;                    ///< what the key is called; empty: none is chosen
    std::vector<BackupLine> backups;     ///< newest first
    QString backupFolder;
    QString backupState; ///< "being made", or why the last one failed; empty: nothing to say
    std::optional<BackupSeen> seen;
    Instant at;
};

} // namespace mend::app
