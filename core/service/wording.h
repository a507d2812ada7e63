#pragma once

#include "core/base/time.h"
#include "core/base/units.h"
#include "core/rules/stage.h"

#include <QLocale>
#include <QString>
#include <QTimeZone>

#include <optional>
#include <string>

namespace mend::service {

/// How this studio likes its figures said: its time zone, its language, Celsius or Fahrenheit.
struct Manner {
    QTimeZone zone = QTimeZone::utc();
    QLocale locale = QLocale(QLocale::English);
    bool fahrenheit = false;
    bool inches = false;
};

/// The digits that count: `2:12` under an hour, `1 h 02` under a day, `3 d 4 h` above.
/// Rounded down, so that a figure never promises more than there is; 0:00 below nothing.
QString countDigits(Span left);
/// The same for a wait, rounded up: nothing is ready before its digits say so.
QString waitDigits(Span left);
/// True where `countDigits` shows seconds, so that somebody has to look again in a second.
bool countsSeconds(Span left);

/// A stretch of time in words: "40 s", "12 min", "1 h 30", "2 days 4 h". Rounded to its last unit.
QString spanWords(Span span);
/// "about 1 h 10 to 1 h 35"; a range that reads the same at both ends is said once, without "about".
QString rangeWords(Span least, Span most);
/// How old something is: "now", "4 min ago", "3 days ago".
QString agoWords(Span age);

/// A time of day where the studio is: "13:44"; with the day's name where it is another day
/// within the week ("Thu 13:44"), with the date beyond ("28 Nov 13:44").
QString clockTime(Instant at, Instant now, const Manner& manner);
/// "13:44" whatever the day.
QString timeOfDay(Instant at, const Manner& manner);

QString temperatureWords(Temperature temperature, const Manner& manner); ///< "26.4 °C"
QString humidityWords(Humidity humidity, const Manner& manner);          ///< "41 %"

/// What a missed close costs: "a miss costs an afternoon"; empty where it costs nothing.
QString missWords(rules::Miss miss);

/// A piece number as it is written on the tag: "2604175" becomes "260417-5".
QString numberWords(const std::string& number);

/// The words of a list, joined the way a line on a card is: "a · b".
QString joined(const QStringList& words);
/// A person's or piece's own name inside a sentence: kept together where it runs the other way than the language that
/// is spoken (the direction of QLocale's default).
QString isolated(const QString& name);

QString text(const std::string& utf8);

} // namespace mend::service
