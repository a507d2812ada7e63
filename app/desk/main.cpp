#include "app/desk/verbs.h"

#include "core/service/systemclock.h"

#include <QCommandLineParser>
#include <QCoreApplication>
#include <QDateTime>
#include <QJsonDocument>

#include <cstdio>

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
                       "  mendbench-desk demo [FILE]          make the demo bench and say where it is\n"
                       "      --fresh                         anew, even if there is a young one\n"
                       "\n"
                       "  --json                              the answer as JSON\n"
                       "  --help                              this\n"
                       "  --version                           which version this is\n"
                       "\n"
                       "Ends with 0 where all is good, 2 where what was given is not, 1 otherwise.\n";

/// What was typed, as far as it makes sense.
struct Command {
    QString verb;
    std::vector<std::string> files;
    std::optional<Instant> at;
    bool fresh = false;
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
    if (command.verb == QStringLiteral("backup") || command.verb == QStringLiteral("restore")) {
        return count == 2;
    }
    if (command.verb == QStringLiteral("rules")) {
        return count > 0;
    }
    return command.verb == QStringLiteral("demo") ? count <= 1 : count == 1;
}

Answer run(const Command& command, const Clock& clock)
{
    static const QStringList verbs{QStringLiteral("check"), QStringLiteral("backup"), QStringLiteral("restore"),
                                   QStringLiteral("board"), QStringLiteral("rules"),  QStringLiteral("demo")};
    if (!verbs.contains(command.verb)) {
        return misuse(command.verb.isEmpty() ? QStringLiteral("nothing was asked")
                                             : QStringLiteral("\"%1\" cannot be asked").arg(command.verb));
    }
    if (!takesFiles(command)) {
        return misuse(QStringLiteral("%1 wants other files than these").arg(command.verb));
    }
    if (command.at && command.verb != QStringLiteral("board")) {
        return misuse(QStringLiteral("--at is for board alone"));
    }
    if (command.fresh && command.verb != QStringLiteral("demo")) {
        return misuse(QStringLiteral("--fresh is for demo alone"));
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
    parser.addOptions({json, help, version, at, fresh});
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
    QStringList words = parser.positionalArguments();
    command.verb = words.isEmpty() ? QString() : words.takeFirst();
    for (const QString& word : std::as_const(words)) {
        command.files.push_back(word.toStdString());
    }
    if (parser.isSet(at)) {
        command.at = timeFrom(parser.value(at));
        if (!command.at) {
            return say(misuse(QStringLiteral("\"%1\" is no time like 2026-03-08T13:42:05Z").arg(parser.value(at))),
                       command.json);
        }
    }
    const service::SystemClock clock;
    return say(run(command, clock), command.json);
}

} // namespace

} // namespace mend::desk

int main(int argc, char** argv)
{
    const QCoreApplication program(argc, argv);
    return mend::desk::desk(QCoreApplication::arguments());
}
