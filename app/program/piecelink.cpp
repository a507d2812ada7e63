#include "app/program/piecelink.h"

#include "app/paperwork/facts.h"
#include "app/parts/png.h"
#include "app/program/banners.h"
#include "core/service/doorwording.h"

#include <QFileInfo>
#include <QStandardPaths>
#include <QTimer>
#include <algorithm>

namespace mend::app {

using service::text;

namespace {

constexpr int undoFor = 10'000; // ms

const QString& photoFolderKey()
{
    static const QString key = QStringLiteral("photos/folder");
    return key;
}

std::vector<parts::Sheet::Facts::Fact> factsOf(const papers::Facts& facts)
{
    std::vector<parts::Sheet::Facts::Fact> all;
    for (const papers::Fact& fact : facts.rows) {
        all.push_back({fact.label, fact.words});
    }
    return all;
}

/// What former visits put into a piece that has come back, as long as nobody said what gave way.
std::vector<MayHaveGivenWay> earlierIn(const service::PieceFile& file, const rules::RuleBook& book,
                                       const service::Manner& manner)
{
    std::vector<MayHaveGivenWay> earlier;
    const auto& visits = file.dossier.visits;
    if (visits.size() < 2 || !visits.back().faults.empty()) {
        return earlier;
    }
    for (std::size_t i = 0; i + 1 < visits.size(); ++i) {
        for (const bench::PutIn& put : visits[i].putIn) {
            const rules::Material* material = book.material(put.material);
            QStringList below;
            if (!put.batch.empty()) {
                below += text(put.batch);
            }
            below += service::dayWords(service::dayIn(manner.zone)(put.at), manner);
            MayHaveGivenWay each{put.stage, put.mix, text(material ? material->name : put.material),
                                 service::joined(below)};
            const bool known = std::ranges::any_of(earlier, [&each](const MayHaveGivenWay& other) {
                return other.words == each.words && other.below == each.below;
            });
            if (!known) {
                earlier.push_back(std::move(each));
            }
        }
    }
    return earlier;
}

} // namespace

PieceLink::PieceLink(Services services, MainWindow& window, parts::TapGate& gate, const service::Manner& manner,
                     const service::Studio& studio, QObject* parent)
    : QObject(parent), m_services(services), m_window(window), m_space(new PieceSpace(gate)),
      m_handOver(new HandOverSpace(gate)),
      m_papers({services.bench, services.keeping, m_aside, services.clock, services.settings})
{
    m_window.addSpace(QStringLiteral("piece"), tr("Piece"), m_space);
    m_window.addSpace(QStringLiteral("handover"), {}, m_handOver);
    const auto dress = [this] {
        m_space->setLook(m_window.look());
        m_handOver->setLook(m_window.look());
    };
    dress();
    connect(&m_window, &MainWindow::lookChanged, this, dress);
    m_space->setPhotoFolder(
        services.settings.value(photoFolderKey(), QStandardPaths::writableLocation(QStandardPaths::PicturesLocation))
            .toString());
    setManner(manner, studio);
    connectSpace();
    connectTold();
    connectHandOver();
    m_space->showNone();
}

void PieceLink::setManner(const service::Manner& manner, const service::Studio& studio)
{
    m_manner = manner;
    m_space->setManner(manner);
    m_handOver->setManner(manner);
    m_papers.setManner(manner, studio);
    show();
}

void PieceLink::openPiece(PieceId piece)
{
    if (piece != m_piece) {
        m_piece = piece;
        m_file.reset();
        m_small.clear();
        m_written.clear();
        m_handing.clear();
        m_ownerHidden = m_window.bench().picture().hideOwners;
    }
    m_window.showSpace(QStringLiteral("piece"));
    reload();
}

void PieceLink::handOver(PieceId piece)
{
    openPiece(piece);
    m_handing.clear();
    m_handOver->setDone(std::nullopt); // what was told of it before is over
    m_window.showSpace(QStringLiteral("handover"));
}

void PieceLink::reload()
{
    if (!m_piece.isSet()) {
        return;
    }
    m_services.door.openPiece(m_piece, [this](const Result<service::PieceFile>& file) {
        if (!file) {
            m_space->say(troubleWords(file.fault()));
        } else if (file.value().piece.id == m_piece) { // else another was opened meanwhile
            m_file = file.value();
            needSmall();
            show();
        }
    });
}

/// Asks for the small pictures that are not there yet.
void PieceLink::needSmall()
{
    for (const store::NotedPhoto& photo : m_file->photos) {
        const std::string& hash = photo.use.photo;
        if (m_small.contains(hash)) {
            continue;
        }
        m_small[hash] = {};
        m_services.door.readThumbnail(hash, [this, hash](const Result<std::optional<store::Bytes>>& bytes) {
            const auto wanted = m_small.find(hash);
            if (wanted != m_small.end() && bytes && bytes.value()) {
                wanted->second = QImage::fromData(QByteArray::fromStdString(*bytes.value()));
                show();
            }
        });
    }
}

std::vector<PaperOffer> PieceLink::offers() const
{
    std::vector<PaperOffer> offers;
    for (const auto& [key, title] : PaperDesk::all()) {
        const auto written = m_written.find(key);
        offers.push_back({key, title, written == m_written.end() ? QString() : written->second});
    }
    return offers;
}

std::shared_ptr<const PieceNow> PieceLink::pieceNow() const
{
    const service::BenchService& bench = m_services.bench;
    auto shown = std::make_shared<PieceNow>();
    shown->file = *m_file;
    shown->at = now();
    const bench::PieceState* state = bench.bench().piece(m_piece);
    shown->inHand = state != nullptr;
    shown->facts = service::handOverFacts(*m_file, state, bench.book(), now(), service::dayIn(m_manner.zone));
    const bench::VisitFacts& visit = m_file->dossier.now();
    shown->state = state ? service::progressWords(*state, bench.book(), now(), service::dayIn(m_manner.zone), m_manner)
                   : visit.returnedUnmended ? tr("went back unmended")
                   : visit.handedOver       ? tr("handed over")
                                            : QString();
    if (state) {
        shown->stages = service::stageLines(*state, bench.book());
        if (state->onHold) {
            shown->state = service::joined({shown->state, tr("on hold")});
        }
    }
    const auto next = std::ranges::find_if(shown->stages, [](const auto& stage) { return !stage.isSettled(); });
    shown->next = next == shown->stages.end() ? QString() : next->words;
    const service::PaperWords words({}, {}); // no standing text stands on a screen
    const service::Studio studio;
    const paperwork::Source source{*m_file, bench.bench(), bench.book(), studio, words, m_manner, now(), {}};
    shown->procedure = paperwork::procedureName(source);
    shown->object = factsOf(paperwork::objectFacts(source));
    shown->counted = factsOf(paperwork::countFacts(source));
    if (const record::Visit* told = m_file->visit()) {
        shown->agreed = paperwork::agreedPoints(told->consent).lines;
    }
    shown->earlier = earlierIn(*m_file, bench.book(), m_manner);
    shown->papers = offers();
    shown->paperFolder = m_papers.folder();
    shown->letter = m_papers.sheet() == papers::Sheet::Letter;
    for (const papers::Label label : papers::allLabels) {
        const QSizeF size = papers::millimetresOf(label);
        shown->tags.push_back(
            {papers::keyOf(label),
             tr("%1 × %2 mm").arg(m_manner.locale.toString(size.width()), m_manner.locale.toString(size.height())),
             label == m_papers.label()});
    }
    shown->small = m_small;
    shown->ownerHidden = m_ownerHidden;
    return shown;
}

void PieceLink::show()
{
    if (!m_file) {
        return;
    }
    if (isShown("piece")) {
        m_space->setNow(pieceNow());
    } else if (isShown("handover")) {
        showHandOver();
    }
}

void PieceLink::showHandOver()
{
    const auto piece = pieceNow();
    auto shown = std::make_shared<HandOverNow>();
    shown->file = piece->file;
    shown->facts = piece->facts;
    shown->small = piece->small;
    shown->at = piece->at;
    if (piece->facts.from && !piece->facts.from->material.empty()) {
        const rules::Material* material = m_services.bench.book().material(piece->facts.from->material);
        shown->material = material ? text(material->name) : QString();
    }
    m_handOver->setNow(std::move(shown));
}

void PieceLink::connectSpace()
{
    connect(&m_window, &MainWindow::spaceChanged, this, [this](const QString& key) {
        if (key == QLatin1String("piece") || key == QLatin1String("handover")) {
            reload();
        }
    });
    connect(&m_window.bench().told(), &Told::pieceWanted, this, &PieceLink::openPiece);
    connect(&m_services.bench, &service::BenchService::acted, this, [this](PieceId piece) {
        if (piece == m_piece && isShown("piece")) {
            reload();
        }
    });
    connect(m_space, &PieceSpace::ownerHiddenWanted, this, [this](bool hidden) {
        m_ownerHidden = hidden;
        show();
    });
    connect(m_space, &PieceSpace::photoWanted, this, &PieceLink::wholePhoto);
    connect(m_space, &PieceSpace::photosChosen, this, &PieceLink::takePhotos);
    connect(m_space, &PieceSpace::photoPasted, this, [this](const QImage& picture, const QString& purpose) {
        if (!mayWrite()) {
            return;
        }
        const PieceId piece = m_piece;
        m_aside.run([this, picture, piece, purpose]() -> parts::Aside::Then {
            auto photo = std::make_shared<Result<photos::ReadyPhoto>>(photos::readyPhoto(picture));
            return [this, photo, piece, purpose] { keepPhoto(piece, *photo, {}, purpose); };
        });
    });
    connect(m_space, &PieceSpace::photoFolderChosen, this,
            [this](const QString& folder) { m_services.settings.setValue(photoFolderKey(), folder); });
    connect(m_space, &PieceSpace::handOverWanted, this, [this] { handOver(m_piece); });
    connect(m_space, &PieceSpace::paperWanted, this, [this](const QString& key) { writePapers({key}); });
    connect(m_space, &PieceSpace::paperFolderTold, &m_papers, &PaperDesk::setFolder);
    connect(m_space, &PieceSpace::tagChosen, this, &PieceLink::chooseTag);
    connect(m_space, &PieceSpace::sheetChosen, this, [this](bool letter) {
        m_papers.setSheet(letter ? papers::Sheet::Letter : papers::Sheet::A4);
        show();
    });
}

void PieceLink::chooseTag(const QString& key)
{
    if (const auto label = papers::labelOf(key)) {
        m_papers.setLabel(*label);
        show();
    }
}

/// What is told of the piece itself.
void PieceLink::connectTold()
{
    const auto kept = [this](const Outcome& outcome) {
        if (!outcome) {
            m_space->say(troubleWords(outcome.fault()));
        }
        reload();
    };
    connect(m_space, &PieceSpace::photoNoted, this,
            [this, kept](const store::PhotoUse& use, const record::PhotoNote& note) {
                m_services.door.notePhoto(use, note, kept);
            });
    connect(m_space, &PieceSpace::conditionTold, this,
            [this, kept](const record::Visit& visit) { m_services.door.put(visit, kept); });
    connect(m_space, &PieceSpace::fragmentFound, this, [this](int count, const QString& where) {
        m_services.door.fragmentFound(m_piece, count, where.toStdString());
    });
    connect(m_space, &PieceSpace::faultNamed, this,
            [this](const bench::StageInstance& stage, MixId mix, const QString& note) {
                m_services.door.nameFault(m_piece, stage, mix, note.toStdString());
            });
    connect(m_space, &PieceSpace::ownerTold, this, [this](const QString& how, const QString& about, bool isNotice) {
        if (isNotice) {
            m_services.door.giveNotice(m_piece, how.toStdString(), about.toStdString());
        } else {
            m_services.door.tellOwner(m_piece, how.toStdString(), about.toStdString());
        }
    });
}

/// Dropping and pasting go through no spot that could be curbed.
bool PieceLink::mayWrite()
{
    if (!m_services.keeping.isWritable()) {
        m_space->say(noWritingWords());
    }
    return m_services.keeping.isWritable();
}

void PieceLink::takePhotos(const QStringList& paths, const QString& purpose)
{
    if (!mayWrite()) {
        return;
    }
    const PieceId piece = m_piece;
    m_space->say(paths.size() == 1 ? tr("Taking the photo in.") : tr("Taking %1 photos in.").arg(paths.size()));
    for (const QString& path : paths) {
        m_aside.run([this, path, zone = m_manner.zone, piece, purpose]() -> parts::Aside::Then {
            auto photo = std::make_shared<Result<photos::ReadyPhoto>>(photos::readyPhotoOf(path, zone));
            return
                [this, photo, path, piece, purpose] { keepPhoto(piece, *photo, QFileInfo(path).fileName(), purpose); };
        });
    }
}

void PieceLink::keepPhoto(PieceId piece, const Result<photos::ReadyPhoto>& photo, const QString& name,
                          const QString& purpose)
{
    if (!photo) {
        m_space->say(photos::photoFaultWords(photo.fault(), name));
        return;
    }
    store::PhotoUse use;
    use.piece = piece;
    use.purpose = purpose.toStdString();
    record::PhotoNote note;
    note.visit = m_file && piece == m_piece ? m_file->dossier.now().number : 1;
    note.taken = photo.value().taken;
    m_services.door.addPhoto(photo.value().working, photo.value().thumbnail, use, note,
                             [this](const Result<std::string>& kept) {
                                 m_space->say(kept ? QString() : troubleWords(kept.fault()));
                                 reload();
                             });
}

void PieceLink::wholePhoto(const std::string& hash)
{
    m_services.door.readPhoto(hash, [this, hash](const Result<std::optional<store::Bytes>>& bytes) {
        if (bytes && bytes.value()) {
            m_space->setPhoto(hash, QImage::fromData(QByteArray::fromStdString(*bytes.value())));
        } else {
            m_space->say(tr("This photo is damaged in the file. Settings, Backup has an earlier one."));
        }
    });
}

void PieceLink::writePapers(const QStringList& keys)
{
    const PieceId piece = m_piece;
    for (const QString& key : keys) {
        m_written[key] = tr("Being written.");
    }
    show();
    m_papers.write(piece, keys, [this, piece](const QString& key, const QString& words) {
        if (piece == m_piece) {
            m_written[key] = words;
            show();
            showDone();
        }
    });
}

void PieceLink::connectHandOver()
{
    connect(m_handOver, &HandOverSpace::handedOver, this, &PieceLink::tell);
    connect(m_handOver, &HandOverSpace::leaveWanted, this, [this] { m_window.showSpace(QStringLiteral("bench")); });
    connect(m_handOver, &HandOverSpace::undoWanted, this, [this] {
        m_services.bench.undo(m_handing);
        m_handing.clear();
        m_handOver->setDone(std::nullopt);
        reload();
    });
    connect(m_handOver, &HandOverSpace::paperWanted, this, [this](const QString& key) {
        writePapers(key == QLatin1String("all") ? PaperDesk::atHandOver() : QStringList{key});
    });
    connect(&m_services.bench, &service::BenchService::storedChanged, this, &PieceLink::showDone);
}

void PieceLink::connectPapers(SpacesLink& spaces)
{
    SettingsSpace* const settings = &spaces.settings();
    const auto showTexts = [this, settings] {
        m_papers.readTexts([settings](std::vector<PaperTextNow> texts) { settings->setPaperTexts(std::move(texts)); });
    };
    connect(&spaces, &SpacesLink::settingsShown, this, showTexts);
    connect(settings, &SettingsSpace::paperTextTold, this, [this, showTexts](const QString& key, const QString& words) {
        m_papers.keepText(key, words);
        showTexts();
    });
    connect(settings, &SettingsSpace::studioTold, this, [this](const service::Studio& studio) {
        m_manner.zone = studio.timeZone();
        m_manner.fahrenheit = studio.fahrenheit;
        m_manner.inches = studio.inches;
        setManner(m_manner, studio);
    });
    DayLogSpace* const log = &spaces.log();
    connect(log, &DayLogSpace::wallListWanted, this,
            [this, log] { m_papers.writeWall([log](const QString& words) { log->showWallWritten(words); }); });
}

void PieceLink::tell(const service::HandingOver& told, const QImage& signature)
{
    m_handing = m_services.door.handOver(told);
    m_handedAt = now();
    if (m_handing.empty()) {
        m_handOver->say(tr("It is no longer in the house."));
        return;
    }
    if (!signature.isNull()) {
        store::PhotoUse use{{}, told.piece, m_handing.back(), record::signaturePhoto};
        record::PhotoNote note;
        note.visit = m_file ? m_file->dossier.now().number : 1;
        const std::string drawn = parts::pngOf(signature);
        m_services.door.addPhoto(drawn, drawn, use, note, [this](const Result<std::string>&) { reload(); });
    }
    showDone();
    QTimer::singleShot(undoFor + 100, this, &PieceLink::showDone);
    reload();
}

/// What became of the hand-over, as long as it is looked at.
void PieceLink::showDone()
{
    if (m_handing.empty() || !m_file) {
        return;
    }
    HandedOver done;
    const QString name = service::isolated(text(m_file->piece.benchName));
    const auto& told = m_handOver->told();
    done.words = told.unmended.empty() ? tr("%1 is handed over").arg(name) : tr("%1 is given back unmended").arg(name);
    done.isStored = !m_services.bench.notStoredYet().contains(m_piece);
    done.canUndo = now() - m_handedAt < std::chrono::milliseconds(undoFor);
    const QStringList given = PaperDesk::atHandOver();
    for (const auto& [key, title] : PaperDesk::all()) {
        const auto written = m_written.find(key);
        if (given.contains(key)) {
            done.papers.push_back({key, title, written == m_written.end() ? QString() : written->second});
        }
    }
    m_handOver->setDone(done);
}

} // namespace mend::app
