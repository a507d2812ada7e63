#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>
#include <QStringList>

// Reads a written paper as others do: with qpdf, poppler and zbar, none of which is ours.
namespace mend::test {

/// What a program printed, and how it ended.
struct Ran {
    int code = -1;
    QByteArray out;
};
Ran run(const QString& program, const QStringList& arguments);

class PaperFile {
public:
    explicit PaperFile(QString path) : m_path(std::move(path)) {}

    const QString& path() const { return m_path; }
    qint64 bytes() const;
    /// Nothing to say, or what `qpdf --check` found wrong.
    QByteArray faults() const;
    /// The file with every stream unpacked, to be searched.
    QByteArray unpacked() const;
    /// Its words, in reading order.
    QString words() const;
    QImage picture(int page, int dotsPerInch) const;
    /// What the codes on a page hold, one a line.
    QString codes(int page, int dotsPerInch) const;
    /// One line a face: "name type encoding emb sub uni ...".
    QStringList faces() const;
    QSizeF millimetres() const;

private:
    QString m_path;
};

} // namespace mend::test
