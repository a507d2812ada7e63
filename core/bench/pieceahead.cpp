#include "core/bench/pieceahead.h"

#include "core/bench/forecast.h"
#include "core/bench/origins.h"

#include <algorithm>

namespace mend::bench {

plan::Minute minutesUp(Span span)
{
    return static_cast<plan::Minute>(std::chrono::ceil<std::chrono::minutes>(span).count());
}

plan::Minute minutesDown(Span span)
{
    return static_cast<plan::Minute>(std::chrono::floor<std::chrono::minutes>(span).count());
}

namespace {

/// More runs than that are no way to fill a gap.
constexpr int mostMoreRuns = 40;

/// Lays out the work of one piece as it is reckoned, without looking whether every window can hold.
class Ahead {
public:
    Ahead(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
          const rules::Procedure& procedure, Instant now, std::optional<Span> shortestPause)
        : m_piece(piece), m_bench(bench), m_book(book), m_procedure(procedure), m_now(now),
          m_shortestPause(shortestPause), m_origins(piece, bench, book, procedure)
    {
    }

    PieceAhead layOut()
    {
        for (Window& window : windowsAhead(m_piece, m_bench, m_book, m_now)) {
            const rules::Stage* stage = m_procedure.find(window.stage.stage);
            AheadStep step;
            step.at = window.stage;
            step.stage = stage;
            step.hands = std::max(1, minutesUp(window.handsOn));
            const bool mixedBefore = !stage->mix.empty() && !stage->mixesHere;
            step.ready = mixedBefore ? std::min(step.hands - 1, minutesDown(stage->handsOn.fixed.value)) : 0;
            step.window = std::move(window);
            m_index[step.at] = m_work.steps.size();
            m_work.steps.push_back(std::move(step));
        }
        for (std::size_t to = 0; to < m_work.steps.size(); ++to) {
            const AheadStep& step = m_work.steps[to];
            std::ranges::for_each(step.stage->opens, [&](const rules::Lag& lag) { openAfter(lag, to); });
            std::ranges::for_each(step.stage->closes, [&](const rules::Lag& lag) { closeAfter(lag, to); });
        }
        for (const auto& [pair, lag] : m_lags) {
            m_work.lags.push_back(lag);
        }
        return std::move(m_work);
    }

private:
    std::optional<std::size_t> indexOf(const StageInstance& at) const
    {
        const auto found = m_index.find(at);
        return found == m_index.end() ? std::nullopt : std::optional(found->second);
    }

    AheadLag& lagBetween(std::size_t from, std::size_t to)
    {
        const auto [held, fresh] = m_lags.try_emplace({from, to});
        if (fresh) {
            held->second.from = from;
            held->second.to = to;
            held->second.least = -plan::farthest;
        }
        return held->second;
    }

    /// Where the piece will be after a stage that has not begun.
    PlaceId placeAfter(const rules::Stage& stage) const
    {
        const auto kind = stage.places.empty() ? std::nullopt : record::placeKindFromKey(stage.places.front());
        const record::Place* usual = kind ? m_bench.roster.firstOfKind(*kind) : nullptr;
        return usual ? usual->id : usualPlace(stage, m_piece, m_bench, m_now);
    }

    std::optional<Span> forecast(const rules::Stage& source, Span figure, const cure::Law& law) const
    {
        const cure::Climate air = airAhead(placeAfter(source), cure::Side::Wait, source.reference, m_bench, m_now);
        const Span through = source.warmThrough ? source.warmThrough->value : Span{0};
        const auto wait = cure::forecastWait(figure, law, source.reference, air, m_now, through);
        return wait ? std::optional(wait->late - m_now) : std::nullopt;
    }

    /// A wait that begins some time hence; empty where it would stall.
    std::optional<Span> waitAfter(const rules::Stage& source, Span figure) const
    {
        return forecast(source, figure, waitLaw(source, m_book));
    }

    Span closeAfter(const rules::Stage& source, Span figure) const
    {
        const cure::Climate air = airAhead(placeAfter(source), cure::Side::Closing, source.reference, m_bench, m_now);
        return cure::forecastClose(figure, lawOf(source.law, m_book), source.reference, air, m_now) - m_now;
    }

    void openAfter(const rules::Lag& rule, std::size_t to)
    {
        const AheadStep& step = m_work.steps[to];
        const auto figure = m_origins.spanOf(rule);
        if (!figure) {
            return;
        }
        const auto longest = m_origins.longestOf(rule);
        for (const StageInstance& source : m_origins.sourcesOf(rule, *step.stage, step.at.repetition)) {
            const auto from = indexOf(source);
            if (!from || *from == to) {
                continue; // done already: the window knows
            }
            const rules::Stage& stage = *m_work.steps[*from].stage;
            const Span asked = longest ? std::max(longest->value, figure->value) : figure->value;
            const auto wait = waitAfter(stage, asked);
            const bool hides = !wait && step.stage->closes.empty();
            // What closes by itself is never put off by a stall: there the heat counts without the material's limit.
            const auto anyway = wait || hides ? wait : forecast(stage, asked, lawOf(stage.law, m_book));
            const plan::Minute minutes = minutesUp(anyway.value_or(figure->value));
            if (rule.from.which == rules::Which::Latest) {
                m_work.pauses.push_back({*from, std::max(1, minutes), step.at.stage});
                continue;
            }
            AheadLag& lag = lagBetween(*from, to);
            const bool counted = rule.from.touch == rules::Touch::Last;
            lag.least = std::max(lag.least, counted ? minutes : minutes - underHands(*from));
            lag.stalled = lag.stalled || hides;
            if (step.stage->closesAtEndOfDay && m_shortestPause) {
                narrow(lag, std::max(0, minutesDown(*m_shortestPause) - 1));
            }
        }
    }

