#include "app/parts/measure.h"

#include <QScreen>

#include <cmath>

namespace mend::parts {

namespace {
constexpr double leastBelievable = 70.0;
constexpr double mostBelievable = 350.0;
constexpr double usual = 96.0;
} // namespace

Measure::Measure(double physicalDpi, double scale)
    : m_dpi((physicalDpi >= leastBelievable && physicalDpi <= mostBelievable ? physicalDpi : usual) * scale),
      m_scale(scale)
{
}

Measure Measure::ofScreen(const QScreen* screen, double scale)
{
    return Measure(screen ? screen->physicalDotsPerInch() : usual, scale);
}

int Measure::px(double unitsAt96) const
{
    const int rounded = static_cast<int>(std::lround(exact(unitsAt96)));
    return unitsAt96 > 0.0 ? std::max(1, rounded) : rounded;
}

int Measure::mm(double millimetres) const { return static_cast<int>(std::ceil(millimetres * m_dpi / 25.4 - 1e-9)); }

} // namespace mend::parts
