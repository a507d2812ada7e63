#pragma once

#include "app/parts/look.h"

#include <QImage>
#include <QPolygonF>
#include <QWidget>

#include <vector>

namespace mend::parts {

/// Where somebody signs with a finger, a pen or the mouse. There is no way to sign by keys: whoever cannot draw
/// signs on paper, and the page that holds this offers that beside it.
class SignaturePad : public QWidget {
    Q_OBJECT

public:
    explicit SignaturePad(QWidget* parent = nullptr);

    void setLook(const Look& look);
    bool isEmpty() const { return m_strokes.empty(); }
    void clear();
    /// What was drawn, black on white, cut to its own size with a little air; null where nothing was.
    QImage picture() const;

Q_SIGNALS:
    /// A stroke was ended, or all were wiped off.
    void changed();

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    void drawStrokes(QPainter& painter, const QColor& ink) const;

    Look m_look;
    std::vector<QPolygonF> m_strokes;
    bool m_drawing = false;
};

} // namespace mend::parts
