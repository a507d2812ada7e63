#include "app/papers/paperlayout.h"

#include "app/papers/glyphs.h"

#include <QAbstractTextDocumentLayout>
#include <QGuiApplication>
#include <QPainter>
#include <QScreen>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextObjectInterface>
#include <QTextTable>
#include <QUrl>
#include <QVariant>
#include <cmath>

namespace mend::papers {

namespace {

constexpr double kindPoints = 19;
constexpr double headingPoints = 12.5;
constexpr double bodyPoints = 10.5;
constexpr double smallPoints = 9;
constexpr double labelWidth = 44;    // mm, the column of labels
constexpr double codeWidth = 32;     // mm, free beside the head for the code
constexpr double pictureHeight = 62; // mm, so that three rows of photos stand on a page
constexpr double signatureHeight = 16;
constexpr double factPadding = 0.8; // mm, around what stands in a cell
constexpr double tablePadding = 1.4;
constexpr double cautionPadding = 2.5;
constexpr double printedDotsPerMm = 8.7; // 220 dpi: more is not seen on a photo this size

/// A document that asks nobody for anything.
class ClosedDocument : public QTextDocument {
protected:
    QVariant loadResource(int, const QUrl&) override { return {}; }
};

/// Draws a picture that was handed in, at its size on the paper. (Qt's own pictures are looked up by
/// name and sized by the screen.)
class PictureOnPaper : public QObject, public QTextObjectInterface {
    Q_OBJECT
    Q_INTERFACES(QTextObjectInterface)

public:
    static constexpr int type = QTextFormat::UserObject + 1;
    enum Property { Image = QTextFormat::UserProperty + 1, Size };

    using QObject::QObject;
    QSizeF intrinsicSize(QTextDocument*, int, const QTextFormat& format) override
    {
        return format.property(Size).toSizeF();
    }
    void drawObject(QPainter* painter, const QRectF& place, QTextDocument*, int, const QTextFormat& format) override
    {
        painter->drawImage(place, format.property(Image).value<QImage>());
    }
};

class Layout {
public:
    Layout(QTextDocument& document, double dotsPerMm, double width)
        : m_document(document), m_cursor(&document), m_dotsPerMm(dotsPerMm), m_width(width)
    {
        document.documentLayout()->registerHandler(PictureOnPaper::type, new PictureOnPaper(&document));
    }

    void head(const Paper& paper)
    {
        const double beside = paper.code.isEmpty() ? 0 : codeWidth;
        const auto line = [&](const QString& words, double points, QFont::Weight weight, double after) {
            if (!words.isEmpty()) {
                QTextBlockFormat format = spaced(0, after);
                format.setRightMargin(length(beside));
                paragraph(words, points, weight, format);
            }
        };
        line(paper.studio, smallPoints, QFont::Normal, 3);
        line(paper.kind, kindPoints, QFont::Bold, 1);
        line(paper.number, headingPoints, QFont::Bold, 1);
        line(paper.date, bodyPoints, QFont::Normal, paper.code.isEmpty() ? 4 : 10);
    }

    void operator()(const Heading& heading)
    {
        paragraph(heading.words, headingPoints, QFont::Bold, spaced(6, 2));
        m_headings.push_back(m_cursor.block());
    }

    void operator()(const Paragraph& words)
    {
        if (!words.isCaution) {
            paragraph(words.words, bodyPoints, QFont::Normal, spaced(0, 2.5));
            return;
        }
        QTextTable* frame = table(1, 1, cautionPadding, {100});
        inCell(frame, 0, 0, words.words, bodyPoints, QFont::Bold);
        rule(frame->cellAt(0, 0), true);
        m_kept.push_back(frame);
        after();
    }

    void operator()(const Facts& facts)
    {
        if (facts.rows.empty()) {
            return;
        }
        const double share = 100.0 * px(labelWidth) / m_width;
        QTextTable* rows = table(static_cast<int>(facts.rows.size()), 2, factPadding, {share, 100 - share});
        for (int at = 0; at < rows->rows(); ++at) {
            const Fact& fact = facts.rows[static_cast<std::size_t>(at)];
            inCell(rows, at, 0, fact.label, smallPoints, QFont::Normal);
            inCell(rows, at, 1, fact.words, bodyPoints, QFont::Normal);
        }
        after();
    }

    void operator()(const Points& points)
    {
        for (const QString& line : points.lines) {
            QTextBlockFormat format = spaced(0, 1);
            format.setLeftMargin(length(5));
            format.setTextIndent(-length(4));
            paragraph(QStringLiteral("\u2013 ") + line, bodyPoints, QFont::Normal, format);
        }
    }

