#include "core/service/wording.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace mend::service {

namespace {

using namespace std::chrono;

// What a translator finds these words under.
class Wording {
    Q_DECLARE_TR_FUNCTIONS(Wording)
};

QString twoDigits(qint64 number) { return QStringLiteral("%1").arg(number, 2, 10, QLatin1Char('0')); }

QString digitsOfSeconds(qint64 total)
{
    constexpr qint64 hour = 3600;
    constexpr qint64 day = 24 * hour;
    if (total < hour) {
        return QStringLiteral("%1:%2").arg(total / 60).arg(twoDigits(total % 60));
    }
    if (total < day) {
        return Wording::tr("%1 h %2").arg(total / hour).arg(twoDigits(total % hour / 60));
    }
    return Wording::tr("%1 d %2 h").arg(total / day).arg(total % day / hour);
}

QDateTime local(Instant at, const Manner& manner)
{
    return QDateTime::fromMSecsSinceEpoch(at.time_since_epoch().count(), manner.zone);
}

// How a language writes dates, in the letters of QLocale::toString.
class Formats {
    Q_DECLARE_TR_FUNCTIONS(Formats)
};

} // namespace

QString countDigits(Span left) { return digitsOfSeconds(std::max<qint64>(0, floor<seconds>(left).count())); }

QString waitDigits(Span left)
{
    const auto whole = std::max(seconds{0}, ceil<seconds>(left));
    if (whole >= hours{24}) {
        return digitsOfSeconds(duration_cast<seconds>(ceil<hours>(whole)).count());
    }
    if (whole >= hours{1}) {
        return digitsOfSeconds(duration_cast<seconds>(ceil<minutes>(whole)).count());
    }
    return digitsOfSeconds(whole.count());
}

bool countsSeconds(Span left) { return left < hours{1} && left > seconds{-1}; }

QString spanWords(Span span)
{
    if (span < minutes{1}) {
        return Wording::tr("%1 s").arg(std::max<qint64>(0, round<seconds>(span).count()));
    }
    const auto wholeMinutes = round<minutes>(span);
    if (wholeMinutes < hours{1}) {
        return Wording::tr("%1 min").arg(wholeMinutes.count());
    }
    if (wholeMinutes < hours{24}) {
        const auto rest = (wholeMinutes % hours{1}).count();
        const qint64 whole = floor<hours>(wholeMinutes).count();
        return rest == 0 ? Wording::tr("%1 h").arg(whole) : Wording::tr("%1 h %2").arg(whole).arg(twoDigits(rest));
    }
    const auto wholeHours = round<hours>(span);
    const qint64 wholeDays = wholeHours / hours{24};
    const auto rest = (wholeHours % hours{24}).count();
    const QString dayWords =
        wholeDays == 1 ? Wording::tr("1 day") : Wording::tr("%n days", nullptr, static_cast<int>(wholeDays));
    return rest == 0 ? dayWords : Wording::tr("%1 %2 h").arg(dayWords).arg(rest);
}

QString rangeWords(Span least, Span most)
{
    const QString from = spanWords(least);
    const QString to = spanWords(most);
    return from == to ? from : Wording::tr("about %1 to %2").arg(from, to);
}

QString agoWords(Span age)
{
    return age < minutes{1} ? Wording::tr("just now") : Wording::tr("%1 ago").arg(spanWords(age));
}

QString timeOfDay(Instant at, const Manner& manner)
{
    return local(at, manner).time().toString(QStringLiteral("HH:mm"));
}

QString clockTime(Instant at, Instant now, const Manner& manner)
{
    const QDateTime then = local(at, manner);
    const qint64 apart = local(now, manner).date().daysTo(then.date());
    const QString time = then.time().toString(QStringLiteral("HH:mm"));
    if (apart == 0) {
        return time;
    }
    if (std::abs(apart) < 7) {
        return Wording::tr("%1 %2").arg(manner.locale.dayName(then.date().dayOfWeek(), QLocale::ShortFormat), time);
    }
    return Wording::tr("%1 %2").arg(manner.locale.toString(then.date(), Formats::tr("d MMM")), time);
}

QString temperatureWords(Temperature temperature, const Manner& manner)
{
    const double shown = manner.fahrenheit ? temperature.fahrenheit() : temperature.celsius();
    const QString number = manner.locale.toString(shown, 'f', manner.fahrenheit ? 0 : 1);
    return manner.fahrenheit ? Wording::tr("%1 °F").arg(number) : Wording::tr("%1 °C").arg(number);
}

QString humidityWords(Humidity humidity, const Manner& manner)
{
    return Wording::tr("%1 %").arg(manner.locale.toString(std::lround(inPercent(humidity))));
}

QString missWords(rules::Miss miss)
{
    switch (miss) {
    case rules::Miss::Nothing:
        return {};
    case rules::Miss::Minutes:
        return Wording::tr("a miss costs minutes");
    case rules::Miss::FreshMix:
        return Wording::tr("a miss costs a fresh mix");
    case rules::Miss::Afternoon:
        return Wording::tr("a miss costs an afternoon");
    case rules::Miss::Day:
        return Wording::tr("a miss costs a day");
    case rules::Miss::Piece:
        return Wording::tr("a miss costs the piece");
    }
    return {};
}

QString numberWords(const std::string& number)
{
    QString words = text(number);
    if (words.size() == 7 && !words.contains(QLatin1Char('-'))) {
        words.insert(6, QLatin1Char('-'));
    }
    return words;
}

QString joined(const QStringList& words)
{
    QStringList kept = words;
    kept.removeAll(QString());
    return kept.join(QStringLiteral(" · "));
}

QString isolated(const QString& name)
{
    // Unicode Bidirectional Algorithm (UAX #9): first strong isolate, pop directional isolate.
    const bool turns = name.isRightToLeft() != (QLocale().textDirection() == Qt::RightToLeft);
    return turns ? QChar(0x2068) + name + QChar(0x2069) : name;
}

QString text(const std::string& utf8) { return QString::fromStdString(utf8); }

} // namespace mend::service
