#include "core/record/intake.h"

#include "core/base/currency.h"
#include "core/base/foldedtext.h"
#include "core/record/newpiece.h"

#include <algorithm>
#include <initializer_list>

namespace mend::record {

namespace {

constexpr int mostAccessories = 999;
const Length largestMeasure = centimetres(1'000); // ten metres
const Mass largestMass = grams(1'000'000);        // a ton

class IntakeJudge {
public:
    IntakeJudge(const Intake& intake, const IntakeSituation& situation) : m_intake(intake), m_situation(situation) {}

    std::vector<IntakeFault> faults()
    {
        judgeOwner();
        judgeBenchName();
        judgePiece();
        judgeMoney();
        judgeConsent();
        judgeTexts();
        return std::move(m_faults);
    }

private:
    void add(IntakeFault fault, bool isSo = true)
    {
        if (isSo) {
            m_faults.push_back(fault);
        }
    }

    void judgeOwner()
    {
        const Customer& owner = m_intake.owner;
        add(IntakeFault::NoOwnerName, foldedWords(owner.name).empty());
        add(IntakeFault::NoContact, owner.contact.empty() && owner.more.empty());
        add(IntakeFault::PersonMayBeKnown,
            !owner.id.isSet() && !m_intake.samePersonAnswered && !m_situation.peopleAlike.empty());
    }

    void judgeBenchName()
    {
        const std::string& name = m_intake.piece.benchName;
        switch (faultOfBenchName(name, m_intake.owner.name, m_situation.namesInHand)
                    .value_or(static_cast<BenchNameFault>(-1))) {
        case BenchNameFault::Missing:
            return add(IntakeFault::NoBenchName);
        case BenchNameFault::TooLong:
            return add(IntakeFault::BenchNameTooLong);
        case BenchNameFault::Taken:
            return add(IntakeFault::BenchNameTaken);
        case BenchNameFault::HasOwner:
            return add(IntakeFault::BenchNameHasOwner);
        }
        add(IntakeFault::BenchNameAlike,
            !m_intake.alikeNamesAccepted && !alikeBenchNames(name, m_situation.namesInHand).empty());
    }

    void judgePiece()
    {
        const Piece& piece = m_intake.piece;
        add(IntakeFault::NoProcedure, m_intake.agreed && piece.procedure.empty());
        add(IntakeFault::FragmentsOutOfRange, piece.fragments < 1 || piece.fragments > mostFragments);
        for (const Accessory& each : m_intake.visit.accessories) {
            add(IntakeFault::AccessoryUnnamed, each.what.empty());
            add(IntakeFault::AccessoryCountOutOfRange, each.count < 1 || each.count > mostAccessories);
        }
        const auto isOut = [](const auto& measured, auto largest) {
            return measured && (measured->count() <= 0 || *measured > largest);
        };
        const Size& size = piece.size;
        add(IntakeFault::MeasureOutOfRange, isOut(size.height, largestMeasure) || isOut(size.width, largestMeasure) ||
                                                isOut(size.depth, largestMeasure) || isOut(size.wall, largestMeasure) ||
                                                isOut(size.mass, largestMass));
    }

    static bool isNoAmount(const std::optional<Money>& money)
    {
        return money && (money->minorUnits() < 0 || !decimalsOf(money->currency()));
    }

    void judgeMoney()
    {
        const Consent& consent = m_intake.visit.consent;
        add(IntakeFault::ValueOutOfRange, isNoAmount(m_intake.visit.declaredValue));
        add(IntakeFault::DepositOutOfRange, isNoAmount(m_intake.deposit));
        const bool isBroken = isNoAmount(consent.priceFrom) || isNoAmount(consent.priceTo);
        const bool isUpsideDown = consent.priceFrom && consent.priceTo &&
                                  (consent.priceFrom->currency() != consent.priceTo->currency() ||
                                   consent.priceFrom->minorUnits() > consent.priceTo->minorUnits());
        add(IntakeFault::PriceBandUpsideDown, isBroken || isUpsideDown);
    }

    void judgeConsent()
    {
        const Consent& consent = m_intake.visit.consent;
        add(IntakeFault::SignatureWithoutDay, consent.how != Signature::None && !consent.signedOn);
        add(IntakeFault::NotSigned, m_intake.agreed && consent.how == Signature::None);
        add(IntakeFault::PromisedInThePast, m_intake.promised && *m_intake.promised < m_situation.today);
    }

    void judgeTexts()
    {
        const Visit& visit = m_intake.visit;
        const Piece& piece = m_intake.piece;
        const auto longer = [](std::initializer_list<const std::string*> texts, std::size_t most) {
            return std::ranges::any_of(texts, [most](const std::string* text) { return text->size() > most; });
        };
        add(IntakeFault::TextTooLong,
            longer({&m_intake.owner.name, &m_intake.owner.contact}, longestName) ||
                longer({&visit.condition.seen, &visit.condition.inferred, &visit.condition.how, &visit.wishes,
                        &visit.story, &visit.consent.scope, &piece.looks, &piece.maker, &piece.marks,
                        &m_intake.owner.note},
                       longestField));
    }

    const Intake& m_intake;
    const IntakeSituation& m_situation;
    std::vector<IntakeFault> m_faults;
};

void cleanLines(std::initializer_list<std::string*> texts)
{
    for (std::string* text : texts) {
        *text = cleanText(*text, true);
    }
}

void cleanNames(std::initializer_list<std::string*> texts)
{
    for (std::string* text : texts) {
        *text = cleanText(*text);
    }
}

} // namespace

std::vector<IntakeFault> faultsOf(const Intake& intake, const IntakeSituation& situation)
{
    return IntakeJudge(intake, situation).faults();
}

Intake cleaned(Intake intake)
{
    Visit& visit = intake.visit;
    cleanNames({&intake.owner.name, &intake.piece.benchName, &intake.piece.maker, &intake.piece.marks});
    cleanLines({&intake.owner.contact, &intake.owner.note, &intake.piece.looks, &visit.condition.seen,
                &visit.condition.inferred, &visit.condition.how, &visit.wishes, &visit.story, &visit.consent.scope});
    for (ContactWay& way : intake.owner.more) {
        cleanLines({&way.text});
    }
    for (Accessory& each : visit.accessories) {
        cleanNames({&each.what});
    }
    for (std::string& mend : visit.condition.oldMends) {
        cleanLines({&mend});
    }
    std::erase_if(intake.owner.more, [](const ContactWay& way) { return way.text.empty(); });
    return intake;
}

} // namespace mend::record
