#include "core/service/doorwording.h"

#include <QCoreApplication>
#include <array>

namespace mend::service {

using record::IntakeFault;

namespace {

struct FaultText {
    IntakeFault fault;
    const char* field;
    const char* words;
};

constexpr std::array<FaultText, 19> faultTexts{{
    {IntakeFault::NoOwnerName, "owner/name", QT_TRANSLATE_NOOP("Intake", "Whose is it? Type a name.")},
    {IntakeFault::NoContact, "owner/contact",
     QT_TRANSLATE_NOOP("Intake", "Ask for one way to reach them: a phone number or an address is enough.")},
    {IntakeFault::PersonMayBeKnown, "owner/name",
     QT_TRANSLATE_NOOP("Intake", "Somebody like that was here before: say whether it is the same person.")},
    {IntakeFault::NoBenchName, "piece/benchName",
     QT_TRANSLATE_NOOP("Intake", "Give it a name: it is called by it at the bench.")},
    {IntakeFault::BenchNameTooLong, "piece/benchName",
     QT_TRANSLATE_NOOP("Intake", "Too long to be spoken: two or three short words are enough.")},
    {IntakeFault::BenchNameTaken, "piece/benchName",
     QT_TRANSLATE_NOOP("Intake", "Another piece in hand is called so: give one that tells them apart by ear.")},
    {IntakeFault::BenchNameHasOwner, "piece/benchName",
     QT_TRANSLATE_NOOP("Intake", "The name is spoken aloud, so it must not hold the owner's.")},
    {IntakeFault::BenchNameAlike, "piece/benchName",
     QT_TRANSLATE_NOOP("Intake", "It sounds like another piece in hand: add a word, or keep both as they are.")},
    {IntakeFault::NoProcedure, "piece/procedure",
     QT_TRANSLATE_NOOP("Intake", "Choose how it is mended, or keep the page as received only.")},
    {IntakeFault::FragmentsOutOfRange, "piece/fragments",
     QT_TRANSLATE_NOOP("Intake", "Count the fragments: 1 to 999.")},
    {IntakeFault::AccessoryUnnamed, "visit/accessories",
     QT_TRANSLATE_NOOP("Intake", "Say what came with it, or take the line away.")},
    {IntakeFault::AccessoryCountOutOfRange, "visit/accessories",
     QT_TRANSLATE_NOOP("Intake", "Count what came with it: 1 to 999.")},
    {IntakeFault::MeasureOutOfRange, "piece/size",
     QT_TRANSLATE_NOOP("Intake", "Measure again: more than nothing, at most ten metres and a ton.")},
    {IntakeFault::ValueOutOfRange, "visit/declaredValue",
     QT_TRANSLATE_NOOP("Intake", "Type the value as the owner says it, or leave it empty.")},
    {IntakeFault::PriceBandUpsideDown, "visit/consent/priceFrom",
     QT_TRANSLATE_NOOP("Intake", "Type the lower price first, both in one currency.")},
    {IntakeFault::DepositOutOfRange, "deposit", QT_TRANSLATE_NOOP("Intake", "Type what was paid, or leave it empty.")},
    {IntakeFault::SignatureWithoutDay, "visit/consent/signedOn",
     QT_TRANSLATE_NOOP("Intake", "Add the day of the signature.")},
    {IntakeFault::NotSigned, "visit/consent/how",
     QT_TRANSLATE_NOOP("Intake", "Let the owner sign, tick \"signed on paper\", or keep the page as received only.")},
    {IntakeFault::PromisedInThePast, "promised",
     QT_TRANSLATE_NOOP("Intake", "That day is over: promise a later one, or none.")},
}};

} // namespace

QString intakeFaultWords(IntakeFault fault)
{
    for (const FaultText& each : faultTexts) {
        if (each.fault == fault) {
            return QCoreApplication::translate("Intake", each.words);
        }
    }
    return QCoreApplication::translate("Intake", "That text is too long: keep it under 100,000 characters.");
}

const char* intakeFaultField(IntakeFault fault)
{
    for (const FaultText& each : faultTexts) {
        if (each.fault == fault) {
            return each.field;
        }
    }
    return "visit/condition/seen";
}

} // namespace mend::service
