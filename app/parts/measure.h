#pragma once

#include <QtGlobal>

class QScreen;

namespace mend::parts {

/// Turns millimetres of the real screen into pixels, so that a button is as wide as a gloved
/// thumb on every device. Sizes drawn "at 96 dpi" go through `px`, finger sizes through `mm`.
class Measure {
public:
    /// `physicalDpi` counts where it reads 70 to 350; else 96 is taken. `scale` is the person's
    /// own setting: 1.5 makes everything half as large again.
    explicit Measure(double physicalDpi = 96.0, double scale = 1.0);
    static Measure ofScreen(const QScreen* screen, double scale = 1.0);

    int px(double unitsAt96) const;   ///< rounded, at least 1 for anything above 0
    int mm(double millimetres) const; ///< rounded up: a least size is never undercut
    double exact(double unitsAt96) const { return unitsAt96 * m_dpi / 96.0; }
    double inMillimetres(double pixels) const { return pixels * 25.4 / m_dpi * m_scale; }
    double dpi() const { return m_dpi; }

    bool operator==(const Measure&) const = default;

private:
    double m_dpi;   ///< pixels of one inch as drawn, scale counted in
    double m_scale; ///< so that what is measured on the glass is in real millimetres
};

} // namespace mend::parts
