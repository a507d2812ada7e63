#include "app/program/banners.h"

#include "core/service/wording.h"

#include <QCoreApplication>
#include <algorithm>

namespace mend::app {

namespace {
// What a translator finds these words under.
class BannerWords {
    Q_DECLARE_TR_FUNCTIONS(BannerWords)
};
} // namespace

void Banners::set(const QString& key, const QString& words, const QString& act)
{
    const auto held = std::ranges::find(m_banners, key, &Banner::key);
    if (held == m_banners.end()) {
        m_banners.push_back({key, words, act});
    } else {
        *held = {key, words, act};
    }
}

void Banners::clear(const QString& key)
{
    std::erase_if(m_banners, [&](const Banner& banner) { return banner.key == key; });
}

QString troubleWords(const Fault& fault)
{
    switch (fault.kind) {
    case FaultKind::DiskFull:
        return BannerWords::tr(
            "The disk is full: what you tell is kept here and not yet stored. Make room; alerts go on.");
    case FaultKind::Busy:
    case FaultKind::Locked:
        return BannerWords::tr(
            "Another program holds the bench file: what you tell is kept here and stored once it lets go.");
    case FaultKind::ReadOnly:
        return BannerWords::tr("The bench file cannot be written: nothing new is stored. Alerts go on.");
    case FaultKind::NotFound:
        return BannerWords::tr(
            "The bench file was moved or removed: what you tell is kept here. Put it back, or save it "
            "elsewhere. Alerts go on.");
    default:
        return BannerWords::tr(
            "Storing does not work at present: what you tell is kept here and tried again. Alerts go on.");
    }
}

QString standingWords(store::Standing standing)
{
    switch (standing) {
    case store::Standing::ReadOnlyFile:
    case store::Standing::ReadOnlyAsAsked:
        return BannerWords::tr("This bench can only be read: its file or folder takes no writing. Make it writable and "
                               "start again. Alerts go on.");
    case store::Standing::OnNetwork:
        return BannerWords::tr(
            "This bench lies on another machine and is only read: two could write at once. Save it here to "
            "work on it. Alerts go on.");
    default:
        return {};
    }
}

QString noWritingWords() { return BannerWords::tr("not now: the bench file can only be read"); }

QString refusedWords()
{
    return BannerWords::tr(
        "Something you told could not be stored as it was told. Look it up in the log and tell it again.");
}

QString backupFailedWords(const Fault& fault)
{
    switch (fault.kind) {
    case FaultKind::DiskFull:
        return BannerWords::tr("No backup could be made: the disk is full. Make room; it is tried again after the next "
                               "change.");
    case FaultKind::Damaged:
        return BannerWords::tr("No backup was made: the bench file is not as it was written.");
    default:
        return BannerWords::tr(
            "No backup could be made. See that the folder “backups” beside the bench file can be written.");
    }
}

QString moveFailedWords(const Fault& fault)
{
    switch (fault.kind) {
    case FaultKind::DiskFull:
        return BannerWords::tr("The disk there is full. Choose another place.");
    case FaultKind::Conflict:
        return BannerWords::tr("Something stands there already. Choose another name.");
    case FaultKind::Unwritable:
    case FaultKind::ReadOnly:
    case FaultKind::NotFound:
        return BannerWords::tr("That folder is not there or cannot be written. Choose another place.");
    case FaultKind::Damaged:
        return BannerWords::tr("The bench could not be read to its end. Go back to a backup, in Settings.");
    default:
        return BannerWords::tr("It could not be saved there. Choose another place, or try again.");
    }
}

QString restoredWords(const store::Restored& restored)
{
    const QString kept = QString::fromStdString(restored.keptAside.filename().native());
    QString words = kept.isEmpty()
                        ? BannerWords::tr("The bench goes on from the backup.")
                        : BannerWords::tr("The bench goes on from the backup. The file that stood here is kept "
                                          "as %1.")
                              .arg(kept);
    if (!restored.missingPictures.empty()) {
        words += QLatin1Char(' ') + (restored.missingPictures.size() == 1
                                         ? BannerWords::tr("1 picture is gone.")
                                         : BannerWords::tr("%n pictures are gone.", nullptr,
                                                           static_cast<int>(restored.missingPictures.size())));
    }
    return words;
}

QString notRestoredWords(const Fault& fault)
{
    switch (fault.kind) {
    case FaultKind::DiskFull:
        return BannerWords::tr("The backup was not put back: the disk is full. Everything is as it was.");
    case FaultKind::Damaged:
        return BannerWords::tr("The backup was not put back: it is not as it was made. Everything is as it was; choose "
                               "another.");
    default:
        return BannerWords::tr("The backup was not put back. Everything is as it was.");
    }
}

QString damageWords(int findings)
{
    return findings == 1 ? BannerWords::tr(
                               "1 place in the bench file is not as it was written. Nothing was changed: go back to a "
                               "good backup; this file is then kept aside.")
                         : BannerWords::tr(
                               "%n places in the bench file are not as they were written. Nothing was changed: go back "
                               "to a good backup; this file is then kept aside.",
                               nullptr, findings);
}

QString clockBehindWords(Instant lastSeen, Instant now, const service::Manner& manner)
{
    return BannerWords::tr(
               "The clock says %1, but the program last ran at %2. Set the clock right; no countdown was changed.")
        .arg(service::clockTime(now, now, manner), service::clockTime(lastSeen, now, manner));
}

QString clockStepWords(Span amount)
{
    const QString by = service::spanWords(std::chrono::abs(amount));
    return (amount > Span{0} ? BannerWords::tr("The clock was put forward by %1; windows keep real elapsed time.")
                             : BannerWords::tr("The clock was put back by %1; windows keep real elapsed time."))
        .arg(by);
}

} // namespace mend::app
