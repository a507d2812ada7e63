#include "core/service/demopast.h"

#include "core/base/civil.h"
#include "core/record/piecenumber.h"

#include <algorithm>
#include <array>
#include <random>
#include <set>

namespace mend::service {

using bench::Event;
using bench::What;
using std::chrono::days;
using std::chrono::hours;
using std::chrono::minutes;

namespace {

constexpr std::array<const char*, 16> begins{"Al", "Bren", "Cor", "Dov", "El",  "Fen", "Gar", "Hal",
                                             "Il", "Jor",  "Kes", "Lor", "Mir", "Nor", "Ost", "Vel"};
constexpr std::array<const char*, 12> middles{"a", "ande", "ei", "ío", "or", "u", "ö", "išt", "eka", "ina", "ou", "ä"};
constexpr std::array<const char*, 14> ends{"n",    "ric", "sa",  "vik", "lund", "mere",  "dotti",
                                           "czyk", "ham", "son", "bek", "ter",  "quist", "wyn"};
constexpr std::array<const char*, 20> givenNames{"Ada",  "Bela", "Ciara", "Dario", "Edda", "Femi",  "Gösta",
                                                 "Hana", "Ilse", "Jun",   "Kofi",  "Léa",  "Mirek", "Noor",
                                                 "Otto", "Pia",  "Rhys",  "Søren", "Tova", "Zoë"};
constexpr std::array<const char*, 10> colours{"blue", "white", "green", "brown",   "black",
                                              "red",  "grey",  "ochre", "celadon", "pink"};
constexpr std::array<const char*, 12> shapes{"bowl", "cup", "plate", "jug",    "vase",   "dish",
                                             "tile", "jar", "box",   "teapot", "saucer", "lamp"};
constexpr std::array<const char*, 20> motifs{"heron",   "fern", "carp", "rose",  "moon",  "pine",    "crane",
                                             "wave",    "star", "ivy",  "plum",  "swift", "lattice", "fox",
                                             "thistle", "boat", "hare", "poppy", "lotus", "spiral"};
constexpr std::array<const char*, 5> sizes{"small", "large", "shallow", "tall", "round"};
constexpr std::array<const char*, 4> seen{"two joins open, edges clean", "rim chip, hairline from it",
                                          "in pieces, one loss at the foot", "old brown glue on both edges, sprung"};

class Past {
public:
    Past(const bench::Roster& bench, EventId last, const rules::RuleBook& book, Instant now, unsigned seed)
        : m_bench(bench), m_book(book), m_now(now), m_random(seed), m_last(last.value())
    {
        for (const record::Piece& piece : bench.pieces) {
            m_numbers.insert(piece.number);
        }
    }

    DemoPast build()
    {
        invitePeople();
        promiseWhatLiesOnTheBench();
        constexpr int waiting = 8; // in the house besides the bench
        const int gone = demoPieces - static_cast<int>(m_bench.pieces.size()) - waiting;
        for (int i = 0; i < gone; ++i) {
            mendAndGiveBack(m_now - days(3 * 365) + hours(24 * (3 * 365 - 60) * i / gone));
        }
        for (int i = 0; i < waiting; ++i) {
            i < 3 ? readyToGo(i) : i < 6 ? waitForOwner(i) : runLate(i);
        }
        // Told as it happened, so that numbers rise with time.
        std::ranges::stable_sort(m_past.events, {}, &Event::happened);
        for (Event& event : m_past.events) {
            event.id = EventId(++m_last);
        }
        return std::move(m_past);
    }

private:
    int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }
    template <std::size_t N> std::string any(const std::array<const char*, N>& of)
    {
        return of.at(static_cast<std::size_t>(upTo(static_cast<int>(N) - 1)));
    }

    std::string phone()
    {
        const auto digits = [&](int count) {
            std::string text;
            for (int i = 0; i < count; ++i) {
                text += static_cast<char>('0' + upTo(9));
            }
            return text;
        };
        switch (upTo(3)) { // set aside for fiction: NANP 555-01xx, and those the British regulator keeps for drama
        case 0:
            return "(" + std::to_string(201 + upTo(700)) + ") 555-01" + digits(2);
        case 1:
            return "020 7946 0" + digits(3);
        case 2:
            return "01632 960" + digits(3);
        default:
            return "07700 900" + digits(3);
        }
    }

