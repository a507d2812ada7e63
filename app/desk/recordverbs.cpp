// People and pieces at a terminal: find, export, import, erase.
#include "app/desk/verbs.h"

#include "core/base/foldedtext.h"
#include "core/record/piecenumber.h"
#include "core/service/peoplelist.h"
#include "core/service/transfer.h"
#include "core/store/backups.h"

#include <QJsonArray>

#include <filesystem>

namespace mend::desk {

namespace fs = std::filesystem;

namespace {

QString said(const std::string& utf8) { return QString::fromStdString(utf8); }

Result<std::unique_ptr<store::Store>> opened(const std::string& file, store::OpenMode mode)
{
    auto store = store::Store::open(file, mode);
    if (store && mode == store::OpenMode::ReadWrite && store.value()->standing() != store::Standing::Writable) {
        return Fault{FaultKind::ReadOnly, {}};
    }
    return store;
}

QString fileName(const std::string& file) { return said(fs::path(file).string()); }

Answer transferred(const Result<service::Transferred>& done, const std::string& to, const QString& what)
{
    if (!done) {
        Answer answer = refusal(done.fault(), fileName(to));
        if (done.fault().kind == FaultKind::BadInput) { // says where in the file
            answer.text += said("  " + done.fault().detail + "\n");
            answer.data[QStringLiteral("detail")] = said(done.fault().detail);
        }
        return answer;
    }
    const service::Transferred& count = done.value();
    Answer answer;
    answer.ending = count.missingPictures.empty() ? Ending::Good : Ending::Otherwise;
    answer.text =
        QStringLiteral("%1: %2 %3, %4 pictures\n").arg(fileName(to)).arg(count.rows).arg(what).arg(count.pictures);
    for (const std::string& hash : count.missingPictures) {
        answer.text += QStringLiteral("  picture missing: %1\n").arg(said(hash));
    }
    answer.data = {{QStringLiteral("good"), count.missingPictures.empty()},
                   {QStringLiteral("file"), fileName(to)},
                   {QStringLiteral("rows"), static_cast<qint64>(count.rows)},
                   {QStringLiteral("pictures"), static_cast<qint64>(count.pictures)},
                   {QStringLiteral("missingPictures"), static_cast<qint64>(count.missingPictures.size())}};
    return answer;
}

/// The person a command names, by number or by whole name; nobody where it may be several.
std::vector<record::Customer> named(const std::vector<record::Customer>& people, const std::string& name)
{
    std::vector<record::Customer> found;
    for (const record::Customer& person : people) {
        const bool isNumber = std::to_string(person.id.value()) == name;
        if (!person.isErased() && (isNumber || foldedWords(person.name) == foldedWords(name))) {
            found.push_back(person);
        }
    }
    return found;
}

Answer whichOne(const std::vector<record::Customer>& found, const std::string& name)
{
    if (found.empty()) {
        return refusal({FaultKind::NotFound, {}}, said(name));
    }
    QString text = QStringLiteral("Several people are called so; give the number of the one who is meant:\n");
    QJsonArray people;
    for (const record::Customer& person : found) {
        text += QStringLiteral("  %1  %2  %3\n").arg(person.id.value()).arg(said(person.name), said(person.contact));
        people.append(static_cast<qint64>(person.id.value()));
    }
    return {Ending::BadInput,
            text,
            {{QStringLiteral("good"), false},
             {QStringLiteral("fault"), QStringLiteral("several")},
             {QStringLiteral("people"), people}}};
}

/// The one person that is named; an answer that says why not else.
std::optional<Answer> pick(const store::Store& store, const std::string& name, record::Customer& person)
{
    const auto people = store.customers();
    if (!people) {
        return refusal(people.fault(), said(name));
    }
    const auto found = named(people.value(), name);
    if (found.size() != 1) {
        return whichOne(found, name);
    }
    person = found.front();
    return std::nullopt;
}

Answer importPeople(const std::string& file, const std::string& from)
{
    const auto list = service::readPeople(from);
    if (!list) {
        return refusal(list.fault(), fileName(from));
    }
    auto store = opened(file, store::OpenMode::ReadWrite);
    if (!store) {
        return refusal(store.fault(), fileName(file));
    }
    const auto known = store.value()->customers();
    if (!known) {
        return refusal(known.fault(), fileName(file));
    }
    std::vector<record::Customer> fresh;
    QString text;
    int alike = 0;
    for (const service::Newcomer& each : service::compareList(list.value(), known.value())) {
        if (each.isPlainlyNew()) {
            fresh.push_back(each.listed.person);
            continue;
        }
        ++alike;
        text += each.known.empty()
                    ? QStringLiteral("  line %1: may be the one in line %2, left for a person to decide\n")
                          .arg(each.listed.line)
                          .arg(*each.alikeLine)
                    : QStringLiteral("  line %1: may be known already, left for a person to decide\n")
                          .arg(each.listed.line);
    }
    for (const exchange::ListFault& fault : list.value().faults) {
        text += QStringLiteral("  line %1: %2\n").arg(fault.line).arg(said(fault.text));
    }
    if (const Outcome kept = store.value()->putAll(fresh); !kept) {
        return refusal(kept.fault(), fileName(file));
    }
    const bool isGood = list.value().faults.empty();
    return {isGood ? Ending::Good : Ending::BadInput,
            QStringLiteral("%1: %2 people taken\n").arg(fileName(from)).arg(fresh.size()) + text,
            {{QStringLiteral("good"), isGood},
             {QStringLiteral("people"), static_cast<qint64>(fresh.size())},
             {QStringLiteral("knownAlready"), alike},
             {QStringLiteral("faults"), static_cast<qint64>(list.value().faults.size())}}};
}

} // namespace

Answer findIn(const std::string& file, const std::string& typed)
{
    const auto store = opened(file, store::OpenMode::ReadOnly);
    if (!store) {
        return refusal(store.fault(), fileName(file));
    }
    const auto found = store.value()->find(typed);
    if (!found) {
        return refusal(found.fault(), fileName(file));
    }
    Answer answer;
    QJsonArray pieces;
    QJsonArray people;
    for (const store::FoundPiece& each : found.value().pieces) {
        const QString number = said(record::shownPieceNumber(each.piece.number));
        answer.text += QStringLiteral("%1  %2  %3  %4\n")
                           .arg(number, said(each.piece.benchName), said(each.owner.name),
                                each.inHand ? QStringLiteral("here") : QStringLiteral("gone"));
        pieces.append(QJsonObject{{QStringLiteral("number"), said(each.piece.number)},
                                  {QStringLiteral("benchName"), said(each.piece.benchName)},
                                  {QStringLiteral("owner"), said(each.owner.name)},
                                  {QStringLiteral("here"), each.inHand}});
    }
    for (const store::FoundPerson& each : found.value().people) {
        answer.text += QStringLiteral("%1  %2  %3\n")
                           .arg(each.person.id.value())
                           .arg(said(each.person.name), said(each.person.contact));
        people.append(QJsonObject{{QStringLiteral("person"), static_cast<qint64>(each.person.id.value())},
                                  {QStringLiteral("name"), said(each.person.name)},
                                  {QStringLiteral("contact"), said(each.person.contact)}});
    }
    const bool any = !pieces.isEmpty() || !people.isEmpty();
    answer.ending = any ? Ending::Good : Ending::Otherwise;
    answer.text = any ? answer.text : QStringLiteral("Nothing like that was found.\n");
    answer.data = {
        {QStringLiteral("good"), any}, {QStringLiteral("pieces"), pieces}, {QStringLiteral("people"), people}};
    return answer;
}

Answer exportFile(const std::string& file, const std::string& to, const std::string& person, const Clock& clock)
{
    const auto held = opened(file, store::OpenMode::ReadOnly);
    if (!held) {
        return refusal(held.fault(), fileName(file));
    }
    const store::Store& store = *held.value();
    if (!person.empty()) {
        record::Customer chosen;
        if (const auto why = pick(store, person, chosen)) {
            return *why;
        }
        return transferred(service::exportPerson(store, chosen.id, to), to, QStringLiteral("rows"));
    }
    std::error_code ignored;
    if (to.ends_with('/') || fs::is_directory(to, ignored)) {
        return transferred(service::exportTables(store, to), to, QStringLiteral("rows"));
    }
    if (fs::path(to).extension() == ".ics") {
        service::RuleShelf shelf(service::RuleShelf::usualFolders());
        return transferred(service::exportCalendar(store, shelf, to, clock.now().utc), to, QStringLiteral("days"));
    }
    return transferred(service::exportWhole(store, to), to, QStringLiteral("rows"));
}

Answer importFile(const std::string& file, const std::string& from)
{
    const fs::path extension = fs::path(from).extension();
    if (extension == ".vcf" || extension == ".csv") {
        return importPeople(file, from);
    }
    return transferred(service::importWhole(from, file), file, QStringLiteral("rows"));
}

Answer erasePerson(const std::string& file, const std::string& person, const Clock& clock)
{
    auto held = opened(file, store::OpenMode::ReadWrite);
    if (!held) {
        return refusal(held.fault(), fileName(file));
    }
    store::Store& store = *held.value();
    record::Customer chosen;
    if (const auto why = pick(store, person, chosen)) {
        return *why;
    }
    if (const Outcome erased = store.erase(chosen.id); !erased) {
        Answer answer = refusal(erased.fault(), said(person));
        if (erased.fault().kind == FaultKind::Conflict) {
            answer.text = QStringLiteral("A piece of theirs is in the house: hand it over or give it back first, then "
                                         "erase the person.\n");
        }
        return answer;
    }
    Answer answer;
    answer.text = QStringLiteral("Person %1 is erased; their pieces stay without a name.\n").arg(chosen.id.value());
    QJsonArray backups;
    const store::Backups kept(fs::path(file).parent_path() / "backups");
    for (const store::Backup& backup : kept.madeBefore(clock.now().utc)) {
        const QString name = said(backup.file.filename().string());
        answer.text += QStringLiteral("  still holds them, until it is thinned out or removed: %1\n").arg(name);
        backups.append(name);
    }
    answer.data = {{QStringLiteral("good"), true},
                   {QStringLiteral("person"), static_cast<qint64>(chosen.id.value())},
                   {QStringLiteral("backups"), backups}};
    return answer;
}

} // namespace mend::desk
