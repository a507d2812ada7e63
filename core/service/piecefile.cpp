#include "core/service/piecefile.h"

#include "core/service/openhours.h"

#include <algorithm>

namespace mend::service {

using Against = HandOverFacts::Against;

namespace {

/// Takes a value out of a result, or notes the first fault.
template <class T> T orFault(Result<T> result, std::optional<Fault>& fault)
{
    if (result) {
        return result.takeValue();
    }
    fault = fault.value_or(result.fault());
    return {};
}

void judge(HandOverFacts& facts)
{
    const auto add = [&](Against against, bool isSo) {
        if (isSo) {
            facts.against.push_back(against);
        }
    };
    add(Against::WorkToDo, !facts.from);
    add(Against::WaitNotOver, facts.from && !facts.isWaitOver);
    add(Against::MoneyOwed, facts.owed.left && facts.owed.left->minorUnits() > 0);
    add(Against::FragmentsNotCounted, facts.fragments.in && !facts.fragments.out);
    add(Against::FragmentMissing, facts.fragments.isShort());
    add(Against::AccessoriesNotCounted, facts.accessories.in.value_or(0) > 0 && !facts.accessories.out);
    add(Against::AccessoryMissing, facts.accessories.isShort());
}

} // namespace

const record::Visit* PieceFile::visit() const
{
    const auto found = std::ranges::find(visits, dossier.now().number, &record::Visit::number);
    return found == visits.end() ? nullptr : &*found;
}

Result<PieceFile> readPieceFile(const store::Store& store, PieceId id, const rules::RuleBook& book)
{
    std::optional<Fault> fault;
    PieceFile file;
    const auto piece = orFault(store.piece(id), fault);
    if (!fault && !piece) {
        return Fault{FaultKind::NotFound, "no such piece"};
    }
    file.piece = piece.value_or(record::Piece{});
    file.owner = orFault(store.customer(file.piece.owner), fault).value_or(record::Customer{});
    file.visits = orFault(store.visitsOf(id), fault);
    file.photos = orFault(store.notedPhotosOf(id), fault);
    file.events = orFault(store.eventsOf(id), fault);
    std::vector<bench::Event> told = file.events;
    const auto mixes = orFault(store.mixesOn(id), fault);
    told.insert(told.end(), mixes.begin(), mixes.end());
    file.dossier = bench::dossierOf(id, told, book);
    if (fault) {
        return *fault;
    }
    return file;
}

Result<PersonFile> readPersonFile(const store::Store& store, CustomerId id, const rules::RuleBook& book)
{
    const auto person = store.customer(id);
    const auto pieces = store.piecesOf(id);
    if (!person || !pieces) {
        return person ? pieces.fault() : person.fault();
    }
    if (!person.value()) {
        return Fault{FaultKind::NotFound, "nobody of that number"};
    }
    PersonFile file{*person.value(), {}};
    for (const record::Piece& piece : pieces.value()) {
        auto each = readPieceFile(store, piece.id, book);
        if (!each) {
            return each.fault();
        }
        file.pieces.push_back(each.takeValue());
    }
    return file;
}

HandOverFacts handOverFacts(const PieceFile& file, const bench::PieceState* state, const rules::RuleBook& book,
                            Instant now, const bench::DayOf& dayOf)
{
    const bench::VisitFacts& visit = file.dossier.now();
    HandOverFacts facts;
    facts.from = state ? bench::handOverFrom(*state, book) : std::nullopt;
    if (facts.from) {
        facts.collectable = bench::collectableDay(facts.from->at, dayOf);
        facts.isWaitOver = now >= facts.from->at;
    }
    facts.promise = visit.promise();
    facts.owed = bench::owedFor(visit);
    facts.fragments = visit.fragments;
    if (facts.fragments.in) {
        *facts.fragments.in += visit.fragmentsFound;
    }
    facts.accessories = visit.accessories;
    if (const record::Visit* record = file.visit()) {
        facts.accessoryList = record->accessories;
    }
    judge(facts);
    return facts;
}

bench::DayOf dayIn(const QTimeZone& zone)
{
    return [zone](Instant at) { return localDay(at, zone); };
}

} // namespace mend::service
