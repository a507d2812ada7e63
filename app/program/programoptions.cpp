#include "app/program/programoptions.h"

#include <QCommandLineParser>

namespace mend::app {

namespace {
/// In English: a command line is read by scripts too, and before any language is chosen.
QString sayOption(const char* words) { return QString::fromUtf8(words); }
} // namespace

ReadOptions readOptions(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(sayOption("A bench assistant for people who mend broken pottery."));
    const QCommandLineOption help({QStringLiteral("h"), QStringLiteral("help")}, sayOption("Say this and end."));
    const QCommandLineOption demo(QStringLiteral("demo"), sayOption("Open the demo bench: an invented studio."));
    const QCommandLineOption fresh(QStringLiteral("fresh"), sayOption("Make the demo bench anew."));
    const QCommandLineOption picture(QStringLiteral("picture"), sayOption("Write a picture of the Bench and end."),
                                     sayOption("FILE"));
    const QCommandLineOption print(QStringLiteral("print"), sayOption("Print the cards and alerts and end."));
    const QCommandLineOption theme(QStringLiteral("theme"), sayOption("light, dark or contrast."), sayOption("THEME"));
    const QCommandLineOption scale(QStringLiteral("scale"), sayOption("1 is the usual size, 1.5 half as large again."),
                                   sayOption("FACTOR"));
    const QCommandLineOption size(QStringLiteral("size"), sayOption("Size of the window, such as 1280x800."),
                                  sayOption("SIZE"));
    const QCommandLineOption language(QStringLiteral("language"),
                                      sayOption("The language for this once, such as de, or a .qm file to try."),
                                      sayOption("LANGUAGE"));
    const QCommandLineOption because(
        QStringLiteral("because"),
        sayOption("Why a bench that is open with something running out may be left for this file."),
        sayOption("WORDS"));
    const QCommandLineOption measure(QStringLiteral("measure-start"),
                                     sayOption("End once the Bench is painted and say how long that took."));
    QCommandLineOption sayActs(QStringLiteral("say-acts"), sayOption("Tell what can be tapped where, for trials."));
    sayActs.setFlags(QCommandLineOption::HiddenFromHelp); // of no use at a bench
    parser.addOptions({help, demo, fresh, picture, print, theme, scale, size, language, because, measure, sayActs});
    parser.addPositionalArgument(QStringLiteral("file"), sayOption("The bench file to open."), sayOption("[FILE]"));

    ReadOptions read;
    if (!parser.parse(arguments)) {
        read.end = EarlyEnd{parser.errorText() + QLatin1Char('\n'), 2};
        return read;
    }
    if (parser.isSet(help)) {
        read.end = EarlyEnd{parser.helpText(), 0};
        return read;
    }
    ProgramOptions& options = read.options;
    options.file = parser.positionalArguments().value(0);
    options.demo = parser.isSet(demo) || parser.isSet(fresh);
    options.fresh = parser.isSet(fresh);
    options.picture = parser.value(picture);
    options.print = parser.isSet(print);
    options.theme = parser.value(theme);
    options.size = parser.value(size);
    options.language = parser.value(language);
    options.because = parser.value(because);
    options.measureStart = parser.isSet(measure);
    options.sayActs = parser.isSet(sayActs);
    if (parser.isSet(scale)) {
        bool isNumber = false;
        options.scale = parser.value(scale).toDouble(&isNumber);
        if (!isNumber || options.scale < 0.5 || options.scale > 3.0) {
            read.end = EarlyEnd{sayOption("--scale takes a number from 0.5 to 3, such as 1.5.\n"), 2};
        }
    }
    const bool knownTheme = options.theme.isEmpty() || options.theme == QLatin1String("light") ||
                            options.theme == QLatin1String("dark") || options.theme == QLatin1String("contrast");
    if (!knownTheme) {
        read.end = EarlyEnd{sayOption("--theme takes light, dark or contrast.\n"), 2};
    }
    if (options.demo && !options.file.isEmpty()) {
        read.end = EarlyEnd{sayOption("Give a bench file or --demo, not both.\n"), 2};
    }
    return read;
}

} // namespace mend::app
