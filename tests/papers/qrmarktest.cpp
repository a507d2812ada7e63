#include "app/papers/qrmark.h"

#include "core/record/piecenumber.h"

#include <QProcess>
#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace mend::papers;

namespace {

QString readBack(const QrMark& mark)
{
    QImage image(mark.side() * 4, mark.side() * 4, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    mark.draw(painter, image.rect());
    painter.end();
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("code.png"));
    image.save(file);
    QProcess reader;
    reader.start(QStringLiteral("zbarimg"), {QStringLiteral("--raw"), QStringLiteral("-q"), file});
    reader.waitForFinished(60'000);
    return QString::fromUtf8(reader.readAllStandardOutput()).trimmed();
}

} // namespace

// ISO/IEC 18004: version 1 has 21 modules a side and a quiet zone of 4 at each edge.
TEST(QrMark, IsTheSmallestSymbolForAPieceNumber)
{
    const QrMark mark(QStringLiteral("2604175"));
    EXPECT_EQ(mark.side(), 21 + 2 * 4);
    for (int at = 0; at < mark.side(); ++at) {
        for (int depth = 0; depth < 4; ++depth) {
            EXPECT_FALSE(mark.isDark(at, depth) || mark.isDark(depth, at) || mark.isDark(at, mark.side() - 1 - depth) ||
                         mark.isDark(mark.side() - 1 - depth, at));
        }
    }
    EXPECT_TRUE(mark.isDark(4, 4)) << "the corner of the finder";
}

TEST(QrMark, ReadsBackAsTheNumberAlone)
{
    for (const int running : {1, 417, 2024, 9999}) {
        const QString number = QString::fromStdString(*mend::record::pieceNumber(2026, running));
        EXPECT_EQ(readBack(QrMark(number)), number);
    }
}

TEST(QrMark, HasNoSymbolForNothing) { EXPECT_TRUE(QrMark(QString()).isEmpty()); }
