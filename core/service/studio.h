#pragma once

#include "core/base/id.h"
#include "core/base/time.h"
#include "core/record/hours.h"

#include <QTimeZone>

#include <map>
#include <string>
#include <vector>

namespace mend::service {

/// What a studio has told of itself: its name, where it is, when its bench is staffed, how it
/// likes its figures. Kept as settings in the bench file.
struct Studio {
    std::string name;
    std::string zone; ///< IANA name, "Europe/Vienna"; empty: this machine's
    record::Hours hours;
    std::map<PersonId, record::Hours> ownHours; ///< of people who are not there whenever the bench is
    bool fahrenheit = false;
    bool inches = false;
    std::string language; ///< BCP 47; empty: this machine's
    bool operator==(const Studio&) const = default;

    /// The zone to reckon in: UTC where the machine does not know the one that was told.
    QTimeZone timeZone() const;
};

/// From the settings of a bench file. What is missing or makes no sense is as if it had not been told.
Studio studioOf(const std::map<std::string, std::string>& settings);
/// The settings that say the same.
std::map<std::string, std::string> settingsOf(const Studio& studio);

/// When the bench is staffed from two weeks before `now` to ten weeks after it: as far as anything that
/// is shown or asked about reaches. Empty where no hours were told.
std::vector<InstantRange> openHoursOf(const Studio& studio, Instant now);

} // namespace mend::service
