#include "core/bench/reach.h"

#include "core/bench/forecast.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace mend::bench {

namespace {

/// A closing of one step of a train, at the present heat.
struct StepClose {
    std::optional<std::size_t> fromStep; ///< the first touch of that step; empty: the mixing
    Span after{0};
};

/// One stage that the same hands do out of one mix: laying, then wiping back.
struct Step {
    Span wait{0};  ///< after the last touch of the step before
    Span fixed{0}; ///< hands, whatever there is to do
    Span work{0};  ///< hands for what there is to do
    std::vector<StepClose> closes;
};

/// The stages of one run of one piece, in their order.
struct Train {
    PieceId piece;
    StageInstance stage;
    Instant ready;
    std::vector<Step> steps;
    Length chip{};
    Length seam{};
    int joins = 0;
    std::string finish; ///< the last of several steps, as it is spoken
};

/// None where the rules of a piece are gone.
const std::vector<rules::Stage>& stagesOf(const rules::Procedure* procedure)
{
    static const std::vector<rules::Stage> none;
    return procedure ? procedure->stages : none;
}

/// The air of the bench from now on, as closings take it.
cure::Climate benchAir(const BenchFold& bench, Temperature reference, Instant now)
{
    const record::Place* room = bench.roster.firstOfKind(record::PlaceKind::Bench);
    return airAhead(room ? room->id : PlaceId{}, cure::Side::Closing, reference, bench, now);
}

Span scaled(Span work, double share)
{
    return Span{static_cast<Span::rep>(std::ceil(static_cast<double>(work.count()) * share))};
}

/// Builds the trains of one material.
class Trains {
public:
    Trains(const std::string& material, const BenchFold& bench, const rules::RuleBook& book, Instant now)
        : m_material(material), m_bench(bench), m_book(book), m_now(now)
    {
    }

    /// What stands ready for the mix, first ready first.
    std::vector<Train> ready(const std::vector<Window>& windows) const
    {
        std::vector<Train> trains;
        for (const Window& window : windows) {
            const PieceState* piece = m_bench.piece(window.piece);
            const rules::Procedure* procedure = piece && !piece->onHold ? procedureOf(*piece, m_book) : nullptr;
            const rules::Stage* stage = procedure ? procedure->find(window.stage.stage) : nullptr;
            const bool mayGoOn =
                stage && stage->mix == m_material && !window.begunAt && phaseOf(window, m_now) == Phase::Open;
            if (mayGoOn && !follows(*stage, *procedure)) {
                trains.push_back(trainOf(*stage, window.stage, *window.opens, *piece, *procedure));
            }
        }
        std::ranges::stable_sort(trains, {}, &Train::ready);
        return trains;
    }

    /// One centimetre of chip and none of seam, or the other way round: for "a run is so long".
    std::optional<Train> oneCentimetre(bool chip) const
    {
        for (const auto& [id, piece] : m_bench.pieces) {
            const rules::Procedure* procedure = procedureOf(piece, m_book);
            for (const rules::Stage& stage : stagesOf(procedure)) {
                const bool laid = stage.repeat == rules::Repeat::Run && stage.mix == m_material;
                if (!laid || follows(stage, *procedure)) {
                    continue;
                }
                PieceState one = piece;
                one.piece.chip = centimetres(chip ? 1.0 : 0.0);
                one.piece.seam = centimetres(chip ? 0.0 : 1.0);
                one.moreToCome.clear();
                one.stages.clear();
                Train train = trainOf(stage, {stage.key, 1}, m_now, one, *procedure);
                if (std::ranges::any_of(train.steps, [](const Step& step) { return step.work > Span{0}; })) {
                    return train;
                }
            }
        }
        return std::nullopt;
    }

    Span life(Span figure, const std::string& lawKey, Temperature reference) const
    {
        return cure::forecastClose(figure, lawOf(lawKey, m_book), reference, benchAir(m_bench, reference, m_now),
                                   m_now) -
               m_now;
    }

private:
    /// The stage before it takes the same mix, or leads it: it is no beginning of its own.
    bool follows(const rules::Stage& stage, const rules::Procedure& procedure) const
    {
        return std::ranges::any_of(procedure.stages, [&](const rules::Stage& before) {
            return before.key != stage.key && before.mix == m_material && leadsTo(before, stage);
        });
    }

    /// What the same hands have to do next out of the same run: it closes on it, or takes the same mix.
    bool leadsTo(const rules::Stage& first, const rules::Stage& then) const
    {
        const auto hangsOn = [&](const rules::Lag& lag) {
            return lag.from.stage == first.key && lag.from.which == rules::Which::Same && !lag.soft;
        };
        return then.repeat == first.repeat && std::ranges::any_of(then.opens, hangsOn) &&
               (then.mix == m_material || std::ranges::any_of(then.closes, hangsOn));
    }

