#pragma once

#include "core/bench/state.h"
#include "core/service/ruleshelf.h"
#include "core/service/studio.h"
#include "core/store/store.h"

#include <filesystem>
#include <functional>
#include <vector>

namespace mend::service {

/// An invented studio in the middle of its afternoon, whatever the hour: what a newcomer is shown.
struct DemoBench {
    Studio studio;
    bench::Roster roster; ///< with its open hours
    std::vector<bench::Event> events;
    Instant now; ///< the moment it stands at
};

/// A photo of one of its pieces, with what is told of it.
struct DemoPhoto {
    store::Bytes working;
    store::Bytes thumbnail;
    store::NotedPhoto noted; ///< its hash is filled in when it is written
};
/// Draws them; the core cannot.
using DrawPhotos = std::function<std::vector<DemoPhoto>(const bench::Roster& roster, Instant now)>;

/// How long after opening the demo its first alert sounds.
constexpr Span demoFirstAlert = std::chrono::seconds(60);

/// Eight pieces of six owners over all five procedures, as they stand at `now`: a fill to be wiped
/// back whose first alert comes in a minute, gold to be dusted, a cure that stalls in the cold, work that
/// is forbidden while pads dry, a mix running out, a piece in the cabinet, and others that wait. Every
/// time is found by asking the rules. NotFound where the book lacks a procedure that it shows.
Result<DemoBench> demoBench(const rules::RuleBook& book, const Moment& now, const QTimeZone& zone);

/// Writes it to a new file, with the three years behind it (see demopast.h).
Outcome writeDemo(const DemoBench& demo, const rules::RuleBook& book, const std::filesystem::path& file,
                  const DrawPhotos& draw = {});

/// The demo's own file, in the person's data folder.
std::filesystem::path demoFile();

/// Makes the demo file where it is absent, older than four hours, or `fresh` is asked for; else leaves it
/// as it is. Conflict: the file there is not a demo. Locked: it is open in another program.
Outcome prepareDemo(const std::filesystem::path& file, const rules::RuleBook& book, const Moment& now,
                    const QTimeZone& zone, bool fresh, const DrawPhotos& draw = {});

} // namespace mend::service
