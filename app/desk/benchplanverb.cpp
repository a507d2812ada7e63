#include "app/desk/benchat.h"
#include "app/desk/planning.h"

#include "core/bench/benchplan.h"
#include "core/exchange/planreader.h"
#include "core/service/openhours.h"
#include "core/service/planfacts.h"
#include "core/service/wording.h"

#include <QJsonArray>
#include <QJsonDocument>

#include <algorithm>
#include <array>
#include <fstream>
#include <string_view>

namespace mend::desk {

namespace {

using service::text;

/// One look at the plan of a bench, with all that its words need.
struct PlanLook {
    const BenchAt& bench;
    const bench::BenchProblem& made;
    const plan::Timetable& table;
    service::Manner manner;
    std::vector<bench::PlannedHands> hands;

    const bench::PieceState* piece(PieceId id) const { return bench.fold.piece(id); }

    QString nameOf(PieceId id) const { return piece(id) ? text(piece(id)->piece.benchName) : QString(); }

    QString actOf(PieceId id, const bench::StageInstance& stage) const
    {
        const rules::Procedure* procedure = piece(id) ? bench::procedureOf(*piece(id), bench.open.book) : nullptr;
        const rules::Stage* rule = procedure ? procedure->find(stage.stage) : nullptr;
        const QString act = text(rule ? rule->act : stage.stage);
        return stage.repetition > 1 ? QStringLiteral("%1 (%2)").arg(act).arg(stage.repetition) : act;
    }

    QString personOf(PersonId id) const
    {
        const record::Person* person = bench.fold.roster.person(id);
        return person ? text(person->name) : QString();
    }

    QString stepOf(const bench::PlanStep& step) const
    {
        return QStringLiteral("%1, %2").arg(nameOf(step.piece), actOf(step.piece, step.stage));
    }

