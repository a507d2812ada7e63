#include "core/service/demobench.h"

#include "core/bench/alert.h"
#include "core/bench/alertanswer.h"
#include "core/record/piecenumber.h"
#include "core/service/demomender.h"
#include "core/service/openhours.h"

#include <algorithm>
#include <array>

namespace mend::service {

using bench::Event;
using bench::What;
using record::Body;
using std::chrono::days;
using std::chrono::hours;
using std::chrono::minutes;

namespace {

const PersonId ines(1);
const PersonId tomo(2);

const PlaceId workbench(1);
const PlaceId shelf(2);
const PlaceId sill(3);
const PlaceId cabinet(4);
const PlaceId humidBox(5);
const PlaceId tray(6);

const PieceId heronBowl(1);
const PieceId celadonDish(2);
const PieceId blueJug(3);
const PieceId latticePlate(4);
const PieceId teaBowl(5);
const PieceId oilJar(6);
const PieceId sugarBox(7);
const PieceId gingerJar(8);

/// All names are invented; the numbers are set aside for fiction (NANP 555-01xx, and those the
/// British regulator keeps for drama).
std::vector<record::Customer> owners()
{
    return {{CustomerId(1), "Aurélie Kestemont", "(212) 555-0142"},
            {CustomerId(2), "Nnamdi Okwuosa", "020 7946 0618"},
            {CustomerId(3), "Danica Vrhovšek", "01632 960274"},
            {CustomerId(4), "Δανάη Μελισσινού", "(646) 555-0117"},
            {CustomerId(5), "Leyla Demirhanoğlu", "07700 900461"},
            {CustomerId(6), "Tadhg Ó Muirgheasa", "(503) 555-0189"}};
}

std::vector<record::Place> places()
{
    using record::PlaceKind;
    return {{workbench, "Bench", PlaceKind::Bench, 0},       {shelf, "Shelf", PlaceKind::Shelf, 0},
            {sill, "Window sill", PlaceKind::Shelf, 4},      {cabinet, "Cabinet", PlaceKind::Cabinet, 6},
            {humidBox, "Humid box", PlaceKind::HumidBox, 6}, {tray, "Tray", PlaceKind::Tray, 1}};
}

record::Piece piece(PieceId id, const char* name, std::int64_t owner, const char* procedure, Body body, int fragments,
                    double seamCm, double chipCm, std::vector<std::string> options = {})
{
    record::Piece made;
    made.id = id;
    made.benchName = name;
    made.owner = CustomerId(owner);
    made.procedure = procedure;
    made.body = body;
    made.fragments = fragments;
    made.seam = centimetres(seamCm);
    made.chip = centimetres(chipCm);
    made.optionalStages = std::move(options);
    return made;
}

std::vector<record::Piece> pieces(Instant now)
{
    std::vector<record::Piece> all{
        piece(heronBowl, "Heron bowl", 1, "goldLacquerSeam", Body::Vitrified, 3, 9, 0.5),
        piece(celadonDish, "Celadon dish", 2, "goldLacquerSeam", Body::Vitrified, 4, 16, 0.4),
        piece(blueJug, "Blue jug", 3, "metalFilledSeam", Body::Porous, 4, 14, 0),
        piece(latticePlate, "Lattice plate", 4, "invisibleMend", Body::Porous, 3, 12, 1),
        piece(teaBowl, "Tea bowl", 5, "urushiSeam", Body::Porous, 3, 11, 0.6),
        piece(oilJar, "Oil jar", 6, "reversibleJoin", Body::Porous, 7, 40, 0),
        piece(sugarBox, "Sugar box", 1, "invisibleMend", Body::Vitrified, 2, 7, 0.3,
              {"testOldMend", "takeApart", "cleanOldGlue"}),
        piece(gingerJar, "Ginger jar", 3, "metalFilledSeam", Body::Vitrified, 3, 10, 0),
    };
    const int year = static_cast<int>(std::chrono::year_month_day(std::chrono::floor<days>(now)).year());
    for (std::size_t at = 0; at < all.size(); ++at) {
        all[at].number = record::pieceNumber(year, 412 + 7 * static_cast<int>(at)).value();
    }
    return all;
}

/// One bench day's hours round the time of day of `now`, every day, in local time.
record::Hours hoursRound(Instant now, const QTimeZone& zone)
{
    record::Hours hours;
    const InstantRange today = demoDay(now, now);
    const auto minuteOf = [&zone](Instant at) {
        const auto midnight = wallTime(localDay(at, zone), minutes(0), zone, Twice::First);
        return std::chrono::floor<minutes>(at - midnight);
    };
    const minutes from = minuteOf(today.from);
    const minutes to = std::min(minuteOf(today.to), minutes(24 * 60) - minutes(1));
    for (auto& parts : hours.week) {
        if (from < to) {
            parts = {{from, to}};
        } else { // over midnight
            parts = {{minutes(0), to}, {from, minutes(24 * 60)}};
        }
    }
    return hours;
}

struct PlaceAir {
    PlaceId place;
    Temperature temperature;
    std::optional<Humidity> humidity;
};

/// The air of every place, read each morning and again an hour ago.
std::vector<Event> readings(const Moment& now)
{
    const std::array<PlaceAir, 5> airs{{{workbench, Temperature::fromCelsius(25.0), percentHumidity(48)},
                                        {shelf, Temperature::fromCelsius(22.5), percentHumidity(48)},
                                        {sill, Temperature::fromCelsius(11.5), percentHumidity(55)},
                                        {cabinet, Temperature::fromCelsius(40.0), std::nullopt},
                                        {humidBox, Temperature::fromCelsius(23.0), percentHumidity(75)}}};
    std::vector<Event> events;
    const auto read = [&](Instant at) {
        for (const PlaceAir& air : airs) {
            Event event;
            event.what = What::ReadingTaken;
            event.happened = event.recorded = at;
            event.boot.bootId = "before";
            event.person = ines;
            event.place = air.place;
            event.temperature = air.temperature;
            event.humidity = air.humidity;
            events.push_back(event);
        }
    };
    for (int day = 90; day >= 0; --day) {
        read(demoDay(now.utc, now.utc).from - days(day));
    }
    read(now.utc - hours(1));
    return events;
}

/// Puts the invented studio together, piece by piece.
class Demo {
public:
    Demo(const rules::RuleBook& book, const Moment& now, bench::Roster roster)
        : m_book(book), m_now(now), m_mender(book, std::move(roster), readings(now), now)
    {
    }

