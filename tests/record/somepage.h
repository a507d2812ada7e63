#pragma once

#include "core/record/intake.h"

namespace mend::test {

/// A page of the intake as it is filled on a common day, every part of it told.
inline record::Intake somePage()
{
    using namespace record;
    Intake page;
    page.owner.name = "Ana Müller";
    page.owner.contact = "020 7946 0618";
    page.owner.more = {{ContactKind::Mail, "ana@example.org"}, {ContactKind::Post, "Lark Lane 3\nUpper Mere"}};
    page.owner.note = "rings back in the evening";
    page.piece.benchName = "Heron bowl";
    page.piece.procedure = "goldLacquerSeam";
    page.piece.body = Body::Vitrified;
    page.piece.fragments = 5;
    page.piece.seam = centimetres(31);
    page.piece.looks = "small blue bowl with a heron";
    page.piece.maker = "unknown, perhaps a village kiln";
    page.piece.marks = "scratched cross in the foot";
    page.piece.size.height = millimetres(62);
    page.piece.size.width = millimetres(118);
    page.piece.size.mass = grams(214.5);
    page.visit.condition = {"two joins open, rim chip 12 mm",
                            "joined before with a brown glue",
                            "by eye, daylight",
                            {"brown glue on two edges"}};
    page.visit.accessories = {{"lid", 1}, {"wooden box", 1}};
    page.visit.declaredValue = Money(45000, "EUR");
    page.visit.wishes = "a gold seam";
    page.visit.story = "her grandmother's";
    page.visit.consent.scope = "join, fill, gold seam";
    page.visit.consent.metal = true;
    page.visit.consent.priceFrom = Money(18000, "EUR");
    page.visit.consent.priceTo = Money(24000, "EUR");
    page.visit.consent.words = "1";
    page.visit.consent.signedOn = dayFrom("2027-03-01");
    page.visit.consent.how = Signature::OnPaper;
    page.promised = dayFrom("2027-05-14");
    page.deposit = Money(5000, "EUR");
    page.agreed = true;
    return page;
}

} // namespace mend::test
