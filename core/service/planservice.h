#pragma once

#include "core/base/clock.h"
#include "core/service/benchservice.h"
#include "core/service/studio.h"

#include <QObject>

#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

namespace mend::service {

/// How long the planner may take for what; the plan of a moment is worth more than the best one.
struct PlanPatience {
    std::chrono::milliseconds first{100};   ///< for something to show, after the bench has changed
    std::chrono::milliseconds better{1000}; ///< then for a better one, or for any at all
    std::chrono::milliseconds why{3000};    ///< for the reasons where there is none
};

/// Keeps the plan of the bench: whenever something was told, the bench as it stands then is planned on a thread of its
/// own and the board says what came of it. Nobody ever waits for the planner: what is told while it works ends that
/// work within some milliseconds and begins the next. A plan is brought up to date rather than made anew, so what
/// stands in it stays where it is as long as it can.
class PlanService : public QObject {
    Q_OBJECT

public:
    PlanService(const Clock& clock, BenchService& bench, Studio studio, PlanPatience patience = {},
                QObject* parent = nullptr);
    ~PlanService() override; ///< see `end`

    /// Begins to plan; before it nothing is done, so that the Bench stands first.
    void begin();
    /// Ends what is being planned, at once; nothing is planned from then on.
    void end();
    void setStudio(const Studio& studio);
    /// A tick: asks anew where time alone has overtaken the plan.
    void look(Instant now);
    /// While somebody looks at the plan, it keeps up with the clock though nothing closes.
    void setWatched(bool watched) { m_watched = watched; }
    bool isPlanning() const { return m_asked != m_answered; }

    /// A better plan that would turn the order round, so a person has to say yes to it; null: none.
    std::shared_ptr<const bench::StandingPlan> offer() const { return m_offer; }
    const plan::PlanChange& offeredChange() const { return m_offeredChange; }
    void takeOffer();
    void refuseOffer();

Q_SIGNALS:
    /// Another plan, another offer, or the work on it has ended.
    void planned();

private:
    /// The bench as it was when the question was put; shared with nobody.
    struct Question {
        int number = 0;
        bench::BenchFold bench;
        std::shared_ptr<const rules::RuleBook> book;
        bench::PlanFacts facts;
        Instant now;
        std::shared_ptr<const bench::StandingPlan> before;
    };
    struct Answer {
        int number = 0;
        std::shared_ptr<const bench::StandingPlan> plan; ///< null: as it was
        std::shared_ptr<const bench::StandingPlan> offer;
        plan::PlanChange change;
        bool last = false; ///< nothing more comes to this question
    };

    void benchChanged();
    void ask();
    bench::PlanFacts facts(Instant now) const;
    void take(const Answer& answer);

    // On the planner's own thread.
    void loop();
    void work(const Question& question);
    void workOnWhole(const Question& question, std::shared_ptr<const bench::StandingPlan> plan);
    void workOnNone(const Question& question, bench::StandingPlan plan);
    bool isStale(int number) const { return m_newest.load(std::memory_order_relaxed) != number; }
    plan::Enough stopAfter(int number, std::chrono::milliseconds longest) const;
    void tell(Answer answer);

    const Clock& m_clock;
    BenchService& m_bench;
    Studio m_studio;
    const PlanPatience m_patience;
    bench::BenchFold m_seen; ///< what the last question was about, without answers to alerts
    std::uint64_t m_timesFolded = 0;
    std::shared_ptr<const rules::RuleBook> m_book;
    std::shared_ptr<const bench::StandingPlan> m_offer;
    plan::PlanChange m_offeredChange;
    bool m_begun = false;
    bool m_watched = false;
    int m_asked = 0;
    int m_answered = 0;

    std::atomic<int> m_newest{0};
    std::mutex m_mutex;
    std::condition_variable m_somethingToDo;
    std::optional<Question> m_question;
    bool m_ending = false;
    std::thread m_thread; // last: everything above stands before it runs
};

} // namespace mend::service