    std::chrono::year_month_day dayOf(Instant at) const { return service::localDay(at, manner.zone); }
};

QString handsLine(const bench::PlannedHands& hands, const PlanLook& look)
{
    QString line = QStringLiteral("  %1 to %2  %3: %4")
                       .arg(service::timeOfDay(hands.from, look.manner), service::timeOfDay(hands.to, look.manner),
                            look.nameOf(hands.piece), look.actOf(hands.piece, hands.stage));
    if (hands.running) {
        line += QStringLiteral(", under hands");
    } else if (hands.startBy) {
        line += QStringLiteral(", start by %1").arg(service::clockTime(*hands.startBy, hands.from, look.manner));
    }
    if (look.made.people.size() > 1) {
        line += QStringLiteral(", %1").arg(look.personOf(hands.person));
    }
    return line + QLatin1Char('\n');
}

/// The promises that the plan does not keep, and by how much.
std::vector<std::pair<PieceId, Span>> lateIn(const PlanLook& look)
{
    std::vector<std::pair<PieceId, Span>> late;
    const std::vector<plan::Minute> ends = plan::completions(look.made.problem, look.table.start);
    for (std::size_t i = 0; i < look.made.problem.pieces.size(); ++i) {
        const plan::Piece& piece = look.made.problem.pieces[i];
        if (piece.weight > 0 && ends[i] > piece.promised) {
            late.emplace_back(look.made.pieces[i], std::chrono::minutes(ends[i] - piece.promised));
        }
    }
    return late;
}

QString leftOutText(const PlanLook& look)
{
    QString words;
    for (const auto& [piece, by] : lateIn(look)) {
        words +=
            QStringLiteral("Not by its promised day: %1, %2 later\n").arg(look.nameOf(piece), service::spanWords(by));
    }
    for (const bench::PlanStep& step : look.made.lost) {
        words += QStringLiteral("Too late even if begun at once: %1\n").arg(look.stepOf(step));
    }
    for (const bench::PlanStep& step : look.made.tooTight) {
        words += QStringLiteral("Its window is shorter than the work: %1\n").arg(look.stepOf(step));
    }
    std::vector<PieceId> said;
    for (const bench::PlanStep& step : look.made.stalled) {
        if (std::ranges::find(said, step.piece) == said.end()) {
            said.push_back(step.piece);
            words += QStringLiteral("Not planned while it makes no progress: %1\n").arg(look.stepOf(step));
        }
    }
    for (const auto& [piece, runs] : look.made.moreRuns) {
        words +=
            QStringLiteral("More runs, so that each fits its window: %1, %2 more\n").arg(look.nameOf(piece)).arg(runs);
    }
    return words;
}

/// Today's hands; where none are left today, those of the next day that has some.
QString planText(const PlanLook& look)
{
    const Instant now = look.bench.now;
    if (look.hands.empty()) {
        return QStringLiteral("Nothing on the bench needs hands.\n") + leftOutText(look);
    }
    const auto day = look.dayOf(std::max(now, look.hands.front().from));
    const bool isToday = day == look.dayOf(now);
    QString words = QStringLiteral("Plan at %1%2\n")
                        .arg(service::timeOfDay(now, look.manner),
                             isToday ? QStringLiteral(" for the rest of today")
                                     : QStringLiteral(", nothing more today; next %1")
                                           .arg(service::clockTime(look.hands.front().from, now, look.manner)));
    std::size_t later = 0;
    for (const bench::PlannedHands& hands : look.hands) {
        if (look.dayOf(std::max(now, hands.from)) == day) {
            words += handsLine(hands, look);
        } else {
            ++later;
        }
    }
    if (later > 0) {
        words += QStringLiteral("  and %1 more, the last until %2\n")
                     .arg(later)
                     .arg(service::clockTime(look.hands.back().to, now, look.manner));
    }
    return words + leftOutText(look);
}

QJsonObject stepJson(const bench::PlanStep& step, const PlanLook& look)
{
    const bench::PieceState* piece = look.piece(step.piece);
    return {{QStringLiteral("piece"), piece ? text(piece->piece.number) : QString()},
            {QStringLiteral("stage"), text(step.stage.stage)},
            {QStringLiteral("repetition"), step.stage.repetition}};
}

QJsonArray stepsJson(const std::vector<bench::PlanStep>& steps, const PlanLook& look)
{
    QJsonArray rows;
    for (const bench::PlanStep& step : steps) {
        rows.append(stepJson(step, look));
    }
    return rows;
}

QJsonObject planJson(const PlanLook& look, const std::string& status)
{
    QJsonArray rows;
    for (const bench::PlannedHands& hands : look.hands) {
        QJsonObject row = stepJson({hands.piece, hands.stage}, look);
        row[QStringLiteral("name")] = look.nameOf(hands.piece);
        row[QStringLiteral("act")] = look.actOf(hands.piece, hands.stage);
        row[QStringLiteral("from")] = text(toRfc3339(hands.from));
        row[QStringLiteral("to")] = text(toRfc3339(hands.to));
        row[QStringLiteral("startBy")] = hands.startBy ? QJsonValue(text(toRfc3339(*hands.startBy))) : QJsonValue();
        row[QStringLiteral("person")] = look.personOf(hands.person);
        row[QStringLiteral("running")] = hands.running;
        rows.append(row);
    }
    QJsonArray late;
    for (const auto& [piece, by] : lateIn(look)) {
        const bench::PieceState* state = look.piece(piece);
        late.append(QJsonObject{{QStringLiteral("piece"), state ? text(state->piece.number) : QString()},
                                {QStringLiteral("minutes"), static_cast<qint64>(by / std::chrono::minutes(1))}});
    }
    return {{QStringLiteral("planned"), true},
            {QStringLiteral("status"), text(status)},
            {QStringLiteral("at"), text(toRfc3339(look.bench.now))},
            {QStringLiteral("hands"), rows},
            {QStringLiteral("late"), late},
            {QStringLiteral("lost"), stepsJson(look.made.lost, look)},
            {QStringLiteral("tooTight"), stepsJson(look.made.tooTight, look)},
            {QStringLiteral("stalled"), stepsJson(look.made.stalled, look)},
            {QStringLiteral("later"), stepsJson(look.made.later, look)}};
}

} // namespace

bool isBenchFile(const std::string& file)
{
    constexpr std::string_view mark = "SQLite format 3"; // the file format's own first bytes, sqlite.org/fileformat2
    std::array<char, mark.size()> first{};
    std::ifstream stream(file, std::ios::binary);
    return stream.read(first.data(), first.size()) && std::string_view(first.data(), first.size()) == mark;
}

Answer planBenchFile(const std::string& file, const PlanEffort& effort, std::optional<Instant> at, bool asProblem,
                     const Clock& clock)
{
    const auto read = benchAt(file, at, clock);
    if (!read) {
        return refusal(read.fault(), QString::fromStdString(file));
    }
    const BenchAt& bench = read.value();
    const service::OpenBench& open = bench.open;
    const bench::PlanFacts facts = service::planFactsOf(open.studio, open.record.events, bench.now);
    const bench::BenchProblem made = bench::benchProblem(bench.fold, open.book, facts, bench.now);
    if (asProblem) {
        const QByteArray problem = QByteArray::fromStdString(exchange::planProblemText(made.problem));
        return {Ending::Good, QString::fromUtf8(problem), QJsonDocument::fromJson(problem).object()};
    }
    plan::Planned planned;
    if (made.problem.steps.empty()) { // nothing to plan, and no problem of the format either
        planned.table.emplace();
        planned.flowProven = true;
    } else {
        planned = planFor(made.problem, effort);
    }
    if (!planned.table) {
        return withoutPlan(made.problem, planned);
    }
    const PlanLook look{bench,
                        made,
                        *planned.table,
                        {open.studio.timeZone(), QLocale(QLocale::English), open.studio.fahrenheit},
                        bench::plannedHands(made, *planned.table)};
    return {Ending::Good, planText(look), planJson(look, statusOf(planned))};
}

} // namespace mend::desk
