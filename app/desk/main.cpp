#include "app/desk/verbs.h"

#include "core/service/systemclock.h"

#include <QCommandLineParser>
#include <QCoreApplication>
#include <QDateTime>
#include <QGuiApplication>
#include <QJsonDocument>

#include <algorithm>
#include <cstdio>
#include <string_view>

namespace mend::desk {

namespace {

constexpr auto usage = "mendbench-desk: look after a bench file without a window\n"
                       "\n"
                       "  mendbench-desk check FILE           is it whole?\n"
                       "  mendbench-desk backup FILE TO       a copy of it, also while it is in use\n"
                       "  mendbench-desk restore BACKUP TO    a bench file out of such a copy\n"
                       "  mendbench-desk board FILE           every card, its window and its alert\n"
                       "      --at TIME                       as it stands then: 2026-03-08T13:42:05Z\n"
                       "  mendbench-desk rules FILE...        every fault in rule files, with its place\n"
                       "  mendbench-desk plan PROBLEM.json    plans a bench; the problem as JSON (bench-plan/1)\n"
                       "  mendbench-desk plan FILE            what needs hands next on the bench, and when\n"
                       "      --at TIME                       as it stands then\n"
                       "      --problem                       that bench as such a problem\n"
                       "      --seconds S                     for so long at most, 5 if it is not said\n"
                       "      --seed N                        the same seed tries the same things first\n"
                       "  mendbench-desk find FILE TEXT...    pieces and people by number, name, phone, looks\n"
                       "  mendbench-desk export FILE TO       everything: TO.json, a folder of tables, or TO.ics\n"
                       "      --person PERSON                 everything of one person\n"
                       "  mendbench-desk import FILE FROM     a bench file out of FROM.json, or people out of\n"
                       "                                      FROM.vcf or FROM.csv\n"
                       "  mendbench-desk papers FILE NUMBER TO  every paper about a piece into the folder TO\n"
                       "      --letter                        on Letter instead of A4\n"
                       "      --label SIZE                    the tag on 50x20, 62x29 (usual) or 100x50 mm\n"
                       "  mendbench-desk erase FILE PERSON    takes a person out of the file for ever\n"
                       "  mendbench-desk demo [FILE]          make the demo bench and say where it is\n"
                       "      --fresh                         anew, even if there is a young one\n"
                       "\n"
                       "  --json                              the answer as JSON\n"
                       "  --help                              this\n"
                       "  --version                           which version this is\n"
                       "\n"
                       "Ends with 0 where all is good, 2 where what was given is not, 1 otherwise;\n"
                       "plan also with 3 where no plan exists and 4 where none was found in the time.\n";

/// What was typed, as far as it makes sense.
struct Command {
    QString verb;
    std::vector<std::string> files;
    std::optional<Instant> at;
    std::optional<PlanEffort> effort;
    std::string person;
    bool fresh = false;
    bool problem = false;
    PaperSizes sizes;
    bool sized = false; ///< one of them was told
    bool json = false;
};

/// RFC 3339; a time without a zone would mean another instant on another machine, so it is refused.
std::optional<Instant> timeFrom(const QString& typed)
{
    const QDateTime time = QDateTime::fromString(typed, Qt::ISODateWithMs);
    if (!time.isValid() || time.timeSpec() == Qt::LocalTime) {
        return std::nullopt;
    }
    const Instant at{std::chrono::milliseconds(time.toMSecsSinceEpoch())};
    return fromRfc3339(toRfc3339(at)); // within the years that a bench file knows
}

/// Empty texts leave what is usual; nothing where one makes no sense.
std::optional<PlanEffort> effortFrom(const QString& seconds, const QString& seed)
{
    PlanEffort effort;
    bool good = true;
    if (!seconds.isEmpty()) {
        effort.seconds = seconds.toDouble(&good);
        good = good && effort.seconds >= 0.0 && effort.seconds <= 86400.0;
    }
    if (good && !seed.isEmpty()) {
        effort.seed = seed.toULongLong(&good);
    }
    return good ? std::optional(effort) : std::nullopt;
}

Answer misuse(const QString& why)
{
    return {Ending::BadInput,
            why + QStringLiteral("\nmendbench-desk --help says what can be asked.\n"),
            {{QStringLiteral("good"), false},
             {QStringLiteral("fault"), QStringLiteral("usage")},
             {QStringLiteral("detail"), why}}};
}

bool takesFiles(const Command& command)
{
    const std::size_t count = command.files.size();
    static const QStringList ofTwo{QStringLiteral("backup"), QStringLiteral("restore"), QStringLiteral("export"),
                                   QStringLiteral("import"), QStringLiteral("erase")};
    if (ofTwo.contains(command.verb)) {
        return count == 2;
    }
    if (command.verb == QStringLiteral("papers")) {
        return count == 3;
    }
    if (command.verb == QStringLiteral("find")) {
        return count >= 2;
    }
    if (command.verb == QStringLiteral("rules")) {
        return count > 0;
    }
    return command.verb == QStringLiteral("demo") ? count <= 1 : count == 1;
}

/// What was typed behind the file, as one text.
std::string joined(const std::vector<std::string>& words)
{
    std::string text;
    for (std::size_t i = 1; i < words.size(); ++i) {
        text += i > 1 ? " " : "";
        text += words[i];
    }
    return text;
}

Answer run(const Command& command, const Clock& clock)
{
    static const QStringList verbs{QStringLiteral("check"),  QStringLiteral("backup"), QStringLiteral("restore"),
                                   QStringLiteral("board"),  QStringLiteral("rules"),  QStringLiteral("demo"),
                                   QStringLiteral("plan"),   QStringLiteral("find"),   QStringLiteral("export"),
                                   QStringLiteral("import"), QStringLiteral("erase"),  QStringLiteral("papers")};
    if (!verbs.contains(command.verb)) {
        return misuse(command.verb.isEmpty() ? QStringLiteral("nothing was asked")
                                             : QStringLiteral("\"%1\" cannot be asked").arg(command.verb));
    }
    if (!takesFiles(command)) {
        return misuse(QStringLiteral("%1 wants other files than these").arg(command.verb));
    }
    if (command.at && command.verb != QStringLiteral("board") && command.verb != QStringLiteral("plan")) {
        return misuse(QStringLiteral("--at is for board and plan alone"));
    }
    if (command.problem && command.verb != QStringLiteral("plan")) {
        return misuse(QStringLiteral("--problem is for plan alone"));
    }
    if (command.effort && command.verb != QStringLiteral("plan")) {
        return misuse(QStringLiteral("--seconds and --seed are for plan alone"));
    }
    if (command.fresh && command.verb != QStringLiteral("demo")) {
        return misuse(QStringLiteral("--fresh is for demo alone"));
    }
    if (command.sized && command.verb != QStringLiteral("papers")) {
        return misuse(QStringLiteral("--letter and --label are for papers alone"));
    }
    if (!command.person.empty() && command.verb != QStringLiteral("export")) {
        return misuse(QStringLiteral("--person is for export alone"));
    }
    switch (verbs.indexOf(command.verb)) {
    case 0:
        return checkFile(command.files[0]);
    case 1:
        return backUp(command.files[0], command.files[1]);
    case 2:
        return restore(command.files[0], command.files[1]);
    case 3:
        return showBoard(command.files[0], command.at, clock);
    case 4:
        return checkRules(command.files);
    case 6:
        if (isBenchFile(command.files[0])) {
            return planBenchFile(command.files[0], command.effort.value_or(PlanEffort{}), command.at, command.problem,
                                 clock);
        }
        if (command.at || command.problem) {
            return misuse(QStringLiteral("--at and --problem are for a bench file"));
        }
        return planProblem(command.files[0], command.effort.value_or(PlanEffort{}));
    case 7:
        return findIn(command.files[0], joined(command.files));
    case 8:
        return exportFile(command.files[0], command.files[1], command.person, clock);
    case 9:
        return importFile(command.files[0], command.files[1]);
    case 10:
        return erasePerson(command.files[0], command.files[1], clock);
    case 11:
        return printPapers(command.files[0], command.files[1], command.files[2], command.sizes, clock);
    default:
        return makeDemo(command.files.empty() ? std::string() : command.files[0], command.fresh, clock);
    }
}

int say(const Answer& answer, bool json)
{
    const QByteArray words = json ? QJsonDocument(answer.data).toJson() : answer.text.toUtf8();
    // What was found is the answer, good or not; what could not be done is a complaint.
    const bool complains = !json && answer.data.contains(QStringLiteral("fault"));
    std::fwrite(words.constData(), 1, static_cast<std::size_t>(words.size()), complains ? stderr : stdout);
    const bool written = std::fflush(complains ? stderr : stdout) == 0;
    return static_cast<int>(written ? answer.ending : Ending::Otherwise);
}

int desk(const QStringList& arguments)
{
    QCommandLineParser parser;
    const QCommandLineOption json(QStringLiteral("json"));
    const QCommandLineOption help(QStringList{QStringLiteral("h"), QStringLiteral("help")});
    const QCommandLineOption version(QStringLiteral("version"));
    const QCommandLineOption at(QStringLiteral("at"), {}, QStringLiteral("TIME"));
    const QCommandLineOption fresh(QStringLiteral("fresh"));
    const QCommandLineOption seconds(QStringLiteral("seconds"), {}, QStringLiteral("S"));
    const QCommandLineOption seed(QStringLiteral("seed"), {}, QStringLiteral("N"));
    const QCommandLineOption person(QStringLiteral("person"), {}, QStringLiteral("PERSON"));
    const QCommandLineOption letter(QStringLiteral("letter"));
    const QCommandLineOption label(QStringLiteral("label"), {}, QStringLiteral("SIZE"));
    const QCommandLineOption problem(QStringLiteral("problem"));
    parser.addOptions({json, help, version, at, fresh, label, letter, problem, seconds, seed, person});
    const bool understood = parser.parse(arguments);
    if (!understood) {
        return say(misuse(parser.errorText()), arguments.contains(QStringLiteral("--json")));
    }
    if (parser.isSet(help)) {
        std::fputs(usage, stdout);
        return 0;
    }
    if (parser.isSet(version)) {
        std::fputs("mendbench-desk " MEND_VERSION "\n", stdout);
        return 0;
    }
    Command command;
    command.json = parser.isSet(json);
    command.fresh = parser.isSet(fresh);
    command.sized = parser.isSet(letter) || parser.isSet(label);
    command.sizes.sheet = parser.isSet(letter) ? papers::Sheet::Letter : papers::Sheet::A4;
    command.problem = parser.isSet(problem);
    command.person = parser.value(person).toStdString();
    QStringList words = parser.positionalArguments();
    command.verb = words.isEmpty() ? QString() : words.takeFirst();
    for (const QString& word : std::as_const(words)) {
        command.files.push_back(word.toStdString());
    }
    if (parser.isSet(label)) {
        const auto told = papers::labelOf(parser.value(label));
        if (!told) {
            return say(misuse(QStringLiteral("--label is one of 50x20, 62x29, 100x50")), command.json);
        }
        command.sizes.label = *told;
    }
    if (parser.isSet(at)) {
        command.at = timeFrom(parser.value(at));
        if (!command.at) {
            return say(misuse(QStringLiteral("\"%1\" is no time like 2026-03-08T13:42:05Z").arg(parser.value(at))),
                       command.json);
        }
    }
    if (parser.isSet(seconds) || parser.isSet(seed)) {
        command.effort = effortFrom(parser.isSet(seconds) ? parser.value(seconds) : QString(),
                                    parser.isSet(seed) ? parser.value(seed) : QString());
        if (!command.effort) {
            return say(misuse(QStringLiteral("--seconds is from 0 to 86400, --seed a whole number")), command.json);
        }
    }
    const service::SystemClock clock;
    return say(run(command, clock), command.json);
}

} // namespace

} // namespace mend::desk

int main(int argc, char** argv)
{
    // Papers are drawn, and faces need more than the core; nothing else waits for that.
    if (std::any_of(argv, argv + argc, [](const char* word) { return std::string_view(word) == "papers"; })) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        const QGuiApplication program(argc, argv);
        return mend::desk::desk(QCoreApplication::arguments());
    }
    const QCoreApplication program(argc, argv);
    return mend::desk::desk(QCoreApplication::arguments());
}
