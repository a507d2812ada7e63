#include "app/paperwork/facts.h"
#include "app/paperwork/kinds.h"
#include "core/service/daylog.h"
#include "core/service/doorwording.h"

#include <algorithm>

namespace mend::paperwork {

namespace {

/// What the air was where the piece lay, as far as it was read not long before.
QString airWords(Instant at, PlaceId place, const Source& source)
{
    const auto air = source.bench.air.find(place);
    if (air == source.bench.air.end()) {
        return {};
    }
    const cure::Reading* last = nullptr;
    for (const cure::Reading& reading : air->second.forClosings.readings) {
        if (reading.at <= at) {
            last = &reading;
        }
    }
    if (last == nullptr || at - last->at > source.book.practice.benchReadingAge.value) {
        return {};
    }
    QStringList words{service::temperatureWords(last->temperature, source.manner)};
    if (last->humidity) {
        words += service::humidityWords(*last->humidity, source.manner);
    }
    return words.join(QLatin1Char(' '));
}

/// Where the piece lay when something was told of it.
PlaceId placeAt(Instant at, const std::vector<bench::Event>& told)
{
    PlaceId place;
    for (const bench::Event& event : told) {
        if (event.happened <= at && event.place.isSet()) {
            place = event.place;
        }
    }
    return place;
}

/// Whether the line tells of something done otherwise than planned.
bool isDeviation(bench::What what)
{
    using bench::What;
    return what == What::Skipped || what == What::SentBack || what == What::Missed || what == What::DoingLate ||
           what == What::Overridden || what == What::RulesAdopted;
}

papers::Table logTable(const Source& source)
{
    const std::vector<bench::Event> told = bench::effective(source.file.events);
    std::map<EventId, bench::What> whatOf;
    for (const bench::Event& event : told) {
        whatOf[event.id] = event.what;
    }
    const Instant first = told.empty() ? source.now : told.front().happened;
    auto lines = service::dayLog(source.file.events, source.bench, source.book, {first, source.now + Span{1}},
                                 source.now, source.manner);
    std::ranges::reverse(lines); // the log is newest first, a record begins at the beginning
    papers::Table table;
    table.head = {PapersWords::tr("When"), PapersWords::tr("What"), PapersWords::tr("Who"), PapersWords::tr("Air"),
                  PapersWords::tr("Remarks")};
    for (const service::LogLine& line : lines) {
        if (line.takenBack) {
            continue;
        }
        QStringList remarks;
        if (const auto what = whatOf.find(line.event); what != whatOf.end() && isDeviation(what->second)) {
            remarks += PapersWords::tr("otherwise than planned");
        }
        if (!line.note.isEmpty()) {
            remarks += line.note;
        }
        const QDateTime at =
            QDateTime::fromMSecsSinceEpoch(line.happened.time_since_epoch().count(), source.manner.zone);
        table.rows.push_back({source.manner.locale.toString(at, QStringLiteral("d MMM yyyy HH:mm")), line.words,
                              line.person, airWords(line.happened, placeAt(line.happened, told), source),
                              service::joined(remarks)});
    }
    return table;
}

papers::Table materialsTable(const Source& source)
{
    papers::Table table;
    table.head = {PapersWords::tr("Put into it"), PapersWords::tr("Batch"), PapersWords::tr("On")};
    for (const bench::VisitFacts& visit : source.file.dossier.visits) {
        for (const bench::PutIn& put : visit.putIn) {
            const rules::Material* material = source.book.material(put.material);
            QStringList row{service::text(material == nullptr ? put.material : material->name),
                            service::text(put.batch),
                            service::dayWords(service::dayIn(source.manner.zone)(put.at), source.manner)};
            if (std::ranges::find(table.rows, row) == table.rows.end()) {
                table.rows.push_back(std::move(row));
            }
        }
    }
    return table;
}

} // namespace

papers::Paper treatmentRecord(const Source& source)
{
    papers::Paper paper = headed(PapersWords::tr("Treatment record"), source);
    papers::Facts facts = ownerFacts(source);
    append(facts, objectFacts(source));
    append(facts, countFacts(source));
    add(facts, PapersWords::tr("Agreed procedure"), procedureName(source));
    add(facts, PapersWords::tr("Visit"),
        source.file.visits.size() > 1 ? source.manner.locale.toString(visitOf(source).number) : QString());
    paper.blocks.emplace_back(facts);
    addCondition(paper, source);
    addPhotos(paper, source, record::conditionPhoto, PapersWords::tr("Before"));
    papers::Table log = logTable(source);
    paper.blocks.emplace_back(papers::Heading{PapersWords::tr("What was done")});
    if (log.rows.empty()) {
        paper.blocks.emplace_back(papers::Paragraph{PapersWords::tr("Nothing was told yet."), false});
    } else {
        paper.blocks.emplace_back(std::move(log));
    }
    if (papers::Table materials = materialsTable(source); !materials.rows.empty()) {
        paper.blocks.emplace_back(papers::Heading{PapersWords::tr("What is in it now")});
        paper.blocks.emplace_back(std::move(materials));
    }
    addPhotos(paper, source, record::duringPhoto, PapersWords::tr("During"));
    addPhotos(paper, source, record::finishedPhoto, PapersWords::tr("After"));
    addText(paper, source, "record.keeping");
    paper.blocks.emplace_back(papers::Signature{PapersWords::tr("Mended by"), {}, {}, {}});
    return paper;
}

} // namespace mend::paperwork
