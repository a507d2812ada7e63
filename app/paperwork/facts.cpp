#include "app/paperwork/facts.h"

#include "app/papers/glyphs.h"
#include "app/photos/marks.h"
#include "core/service/doorwording.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace mend::paperwork {

namespace {

QString bodyWords(record::Body body)
{
    switch (body) {
    case record::Body::Porous:
        return PapersWords::tr("porous: it drinks water");
    case record::Body::Vitrified:
        return PapersWords::tr("vitrified: it does not drink");
    case record::Body::Unknown:
        break;
    }
    return PapersWords::tr("not known; treated as porous");
}

/// What is marked on a photo: "chip: rim, 12 mm".
QString captionOf(const record::PhotoNote& note, const Source& source)
{
    QStringList parts;
    if (!note.words.empty()) {
        parts += service::text(note.words);
    }
    int number = 0;
    for (const record::PhotoMark& mark : note.marks) {
        const QString kind = PapersWords::tr("%1 %2").arg(++number).arg(service::markWords(mark.kind));
        parts += mark.note.empty() ? kind : PapersWords::tr("%1: %2").arg(kind, service::text(mark.note));
    }
    if (note.taken) {
        parts += service::dayWords(service::dayIn(source.manner.zone)(*note.taken), source.manner);
    }
    return service::joined(parts);
}

/// The photo with its marks drawn on it, each with the number that its words have.
QImage marked(QImage image, const record::PhotoNote& note)
{
    if (note.marks.empty()) {
        return image;
    }
    image = image.convertToFormat(QImage::Format_RGB32);
    QFont font = papers::paperFont(12);
    font.setPixelSize(std::max(8, image.width() / 30));
    QPainter painter(&image);
    photos::drawMarks(painter, note.marks, image.rect(), image.width() / 24.0, font);
    painter.end();
    return image;
}

} // namespace

void add(papers::Facts& facts, const QString& label, const QString& words)
{
    if (!words.trimmed().isEmpty()) {
        facts.rows.push_back({label, words});
    }
}

void append(papers::Facts& facts, const papers::Facts& more)
{
    facts.rows.insert(facts.rows.end(), more.rows.begin(), more.rows.end());
}

const record::Visit& visitOf(const Source& source)
{
    static const record::Visit none;
    const record::Visit* visit = source.file.visit();
    return visit == nullptr ? none : *visit;
}

QString todayWords(const Source& source)
{
    return service::dayWords(service::dayIn(source.manner.zone)(source.now), source.manner);
}

const std::string& procedureKey(const Source& source)
{
    const std::string& agreed = visitOf(source).procedure;
    return agreed.empty() ? source.file.piece.procedure : agreed;
}

QString procedureName(const Source& source)
{
    const std::string& key = procedureKey(source);
    const rules::Procedure* procedure = source.book.procedure(key);
    return service::text(procedure == nullptr ? key : procedure->name);
}

QString lengthWords(Length length, const Source& source)
{
    if (source.studio.inches) {
        return PapersWords::tr("%1 in").arg(source.manner.locale.toString(inMillimetres(length) / 25.4, 'f', 2));
    }
    return PapersWords::tr("%1 mm").arg(source.manner.locale.toString(inMillimetres(length), 'f', 0));
}

papers::Paper headed(const QString& kind, const Source& source)
{
    papers::Paper paper;
    paper.kind = kind;
    paper.number =
        service::joined({service::numberWords(source.file.piece.number), service::text(source.file.piece.benchName)});
    paper.code = service::text(source.file.piece.number);
    paper.studio = service::text(source.studio.name);
    paper.date = todayWords(source);
    paper.locale = source.manner.locale;
    return paper;
}

papers::Facts ownerFacts(const Source& source)
{
    papers::Facts facts;
    add(facts, PapersWords::tr("Owner"), service::text(source.file.owner.name));
    add(facts, PapersWords::tr("Reached by"), service::text(source.file.owner.contact));
    return facts;
}

