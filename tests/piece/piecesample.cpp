#include "tests/piece/piecesample.h"

#include <QPainter>

namespace mend::app::samples {

namespace {

using namespace std::chrono_literals;

const Instant noon = std::chrono::sys_days(std::chrono::year(2026) / 11 / 28) + 12h;

CivilDay dayOf(int month, unsigned day)
{
    return std::chrono::year(2026) / std::chrono::month(static_cast<unsigned>(month)) / std::chrono::day(day);
}

std::string hashOf(char of) { return std::string(64, of); }

QImage bowl(const QColor& ground)
{
    QImage image(320, 240, QImage::Format_RGB32);
    image.fill(ground);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(QColor(0x6f, 0x8f, 0xb0));
    painter.drawPie(60, 20, 200, 180, 180 * 16, 180 * 16);
    return image;
}

} // namespace

service::Manner pieceManner()
{
    service::Manner manner;
    manner.zone = QTimeZone("Europe/Berlin");
    manner.locale = QLocale(QLocale::English, QLocale::UnitedKingdom);
    return manner;
}

std::shared_ptr<PieceNow> pieceNow()
{
    auto now = std::make_shared<PieceNow>();
    service::PieceFile& file = now->file;
    file.piece.id = PieceId(17);
    file.piece.number = "2604175";
    file.piece.benchName = "Heron bowl";
    file.piece.fragments = 7;
    file.owner = {CustomerId(3), "Ines Varga", "01632 960 123"};
    file.owner.note = "rings back in the evening";
    record::Visit first;
    first.piece = file.piece.id;
    first.condition.seen = "broken into five, one loss at the foot";
    record::Visit visit;
    visit.piece = file.piece.id;
    visit.number = 2;
    visit.cameFor = record::CameFor::JoinFailed;
    visit.condition = {"rim chip 12 mm, two joins open, brown glue on both edges",
                       "joined before with a household glue",
                       "by eye, in daylight",
                       {"brown glue from foot to rim"}};
    visit.accessories = {{"lid", 1}, {"stand", 2}};
    visit.wishes = "the line may shine";
    visit.story = "a wedding present of her grandmother";
    visit.consent.scope = "rejoin, fill the loss, gold line";
    visit.consent.signedOn = dayOf(11, 2);
    visit.consent.how = record::Signature::OnPaper;
    file.visits = {first, visit};
    file.photos = {{{hashOf('a'), file.piece.id, {}, record::conditionPhoto},
                    {2, noon - 600h, "from above", {{record::MarkKind::Chip, 3000, 2000, "rim, 12 mm"}}}},
                   {{hashOf('b'), file.piece.id, {}, record::conditionPhoto}, {2, {}, "", {}}},
                   {{hashOf('c'), file.piece.id, {}, record::duringPhoto}, {2, noon - 100h, "", {}}}};
    bench::VisitFacts was;
    was.receivedAt = noon - 9000h;
    was.handedOver = bench::Handing{noon - 8000h, "Ines Varga", "drawn", {}, {}};
    bench::VisitFacts is;
    is.number = 2;
    is.cameFor = "joinFailed";
    is.receivedAt = noon - 630h;
    is.promises = {{dayOf(12, 4), noon - 620h, {}}};
    is.price = Money(14000, "GBP");
    is.payments = {{Money(4400, "GBP"), noon - 620h, {}}};
    is.ownerWords = {{false, "phone", "the line is laid, it takes a week more", noon - 50h, {}}};
    is.fragments = {7, {}};
    is.accessories = {3, {}};
    file.dossier = {file.piece.id, {was, is}};
    now->facts.promise = is.promises.front();
    now->facts.owed = bench::owedFor(is);
    now->facts.fragments = is.fragments;
    now->facts.accessories = is.accessories;
    now->facts.accessoryList = visit.accessories;
    now->facts.against = {service::HandOverFacts::Against::WorkToDo};
    now->state = QStringLiteral("in work");
    now->next = QStringLiteral("Wipe back the filler");
    now->procedure = QStringLiteral("Gold-dusted lacquer seam");
    now->inHand = true;
    now->stages = {{QStringLiteral("Glue the set"), QStringLiteral("1 of 2"), noon - 90h, true, false},
                   {QStringLiteral("Glue the set"), QStringLiteral("2 of 2"), noon - 80h, true, false},
                   {QStringLiteral("Tone the fill"), QStringLiteral("left out"), {}, false, true},
                   {QStringLiteral("Wipe back the filler"), {}, {}, false, false},
                   {QStringLiteral("Lay the line"), {}, {}, false, false}};
    now->earlier = {{{"glueSet", 1},
                     MixId(4),
                     QStringLiteral("clear fast two-part adhesive"),
                     QStringLiteral("batch 7 · Tuesday, 18 November 2025")}};
    now->object = {{QStringLiteral("What it is"), QStringLiteral("small blue bowl with a heron")},
                   {QStringLiteral("Size"), QStringLiteral("82 mm high")},
                   {QStringLiteral("Body"), QStringLiteral("porous: it drinks water")}};
    now->counted = {{QStringLiteral("Fragments"), QStringLiteral("7")},
                    {QStringLiteral("Came with it"), QStringLiteral("lid; stand (2)")}};
    now->agreed = {QStringLiteral("A mend that can be undone."), QStringLiteral("The mend may show.")};
    now->papers = {{QStringLiteral("intake-receipt"), QStringLiteral("Intake receipt"), {}},
                   {QStringLiteral("treatment-record"), QStringLiteral("Treatment record"),
                    QStringLiteral("Written: /home/mender/Documents/260417-5-treatment-record.pdf, 2 pages.")},
                   {QStringLiteral("tag"), QStringLiteral("Tag for the bag"), {}}};
    now->tags = {{QStringLiteral("50x20"), QStringLiteral("50 × 20 mm"), false},
                 {QStringLiteral("62x29"), QStringLiteral("62 × 29 mm"), true},
                 {QStringLiteral("100x50"), QStringLiteral("100 × 50 mm"), false}};
    now->paperFolder = QStringLiteral("/home/mender/Documents");
    now->small = {{hashOf('a'), bowl(QColor(0xd8, 0xcf, 0xbe))},
                  {hashOf('b'), bowl(QColor(0xb8, 0xbe, 0xb0))},
                  {hashOf('c'), bowl(QColor(0x90, 0x88, 0x80))}};
    now->at = noon;
    return now;
}

std::shared_ptr<HandOverNow> handOverNow()
{
    const auto piece = pieceNow();
    auto now = std::make_shared<HandOverNow>();
    now->file = piece->file;
    now->facts = piece->facts;
    now->small = piece->small;
    now->at = piece->at;
    now->facts.from = bench::HandOverFrom{noon + 100h, "urushi"};
    now->facts.collectable = dayOf(12, 3);
    now->facts.against = {service::HandOverFacts::Against::WaitNotOver, service::HandOverFacts::Against::MoneyOwed,
                          service::HandOverFacts::Against::FragmentsNotCounted,
                          service::HandOverFacts::Against::AccessoriesNotCounted};
    now->material = QStringLiteral("lacquer");
    return now;
}

} // namespace mend::app::samples
