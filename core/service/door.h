#pragma once

#include "core/base/clock.h"
#include "core/service/benchservice.h"
#include "core/service/handingover.h"
#include "core/service/piecefile.h"
#include "core/store/storethread.h"

#include <QObject>
#include <QTimeZone>

#include <atomic>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace mend::service {

/// What a person can do at the door: take a piece in, look one up, promise, take money, count, hand over. What
/// needs the file is asked of its own thread and answered on this object's; what is told of a piece is an event
/// like any at the bench: it stands at once, can be taken back for ten seconds, and later from the history.
/// The file's thread must have ended before this goes, because it answers to it.
class Door : public QObject {
    Q_OBJECT

public:
    template <class T> using Answer = std::function<void(const Result<T>&)>;
    /// Sees to it that the rules which events are told under stand in the file before them.
    using KeepRules = std::function<void(const std::vector<bench::Event>&)>;

    Door(const Clock& clock, BenchService& bench, store::StoreThread& file, KeepRules keepRules,
         QObject* parent = nullptr);

    void setZone(const QTimeZone& zone) { m_zone = zone; }
    CivilDay today() const;

    // Looking up. Only the newest of quick successive questions is answered: every letter typed asks one.
    void find(const std::string& typed, Answer<store::Found> answer);
    void findPeople(const std::string& typed, Answer<std::vector<store::FoundPerson>> answer);
    void openPiece(PieceId piece, Answer<PieceFile> answer);
    void openPerson(CustomerId person, Answer<PersonFile> answer);
    bench::CounterFacts counter() const;

    // The intake.
    /// What stands against a page; `alike`: of the people found while the name was typed.
    std::vector<record::IntakeFault> faultsOf(const record::Intake& page,
                                              const std::vector<store::FoundPerson>& found = {}) const;
    /// Bench names in the house that sound nearly like this one.
    std::vector<std::string> alikeNames(const record::Intake& page) const;
    /// What a promise comes to for a piece that is not in the house yet: as if it were agreed now.
    bench::PromiseJudgement judgePromise(const record::Intake& page, CivilDay day) const;
    /// Keeps the page: owner, piece, visit and what is told with it (received or come back, counted, consent,
    /// promise, deposit, agreed). The page's draft goes with it.
    void takeIn(const record::Intake& page, Answer<store::TakenIn> answer);
    /// Kept through a crash, for one page of that name at a time.
    void keepDraft(const record::Intake& page, const std::string& name = "intake");
    void dropDraft(const std::string& name = "intake");
    void loadDraft(Answer<std::optional<record::Intake>> answer, const std::string& name = "intake");
    /// Everybody the file knows, to compare a list with.
    void allPeople(Answer<std::vector<record::Customer>> answer);
    /// People out of a list, all or none.
    void takePeople(std::vector<record::Customer> people, Answer<Done> answer);

    // What may be put right.
    void put(const record::Customer& person, Answer<Done> answer);
    void put(const record::Piece& piece, Answer<Done> answer);
    void put(const record::Visit& visit, Answer<Done> answer);
    void addPhoto(const store::Bytes& working, const store::Bytes& thumbnail, const store::PhotoUse& use,
                  const record::PhotoNote& note, Answer<std::string> answer);
    void notePhoto(const store::PhotoUse& use, const record::PhotoNote& note, Answer<Done> answer);
    void readPhoto(const std::string& hash, Answer<std::optional<store::Bytes>> answer);
    void readThumbnail(const std::string& hash, Answer<std::optional<store::Bytes>> answer);

    // What is told of a piece; each gives the event's number.
    bench::PromiseJudgement judgePromise(PieceId piece, CivilDay day) const;
    EventId promise(PieceId piece, CivilDay day);
    EventId agreePrice(PieceId piece, const Money& price);
    EventId pay(PieceId piece, const Money& money);
    EventId count(PieceId piece, const std::string& what, int number);
    EventId fragmentFound(PieceId piece, int count, const std::string& where);
    EventId nameFault(PieceId piece, const bench::StageInstance& join, MixId batch, const std::string& note);
    EventId removeMaterial(PieceId piece, const std::string& material);
    EventId tellOwner(PieceId piece, const std::string& how, const std::string& about);
    EventId giveNotice(PieceId piece, const std::string& how, const std::string& note);
    EventId askOwner(PieceId piece, const std::string& question);
    EventId ownerAnswered(PieceId piece, const std::string& answer);
    EventId shortenWait(PieceId piece, Instant from, const std::string& reason);
    EventId agree(PieceId piece);
    EventId handOver(PieceId piece, const std::string& takenBy, const std::string& signedHow);
    /// The whole of a hand-over as one act, to be taken back as one; none where the piece is not in the house.
    std::vector<EventId> handOver(const HandingOver& told);
    EventId returnUnmended(PieceId piece, const std::string& reason);

    /// Takes a person out of the file for ever; see Store::erase.
    void erase(CustomerId person, Answer<Done> answer);
    /// Who has had nothing here for so many months: may their data still be kept?
    void askRetention(int months, Answer<std::vector<store::LongGone>> answer);

Q_SIGNALS:
    /// A piece came in or a row was put right; the bench knows it already.
    void changed();

private:
    template <class T, class Work> void ask(Work work, Answer<T> answer);
    template <class T, class Work> void write(Work work, Answer<T> answer);
    template <class T> void give(Answer<T> answer, Result<T> result);
    EventId tell(bench::Event event);
    bench::Event of(bench::What what, PieceId piece) const;
    std::vector<bench::Event> firstEvents(const record::Intake& page);
    void reloadRoster(PieceId fresh, std::function<void()> then);

    const Clock& m_clock;
    BenchService& m_bench;
    store::StoreThread& m_file;
    KeepRules m_keepRules;
    QTimeZone m_zone = QTimeZone::utc();
    std::shared_ptr<std::atomic<int>> m_newestFind = std::make_shared<std::atomic<int>>(0);
};

} // namespace mend::service