    bool build()
    {
        Event came = m_mender.toldAt(What::PersonCame, demoDay(m_now.utc, m_now.utc).from, ines);
        m_mender.tell(came);
        return waiting() && padsDry() && goldOpens() && fillerCloses();
    }

    std::vector<Event> events() const
    {
        std::vector<Event> all = m_mender.events();
        const auto firstAct = std::ranges::find_if(all, [](const Event& event) { return event.piece.isSet(); });
        const Instant from = firstAct == all.end() ? m_now.utc : firstAct->happened;
        std::erase_if(all, [from](const Event& event) {
            return event.what == What::ReadingTaken && event.happened < from - days(1);
        });
        return withAnswers(renumbered(std::move(all)));
    }

private:
    Instant ago(Span span) const { return m_now.utc - span; }

    static std::vector<Event> renumbered(std::vector<Event> events)
    {
        std::map<std::int64_t, std::int64_t> numbers;
        std::int64_t id = 0;
        for (Event& event : events) {
            numbers[event.id.value()] = ++id;
            event.id = EventId(id);
        }
        for (Event& event : events) {
            if (event.mix.isSet()) {
                event.mix = MixId(numbers.at(event.mix.value()));
            }
        }
        return events;
    }

    /// The pieces that nothing has to be done to just now.
    bool waiting()
    {
        const auto pared = m_mender.workUpTo(blueJug, "scrapeAndKey", ago(hours(14)), tomo);
        const bool stand = pared && m_mender.workUpTo(latticePlate, "takeOut", ago(hours(2)), tomo) &&
                           m_mender.workUpTo(teaBowl, "cutExcess", ago(hours(5)), tomo) &&
                           m_mender.workUpTo(gingerJar, "inspectAndPack", ago(hours(4)), tomo) &&
                           m_mender.workUpTo(sugarBox, "takeApart", ago(minutes(50)), tomo);
        if (!stand) {
            return false;
        }
        Event cold = m_mender.toldAt(What::Placed, *pared + minutes(2), tomo);
        cold.piece = blueJug;
        cold.place = sill;
        m_mender.tell(cold);
        return true;
    }

    /// Swabs with acetone were used a few minutes ago: no heat until they are dry.
    bool padsDry()
    {
        const auto ready = m_mender.workUpTo(oilJar, "cleanExcess", ago(minutes(100)), tomo);
        const auto window = ready ? m_mender.windowOf(oilJar, "cleanExcess", ago(minutes(9))) : std::nullopt;
        if (!window) {
            return false;
        }
        m_mender.work(oilJar, "cleanExcess", {ago(minutes(9) + window->handsOn), ago(minutes(9))}, tomo);
        return true;
    }

