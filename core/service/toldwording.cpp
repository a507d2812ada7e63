#include "core/service/toldwording.h"

#include "core/service/doorwording.h"

#include <QCoreApplication>

namespace mend::service {

using bench::What;

namespace {

QString sayTold(const char* words) { return QCoreApplication::translate("Told", words); }

const rules::Stage* stageIn(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book)
{
    const bench::PieceState* piece = bench.piece(event.piece);
    const rules::Procedure* procedure = piece ? bench::procedureOf(*piece, book) : book.revision(event.rules);
    if (procedure || event.stage.stage.empty()) {
        return procedure ? procedure->find(event.stage.stage) : nullptr;
    }
    // The piece has left the house and the event tells no rules: a key says the same in every procedure.
    for (const rules::Procedure& each : book.procedures) {
        if (const rules::Stage* stage = each.find(event.stage.stage)) {
            return stage;
        }
    }
    return nullptr;
}

QString stageTold(const bench::Event& event, const rules::Stage& stage)
{
    const QString act = text(stage.act);
    switch (event.what) {
    case What::Begun:
        return stage.begun.empty() ? sayTold("Begun: %1").arg(act) : text(stage.begun);
    case What::Done:
        return text(stage.done);
    case What::NotYet:
        return sayTold("Not yet: %1").arg(act);
    case What::Skipped:
        return sayTold("Skipped: %1").arg(act);
    case What::SentBack:
        return sayTold("Sent back to: %1").arg(act);
    case What::Missed:
        return sayTold("Not done: %1").arg(act);
    case What::DoingLate:
        return sayTold("Doing it late: %1").arg(act);
    case What::MoreToCome:
        return sayTold("Once more: %1").arg(act);
    case What::Overridden:
        return sayTold("Started all the same: %1").arg(act);
    case What::AlertAnswered:
        return sayTold("Hands on it: %1").arg(act);
    case What::OptionChosen:
        return sayTold("Agreed as well: %1").arg(act);
    default:
        return {};
    }
}

QString readingTold(const bench::Event& event, const QString& place, const Manner& manner)
{
    QStringList air;
    if (event.temperature) {
        air << temperatureWords(*event.temperature, manner);
    }
    if (event.humidity) {
        air << humidityWords(*event.humidity, manner);
    }
    return sayTold("%1: %2").arg(place, air.join(QStringLiteral(", ")));
}

QString gapTold(const bench::Event& event, const QString& place, const Manner& manner)
{
    if (event.word == "between" && event.temperature && event.amount) {
        return sayTold("%1 overnight: %2 to %3")
            .arg(place, temperatureWords(*event.temperature, manner),
                 temperatureWords(Temperature::fromCentidegrees(*event.amount), manner));
    }
    if (event.word == "stayedOn") {
        return sayTold("%1 stayed on").arg(place);
    }
    return event.word == "wentOff" ? sayTold("%1 went off").arg(place)
                                   : sayTold("%1: nobody knows whether it stayed on").arg(place);
}

QString mixTold(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book)
{
    const auto mix = bench.mixes.find(event.mix);
    const rules::Material* material = book.material(mix == bench.mixes.end() ? event.word : mix->second.material);
    const QString name = material ? text(material->name) : QString();
    switch (event.what) {
    case What::MixStarted:
        return sayTold("Mixed: %1").arg(name);
    case What::MixWeighed:
        return sayTold("Weighed: %1").arg(name);
    default:
        return event.word == "stiff"    ? sayTold("Mix is stiff: %1").arg(name)
               : event.word == "usedUp" ? sayTold("Mix is used up: %1").arg(name)
                                        : sayTold("Mix is thrown away: %1").arg(name);
    }
}

QString stateTold(const bench::Event& event, const rules::RuleBook& book)
{
    const rules::BenchState* state = book.state(event.word);
    if (!state) {
        return text(event.word);
    }
    return event.what == What::StateEnded && !state->toldOver.empty() ? text(state->toldOver)
           : event.what == What::StateBegun && !state->toldOn.empty() ? text(state->toldOn)
                                                                      : text(state->text);
}

QString pieceTold(What what)
{
    switch (what) {
    case What::HoldBegun:
        return sayTold("Work stopped");
    case What::HoldEnded:
        return sayTold("Work goes on");
    case What::RulesAdopted:
        return sayTold("Follows the new revision");
    case What::HandedOver:
        return sayTold("Handed over");
    case What::ReturnedUnmended:
        return sayTold("Went back unmended");
    case What::Agreed:
        return sayTold("Agreed and taken in");
    case What::Lifted:
        return sayTold("Lifted or turned");
    case What::WaitingForOwner:
        return sayTold("Waits for its owner");
    case What::OwnerAnswered:
        return sayTold("Its owner answered");
    case What::AlertAnswered:
        return sayTold("Hands on it");
    case What::AwayBegun:
        return sayTold("Away");
    case What::AwayEnded:
        return sayTold("Back");
    case What::ClockStepped:
        return sayTold("The clock was set");
    case What::Voided:
        return sayTold("Taken back");
    case What::Retold:
        return sayTold("Told differently");
    default:
        return {};
    }
}

QString timesMoved(const std::optional<Instant>& before, const std::optional<Instant>& after, const char* both,
                   const char* now_, const char* noMore, Instant now, const Manner& manner)
{
    if (before == after) {
        return {};
    }
    const auto clock = [&](const Instant& at) { return clockTime(at, now, manner); };
    if (before && after) {
        return sayTold(both).arg(clock(*after), clock(*before));
    }
    return after ? sayTold(now_).arg(clock(*after)) : sayTold(noMore).arg(clock(*before));
}

QStringList windowMoved(const bench::Window& before, const bench::Window& after, Instant now, const Manner& manner)
{
    return {timesMoved(before.opens, after.opens, QT_TRANSLATE_NOOP("Told", "opens %1 instead of %2"),
                       QT_TRANSLATE_NOOP("Told", "opens %1"), QT_TRANSLATE_NOOP("Told", "no longer opens %1"), now,
                       manner),
            timesMoved(before.latestStart, after.latestStart, QT_TRANSLATE_NOOP("Told", "start by %1 instead of %2"),
                       QT_TRANSLATE_NOOP("Told", "start by %1"),
                       QT_TRANSLATE_NOOP("Told", "no longer to be started by %1"), now, manner),
            timesMoved(before.closes, after.closes, QT_TRANSLATE_NOOP("Told", "closes %1 instead of %2"),
                       QT_TRANSLATE_NOOP("Told", "closes %1"), QT_TRANSLATE_NOOP("Told", "no longer closes %1"), now,
                       manner)};
}

} // namespace

QString toldWords(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book,
                  const Manner& manner)
{
    const record::Place* place = bench.roster.place(event.place);
    const QString placeName = place ? text(place->name) : QString();
    if (const rules::Stage* stage = stageIn(event, bench, book)) {
        if (const QString words = stageTold(event, *stage); !words.isEmpty()) {
            return words;
        }
    }
    switch (event.what) {
    case What::ReadingTaken:
        return readingTold(event, placeName, manner);
    case What::GapAnswered:
        return gapTold(event, placeName, manner);
    case What::Placed:
        return sayTold("Put in: %1").arg(placeName);
    case What::MixStarted:
    case What::MixEnded:
    case What::MixWeighed:
        return mixTold(event, bench, book);
    case What::StateBegun:
    case What::StateEnded:
        return stateTold(event, book);
    case What::Noted:
        return sayTold("Note: %1").arg(text(event.note));
    case What::PersonCame: {
        const record::Person* person = bench.roster.person(event.person);
        return person ? sayTold("%1 is at the bench").arg(isolated(text(person->name))) : sayTold("At the bench");
    }
    default: {
        const QString door = doorTold(event, manner);
        const QString words = door.isEmpty() ? pieceTold(event.what) : door;
        const QString stage = event.stage.stage.empty() ? sayTold("Told") : text(event.stage.stage);
        return words.isEmpty() ? stage : words;
    }
    }
}

QStringList moveWords(std::span<const bench::WindowMove> moves, const Names& names, Instant now, const Manner& manner)
{
    QStringList lines;
    for (const bench::WindowMove& move : moves) {
        const auto name = names.pieces.find(move.piece);
        const QString subject =
            sayTold("%1: “%2”").arg(name == names.pieces.end() ? QString() : isolated(name->second), text(move.act));
        QString what;
        if (move.before && move.after) {
            what = joined(windowMoved(*move.before, *move.after, now, manner));
            what = what.isEmpty() ? sayTold("takes %1 of hands").arg(spanWords(move.after->handsOn)) : what;
        } else if (move.before) {
            what = sayTold("no longer stands");
        } else {
            const QString times = joined(windowMoved({}, *move.after, now, manner));
            what = times.isEmpty() ? sayTold("comes up") : sayTold("comes up: %1").arg(times);
        }
        lines << sayTold("%1 %2").arg(subject, what);
    }
    return lines;
}

} // namespace mend::service
