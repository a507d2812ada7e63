#include "app/piece/piecespace.h"

#include "app/papers/qrmark.h"
#include "app/parts/outline.h"
#include "core/service/doorwording.h"

#include <QApplication>
#include <QClipboard>
#include <QDragEnterEvent>
#include <QKeyEvent>
#include <QMimeData>
#include <QPainter>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

QString see(const char* what) { return QStringLiteral("home/see/") + QLatin1String(what); }

/// Black on white in every theme: a scanner reads nothing else.
QImage codeOf(const QString& number)
{
    const papers::QrMark mark(number);
    constexpr int module = 8;
    QImage image(std::max(1, mark.side()) * module, std::max(1, mark.side()) * module, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    mark.draw(painter, image.rect());
    return image;
}

QStringList pathsIn(const QMimeData* data)
{
    QStringList paths;
    for (const QUrl& url : data->urls()) {
        if (url.isLocalFile()) {
            paths += url.toLocalFile();
        }
    }
    return paths;
}

} // namespace

QImage drawnPot(const parts::Look& look, const record::Piece& piece, int side)
{
    parts::Scribe scribe(look, QSize(side, side), false);
    parts::drawOutline(scribe, QRectF(0, 0, side, side), parts::shapeFor(text(piece.benchName), piece.id.value()), 0.0,
                       false);
    QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const parts::Item& item : scribe.take().items) {
        parts::paintItem(painter, item);
    }
    return image;
}

PieceSpace::PieceSpace(parts::TapGate& gate, QWidget* parent) : SheetSpace(gate, parent), m_board(new PhotoBoard)
{
    setAcceptDrops(true);
    list().setAccessibleName(tr("Piece"));
    page().setAccessibleName(tr("About this piece"));
    page().setInset(QStringLiteral("photo"), m_board);
    connect(m_board, &PhotoBoard::pointed, this, &PieceSpace::point);
    connect(&page(), &parts::SheetView::entered, this, [this] { page().setFocus(); });
}

void PieceSpace::setLook(const parts::Look& look)
{
    m_board->setLook(look);
    SheetSpace::setLook(look);
}

void PieceSpace::setNow(std::shared_ptr<const PieceNow> now)
{
    const bool other = !m_now || m_now->file.piece.id != now->file.piece.id;
    m_now = std::move(now);
    if (other) {
        m_page = PiecePage::Condition;
        m_said.clear();
        m_editing.reset();
        m_purpose.clear();
        m_photo.clear();
        m_picked.clear();
        m_paperFolder = m_now->paperFolder;
    }
    if (m_page == PiecePage::Photo && !photo()) {
        m_page = PiecePage::Photos;
    }
    refresh();
}

void PieceSpace::showNone()
{
    m_now.reset();
    refresh();
}

void PieceSpace::say(const QString& words)
{
    m_said = words;
    refresh();
}

void PieceSpace::openPage(PiecePage page)
{
    m_page = page;
    m_said.clear();
    m_editing.reset();
    m_mark.reset();
    m_chosenMark = 0;
    m_words.clear();
    refresh();
    SheetSpace::openPage();
}

QString PieceSpace::day(Instant at) const { return service::dayWords(service::dayIn(m_manner.zone)(at), m_manner); }

