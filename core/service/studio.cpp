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
constexpr auto ownHoursPrefix = "person.hours."; ///< and the person's number

constexpr std::chrono::weeks hoursBack{2};
constexpr std::chrono::weeks hoursAhead{10};

std::string valueOf(const std::map<std::string, std::string>& settings, const char* key)
{
    const auto found = settings.find(key);
    return found == settings.end() ? std::string() : found->second;
}

std::map<PersonId, record::Hours> ownHoursOf(const std::map<std::string, std::string>& settings)
{
    std::map<PersonId, record::Hours> all;
    const std::string prefix = ownHoursPrefix;
    for (auto at = settings.lower_bound(prefix); at != settings.end() && at->first.starts_with(prefix); ++at) {
        bool read = false;
        const qint64 id = QByteArray::fromStdString(at->first.substr(prefix.size())).toLongLong(&read);
        const auto hours = record::hoursFromText(at->second);
        if (read && id > 0 && hours && hours->isTold()) {
            all[PersonId(id)] = *hours;
        }
    }
    return all;
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
    studio.ownHours = ownHoursOf(settings);
    return studio;
}

std::map<std::string, std::string> settingsOf(const Studio& studio)
{
    std::map<std::string, std::string> settings{{nameKey, studio.name},
                                                {zoneKey, studio.zone},
                                                {hoursKey, record::hoursText(studio.hours)},
                                                {fahrenheitKey, yesOrNo(studio.fahrenheit)},
                                                {inchesKey, yesOrNo(studio.inches)},
                                                {languageKey, studio.language}};
    for (const auto& [person, hours] : studio.ownHours) { // told back to none: an empty text, which is no hours
        settings[ownHoursPrefix + std::to_string(person.value())] = record::hoursText(hours);
    }
    return settings;
}

std::vector<InstantRange> openHoursOf(const Studio& studio, Instant now)
{
    if (!studio.hours.isTold()) {
        return {};
    }
    return openHours(studio.hours, studio.timeZone(), now - hoursBack, now + hoursAhead);
}

} // namespace mend::service
