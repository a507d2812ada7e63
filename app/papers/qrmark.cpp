#include "app/papers/qrmark.h"

#include <algorithm>
#include <memory>
#include <qrencode.h>

namespace mend::papers {

namespace {

constexpr int quietZone = 4; // modules, ISO/IEC 18004

} // namespace

QrMark::QrMark(const QString& text)
{
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeString(text.toLatin1().constData(), 0, QR_ECLEVEL_Q, QR_MODE_8, 1), &QRcode_free);
    if (!code) {
        return;
    }
    const int width = code->width;
    m_side = width + 2 * quietZone;
    m_dark.assign(static_cast<std::size_t>(m_side) * static_cast<std::size_t>(m_side), false);
    for (int row = 0; row < width; ++row) {
        for (int column = 0; column < width; ++column) {
            const bool dark = (code->data[row * width + column] & 1U) != 0; // its lowest bit
            m_dark[static_cast<std::size_t>((row + quietZone) * m_side + column + quietZone)] = dark;
        }
    }
}

bool QrMark::isDark(int column, int row) const { return m_dark[static_cast<std::size_t>(row * m_side + column)]; }

void QrMark::draw(QPainter& painter, const QRectF& place) const
{
    if (isEmpty()) {
        return;
    }
    const double module = std::min(place.width(), place.height()) / m_side;
    for (int row = 0; row < m_side; ++row) {
        for (int column = 0; column < m_side; ++column) {
            int run = 0; // modules side by side are one bar, so that no hairline parts them
            while (column + run < m_side && isDark(column + run, row)) {
                ++run;
            }
            if (run > 0) {
                painter.fillRect(QRectF(place.x() + column * module, place.y() + row * module, run * module, module),
                                 Qt::black);
                column += run;
            }
        }
    }
}

} // namespace mend::papers
