#include "core/bench/window.h"

#include "core/bench/chain.h"
#include "core/bench/forecast.h"
#include "core/bench/origins.h"

#include <algorithm>

namespace mend::bench {

namespace {

using std::chrono::hours;

/// A forecast of a wait longer than this is shown as a range.
constexpr Span rangeFrom = hours(1);

/// Works out the windows of one piece.
class PieceWindows {
public:
    PieceWindows(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                 const rules::Procedure& procedure, Instant now)
        : m_piece(piece), m_bench(bench), m_book(book), m_procedure(procedure), m_now(now),
          m_origins(piece, bench, book, procedure)
    {
    }

    /// `evenUnreached`: also those that wait for something not done yet, with what is known of them.
    std::vector<Window> all(bool evenUnreached) const
    {
        std::vector<Window> windows;
        for (const rules::Stage& stage : m_procedure.stages) {
            if (stage.byItself || isPassedOver(stage, m_piece)) {
                continue;
            }
            for (int rep = 1; rep <= m_origins.repetitions(stage); ++rep) {
                const StageRecord* told = m_piece.record({stage.key, rep});
                // What runs out is shown even while something it should wait for is not told.
                const bool comes = m_origins.isReached(stage, rep) || m_origins.isClosing(stage, rep);
                if ((told && told->isSettled()) || (!comes && !evenUnreached)) {
                    continue;
                }
                windows.push_back(windowFor(stage, rep, told));
                if (!comes) {
                    windows.back().closes.reset();
                    windows.back().latestStart.reset();
                }
            }
        }
        return windows;
    }

private:
    Window windowFor(const rules::Stage& stage, int repetition, const StageRecord* told) const
    {
        Window window;
        window.piece = m_piece.piece.id;
        window.stage = {stage.key, repetition};
        window.act = stage.act;
        window.handsOn = handsOn(stage, m_piece, m_book);
        window.miss = stage.miss;
        window.counted = stage.counted.has_value();
        window.opens = m_piece.receivedAt.value_or(m_now);
        window.opensAtLatest = window.opens;
        openings(window, stage);
        if (told && told->isUnderHands()) {
            window.begunAt = told->firstTouch;
            window.mix = told->mix;
        }
        if (!told || (!told->missed && !told->doingLate)) {
            closings(window, stage);
        }
        touchTest(window, stage, told);
        return window;
    }

    cure::Climate airFor(cure::Side side, Temperature reference) const
    {
        std::vector<cure::Stay> stays;
        stays.reserve(m_piece.stays.size());
        for (const PieceStay& stay : m_piece.stays) {
            const auto air = m_bench.air.find(stay.place);
            const cure::PlaceRecord* record = nullptr;
            if (air != m_bench.air.end()) {
                record = side == cure::Side::Wait ? &air->second.forWaits : &air->second.forClosings;
            }
            stays.push_back({stay.from, record});
        }
        return cure::keptAsAt(cure::climateAlong(stays, side, reference), m_now);
    }

    Reckoning reckon(const TouchPoint& from, const rules::SpanFigure& figure, cure::Side side) const
    {
        Reckoning reckoning;
        reckoning.of = side == cure::Side::Closing ? FigureOf::Closes : FigureOf::Opens;
        reckoning.event = from.by;
        reckoning.origin = from.at;
        reckoning.figure = figure.value;
        reckoning.source = figure.source;
        reckoning.law = from.stage->law;
        reckoning.reference = from.stage->reference;
        reckoning.closing = side == cure::Side::Closing;
        reckoning.formula = reckoning.closing ? lawOf(from.stage->law, m_book) : waitLaw(*from.stage, m_book);
        reckoning.air = airFor(side, reckoning.reference);
        if (reckoning.closing) {
            reckoning.end = cure::EnergyEnd::High;
            reckoning.result =
                cure::forecastClose(figure.value, reckoning.formula, reckoning.reference, reckoning.air, from.at);
        } else if (from.stage->warmThrough) {
            reckoning.warmThrough = from.stage->warmThrough->value;
        }
        return reckoning;
    }