    void invitePeople()
    {
        std::int64_t id = 0;
        for (const record::Customer& owner : m_bench.customers) {
            id = std::max(id, owner.id.value());
        }
        while (static_cast<int>(m_past.people.size() + m_bench.customers.size()) < demoPeople) {
            record::Customer person;
            person.id = CustomerId(++id);
            person.name = any(givenNames) + " " + any(begins) + any(middles) + any(ends);
            person.contact = phone();
            if (upTo(3) == 0) {
                person.more.push_back({record::ContactKind::Mail, "person" + std::to_string(id) + "@example.org"});
            }
            m_past.people.push_back(std::move(person));
        }
    }

    std::string numberIn(Instant at)
    {
        const CivilDay day(std::chrono::floor<days>(at));
        const int year = static_cast<int>(day.year());
        std::string number;
        do {
            number = record::pieceNumber(year, ++m_running[year]).value_or("");
        } while (m_numbers.contains(number));
        m_numbers.insert(number);
        return number;
    }

    record::Piece& newPiece(Instant at)
    {
        record::Piece piece;
        std::int64_t id = 0;
        for (const record::Piece& each : m_bench.pieces) {
            id = std::max(id, each.id.value());
        }
        id += static_cast<std::int64_t>(m_past.pieces.size());
        const std::string motif = any(motifs);
        const std::string shape = any(shapes);
        piece.id = PieceId(id + 1);
        piece.number = numberIn(at);
        piece.benchName = motif + " " + shape;
        piece.benchName.front() = static_cast<char>(piece.benchName.front() - 'a' + 'A');
        piece.looks = any(sizes) + " " + any(colours) + " " + shape + " with a " + motif;
        piece.owner = m_past.people[static_cast<std::size_t>(upTo(static_cast<int>(m_past.people.size()) - 1))].id;
        piece.procedure =
            m_book.procedures[static_cast<std::size_t>(upTo(static_cast<int>(m_book.procedures.size()) - 1))].key;
        piece.body = upTo(1) == 0 ? record::Body::Porous : record::Body::Vitrified;
        piece.fragments = 2 + upTo(5);
        piece.seam = centimetres(5 + upTo(30));
        piece.chip = millimetres(upTo(20));
        piece.size.height = millimetres(40 + upTo(200));
        return m_past.pieces.emplace_back(std::move(piece));
    }

    void addVisit(const record::Piece& piece, int number, Instant at, bool isSigned = true)
    {
        record::Visit visit;
        visit.piece = piece.id;
        visit.number = number;
        visit.cameFor = number > 1 ? record::CameFor::JoinFailed : record::CameFor::FirstTime;
        visit.procedure = piece.procedure;
        visit.fragments = piece.fragments;
        visit.condition.seen = any(seen);
        visit.condition.how = "by eye, daylight";
        visit.wishes = upTo(1) == 0 ? "the seam may show" : "as little to be seen as can be";
        visit.consent.scope = "join, fill, finish";
        if (upTo(3) == 0) {
            visit.accessories.push_back({"lid", 1});
        }
        if (isSigned) {
            visit.consent.how = record::Signature::OnPaper;
            visit.consent.signedOn = CivilDay(std::chrono::floor<days>(at));
        }
        m_past.visits.push_back(std::move(visit));
    }

    Event& tell(What what, PieceId piece, Instant at, std::string word = {}, std::optional<std::int64_t> amount = {})
    {
        Event event;
        event.what = what;
        event.piece = piece;
        event.happened = event.recorded = std::min(at, m_now);
        event.boot.bootId = "before";
        event.person = m_bench.people.empty() ? PersonId() : m_bench.people.front().id;
        event.word = std::move(word);
        event.amount = amount;
        return m_past.events.emplace_back(std::move(event));
    }

    static std::string dayOf(Instant at) { return dayText(CivilDay(std::chrono::floor<days>(at))); }

    void promise(PieceId piece, Instant at, Instant until) { tell(What::Promised, piece, at, dayOf(until)); }

    void receive(const record::Piece& piece, int visit, Instant at)
    {
        tell(visit > 1 ? What::CameBack : What::Received, piece.id, at, visit > 1 ? "joinFailed" : "");
        tell(What::Counted, piece.id, at + minutes(1), "fragmentsIn", piece.fragments);
    }

