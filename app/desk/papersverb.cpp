// Every paper about one piece as files.
#include "app/desk/verbs.h"

#include "app/papers/pdf.h"
#include "app/paperwork/papers.h"
#include "core/record/piecenumber.h"
#include "core/service/openbench.h"

#include <QDir>
#include <QJsonArray>

namespace mend::desk {

namespace {

/// The picture under its hash; none where the file holds none of that hash.
QImage pictureIn(const store::Store& store, const std::string& hash)
{
    const auto bytes = store.photo(hash);
    if (!bytes || !bytes.value()) {
        return {};
    }
    return QImage::fromData(QByteArray::fromStdString(*bytes.value()));
}

/// Gathers what was written, or the first thing that stood in the way.
class Shelf {
public:
    explicit Shelf(const QDir& folder) : m_folder(folder) {}

    void add(const QString& name, const std::function<Result<papers::Written>(const QString& path)>& write)
    {
        const QString path = m_folder.filePath(name + QStringLiteral(".pdf"));
        const auto written = write(path);
        if (!written) {
            m_fault = m_fault.value_or(written.fault());
            return;
        }
        m_answer.text += QStringLiteral("%1: %2 pages\n").arg(path).arg(written.value().pages);
        for (const QString& sign : written.value().undrawable) {
            m_answer.text +=
                QStringLiteral("  no face for U+%1\n").arg(sign.toUcs4().value(0), 4, 16, QLatin1Char('0'));
        }
        m_files.append(
            QJsonObject{{QStringLiteral("file"), path},
                        {QStringLiteral("pages"), written.value().pages},
                        {QStringLiteral("undrawable"), QJsonArray::fromStringList(written.value().undrawable)}});
    }

    Answer take()
    {
        if (m_fault) {
            return refusal(*m_fault, QString::fromStdString(m_fault->detail));
        }
        m_answer.data = {{QStringLiteral("good"), true}, {QStringLiteral("papers"), m_files}};
        return m_answer;
    }

private:
    QDir m_folder;
    Answer m_answer;
    QJsonArray m_files;
    std::optional<Fault> m_fault;
};

} // namespace

Answer printPapers(const std::string& file, const std::string& number, const std::string& to, PaperSizes sizes,
                   const Clock& clock)
{
    const QString name = QString::fromStdString(file);
    const auto read = record::readPieceNumber(number);
    if (!read) {
        return refusal({FaultKind::BadInput, {}}, QString::fromStdString(number));
    }
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    if (!opened) {
        return refusal(opened.fault(), name);
    }
    const store::Store& store = *opened.value();
    service::RuleShelf shelf(service::RuleShelf::usualFolders());
    const Instant now = clock.now().utc;
    const auto bench = service::readBench(store, shelf, now);
    const auto piece = store.pieceNumbered(*read);
    if (!bench || !piece) {
        return refusal(!bench ? bench.fault() : piece.fault(), name);
    }
    if (!piece.value()) {
        return refusal({FaultKind::NotFound, {}}, QString::fromStdString(number));
    }
    const service::OpenBench& open = bench.value();
    const auto held = service::readPieceFile(store, piece.value()->id, open.book);
    const auto settings = store.settings();
    if (!held || !settings) {
        return refusal(!held ? held.fault() : settings.fault(), name);
    }
    const QDir folder(QString::fromStdString(to));
    if (!folder.mkpath(QStringLiteral("."))) {
        return refusal({FaultKind::Unwritable, to}, folder.path());
    }
    const bench::BenchFold folded = bench::fold(open.record.roster, open.record.events, open.book);
    const service::PaperWords words(service::shippedPaperTexts(), settings.value());
    const service::Manner manner{open.studio.timeZone(), QLocale(QLocale::English), open.studio.fahrenheit};
    const paperwork::Source source{
        held.value(), folded, open.book, open.studio,
        words,        manner, now,       [&](const std::string& hash) { return pictureIn(store, hash); }};
    Shelf papers(folder);
    for (const paperwork::Kind kind : paperwork::allKinds) {
        papers.add(paperwork::fileStem(kind, *piece.value()), [&](const QString& path) {
            return papers::writePdf(paperwork::paperOf(kind, source), sizes.sheet, path);
        });
    }
    papers.add(QString::fromStdString(record::shownPieceNumber(*read)) + QStringLiteral("-tag"),
               [&](const QString& path) { return papers::writeTags({paperwork::tagOf(source)}, sizes.label, path); });
    return papers.take();
}

} // namespace mend::desk
