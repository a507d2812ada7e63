#include "core/bench/card.h"

#include "core/bench/acts.h"
#include "core/bench/alert.h"
#include "core/bench/cardreasons.h"
#include "core/bench/forecast.h"
#include "core/bench/handover.h"
#include "core/bench/hazardheat.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace mend::bench {

namespace {

bool isCostly(const Window& window) { return window.miss >= rules::Miss::Afternoon; }

bool isCalling(const Window& window, Instant now)
{
    if (!window.opens || window.begunAt || (window.closes && now >= *window.closes)) {
        return false;
    }
    // A chain's start may lie before the window's own: it is called from then on.
    const auto times = callTimes(window);
    return times && now >= times->first;
}

Standing standingOf(const Window& window, Instant now)
{
    if (window.begunAt) {
        return Standing::UnderHands;
    }
    switch (phaseOf(window, now)) {
    case Phase::Past:
    case Phase::Lost:
        return window.soft ? Standing::Open : Standing::Past;
    case Phase::Stalled:
        return Standing::Stalled;
    case Phase::Waiting:
        return Standing::Waiting;
    case Phase::Open:
        break;
    }
    if (isCostly(window) && isCalling(window, now)) {
        return Standing::DoNow;
    }
    return window.hasClose() ? Standing::Open : Standing::Free;
}

/// What is done first among the windows of one piece, and among the pieces of the bench.
int rankOf(Standing standing)
{
    switch (standing) {
    case Standing::DoNow:
        return 0;
    case Standing::Past:
        return 1;
    case Standing::UnderHands:
        return 2;
    case Standing::Open:
        return 3;
    case Standing::Stopped:
    case Standing::Free:
        return 5;
    case Standing::Stalled:
        return 6;
    case Standing::Waiting:
        return 4;
    case Standing::Ready:
        return 7;
    case Standing::OnHold:
        return 8;
    }
    return 9;
}

/// Within one piece work that may start now goes before a wait.
int rankWithinPiece(const Window& window, Instant now)
{
    const Standing standing = standingOf(window, now);
    return standing == Standing::Waiting ? rankOf(Standing::Stalled) : rankOf(standing);
}

Instant dueOf(const Window& window) { return window.latestStart.value_or(window.opens.value_or(Instant::max())); }

void sortByUrgency(std::vector<Window>& windows, Instant now)
{
    std::ranges::stable_sort(windows, [now](const Window& a, const Window& b) {
        const int ranks[] = {rankWithinPiece(a, now), rankWithinPiece(b, now)};
        if (ranks[0] != ranks[1]) {
            return ranks[0] < ranks[1];
        }
        return standingOf(a, now) != Standing::Free && dueOf(a) < dueOf(b);
    });
}

Seam seamOf(const Window& window, Standing standing)
{
    Seam seam;
    seam.stalled = window.stalled;
    if (standing == Standing::Waiting && !window.hasClose()) {
        seam.ends = window.opens;
        seam.opensAtLatest = window.opensAtLatest;
        return seam;
    }
    seam.opens = window.opens;
    seam.opensAtLatest = window.opensAtLatest;
    seam.latestStart = window.latestStart;
    seam.closes = window.closes;
    seam.lost = window.lost;
    return seam;
}

void count(Card& card, const Window& window)
{
    const auto set = [&card](CountKind kind, std::optional<Instant> to, std::optional<Instant> latest = std::nullopt) {
        card.counts = kind;
        card.countTo = to;
        card.countToAtLatest = latest;
    };
    switch (card.standing) {
    case Standing::Waiting:
        set(window.hasClose() ? CountKind::Opens : CountKind::Ends, window.opens, window.opensAtLatest);
        break;
    case Standing::UnderHands:
        set(window.hasClose() ? CountKind::StartBy : CountKind::UnderHands,
            window.hasClose() ? window.closes : window.begunAt);
        break;
    case Standing::Past:
        set(CountKind::Late, window.closes);
        break;
    case Standing::Stalled:
    case Standing::OnHold:
    case Standing::Ready:
        set(CountKind::Nothing, std::nullopt);
        break;
    default:
        set(window.hasClose() ? CountKind::StartBy : CountKind::Nothing, window.latestStart);
        break;
    }
}

void addStageActs(Card& card, const Window& window, const rules::Stage& stage, const rules::RuleBook& book)
{
    if (window.begunAt) {
        card.acts.push_back({ActKind::Finish, window.stage, stage.done});
        return;
    }
    if (card.standing == Standing::DoNow) {
        card.acts.push_back({ActKind::HandsOnIt, window.stage, {}});
    }
    if (window.waitsForTest) {
        card.acts.push_back({ActKind::Confirm, window.stage, stage.test->passed});
        card.acts.push_back({ActKind::NotYet, window.stage, {}});
        return;
    }
    const bool twoTaps = !stage.mix.empty() || window.handsOn >= book.practice.twoTapsFrom.value;
    if (twoTaps) {
        card.acts.push_back({ActKind::Begin, window.stage, stage.begun});
    }
    card.acts.push_back({ActKind::Finish, window.stage, stage.done});
}

void addActs(Card& card, const Window& window, const rules::Stage& stage, const rules::RuleBook& book)
{
    if (card.standing == Standing::Past) {
        for (const ActKind kind : {ActKind::WasInTime, ActKind::DoingLate, ActKind::NotDone}) {
            card.acts.push_back({kind, window.stage, {}});
        }
        return;
    }
    if (card.standing == Standing::Stopped) {
        card.acts.push_back({ActKind::AskHazard, window.stage, {}});
    }
    addStageActs(card, window, stage, book);
}

bool isBlocked(const std::vector<HazardFinding>& hazards)
{
    return std::ranges::any_of(
        hazards, [](const HazardFinding& finding) { return finding.hazard->verdict == rules::Verdict::Block; });
}

/// Makes the cards of the bench.
class Cards {
public:
    Cards(const Board& board, const BenchPicture& picture)
        : m_bench(picture.bench()), m_reaches(board.reaches), m_book(picture.book()), m_now(picture.now()),
          m_picture(picture)
    {
        for (const Window& window : picture.windows()) {
            m_windows[window.piece].push_back(window);
        }
    }

