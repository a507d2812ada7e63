#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "app/settings/settingsnow.h"
#include "core/service/wording.h"

#include <array>

namespace mend::app {

/// The pages of Settings, in the order of the list.
enum class SettingsPage {
    Studio,
    Hours,
    People,
    Places,
    Sound,
    Look,
    ScreenSize,
    Hands,
    Units,
    Papers,
    Backup,
    Language,
    Owners
};

/// Studio, people, places, sound, look, units, backup. It shows what it is given and says what was wished.
class SettingsSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit SettingsSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setManner(const service::Manner& manner);
    void setNow(SettingsNow now);
    void setPaperTexts(std::vector<PaperTextNow> texts);
    /// The list of owners that was chosen; a fresh one takes in whoever is plainly new.
    void setOwnerList(OwnerListNow list);
    void openSettings(SettingsPage page);
    /// The test sound was played: a person is asked whether it was heard.
    void askHeard();

Q_SIGNALS:
    void studioTold(const mend::service::Studio& studio);
    void languageChosen(const QString& code);            ///< empty: as this machine
    void personTold(const mend::record::Person& person); ///< without an id: somebody new
    void placeTold(const mend::record::Place& place);    ///< without an id: a new place
    void lookWished(const mend::app::LookWishes& look);
    void soundDeviceChosen(const QString& device);
    void soundLevelChosen(int percent);
    void soundOffChosen(bool off);
    void soundTestWanted();
    void soundHeard(bool heard);
    void pedalKeyChosen(int key); ///< a Qt::Key; 0: none
    /// The words of a standing text, one paragraph a line; none: those that ship are wanted back.
    void paperTextTold(const QString& key, const QString& words);
    void ownerListChosen(const QString& file);      ///< is to be looked through; nothing is kept
    void ownersTold(const std::vector<int>& lines); ///< of the list, from 0: are to be kept
    void ownerListLeft();
    void backupWanted();
    void backupPicked(const QString& file);    ///< what is in it is wanted
    void goingBackWanted(const QString& file); ///< the bench is to go on from that backup

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    parts::Sheet studioSheet();
    parts::Sheet hoursSheet();
    parts::Sheet peopleSheet();
    parts::Sheet placesSheet();
    parts::Sheet soundSheet();
    parts::Sheet lookSheet();
    parts::Sheet screenSheet();
    parts::Sheet handsSheet();
    parts::Sheet unitsSheet();
    parts::Sheet papersSheet();
    parts::Sheet ownersSheet();
    parts::Sheet languageSheet();
    parts::Sheet backupSheet();
    QString valueOf(SettingsPage page) const;
    void beginEditing();
    void keepHours();
    void keepDate();
    void dropDate(std::chrono::year_month_day date);
    void tellHours(const record::Hours& hours);
    void openHoursOf(PersonId person);
    /// The hours that are edited now: the bench's, or those of one person.
    record::Hours hoursNow() const;
    void sayDates(parts::Sheet& sheet);
    void keepPerson(PersonId id);
    void keepPlace();
    void editPlace(const record::Place& place);
    void wish(LookWishes look);

    SettingsNow m_now;
    service::Manner m_manner;
    SettingsPage m_page = SettingsPage::Studio;
    QString m_name;                       ///< of the studio, or of somebody new
    std::array<QString, 7> m_hours;       ///< Monday first, as typed
    std::array<QString, 7> m_hoursFaults; ///< by weekday
    PersonId m_hoursOf;                   ///< whose hours are edited; unset: the bench's
    QString m_date;                       ///< an exception, as typed
    QString m_dateHours;
    QString m_dateFault;
    std::map<PersonId, QString> m_people; ///< names as typed
    record::Place m_place;                ///< the place that is told now
    QString m_slots;
    QString m_fault;
    std::vector<PaperTextNow> m_paperTexts;
    QString m_paper;          ///< the key of the text that is rewritten
    QStringList m_paragraphs; ///< of it, as typed
    OwnerListNow m_ownerList;
    std::vector<bool> m_ownersTaken; ///< by line of the list
    int m_ownersFrom = 0;            ///< the first line that is shown
    QString m_ownerFolder;           ///< where lists are looked for; empty: at home
    QString m_backup;                ///< the backup that was picked
    bool m_asking = false;           ///< did you hear it?
    bool m_capturing = false;        ///< the next key is the pedal's
};

} // namespace mend::app
