#include "core/service/toldwording.h"

#include "core/service/doorwording.h"

#include <QCoreApplication>

namespace mend::service {

using bench::What;

namespace {

// What a translator finds these words under.
class ToldWords {
    Q_DECLARE_TR_FUNCTIONS(ToldWords)
};

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
        return stage.begun.empty() ? ToldWords::tr("Begun: %1").arg(act) : text(stage.begun);
    case What::Done:
        return text(stage.done);
    case What::NotYet:
        return ToldWords::tr("Not yet: %1").arg(act);
    case What::Skipped:
        return ToldWords::tr("Skipped: %1").arg(act);
    case What::SentBack:
        return ToldWords::tr("Sent back to: %1").arg(act);
    case What::Missed:
        return ToldWords::tr("Not done: %1").arg(act);
    case What::DoingLate:
        return ToldWords::tr("Doing it late: %1").arg(act);
    case What::MoreToCome:
        return ToldWords::tr("Once more: %1").arg(act);
    case What::Overridden:
        return ToldWords::tr("Started all the same: %1").arg(act);
    case What::AlertAnswered:
        return ToldWords::tr("Hands on it: %1").arg(act);
    case What::OptionChosen:
        return ToldWords::tr("Agreed as well: %1").arg(act);
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
    return ToldWords::tr("%1: %2").arg(place, air.join(QStringLiteral(", ")));
}

QString gapTold(const bench::Event& event, const QString& place, const Manner& manner)
{
    if (event.word == "between" && event.temperature && event.amount) {
        return ToldWords::tr("%1 overnight: %2 to %3")
            .arg(place, temperatureWords(*event.temperature, manner),
                 temperatureWords(Temperature::fromCentidegrees(*event.amount), manner));
    }
    if (event.word == "stayedOn") {
        return ToldWords::tr("%1 stayed on").arg(place);
    }
    return event.word == "wentOff" ? ToldWords::tr("%1 went off").arg(place)
                                   : ToldWords::tr("%1: nobody knows whether it stayed on").arg(place);
}

QString mixTold(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book)
{
    const auto mix = bench.mixes.find(event.mix);
    const rules::Material* material = book.material(mix == bench.mixes.end() ? event.word : mix->second.material);
    const QString name = material ? text(material->name) : QString();
    switch (event.what) {
    case What::MixStarted:
        return ToldWords::tr("Mixed: %1").arg(name);
    case What::MixWeighed:
        return ToldWords::tr("Weighed: %1").arg(name);
    default:
        return event.word == "stiff"    ? ToldWords::tr("Mix is stiff: %1").arg(name)
               : event.word == "usedUp" ? ToldWords::tr("Mix is used up: %1").arg(name)
                                        : ToldWords::tr("Mix is thrown away: %1").arg(name);
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
        return ToldWords::tr("Work stopped");
    case What::HoldEnded:
        return ToldWords::tr("Work goes on");
    case What::RulesAdopted:
        return ToldWords::tr("Follows the new revision");
    case What::HandedOver:
        return ToldWords::tr("Handed over");
    case What::ReturnedUnmended:
        return ToldWords::tr("Went back unmended");
    case What::Agreed:
        return ToldWords::tr("Agreed and taken in");
    case What::Lifted:
        return ToldWords::tr("Lifted or turned");
    case What::WaitingForOwner:
        return ToldWords::tr("Waits for its owner");
    case What::OwnerAnswered:
        return ToldWords::tr("Its owner answered");
    case What::AlertAnswered:
        return ToldWords::tr("Hands on it");
    case What::AwayBegun:
        return ToldWords::tr("Away");
    case What::AwayEnded:
        return ToldWords::tr("Back");
    case What::ClockStepped:
        return ToldWords::tr("The clock was set");
    case What::Voided:
        return ToldWords::tr("Taken back");
    case What::Retold:
        return ToldWords::tr("Told differently");
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
        return ToldWords::tr(both).arg(clock(*after), clock(*before));
    }
    return after ? ToldWords::tr(now_).arg(clock(*after)) : ToldWords::tr(noMore).arg(clock(*before));
}

QStringList windowMoved(const bench::Window& before, const bench::Window& after, Instant now, const Manner& manner)
{
    return {timesMoved(before.opens, after.opens, QT_TRANSLATE_NOOP("ToldWords", "opens %1 instead of %2"),
                       QT_TRANSLATE_NOOP("ToldWords", "opens %1"), QT_TRANSLATE_NOOP("ToldWords", "no longer opens %1"),
                       now, manner),
            timesMoved(before.latestStart, after.latestStart,
                       QT_TRANSLATE_NOOP("ToldWords", "start by %1 instead of %2"),
                       QT_TRANSLATE_NOOP("ToldWords", "start by %1"),
                       QT_TRANSLATE_NOOP("ToldWords", "no longer to be started by %1"), now, manner),
            timesMoved(before.closes, after.closes, QT_TRANSLATE_NOOP("ToldWords", "closes %1 instead of %2"),
                       QT_TRANSLATE_NOOP("ToldWords", "closes %1"),
                       QT_TRANSLATE_NOOP("ToldWords", "no longer closes %1"), now, manner)};
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
        return ToldWords::tr("Put in: %1").arg(placeName);
    case What::MixStarted:
    case What::MixEnded:
    case What::MixWeighed:
        return mixTold(event, bench, book);
    case What::StateBegun:
    case What::StateEnded:
        return stateTold(event, book);
    case What::Noted:
        return ToldWords::tr("Note: %1").arg(text(event.note));
    case What::PersonCame: {
        const record::Person* person = bench.roster.person(event.person);
        return person ? ToldWords::tr("%1 is at the bench").arg(isolated(text(person->name)))
                      : ToldWords::tr("At the bench");
    }
    default: {
        const QString door = doorTold(event, manner);
        const QString words = door.isEmpty() ? pieceTold(event.what) : door;
        const QString stage = event.stage.stage.empty() ? ToldWords::tr("Told") : text(event.stage.stage);
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
            ToldWords::tr("%1: “%2”")
                .arg(name == names.pieces.end() ? QString() : isolated(name->second), text(move.act));
        QString what;
        if (move.before && move.after) {
            what = joined(windowMoved(*move.before, *move.after, now, manner));
            what = what.isEmpty() ? ToldWords::tr("takes %1 of hands").arg(spanWords(move.after->handsOn)) : what;
        } else if (move.before) {
            what = ToldWords::tr("no longer stands");
        } else {
            const QString times = joined(windowMoved({}, *move.after, now, manner));
            what = times.isEmpty() ? ToldWords::tr("comes up") : ToldWords::tr("comes up: %1").arg(times);
        }
        lines << ToldWords::tr("%1 %2").arg(subject, what);
    }
    return lines;
}

} // namespace mend::service
