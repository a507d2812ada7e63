#include "core/bench/dossier.h"

#include "core/base/currency.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// Tells one event after the other of a single piece into its visits.
class Clerk {
public:
    Clerk(PieceId piece, const rules::RuleBook& book) : m_book(book)
    {
        m_dossier.piece = piece;
        m_dossier.visits.emplace_back();
    }

    void tellMix(const Event& event)
    {
        if (event.what == What::MixStarted) {
            m_mixes[event.mix] = event;
        }
    }

    void tell(const Event& event)
    {
        switch (event.what) {
        case What::CameBack:
            m_dossier.visits.emplace_back();
            visit().number = static_cast<int>(m_dossier.visits.size());
            visit().cameFor = event.word;
            visit().receivedAt = event.happened;
            m_rules.clear();
            break;
        case What::Received:
            receive(event);
            break;
        case What::Agreed:
            receive(event);
            visit().agreedAt = visit().agreedAt.value_or(event.happened);
            m_rules = m_rules.empty() ? event.rules : m_rules;
            break;
        case What::RulesAdopted:
            m_rules = event.rules;
            break;
        case What::Done:
            putIn(event);
            break;
        case What::HandedOver:
            visit().handedOver = {event.happened, event.note, event.word, event.person, event.id};
            break;
        case What::ReturnedUnmended:
            visit().returnedUnmended = event.happened;
            break;
        default:
            tellDoor(event);
            break;
        }
    }

    Dossier dossier() { return std::move(m_dossier); }

private:
    VisitFacts& visit() { return m_dossier.visits.back(); }

    void receive(const Event& event) { visit().receivedAt = visit().receivedAt.value_or(event.happened); }

    void tellDoor(const Event& event)
    {
        switch (event.what) {
        case What::Promised:
            if (const auto day = dayFrom(event.word)) {
                visit().promises.push_back({*day, event.happened, event.id});
            }
            break;
        case What::PriceAgreed:
            visit().price = Money(event.amount.value_or(0), event.word);
            break;
        case What::Paid:
            visit().payments.push_back({Money(event.amount.value_or(0), event.word), event.happened, event.id});
            break;
        case What::NoticeGiven:
        case What::OwnerTold:
            visit().ownerWords.push_back(
                {event.what == What::NoticeGiven, event.word, event.note, event.happened, event.id});
            break;
        case What::FaultNamed:
            visit().faults.push_back({event.stage, event.mix, event.note, event.happened});
            break;
        case What::FragmentFound:
            visit().fragmentsFound += static_cast<int>(event.amount.value_or(1));
            break;
        case What::Counted:
            count(event);
            break;
        case What::WaitShortened:
            visit().waitShortenedTo = event.until;
            visit().waitShortenedBecause = event.note;
            break;
        case What::ConsentGiven:
            visit().consentAt = event.happened;
            visit().consentHow = event.word;
            break;
        default:
            break;
        }
    }

    void count(const Event& event)
    {
        const auto counted = event.amount ? std::optional(static_cast<int>(*event.amount)) : std::nullopt;
        (event.word == "fragmentsIn"     ? visit().fragments.in
         : event.word == "fragmentsOut"  ? visit().fragments.out
         : event.word == "accessoriesIn" ? visit().accessories.in
                                         : visit().accessories.out) = counted;
    }

    void putIn(const Event& event)
    {
        const rules::Procedure* procedure = m_book.revision(m_rules);
        const rules::Stage* stage = procedure ? procedure->find(event.stage.stage) : nullptr;
        const auto mix = m_mixes.find(event.mix);
        std::vector<std::string> materials = stage ? stage->uses : std::vector<std::string>();
        if (mix != m_mixes.end() && std::ranges::find(materials, mix->second.word) == materials.end()) {
            materials.push_back(mix->second.word);
        }
        for (const std::string& material : materials) {
            const bool isMixed = mix != m_mixes.end() && mix->second.word == material;
            visit().putIn.push_back({material, isMixed ? mix->second.note : std::string(),
                                     isMixed ? event.mix : MixId(), event.stage, event.happened});
        }
    }

    const rules::RuleBook& m_book;
    Dossier m_dossier;
    std::map<MixId, Event> m_mixes;
    rules::RevisionHash m_rules;
};

} // namespace

std::optional<Promise> VisitFacts::promise() const
{
    return promises.empty() ? std::nullopt : std::optional(promises.back());
}

int VisitFacts::notices() const { return static_cast<int>(std::ranges::count(ownerWords, true, &OwnerWord::isNotice)); }

Owed owedFor(const VisitFacts& visit)
{
    Owed owed;
    owed.price = visit.price;
    const std::string currency = visit.price              ? visit.price->currency()
                                 : visit.payments.empty() ? std::string()
                                                          : visit.payments.front().money.currency();
    std::optional<Money> paid(Money(0, currency));
    for (const Payment& payment : visit.payments) {
        paid = paid ? paid->plus(payment.money) : std::nullopt;
    }
    owed.paid = currency.empty() ? std::nullopt : paid;
    std::int64_t left = 0;
    if (owed.price && owed.paid && !__builtin_sub_overflow(owed.price->minorUnits(), owed.paid->minorUnits(), &left)) {
        owed.left = Money(left, currency);
    }
    return owed;
}

Dossier dossierOf(PieceId piece, std::span<const Event> events, const rules::RuleBook& book)
{
    Clerk clerk(piece, book);
    for (const Event& event : effective(events)) {
        clerk.tellMix(event);
        if (event.piece == piece) {
            clerk.tell(event);
        }
    }
    return clerk.dossier();
}

} // namespace mend::bench