    std::optional<cure::WaitForecast> forecast(Reckoning& reckoning) const
    {
        const auto wait = cure::forecastWait(reckoning.figure, reckoning.formula, reckoning.reference, reckoning.air,
                                             reckoning.origin, reckoning.warmThrough);
        if (wait) {
            reckoning.result = wait->typical;
        }
        return wait;
    }

    void openings(Window& window, const rules::Stage& stage) const
    {
        bool first = true;
        for (const rules::Lag& lag : stage.opens) {
            const Hanging hanging = m_origins.hangingOf(lag, stage, window.stage.repetition);
            const auto span = m_origins.spanOf(lag);
            if (!hanging.applies || !hanging.served || !hanging.from || !span) {
                continue; // nothing was done there, so nothing has to be waited for
            }
            openAfter(window, *hanging.from, *span, m_origins.longestOf(lag), !stage.closes.empty());
            if (first && stage.recommended) {
                recommend(window, *hanging.from, *stage.recommended);
            }
            first = false;
        }
        if (window.stalled) {
            window.opens.reset();
            window.opensAtLatest.reset();
        }
    }

    void openAfter(Window& window, const TouchPoint& from, const rules::SpanFigure& span,
                   const std::optional<rules::SpanFigure>& longest, bool closesByItself) const
    {
        Reckoning reckoning = reckon(from, span, cure::Side::Wait);
        auto wait = forecast(reckoning);
        if (!wait && closesByItself) {
            // What it waits for cannot be reckoned, but it stiffens all the same: never hide a closing behind a stall.
            reckoning.formula = cure::ClockOnly{};
            wait = forecast(reckoning);
        }
        window.why.push_back(reckoning);
        if (!wait) {
            window.stalled = true;
            return;
        }
        Instant late = wait->typical;
        if (wait->typical - from.at > rangeFrom && wait->late > late) {
            late = keepSlow(window, reckoning, *wait);
        }
        if (longest) {
            Reckoning slow = reckon(from, *longest, cure::Side::Wait);
            if (const auto longWait = forecast(slow)) {
                late = std::max(late, keepSlow(window, slow, *longWait));
            }
        }
        window.opens = std::max(*window.opens, wait->typical);
        window.opensAtLatest = std::max(*window.opensAtLatest, late);
    }

    /// Keeps how the slow end of a wait came about.
    static Instant keepSlow(Window& window, Reckoning reckoning, const cure::WaitForecast& wait)
    {
        reckoning.of = FigureOf::OpensAtLatest;
        reckoning.end = wait.lateEnd;
        reckoning.result = wait.late;
        window.whyElse.push_back(reckoning);
        return wait.late;
    }

    void recommend(Window& window, const TouchPoint& from, const rules::SpanFigure& figure) const
    {
        Reckoning reckoning = reckon(from, figure, cure::Side::Wait);
        reckoning.of = FigureOf::Recommended;
        window.recommended = forecast(reckoning) ? reckoning.result : std::nullopt;
        window.whyElse.push_back(reckoning);
    }

    void closings(Window& window, const rules::Stage& stage) const
    {
        for (const rules::Lag& lag : stage.closes) {
            const Hanging hanging = m_origins.hangingOf(lag, stage, window.stage.repetition);
            const auto span = m_origins.spanOf(lag);
            if (hanging.applies && hanging.from && span) {
                closeAfter(window, *hanging.from, *span, lag);
            }
        }
        if (stage.closesAtEndOfDay && window.opens) {
            closeAtEndOfDay(window, stage);
        }
        if (window.closes) {
            window.latestStart = *window.closes - window.handsOn;
        }
    }

