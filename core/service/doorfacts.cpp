// What the door tells of a piece, each as an event of its own.
#include "core/service/door.h"

namespace mend::service {

using bench::Event;
using bench::What;

Event Door::of(What what, PieceId piece) const
{
    Event event = m_bench.told(what);
    event.piece = piece;
    return event;
}

EventId Door::tell(Event event)
{
    const std::vector<EventId> told = m_bench.tell({std::move(event)});
    return told.empty() ? EventId() : told.front();
}

bench::PromiseJudgement Door::judgePromise(PieceId piece, CivilDay day) const
{
    const bench::PieceState* const state = m_bench.bench().piece(piece);
    return state ? bench::judgePromise(day, *state, m_bench.book(), m_clock.now().utc, dayIn(m_zone))
                 : bench::PromiseJudgement{};
}

EventId Door::promise(PieceId piece, CivilDay day)
{
    Event event = of(What::Promised, piece);
    event.word = dayText(day);
    return tell(std::move(event));
}

EventId Door::agreePrice(PieceId piece, const Money& price)
{
    Event event = of(What::PriceAgreed, piece);
    event.amount = price.minorUnits();
    event.word = price.currency();
    return tell(std::move(event));
}

EventId Door::pay(PieceId piece, const Money& money)
{
    Event event = of(What::Paid, piece);
    event.amount = money.minorUnits();
    event.word = money.currency();
    return tell(std::move(event));
}

EventId Door::count(PieceId piece, const std::string& what, int number)
{
    Event event = of(What::Counted, piece);
    event.word = what;
    event.amount = number;
    return tell(std::move(event));
}

EventId Door::fragmentFound(PieceId piece, int count, const std::string& where)
{
    Event event = of(What::FragmentFound, piece);
    event.amount = count;
    event.note = where;
    return tell(std::move(event));
}

EventId Door::nameFault(PieceId piece, const bench::StageInstance& join, MixId batch, const std::string& note)
{
    Event event = of(What::FaultNamed, piece);
    event.stage = join;
    event.mix = batch;
    event.note = note;
    return tell(std::move(event));
}

EventId Door::removeMaterial(PieceId piece, const std::string& material)
{
    Event event = of(What::MaterialRemoved, piece);
    event.word = material;
    return tell(std::move(event));
}

EventId Door::tellOwner(PieceId piece, const std::string& how, const std::string& about)
{
    Event event = of(What::OwnerTold, piece);
    event.word = how;
    event.note = about;
    return tell(std::move(event));
}

EventId Door::giveNotice(PieceId piece, const std::string& how, const std::string& note)
{
    Event event = of(What::NoticeGiven, piece);
    event.word = how;
    event.note = note;
    return tell(std::move(event));
}

EventId Door::askOwner(PieceId piece, const std::string& question)
{
    Event event = of(What::WaitingForOwner, piece);
    event.note = question;
    return tell(std::move(event));
}

EventId Door::ownerAnswered(PieceId piece, const std::string& answer)
{
    Event event = of(What::OwnerAnswered, piece);
    event.note = answer;
    return tell(std::move(event));
}

EventId Door::shortenWait(PieceId piece, Instant from, const std::string& reason)
{
    Event event = of(What::WaitShortened, piece);
    event.until = from;
    event.note = reason;
    return tell(std::move(event));
}

EventId Door::agree(PieceId piece)
{
    Event event = of(What::Agreed, piece);
    const record::Piece* const row = m_bench.bench().roster.piece(piece);
    const rules::Procedure* const procedure = row ? m_bench.book().procedure(row->procedure) : nullptr;
    event.rules = procedure ? procedure->hash : std::string();
    return tell(std::move(event));
}

EventId Door::handOver(PieceId piece, const std::string& takenBy, const std::string& signedHow)
{
    Event event = of(What::HandedOver, piece);
    event.note = takenBy;
    event.word = signedHow;
    return tell(std::move(event));
}

std::vector<EventId> Door::handOver(const HandingOver& told)
{
    if (!m_bench.bench().piece(told.piece)) {
        return {};
    }
    return m_bench.tell(eventsOf(told, of(What::HandedOver, told.piece)));
}

EventId Door::returnUnmended(PieceId piece, const std::string& reason)
{
    Event event = of(What::ReturnedUnmended, piece);
    event.note = reason;
    return tell(std::move(event));
}

} // namespace mend::service
