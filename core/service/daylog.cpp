#include "core/service/daylog.h"

#include "core/bench/alertanswer.h"
#include "core/service/toldwording.h"

#include <algorithm>
#include <map>
#include <set>

namespace mend::service {

using bench::Event;
using bench::What;

namespace {

/// How far back a fact can be told differently.
constexpr Span lastDay = std::chrono::hours(24);

bool isOwnNote(const Event& event)
{
    return event.what == What::AlertAnswered && event.word.ends_with("|" + answeredKey(bench::Answered::Shown));
}

bool isAboutAnother(const Event& event) { return event.what == What::Voided || event.what == What::Retold; }

bool canMoveKind(What what)
{
    switch (what) {
    case What::Begun:
    case What::Done:
    case What::NotYet:
    case What::Skipped:
    case What::Missed:
    case What::DoingLate:
    case What::Placed:
    case What::Lifted:
    case What::ReadingTaken:
    case What::MixStarted:
        return true;
    default:
        return false;
    }
}

LogLine lineOf(const Event& event, const bench::BenchFold& bench, const rules::RuleBook& book, const Manner& manner)
{
    LogLine line;
    line.event = event.id;
    line.piece = event.piece;
    line.happened = event.happened;
    line.recorded = event.recorded;
    line.words = toldWords(event, bench, book, manner);
    if (const record::Piece* piece = bench.roster.piece(event.piece)) {
        line.pieceName = text(piece->benchName);
    }
    if (const record::Person* person = bench.roster.person(event.person)) {
        line.person = text(person->name);
    }
    line.note = event.what == What::Noted ? QString() : text(event.note);
    return line;
}

/// Events that a telling in force has put at another time or piece.
std::set<EventId> toldAgain(std::span<const Event> told, const std::map<EventId, Event>& standing)
{
    std::set<EventId> targets;
    std::set<EventId> voided;
    for (const Event& event : told) {
        if (event.what == What::Voided) {
            voided.insert(event.target);
        }
    }
    for (const Event& event : told) {
        if (event.what == What::Retold && !voided.contains(event.id) && standing.contains(event.target)) {
            targets.insert(event.target);
        }
    }
    return targets;
}

} // namespace

std::vector<LogLine> dayLog(std::span<const Event> told, const bench::BenchFold& bench, const rules::RuleBook& book,
                            InstantRange day, Instant now, const Manner& manner)
{
    std::map<EventId, Event> standing;
    for (const Event& event : bench::effective(told)) {
        standing.emplace(event.id, event);
    }
    const std::set<EventId> again = toldAgain(told, standing);
    std::vector<LogLine> lines;
    for (const Event& first : told) {
        const auto stands = standing.find(first.id);
        const Event& event = stands == standing.end() ? first : stands->second;
        if (isAboutAnother(event) || isOwnNote(event) || event.happened < day.from || event.happened >= day.to) {
            continue;
        }
        LogLine line = lineOf(event, bench, book, manner);
        line.takenBack = stands == standing.end();
        line.toldAgain = !line.takenBack && again.contains(event.id);
        const bool recent = !line.takenBack && now - event.happened < lastDay;
        line.canMove = recent && canMoveKind(event.what);
        line.canTakeBack = recent;
        lines.push_back(std::move(line));
    }
    std::ranges::stable_sort(lines, std::greater{},
                             [](const LogLine& line) { return std::pair(line.happened, line.event); });
    return lines;
}

MoveFault moveFault(Instant happened, Instant now)
{
    return happened > now ? MoveFault::Future : now - happened >= lastDay ? MoveFault::TooLongAgo : MoveFault::None;
}

} // namespace mend::service
