#include "tests/language/escaped.h"

#include <QCoreApplication>
#include <QDirIterator>
#include <QFile>
#include <QLocale>
#include <QRegularExpression>

#include <algorithm>

namespace mend::app {

namespace {

/// Every text in quotes of a file, but no key: the samples of the tests and the rules as they are shipped.
void addQuoted(QStringList& phrases, const QString& name)
{
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly)) {
        phrases << QString(); // noticed by whoever counts on it
        return;
    }
    static const QRegularExpression quoted(QStringLiteral("\"((?:[^\"\\\\]|\\\\.)*)\"(\\s*:)?"));
    QStringList lines = QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'));
    // What a test expects to read is no sample.
    lines.removeIf([](const QString& line) { return line.contains(QStringLiteral("EXPECT")); });
    auto found = quoted.globalMatch(lines.join(QLatin1Char('\n')));
    while (found.hasNext()) {
        const auto match = found.next();
        const QString each = match.captured(1).replace(QStringLiteral("\\\""), QStringLiteral("\"")).simplified();
        const bool isKey =
            match.hasCaptured(2) || (!each.contains(QLatin1Char(' ')) && !each.isEmpty() && each.front().isLower());
        if (!isKey) {
            phrases << each << each.split(QStringLiteral(": ")); // what a hazard says is told apart there
        }
    }
}

QStringList gathered()
{
    // Names that the samples of the spaces are called by, and what no language changes.
    QStringList phrases{QStringLiteral("Mendbench"), QStringLiteral("English"), QStringLiteral("Deutsch"),
                        QStringLiteral("mendbench-desk"), QStringLiteral("Tideline Mending"), QStringLiteral("Ruta"),
                        QStringLiteral("Tomasz"), QStringLiteral("Odile Marsh"), QStringLiteral("Speakers"),
                        QStringLiteral("Headphones"), QStringLiteral("/home/ruta/bench/backups"),
                        QStringLiteral("kJ/mol"), QStringLiteral("EUR"), QStringLiteral("GBP"), QStringLiteral("lid"),
                        QStringLiteral("stand"), QStringLiteral("mendbench"), QStringLiteral("MB"),
                        QStringLiteral("kB"), QStringLiteral("AM"), QStringLiteral("PM"),
                        // what a service has said already when a space is given it
                        QStringLiteral("today"), QStringLiteral("Put in: Cabinet"), QStringLiteral("Hands on it"),
                        QStringLiteral("min left"), QStringLiteral("closed 42 min ago"),
                        QStringLiteral("no longer stands"), QStringLiteral("closes 13:44 instead of"),
                        QStringLiteral("Joins and fills toned to the body, nothing to be seen."),
                        QStringLiteral("Joins in fast adhesive, gaps filled, a lacquer line dusted with gold."),
                        QStringLiteral("Piet Aldous"), QStringLiteral("Heron bowl is handed over"),
                        QStringLiteral("Receipt at hand-over"),
                        // keys of cure laws and families of materials, which are looked up in the rule files
                        QStringLiteral("urushi"), QStringLiteral("solvent"), QStringLiteral("plaster"),
                        QStringLiteral("none"), QStringLiteral("epoxy"), QStringLiteral("lacquer"),
                        QStringLiteral("acetone")};
    const QString source = QStringLiteral(MEND_SOURCE_DIR);
    for (const char* file :
         {"/tests/app/samples.cpp", "/tests/app/details.h", "/tests/find/findspacetest.cpp",
          "/tests/intake/intakespacetest.cpp", "/resources/papers/texts.json", "/tests/piece/piecesample.cpp"}) {
        addQuoted(phrases, source + QLatin1String(file));
    }
    QDirIterator rules(source + QStringLiteral("/resources/rules"), {QStringLiteral("*.json")}, QDir::Files,
                       QDirIterator::Subdirectories);
    while (rules.hasNext()) {
        addQuoted(phrases, rules.next());
    }
    const QLocale names(QLocale::English);
    for (int day = 1; day <= 7; ++day) {
        phrases << names.dayName(day) << names.dayName(day, QLocale::ShortFormat);
    }
    for (int month = 1; month <= 12; ++month) {
        phrases << names.monthName(month) << names.monthName(month, QLocale::ShortFormat);
    }
    return phrases;
}

/// One pattern of all that may stand untranslated, the longest first: a sentence goes before a word of it.
const QRegularExpression& untranslated()
{
    static const QRegularExpression pattern = [] {
        QStringList phrases = gathered();
        phrases.removeDuplicates();
        static const QRegularExpression word(QStringLiteral("[A-Za-z]{2}"));
        phrases = phrases.filter(word);
        std::ranges::stable_sort(phrases, std::ranges::greater(), [](const QString& each) { return each.size(); });
        for (QString& each : phrases) {
            each = QRegularExpression::escape(each);
        }
        return QRegularExpression(QStringLiteral("(?<![A-Za-z])(?:%1)(?![A-Za-z])").arg(phrases.join(QLatin1Char('|'))),
                                  QRegularExpression::CaseInsensitiveOption);
    }();
    return pattern;
}

void look(QStringList& escaped, const QString& shown)
{
    static const QRegularExpression plain(QStringLiteral("[A-Za-z]{2,}"));
    static const QRegularExpression path(QStringLiteral("(?<!\\S)/\\S+"));
    QString rest = shown.simplified();
    rest.remove(untranslated()).remove(path);
    if (plain.match(rest).hasMatch()) {
        escaped << QStringLiteral("never translated: \"%1\" of \"%2\"").arg(rest.simplified(), shown.simplified());
    }
}

} // namespace

/// They put every text in brackets.
bool isTestLanguage() { return QCoreApplication::translate("Language", "English").startsWith(QLatin1Char('[')); }

QStringList escapedFrom(const parts::ActView& view)
{
    QStringList escaped;
    if (!isTestLanguage()) {
        return escaped;
    }
    for (const auto& part : view.shown()) {
        QStringList lines; // a sentence may go on in the next line
        for (const parts::Item& item : part.scene->items) {
            if (item.kind == parts::Item::Kind::Text) {
                lines << item.whole;
            }
        }
        look(escaped, lines.join(QLatin1Char(' ')));
    }
    for (const parts::Hit& hit : view.hits()) {
        look(escaped, hit.name);
        look(escaped, hit.more);
    }
    look(escaped, view.accessibleName());
    return escaped;
}

} // namespace mend::app