    void agree(const record::Piece& piece, Instant at)
    {
        const std::int64_t price = 6'000 + 500 * upTo(60);
        tell(What::ConsentGiven, piece.id, at + minutes(2), "onPaper");
        tell(What::PriceAgreed, piece.id, at + minutes(3), "EUR", price);
        tell(What::Paid, piece.id, at + minutes(3), "EUR", price / 2);
        const rules::Procedure* procedure = m_book.procedure(piece.procedure);
        tell(What::Agreed, piece.id, at + minutes(4)).rules = procedure ? procedure->hash : std::string();
    }

    /// Every stage, one after the other, so many hours apart; when the last one was done.
    Instant mend(const record::Piece& piece, Instant from, hours apart)
    {
        const rules::Procedure* procedure = m_book.procedure(piece.procedure);
        bench::PieceState state;
        state.piece = piece;
        Instant at = from;
        for (const rules::Stage& stage : procedure->stages) {
            if (stage.byItself || bench::isPassedOver(stage, state)) {
                continue;
            }
            for (int rep = 1; rep <= bench::repetitionsOf(stage, state, m_book); ++rep) {
                at += apart;
                Event& done = tell(What::Done, piece.id, at);
                done.stage = {stage.key, rep};
                done.rules = procedure->hash;
            }
        }
        return at;
    }

    void handOver(const record::Piece& piece, Instant at)
    {
        tell(What::Counted, piece.id, at, "fragmentsOut", piece.fragments);
        tell(What::HandedOver, piece.id, at + minutes(5), "onPaper").note = "the owner";
    }

    void mendAndGiveBack(Instant came)
    {
        const record::Piece piece = newPiece(came);
        addVisit(piece, 1, came);
        receive(piece, 1, came);
        if (upTo(15) == 0) {
            tell(What::ReturnedUnmended, piece.id, came + days(2)).note = "too little of it is left";
            return;
        }
        agree(piece, came);
        promise(piece.id, came + minutes(5), came + days(50));
        const Instant done = mend(piece, came + days(1), hours(20));
        const Instant gone = std::min(done + days(10 + upTo(20)), m_now - days(2));
        handOver(piece, gone);
        if (upTo(19) == 0 && gone + days(200) < m_now - days(60)) {
            const Instant again = gone + days(100);
            addVisit(piece, 2, again);
            receive(piece, 2, again);
            agree(piece, again);
            handOver(piece, mend(piece, again + days(1), hours(20)) + days(12));
        }
    }

    void readyToGo(int index)
    {
        const Instant came = m_now - days(120 + 10 * index);
        const record::Piece piece = newPiece(came);
        addVisit(piece, 1, came);
        receive(piece, 1, came);
        agree(piece, came);
        promise(piece.id, came + minutes(5), m_now - days(3));
        mend(piece, came + days(1), hours(12));
        tell(What::OwnerTold, piece.id, m_now - days(4), "phone").note = "it may be collected";
    }

    void waitForOwner(int index)
    {
        const Instant came = m_now - days(5 + index);
        const record::Piece piece = newPiece(came);
        addVisit(piece, 1, came, false);
        receive(piece, 1, came);
        tell(What::WaitingForOwner, piece.id, came + hours(3)).note = "shall the old mend be opened?";
    }

    void runLate(int index)
    {
        const Instant came = m_now - days(70 + index);
        const record::Piece piece = newPiece(came);
        addVisit(piece, 1, came, false);
        receive(piece, 1, came);
        promise(piece.id, came + minutes(5), m_now - days(index - 4));
    }

    void promiseWhatLiesOnTheBench()
    {
        for (const record::Piece& piece : m_bench.pieces) {
            addVisit(piece, 1, m_now - days(30));
            promise(piece.id, m_now - hours(2), m_now + days(60));
        }
    }

    const bench::Roster& m_bench;
    const rules::RuleBook& m_book;
    Instant m_now;
    std::mt19937 m_random;
    std::int64_t m_last;
    DemoPast m_past;
    std::map<int, int> m_running;
    std::set<std::string> m_numbers;
};

} // namespace

DemoPast demoPast(const bench::Roster& bench, EventId last, const rules::RuleBook& book, Instant now, unsigned seed)
{
    return Past(bench, last, book, now, seed).build();
}

} // namespace mend::service
