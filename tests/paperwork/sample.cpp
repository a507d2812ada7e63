#include "tests/paperwork/sample.h"

#include "app/papers/paperlayout.h"
#include "tests/support/rulefiles.h"

namespace mend::test {

namespace {

std::map<std::string, exchange::PaperText> shippedTexts()
{
    return exchange::readPaperTexts(textOf(std::filesystem::path(MEND_SOURCE_DIR) / "resources/papers/texts.json"))
        .texts;
}

} // namespace

Sample::Sample() : book(shippedRules()), bench(book), words(shippedTexts(), {})
{
    record::Piece& piece = bench.add("goldLacquerSeam");
    piece.number = "2604175";
    piece.benchName = "Heron bowl";
    piece.looks = "small blue bowl with a heron";
    piece.maker = "unknown, perhaps Delft";
    piece.body = record::Body::Porous;
    piece.fragments = 7;
    piece.size.height = millimetres(82);
    piece.size.mass = grams(310.4);
    file.piece = piece;
    file.owner = {CustomerId(1), "Ren\u00e9e M\u00fcller", "01632 960 123"};

    record::Visit visit;
    visit.piece = piece.id;
    visit.procedure = "goldLacquerSeam";
    visit.fragments = 7;
    visit.condition = {"rim chip 12 mm, two joins open",
                       "joined before with a household glue",
                       "by eye, daylight",
                       {"brown glue from foot to rim"}};
    visit.accessories = {{"lid", 1}, {"stand", 2}};
    visit.declaredValue = Money(12000, "GBP");
    visit.wishes = "the line may shine";
    visit.consent.scope = "rejoin, fill, gold line";
    visit.consent.metal = true;
    visit.consent.priceFrom = Money(9000, "GBP");
    visit.consent.priceTo = Money(14000, "GBP");
    visit.consent.signedOn = CivilDay(std::chrono::year(2027), std::chrono::March, std::chrono::day(1));
    visit.consent.how = record::Signature::OnPaper;
    file.visits = {visit};
    studio.name = "Kiln Lane Mending";
    bench.roster().customers = {file.owner};
    bench.upTo(piece.id, "glueSet", 10);
    const MixId mix = bench.mix("fastAdhesive", 60);
    bench.events().back().note = "batch 7";
    bench.done(piece.id, "glueSet", 62, 1, mix, TestBench::benchPlace);
    bench.read(TestBench::benchPlace, 24.1, 41, 50);
    refold();
}

void Sample::refold()
{
    folded = bench::fold(bench.roster(), bench.events(), book);
    file.events = bench.events();
    std::erase_if(file.events, [&](const bench::Event& event) { return event.piece != file.piece.id; });
    file.dossier = bench::dossierOf(file.piece.id, bench.events(), book);
}

paperwork::Source Sample::source() const
{
    service::Manner manner;
    manner.locale = QLocale(QLocale::English, QLocale::UnitedKingdom);
    return {file, folded, book, studio, words, manner, now, [](const std::string& hash) {
                QImage image(40, 30, QImage::Format_RGB32);
                image.fill(QColor::fromRgb(static_cast<QRgb>(std::hash<std::string>{}(hash))));
                return image;
            }};
}

QString wordsOf(const papers::Paper& paper) { return papers::allWords(paper); }

} // namespace mend::test
