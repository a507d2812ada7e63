#include "app/program/planlink.h"

#include <algorithm>
#include <utility>

namespace mend::app {

namespace {

const QString& planKey()
{
    static const QString key = QStringLiteral("plan");
    return key;
}

/// Waits that are worth a line beside the threads; those of days lie beyond their axis.
constexpr Span furthestWait = std::chrono::hours(24);
constexpr std::size_t mostWaits = 6;

} // namespace

PlanLink::PlanLink(Services services, MainWindow& window, parts::TapGate& gate, service::Manner manner, QObject* parent)
    : QObject(parent), m_services(services), m_window(window), m_manner(std::move(manner)), m_space(new PlanSpace(gate))
{
    m_window.addSpace(planKey(), tr("Plan"), m_space);
    m_space->setManner(m_manner);
    m_space->setLook(m_window.look());
    connect(&m_window, &MainWindow::lookChanged, m_space, [this] { m_space->setLook(m_window.look()); });
    connect(&m_window, &MainWindow::spaceChanged, this, [this] {
        m_services.plans.setWatched(isInFront());
        if (isInFront()) {
            m_services.plans.look(m_services.clock.now().utc);
        }
        show();
    });
    connect(&m_services.plans, &service::PlanService::planned, this, &PlanLink::show);
    connect(&m_services.bench, &service::BenchService::benchChanged, this, &PlanLink::show);
    connect(m_space, &PlanSpace::pieceWanted, this, &PlanLink::pieceWanted);
    connect(m_space, &PlanSpace::setAsideWanted, this, &PlanLink::setAside);
    connect(m_space, &PlanSpace::offerTaken, &m_services.plans, &service::PlanService::takeOffer);
    connect(m_space, &PlanSpace::offerRefused, &m_services.plans, &service::PlanService::refuseOffer);
}

bool PlanLink::isInFront() const { return m_window.spaceShown() == planKey(); }

void PlanLink::useStudio(const service::Studio& studio)
{
    m_manner.zone = studio.timeZone();
    m_manner.fahrenheit = studio.fahrenheit;
    m_manner.inches = studio.inches;
    m_space->setManner(m_manner);
    m_services.plans.setStudio(studio);
}

void PlanLink::look(Instant now)
{
    m_services.plans.look(now);
    if (std::chrono::floor<std::chrono::minutes>(now) != m_minute) {
        show();
    }
}

void PlanLink::setAside(PieceId piece) { m_services.bench.hold(piece, tr("left for another day").toStdString()); }

void PlanLink::show()
{
    if (!isInFront()) {
        return;
    }
    PlanShown now = shown();
    m_minute = std::chrono::floor<std::chrono::minutes>(now.now);
    m_space->setShown(std::move(now));
}

PlanShown PlanLink::shown() const
{
    const service::BenchService& bench = m_services.bench;
    PlanShown shown;
    shown.now = m_services.clock.now().utc;
    shown.isPlanning = m_services.plans.isPlanning();
    if (const auto plan = bench.plan()) {
        shown.plan = service::planInWords(*plan, {bench.bench(), bench.book(), bench.board()}, shown.now, m_manner);
    }
    if (const record::Person* person = bench.bench().roster.person(bench.atBench())) {
        shown.person = service::isolated(service::text(person->name));
    }
    for (const bench::Card& card : bench.board().cards) {
        const bool waits = card.standing == bench::Standing::Waiting && card.countTo;
        if (waits && *card.countTo < shown.now + furthestWait && shown.waits.size() < mostWaits) {
            shown.waits.push_back(card);
        }
    }
    if (m_services.plans.offer()) {
        shown.offer = PlanOffer{service::changeWords(m_services.plans.offeredChange())};
    }
    return shown;
}

} // namespace mend::app
