#include "app/desk/verbs.h"

#include "app/photos/demophotos.h"
#include "core/service/demobench.h"

#include <filesystem>

namespace mend::desk {

Answer makeDemo(const std::string& file, bool fresh, const Clock& clock)
{
    const std::filesystem::path path = file.empty() ? service::demoFile() : std::filesystem::path(file);
    const QString name = QString::fromStdString(path.string());
    const service::RuleShelf shelf(service::RuleShelf::usualFolders());
    if (!shelf.isUsable()) {
        return refusal({FaultKind::Unavailable, {}}, QStringLiteral("no rules came with this program"));
    }
    const Moment now = clock.now();
    const Outcome made =
        service::prepareDemo(path, shelf.book(), now, QTimeZone::systemTimeZone(), fresh, photos::drawDemoPhotos);
    if (!made) {
        return refusal(made.fault(), name);
    }
    return {Ending::Good, name + QLatin1Char('\n'), {{QStringLiteral("good"), true}, {QStringLiteral("file"), name}}};
}

} // namespace mend::desk
