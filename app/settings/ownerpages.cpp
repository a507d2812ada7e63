#include "app/settings/ownerpages.h"

#include "app/parts/folderrows.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::app {

using parts::Sheet;

namespace {

constexpr int linesShown = 50;
constexpr int faultsShown = 20;

// What a translator finds these words under.
class OwnerWords {
    Q_DECLARE_TR_FUNCTIONS(OwnerWords)
};

void sayFaults(Sheet& sheet, const QStringList& faults)
{
    if (faults.isEmpty()) {
        return;
    }
    sheet.head(OwnerWords::tr("Not as it should be"));
    for (const QString& fault : faults.mid(0, faultsShown)) {
        sheet.say(fault, Sheet::Tone::Grave);
    }
    if (faults.size() > faultsShown) {
        sheet.say(OwnerWords::tr("and %n more", nullptr, static_cast<int>(faults.size()) - faultsShown),
                  Sheet::Tone::Quiet);
    }
}

Sheet::Row rowOf(const OwnerLine& line, int number, bool isTaken, const OwnerListActs& acts)
{
    QStringList below;
    below += line.alike;
    below += line.contacts;
    below += line.notes;
    below.removeAll(QString());
    return {QStringLiteral("owners/line/%1").arg(number),
            line.name,
            below.join(QStringLiteral(" · ")),
            isTaken ? OwnerWords::tr("taken in") : OwnerWords::tr("left out"),
            [turn = acts.turn, number] { turn(number); },
            isTaken};
}

/// The buttons that lead to the lines before and after those shown.
void addPaging(Sheet& sheet, int from, int count, const OwnerListActs& acts)
{
    if (count <= linesShown) {
        return;
    }
    Sheet::Choices paging;
    paging.label = OwnerWords::tr("%1 to %2 of %3").arg(from + 1).arg(std::min(from + linesShown, count)).arg(count);
    const auto show = [&](const char* key, const QString& words, int to) {
        const bool isThere = to >= 0 && to < count;
        paging.choices.push_back(
            {QLatin1String("owners/") + QLatin1String(key),
             words,
             {},
             isThere ? std::function<void()>([go = acts.show, to] { go(to); }) : std::function<void()>()});
    };
    show("earlier", OwnerWords::tr("Those before"), from - linesShown);
    show("later", OwnerWords::tr("Those after"), from + linesShown);
    sheet.add(paging);
}

} // namespace

Sheet ownerFilesSheet(const QString& folder, const service::Manner& manner, const OwnerListActs& acts)
{
    parts::FolderRows rows;
    rows.key = QStringLiteral("owners");
    rows.folder = folder;
    rows.kinds = {QStringLiteral("*.vcf"), QStringLiteral("*.csv")};
    rows.locale = manner.locale;
    rows.zone = manner.zone;
    rows.go = acts.go;
    rows.pick = acts.open;
    Sheet sheet;
    sheet.title = OwnerWords::tr("Owners from a list");
    sheet.beside = rows.path();
    sheet.say(
        OwnerWords::tr("Choose a card file (.vcf) out of a phone or an address book, or a table (.csv) whose first "
                       "row names its columns: name, phone, mail, address, note. You see everybody before anybody is "
                       "kept."),
        Sheet::Tone::Quiet);
    if (rows.addTo(sheet) == 0) {
        sheet.say(OwnerWords::tr("No such file lies in this folder."), Sheet::Tone::Quiet);
    }
    return sheet;
}

Sheet ownerListSheet(const OwnerListNow& list, const std::vector<bool>& taken, int from, const OwnerListActs& acts)
{
    Sheet sheet;
    sheet.title = OwnerWords::tr("Owners from a list");
    sheet.beside = list.file;
    sheet.back = {QStringLiteral("owners/leave"), OwnerWords::tr("Another file"), {}, acts.leave};
    if (!list.fault.isEmpty()) {
        sheet.say(list.fault, Sheet::Tone::Grave);
        sayFaults(sheet, list.faults);
        return sheet;
    }
    if (list.reading) {
        sheet.say(OwnerWords::tr("It is being looked through."), Sheet::Tone::Quiet);
        return sheet;
    }
    if (list.kept) {
        sheet.say(*list.kept == 1
                      ? OwnerWords::tr("One owner is kept. Find brings them up by name.")
                      : OwnerWords::tr("%n owners are kept. Find brings them up by name.", nullptr, *list.kept));
        return sheet;
    }
    const int count = static_cast<int>(list.lines.size());
    const int chosen = static_cast<int>(std::ranges::count(taken, true));
    const int unclear = static_cast<int>(std::ranges::count_if(list.lines, &OwnerLine::unclear));
    QString found = count == 0   ? OwnerWords::tr("Nobody stands in it.")
                    : count == 1 ? OwnerWords::tr("One person stands in it.")
                                 : OwnerWords::tr("%n people stand in it.", nullptr, count);
    if (count > 0) {
        found += QLatin1Char(' ') + OwnerWords::tr("Tap a line to leave somebody out or to take them in.");
    }
    sheet.say(found);
    if (unclear > 0) {
        sheet.say(unclear == 1
                      ? OwnerWords::tr("One may be here already, and is left out unless you say it is somebody else.")
                      : OwnerWords::tr("%n may be here already, and are left out unless you say it is somebody else.",
                                       nullptr, unclear));
    }
    if (count > 0) {
        sheet.add(Sheet::Choices{
            {},
            {{QStringLiteral("owners/keep"),
              chosen == 1 ? OwnerWords::tr("Take in this one") : OwnerWords::tr("Take in these %n", nullptr, chosen),
              chosen > 0 ? QString() : OwnerWords::tr("nobody is chosen"),
              chosen > 0 ? acts.keep : std::function<void()>(), true}}});
    }
    sayFaults(sheet, list.faults);
    addPaging(sheet, from, count, acts);
    for (int line = from; line < std::min(from + linesShown, count); ++line) {
        const auto at = static_cast<std::size_t>(line);
        sheet.add(rowOf(list.lines[at], line, taken[at], acts));
    }
    return sheet;
}

} // namespace mend::app
