#pragma once

#include "app/parts/scene.h"
#include "app/parts/tapgate.h"

#include <QPoint>
#include <QWidget>

#include <optional>
#include <vector>

namespace mend::parts {

/// A painted view whose spots can be reached by finger, mouse, keys and screen reader alike:
/// all of them go through one hit map. An act happens on release; sliding off cancels it.
class ActView : public QWidget {
    Q_OBJECT
public:
    /// A scene and where it stands in the view. Scenes are shared and never change.
    struct Part {
        QPoint at;
        ScenePtr scene;
        QRect clip; ///< empty: all of it is seen
    };

    explicit ActView(TapGate& gate, QWidget* parent = nullptr);
    ~ActView() override;

    /// Shows these; repaints only what differs from before.
    void setParts(std::vector<Part> parts);
    const std::vector<Part>& shown() const { return m_parts; }

    /// Every spot in view coordinates, those hidden by the clip left out.
    const std::vector<Hit>& hits() const { return m_hits; }
    const Hit* hit(const QString& key) const;
    const Hit* buttonAt(QPoint at) const;
    /// Does what a tap there does, for keys and screen readers: what counts is the spot's name, not its place.
    bool activate(const QString& key);
    void setFocusKey(const QString& key);
    const QString& focusKey() const { return m_focus; }

    void setFocusInk(const QColor& ink, double pen);
    /// What is behind everything; transparent where not set.
    void setGround(const QColor& ground);
    QSize sizeHint() const override { return m_hint; }
    void setSizeHint(QSize hint);

    /// A frame over everything that comes and goes, in this ink; invalid: none.
    void setFlash(const QRect& around, const QColor& ink, double pen, double radius);
    /// How many pixels were asked to be painted again since the last question, for the tests.
    qint64 takeRepainted();

Q_SIGNALS:
    void pressed();                 ///< a finger or the mouse came down
    void acted(const QString& key); ///< a tap or a key was taken, and the spot does what it says
    void dragged(int pixels);       ///< moved down or up by so much since the last one
    void leftByKey(int dx, int dy); ///< an arrow led out of the view

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    /// The keys have led to another spot.
    virtual void focusMoved(const QString&) {}
    /// True where a finger that moves up or down pushes the content instead of tapping.
    virtual bool takesDrags() const { return false; }

private:
    struct Press {
        QString key;
        QPoint down;
        QPoint last;
        bool inside = true;
        bool dragging = false;
    };
    void press(QPoint at);
    void moveTo(QPoint at);
    void release(QPoint at);
    void cancel();
    void collectHits();
    void veilCurbed(QPainter& painter, const Scene& scene) const;
    void repaintHit(const QString& key);
    void repaint(const QRect& rect);
    bool moveFocus(int dx, int dy);
    std::vector<const Hit*> buttons() const;

    TapGate& m_gate;
    std::vector<Part> m_parts;
    std::vector<Hit> m_hits;
    std::optional<Press> m_press;
    QString m_focus;
    QColor m_focusInk = Qt::black;
    double m_focusPen = 3.0;
    QColor m_ground;
    QRect m_flashAround;
    QColor m_flashInk;
    double m_flashPen = 0.0;
    double m_flashRadius = 0.0;
    QSize m_hint;
    qint64 m_repainted = 0;
};

} // namespace mend::parts
