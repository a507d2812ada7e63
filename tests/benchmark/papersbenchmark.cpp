// What the longest paper costs: a treatment record with 24 photos of full size, decoded, drawn with their marks and
// written as PDF, as the program does it.
#include "app/photos/photoimport.h"
#include "tests/paperwork/sample.h"

#include <QFileInfo>
#include <QGuiApplication>
#include <QPainter>
#include <QTemporaryDir>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <random>
#include <vector>

using namespace mend;

namespace {

constexpr int photoCount = 24;
constexpr double mostSeconds = 2;
constexpr double mostMegabytes = 12;

/// A pot on a table as a camera sees it: soft shading, a sharp edge, and the grain that makes JPEG large.
QImage photographed(unsigned seed)
{
    std::mt19937 random(seed);
    QImage image(photos::workingSide, photos::workingSide * 3 / 4, QImage::Format_RGB32);
    QPainter painter(&image);
    QLinearGradient table(0, 0, 0, image.height());
    table.setColorAt(0, QColor(0x8a, 0x84, 0x7c));
    table.setColorAt(1, QColor(0xd8, 0xd0, 0xc4));
    painter.fillRect(image.rect(), table);
    painter.setRenderHint(QPainter::Antialiasing);
    QRadialGradient glaze(image.rect().center(), image.height() / 2.0);
    glaze.setColorAt(0, QColor(0x6a, 0x90, 0xb8));
    glaze.setColorAt(1, QColor(0x1c, 0x30, 0x50));
    painter.setBrush(glaze);
    painter.drawEllipse(image.rect().center(), image.width() / 3, image.height() / 3);
    painter.end();
    std::normal_distribution<double> grain(0, 4);
    for (int y = 0; y < image.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < image.width(); ++x) {
            const int light = static_cast<int>(grain(random));
            const auto lit = [light](int value) { return std::clamp(value + light, 0, 255); };
            line[x] = qRgb(lit(qRed(line[x])), lit(qGreen(line[x])), lit(qBlue(line[x])));
        }
    }
    return image;
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    test::Sample sample;
    std::vector<std::string> working;
    std::size_t bytes = 0;
    for (int i = 0; i < photoCount; ++i) {
        const auto ready = photos::readyPhoto(photographed(static_cast<unsigned>(i)));
        if (!ready) {
            std::fprintf(stderr, "a photo was not taken\n");
            return 1;
        }
        bytes += ready.value().working.size();
        working.push_back(ready.value().working);
        store::NotedPhoto photo;
        photo.use.photo = std::to_string(i);
        photo.use.purpose = i < 8 ? record::conditionPhoto : i < 16 ? record::duringPhoto : record::finishedPhoto;
        photo.note.words = "view " + std::to_string(i);
        photo.note.marks = {{record::MarkKind::Chip, 5000, 5000, "rim"}};
        sample.file.photos.push_back(photo);
    }
    const paperwork::Source given = sample.source();
    const paperwork::Source source{
        given.file,
        given.bench,
        given.book,
        given.studio,
        given.words,
        given.manner,
        given.now,
        [&working](const std::string& hash) {
            return QImage::fromData(QByteArray::fromStdString(working[static_cast<std::size_t>(std::stoi(hash))]));
        }};
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("record.pdf"));
    std::vector<double> seconds;
    for (int run = 0; run < 5; ++run) {
        const auto began = std::chrono::steady_clock::now();
        if (!papers::writePdf(paperwork::paperOf(paperwork::Kind::TreatmentRecord, source), papers::Sheet::A4, path)) {
            std::fprintf(stderr, "the record was not written\n");
            return 1;
        }
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
        seconds.push_back(took.count());
    }
    std::ranges::sort(seconds);
    const double megabytes = static_cast<double>(QFileInfo(path).size()) / 1e6;
    std::printf("record with %d photos (%.1f MB as they are kept)\n", photoCount, static_cast<double>(bytes) / 1e6);
    std::printf("  written in  %5.2f s median, %5.2f s worst of %zu   floor %.0f s\n", seconds[seconds.size() / 2],
                seconds.back(), seconds.size(), mostSeconds);
    std::printf("  size        %5.2f MB                               floor %.0f MB\n", megabytes, mostMegabytes);
    return 0;
}
