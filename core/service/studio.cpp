#include "core/service/studio.h"

#include "core/service/openhours.h"

#include <QByteArray>

namespace mend::service {

namespace {

constexpr auto nameKey = "studio.name";
constexpr auto zoneKey = "studio.zone";
constexpr auto hoursKey = "studio.hours";
constexpr auto fahrenheitKey = "units.fahrenheit";
constexpr auto inchesKey = "units.inches";
constexpr auto languageKey = "language";

constexpr std::chrono::weeks hoursBack{2};
constexpr std::chrono::weeks hoursAhead{10};

std::string valueOf(const std::map<std::string, std::string>& settings, const char* key)
{
    const auto found = settings.find(key);
    return found == settings.end() ? std::string() : found->second;
}

std::string yesOrNo(bool yes) { return yes ? "yes" : "no"; }

} // namespace

QTimeZone Studio::timeZone() const
{
    if (zone.empty()) {
        return QTimeZone::systemTimeZone();
    }
    const QTimeZone told(QByteArray::fromStdString(zone));
    return told.isValid() ? told : QTimeZone::utc();
}

Studio studioOf(const std::map<std::string, std::string>& settings)
{
    Studio studio;
    studio.name = valueOf(settings, nameKey);
    studio.zone = valueOf(settings, zoneKey);
    studio.hours = record::hoursFromText(valueOf(settings, hoursKey)).value_or(record::Hours{});
    studio.fahrenheit = valueOf(settings, fahrenheitKey) == "yes";
    studio.inches = valueOf(settings, inchesKey) == "yes";
    studio.language = valueOf(settings, languageKey);
    return studio;
}

std::map<std::string, std::string> settingsOf(const Studio& studio)
{
    return {{nameKey, studio.name},
            {zoneKey, studio.zone},
            {hoursKey, record::hoursText(studio.hours)},
            {fahrenheitKey, yesOrNo(studio.fahrenheit)},
            {inchesKey, yesOrNo(studio.inches)},
            {languageKey, studio.language}};
}

std::vector<InstantRange> openHoursOf(const Studio& studio, Instant now)
{
    if (!studio.hours.isTold()) {
        return {};
    }
    return openHours(studio.hours, studio.timeZone(), now - hoursBack, now + hoursAhead);
}

} // namespace mend::service
