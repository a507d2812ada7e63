#include "app/shell/intakelink.h"

#include "app/parts/png.h"
#include "core/record/photo.h"
#include "core/service/doorwording.h"

#include <algorithm>
#include <iterator>

namespace mend::app {

using service::text;

namespace {

constexpr qsizetype lettersToAsk = 2;

/// What this studio takes: as it was paid in last, else what its language's country has.
std::string currencyOf(const service::BenchService& bench, const service::Manner& manner)
{
    for (auto event = bench.events().rbegin(); event != bench.events().rend(); ++event) {
        if (event->what == bench::What::Paid || event->what == bench::What::PriceAgreed) {
            return event->word;
        }
    }
    const QString own = manner.locale.currencySymbol(QLocale::CurrencyIsoCode);
    return own.isEmpty() ? std::string("EUR") : own.toStdString();
}

/// The steps that are done only where they were agreed.
std::vector<IntakeNow::Named> optionsOf(const rules::Procedure& procedure)
{
    std::vector<IntakeNow::Named> options;
    for (const rules::Stage& stage : procedure.stages) {
        if (stage.optional) {
            options.push_back({text(stage.key), text(stage.act)});
        }
    }
    return options;
}

/// What may be in a piece from before, by what a mender can tell on the bench: its family. The first material of a
/// family stands for all of it.
std::vector<IntakeNow::Named> oldMaterials(const rules::RuleBook& book)
{
    const std::pair<const char*, QString> families[] = {{"oldMend", IntakeLink::tr("An old mend, of what is unknown")},
                                                        {"epoxy", IntakeLink::tr("Epoxy")},
                                                        {"acrylicResin", IntakeLink::tr("Acrylic resin")},
                                                        {"urushi", IntakeLink::tr("Urushi")},
                                                        {"plaster", IntakeLink::tr("Plaster")},
                                                        {"support", IntakeLink::tr("Wax or tape")}};
    std::vector<IntakeNow::Named> materials;
    for (const auto& [family, words] : families) {
        const auto first = std::ranges::find(book.materials, family, &rules::Material::family);
        if (first != book.materials.end()) {
            materials.push_back({text(first->key), words});
        }
    }
    return materials;
}

} // namespace

IntakeLink::IntakeLink(Services services, IntakeSpace& space, QObject* parent)
    : QObject(parent), m_services(services), m_space(space)
{
    space.setAnswers(this);
    m_draft.setSingleShot(true);
    m_draft.setInterval(draftAfterMs);
    connect(&m_draft, &QTimer::timeout, this, &IntakeLink::keepDraft);
    connect(&space, &IntakeSpace::edited, &m_draft, qOverload<>(&QTimer::start));
    connect(&space, &IntakeSpace::nameTyped, this, &IntakeLink::askPeople);
    connect(&space, &IntakeSpace::personChosen, this, &IntakeLink::askPieces);
    connect(&space, &IntakeSpace::takeInTold, this, &IntakeLink::takeIn);
    connect(&space, &IntakeSpace::cleared, this, [this] {
        m_draft.stop();
        m_services.door.dropDraft();
    });
    m_services.door.loadDraft([this](const Result<std::optional<record::Intake>>& draft) {
        if (draft && draft.value()) {
            m_space.goOnWith(*draft.value());
        }
    });
}

/// The window's widgets may outlive this.
IntakeLink::~IntakeLink() { m_space.setAnswers(nullptr); }

void IntakeLink::show()
{
    IntakeNow now;
    for (const rules::Procedure& procedure : m_services.bench.book().procedures) {
        now.procedures.push_back(
            {text(procedure.key), text(procedure.name), text(procedure.summary), optionsOf(procedure)});
    }
    now.oldMaterials = oldMaterials(m_services.bench.book());
    now.currency = currencyOf(m_services.bench, m_manner);
    now.today = m_services.door.today();
    now.manner = m_manner;
    m_space.setNow(std::move(now));
}

std::vector<record::IntakeFault> IntakeLink::faultsOf(const record::Intake& page,
                                                      const std::vector<record::Customer>& known) const
{
    std::vector<store::FoundPerson> found;
    std::ranges::transform(known, std::back_inserter(found), [](const record::Customer& person) {
        return store::FoundPerson{person, 0};
    });
    return m_services.door.faultsOf(page, found);
}

std::vector<std::string> IntakeLink::alikeNames(const record::Intake& page) const
{
    return m_services.door.alikeNames(page);
}

QString IntakeLink::promiseWords(const record::Intake& page) const
{
    if (!page.promised || page.piece.procedure.empty()) {
        return {};
    }
    const bench::PromiseJudgement judged = m_services.door.judgePromise(page, *page.promised);
    const rules::Material* const material = m_services.bench.book().material(judged.material);
    return service::promiseWords(judged, material ? text(material->name) : QString(), m_manner);
}

void IntakeLink::askPeople(const QString& name)
{
    if (name.simplified().size() < lettersToAsk) {
        m_space.setKnown({});
        return;
    }
    m_services.door.findPeople(
        name.toStdString(), [this, name = name.toStdString()](const Result<std::vector<store::FoundPerson>>& found) {
            if (!found || m_space.intake().owner.name != name) {
                return; // another letter was typed meanwhile
            }
            std::vector<record::Customer> known;
            std::ranges::transform(found.value(), std::back_inserter(known), &store::FoundPerson::person);
            m_space.setKnown(std::move(known));
        });
}

void IntakeLink::askPieces(CustomerId person)
{
    m_services.door.openPerson(person, [this, person](const Result<service::PersonFile>& file) {
        if (!file || m_space.intake().owner.id != person) {
            return;
        }
        std::vector<record::Piece> pieces;
        for (const service::PieceFile& each : file.value().pieces) {
            if (!m_services.bench.bench().piece(each.piece.id)) {
                pieces.push_back(each.piece);
            }
        }
        m_space.setHers(std::move(pieces));
    });
}

void IntakeLink::takeIn(const record::Intake& page, const QImage& signature)
{
    m_draft.stop();
    m_services.door.takeIn(page, [this, signature](const Result<store::TakenIn>& taken) {
        if (!taken) {
            m_space.showRefused(
                tr("It is not in the file: %1. The page stays; try again.").arg(text(taken.fault().detail)));
            return;
        }
        if (!signature.isNull()) {
            keepSignature(taken.value().piece, signature);
        }
        m_space.showTaken(taken.value().piece, service::numberWords(taken.value().number));
    });
}

/// The picture first, then the visit that names it: no visit names a picture that is not there.
void IntakeLink::keepSignature(PieceId piece, const QImage& signature)
{
    m_services.door.openPiece(piece, [this, piece, signature](const Result<service::PieceFile>& file) {
        if (!file || !file.value().visit()) {
            return;
        }
        const record::Visit visit = *file.value().visit();
        store::PhotoUse use{{}, piece, {}, record::signaturePhoto};
        record::PhotoNote note;
        note.visit = visit.number;
        const store::Bytes drawn = parts::pngOf(signature);
        m_services.door.addPhoto(drawn, drawn, use, note, [this, visit](const Result<std::string>& hash) {
            if (hash) {
                record::Visit signedVisit = visit;
                signedVisit.consent.picture = hash.value();
                m_services.door.put(signedVisit, [](const Outcome&) {});
            }
        });
    });
}

void IntakeLink::keepDraft() { m_services.door.keepDraft(m_space.intake()); }

} // namespace mend::app
