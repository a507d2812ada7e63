#include "app/parts/linebreak.h"

#include <algorithm>

namespace mend::parts {

namespace {

/// How many letters of a word stand before a hyphen in that width; one at least.
qsizetype lettersWithin(const QString& word, Widths& widths, double width)
{
    qsizetype room = word.size() - 1;
    while (room > 1 && widths.of(word.left(room) + QLatin1Char('-')) > width) {
        --room;
    }
    return room;
}

} // namespace

QStringList brokenLines(const QString& words, Widths& widths, double width, int most)
{
    const QString all = words.simplified();
    if (most <= 1 || widths.of(all) <= width) {
        return all.isEmpty() ? QStringList() : QStringList{all};
    }
    QStringList lines;
    QString current;
    const QStringList parts = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const QString& part : parts) {
        const QString longer = current.isEmpty() ? part : current + QLatin1Char(' ') + part;
        const bool lastLine = lines.size() + 1 >= most;
        if (current.isEmpty() || lastLine || widths.of(longer) <= width) {
            current = longer;
        } else {
            lines << current;
            current = part;
        }
        while (lines.size() + 1 < most && !current.contains(QLatin1Char(' ')) && widths.of(current) > width) {
            const qsizetype room = lettersWithin(current, widths, width);
            lines << current.left(room) + QLatin1Char('-');
            current = current.mid(room);
        }
    }
    if (!current.isEmpty()) {
        lines << current;
    }
    return lines;
}

bool isWhole(const QStringList& lines, const QString& words, Widths& widths, double width)
{
    const bool allFit = std::ranges::all_of(lines, [&](const QString& each) { return widths.of(each) <= width + 0.5; });
    return allFit && lines.join(QLatin1Char(' ')) == words.simplified();
}

} // namespace mend::parts
