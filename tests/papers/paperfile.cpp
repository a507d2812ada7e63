#include "tests/papers/paperfile.h"

#include <QFileInfo>
#include <QProcess>
#include <QRegularExpression>
#include <QSizeF>
#include <QTemporaryDir>

namespace mend::test {

Ran run(const QString& program, const QStringList& arguments)
{
    QProcess process;
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(program, arguments);
    if (!process.waitForFinished(60'000) || process.exitStatus() != QProcess::NormalExit) {
        return {};
    }
    return {process.exitCode(), process.readAllStandardOutput()};
}

qint64 PaperFile::bytes() const { return QFileInfo(m_path).size(); }

QByteArray PaperFile::faults() const
{
    const Ran checked = run(QStringLiteral("qpdf"), {QStringLiteral("--check"), m_path});
    return checked.code == 0 ? QByteArray() : checked.out + " (" + QByteArray::number(checked.code) + ")";
}

QByteArray PaperFile::unpacked() const
{
    return run(QStringLiteral("qpdf"),
               {QStringLiteral("--qdf"), QStringLiteral("--object-streams=disable"), m_path, QStringLiteral("-")})
        .out;
}

QString PaperFile::words() const
{
    return QString::fromUtf8(run(QStringLiteral("pdftotext"), {m_path, QStringLiteral("-")}).out);
}

QImage PaperFile::picture(int page, int dotsPerInch) const
{
    const QTemporaryDir folder;
    const QString stem = folder.filePath(QStringLiteral("page"));
    run(QStringLiteral("pdftoppm"), {QStringLiteral("-r"), QString::number(dotsPerInch), QStringLiteral("-f"),
                                     QString::number(page), QStringLiteral("-l"), QString::number(page),
                                     QStringLiteral("-singlefile"), QStringLiteral("-png"), m_path, stem});
    return QImage(stem + QStringLiteral(".png"));
}

QString PaperFile::codes(int page, int dotsPerInch) const
{
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("page.png"));
    picture(page, dotsPerInch).save(file);
    QProcess reader;
    reader.start(QStringLiteral("zbarimg"), {QStringLiteral("--raw"), QStringLiteral("-q"), file});
    reader.waitForFinished(60'000);
    return QString::fromUtf8(reader.readAllStandardOutput()).trimmed();
}

QStringList PaperFile::faces() const
{
    QStringList lines =
        QString::fromUtf8(run(QStringLiteral("pdffonts"), {m_path}).out).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    return lines.mid(2); // below its head and rule
}

QSizeF PaperFile::millimetres() const
{
    const QString info = QString::fromUtf8(run(QStringLiteral("pdfinfo"), {m_path}).out);
    const auto match = QRegularExpression(QStringLiteral("Page size:\\s+([0-9.]+) x ([0-9.]+) pts")).match(info);
    return QSizeF(match.captured(1).toDouble(), match.captured(2).toDouble()) / 72.0 * 25.4;
}

} // namespace mend::test