    /// From the first touch of a step to its end.
    plan::Minute underHands(std::size_t step) const { return m_work.steps[step].hands - m_work.steps[step].ready; }

    static void narrow(AheadLag& lag, plan::Minute most) { lag.most = lag.most ? std::min(*lag.most, most) : most; }

    /// Which step makes the mix that a step is made with: itself, or the one before it that mixes.
    std::size_t makerOf(std::size_t step) const
    {
        const rules::Stage& user = *m_work.steps[step].stage;
        if (user.mixesHere) {
            return step;
        }
        for (const AheadStep& each : m_work.steps) {
            if (each.stage->mixesHere && each.stage->mix == user.mix && each.stage->repeat == user.repeat &&
                each.at.repetition == m_work.steps[step].at.repetition) {
                return *indexOf(each.at);
            }
        }
        return step;
    }

    void closeAfter(const rules::Lag& rule, std::size_t to)
    {
        const AheadStep& step = m_work.steps[to];
        const auto figure = m_origins.spanOf(rule);
        if (!figure || rule.soft) {
            return;
        }
        for (const StageInstance& source : m_origins.sourcesOf(rule, *step.stage, step.at.repetition)) {
            auto from = indexOf(source);
            if (!from) {
                continue;
            }
            const plan::Minute limit = minutesDown(closeAfter(*m_work.steps[*from].stage, figure->value));
            if (rule.from.touch == rules::Touch::Mixing) {
                from = makerOf(*from);
            }
            if (*from == to) {
                if (underHands(to) > limit) {
                    m_work.tooTight.push_back(step.at);
                }
                continue;
            }
            const plan::Minute since = rule.from.touch == rules::Touch::Last ? 0 : underHands(*from);
            narrow(lagBetween(*from, to), limit - since - step.hands);
        }
    }

    const PieceState& m_piece;
    const BenchFold& m_bench;
    const rules::RuleBook& m_book;
    const rules::Procedure& m_procedure;
    Instant m_now;
    std::optional<Span> m_shortestPause;
    Origins m_origins;
    PieceAhead m_work;
    std::map<StageInstance, std::size_t> m_index;
    std::map<std::pair<std::size_t, std::size_t>, AheadLag> m_lags;
};

/// The earliest minute at which each step could end if `first` began at minute 0 and there were hands for all.
std::vector<plan::Minute> soonestAfter(const PieceAhead& work, std::size_t first)
{
    std::vector<plan::Minute> begins(work.steps.size(), -plan::farthest);
    begins[first] = 0;
    bool moved = true;
    for (std::size_t turn = 0; moved && turn <= work.steps.size(); ++turn) {
        moved = false;
        for (const AheadLag& lag : work.lags) {
            if (begins[lag.from] == -plan::farthest || lag.least == -plan::farthest) {
                continue;
            }
            const plan::Minute sooner = begins[lag.from] + work.steps[lag.from].hands + lag.least;
            if (sooner > begins[lag.to]) {
                begins[lag.to] = sooner;
                moved = true;
            }
        }
    }
    return begins;
}

/// Closings that nobody could keep: what has to lie in between takes longer.
std::vector<std::size_t> impossible(const PieceAhead& work)
{
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < work.lags.size(); ++i) {
        const AheadLag& lag = work.lags[i];
        if (lag.most && soonestAfter(work, lag.from)[lag.to] > work.steps[lag.from].hands + *lag.most) {
            found.push_back(i);
        }
    }
    return found;
}

/// The first run whose closing nobody could keep; a shorter one might be.
std::optional<StageInstance> longRun(const PieceAhead& work, const rules::Procedure& procedure)
{
    const auto inRuns = [&](const StageInstance& at) {
        const rules::Stage* stage = procedure.find(at.stage);
        return stage && stage->repeat == rules::Repeat::Run;
    };
    std::vector<StageInstance> late = work.tooTight;
    for (const std::size_t lag : impossible(work)) {
        late.push_back(work.steps[work.lags[lag].to].at);
    }
    const auto found = std::ranges::find_if(late, inRuns);
    return found == late.end() ? std::nullopt : std::optional(*found);
}

/// Leaves out the closings that nobody could keep, and says which.
void letGo(PieceAhead& work)
{
    for (const std::size_t lag : impossible(work)) {
        work.tooTight.push_back(work.steps[work.lags[lag].to].at);
        work.lags[lag].most.reset();
    }
}

} // namespace

PieceAhead pieceAhead(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book, Instant now,
                      std::optional<Span> shortestPause)
{
    const rules::Procedure* procedure = procedureOf(piece, book);
    if (!procedure) {
        return {};
    }
    const auto layOut = [&](const PieceState& as) {
        return Ahead(as, bench, book, *procedure, now, shortestPause).layOut();
    };
    PieceAhead asReckoned = layOut(piece);
    PieceAhead work = asReckoned;
    PieceState inShorterRuns = piece;
    for (auto run = longRun(work, *procedure); run && work.moreRuns < mostMoreRuns; run = longRun(work, *procedure)) {
        ++inShorterRuns.moreToCome[run->stage];
        const int more = work.moreRuns + 1;
        work = layOut(inShorterRuns);
        work.moreRuns = more;
    }
    if (longRun(work, *procedure)) { // shorter runs are no help: it is not their length
        work = std::move(asReckoned);
    }
    letGo(work);
    return work;
}

} // namespace mend::bench