    void operator()(const Table& content)
    {
        const auto columns = static_cast<int>(content.head.size());
        if (columns == 0) {
            return;
        }
        QTextTable* rows = table(static_cast<int>(content.rows.size()) + 1, columns, tablePadding, {});
        QTextTableFormat format = rows->format();
        format.setHeaderRowCount(1);
        rows->setFormat(format);
        for (int column = 0; column < columns; ++column) {
            inCell(rows, 0, column, content.head[column], smallPoints, QFont::Bold);
            rule(rows->cellAt(0, column), false);
            for (int row = 1; row < rows->rows(); ++row) {
                const QString words = content.rows[static_cast<std::size_t>(row) - 1].value(column);
                inCell(rows, row, column, words, smallPoints, QFont::Normal);
                rule(rows->cellAt(row, column), false);
            }
        }
        after();
    }

    void operator()(const Pictures& pictures)
    {
        for (std::size_t at = 0; at < pictures.all.size(); at += 2) {
            QTextTable* pair = table(1, 2, factPadding, {50, 50});
            for (std::size_t side = 0; side < 2 && at + side < pictures.all.size(); ++side) {
                const Picture& picture = pictures.all[at + side];
                QTextCursor cell = pair->cellAt(0, static_cast<int>(side)).firstCursorPosition();
                insertImage(cell, picture.image, m_width / 2 - px(4), px(pictureHeight));
                cell.insertBlock(spaced(0.5, 3));
                insert(cell, picture.caption, smallPoints, QFont::Normal);
            }
            m_kept.push_back(pair);
            after();
        }
    }

    void operator()(const Signature& signature)
    {
        QTextTable* place = table(2, 1, factPadding, {60});
        QTextTableFormat format = place->format();
        format.setWidth(QTextLength(QTextLength::PercentageLength, 60));
        format.setTopMargin(length(4));
        place->setFormat(format);
        QTextCursor above = place->cellAt(0, 0).firstCursorPosition();
        if (!signature.drawn.isNull()) {
            insertImage(above, signature.drawn, m_width * 0.5, px(signatureHeight));
        } else {
            above.setBlockFormat(spaced(signatureHeight - 4, 0));
            insert(above, signature.instead, bodyPoints, QFont::Normal);
        }
        rule(place->cellAt(0, 0), false);
        inCell(place, 1, 0,
               signature.date.isEmpty() ? signature.who : signature.who + QStringLiteral(", ") + signature.date,
               smallPoints, QFont::Normal);
        m_kept.push_back(place);
        after();
    }

    /// Begins a new page before what would otherwise be torn in two: a row of photos, a place to
    /// sign, a caution, a heading and what follows it.
    void keepTogether()
    {
        const double page = m_document.pageSize().height();
        const QAbstractTextDocumentLayout* layout = m_document.documentLayout();
        const auto isTorn = [page](double top, double bottom) {
            return std::floor(top / page) != std::floor((bottom - 1) / page) && bottom - top < page;
        };
        for (const QTextBlock& heading : m_headings) {
            const QTextBlock next = heading.next();
            const QRectF place = layout->blockBoundingRect(heading);
            if (next.isValid() && isTorn(place.top(), layout->blockBoundingRect(next).top() + px(6))) {
                QTextBlockFormat format = heading.blockFormat();
                format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
                QTextCursor(heading).setBlockFormat(format);
            }
        }
        for (QTextTable* kept : m_kept) {
            const QRectF place = layout->frameBoundingRect(kept);
            if (isTorn(place.top(), place.bottom())) {
                QTextTableFormat format = kept->format();
                format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
                kept->setFormat(format);
            }
        }
    }

private:
    double px(double millimetres) const { return millimetres * m_dotsPerMm; }
    /// A length inside a format: Qt takes it for the screen's and scales it to the paper's.
    static double length(double millimetres)
    {
        const QScreen* screen = QGuiApplication::primaryScreen();
        return millimetres * (screen == nullptr ? 96.0 : screen->logicalDotsPerInchY()) / 25.4;
    }

    static QTextBlockFormat spaced(double before, double afterwards)
    {
        QTextBlockFormat format;
        format.setTopMargin(length(before));
        format.setBottomMargin(length(afterwards));
        return format;
    }

    static void insert(QTextCursor& cursor, const QString& words, double points, QFont::Weight weight)
    {
        QTextCharFormat format;
        format.setFont(paperFont(points, weight));
        format.setForeground(Qt::black);
        cursor.insertText(drawable(words), format);
    }

    void paragraph(const QString& words, double points, QFont::Weight weight, const QTextBlockFormat& format)
    {
        if (m_started) {
            m_cursor.insertBlock(format);
        } else {
            m_cursor.setBlockFormat(format);
        }
        m_started = true;
        insert(m_cursor, words, points, weight);
    }

