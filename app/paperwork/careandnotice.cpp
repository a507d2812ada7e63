#include "app/paperwork/facts.h"
#include "app/paperwork/kinds.h"
#include "app/paperwork/papers.h"
#include "core/service/doorwording.h"

namespace mend::paperwork {

namespace {

bool hasMetal(const Source& source)
{
    const rules::Procedure* procedure = source.book.procedure(procedureKey(source));
    const auto isMetal = [&](const std::string& key) {
        const rules::Material* material = source.book.material(key);
        return material != nullptr && material->family == "metalPowder";
    };
    return procedure != nullptr && std::any_of(procedure->materials.begin(), procedure->materials.end(), isMetal);
}

} // namespace

papers::Paper careSheet(const Source& source)
{
    papers::Paper paper = headed(PapersWords::tr("How to look after it"), source);
    papers::Facts facts;
    add(facts, PapersWords::tr("Mended with"), procedureName(source));
    paper.blocks.emplace_back(facts);
    addText(paper, source, "care.food", true);
    papers::Points points;
    points.lines += source.words.lines("care.general");
    if (source.file.piece.body != record::Body::Vitrified) { // not known counts as porous: it is the careful side
        points.lines += source.words.lines("care.porous");
    }
    if (hasMetal(source)) {
        points.lines += source.words.lines("care.metal");
    }
    points.lines += source.words.lines("care." + procedureKey(source));
    paper.blocks.emplace_back(points);
    addText(paper, source, "care.lead", true);
    if (!source.studio.name.empty()) {
        paper.blocks.emplace_back(
            papers::Paragraph{PapersWords::tr("Questions: %1").arg(service::text(source.studio.name)), false});
    }
    return paper;
}

papers::Paper unclaimedNotice(const Source& source)
{
    papers::Paper paper = headed(PapersWords::tr("Your piece is ready"), source);
    papers::Facts facts = ownerFacts(source);
    const bench::VisitFacts& told = source.file.dossier.now();
    const bench::PieceState* state = source.bench.piece(source.file.piece.id);
    const auto dayOf = service::dayIn(source.manner.zone);
    const auto hand = service::handOverFacts(source.file, state, source.book, source.now, dayOf);
    add(facts, PapersWords::tr("May be collected since"),
        hand.collectable ? service::dayWords(*hand.collectable, source.manner) : QString());
    const auto countOf = [&](const QString& label, const std::optional<Money>& money) {
        add(facts, label, money ? service::moneyWords(*money, source.manner) : QString());
    };
    if (hand.owed.left && hand.owed.left->minorUnits() > 0) {
        countOf(PapersWords::tr("Still owed"), hand.owed.left);
    }
    add(facts, PapersWords::tr("Notices before this one"), source.manner.locale.toString(told.notices()));
    paper.blocks.emplace_back(facts);
    addText(paper, source, "unclaimed.notice");
    paper.blocks.emplace_back(papers::Signature{PapersWords::tr("For the studio"), {}, {}, {}});
    return paper;
}

QString kindWords(Kind kind)
{
    switch (kind) {
    case Kind::IntakeReceipt:
        return PapersWords::tr("Intake receipt");
    case Kind::Quote:
        return PapersWords::tr("Quote");
    case Kind::TreatmentRecord:
        return PapersWords::tr("Treatment record");
    case Kind::CareSheet:
        return PapersWords::tr("Care sheet");
    case Kind::OutReceipt:
        return PapersWords::tr("Receipt at hand-over");
    case Kind::UnclaimedNotice:
        return PapersWords::tr("Notice: not collected");
    }
    return {};
}

QString fileStem(Kind kind, const record::Piece& piece)
{
    static const std::map<Kind, const char*> stems = {
        {Kind::IntakeReceipt, "intake-receipt"},     {Kind::Quote, "quote"},
        {Kind::TreatmentRecord, "treatment-record"}, {Kind::CareSheet, "care-sheet"},
        {Kind::OutReceipt, "out-receipt"},           {Kind::UnclaimedNotice, "notice"}};
    return service::numberWords(piece.number) + QLatin1Char('-') + QLatin1String(stems.at(kind));
}

papers::Paper paperOf(Kind kind, const Source& source)
{
    switch (kind) {
    case Kind::IntakeReceipt:
        return intakeReceipt(source);
    case Kind::Quote:
        return quote(source);
    case Kind::TreatmentRecord:
        return treatmentRecord(source);
    case Kind::CareSheet:
        return careSheet(source);
    case Kind::OutReceipt:
        return outReceipt(source);
    case Kind::UnclaimedNotice:
        return unclaimedNotice(source);
    }
    return {};
}

papers::Tag tagOf(const Source& source)
{
    const papers::Facts counted = countFacts(source);
    QStringList line;
    for (const papers::Fact& fact : counted.rows) {
        line +=
            fact.label == PapersWords::tr("Fragments") ? PapersWords::tr("%1 fragments").arg(fact.words) : fact.words;
    }
    if (line.size() > 1 && line.last() == PapersWords::tr("nothing")) {
        line.removeLast();
    }
    if (const auto received = source.file.dossier.now().receivedAt) {
        const QDateTime at = QDateTime::fromMSecsSinceEpoch(received->time_since_epoch().count(), source.manner.zone);
        line += PapersWords::tr("in %1").arg(source.manner.locale.toString(at.date(), QStringLiteral("d MMM yyyy")));
    }
    return {service::text(source.file.piece.number), service::numberWords(source.file.piece.number),
            service::text(source.file.piece.benchName), service::joined(line)};
}

} // namespace mend::paperwork
