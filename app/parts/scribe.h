#pragma once

#include "app/parts/scene.h"

#include <QSize>

namespace mend::parts {

/// Writes a scene. Whoever composes a view thinks from left to right; the scribe mirrors
/// everything where the language runs the other way.
class Scribe {
public:
    Scribe(const Look& look, QSize size, bool mirrored);

    const Look& look() const { return m_look; }
    const Tokens& tokens() const { return m_look.tokens(); }
    int px(double units) const { return m_look.measure.px(units); }
    int mm(double millimetres) const { return m_look.measure.mm(millimetres); }
    QSize size() const { return m_size; }

    void fill(const QRectF& rect, const QColor& colour, double radius = 0.0);
    void frame(const QRectF& rect, const QColor& colour, double pen, const QColor& ground, double radius = 0.0,
               Qt::PenStyle style = Qt::SolidLine);
    void line(QPointF from, QPointF to, const QColor& colour, double pen, const QColor& ground,
              Qt::PenStyle style = Qt::SolidLine, bool bears = true);
    /// Mirrored as drawn: for things that run along time.
    void path(const QPainterPath& path, const QColor& colour, const QColor& ground);
    void stroke(const QPainterPath& path, const QColor& colour, double pen, const QColor& ground,
                Qt::PenStyle style = Qt::SolidLine);
    /// Moved to the mirrored place but not turned round: for pictures of things.
    void picturePath(const QPainterPath& path, const QRectF& within, const QColor& colour, double pen,
                     const QColor& ground, bool filled);
    void picture(const QRectF& rect, const QImage& image);

    struct Ink {
        Role role = Role::Body;
        QColor ink;
        QColor ground;
    };
    /// One line, shortened with an ellipsis where it does not fit. Gives the width it takes.
    double text(const QRectF& rect, const QString& words, const Ink& ink, Qt::Alignment align = Qt::AlignLeft,
                double shrink = 1.0);
    /// Several lines; the last is shortened where they do not fit. Gives the height taken.
    double lines(const QRectF& rect, const QString& words, const Ink& ink, int most,
                 Qt::Alignment align = Qt::AlignLeft);
    double width(const QString& words, Role role, double shrink = 1.0) const;
    double lineHeight(Role role, double shrink = 1.0) const;

    struct Button {
        Hit hit;
        QString label;
        enum class Weight { Strong, Plain, Barred, OnBlock, OnBlockPlain } weight = Weight::Plain;
        Role role = Role::CardAct;
        QString below; ///< a second, smaller line
    };
    void button(const Button& button);

    void hit(Hit hit);
    Scene take() { return std::move(m_scene); }

private:
    QRectF placed(const QRectF& rect) const;
    Qt::Alignment aligned(Qt::Alignment align) const;
    void label(const QRectF& rect, const Button& button, const QColor& ink, const QColor& ground);

    const Look& m_look;
    QSize m_size;
    bool m_mirrored;
    Scene m_scene;
};

} // namespace mend::parts