papers::Facts objectFacts(const Source& source)
{
    const record::Piece& piece = source.file.piece;
    papers::Facts facts;
    add(facts, PapersWords::tr("What it is"), service::text(piece.looks));
    add(facts, PapersWords::tr("Maker or origin"), service::text(piece.maker));
    add(facts, PapersWords::tr("Marks on it"), service::text(piece.marks));
    QStringList size;
    const std::pair<const char*, const std::optional<Length>*> lengths[] = {
        {QT_TRANSLATE_NOOP("PapersWords", "%1 high"), &piece.size.height},
        {QT_TRANSLATE_NOOP("PapersWords", "%1 wide"), &piece.size.width},
        {QT_TRANSLATE_NOOP("PapersWords", "%1 deep"), &piece.size.depth},
        {QT_TRANSLATE_NOOP("PapersWords", "wall %1"), &piece.size.wall}};
    for (const auto& [words, length] : lengths) {
        if (*length) {
            size += PapersWords::tr(words).arg(lengthWords(**length, source));
        }
    }
    if (piece.size.mass) {
        size +=
            PapersWords::tr("%1 g").arg(source.manner.locale.toString(std::round(inGrams(*piece.size.mass)), 'f', 0));
    }
    add(facts, PapersWords::tr("Size"), size.join(QStringLiteral(", ")));
    add(facts, PapersWords::tr("Body"), bodyWords(piece.body));
    return facts;
}

papers::Facts countFacts(const Source& source)
{
    const record::Visit& visit = visitOf(source);
    const bench::VisitFacts& told = source.file.dossier.now();
    papers::Facts facts;
    const int fragments =
        told.fragments.in.value_or(visit.fragments > 0 ? visit.fragments : source.file.piece.fragments);
    add(facts, PapersWords::tr("Fragments"), source.manner.locale.toString(fragments + told.fragmentsFound));
    QStringList accessories;
    for (const record::Accessory& accessory : visit.accessories) {
        accessories += accessory.count == 1
                           ? service::text(accessory.what)
                           : PapersWords::tr("%1 (%2)").arg(service::text(accessory.what)).arg(accessory.count);
    }
    add(facts, PapersWords::tr("Came with it"),
        accessories.isEmpty() ? PapersWords::tr("nothing") : accessories.join(QStringLiteral("; ")));
    return facts;
}

void addCondition(papers::Paper& paper, const Source& source)
{
    const record::Condition& condition = visitOf(source).condition;
    papers::Facts facts;
    add(facts, PapersWords::tr("Seen"), service::text(condition.seen));
    add(facts, PapersWords::tr("Looked at"), service::text(condition.how));
    for (const std::string& mend : condition.oldMends) {
        add(facts, PapersWords::tr("Old mend"), service::text(mend));
    }
    if (!facts.rows.empty()) {
        paper.blocks.emplace_back(papers::Heading{PapersWords::tr("Condition")});
        paper.blocks.emplace_back(facts);
    }
    if (!condition.inferred.empty()) {
        paper.blocks.emplace_back(papers::Heading{PapersWords::tr("What is inferred from it")});
        paper.blocks.emplace_back(papers::Paragraph{service::text(condition.inferred), false});
    }
}

void addPhotos(papers::Paper& paper, const Source& source, const char* purpose, const QString& heading)
{
    papers::Pictures pictures;
    for (const store::NotedPhoto& photo : source.file.photos) {
        if (photo.use.purpose == purpose && source.picture) {
            if (const QImage image = source.picture(photo.use.photo); !image.isNull()) {
                pictures.all.push_back({marked(image, photo.note), captionOf(photo.note, source)});
            }
        }
    }
    if (!pictures.all.empty()) {
        paper.blocks.emplace_back(papers::Heading{heading});
        paper.blocks.emplace_back(std::move(pictures));
    }
}

void addText(papers::Paper& paper, const Source& source, const std::string& key, bool isCaution)
{
    for (const QString& line : source.words.lines(key)) {
        paper.blocks.emplace_back(papers::Paragraph{line, isCaution});
    }
}

} // namespace mend::paperwork