    Card cardOf(const PieceState& piece) const
    {
        Card card = named(piece);
        const auto held = m_windows.find(piece.piece.id);
        std::vector<Window> own = held == m_windows.end() ? std::vector<Window>{} : held->second;
        sortByUrgency(own, m_now);
        if (own.empty()) {
            finished(card, piece);
        } else {
            speakOf(card, piece, own.front());
            card.others.assign(own.begin() + 1, own.end());
        }
        if (piece.onHold) {
            hold(card);
        }
        return card;
    }

private:
    Card named(const PieceState& piece) const
    {
        Card card;
        card.piece = piece.piece.id;
        card.number = piece.piece.number;
        card.benchName = piece.piece.benchName;
        card.mended = mendedShare(piece, m_book);
        if (const record::Customer* owner = m_bench.roster.customer(piece.piece.owner)) {
            card.ownerName = owner->name;
        }
        if (const record::Place* place = m_bench.roster.place(piece.placeAt(m_now))) {
            card.placeName = place->name;
        }
        if (const rules::Procedure* procedure = procedureOf(piece, m_book)) {
            card.procedureName = procedure->name;
        }
        return card;
    }

    void speakOf(Card& card, const PieceState& piece, const Window& window) const
    {
        const rules::Procedure* procedure = procedureOf(piece, m_book);
        const rules::Stage& stage = *procedure->find(window.stage.stage);
        card.window = window;
        card.act = stage.act;
        card.stage = window.stage;
        card.repetitions = repetitionsOf(stage, piece, m_book);
        card.standing = standingOf(window, m_now);
        if (!window.begunAt && card.standing != Standing::Past) {
            const PlaceId place = usualPlace(stage, piece, m_bench, m_now);
            const Start start{piece.piece.id, window.stage, place, aboutToBeSetTo(stage, place, m_picture)};
            card.hazards = hazardsOf(start, m_picture);
            const bool mayStart = card.standing == Standing::Free || card.standing == Standing::Open;
            if (mayStart && isBlocked(card.hazards)) {
                card.standing = Standing::Stopped;
            }
        }
        card.seam = seamOf(window, card.standing);
        count(card, window);
        addActs(card, window, stage, m_book);
        card.reasons = reasonsOf(card, window, stage, piece, m_bench, m_book, m_now);
        const bool mayMix = card.standing == Standing::Free || card.standing == Standing::Open;
        if (mayMix && !stage.mix.empty() && mixesFor(stage, m_bench, m_book, m_now).empty()) {
            sayReach(card, stage);
        }
    }

    /// Before anything is mixed the card says how much of the piece one mix does.
    void sayReach(Card& card, const rules::Stage& stage) const
    {
        const auto reach = std::ranges::find(m_reaches, stage.mix, &Reach::material);
        if (reach == m_reaches.end()) {
            return;
        }
        Reason reason{.kind = ReasonKind::MixReach};
        reason.temperature = reach->temperature;
        const auto share = std::ranges::find(reach->shares, card.piece, &ReachShare::piece);
        if (reach->counted && reach->counted->isHot) {
            reason.text = reach->counted->advice;
            reason.span = reach->counted->goalNow;
        } else if (share != reach->shares.end() && share->runs < card.repetitions) {
            reason.share = *share; // what goes on whole needs no word
        } else {
            return;
        }
        const auto afterHazards =
            std::ranges::find_if_not(card.reasons, [](const Reason& each) { return each.kind == ReasonKind::Hazard; });
        card.reasons.insert(afterHazards, reason);
    }

