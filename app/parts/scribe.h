#pragma once

#include "app/parts/scene.h"

#include <QSize>

#include <optional>

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
    /// Mirrored as drawn, except within a stretch of time.
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
    friend class AlongTime;
    struct Stretch {
        double left;
        double right;
    };
    /// How far a stretch of time moves to stand in its mirrored place.
    double shift() const { return m_mirrored ? m_size.width() - m_stretch->right - m_stretch->left : 0.0; }
    QRectF placed(const QRectF& rect) const;
    Qt::Alignment aligned(Qt::Alignment align) const;
    void label(const QRectF& rect, const Button& button, const QColor& ink, const QColor& ground);

    const Look& m_look;
    QSize m_size;
    bool m_mirrored;
    std::optional<Stretch> m_stretch;
    Scene m_scene;
};

/// Time runs from left to right in every language, as the digits of a clock do: while this lives, what is drawn between
/// these two edges is moved to its mirrored place as a whole, and not turned round.
class AlongTime {
public:
    AlongTime(Scribe& scribe, double left, double right) : m_scribe(scribe), m_before(scribe.m_stretch)
    {
        scribe.m_stretch = {left, right};
    }
    ~AlongTime() { m_scribe.m_stretch = m_before; }
    AlongTime(const AlongTime&) = delete;
    AlongTime& operator=(const AlongTime&) = delete;

private:
    Scribe& m_scribe;
    std::optional<Scribe::Stretch> m_before;
};

} // namespace mend::parts
