#pragma once

#include "app/parts/look.h"
#include "core/record/photo.h"

#include <QImage>
#include <QWidget>

#include <vector>

namespace mend::app {

/// One photo, large, with what is marked on it. A tap says where; by keys, the arrows move a cross and Enter
/// says there.
class PhotoBoard : public QWidget {
    Q_OBJECT

public:
    explicit PhotoBoard(QWidget* parent = nullptr);

    void setLook(const parts::Look& look);
    /// Null: it is still being read.
    void setPhoto(const QImage& photo);
    void setMarks(std::vector<record::PhotoMark> marks);
    /// Whether a tap means anything now.
    void setTakesMarks(bool takes);
    /// Where the photo lies in the widget.
    QRectF pictureRect() const;

Q_SIGNALS:
    /// In ten-thousandths of the photo's width and height.
    void pointed(int x, int y);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void point(QPointF at);

    parts::Look m_look;
    QImage m_photo;
    std::vector<record::PhotoMark> m_marks;
    bool m_takesMarks = false;
    bool m_pressed = false;
    QPointF m_cross{0.5, 0.5}; ///< of the photo's width and height
};

} // namespace mend::app