    void finished(Card& card, const PieceState& piece) const
    {
        const auto from = handOverFrom(piece, m_book);
        if (!from) {
            return;
        }
        if (m_now >= from->at) {
            card.standing = Standing::Ready;
            card.acts.push_back({ActKind::HandOver, {}, {}});
            return;
        }
        card.standing = Standing::Waiting;
        card.counts = CountKind::Ends;
        card.countTo = card.countToAtLatest = from->at;
        card.seam.ends = from->at;
    }

    static void hold(Card& card)
    {
        const bool runsOn = card.window && card.window->hasClose();
        if (!runsOn) {
            card.standing = Standing::OnHold;
            card.counts = CountKind::Nothing;
            card.countTo.reset();
            card.acts = {{ActKind::EndHold, {}, {}}};
        }
        card.reasons.insert(card.reasons.begin(), Reason{.kind = ReasonKind::Hold});
    }

    const BenchFold& m_bench;
    std::map<PieceId, std::vector<Window>> m_windows;
    const std::vector<Reach>& m_reaches;
    const rules::RuleBook& m_book;
    Instant m_now;
    const BenchPicture& m_picture;
};

auto orderOf(const Card& card)
{
    const bool closes = card.window && card.window->hasClose();
    const int costly = closes ? -static_cast<int>(card.window->miss) : 0;
    const bool byCost = card.standing == Standing::DoNow || card.standing == Standing::Past;
    return std::tuple(rankOf(card.standing), byCost ? costly : 0, card.countTo.value_or(Instant::max()), card.number);
}

/// A stiff mix that nobody threw away stays in sight for so long (common practice, no source).
constexpr Span stiffInSight = std::chrono::minutes(30);

std::vector<MixCard> mixCards(const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    std::vector<MixCard> cards;
    for (const auto& [id, mix] : bench.mixes) {
        const auto stiff = stiffAt(mix, bench, book, now);
        if (mix.isAlive() && (!stiff || *stiff + stiffInSight > now)) {
            const rules::Material* material = book.material(mix.material);
            cards.push_back({id, material ? material->tile : mix.material, mix.batch, mix.mixedAt, stiff, mix.on});
        }
    }
    std::ranges::sort(cards, {}, &MixCard::mixedAt);
    return cards;
}

std::optional<Instant> freeUntil(const std::vector<Window>& windows, Instant now)
{
    std::optional<Instant> earliest;
    for (const Window& window : windows) {
        const bool runs = window.latestStart && !window.begunAt && *window.closes > now && !window.soft;
        if (runs && (!earliest || *window.latestStart < *earliest)) {
            earliest = window.latestStart;
        }
    }
    return earliest;
}

} // namespace

std::optional<Instant> stiffAt(const MixState& mix, const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    const rules::Material* material = book.material(mix.material);
    if (!material || !material->potLife) {
        return std::nullopt;
    }
    const record::Place* room = bench.roster.firstOfKind(record::PlaceKind::Bench);
    const auto air = room ? bench.air.find(room->id) : bench.air.end();
    const cure::Stay stay{mix.mixedAt, air == bench.air.end() ? nullptr : &air->second.forClosings};
    const rules::NamedLaw* law = book.law(material->law);
    const cure::Climate climate = cure::climateAlong(std::span(&stay, 1), cure::Side::Closing, material->potReference);
    return cure::forecastClose(material->potLife->value, law ? law->law : cure::Law{cure::ClockOnly{}},
                               material->potReference, cure::keptAsAt(climate, now), mix.mixedAt);
}

Board boardOf(const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    Board board;
    board.at = now;
    board.windows = windowsOf(bench, book, now);
    const BenchPicture picture(bench, board.windows, book, now); // looked up once for every card
    board.states = statesInForce(picture);
    for (const std::string& material : mixesWanted(bench, book)) {
        board.reaches.push_back(reachOf(material, bench, board.windows, book, now));
    }
    const Cards cards(board, picture);
    for (const auto& [id, piece] : bench.pieces) {
        if (piece.receivedAt && piece.agreed) {
            board.cards.push_back(cards.cardOf(piece));
        }
    }
    std::ranges::sort(board.cards, {}, orderOf);
    board.mixes = mixCards(bench, book, now);
    board.standing = standingHazards(picture);
    board.freeUntil = freeUntil(board.windows, now);
    return board;
}

} // namespace mend::bench
