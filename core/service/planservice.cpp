#include "core/service/planservice.h"

#include "core/service/planfacts.h"

#include <algorithm>
#include <chrono>

namespace mend::service {

namespace {

using std::chrono::steady_clock;
using Plan = std::shared_ptr<const bench::StandingPlan>;

/// Where nothing closes, a plan that time has overtaken may stand so long before it is made anew.
constexpr Span unhurried = std::chrono::minutes(15);

/// What a promise can hang on; all the rest moves none.
bool tellsOfPromises(const bench::Event& event)
{
    using bench::What;
    return event.what == What::Promised || event.what == What::CameBack || event.what == What::Voided ||
           event.what == What::Retold || event.what == What::ClockStepped;
}

bool anythingCloses(const bench::Board& board)
{
    return std::ranges::any_of(board.windows,
                               [&](const bench::Window& window) { return window.closes && *window.closes > board.at; });
}

} // namespace

PlanService::PlanService(const Clock& clock, BenchService& bench, Studio studio, PlanPatience patience, QObject* parent)
    : QObject(parent), m_clock(clock), m_bench(bench), m_studio(std::move(studio)), m_patience(patience)
{
}

PlanService::~PlanService() { end(); }

void PlanService::end()
{
    disconnect(&m_bench, nullptr, this, nullptr);
    {
        const std::lock_guard held(m_mutex);
        m_ending = true;
        m_newest = -1;
    }
    m_somethingToDo.notify_all();
    if (m_thread.joinable()) {
        m_thread.join();
    }
    m_begun = false;
    m_asked = m_answered = 0; // what was told before and is still on its way is dropped
}

void PlanService::begin()
{
    if (m_begun) {
        return;
    }
    m_begun = true;
    m_thread = std::thread([this] { loop(); });
    connect(&m_bench, &BenchService::benchChanged, this, &PlanService::benchChanged);
    ask();
}

void PlanService::setStudio(const Studio& studio)
{
    m_studio = studio;
    if (m_begun) {
        ask();
    }
}

/// The board also changes by the clock alone; only what was told asks for a plan.
void PlanService::benchChanged()
{
    if (m_bench.timesFolded() == m_timesFolded) {
        return;
    }
    m_timesFolded = m_bench.timesFolded();
    bench::BenchFold now = m_bench.bench();
    now.answers.clear();
    if (now != m_seen || *m_book != m_bench.book()) {
        ask();
    }
}

void PlanService::look(Instant now)
{
    const Plan plan = m_bench.plan();
    if (!m_begun || isPlanning() || !plan) {
        return;
    }
    const bool hurries = m_watched || anythingCloses(m_bench.board());
    const Instant until = bench::goodUntil(*plan);
    if (now >= (hurries ? until : std::max(until, plan->at() + unhurried))) {
        ask();
    }
}

bench::PlanFacts PlanService::facts(Instant now) const
{
    std::vector<bench::Event> events;
    std::ranges::copy_if(m_bench.events(), std::back_inserter(events), tellsOfPromises);
    return planFactsOf(m_studio, events, now);
}

void PlanService::ask()
{
    Question question;
    question.number = ++m_asked;
    question.bench = m_bench.bench();
    question.bench.answers.clear();
    m_seen = question.bench;
    m_timesFolded = m_bench.timesFolded();
    if (!m_book || *m_book != m_bench.book()) {
        m_book = std::make_shared<const rules::RuleBook>(m_bench.book());
    }
    question.book = m_book;
    question.now = m_clock.now().utc;
    question.facts = facts(question.now);
    question.before = m_bench.plan();
    m_offer.reset();
    {
        const std::lock_guard held(m_mutex);
        m_newest = question.number;
        m_question = std::move(question);
    }
    m_somethingToDo.notify_all();
}

void PlanService::take(const Answer& answer)
{
    if (answer.number != m_asked) {
        return; // the bench has moved on
    }
    if (answer.last) {
        m_answered = answer.number;
    }
    m_offer = answer.offer;
    m_offeredChange = answer.change;
    if (answer.plan) {
        m_bench.usePlan(answer.plan);
    }
    Q_EMIT planned();
}

void PlanService::takeOffer()
{
    if (m_offer) {
        m_bench.usePlan(std::exchange(m_offer, nullptr));
        Q_EMIT planned();
    }
}

void PlanService::refuseOffer()
{
    m_offer.reset();
    Q_EMIT planned();
}

void PlanService::loop()
{
    std::unique_lock held(m_mutex);
    while (true) {
        m_somethingToDo.wait(held, [this] { return m_ending || m_question; });
        if (m_ending) {
            return;
        }
        const Question question = std::move(*m_question);
        m_question.reset();
        held.unlock();
        work(question);
        held.lock();
    }
}

void PlanService::tell(Answer answer)
{
    QMetaObject::invokeMethod(
        this, [this, answer = std::move(answer)] { take(answer); }, Qt::QueuedConnection);
}

plan::Enough PlanService::stopAfter(int number, std::chrono::milliseconds longest) const
{
    const auto until = steady_clock::now() + longest;
    return [this, number, until] { return isStale(number) || steady_clock::now() >= until; };
}

void PlanService::work(const Question& question)
{
    bench::BenchProblem made = bench::benchProblem(question.bench, *question.book, question.facts, question.now);
    const PersonId person = question.bench.atBench;
    if (made.problem.steps.empty()) {
        bench::StandingPlan plan;
        plan.made = std::move(made);
        plan.person = person;
        plan.verdict = bench::StandingPlan::Verdict::Whole;
        tell({question.number, std::make_shared<const bench::StandingPlan>(std::move(plan)), nullptr, {}, true});
        return;
    }
    plan::Effort effort;
    effort.enough = stopAfter(question.number, m_patience.first);
    std::optional<plan::Timetable> table;
    bool none = false;
    if (question.before && question.before->isWhole()) {
        const auto before = bench::startsBefore(made, *question.before);
        plan::Repaired repaired = plan::repair(made.problem, before, effort);
        table = std::move(repaired.table);
        none = repaired.noPlan;
    }
    if (!table && !none) {
        plan::Planned planned = plan::planBench(made.problem, effort);
        table = std::move(planned.table);
        none = planned.verdict == plan::Planned::Verdict::NoPlan;
    }
    if (isStale(question.number)) {
        return;
    }
    if (table) {
        workOnWhole(question, std::make_shared<const bench::StandingPlan>(
                                  bench::standingPlan(std::move(made), std::move(*table), person)));
        return;
    }
    bench::StandingPlan plan;
    plan.made = std::move(made);
    plan.person = person;
    plan.verdict = none ? bench::StandingPlan::Verdict::None : bench::StandingPlan::Verdict::NotFound;
    workOnNone(question, std::move(plan));
}

/// First what is known at once, then the slower answers, then a better plan, if there is one.
void PlanService::workOnWhole(const Question& question, Plan plan)
{
    tell({question.number, plan, nullptr, {}, false});
    const auto stale = [this, number = question.number] { return isStale(number); };
    auto thorough = std::make_shared<bench::StandingPlan>(*plan);
    thorough->fits = bench::fitsOf(plan->made, plan->table, plan::MayStart::Depth::Thorough, stale);
    if (stale()) {
        return;
    }
    plan = thorough;
    tell({question.number, plan, nullptr, {}, false});
    plan::Effort effort;
    effort.enough = stopAfter(question.number, m_patience.better);
    plan::Planned better = plan::planBench(plan->made.problem, effort);
    if (stale()) {
        return;
    }
    if (!better.table || better.score >= plan->score) {
        tell({question.number, nullptr, nullptr, {}, true});
        return;
    }
    auto improved =
        std::make_shared<bench::StandingPlan>(bench::standingPlan(plan->made, std::move(*better.table), plan->person));
    improved->fits = bench::fitsOf(improved->made, improved->table, plan::MayStart::Depth::Thorough, stale);
    const std::vector<std::optional<plan::Minute>> old(plan->table.start.begin(), plan->table.start.end());
    const plan::PlanChange change = plan::changeBetween(plan->made.problem, old, improved->table.start);
    const bool mayTake = !question.before || !question.before->isWhole() || change.swapped == 0;
    if (mayTake) {
        tell({question.number, improved, nullptr, {}, true});
    } else {
        tell({question.number, nullptr, improved, change, true});
    }
}

void PlanService::workOnNone(const Question& question, bench::StandingPlan plan)
{
    using Verdict = bench::StandingPlan::Verdict;
    tell({question.number, std::make_shared<const bench::StandingPlan>(plan), nullptr, {}, false});
    if (plan.verdict == Verdict::NotFound) {
        plan::Effort effort;
        effort.enough = stopAfter(question.number, m_patience.better);
        plan::Planned planned = plan::planBench(plan.made.problem, effort);
        if (planned.table && !isStale(question.number)) {
            workOnWhole(question, std::make_shared<const bench::StandingPlan>(bench::standingPlan(
                                      std::move(plan.made), std::move(*planned.table), plan.person)));
            return;
        }
        plan.verdict = planned.verdict == plan::Planned::Verdict::NoPlan ? Verdict::None : Verdict::NotFound;
    }
    if (plan.verdict == Verdict::None) {
        plan.why = plan::whyNot(plan.made.problem, stopAfter(question.number, m_patience.why));
    }
    tell({question.number, std::make_shared<const bench::StandingPlan>(std::move(plan)), nullptr, {}, true});
}

} // namespace mend::service
