#include "app/parts/linebreak.h"

#include <algorithm>

namespace mend::parts {

QStringList brokenLines(const QString& words, const QFontMetricsF& metrics, double width, int most)
{
    QStringList lines;
    QString current;
    const QStringList parts = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const QString& part : parts) {
        const QString longer = current.isEmpty() ? part : current + QLatin1Char(' ') + part;
        const bool lastLine = lines.size() + 1 >= most;
        if (current.isEmpty() || lastLine || metrics.horizontalAdvance(longer) <= width) {
            current = longer;
        } else {
            lines << current;
            current = part;
        }
    }
    if (!current.isEmpty()) {
        lines << current;
    }
    return lines;
}

bool isWhole(const QStringList& lines, const QString& words, const QFontMetricsF& metrics, double width)
{
    const bool allFit =
        std::ranges::all_of(lines, [&](const QString& each) { return metrics.horizontalAdvance(each) <= width + 0.5; });
    return allFit && lines.join(QLatin1Char(' ')) == words.simplified();
}

} // namespace mend::parts
