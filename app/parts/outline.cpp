#include "app/parts/outline.h"

#include "app/parts/resources.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QStringList>
#include <QTransform>

#include <algorithm>
#include <vector>

namespace mend::parts {

namespace {

struct Shape {
    QStringList words;
    QPainterPath outline;
    QPainterPath line;
    std::vector<QPainterPath> seams;
};

QPainterPath parsedPath(const QString& steps)
{
    QPainterPath path;
    const QStringList parts = steps.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    qsizetype at = 0;
    const auto point = [&] {
        const QPointF read(parts.value(at).toDouble(), parts.value(at + 1).toDouble());
        at += 2;
        return read;
    };
    while (at < parts.size()) {
        const QString step = parts[at++];
        if (step == QLatin1String("M")) {
            path.moveTo(point());
        } else if (step == QLatin1String("L")) {
            path.lineTo(point());
        } else if (step == QLatin1String("C")) {
            const QPointF a = point();
            const QPointF b = point();
            path.cubicTo(a, b, point());
        } else {
            path.closeSubpath();
        }
    }
    return path;
}

std::vector<Shape> readShapes()
{
    std::vector<Shape> shapes;
    const QJsonObject file = QJsonDocument::fromJson(lookResource(QStringLiteral("shapes.json"))).object();
    for (const auto& each : file.value(QLatin1String("shapes")).toArray()) {
        const QJsonObject object = each.toObject();
        Shape shape;
        for (const auto& word : object.value(QLatin1String("words")).toArray()) {
            shape.words << word.toString();
        }
        shape.outline = parsedPath(object.value(QLatin1String("outline")).toString());
        shape.line = parsedPath(object.value(QLatin1String("line")).toString());
        for (const auto& seam : object.value(QLatin1String("seams")).toArray()) {
            shape.seams.push_back(parsedPath(seam.toString()));
        }
        shapes.push_back(std::move(shape));
    }
    return shapes;
}

const std::vector<Shape>& shapesRead()
{
    static const std::vector<Shape> shapes = readShapes();
    return shapes;
}

// The first share of a path by length, as a line through points.
QPainterPath firstShare(const QPainterPath& path, double share)
{
    QPainterPath part;
    if (share <= 0.0 || path.isEmpty()) {
        return part;
    }
    part.moveTo(path.pointAtPercent(0.0));
    constexpr int steps = 24;
    for (int i = 1; i <= steps; ++i) {
        part.lineTo(path.pointAtPercent(std::min(1.0, share * i / steps)));
    }
    return part;
}

} // namespace

int shapeCount() { return static_cast<int>(shapesRead().size()); }

int shapeFor(const QString& benchName, qint64 number)
{
    const auto& shapes = shapesRead();
    const QStringList words = benchName.toLower().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    // The last word names the thing: "egg cup", "cup with a dish" is rare.
    for (auto word = words.rbegin(); word != words.rend(); ++word) {
        const auto found =
            std::ranges::find_if(shapes, [&](const Shape& shape) { return shape.words.contains(*word); });
        if (found != shapes.end()) {
            return static_cast<int>(found - shapes.begin());
        }
    }
    return static_cast<int>(std::abs(number) % static_cast<qint64>(shapes.size()));
}

void drawOutline(Scribe& scribe, const QRectF& rect, int shape, double mended, bool onBlock)
{
    const auto& shapes = shapesRead();
    const Shape& drawn = shapes[static_cast<std::size_t>(std::clamp(shape, 0, shapeCount() - 1))];
    const Tokens& t = scribe.tokens();
    const QColor pot = onBlock ? t.potOnBlock : t.pot;
    const double size = rect.height();
    scribe.fill(rect, onBlock ? t.plinthOnBlock : t.plinth, scribe.px(4));
    const QTransform to = QTransform()
                              .translate(rect.left(), rect.top())
                              .scale(size / 100.0, size / 100.0)
                              .translate(8, 8)
                              .scale(0.84, 0.84);
    scribe.picturePath(to.map(drawn.outline), rect, pot, 0.0, pot, true);
    scribe.picturePath(to.map(drawn.outline), rect, t.potLine, size / 52.0, pot, false);
    if (!drawn.line.isEmpty()) {
        scribe.picturePath(to.map(drawn.line), rect, t.potLine, size / 60.0, pot, false);
    }
    const double done = std::clamp(mended, 0.0, 1.0) * static_cast<double>(drawn.seams.size());
    for (std::size_t i = 0; i < drawn.seams.size(); ++i) {
        const QPainterPath seam = to.map(drawn.seams[i]);
        scribe.picturePath(seam, rect, t.potLine, size / 60.0, pot, false);
        const double share = std::clamp(done - static_cast<double>(i), 0.0, 1.0);
        if (share > 0.0) {
            scribe.picturePath(firstShare(seam, share), rect, onBlock && t.potOnBlock == t.onBlock ? t.gold : t.gold,
                               size / 22.0, pot, false);
        }
    }
}

} // namespace mend::parts
