#include "app/settings/backuppages.h"

#include <QCoreApplication>

namespace mend::app {

using parts::Sheet;

namespace {

// What a translator finds these words under.
class BackupWords {
    Q_DECLARE_TR_FUNCTIONS(BackupWords)
};

QString dateWords(Instant at, const service::Manner& manner)
{
    const QDateTime local = QDateTime::fromMSecsSinceEpoch(at.time_since_epoch().count(), manner.zone);
    return BackupWords::tr("%1, %2").arg(manner.locale.toString(local.date(), QLocale::ShortFormat),
                                         manner.locale.toString(local.time(), QLocale::ShortFormat));
}

QString sizeWords(qint64 bytes, const service::Manner& manner)
{
    return manner.locale.formattedDataSize(bytes, 1, QLocale::DataSizeSIFormat);
}

} // namespace

void addBackups(Sheet& sheet, const std::vector<BackupLine>& backups, Instant now, const service::Manner& manner,
                const BackupActs& acts)
{
    for (const BackupLine& backup : backups) {
        sheet.add(Sheet::Row{QStringLiteral("backup/") + backup.file, dateWords(backup.made, manner),
                             BackupWords::tr("%1; checked when it was made").arg(sizeWords(backup.bytes, manner)),
                             service::agoWords(now - backup.made),
                             [pick = acts.pick, file = backup.file] { pick(file); }});
    }
}

Sheet backupSheetOf(const BackupLine& backup, const std::optional<BackupSeen>& seen, Instant now,
                    const service::Manner& manner, const BackupActs& acts)
{
    Sheet sheet;
    sheet.title = BackupWords::tr("Backup of %1").arg(dateWords(backup.made, manner));
    sheet.beside = service::agoWords(now - backup.made);
    sheet.back = {QStringLiteral("backup/leave"), BackupWords::tr("All backups"), {}, acts.leave, false, false};
    const bool isSeen = seen && seen->file == backup.file;
    const bool isGood = isSeen && seen->fault.isEmpty();
    if (!isSeen) {
        sheet.say(BackupWords::tr("It is being looked through."), Sheet::Tone::Quiet);
    } else if (!isGood) {
        sheet.say(seen->fault, Sheet::Tone::Grave);
    } else {
        const auto row = [&sheet](const char* key, const QString& label, const QString& value) {
            sheet.add(Sheet::Row{QStringLiteral("backup/seen/") + QLatin1String(key), label, {}, value, {}});
        };
        row("last", BackupWords::tr("The last thing told in it"),
            seen->lastTold ? dateWords(*seen->lastTold, manner) : BackupWords::tr("nothing yet"));
        row("hand", BackupWords::tr("Pieces in the house then"), manner.locale.toString(seen->inHand));
        row("pieces", BackupWords::tr("Pieces in all"), manner.locale.toString(seen->pieces));
        row("told", BackupWords::tr("Things told"), manner.locale.toString(seen->told));
        row("checked", BackupWords::tr("Checked now"), BackupWords::tr("all as it was written"));
        if (seen->missingPictures > 0) {
            const auto gone = static_cast<int>(seen->missingPictures);
            sheet.say(gone == 1 ? BackupWords::tr("One of its pictures is gone.")
                                : BackupWords::tr("%n of its pictures are gone.", nullptr, gone),
                      Sheet::Tone::Grave);
        }
    }
    sheet.head(BackupWords::tr("Going back to it"));
    sheet.say(
        BackupWords::tr("The bench goes on as it stood then: what was told later is not in it. The file that stands "
                        "there now is kept aside under a name that says so, never overwritten."));
    Sheet::Choices go;
    go.choices = {{QStringLiteral("backup/goback"), BackupWords::tr("Go back to this one"),
                   isGood ? QString() : BackupWords::tr("not before it was found good"),
                   isGood ? std::function<void()>([goBack = acts.goBack, file = backup.file] { goBack(file); })
                          : std::function<void()>(),
                   true, false}};
    sheet.add(go);
    return sheet;
}

} // namespace mend::app
