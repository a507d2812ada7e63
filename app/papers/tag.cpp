#include "app/papers/tag.h"

#include "app/papers/glyphs.h"
#include "app/papers/qrmark.h"

#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <algorithm>

namespace mend::papers {

namespace {

constexpr int labelDotsPerInch = 203; // what most printers of labels have
constexpr double edge = 1.5;          // mm

/// The largest size at which the words fit the width; never so small that a hand's length blurs it.
QFont fitted(const QString& words, double points, QFont::Weight weight, double width, const QPaintDevice& device)
{
    for (double size = points; size > 5; size -= 0.5) {
        const QFont font(paperFont(size, weight));
        if (QFontMetricsF(font, &device).horizontalAdvance(words) <= width) {
            return font;
        }
    }
    return paperFont(5, weight);
}

void drawTag(QPainter& painter, const Tag& tag, const QSizeF& size, double dotsPerMm)
{
    const QRectF page(edge * dotsPerMm, edge * dotsPerMm, (size.width() - 2 * edge) * dotsPerMm,
                      (size.height() - 2 * edge) * dotsPerMm);
    const double side = page.height();
    QrMark(tag.number).draw(painter, QRectF(page.x(), page.y(), side, side));
    const QRectF words = page.adjusted(side + edge * dotsPerMm, 0, 0, 0);
    const double row = words.height() / 3;
    const auto write = [&](const QString& text, double points, QFont::Weight weight, int at) {
        const QString drawn = drawable(text);
        painter.setFont(fitted(drawn, points, weight, words.width(), *painter.device()));
        painter.drawText(
            QRectF(words.x(), words.y() + at * row, words.width(), row), Qt::AlignVCenter | Qt::AlignLeft,
            QFontMetricsF(painter.font(), painter.device()).elidedText(drawn, Qt::ElideRight, words.width()));
    };
    painter.setPen(Qt::black);
    write(tag.shown, size.height() * 0.85, QFont::Bold, 0);
    write(tag.name, size.height() * 0.5, QFont::Bold, 1);
    write(tag.line, size.height() * 0.32, QFont::Normal, 2);
}

} // namespace

QSizeF millimetresOf(Label label)
{
    switch (label) {
    case Label::Small:
        return {50, 20};
    case Label::Middle:
        return {62, 29};
    case Label::Large:
        return {100, 50};
    }
    return {};
}

QString keyOf(Label label)
{
    const QSizeF size = millimetresOf(label);
    return QStringLiteral("%1x%2").arg(size.width()).arg(size.height());
}

std::optional<Label> labelOf(const QString& key)
{
    const auto* const found = std::ranges::find(allLabels, key, keyOf);
    return found == allLabels.end() ? std::nullopt : std::optional(*found);
}

Result<Written> writeTags(const std::vector<Tag>& tags, Label label, const QString& path)
{
    const auto unwritable = [&] { return Fault{FaultKind::Unwritable, path.toStdString()}; };
    if (tags.empty()) {
        return Fault{FaultKind::BadInput, "no tags"};
    }
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) {
        return unwritable();
    }
    const QSizeF size = millimetresOf(label);
    QPdfWriter writer(&file);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setResolution(labelDotsPerInch);
    writer.setPageSize(QPageSize(size, QPageSize::Millimeter, QString(), QPageSize::ExactMatch));
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    writer.setCreator(QStringLiteral("Mendbench"));
    QPainter painter(&writer);
    if (!painter.isActive()) {
        return unwritable();
    }
    Written written;
    for (const Tag& tag : tags) {
        if (written.pages++ > 0) {
            writer.newPage();
        }
        drawTag(painter, tag, size, labelDotsPerInch / 25.4);
        written.undrawable += undrawable(tag.name + tag.line);
    }
    written.undrawable.removeDuplicates();
    if (!painter.end() || !file.commit()) {
        return unwritable();
    }
    return written;
}

} // namespace mend::papers
