#include "app/papers/pdf.h"

#include "app/papers/glyphs.h"
#include "app/papers/paperlayout.h"
#include "app/papers/qrmark.h"

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPalette>
#include <QPdfWriter>
#include <QSaveFile>

namespace mend::papers {

namespace {

constexpr int paperDotsPerInch = 300;
constexpr double margin = 16;     // mm; what no printer cuts off
constexpr double footHeight = 10; // mm
constexpr double codeSide = 30;   // mm: a module is a whole millimetre
constexpr double footPoints = 8.5;

QString footOf(const Paper& paper, int page, int pages)
{
    QString foot;
    for (const QString& part :
         {paper.kind, paper.number, QCoreApplication::translate("PapersWords", "page %1 of %2").arg(page).arg(pages)}) {
        foot += (foot.isEmpty() || part.isEmpty() ? QString() : QStringLiteral(" \u00b7 ")) + part;
    }
    return foot;
}

} // namespace

Result<Written> writePdf(const Paper& paper, Sheet sheet, const QString& path)
{
    const auto unwritable = [&] { return Fault{FaultKind::Unwritable, path.toStdString()}; };
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) {
        return unwritable();
    }
    QPdfWriter writer(&file);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setResolution(paperDotsPerInch);
    writer.setPageSize(QPageSize(sheet == Sheet::A4 ? QPageSize::A4 : QPageSize::Letter));
    writer.setPageMargins(QMarginsF(margin, margin, margin, margin), QPageLayout::Millimeter);
    writer.setTitle(QStringList{paper.kind, paper.number}.join(QLatin1Char(' ')).trimmed());
    writer.setCreator(QStringLiteral("Mendbench"));
    QPainter painter(&writer);
    if (!painter.isActive()) {
        return unwritable();
    }
    const double dotsPerMm = paperDotsPerInch / 25.4;
    const QSizeF body(writer.width(), writer.height() - footHeight * dotsPerMm);
    const auto document = layOut(paper, writer, body);
    const int pages = document->pageCount();
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, Qt::black); // whatever the look of the screen
    for (int page = 0; page < pages; ++page) {
        if (page > 0) {
            writer.newPage();
        } else if (!paper.code.isEmpty()) {
            const double side = codeSide * dotsPerMm;
            QrMark(paper.code).draw(painter, QRectF(body.width() - side, 0, side, side));
        }
        painter.save();
        painter.translate(0, -page * body.height());
        context.clip = QRectF(0, page * body.height(), body.width(), body.height());
        painter.setClipRect(context.clip);
        document->documentLayout()->draw(&painter, context);
        painter.restore();
        painter.setFont(paperFont(footPoints));
        painter.setPen(Qt::black);
        painter.drawText(QRectF(0, body.height(), body.width(), footHeight * dotsPerMm),
                         Qt::AlignBottom | Qt::AlignLeft, drawable(footOf(paper, page + 1, pages)));
    }
    if (!painter.end() || !file.commit()) {
        return unwritable();
    }
    return Written{pages, undrawable(allWords(paper))};
}

} // namespace mend::papers