    Train trainOf(const rules::Stage& first, const StageInstance& at, Instant ready, const PieceState& piece,
                  const rules::Procedure& procedure) const
    {
        Train train;
        train.piece = piece.piece.id;
        train.stage = at;
        train.ready = ready;
        const int shares = first.repeat == rules::Repeat::Pass ? 1 : repetitionsOf(first, piece, m_book);
        train.chip = piece.piece.chip / shares;
        train.seam = piece.piece.seam / shares;
        const int joins = record::joinsOf(piece.piece);
        const bool joining = first.repeat == rules::Repeat::Set || first.repeat == rules::Repeat::Join;
        train.joins = joining ? (joins + shares - 1) / shares : 0;
        std::vector<const rules::Stage*> stages{&first};
        for (const rules::Stage& each : procedure.stages) {
            if (!each.byItself && !isPassedOver(each, piece) && &each != stages.back() &&
                leadsTo(*stages.back(), each)) {
                stages.push_back(&each);
            }
        }
        train.finish = stages.size() > 1 ? stages.back()->spoken : std::string();
        for (const rules::Stage* stage : stages) {
            train.steps.push_back(stepOf(*stage, stages, train.steps.size(), piece));
        }
        return train;
    }

    Step stepOf(const rules::Stage& stage, const std::vector<const rules::Stage*>& stages, std::size_t at,
                const PieceState& piece) const
    {
        Step step;
        step.fixed = stage.handsOn.fixed.value;
        step.work = handsOn(stage, piece, m_book) - step.fixed;
        if (at == 0 && !stage.mixesHere) {
            step.fixed = Span{0}; // made ready before the mixing
        }
        for (const rules::Lag& lag : stage.opens) {
            if (at > 0 && lag.from.stage == stages[at - 1]->key && holds(lag.when, piece)) {
                step.wait = std::max(step.wait, lag.waitOfStage ? Span{0} : lag.span.value);
            }
        }
        for (const rules::Lag& lag : stage.closes) {
            const auto from = std::ranges::find(stages, lag.from.stage, [](const auto* each) { return each->key; });
            if (from == stages.end() || lag.soft || lag.waitOfStage || !holds(lag.when, piece)) {
                continue;
            }
            StepClose close;
            if (lag.from.touch != rules::Touch::Mixing) {
                close.fromStep = static_cast<std::size_t>(from - stages.begin());
            }
            close.after = life(lag.span.value, (*from)->law, (*from)->reference);
            step.closes.push_back(close);
        }
        return step;
    }

