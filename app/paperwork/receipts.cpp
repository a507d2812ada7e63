#include "app/paperwork/facts.h"
#include "app/paperwork/kinds.h"
#include "core/service/doorwording.h"

#include <optional>

namespace mend::paperwork {

namespace {

QString priceBand(const record::Consent& consent, const Source& source)
{
    if (!consent.priceFrom && !consent.priceTo) {
        return {};
    }
    if (consent.priceFrom && consent.priceTo && *consent.priceFrom != *consent.priceTo) {
        return PapersWords::tr("%1 to %2, estimate")
            .arg(service::moneyWords(*consent.priceFrom, source.manner),
                 service::moneyWords(*consent.priceTo, source.manner));
    }
    return PapersWords::tr("%1, estimate")
        .arg(service::moneyWords(consent.priceTo ? *consent.priceTo : *consent.priceFrom, source.manner));
}

papers::Signature ownersSignature(const Source& source)
{
    const record::Consent& consent = visitOf(source).consent;
    papers::Signature signature;
    signature.who = PapersWords::tr("Owner");
    if (consent.signedOn) {
        signature.date = service::dayWords(*consent.signedOn, source.manner);
    }
    if (consent.how == record::Signature::OnPaper) {
        signature.instead = PapersWords::tr("signed on paper");
    } else if (consent.how == record::Signature::Drawn && source.picture) {
        signature.drawn = source.picture(consent.picture);
    }
    return signature;
}

papers::Facts moneyFacts(const Source& source)
{
    const bench::VisitFacts& told = source.file.dossier.now();
    const bench::Owed owed = bench::owedFor(told);
    papers::Facts facts;
    add(facts, PapersWords::tr("Price"), owed.price ? service::moneyWords(*owed.price, source.manner) : QString());
    add(facts, PapersWords::tr("Paid"), owed.paid ? service::moneyWords(*owed.paid, source.manner) : QString());
    if (owed.left && owed.left->minorUnits() > 0) {
        add(facts, PapersWords::tr("Still owed"), service::moneyWords(*owed.left, source.manner));
    }
    return facts;
}

/// The event with which it left the house at this visit; none while it is here.
std::optional<bench::Event> leaving(const Source& source)
{
    const bench::VisitFacts& told = source.file.dossier.now();
    std::optional<bench::Event> gone;
    for (const bench::Event& event : bench::effective(source.file.events)) {
        const bool leaves = event.what == bench::What::HandedOver || event.what == bench::What::ReturnedUnmended;
        if (told.isOver() && leaves) {
            gone = event;
        }
    }
    return gone;
}

/// What was said of it at the counter as it left: what becomes of that which is missing or owed.
QStringList saidAtTheCounter(const Source& source, const bench::Event& gone)
{
    QStringList said;
    for (const bench::Event& event : bench::effective(source.file.events)) {
        if (event.what == bench::What::Noted && event.happened == gone.happened) {
            said += service::text(event.note);
        }
    }
    return said;
}

/// How it was signed for as it left.
papers::Signature takenSignature(const Source& source, const std::optional<bench::Event>& gone)
{
    papers::Signature taken;
    taken.who = PapersWords::tr("Taken by");
    if (gone && gone->word == "onPaper") {
        taken.instead = PapersWords::tr("signed on paper");
    }
    for (const store::NotedPhoto& photo : source.file.photos) {
        if (gone && source.picture && photo.use.purpose == record::signaturePhoto && photo.use.event == gone->id) {
            taken.drawn = source.picture(photo.use.photo);
        }
    }
    return taken;
}

} // namespace

papers::Points agreedPoints(const record::Consent& consent)
{
    papers::Points points;
    points.lines += consent.reversible ? PapersWords::tr("A mend that can be undone.")
                                       : PapersWords::tr("The mend need not be one that can be undone.");
    points.lines +=
        consent.visible ? PapersWords::tr("The mend may show.") : PapersWords::tr("The mend should not show.");
    points.lines +=
        consent.metal ? PapersWords::tr("Metal may be laid on it.") : PapersWords::tr("No metal is laid on it.");
    if (consent.noFoodUse) {
        points.lines += PapersWords::tr("Afterwards it is not for food or drink.");
    }
    if (consent.hiddenDamage) {
        points.lines += PapersWords::tr("Damage that cannot be seen now may come to light.");
    }
    points.lines += consent.photoUse ? PapersWords::tr("Pictures of it may be shown to others, without a name.")
                                     : PapersWords::tr("Pictures of it are kept for the record only.");
    return points;
}

papers::Paper intakeReceipt(const Source& source)
{
    const record::Visit& visit = visitOf(source);
    papers::Paper paper = headed(PapersWords::tr("Intake receipt"), source);
    papers::Facts facts = ownerFacts(source);
    append(facts, objectFacts(source));
    append(facts, countFacts(source));
    add(facts, PapersWords::tr("Declared value"),
        visit.declaredValue ? service::moneyWords(*visit.declaredValue, source.manner) : QString());
    const auto promise = source.file.dossier.now().promise();
    add(facts, PapersWords::tr("Promised for"), promise ? service::dayWords(promise->day, source.manner) : QString());
    add(facts, PapersWords::tr("Price band"), priceBand(visit.consent, source));
    append(facts, moneyFacts(source));
    paper.blocks.emplace_back(facts);
    addCondition(paper, source);
    if (!visit.wishes.empty() || !visit.consent.scope.empty()) {
        papers::Facts wanted;
        add(wanted, PapersWords::tr("Wished for"), service::text(visit.wishes));
        add(wanted, PapersWords::tr("To be done"), service::text(visit.consent.scope));
        add(wanted, PapersWords::tr("How"), procedureName(source));
        paper.blocks.emplace_back(papers::Heading{PapersWords::tr("What is wanted")});
        paper.blocks.emplace_back(wanted);
    }
    paper.blocks.emplace_back(papers::Heading{PapersWords::tr("Agreed")});
    paper.blocks.emplace_back(agreedPoints(visit.consent));
    addText(paper, source, "care.food", true);
    addText(paper, source, "intakeReceipt.terms");
    if (visit.consent.photoUse) {
        addText(paper, source, "intakeReceipt.photos");
    }
    paper.blocks.emplace_back(ownersSignature(source));
    paper.blocks.emplace_back(papers::Signature{PapersWords::tr("For the studio"), {}, {}, {}});
    addPhotos(paper, source, record::conditionPhoto, PapersWords::tr("As it came in"));
    return paper;
}

papers::Paper quote(const Source& source)
{
    const record::Visit& visit = visitOf(source);
    papers::Paper paper = headed(PapersWords::tr("Quote"), source);
    papers::Facts facts = ownerFacts(source);
    append(facts, countFacts(source));
    add(facts, PapersWords::tr("To be done"), service::text(visit.consent.scope));
    add(facts, PapersWords::tr("How"), procedureName(source));
    const QString band = priceBand(visit.consent, source);
    add(facts, PapersWords::tr("Price band"), band);
    append(facts, moneyFacts(source));
    if (band.isEmpty() && !bench::owedFor(source.file.dossier.now()).price) {
        add(facts, PapersWords::tr("Price band"), PapersWords::tr("to be agreed before work begins"));
    }
    paper.blocks.emplace_back(facts);
    addText(paper, source, "quote.estimate");
    addText(paper, source, "care.food", true);
    paper.blocks.emplace_back(papers::Signature{PapersWords::tr("Owner"), {}, {}, {}});
    return paper;
}

papers::Paper outReceipt(const Source& source)
{
    const bench::VisitFacts& told = source.file.dossier.now();
    papers::Paper paper = headed(PapersWords::tr("Receipt at hand-over"), source);
    papers::Facts facts = ownerFacts(source);
    append(facts, countFacts(source));
    const auto counted = [&](const QString& label, const bench::InAndOut& count) {
        if (count.out) {
            add(facts, label, source.manner.locale.toString(*count.out));
        }
    };
    counted(PapersWords::tr("Fragments going out"), told.fragments);
    counted(PapersWords::tr("Accessories going out"), told.accessories);
    const std::optional<bench::Event> gone = leaving(source);
    if (told.returnedUnmended && gone) {
        add(facts, PapersWords::tr("Given back unmended"), service::text(gone->note));
        add(facts, PapersWords::tr("On"),
            service::dayWords(service::dayIn(source.manner.zone)(gone->happened), source.manner));
    } else {
        add(facts, PapersWords::tr("Done"), procedureName(source));
    }
    append(facts, moneyFacts(source));
    if (told.handedOver) {
        add(facts, PapersWords::tr("Taken by"), service::text(told.handedOver->takenBy));
        add(facts, PapersWords::tr("On"),
            service::dayWords(service::dayIn(source.manner.zone)(told.handedOver->at), source.manner));
    }
    paper.blocks.emplace_back(facts);
    if (told.fragments.isShort() || told.accessories.isShort()) {
        paper.blocks.emplace_back(papers::Paragraph{
            PapersWords::tr("Less goes out than came in: what is missing is named and agreed below."), true});
    }
    if (const QStringList said = gone ? saidAtTheCounter(source, *gone) : QStringList(); !said.isEmpty()) {
        paper.blocks.emplace_back(papers::Points{said});
    }
    if (!told.waitShortenedBecause.empty()) {
        papers::Facts earlier;
        add(earlier, PapersWords::tr("Handed over early because"), service::text(told.waitShortenedBecause));
        paper.blocks.emplace_back(earlier);
    }
    addText(paper, source, "out.taken");
    addText(paper, source, "care.food", true);
    paper.blocks.emplace_back(takenSignature(source, gone));
    paper.blocks.emplace_back(papers::Signature{PapersWords::tr("For the studio"), {}, {}, {}});
    return paper;
}

} // namespace mend::paperwork
