#include "core/service/planlines.h"

#include "core/bench/forecast.h"

#include <QCoreApplication>
#include <QDateTime>

#include <algorithm>

namespace mend::service {

namespace {

using plan::slot;
using plan::Strain;
using plan::WayOut;

// What a translator finds these words under.
class PlanWording {
    Q_DECLARE_TR_FUNCTIONS(PlanWording)
};

class Telling {
public:
    Telling(const bench::StandingPlan& plan, const PlanSources& sources, Instant now, const Manner& manner)
        : m_plan(plan), m_sources(sources), m_now(now), m_manner(manner)
    {
    }

    PlanInWords all() const
    {
        PlanInWords told;
        told.isKnown = m_plan.isWhole();
        for (const bench::PlannedHands& hands : m_plan.hands) {
            if (hands.to > m_now || hands.running) {
                told.lines.push_back(line(hands));
            }
        }
        if (m_plan.isWhole()) {
            told.leftOut = leftOut();
        }
        if (m_plan.verdict == bench::StandingPlan::Verdict::None) {
            told.conflict = conflict();
        }
        return told;
    }

private:
    const plan::Problem& problem() const { return m_plan.made.problem; }
    const bench::PieceState* piece(PieceId id) const { return m_sources.bench.piece(id); }

    QString nameOf(PieceId id) const { return piece(id) ? isolated(text(piece(id)->piece.benchName)) : QString(); }

    const rules::Stage* ruleOf(PieceId id, const std::string& stage) const
    {
        const rules::Procedure* procedure = piece(id) ? bench::procedureOf(*piece(id), m_sources.book) : nullptr;
        return procedure ? procedure->find(stage) : nullptr;
    }

    QString actOf(PieceId id, const bench::StageInstance& stage) const
    {
        const rules::Stage* rule = ruleOf(id, stage.stage);
        const QString act = text(rule ? rule->act : stage.stage);
        return stage.repetition > 1 ? PlanWording::tr("%1 (%2)").arg(act).arg(stage.repetition) : act;
    }

    /// "heron bowl, wipe back the filler": a step of the problem, or what takes a pair of hands.
    QString stepOf(int step) const
    {
        const bench::PlanStep& means = m_plan.made.steps[slot(step)];
        if (means.piece.isSet() && !means.stage.stage.empty()) {
            return PlanWording::tr("%1, %2").arg(nameOf(means.piece), actOf(means.piece, means.stage));
        }
        return means.piece.isSet() ? nameOf(means.piece) : text(problem().steps[slot(step)].id);
    }

    QString clock(Instant at) const { return clockTime(at, m_now, m_manner); }
    QString clock(plan::Minute minute) const { return clock(m_plan.made.at(minute)); }

    PlanLine line(const bench::PlannedHands& hands) const
    {
        PlanLine line{hands.piece, hands.stage, hands.from, hands.to, {}, {}, {}, {}, {}, {}, hands.running};
        line.clock = hands.from <= m_now ? PlanWording::tr("now") : clock(hands.from);
        line.act = actOf(hands.piece, hands.stage);
        line.name = nameOf(hands.piece);
        line.why = whyThen(hands);
        if (m_plan.made.people.size() > 1) {
            const record::Person* person = m_sources.bench.roster.person(hands.person);
            line.person = person ? isolated(text(person->name)) : QString();
        }
        if (const rules::Stage* rule = ruleOf(hands.piece, hands.stage.stage)) {
            const PlaceId id = bench::usualPlace(*rule, *piece(hands.piece), m_sources.bench, hands.from);
            const record::Place* place = m_sources.bench.roster.place(id);
            line.place = place ? text(place->name) : QString();
        }
        return line;
    }

    QString whyThen(const bench::PlannedHands& hands) const
    {
        if (hands.running) {
            return PlanWording::tr("under hands");
        }
        QStringList why;
        const auto window = std::ranges::find_if(m_sources.board.windows, [&](const bench::Window& each) {
            return each.piece == hands.piece && each.stage == hands.stage && each.closes && *each.closes > m_now;
        });
        const bool isOpen = window != m_sources.board.windows.end();
        if (isOpen && window->latestStart) { // the same figure as on its card
            why << PlanWording::tr("start by %1").arg(clock(*window->latestStart));
        } else if (hands.startBy) {
            why << PlanWording::tr("start by %1").arg(clock(*hands.startBy));
        }
        const rules::Stage* rule = ruleOf(hands.piece, hands.stage.stage);
        if (!why.isEmpty() && rule) {
            why << missWords(rule->miss);
        }
        const QString promise = why.isEmpty() ? promiseOf(hands.piece) : QString();
        if (!promise.isEmpty()) {
            why << promise;
        }
        why.removeAll(QString());
        return why.isEmpty() ? PlanWording::tr("nothing closes") : why.join(QStringLiteral("; "));
    }