Sheet PieceSpace::listSheet()
{
    Sheet sheet;
    if (!m_now) {
        sheet.title = tr("Piece");
        sheet.say(tr("No piece is open. Tap “More” on a card of the Bench, or find one by its number, its name or "
                     "its owner."));
        return sheet;
    }
    sheet.title = text(m_now->file.piece.benchName);
    sheet.beside = service::numberWords(m_now->file.piece.number);
    if (!m_said.isEmpty()) {
        sheet.say(m_said, Sheet::Tone::Grave);
    }
    sayWho(sheet);
    sayOwner(sheet);
    offerHandOver(sheet);
    const auto told = m_now->file.visit();
    row(sheet, PiecePage::Condition, tr("Condition and consent"),
        told && told->consent.isSigned() ? tr("signed") : tr("not signed"));
    row(sheet, PiecePage::Photos, tr("Photos"), m_manner.locale.toString(int(m_now->file.photos.size())));
    const int in = m_now->facts.fragments.in.value_or(m_now->file.piece.fragments);
    row(sheet, PiecePage::Counts, tr("Fragments and what came with it"), m_manner.locale.toString(in));
    const auto done = std::ranges::count_if(m_now->stages, [](const auto& stage) { return stage.isSettled(); });
    row(sheet, PiecePage::Stages, tr("Stages"),
        m_now->stages.empty() ? QString() : tr("%1 of %2").arg(done).arg(m_now->stages.size()));
    row(sheet, PiecePage::Visits, tr("Visits"), m_manner.locale.toString(int(m_now->file.dossier.visits.size())));
    row(sheet, PiecePage::Papers, tr("Papers"), {});
    return sheet;
}

void PieceSpace::row(Sheet& sheet, PiecePage page, const QString& label, const QString& value)
{
    const bool here = m_page == page ||
                      (page == PiecePage::Photos && (m_page == PiecePage::Photo || m_page == PiecePage::PickPhotos));
    sheet.add(Sheet::Row{QStringLiteral("home/see/%1").arg(int(page)),
                         label,
                         {},
                         value,
                         [this, page] { openPage(page); },
                         here && !isNarrow()});
}

void PieceSpace::sayWho(Sheet& sheet) const
{
    Sheet::Pictures pictures;
    pictures.side = 124;
    const auto& photos = m_now->file.photos;
    // The newest look of it: mended if it is, else as it came.
    const store::NotedPhoto* best = nullptr;
    for (const store::NotedPhoto& each : photos) {
        if (each.use.purpose != record::signaturePhoto && (!best || each.use.purpose == record::finishedPhoto)) {
            best = &each;
        }
    }
    const auto known = best ? m_now->small.find(best->use.photo) : m_now->small.end();
    auto* self = const_cast<PieceSpace*>(this);
    pictures.pictures.push_back(
        {see("photos"),
         known != m_now->small.end() ? known->second : drawnPot(look(), m_now->file.piece, look().measure.px(150)),
         best ? tr("Photos") : tr("No photo yet"), [self] { self->openPage(PiecePage::Photos); }});
    pictures.pictures.push_back({QStringLiteral("home/see/tag"), codeOf(text(m_now->file.piece.number)),
                                 tr("Tag %1").arg(service::numberWords(m_now->file.piece.number)),
                                 [self] { self->openPage(PiecePage::Papers); }});
    sheet.add(std::move(pictures));
    sheet.add(Sheet::Row{QStringLiteral("home/words/state"), m_now->state,
                         m_now->next.isEmpty() ? m_now->procedure : tr("Next: %1").arg(m_now->next)});
}

void PieceSpace::sayOwner(Sheet& sheet)
{
    const record::Customer& owner = m_now->file.owner;
    const bool hidden = m_now->ownerHidden;
    const QString name = hidden             ? tr("hidden")
                         : owner.isErased() ? tr("erased at their wish")
                                            : service::isolated(text(owner.name));
    QStringList below;
    if (!hidden && !owner.contact.empty()) {
        below += text(owner.contact);
    }
    if (const int notices = m_now->file.dossier.now().notices(); notices > 0) {
        below += notices == 1 ? tr("1 notice that it lies here unclaimed")
                              : tr("%1 notices that it lies here unclaimed").arg(notices);
    }
    sheet.add(Sheet::Row{QStringLiteral("home/see/%1").arg(int(PiecePage::Owner)), tr("Whose it is"),
                         service::joined(below), name, [this] { openPage(PiecePage::Owner); },
                         m_page == PiecePage::Owner && !isNarrow()});
    if (const auto promise = m_now->facts.promise) {
        sheet.add(Sheet::Row{
            QStringLiteral("home/words/promise"), tr("Promised"), {}, service::dayWords(promise->day, m_manner)});
    }
}

