#include "core/service/door.h"

#include "core/record/fields.h"

#include <algorithm>
#include <set>

namespace mend::service {

using bench::Event;
using bench::What;

namespace {

/// What the bench needs to know anew after a row was changed, and what was told of a piece that came in.
struct Reloaded {
    std::vector<record::Piece> pieces;
    std::vector<record::Customer> owners;
    std::vector<Event> events;
};

Result<Reloaded> reload(const store::Store& store, PieceId fresh)
{
    auto pieces = store.piecesInHand();
    auto owners = store.ownersInHand();
    auto events = fresh.isSet() ? store.eventsOf(fresh) : Result<std::vector<Event>>(std::vector<Event>{});
    if (!pieces || !owners || !events) {
        return !pieces ? pieces.fault() : !owners ? owners.fault() : events.fault();
    }
    return Reloaded{pieces.takeValue(), owners.takeValue(), events.takeValue()};
}

Outcome outcomeOf(const Outcome& outcome) { return outcome; }
template <class T> Outcome outcomeOf(const Result<T>& result)
{
    return result ? Outcome(Done{}) : Outcome(result.fault());
}

std::string wordOf(record::CameFor reason)
{
    for (const auto& word : record::cameForWords) {
        if (word.value == reason) {
            return std::string(word.text);
        }
    }
    return {};
}

} // namespace

Door::Door(const Clock& clock, BenchService& bench, store::StoreThread& file, KeepRules keepRules, QObject* parent)
    : QObject(parent), m_clock(clock), m_bench(bench), m_file(file), m_keepRules(std::move(keepRules))
{
}

CivilDay Door::today() const { return dayIn(m_zone)(m_clock.now().utc); }

template <class T> void Door::give(Answer<T> answer, Result<T> result)
{
    QMetaObject::invokeMethod(
        this, [answer = std::move(answer), result = std::move(result)] { answer(result); }, Qt::QueuedConnection);
}

template <class T, class Work> void Door::ask(Work work, Answer<T> answer)
{
    m_file.read([this, work = std::move(work), answer = std::move(answer)](store::Store& store) {
        give<T>(answer, work(store));
    });
}

/// `work` is tried again until it succeeds or can never do so; what it gave last is answered.
template <class T, class Work> void Door::write(Work work, Answer<T> answer)
{
    const auto last = std::make_shared<std::optional<Result<T>>>();
    m_file.write(
        [work = std::move(work), last](store::Store& store) {
            *last = work(store);
            return outcomeOf(**last);
        },
        [this, answer = std::move(answer), last](const Outcome&) { give<T>(answer, **last); });
}

void Door::find(const std::string& typed, Answer<store::Found> answer)
{
    const int mine = ++*m_newestFind;
    m_file.read([this, typed, mine, newest = m_newestFind, answer = std::move(answer)](store::Store& store) {
        if (mine == *newest) { // else another letter was typed meanwhile
            give<store::Found>(answer, store.find(typed));
        }
    });
}

void Door::findPeople(const std::string& typed, Answer<std::vector<store::FoundPerson>> answer)
{
    ask<std::vector<store::FoundPerson>>([typed](store::Store& store) { return store.findPeople(typed); },
                                         std::move(answer));
}

void Door::openPiece(PieceId piece, Answer<PieceFile> answer)
{
    ask<PieceFile>([piece, book = m_bench.book()](store::Store& store) { return readPieceFile(store, piece, book); },
                   std::move(answer));
}

void Door::openPerson(CustomerId person, Answer<PersonFile> answer)
{
    ask<PersonFile>(
        [person, book = m_bench.book()](store::Store& store) { return readPersonFile(store, person, book); },
        std::move(answer));
}

bench::CounterFacts Door::counter() const
{
    return bench::counterOf(m_bench.bench(), m_bench.events(), m_bench.book(), m_clock.now().utc, dayIn(m_zone));
}

std::vector<record::IntakeFault> Door::faultsOf(const record::Intake& page,
                                                const std::vector<store::FoundPerson>& found) const
{
    record::IntakeSituation situation;
    situation.today = today();
    std::vector<record::Customer> known;
    std::ranges::transform(found, std::back_inserter(known), &store::FoundPerson::person);
    situation.peopleAlike = record::alikePeople(page.owner, known);
    for (const record::Piece& piece : m_bench.bench().roster.pieces) {
        if (piece.id != page.piece.id && m_bench.bench().piece(piece.id)) {
            situation.namesInHand.push_back(piece.benchName);
        }
    }
    return record::faultsOf(record::cleaned(page), situation);
}

std::vector<std::string> Door::alikeNames(const record::Intake& page) const
{
    std::vector<std::string> names;
    for (const auto& [id, piece] : m_bench.bench().pieces) {
        if (id != page.piece.id) {
            names.push_back(piece.piece.benchName);
        }
    }
    return record::alikeBenchNames(page.piece.benchName, names);
}

bench::PromiseJudgement Door::judgePromise(const record::Intake& page, CivilDay day) const
{
    const rules::Procedure* const procedure = m_bench.book().procedure(page.piece.procedure);
    if (!procedure) {
        return {};
    }
    const record::Place* const place = m_bench.bench().roster.firstOfKind(record::PlaceKind::Bench);
    bench::PieceState state;
    state.piece = record::cleaned(page).piece;
    state.piece.fragments = std::max(1, state.piece.fragments);
    state.rules = procedure->hash;
    state.stays = {{m_clock.now().utc, place ? place->id : PlaceId()}};
    return bench::judgePromise(day, state, m_bench.book(), m_clock.now().utc, dayIn(m_zone));
}

/// What is told with the page, numbered here so that a write that is tried again tells the same.
std::vector<Event> Door::firstEvents(const record::Intake& page)
{
    std::vector<Event> events;
    const auto add = [&](What what, std::string word = {},
                         std::optional<std::int64_t> amount = std::nullopt) -> Event& {
        Event event = m_bench.told(what);
        event.id = m_bench.reserve();
        event.word = std::move(word);
        event.amount = amount;
        return events.emplace_back(std::move(event));
    };
    const record::Place* const place = m_bench.bench().roster.firstOfKind(record::PlaceKind::Bench);
    const PlaceId here = place ? place->id : PlaceId();
    if (page.piece.id.isSet()) {
        add(What::CameBack, wordOf(page.visit.cameFor)).place = here;
    } else {
        add(What::Received).place = here;
    }
    add(What::Counted, "fragmentsIn", page.piece.fragments);
    if (const int accessories = record::accessoriesOf(page.visit); accessories > 0) {
        add(What::Counted, "accessoriesIn", accessories);
    }
    if (page.visit.consent.isSigned()) {
        add(What::ConsentGiven, page.visit.consent.how == record::Signature::Drawn ? "drawn" : "onPaper");
    }
    if (page.promised) {
        add(What::Promised, dayText(*page.promised));
    }
    if (page.deposit && page.deposit->minorUnits() > 0) {
        add(What::Paid, page.deposit->currency(), page.deposit->minorUnits());
    }
    if (page.agreed) {
        const rules::Procedure* const procedure = m_bench.book().procedure(page.piece.procedure);
        add(What::Agreed).rules = procedure ? procedure->hash : std::string();
    }
    return events;
}

void Door::takeIn(const record::Intake& page, Answer<store::TakenIn> answer)
{
    const std::vector<Event> events = firstEvents(page);
    if (m_keepRules) {
        m_keepRules(events);
    }
    const int year = static_cast<int>(today().year());
    write<store::TakenIn>([page = record::cleaned(page), year,
                           events](store::Store& store) { return store.takeIn(page, year, events, "intake"); },
                          [this, answer = std::move(answer)](const Result<store::TakenIn>& taken) {
                              if (!taken) {
                                  answer(taken);
                                  return;
                              }
                              reloadRoster(taken.value().piece, [answer, taken] { answer(taken); });
                          });
}

/// `then` once the bench knows of it.
void Door::reloadRoster(PieceId fresh, std::function<void()> then)
{
    ask<Reloaded>([fresh](store::Store& store) { return reload(store, fresh); },
                  [this, then = std::move(then)](const Result<Reloaded>& reloaded) {
                      if (reloaded) {
                          bench::Roster roster = m_bench.bench().roster;
                          roster.pieces = reloaded.value().pieces;
                          roster.customers = reloaded.value().owners;
                          std::set<EventId> known;
                          for (const Event& event : m_bench.events()) {
                              known.insert(event.id);
                          }
                          std::vector<Event> fresh_;
                          std::ranges::copy_if(reloaded.value().events, std::back_inserter(fresh_),
                                               [&](const Event& event) { return !known.contains(event.id); });
                          m_bench.changeRoster(std::move(roster), fresh_);
                      }
                      if (then) {
                          then();
                      }
                      Q_EMIT changed();
                  });
}

void Door::keepDraft(const record::Intake& page, const std::string& name)
{
    const store::Draft draft{name, record::sheetText(record::sheetOf(page)), m_clock.now().utc};
    m_file.write([draft](store::Store& store) { return store.putDraft(draft); });
}

void Door::dropDraft(const std::string& name)
{
    m_file.write([name](store::Store& store) { return store.dropDraft(name); });
}

void Door::loadDraft(Answer<std::optional<record::Intake>> answer, const std::string& name)
{
    ask<std::optional<record::Intake>>(
        [name](store::Store& store) -> Result<std::optional<record::Intake>> {
            const auto drafts = store.drafts();
            if (!drafts) {
                return drafts.fault();
            }
            for (const store::Draft& draft : drafts.value()) {
                const auto sheet = draft.name == name ? record::sheetFromText(draft.sheet) : std::nullopt;
                if (sheet) {
                    return record::fromSheet<record::Intake>(*sheet);
                }
            }
            return std::optional<record::Intake>{};
        },
        std::move(answer));
}

void Door::allPeople(Answer<std::vector<record::Customer>> answer)
{
    ask<std::vector<record::Customer>>([](store::Store& store) { return store.customers(); }, std::move(answer));
}

void Door::takePeople(std::vector<record::Customer> people, Answer<Done> answer)
{
    write<Done>([people = std::move(people)](store::Store& store) { return store.putAll(people); }, std::move(answer));
}

void Door::put(const record::Customer& person, Answer<Done> answer)
{
    write<Done>([person](store::Store& store) { return outcomeOf(store.put(person)); },
                [this, answer = std::move(answer)](const Outcome& done) {
                    answer(done);
                    reloadRoster({}, {});
                });
}

void Door::put(const record::Piece& piece, Answer<Done> answer)
{
    write<Done>([piece](store::Store& store) { return outcomeOf(store.put(piece)); },
                [this, answer = std::move(answer)](const Outcome& done) {
                    answer(done);
                    reloadRoster({}, {});
                });
}

void Door::put(const record::Visit& visit, Answer<Done> answer)
{
    write<Done>([visit](store::Store& store) { return store.put(visit); }, std::move(answer));
}

void Door::addPhoto(const store::Bytes& working, const store::Bytes& thumbnail, const store::PhotoUse& use,
                    const record::PhotoNote& note, Answer<std::string> answer)
{
    write<std::string>(
        [working, thumbnail, use, note](store::Store& store) { return store.addPhoto(working, thumbnail, use, note); },
        std::move(answer));
}

void Door::notePhoto(const store::PhotoUse& use, const record::PhotoNote& note, Answer<Done> answer)
{
    write<Done>([use, note](store::Store& store) { return store.putNote(use, note); }, std::move(answer));
}

void Door::readPhoto(const std::string& hash, Answer<std::optional<store::Bytes>> answer)
{
    ask<std::optional<store::Bytes>>([hash](store::Store& store) { return store.photo(hash); }, std::move(answer));
}

void Door::readThumbnail(const std::string& hash, Answer<std::optional<store::Bytes>> answer)
{
    ask<std::optional<store::Bytes>>([hash](store::Store& store) { return store.thumbnail(hash); }, std::move(answer));
}

void Door::erase(CustomerId person, Answer<Done> answer)
{
    write<Done>(
        [person](store::Store& store) -> Outcome {
            const Outcome erased = store.erase(person);
            // Nobody of that number, now or after a former try, will never be found: not to be tried for ever.
            return erased || erased.fault().kind != FaultKind::NotFound
                       ? erased
                       : Outcome(Fault{FaultKind::BadInput, erased.fault().detail});
        },
        [this, answer = std::move(answer)](const Outcome& done) {
            answer(done);
            reloadRoster({}, {});
        });
}

void Door::askRetention(int months, Answer<std::vector<store::LongGone>> answer)
{
    const CivilDay limit = plusMonths(today(), -months);
    ask<std::vector<store::LongGone>>(
        [limit](store::Store& store) -> Result<std::vector<store::LongGone>> {
            auto gone = store.longGone(Instant(std::chrono::sys_days(limit)));
            if (!gone) {
                return gone;
            }
            std::vector<store::LongGone> open = gone.takeValue();
            std::erase_if(open, [&](const store::LongGone& each) {
                return each.person.keptOn && daysBetween(limit, *each.person.keptOn) > 0;
            });
            return open;
        },
        std::move(answer));
}

} // namespace mend::service