    void closeAfter(Window& window, const TouchPoint& from, const rules::SpanFigure& span, const rules::Lag& lag) const
    {
        const Reckoning reckoning = reckon(from, span, cure::Side::Closing);
        window.why.push_back(reckoning);
        if (window.closes && *window.closes <= *reckoning.result) {
            return;
        }
        window.closes = reckoning.result;
        window.soft = lag.soft;
        window.lost.reset();
        std::erase_if(window.whyElse, [](const Reckoning& each) { return each.of == FigureOf::Lost; });
        if (lag.lost) {
            Reckoning lost = reckon(from, *lag.lost, cure::Side::Closing);
            lost.of = FigureOf::Lost;
            window.lost = lost.result;
            window.whyElse.push_back(lost);
        }
    }

    void closeAtEndOfDay(Window& window, const rules::Stage& stage) const
    {
        const auto end = m_bench.roster.endOfDay(*window.opens);
        if (!end) {
            return;
        }
        // Told from the touch that the run of the window counts from, so that it stays the same run.
        Reckoning reckoning;
        reckoning.of = FigureOf::Closes;
        reckoning.origin = m_piece.receivedAt.value_or(*window.opens);
        for (const Reckoning& why : window.why) {
            if (why.origin >= reckoning.origin) {
                reckoning.origin = why.origin;
                reckoning.event = why.event;
            }
        }
        reckoning.figure = *end - reckoning.origin;
        reckoning.source = {"bench hours of the studio", rules::Mark::Practice};
        reckoning.law = "none";
        reckoning.formula = cure::ClockOnly{};
        reckoning.reference = stage.reference;
        reckoning.air = airFor(cure::Side::Closing, stage.reference);
        reckoning.closing = true;
        reckoning.result = end;
        window.why.push_back(reckoning);
        if (!window.closes || *end < *window.closes) {
            window.closes = end;
        }
    }

    static void touchTest(Window& window, const rules::Stage& stage, const StageRecord* told)
    {
        if (!stage.test || window.begunAt) {
            return;
        }
        window.waitsForTest = true;
        if (told && told->notYet) {
            window.askAgain = *told->notYet + stage.test->askAgain.value;
        }
    }

    const PieceState& m_piece;
    const BenchFold& m_bench;
    const rules::RuleBook& m_book;
    const rules::Procedure& m_procedure;
    Instant m_now;
    Origins m_origins;
};

} // namespace

Phase phaseOf(const Window& window, Instant now)
{
    if (window.closes && now >= *window.closes) {
        return window.lost && now < *window.lost ? Phase::Past : window.lost ? Phase::Lost : Phase::Past;
    }
    if (window.stalled) {
        return Phase::Stalled;
    }
    return window.opens && now >= *window.opens ? Phase::Open : Phase::Waiting;
}

std::optional<Span> remaining(const Window& window, Instant now)
{
    if (!window.latestStart) {
        return std::nullopt;
    }
    return *window.latestStart - now;
}

namespace {
std::vector<Window> windowsOfPiece(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                                   Instant now, bool evenUnreached)
{
    const rules::Procedure* procedure = procedureOf(piece, book);
    if (!procedure || !piece.receivedAt || !piece.agreed) {
        return {}; // nothing is begun on a piece before its owner has agreed
    }
    return PieceWindows(piece, bench, book, *procedure, now).all(evenUnreached);
}
} // namespace

std::vector<Window> windowsOf(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    return windowsOfPiece(piece, bench, book, now, false);
}

std::vector<Window> windowsAhead(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                                 Instant now)
{
    return windowsOfPiece(piece, bench, book, now, true);
}

std::vector<Window> windowsOf(const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    std::vector<Window> all;
    for (const auto& [id, piece] : bench.pieces) {
        for (Window& window : windowsOf(piece, bench, book, now)) {
            if (!piece.onHold || window.hasClose()) {
                all.push_back(std::move(window));
            }
        }
    }
    chainThroughOnePairOfHands(all, now);
    return all;
}

} // namespace mend::bench