    const std::string& m_material;
    const BenchFold& m_bench;
    const rules::RuleBook& m_book;
    Instant m_now;
};

/// Whether one pair of hands can lay all of it, then finish all of it, with every closing kept.
/// `share`: how much of the last train's work is done.
bool fits(const std::vector<Train>& trains, double share, std::optional<Span> life)
{
    std::vector<std::vector<Span>> first(trains.size());
    std::vector<Span> last(trains.size(), Span{0});
    std::size_t longest = 0;
    for (const Train& train : trains) {
        longest = std::max(longest, train.steps.size());
    }
    Span free{0};
    for (std::size_t step = 0; step < longest; ++step) {
        for (std::size_t i = 0; i < trains.size(); ++i) {
            if (step >= trains[i].steps.size()) {
                continue;
            }
            const Step& each = trains[i].steps[step];
            const double part = i + 1 == trains.size() ? share : 1.0;
            const Span begins = step == 0 ? free : std::max(free, last[i] + each.wait);
            first[i].push_back(begins);
            free = last[i] = begins + each.fixed + scaled(each.work, part);
            const bool late = std::ranges::any_of(each.closes, [&](const StepClose& close) {
                return last[i] > (close.fromStep ? first[i][*close.fromStep] : Span{0}) + close.after;
            });
            if (late || (step == 0 && life && last[i] > *life)) {
                return false;
            }
        }
    }
    return true;
}

/// The largest share of the last train that fits, to a thousandth, rounded down; 0: none of it.
double largestShare(const std::vector<Train>& trains, double most, std::optional<Span> life)
{
    double low = 0.0;
    double high = most;
    if (fits(trains, high, life)) {
        return high;
    }
    for (int halving = 0; halving < 30; ++halving) {
        const double middle = (low + high) / 2.0;
        (fits(trains, middle, life) ? low : high) = middle;
    }
    return low;
}

/// A run longer than this is no use to anybody: what looks endless is not said.
constexpr double longestRunCm = 500.0;

std::optional<Length> runInOne(const std::optional<Train>& centimetre, std::optional<Span> life)
{
    const bool closes =
        life ||
        (centimetre && std::ranges::any_of(centimetre->steps, [](const Step& step) { return !step.closes.empty(); }));
    if (!centimetre || !closes) {
        return std::nullopt;
    }
    const double share = largestShare({*centimetre}, longestRunCm, life);
    return share < longestRunCm ? std::optional(centimetres(share)) : std::nullopt;
}

void addShare(std::vector<ReachShare>& shares, const Train& train, double part)
{
    const auto known = std::ranges::find(shares, train.piece, &ReachShare::piece);
    ReachShare& share =
        known != shares.end() ? *known : shares.emplace_back(ReachShare{train.piece, train.stage, 0, {}, {}, 0});
    share.runs += part >= 1.0 ? 1 : 0;
    share.chip += centimetres(inCentimetres(train.chip) * part);
    share.seam += centimetres(inCentimetres(train.seam) * part);
    share.joins += part >= 1.0 ? train.joins : static_cast<int>(std::floor(train.joins * part));
}

/// Takes trains in their order as long as they fit; the first of all may be taken in part.
void shareOut(Reach& reach, const std::vector<Train>& ready)
{
    std::vector<Train> taken;
    for (const Train& train : ready) {
        taken.push_back(train);
        if (fits(taken, 1.0, reach.life)) {
            addShare(reach.shares, train, 1.0);
            continue;
        }
        const bool only = taken.size() == 1;
        const double part = only ? largestShare(taken, 1.0, reach.life) : 0.0;
        if (part > 0.0) {
            addShare(reach.shares, train, part);
        } else {
            taken.pop_back();
        }
        if (std::ranges::find(reach.nextMix, train.piece) == reach.nextMix.end()) {
            reach.nextMix.push_back(train.piece);
        }
        if (part > 0.0) { // the hands are full with a part of it
            for (std::size_t later = 1; later < ready.size(); ++later) {
                if (std::ranges::find(reach.nextMix, ready[later].piece) == reach.nextMix.end()) {
                    reach.nextMix.push_back(ready[later].piece);
                }
            }
            return;
        }
    }
}

std::optional<CountedReach> countedReach(const std::string& material, const BenchFold& bench,
                                         const rules::RuleBook& book, Instant now)
{
    for (const auto& [id, piece] : bench.pieces) {
        const rules::Procedure* procedure = procedureOf(piece, book);
        for (const rules::Stage& stage : stagesOf(procedure)) {
            if (!stage.counted || stage.mix != material) {
                continue;
            }
            CountedReach counted;
            counted.goal = counted.goalNow = stage.counted->goal.value;
            const rules::NamedLaw* law = book.law(stage.law);
            const auto* arrhenius = law ? std::get_if<cure::Arrhenius>(&law->law) : nullptr;
            double faster = 1.0;
            if (arrhenius) {
                const Temperature air = benchAir(bench, stage.reference, now).at(now).temperature;
                faster = std::max(1.0, cure::rateFactor(*arrhenius, cure::EnergyEnd::Typical, air, stage.reference));
            }
            counted.goalNow = Span{static_cast<Span::rep>(static_cast<double>(counted.goal.count()) / faster)};
            counted.isHot = counted.goalNow < stage.counted->hotBelow.value;
            counted.advice = stage.counted->hotAdvice;
            const int sets = repetitionsOf(stage, piece, book);
            counted.joins = std::max(1, (record::joinsOf(piece.piece) + sets - 1) / sets);
            counted.joinsNow = counted.isHot ? std::max(1, static_cast<int>(counted.joins / faster)) : counted.joins;
            return counted;
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<std::string> mixesWanted(const BenchFold& bench, const rules::RuleBook& book)
{
    std::set<std::string> wanted;
    for (const auto& [id, piece] : bench.pieces) {
        const rules::Procedure* procedure = procedureOf(piece, book);
        for (const rules::Stage& stage : stagesOf(procedure)) {
            const rules::Material* material = stage.mix.empty() ? nullptr : book.material(stage.mix);
            if (!material || material->tile.empty() || isPassedOver(stage, piece)) {
                continue;
            }
            const StageRecord* told = piece.record({stage.key, repetitionsOf(stage, piece, book)});
            if (!told || !told->isSettled()) {
                wanted.insert(stage.mix);
            }
        }
    }
    return {wanted.begin(), wanted.end()};
}

Reach reachOf(const std::string& material, const BenchFold& bench, const std::vector<Window>& windows,
              const rules::RuleBook& book, Instant now)
{
    Reach reach;
    reach.material = material;
    const rules::Material* known = book.material(material);
    if (!known) {
        return reach;
    }
    const cure::Climate climate = benchAir(bench, known->potReference, now);
    if (climate.at(now).trust != cure::Trust::Reference) {
        reach.temperature = climate.at(now).temperature;
    }
    const Trains trains(material, bench, book, now);
    if (known->potLife) {
        reach.life = trains.life(known->potLife->value, known->law, known->potReference);
    }
    reach.counted = countedReach(material, bench, book, now);
    if (reach.counted) {
        return reach; // seconds, not centimetres, decide there
    }
    const auto chip = trains.oneCentimetre(true);
    const auto seam = trains.oneCentimetre(false);
    reach.chipInOne = runInOne(chip, reach.life);
    reach.seamInOne = runInOne(seam, reach.life);
    reach.finish = chip ? chip->finish : seam ? seam->finish : std::string();
    shareOut(reach, trains.ready(windows));
    return reach;
}

} // namespace mend::bench
