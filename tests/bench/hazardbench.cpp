#include "tests/bench/hazardbench.h"

namespace mend::test {

namespace {

rules::Stage plain(const std::string& key)
{
    rules::Stage stage;
    stage.key = key;
    stage.act = key;
    stage.law = "none";
    stage.reference = Temperature::fromCelsius(23);
    stage.handsOn.fixed.value = 5min;
    return stage;
}

rules::Stage during(const std::string& key, std::vector<std::string> states)
{
    rules::Stage stage = plain(key);
    stage.during = std::move(states);
    return stage;
}

rules::Stage using_(const std::string& key, std::vector<std::string> materials)
{
    rules::Stage stage = plain(key);
    stage.uses = std::move(materials);
    return stage;
}

rules::Stage leaving(rules::Stage stage, std::vector<std::string> states)
{
    for (const std::string& state : states) {
        stage.leaves.push_back({state, std::nullopt});
    }
    return stage;
}

rules::Procedure procedureOf(const std::string& key, std::vector<rules::Stage> stages)
{
    rules::Procedure procedure;
    procedure.key = procedure.name = procedure.hash = key;
    procedure.stages = std::move(stages);
    return procedure;
}

rules::RuleBook extendedBook()
{
    rules::RuleBook book = shippedRules();
    rules::Material silver = *book.material("goldPowder");
    silver.key = "silverPowder";
    book.materials.push_back(silver);
    book.procedures.push_back(
        procedureOf("testSilver", {leaving(during("silverIssue", {"issuing"}), {"trayInUse"}),
                                   leaving(using_("silverDust", {"silverPowder"}), {"powderOut"})}));
    book.procedures.push_back(procedureOf(
        "testResin", {using_("resinJoin", {"joinResin"}), during("resinClean", {"acetoneWipe", "solventOpen"})}));
    rules::Stage coat = leaving(using_("urushiLine", {"urushiCoat"}), {"settingUrushi", "oilyRags"});
    coat.places = {"humidBox"};
    book.procedures.push_back(procedureOf("testUrushi", {coat, using_("urushiSecond", {"urushiCoat"}),
                                                         during("urushiSand", {"sanding"}), plain("urushiLook")}));
    rules::Stage torch = plain("torch");
    torch.during = {"flame"};
    book.procedures.push_back(
        procedureOf("testShop", {torch, leaving(during("drySand", {"drySanding", "sanding"}), {"dustInAir"}),
                                 using_("plasterFill", {"plaster"}), during("soak", {"waterWash"}),
                                 using_("brassFill", {"brassPowder"}), leaving(plain("brassCast"), {"baseMetalOut"}),
                                 using_("epoxyJoin", {"fastAdhesive"}), plain("look")}));
    return book;
}

} // namespace

const rules::RuleBook& hazardBook()
{
    static const rules::RuleBook book = extendedBook();
    return book;
}

HazardBench::HazardBench(const rules::RuleBook& book) : m_book(book)
{
    using record::PlaceKind;
    m_roster.places = {{table, "Table", PlaceKind::Bench, 0},       {shelf, "Shelf", PlaceKind::Shelf, 0},
                       {cabinet, "Cabinet", PlaceKind::Cabinet, 4}, {humidBox, "Box", PlaceKind::HumidBox, 6},
                       {tray, "Tray", PlaceKind::Tray, 1},          {otherTray, "Other tray", PlaceKind::Tray, 1},
                       {yard, "Yard", PlaceKind::Outside, 0}};
    for (const PlaceId place : {table, shelf, tray, otherTray}) {
        read(place, 23, 45, -1);
    }
}

Instant HazardBench::at(double minute)
{
    using namespace std::chrono;
    return Instant(sys_days(year(2027) / March / 1) + 9h) + milliseconds(static_cast<std::int64_t>(minute * 60000.0));
}

bench::Event HazardBench::event(bench::What what, double minute) const
{
    bench::Event event;
    event.what = what;
    event.person = PersonId(1);
    event.happened = event.recorded = at(minute);
    return event;
}

PieceId HazardBench::add(const std::string& procedure, double minute, CustomerId owner)
{
    record::Piece piece;
    piece.id = PieceId(static_cast<std::int64_t>(m_roster.pieces.size()) + 1);
    piece.benchName = "Piece " + std::to_string(piece.id.value());
    piece.owner = owner.isSet() ? owner : CustomerId(100 + piece.id.value());
    piece.procedure = procedure;
    piece.body = record::Body::Vitrified;
    piece.fragments = 4;
    piece.chip = centimetres(4);
    m_roster.pieces.push_back(piece);
    bench::Event agreed = event(bench::What::Agreed, minute);
    agreed.piece = piece.id;
    agreed.place = table;
    agreed.rules = m_book.procedure(procedure)->hash;
    tell(agreed);
    return piece.id;
}

record::Piece& HazardBench::piece(PieceId id) { return *std::ranges::find(m_roster.pieces, id, &record::Piece::id); }

EventId HazardBench::tell(bench::Event event)
{
    event.id = EventId(static_cast<std::int64_t>(m_events.size()) + 1);
    m_events.push_back(event);
    return event.id;
}

void HazardBench::read(PlaceId place, double celsius, std::optional<double> percent, double minute)
{
    bench::Event reading = event(bench::What::ReadingTaken, minute);
    reading.place = place;
    reading.temperature = Temperature::fromCelsius(celsius);
    if (percent) {
        reading.humidity = percentHumidity(*percent);
    }
    tell(reading);
}

void HazardBench::done(PieceId piece, const std::string& stage, double minute, int repetition)
{
    bench::Event act = event(bench::What::Done, minute);
    act.piece = piece;
    act.stage = {stage, repetition};
    tell(act);
}

void HazardBench::begun(PieceId piece, const std::string& stage, double minute, int repetition)
{
    bench::Event act = event(bench::What::Begun, minute);
    act.piece = piece;
    act.stage = {stage, repetition};
    tell(act);
}

void HazardBench::put(PieceId piece, PlaceId place, double minute)
{
    bench::Event placed = event(bench::What::Placed, minute);
    placed.piece = piece;
    placed.place = place;
    tell(placed);
}

void HazardBench::begin(const std::string& state, double minute, PieceId piece)
{
    bench::Event told = event(bench::What::StateBegun, minute);
    told.word = state;
    told.piece = piece;
    tell(told);
}

void HazardBench::end(const std::string& state, double minute, PieceId piece)
{
    bench::Event told = event(bench::What::StateEnded, minute);
    told.word = state;
    told.piece = piece;
    tell(told);
}

void HazardBench::answer(PieceId piece, const std::string& stage, const std::string& word, double minute,
                         int repetition)
{
    bench::Event answered = event(bench::What::Overridden, minute);
    answered.piece = piece;
    answered.stage = {stage, repetition};
    answered.word = word;
    tell(answered);
}

MixId HazardBench::mix(const std::string& material, double minute)
{
    bench::Event started = event(bench::What::MixStarted, minute);
    started.mix = MixId(static_cast<std::int64_t>(m_events.size()) + 1);
    started.word = material;
    tell(started);
    return started.mix;
}

bench::BenchFold HazardBench::fold() const { return bench::fold(m_roster, m_events, m_book); }

std::vector<bench::HazardFinding> HazardBench::starting(PieceId piece, const std::string& stage, double minute,
                                                        PlaceId place, int repetition) const
{
    return asked({piece, {stage, repetition}, place}, minute);
}

std::vector<bench::HazardFinding> HazardBench::asked(const bench::Start& start, double minute,
                                                     const bench::BenchDay& day,
                                                     const bench::AssemblyFacts* assembly) const
{
    const bench::BenchFold folded = fold();
    return bench::hazardsOf(start, folded, bench::windowsOf(folded, m_book, at(minute)), m_book, at(minute), day,
                            assembly);
}

std::vector<bench::HazardFinding> HazardBench::telling(const std::string& state, double minute, PieceId piece) const
{
    const bench::BenchFold folded = fold();
    return bench::hazardsOfTelling(state, folded, bench::windowsOf(folded, m_book, at(minute)), m_book, at(minute),
                                   piece);
}

std::vector<bench::HazardFinding> HazardBench::standing(double minute, const bench::BenchDay& day) const
{
    const bench::BenchFold folded = fold();
    return bench::standingHazards(folded, bench::windowsOf(folded, m_book, at(minute)), m_book, at(minute), day);
}

std::vector<std::string> HazardBench::states(double minute) const
{
    std::vector<std::string> keys;
    for (const bench::StateInForce& state : bench::statesInForce(fold(), m_book, at(minute))) {
        keys.push_back(state.state);
    }
    return keys;
}

const bench::HazardFinding* findingOf(const std::vector<bench::HazardFinding>& found, const std::string& key)
{
    const auto row =
        std::ranges::find_if(found, [&](const bench::HazardFinding& each) { return each.hazard->key == key; });
    static const bench::HazardFinding none;
    return row == found.end() ? &none : &*row;
}

} // namespace mend::test
