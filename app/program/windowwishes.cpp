#include "app/program/windowwishes.h"

#include "app/program/filed.h"

#include <QStringList>

namespace mend::app {

LookSettings lookOf(const ProgramOptions& options, const QSettings& settings)
{
    LookSettings look = lookSettings(wishedLook(settings));
    if (options.theme == QLatin1String("dark")) {
        look.theme = parts::Theme::Dark;
    } else if (options.theme == QLatin1String("contrast")) {
        look.theme = parts::Theme::HighContrast;
    }
    if (options.theme == QLatin1String("light")) {
        look.theme = parts::Theme::Light;
    }
    if (options.scale > 0) {
        look.scale = options.scale;
    }
    return look;
}

QSize sizeOf(const ProgramOptions& options)
{
    const QStringList sides = options.size.split(QLatin1Char('x'));
    const QSize asked(sides.value(0).toInt(), sides.value(1).toInt());
    if (asked.width() >= 320 && asked.height() >= 200) {
        return asked;
    }
    return {1280, 800};
}

} // namespace mend::app