void PieceSpace::offerHandOver(Sheet& sheet)
{
    const auto& visit = m_now->file.dossier.now();
    if (visit.handedOver) {
        sheet.add(Sheet::Row{QStringLiteral("home/words/handed"), tr("Handed over"), {}, day(visit.handedOver->at)});
        return;
    }
    if (visit.returnedUnmended) {
        sheet.add(Sheet::Row{
            QStringLiteral("home/words/returned"), tr("Returned unmended"), {}, day(*visit.returnedUnmended)});
        return;
    }
    if (!m_now->inHand) {
        return;
    }
    const QString below = !m_now->facts.from        ? tr("work is still to do")
                          : m_now->facts.isWaitOver ? tr("may be collected")
                          : m_now->facts.collectable
                              ? tr("from %1").arg(service::dayWords(*m_now->facts.collectable, m_manner))
                              : QString();
    sheet.add(Sheet::Choices{
        {}, {{QStringLiteral("home/handover"), tr("Hand it over"), below, [this] { Q_EMIT handOverWanted(); }, true}}});
}

Sheet PieceSpace::pageSheet()
{
    if (!m_now) {
        return {};
    }
    switch (m_page) {
    case PiecePage::Condition:
        return m_editing ? editSheet() : conditionSheet();
    case PiecePage::Photos:
        return photosSheet();
    case PiecePage::Photo:
        return photoSheet();
    case PiecePage::PickPhotos:
        return pickSheet();
    case PiecePage::Counts:
        return countsSheet();
    case PiecePage::Stages:
        return stagesSheet();
    case PiecePage::Visits:
        return visitsSheet();
    case PiecePage::Owner:
        return ownerSheet();
    case PiecePage::Papers:
        return papersSheet();
    }
    return {};
}

// What a photo is for when nobody said: the state of the piece says it.
QString PieceSpace::purpose() const
{
    if (!m_purpose.isEmpty()) {
        return m_purpose;
    }
    const bool mended = m_now && m_now->facts.from.has_value();
    const bool begun = m_now && std::ranges::any_of(m_now->stages, [](const auto& stage) { return stage.isSettled(); });
    return QLatin1String(mended ? record::finishedPhoto : begun ? record::duringPhoto : record::conditionPhoto);
}

void PieceSpace::dragEnterEvent(QDragEnterEvent* event)
{
    if (m_now && (!pathsIn(event->mimeData()).isEmpty() || event->mimeData()->hasImage())) {
        event->acceptProposedAction();
    }
}

void PieceSpace::dropEvent(QDropEvent* event)
{
    const QStringList paths = pathsIn(event->mimeData());
    if (!m_now) {
        return;
    }
    event->acceptProposedAction();
    openPage(PiecePage::Photos);
    if (!paths.isEmpty()) {
        Q_EMIT photosChosen(paths, purpose());
    } else if (event->mimeData()->hasImage()) {
        Q_EMIT photoPasted(qvariant_cast<QImage>(event->mimeData()->imageData()), purpose());
    }
}

void PieceSpace::paste()
{
    const QMimeData* copied = QApplication::clipboard()->mimeData();
    const QStringList paths = copied ? pathsIn(copied) : QStringList();
    if (!paths.isEmpty()) {
        Q_EMIT photosChosen(paths, purpose());
    } else if (copied && copied->hasImage()) {
        Q_EMIT photoPasted(qvariant_cast<QImage>(copied->imageData()), purpose());
    } else {
        say(tr("Nothing to paste: copy a picture first."));
    }
}

void PieceSpace::keyPressEvent(QKeyEvent* event)
{
    if (m_now && event->matches(QKeySequence::Paste)) {
        openPage(PiecePage::Photos);
        paste();
        return;
    }
    SheetSpace::keyPressEvent(event);
}

} // namespace mend::app