    /// A promise is good until the end of its day.
    QString promiseOf(PieceId id) const
    {
        const auto& pieces = m_plan.made.pieces;
        const auto found = std::ranges::find(pieces, id);
        if (found == pieces.end()) {
            return {};
        }
        const plan::Piece& row = problem().pieces[static_cast<std::size_t>(found - pieces.begin())];
        if (row.weight == 0) {
            return {};
        }
        const Instant last = m_plan.made.at(row.promised) - std::chrono::minutes(1);
        const QDate day = QDateTime::fromMSecsSinceEpoch(last.time_since_epoch().count(), m_manner.zone).date();
        return PlanWording::tr("promised for %1").arg(m_manner.locale.toString(day, QLocale::ShortFormat));
    }

    QStringList leftOut() const
    {
        QStringList lines;
        const std::vector<plan::Minute> ends = plan::completions(problem(), m_plan.table.start);
        for (std::size_t i = 0; i < problem().pieces.size(); ++i) {
            const plan::Piece& row = problem().pieces[i];
            if (row.weight > 0 && ends[i] > row.promised) {
                lines << PlanWording::tr("Not by its promised day: %1, %2 later")
                             .arg(nameOf(m_plan.made.pieces[i]),
                                  spanWords(std::chrono::minutes(ends[i] - row.promised)));
            }
        }
        for (const bench::PlanStep& step : m_plan.made.lost) {
            lines << PlanWording::tr("Too late even if begun at once: %1").arg(named(step));
        }
        for (const bench::PlanStep& step : m_plan.made.tooTight) {
            lines << PlanWording::tr("Its window is shorter than the work: %1").arg(named(step));
        }
        std::vector<PieceId> said;
        for (const bench::PlanStep& step : m_plan.made.stalled) {
            if (std::ranges::find(said, step.piece) == said.end()) {
                said.push_back(step.piece);
                lines << PlanWording::tr("Not planned while it makes no progress: %1").arg(named(step));
            }
        }
        for (const auto& [id, runs] : m_plan.made.moreRuns) {
            lines << PlanWording::tr("More runs, so that each fits its window: %1, %2 more").arg(nameOf(id)).arg(runs);
        }
        return lines;
    }

    QString named(const bench::PlanStep& step) const
    {
        return PlanWording::tr("%1, %2").arg(nameOf(step.piece), actOf(step.piece, step.stage));
    }

    PlanConflict conflict() const
    {
        PlanConflict told;
        if (!m_plan.why.conflicts.empty()) {
            for (const Strain& strain : m_plan.why.conflicts.front().strains) {
                told.reasons << strainWords(strain);
            }
        }
        told.reasons.removeAll(QString());
        told.reasons.removeDuplicates();
        for (const WayOut& way : m_plan.why.waysOut) {
            const bool aside = way.kind == WayOut::Kind::SetAside;
            told.ways.push_back({wayWords(way), aside ? m_plan.made.pieces[slot(way.which)] : PieceId{}});
        }
        return told;
    }

