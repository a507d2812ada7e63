#pragma once

#include "core/base/clock.h"
#include "core/bench/acts.h"
#include "core/bench/card.h"
#include "core/bench/standingplan.h"

#include <QObject>
#include <cstdint>
#include <functional>
#include <memory>
#include <set>
#include <vector>

namespace mend::service {

/// What a bench file held when it was opened.
struct BenchRecord {
    bench::Roster roster;
    std::vector<bench::Event> events;
    EventId next{1};
};

/// What may still be taken back with one tap.
struct UndoOffer {
    std::vector<EventId> events;
    PieceId piece;
    Instant until;
};

/// What a person can do at the bench. Every act is an event: it enters the bench at once and
/// is handed on to be kept; until that is confirmed its card carries the mark "not stored yet".
class BenchService : public QObject {
    Q_OBJECT

public:
    /// Hands events on to be written, in order; `stored` is called with what reached the disk.
    using Keep = std::function<void(const std::vector<bench::Event>&)>;

    BenchService(const Clock& clock, rules::RuleBook book, BenchRecord record, Keep keep, QObject* parent = nullptr);

    const bench::Board& board() const { return m_board; }
    const bench::BenchFold& bench() const { return m_fold; }
    const rules::RuleBook& book() const { return m_book; }
    const std::vector<bench::Event>& events() const { return m_events; }
    /// Another number whenever anything else may be known of the bench than before, other than by the clock.
    std::uint64_t timesFolded() const { return m_timesFolded; }
    PersonId atBench() const { return m_fold.atBench; }

    /// Pieces with an act that is not on the disk yet.
    std::set<PieceId> notStoredYet() const;
    std::size_t waitingToBeStored() const { return m_pending.size(); }
    std::optional<UndoOffer> undoOffer(Instant now) const;

    /// One tap on a card. Empty: the bench has moved on and the act means nothing any more.
    std::vector<EventId> tap(const bench::Tap& tap);
    /// "Mixing now": starts a mix; its batch is that of the last one unless told.
    MixId startMix(const std::string& material, const std::string& batch = {});
    void endMix(MixId mix, const std::string& how);
    void read(PlaceId place, Temperature temperature, std::optional<Humidity> humidity);
    void answerGap(PlaceId place, Instant from, Instant to, const std::string& how);
    /// What the place's thermometer kept as the lowest and the highest while nobody was there.
    void tellNight(PlaceId place, InstantRange night, Temperature lowest, Temperature highest);
    void lay(PieceId piece, PlaceId place);
    void skip(PieceId piece, const bench::StageInstance& stage, const std::string& reason);
    void sendBack(PieceId piece, const bench::StageInstance& stage, const std::string& reason);
    void moreToCome(PieceId piece, const bench::StageInstance& stage);
    void hold(PieceId piece, const std::string& reason);
    void note(PieceId piece, const std::string& text);
    void tellState(const std::string& state, bool begins);
    /// A stopped start goes on: the answer is kept, and ends a state where it says so.
    void answerHazard(PieceId piece, const bench::StageInstance& stage, const rules::Hazard& hazard,
                      const rules::Answer& answer, const std::string& words = {});
    void answerAlert(const std::string& word, PieceId piece, std::optional<Instant> until = std::nullopt);
    void comeToBench(PersonId person);
    void goAway(bool away);
    void stepClock(Span amount);

    /// Takes events back by void rows; those that build on them go with them.
    void undo(const std::vector<EventId>& events);
    /// What would have to go with an event.
    std::vector<EventId> wouldGoWith(EventId event) const;
    void retell(EventId event, Instant happened, PieceId piece);
    /// The bench as it would be with one event told differently: shown before it is kept.
    bench::Board ifRetold(EventId event, Instant happened, PieceId piece) const;
    /// Keeps a number free for an event that is written together with something else.
    EventId reserve();

    /// A piece was taken in (or its row changed) and stands in the file already.
    void changeRoster(bench::Roster roster, const std::vector<bench::Event>& stored = {});
    void useRules(rules::RuleBook book);
    /// From now on the board says what this plan knows; null: there is none. A plan of a bench that has changed
    /// since is not taken back before the next one is given.
    void usePlan(std::shared_ptr<const bench::StandingPlan> plan);
    std::shared_ptr<const bench::StandingPlan> plan() const { return m_plan; }
    /// Events reached the disk.
    void stored(const std::vector<EventId>& events);

    /// Works the board out anew for this instant; called by the tick.
    void refresh(Instant now);
    std::optional<Instant> nextChange(Instant now) const { return bench::nextChange(m_board, now); }

    /// Tells events of one act; numbers them. For acts that have no verb of their own.
    std::vector<EventId> tell(std::vector<bench::Event> events);
    /// The same for what the program itself has to say (an alert was shown): nothing to take back.
    void tellAside(std::vector<bench::Event> events);
    bench::Event told(bench::What what) const;

Q_SIGNALS:
    void benchChanged();
    void acted(mend::PieceId piece);
    void storedChanged();

private:
    bench::Hand hand() const;
    std::vector<EventId> enter(std::vector<bench::Event>& events);
    std::vector<EventId> number(std::vector<bench::Event>& events);
    void keep(const std::vector<bench::Event>& events);
    void refold();
    bench::Board boardAt(Instant now) const;

    const Clock& m_clock;
    rules::RuleBook m_book;
    bench::Roster m_roster;
    std::vector<bench::Event> m_events;
    bench::BenchFold m_fold;
    std::uint64_t m_timesFolded = 0;
    bench::Board m_board;
    EventId m_next;
    Keep m_keep;
    std::set<EventId> m_pending;
    std::optional<UndoOffer> m_undo;
    std::shared_ptr<const bench::StandingPlan> m_plan;
};

} // namespace mend::service
