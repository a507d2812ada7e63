#include "app/desk/verbs.h"

#include "core/service/systemclock.h"
#include "core/store/backups.h"
#include "core/store/check.h"

#include <QJsonArray>

#include <filesystem>

namespace mend::desk {

namespace fs = std::filesystem;

namespace {

QString partWords(store::Finding::Part part)
{
    switch (part) {
    case store::Finding::Part::Structure:
        return QStringLiteral("structure");
    case store::Finding::Part::Chain:
        return QStringLiteral("what happened");
    case store::Finding::Part::Rows:
        return QStringLiteral("people, pieces and settings");
    case store::Finding::Part::House:
        return QStringLiteral("pieces in the house");
    case store::Finding::Part::Links:
        return QStringLiteral("what belongs together");
    case store::Finding::Part::Photos:
        return QStringLiteral("pictures");
    }
    return {};
}

QString nameOf(const std::string& file) { return QString::fromStdString(file); }

/// How a check came out, after a first line that says of what.
Answer reported(const store::CheckReport& report, const QString& file, const QString& good)
{
    Answer answer;
    answer.ending = report.isGood() ? Ending::Good : Ending::BadInput;
    answer.text = report.isGood() ? good + QLatin1Char('\n')
                                  : QStringLiteral("%1: %2 faults\n").arg(file).arg(report.findings.size());
    QJsonArray findings;
    for (const store::Finding& finding : report.findings) {
        const QString detail = QString::fromStdString(finding.detail);
        answer.text += QStringLiteral("  %1: %2\n").arg(partWords(finding.part), detail);
        findings.append(
            QJsonObject{{QStringLiteral("part"), partWords(finding.part)}, {QStringLiteral("detail"), detail}});
    }
    answer.data = {{QStringLiteral("good"), report.isGood()},
                   {QStringLiteral("file"), file},
                   {QStringLiteral("events"), static_cast<qint64>(report.events)},
                   {QStringLiteral("rows"), static_cast<qint64>(report.rows)},
                   {QStringLiteral("photos"), static_cast<qint64>(report.photos)},
                   {QStringLiteral("findings"), findings}};
    return answer;
}

/// One file with everything in it, under its name only once it has been read back and found whole.
Outcome copyInto(store::Store& store, const fs::path& to)
{
    const fs::path part = to.string() + ".part";
    if (const Outcome copied = store::guarded([&] { store::copyWhole(store.database(), part); }); !copied) {
        return copied;
    }
    bool isWhole = false;
    {
        const auto copy = store::Store::open(part, store::OpenMode::ReadOnly);
        isWhole = copy && store::checkWhole(*copy.value()).isGood();
    }
    if (!isWhole) {
        std::error_code ignored;
        fs::remove(part, ignored);
        return Fault{FaultKind::Damaged, "the copy is not whole"};
    }
    return store::renameIfFree(part, to);
}

Answer checkedWhole(const store::Store& store, const QString& file, const QString& good)
{
    const store::CheckReport report = store::checkWhole(store);
    return reported(
        report, file,
        good +
            QStringLiteral(": %1 events, %2 rows, %3 pictures").arg(report.events).arg(report.rows).arg(report.photos));
}

} // namespace

Answer checkFile(const std::string& file)
{
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    if (!opened) {
        return refusal(opened.fault(), nameOf(file));
    }
    return checkedWhole(*opened.value(), nameOf(file), QStringLiteral("%1 is whole").arg(nameOf(file)));
}

Answer backUp(const std::string& file, const std::string& to)
{
    std::error_code failed;
    const bool intoFolder = fs::is_directory(to, failed);
    if (!intoFolder && fs::exists(to, failed)) {
        return refusal({FaultKind::Conflict, {}}, nameOf(to));
    }
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    if (!opened) {
        return refusal(opened.fault(), nameOf(file));
    }
    store::Store& store = *opened.value();
    fs::path copy = to;
    if (intoFolder) {
        const auto made = store::Backups(to).make(store, service::SystemClock().now().utc);
        if (!made) {
            return refusal(made.fault(), nameOf(to));
        }
        copy = made.value().file;
    } else if (const Outcome made = copyInto(store, to); !made) {
        return refusal(made.fault(), nameOf(to));
    }
    Answer answer{Ending::Good, QStringLiteral("%1 backed up to %2\n").arg(nameOf(file), nameOf(copy.string())), {}};
    answer.data = {{QStringLiteral("good"), true},
                   {QStringLiteral("file"), nameOf(file)},
                   {QStringLiteral("backup"), nameOf(copy.string())}};
    return answer;
}

Answer restore(const std::string& backup, const std::string& to)
{
    const store::Backups backups(fs::absolute(backup).parent_path());
    const auto restored = backups.restore(backup, to, service::SystemClock().now().utc);
    if (!restored) {
        return refusal(restored.fault(), nameOf(restored.fault().kind == FaultKind::Locked ? to : backup));
    }
    const store::Restored& back = restored.value();
    Answer answer;
    answer.text = QStringLiteral("%1 restored from %2: %3 events\n").arg(nameOf(to), nameOf(backup)).arg(back.events);
    QJsonArray missing;
    for (const std::string& picture : back.missingPictures) {
        answer.text += QStringLiteral("  a picture is missing: %1\n").arg(nameOf(picture));
        missing.append(nameOf(picture));
    }
    answer.data = {{QStringLiteral("good"), back.missingPictures.empty()},
                   {QStringLiteral("file"), nameOf(to)},
                   {QStringLiteral("events"), static_cast<qint64>(back.events)},
                   {QStringLiteral("missingPictures"), missing}};
    if (!back.keptAside.empty()) {
        answer.text += QStringLiteral("  what stood there is kept as %1\n").arg(nameOf(back.keptAside.string()));
        answer.data[QStringLiteral("keptAside")] = nameOf(back.keptAside.string());
    }
    answer.ending = back.missingPictures.empty() ? Ending::Good : Ending::Otherwise;
    return answer;
}

} // namespace mend::desk