    QString strainWords(const Strain& strain) const
    {
        const std::size_t which = slot(strain.which);
        switch (strain.kind) {
        case Strain::Kind::Window:
            return PlanWording::tr("%1: %2 after %3 at the latest")
                .arg(stepOf(problem().lags[which].to),
                     spanWords(std::chrono::minutes(problem().lags[which].most.value_or(0))),
                     stepOf(problem().lags[which].from));
        case Strain::Kind::Minimum:
            return PlanWording::tr("%1: not sooner than %2 after %3")
                .arg(stepOf(problem().lags[which].to), spanWords(std::chrono::minutes(problem().lags[which].least)),
                     stepOf(problem().lags[which].from));
        case Strain::Kind::Order:
            return PlanWording::tr("%1 comes after %2")
                .arg(stepOf(problem().lags[which].to), stepOf(problem().lags[which].from));
        case Strain::Kind::Hands:
            return problem().people.size() == 1
                       ? PlanWording::tr("There is one pair of hands")
                       : PlanWording::tr("There are %1 pairs of hands").arg(problem().people.size());
        case Strain::Kind::Place:
            return PlanWording::tr("There is room for %1: %2")
                .arg(problem().resources[which].capacity)
                .arg(text(problem().resources[which].id));
        case Strain::Kind::Apart:
            return apartWords(problem().incompatible[which].first);
        case Strain::Kind::Hours:
            return shutWords(which);
        case Strain::Kind::Earliest:
            return PlanWording::tr("%1: not before %2")
                .arg(stepOf(strain.which), clock(problem().steps[which].earliest.value_or(0)));
        case Strain::Kind::LatestEnd:
            return PlanWording::tr("%1: hands off by %2")
                .arg(stepOf(strain.which), clock(problem().steps[which].latestEnd.value_or(0)));
        case Strain::Kind::Horizon:
            return PlanWording::tr("All of it by %1").arg(clock(problem().horizon));
        }
        return {};
    }

    /// A tag begins with the key of the row in the hazard table that it comes from.
    QString apartWords(const std::string& tag) const
    {
        const rules::Hazard* row = m_sources.book.hazard(tag.substr(0, tag.find(' ')));
        return row ? text(row->title) : QString();
    }

    QString shutWords(std::size_t which) const
    {
        const auto& open = problem().open;
        if (open.empty()) {
            return PlanWording::tr("Nobody is at the bench");
        }
        if (which == 0) {
            return PlanWording::tr("Nobody is at the bench until %1").arg(clock(open.front().from));
        }
        return which < open.size() ? PlanWording::tr("Nobody is at the bench from %1 to %2")
                                         .arg(clock(open[which - 1].to), clock(open[which].from))
                                   : PlanWording::tr("Nobody is at the bench from %1").arg(clock(open[which - 1].to));
    }

    QString wayWords(const WayOut& way) const
    {
        switch (way.kind) {
        case WayOut::Kind::AnotherPlace:
            return PlanWording::tr("One place more: %1").arg(text(problem().resources[slot(way.which)].id));
        case WayOut::Kind::HelpingHand:
            return PlanWording::tr("Another pair of hands from %1, for %2")
                .arg(clock(way.at), spanWords(std::chrono::minutes(way.minutes)));
        case WayOut::Kind::StayOpen:
            return way.sooner ? PlanWording::tr("Begin sooner, at %1").arg(clock(way.at))
                              : PlanWording::tr("Stay until %1").arg(clock(way.at));
        case WayOut::Kind::SetAside:
            return PlanWording::tr("Leave the %1 for another day").arg(nameOf(m_plan.made.pieces[slot(way.which)]));
        case WayOut::Kind::LetLapse:
            return lapseWords(way);
        }
        return {};
    }

    QString lapseWords(const WayOut& way) const
    {
        const int step = problem().lags[slot(way.which)].to;
        const bench::PlanStep& means = m_plan.made.steps[slot(step)];
        const rules::Stage* rule = ruleOf(means.piece, means.stage.stage);
        const QString cost = rule ? missWords(rule->miss) : QString();
        const QString lapse = PlanWording::tr("Let it lapse: %1").arg(stepOf(step));
        return cost.isEmpty() ? lapse : PlanWording::tr("%1; %2").arg(lapse, cost);
    }

    const bench::StandingPlan& m_plan;
    const PlanSources& m_sources;
    Instant m_now;
    const Manner& m_manner;
};

} // namespace

PlanInWords planInWords(const bench::StandingPlan& plan, const PlanSources& sources, Instant now, const Manner& manner)
{
    return Telling(plan, sources, now, manner).all();
}

QString changeWords(const plan::PlanChange& change)
{
    const QString moved = PlanWording::tr("%n moved", nullptr, static_cast<int>(change.moved.size()));
    return change.newlyLate.empty()
               ? PlanWording::tr("%1, none later than promised").arg(moved)
               : PlanWording::tr("%1, %2 later than promised").arg(moved).arg(change.newlyLate.size());
}

} // namespace mend::service
