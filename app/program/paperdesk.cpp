#include "app/program/paperdesk.h"

#include "app/paperwork/papers.h"
#include "core/service/piecefile.h"

#include <QCoreApplication>
#include <QDir>
#include <QPointer>
#include <QStandardPaths>
#include <algorithm>

namespace mend::app {

using service::text;

namespace {

const QString& tagKey()
{
    static const QString key = QStringLiteral("tag");
    return key;
}

/// Everything a paper is made of, held together for as long as it is written.
struct Desk {
    service::PieceFile file;
    bench::BenchFold bench;
    bench::Board board;
    rules::RuleBook book;
    service::Studio studio;
    std::map<std::string, std::string> settings;
    std::map<std::string, store::Bytes> photos; ///< by hash
    service::Manner manner;
    Instant now;
    QString folder;
    papers::Sheet sheet = papers::Sheet::A4;
    papers::Label label = papers::Label::Middle;
};

/// A key is the end of the file's name, so that it never stands for another paper than the one that is written.
QString keyOf(paperwork::Kind kind)
{
    record::Piece none;
    return paperwork::fileStem(kind, none).mid(service::numberWords(none.number).size() + 1);
}

QString wordsOf(const Result<papers::Written>& written, const QString& path)
{
    if (!written) {
        return PaperDesk::tr("It could not be written to %1. Choose another folder.").arg(path);
    }
    const auto& paper = written.value();
    QString words = paper.pages == 1 ? PaperDesk::tr("Written: %1, 1 page.").arg(path)
                                     : PaperDesk::tr("Written: %1, %2 pages.").arg(path).arg(paper.pages);
    if (!paper.undrawable.isEmpty()) {
        words += QLatin1Char(' ') + PaperDesk::tr("No typeface here has %1; their numbers stand instead.")
                                        .arg(paper.undrawable.join(QLatin1Char(' ')));
    }
    return words;
}

QString write(const Desk& desk, const QString& key)
{
    const service::PaperWords words(service::shippedPaperTexts(), desk.settings);
    const paperwork::Source source{
        desk.file, desk.bench, desk.book, desk.studio, words, desk.manner, desk.now, [&desk](const std::string& hash) {
            const auto found = desk.photos.find(hash);
            return found == desk.photos.end() ? QImage() : QImage::fromData(QByteArray::fromStdString(found->second));
        }};
    const QDir folder(desk.folder);
    if (key == tagKey()) {
        const QString path = folder.filePath(service::numberWords(desk.file.piece.number) + QStringLiteral("-tag.pdf"));
        return wordsOf(papers::writeTags({paperwork::tagOf(source)}, desk.label, path), path);
    }
    for (const paperwork::Kind kind : paperwork::allKinds) {
        if (keyOf(kind) == key) {
            const QString path = folder.filePath(paperwork::fileStem(kind, desk.file.piece) + QStringLiteral(".pdf"));
            return wordsOf(papers::writePdf(paperwork::paperOf(kind, source), desk.sheet, path), path);
        }
    }
    return {};
}

} // namespace

PaperDesk::PaperDesk(Services services, QObject* parent) : QObject(parent), m_services(services) {}

void PaperDesk::setManner(const service::Manner& manner, const service::Studio& studio)
{
    m_manner = manner;
    m_studio = studio;
}

std::vector<std::pair<QString, QString>> PaperDesk::all()
{
    std::vector<std::pair<QString, QString>> all;
    for (const paperwork::Kind kind : paperwork::allKinds) {
        all.emplace_back(keyOf(kind), paperwork::kindWords(kind));
    }
    all.emplace_back(tagKey(), tr("Tag for the bag"));
    return all;
}

QStringList PaperDesk::atHandOver()
{
    return {keyOf(paperwork::Kind::OutReceipt), keyOf(paperwork::Kind::TreatmentRecord),
            keyOf(paperwork::Kind::CareSheet)};
}

QString PaperDesk::folder() const
{
    const QString usual = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return m_services.settings.value(QStringLiteral("papers/folder"), usual).toString();
}

void PaperDesk::setFolder(const QString& folder)
{
    m_services.settings.setValue(QStringLiteral("papers/folder"), folder);
}

papers::Sheet PaperDesk::sheet() const
{
    const bool usual = m_manner.locale.measurementSystem() == QLocale::ImperialUSSystem;
    return m_services.settings.value(QStringLiteral("papers/letter"), usual).toBool() ? papers::Sheet::Letter
                                                                                      : papers::Sheet::A4;
}

void PaperDesk::setSheet(papers::Sheet sheet)
{
    m_services.settings.setValue(QStringLiteral("papers/letter"), sheet == papers::Sheet::Letter);
}

papers::Label PaperDesk::label() const
{
    return papers::labelOf(m_services.settings.value(QStringLiteral("papers/tag")).toString())
        .value_or(papers::Label::Middle);
}

void PaperDesk::setLabel(papers::Label label)
{
    m_services.settings.setValue(QStringLiteral("papers/tag"), papers::keyOf(label));
}

void PaperDesk::write(PieceId piece, const QStringList& keys, Told done)
{
    auto desk = std::make_shared<Desk>();
    desk->bench = m_services.bench.bench();
    desk->book = m_services.bench.book();
    desk->studio = m_studio;
    desk->manner = m_manner;
    desk->now = m_services.clock.now().utc;
    desk->folder = folder();
    desk->sheet = sheet();
    desk->label = label();
    m_services.keeping.thread().read(
        [guard = QPointer<PaperDesk>(this), desk, piece, keys, done = std::move(done)](store::Store& store) {
            auto file = service::readPieceFile(store, piece, desk->book);
            const auto settings = store.settings();
            if (file && settings) {
                desk->file = file.takeValue();
                desk->settings = settings.value();
                for (const store::NotedPhoto& photo : desk->file.photos) {
                    if (const auto bytes = store.photo(photo.use.photo); bytes && bytes.value()) {
                        desk->photos[photo.use.photo] = *bytes.value();
                    }
                }
                for (const record::Visit& visit : desk->file.visits) {
                    const std::string& signature = visit.consent.picture;
                    const auto bytes =
                        signature.empty() ? Result<std::optional<store::Bytes>>(std::nullopt) : store.photo(signature);
                    if (bytes && bytes.value()) {
                        desk->photos[signature] = *bytes.value();
                    }
                }
            }
            const bool isRead = file.isOk() && settings.isOk();
            // The file's thread may end after this has gone: whoever is still there then is asked first.
            QMetaObject::invokeMethod(
                QCoreApplication::instance(),
                [guard, desk, keys, done, isRead] {
                    for (const QString& key : guard ? keys : QStringList()) {
                        if (!isRead) {
                            done(key, tr("It could not be written: the bench file cannot be read now."));
                            continue;
                        }
                        guard->m_services.aside.run([desk, key, done]() -> parts::Aside::Then {
                            QDir().mkpath(desk->folder);
                            const QString words = app::write(*desk, key);
                            return [key, words, done] { done(key, words); };
                        });
                    }
                },
                Qt::QueuedConnection);
        });
}

void PaperDesk::readTexts(std::function<void(std::vector<PaperTextNow>)> done)
{
    m_services.keeping.thread().read([guard = QPointer<PaperDesk>(this), done = std::move(done)](store::Store& store) {
        const auto settings = store.settings();
        if (!settings) {
            return;
        }
        const service::PaperWords words(service::shippedPaperTexts(), settings.value());
        std::vector<PaperTextNow> texts;
        for (const auto& [key, shipped] : words.shipped()) {
            texts.push_back({text(key), text(shipped.says), words.lines(key), words.isOwn(key)});
        }
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [guard, texts = std::move(texts), done] {
                if (guard) {
                    done(texts);
                }
            },
            Qt::QueuedConnection);
    });
}

void PaperDesk::keepText(const QString& key, const QString& words)
{
    const service::PaperWords shipped(service::shippedPaperTexts(), {});
    const std::string value = shipped.settingValue(key.toStdString(), words);
    m_services.keeping.write([setting = service::PaperWords::settingKey(key.toStdString()),
                              value](store::Store& store) { return store.setSetting(setting, value); });
}

void PaperDesk::writeWall(std::function<void(const QString& words)> done)
{
    auto desk = std::make_shared<Desk>();
    desk->board = m_services.bench.board();
    desk->studio = m_studio;
    desk->manner = m_manner;
    desk->now = m_services.clock.now().utc;
    desk->folder = folder();
    desk->sheet = sheet();
    m_services.aside.run([desk, done = std::move(done)]() -> parts::Aside::Then {
        QDir().mkpath(desk->folder);
        const QString path = QDir(desk->folder).filePath(QStringLiteral("bench-for-the-wall.pdf"));
        const papers::Paper paper = paperwork::wallList(desk->board, desk->studio, desk->manner, desk->now);
        const QString words = wordsOf(papers::writePdf(paper, desk->sheet, path), path);
        return [words, done] { done(words); };
    });
}

} // namespace mend::app
