#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>

namespace mend::papers {

/// A QR code (ISO/IEC 18004, level Q) that a hand scanner or a phone reads back as exactly this text.
class QrMark {
public:
    /// `text`: up to 16 digits and capital letters make the smallest symbol. No code where it holds
    /// none of those, or too many for any symbol.
    explicit QrMark(const QString& text);

    bool isEmpty() const { return m_side == 0; }
    /// Modules along one side, the four free ones at each edge (the quiet zone) counted in.
    int side() const { return m_side; }
    bool isDark(int column, int row) const;

    /// Black modules on what is there already; the quiet zone lies inside `place`.
    void draw(QPainter& painter, const QRectF& place) const;

private:
    int m_side = 0;
    std::vector<bool> m_dark;
};

} // namespace mend::papers
