#include "tests/day/script.h"

#include <QFile>
#include <algorithm>
#include <iterator>
#include <optional>

namespace mend::test {

namespace {

/// "13:04:10" as a span.
std::optional<Span> spanFrom(const QString& text)
{
    const QStringList parts = text.split(QLatin1Char(':'));
    if (parts.size() != 3) {
        return std::nullopt;
    }
    return std::chrono::hours(parts[0].toInt()) + std::chrono::minutes(parts[1].toInt()) +
           std::chrono::seconds(parts[2].toInt());
}

QStringList listed(const QString& text, const QString& between)
{
    QStringList parts = text.split(between, Qt::SkipEmptyParts);
    for (QString& part : parts) {
        part = part.trimmed();
    }
    return parts;
}

/// What is done at a place of the house or a piece, once the time is off the line.
bool readDeed(const QString& where, const QString& deed, Line& line)
{
    line.where = where;
    if (where == QLatin1String("power")) {
        const auto lasts = deed.startsWith(QLatin1String("cut for ")) ? spanFrom(deed.mid(8)) : std::nullopt;
        line.kind = Line::Kind::PowerCut;
        line.lasts = lasts.value_or(Span{0});
        return lasts.has_value();
    }
    if (where == QLatin1String("sound")) {
        const bool dies = deed == QLatin1String("dies");
        line.kind = dies ? Line::Kind::SoundDies : Line::Kind::SoundComesBack;
        return dies || deed == QLatin1String("comes back");
    }
    if (deed.startsWith(QLatin1String("reads "))) {
        line.kind = Line::Kind::Reading;
        line.taps = listed(deed.mid(6), QStringLiteral(" "));
        return !line.taps.isEmpty();
    }
    for (const auto& [begin, kind] : {std::pair("is heard ", Line::Kind::Heard), {"is seen ", Line::Kind::Seen}}) {
        if (deed.startsWith(QLatin1String(begin))) {
            line.kind = kind;
            line.window = deed.section(QLatin1Char(' '), 2);
            return !line.window.isEmpty();
        }
    }
    line.taps = listed(deed, QStringLiteral(" > "));
    return !line.taps.isEmpty();
}

std::optional<Line> lineFrom(const QString& text, Instant midnight)
{
    Line line;
    line.text = text;
    const auto time = spanFrom(text.section(QLatin1Char(' '), 0, 0));
    const QString rest = text.section(QLatin1Char(' '), 1).trimmed();
    const QString told = rest.section(QStringLiteral(" => "), 0, 0);
    line.record = listed(rest.section(QStringLiteral(" => "), 1), QStringLiteral(", "));
    const qsizetype colon = told.indexOf(QLatin1String(": "));
    if (!time || colon <= 0 || !readDeed(told.left(colon), told.mid(colon + 2).trimmed(), line)) {
        return std::nullopt;
    }
    line.at = midnight + *time;
    return line;
}

} // namespace

std::vector<Line> Script::of(Line::Kind kind) const
{
    std::vector<Line> found;
    std::ranges::copy_if(lines, std::back_inserter(found), [kind](const Line& line) { return line.kind == kind; });
    return found;
}

Script readScript(const QString& path)
{
    Script script;
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        script.faults << QStringLiteral("%1 cannot be read").arg(path);
        return script;
    }
    int number = 0;
    while (!file.atEnd()) {
        const QString text = QString::fromUtf8(file.readLine()).trimmed();
        ++number;
        if (text.isEmpty() || text.startsWith(QLatin1Char('#'))) {
            continue;
        }
        if (text.startsWith(QLatin1String("begins "))) {
            script.begins = fromRfc3339(text.mid(7).toStdString()).value_or(Instant{});
            continue;
        }
        auto line = lineFrom(text, std::chrono::floor<std::chrono::days>(script.begins));
        const bool inOrder = line && (script.lines.empty() || script.lines.back().at <= line->at);
        if (!inOrder || script.begins == Instant{}) {
            script.faults << QStringLiteral("line %1: %2").arg(number).arg(text);
            continue;
        }
        script.lines.push_back(*line);
    }
    return script;
}

} // namespace mend::test