    bool goldOpens()
    {
        if (!m_mender.workUpTo(celadonDish, "lineCoat", ago(hours(1)), ines)) {
            return false;
        }
        const Span issuing = m_mender.handsOn(celadonDish, "issuePowder");
        m_mender.work(celadonDish, "issuePowder", {ago(minutes(50)), ago(minutes(50)) + issuing}, ines);
        const Span hands = m_mender.handsOn(celadonDish, "lineCoat");
        return slide(
            celadonDish, ago(minutes(30)),
            [&](Instant begin) {
                m_mender.work(celadonDish, "lineCoat", {begin, begin + hands}, ines);
                const auto window = m_mender.windowOf(celadonDish, "dustPowder", m_now.utc);
                return window ? window->opens : std::nullopt;
            },
            ago(minutes(8)));
    }

    bool fillerCloses()
    {
        if (!m_mender.workUpTo(heronBowl, "fillRun", ago(minutes(45)), ines)) {
            return false;
        }
        // Practised hands on a small piece: a third of the usual minutes leaves room to wipe it.
        const Span hands = m_mender.handsOn(heronBowl, "fillRun") / 3;
        return slide(
            heronBowl, ago(minutes(15)),
            [&](Instant begin) {
                m_mender.work(heronBowl, "fillRun", {begin, begin + hands}, ines, true);
                return firstCall(heronBowl);
            },
            m_now.utc + demoFirstAlert);
    }

    /// Tells an act so that what comes of it falls on `wanted`: moves it by what is missing, until it fits.
    template <class Act> bool slide(PieceId piece, Instant begin, Act act, Instant wanted)
    {
        for (int tried = 0; tried < 20; ++tried) {
            const std::optional<Instant> comes = act(begin);
            if (!comes) {
                return false;
            }
            if (*comes == wanted) {
                return true;
            }
            m_mender.forgetSince(piece, begin);
            begin += wanted - *comes;
        }
        return false;
    }

    std::vector<bench::Alert> alertsOf(const std::vector<Event>& events) const
    {
        const bench::BenchFold bench = bench::fold(m_mender.roster(), events, m_book);
        return bench::alertsFor(bench, bench::windowsOf(bench, m_book, m_now.utc), m_book, m_now.utc);
    }

    std::optional<Instant> firstCall(PieceId piece) const
    {
        for (const bench::Alert& alert : alertsOf(m_mender.events())) {
            if (alert.piece == piece && alert.kind == bench::AlertKind::Closes) {
                return alert.due;
            }
        }
        return std::nullopt;
    }

    /// What called before now was seen and heard. Told last: alerts are named by the numbers of events.
    std::vector<Event> withAnswers(std::vector<Event> events) const
    {
        for (const bench::Alert& alert : alertsOf(events)) {
            if (alert.due > m_now.utc) {
                continue;
            }
            Event event = bench::answerEvent(alert, bench::Answered::Heard, ines);
            const Event told = m_mender.toldAt(What::AlertAnswered, std::min(alert.due + minutes(1), m_now.utc), ines);
            event.id = EventId(events.back().id.value() + 1);
            event.happened = told.happened;
            event.recorded = told.recorded;
            event.boot = told.boot;
            events.push_back(event);
        }
        return events;
    }

    const rules::RuleBook& m_book;
    Moment m_now;
    DemoMender m_mender;
};

} // namespace

Result<DemoBench> demoBench(const rules::RuleBook& book, const Moment& now, const QTimeZone& zone)
{
    DemoBench demo;
    demo.now = now.utc;
    demo.studio.name = "Lark Lane Mending";
    demo.studio.zone = zone.id().toStdString();
    demo.studio.hours = hoursRound(now.utc, zone);
    demo.roster.customers = owners();
    demo.roster.places = places();
    demo.roster.people = {{ines, "Ines Corvalán"}, {tomo, "Tomo Hayashida"}};
    demo.roster.pieces = pieces(now.utc);
    demo.roster.openHours = openHoursOf(demo.studio, now.utc);
    for (const record::Piece& each : demo.roster.pieces) {
        if (!book.procedure(each.procedure)) {
            return Fault{FaultKind::NotFound, "no procedure " + each.procedure};
        }
    }
    Demo stand(book, now, demo.roster);
    if (!stand.build()) {
        return Fault{FaultKind::Unavailable, "these rules leave no room for the demo"};
    }
    demo.events = stand.events();
    return demo;
}

} // namespace mend::service