    QTextTable* table(int rows, int columns, double paddingMm, const std::vector<double>& shares)
    {
        QTextTableFormat format;
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
        format.setBorder(0);
        format.setCellPadding(length(paddingMm));
        format.setCellSpacing(0);
        format.setTopMargin(length(1));
        format.setBottomMargin(length(3.5));
        QVector<QTextLength> widths;
        for (const double share : shares) {
            widths += QTextLength(QTextLength::PercentageLength, share);
        }
        format.setColumnWidthConstraints(widths);
        m_started = true;
        return m_cursor.insertTable(rows, columns, format);
    }

    /// A thin black line below a cell, or all around it.
    static void rule(QTextTableCell cell, bool around)
    {
        QTextTableCellFormat format = cell.format().toTableCellFormat();
        const double width = length(0.25);
        format.setBottomBorder(width);
        format.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setBottomBorderBrush(Qt::black);
        if (around) {
            format.setBorder(width * 2);
            format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
            format.setBorderBrush(Qt::black);
        }
        cell.setFormat(format);
    }

    void inCell(QTextTable* rows, int row, int column, const QString& words, double points, QFont::Weight weight) const
    {
        QTextCursor cell = rows->cellAt(row, column).firstCursorPosition();
        insert(cell, words, points, weight);
    }

    /// Goes on in the line that stands below every table; should nothing follow, it has no height to speak of.
    void after()
    {
        m_cursor.movePosition(QTextCursor::End);
        QTextCharFormat tiny;
        tiny.setFont(paperFont(1));
        m_cursor.setBlockFormat(spaced(0, 0));
        m_cursor.setBlockCharFormat(tiny);
        m_started = false;
    }

    /// In as many dots as a printer shows, on white: nothing on the paper is transparent.
    void insertImage(QTextCursor& cursor, const QImage& image, double widest, double highest)
    {
        if (image.isNull()) {
            return;
        }
        const QSizeF size = QSizeF(image.size()).scaled(widest, highest, Qt::KeepAspectRatio);
        const QSize dots = (size / m_dotsPerMm * printedDotsPerMm).toSize().boundedTo(image.size());
        QImage flat(dots.expandedTo({1, 1}), QImage::Format_RGB32);
        flat.fill(Qt::white);
        QPainter painter(&flat);
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.drawImage(flat.rect(), image.scaled(flat.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
        painter.end();
        QTextCharFormat format;
        format.setObjectType(PictureOnPaper::type);
        format.setProperty(PictureOnPaper::Image, flat);
        format.setProperty(PictureOnPaper::Size, size);
        cursor.insertText(QString(QChar::ObjectReplacementCharacter), format);
    }

    QTextDocument& m_document;
    QTextCursor m_cursor;
    double m_dotsPerMm;
    double m_width;
    bool m_started = false;
    std::vector<QTextBlock> m_headings;
    std::vector<QTextTable*> m_kept;
};

/// Gathers words, block by block.
struct WordsOf {
    QStringList words;

    void operator()(const Heading& heading) { words += heading.words; }
    void operator()(const Paragraph& paragraph) { words += paragraph.words; }
    void operator()(const Points& points) { words += points.lines; }
    void operator()(const Facts& facts)
    {
        for (const Fact& fact : facts.rows) {
            words += {fact.label, fact.words};
        }
    }
    void operator()(const Table& table)
    {
        words += table.head;
        for (const QStringList& row : table.rows) {
            words += row;
        }
    }
    void operator()(const Pictures& pictures)
    {
        for (const Picture& picture : pictures.all) {
            words += picture.caption;
        }
    }
    void operator()(const Signature& signature) { words += {signature.who, signature.date, signature.instead}; }
};

} // namespace

std::unique_ptr<QTextDocument> layOut(const Paper& paper, QPaintDevice& device, const QSizeF& body)
{
    std::unique_ptr<QTextDocument> document = std::make_unique<ClosedDocument>();
    document->setUndoRedoEnabled(false);
    document->setDocumentMargin(0);
    document->documentLayout()->setPaintDevice(&device);
    document->setDefaultFont(paperFont(bodyPoints));
    document->setPageSize(body);
    Layout layout(*document, device.logicalDpiX() / 25.4, body.width());
    layout.head(paper);
    for (const Block& block : paper.blocks) {
        std::visit(layout, block);
    }
    layout.keepTogether();
    return document;
}

QString allWords(const Paper& paper)
{
    WordsOf gather;
    gather.words = {paper.kind, paper.number, paper.studio, paper.date};
    for (const Block& block : paper.blocks) {
        std::visit(gather, block);
    }
    return gather.words.join(QLatin1Char('\n'));
}

} // namespace mend::papers

#include "paperlayout.moc"
