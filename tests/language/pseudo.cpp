#include <QCoreApplication>
#include <QFile>
#include <QTextStream>
#include <QXmlStreamReader>
#include <QXmlStreamWriter>
#include <cstdio>

// Makes a language of the tests out of the words that were collected: every letter is another, so that one that was
// never passed through a translation is known by being a plain one; each text 40 % longer, its ends in brackets, so
// that what is cut is seen. "en_XA" wears accents, "he_XB" runs from right to left.

namespace {

QString plain() { return QStringLiteral("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"); }
QString accented() { return QStringLiteral("ÀƁÇĐÉƑĜĤÎĴĶĹṀÑÖƤɊŔŠŢÛṼŴẊÝŽàƀçđéƒĝĥîĵķĺṁñöƥɋŕšţûṽŵẋýž"); }
QString hebrew() { return QStringLiteral("אבגדהוזחטיכלמנסעפצקרשתםןףךאבגדהוזחטיכלמנסעפצקרשתםןףך"); }
constexpr double longer = 0.4;

/// A place for a value stays as it is: %1, %L2, %n.
int placeAt(const QString& words, int at)
{
    if (words[at] != QLatin1Char('%') || at + 1 >= words.size()) {
        return 0;
    }
    const QChar next = words[at + 1];
    const bool isLocal = next == QLatin1Char('L') && at + 2 < words.size() && words[at + 2].isDigit();
    return isLocal ? 3 : next.isDigit() || next == QLatin1Char('n') ? 2 : 0;
}

QString pseudo(const QString& words, const QString& letters)
{
    QString said;
    int letterCount = 0;
    for (int at = 0; at < words.size(); ++at) {
        if (const int place = placeAt(words, at); place > 0) {
            said += words.mid(at, place);
            at += place - 1;
            continue;
        }
        const auto letter = plain().indexOf(words[at]);
        letterCount += letter < 0 ? 0 : 1;
        said += letter < 0 ? words[at] : letters[letter];
    }
    if (letterCount == 0) {
        return said; // a figure with its sign, "%1: %2": nothing there grows
    }
    const int more = static_cast<int>(letterCount * longer + 0.5);
    return QLatin1Char('[') + said + QString(more, letters[plain().indexOf(QLatin1Char('o'))]) + QLatin1Char(']');
}

void copy(QXmlStreamReader& from, QXmlStreamWriter& to, const QString& language, const QString& letters)
{
    QString source;
    QString context;
    while (!from.atEnd()) {
        from.readNext();
        if (from.isStartElement() && from.name() == QLatin1String("source")) {
            source = from.readElementText();
            to.writeTextElement(QStringLiteral("source"), source);
        } else if (from.isStartElement() && from.name() == QLatin1String("translation")) {
            to.writeStartElement(QStringLiteral("translation"));
            bool isCounted = false;
            while (from.readNextStartElement()) { // forms of a plural
                from.skipCurrentElement();
                isCounted = true;
            }
            for (int form = 0; isCounted && form < 2; ++form) {
                to.writeTextElement(QStringLiteral("numerusform"), pseudo(source, letters));
            }
            if (!isCounted) {
                const bool isWritten = context == QLatin1String("Formats"); // for QLocale, not for a reader
                to.writeCharacters(isWritten ? source : pseudo(source, letters));
            }
            to.writeEndElement();
        } else if (from.isStartElement() && from.name() == QLatin1String("name")) {
            context = from.readElementText();
            to.writeTextElement(QStringLiteral("name"), context);
        } else if (from.isStartElement() && from.name() == QLatin1String("TS")) {
            to.writeStartElement(QStringLiteral("TS"));
            to.writeAttribute(QStringLiteral("version"), QStringLiteral("2.1"));
            to.writeAttribute(QStringLiteral("language"), language);
        } else if (!from.isDTD()) {
            to.writeCurrentToken(from);
        }
    }
}

} // namespace

int main(int argc, char** argv)
{
    if (argc != 4) {
        std::fputs("pseudo LANGUAGE FROM.ts TO.ts\n", stderr);
        return 2;
    }
    const QString language = QString::fromLocal8Bit(argv[1]);
    QFile from(QString::fromLocal8Bit(argv[2]));
    QFile to(QString::fromLocal8Bit(argv[3]));
    if (!from.open(QIODevice::ReadOnly) || !to.open(QIODevice::WriteOnly)) {
        std::fprintf(stderr, "%s or %s cannot be opened\n", argv[2], argv[3]);
        return 1;
    }
    QXmlStreamReader reader(&from);
    QXmlStreamWriter writer(&to);
    copy(reader, writer, language, language.startsWith(QLatin1String("he")) ? hebrew() : accented());
    return reader.hasError() ? 1 : 0;
}
