// What a disk may do to one session of taps: fail once or for ever at each of its calls, fill up,
// or lose power in the midst of any of them.
#include "tests/store/benchmaker.h"
#include "tests/support/faultvfs.h"
#include "tests/support/scratch.h"

#include "core/store/check.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <cstdlib>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;

namespace {

using Acts = std::vector<std::vector<Event>>;

/// One session: six acts of one to three events each, a take-in and a picture among them.
Acts someSession(unsigned seed)
{
    EventMaker maker(seed);
    Acts acts;
    for (int i = 0; i < 6; ++i) {
        acts.push_back(maker.some(1 + maker.upTo(2)));
    }
    return acts;
}

Outcome asOutcome(bool ok, const Fault& fault) { return ok ? Outcome(Done{}) : Outcome(fault); }

/// Act `index` of the session; the third also takes a piece in, the fifth keeps a picture.
Outcome perform(Store& store, const Acts& acts, std::size_t index)
{
    if (index == 2) {
        const auto taken = store.takeIn({CustomerId(), "Owner", ""}, somePiece(50), acts[index]);
        return asOutcome(taken.isOk(), taken.isOk() ? Fault{} : taken.fault());
    }
    if (index == 4) {
        const auto kept = store.putPhoto(Bytes(20'000, 'p'), "small", {"", PieceId(1), EventId(), "condition"});
        if (!kept) {
            return kept.fault();
        }
    }
    return store.append(acts[index]);
}

/// What a file holds must be the first `least` acts whole, or more of them, and nothing else.
void expectWholeActs(const std::filesystem::path& file, const Acts& acts, std::size_t least, const std::string& what)
{
    auto opened = Store::open(file, OpenMode::ReadWrite);
    ASSERT_TRUE(opened.isOk()) << what << ": " << opened.fault().detail;
    const auto store = opened.takeValue();
    const auto held = store->allEvents();
    ASSERT_TRUE(held.isOk()) << what;
    std::size_t count = 0;
    std::size_t whole = 0;
    for (const auto& act : acts) {
        if (count + act.size() > held.value().size()) {
            break;
        }
        count += act.size();
        ++whole;
    }
    EXPECT_EQ(count, held.value().size()) << what << ": half an act";
    EXPECT_GE(whole, least) << what << ": an acknowledged act is lost";
    EXPECT_EQ(store->pieces().value().size(), whole > 2 ? 4U : 3U) << what << ": half a take-in";
    const auto uses = store->photosOf(PieceId(1)).value();
    EXPECT_TRUE(uses.empty() ? whole <= 4 : store->photo(uses[0].photo).value().has_value()) << what;
    const CheckReport report = checkWhole(*store);
    EXPECT_TRUE(report.isGood()) << what << ": " << (report.isGood() ? "" : report.findings.front().detail);
}

struct Session {
    std::size_t acknowledged = 0;
    int calls = 0;
    bool struck = false;
};

/// Performs the acts, each tried again up to `tries` times; stops at the first that stays undone.
Session run(Store& store, const Acts& acts, FaultVfs::Mode mode, int atCall, int code, int tries)
{
    FaultVfs& faults = FaultVfs::instance();
    faults.arm(mode, atCall, code);
    Session session;
    for (std::size_t i = 0; i < acts.size(); ++i) {
        bool done = false;
        for (int t = 0; t < tries && !done; ++t) {
            done = perform(store, acts, i).isOk();
        }
        if (!done) {
            break;
        }
        ++session.acknowledged;
    }
    session.calls = faults.calls();
    session.struck = faults.hasStruck();
    return session;
}

/// A furnished bench file, made once and copied for each round.
const std::filesystem::path& furnishedFile()
{
    static const Scratch scratch;
    static const std::filesystem::path file = [] {
        furnish(*openOrDie(scratch / "bench.mend"));
        return scratch / "bench.mend";
    }();
    return file;
}

std::unique_ptr<Store> freshBench(const Scratch& scratch)
{
    FaultVfs::instance().calm();
    std::filesystem::copy_file(furnishedFile(), scratch / "bench.mend");
    return openOrDie(scratch / "bench.mend", OpenMode::ReadWrite, FaultVfs::name);
}

int callsOfWholeSession(const Acts& acts)
{
    const Scratch scratch;
    const auto store = freshBench(scratch);
    const Session sound = run(*store, acts, FaultVfs::Mode::Sound, 0, 0, 1);
    EXPECT_EQ(sound.acknowledged, acts.size());
    EXPECT_GT(sound.calls, 100);
    return sound.calls;
}

} // namespace

TEST(BrokenDisk, LosesNothingWhenAnyOneCallFailsOnceF5)
{
    const Acts acts = someSession(1);
    const int calls = callsOfWholeSession(acts);
    for (int n = 1; n <= calls; ++n) {
        const Scratch scratch;
        Session session;
        {
            const auto store = freshBench(scratch);
            session = run(*store, acts, FaultVfs::Mode::FailOnce, n, SQLITE_IOERR_WRITE, 2);
        }
        EXPECT_TRUE(session.struck) << n;
        EXPECT_EQ(session.acknowledged, acts.size()) << "call " << n << ": trying again did not help";
        expectWholeActs(scratch / "bench.mend", acts, acts.size(), "call " + std::to_string(n));
        if (HasFatalFailure()) {
            return;
        }
    }
}

TEST(BrokenDisk, KeepsWhatWasAcknowledgedWhenEveryCallFailsFromSomeOneOnF6)
{
    const Acts acts = someSession(2);
    const int calls = callsOfWholeSession(acts);
    for (int n = 1; n <= calls; ++n) {
        const Scratch scratch;
        Session session;
        {
            const auto store = freshBench(scratch);
            session = run(*store, acts, FaultVfs::Mode::FailForEver, n, SQLITE_IOERR_WRITE, 2);
            EXPECT_LT(session.acknowledged, acts.size()) << n;
        }
        FaultVfs::instance().calm();
        expectWholeActs(scratch / "bench.mend", acts, session.acknowledged, "from call " + std::to_string(n));
        if (HasFatalFailure()) {
            return;
        }
    }
}

TEST(BrokenDisk, SaysThatItIsFullAndStoresNothingByHalvesF7F8)
{
    const Acts acts = someSession(3);
    const int calls = callsOfWholeSession(acts);
    for (int n = 1; n <= calls; n += 3) {
        const Scratch scratch;
        const auto store = freshBench(scratch);
        const Session session = run(*store, acts, FaultVfs::Mode::FailForEver, n, SQLITE_FULL, 1);
        ASSERT_LT(session.acknowledged, acts.size()) << n;
        const Outcome full = perform(*store, acts, session.acknowledged);
        ASSERT_FALSE(full.isOk()) << n;
        EXPECT_TRUE(full.fault().kind == FaultKind::DiskFull || full.fault().kind == FaultKind::Unwritable) << n;
        FaultVfs::instance().calm(); // room was made
        for (std::size_t i = session.acknowledged; i < acts.size(); ++i) {
            const Outcome outcome = perform(*store, acts, i);
            EXPECT_TRUE(outcome.isOk()) << n << ": " << (outcome.isOk() ? "" : outcome.fault().detail);
        }
    }
}

TEST(BrokenDisk, KeepsWhatWasAcknowledgedWhenThePowerGoesF1F4)
{
    const Acts acts = someSession(4);
    const int calls = callsOfWholeSession(acts);
    const char* const rounds = std::getenv("MEND_POWER_CUTS");
    const int seeds = rounds ? std::atoi(rounds) : calls / 2;
    const int stride = rounds ? 1 : 2;
    for (int seed = 1; seed <= seeds; ++seed) {
        const Scratch scratch;
        const Scratch after;
        const auto store = freshBench(scratch);
        FaultVfs& faults = FaultVfs::instance();
        faults.watch(scratch.folder());
        const int at = 1 + (seed - 1) * stride % calls;
        const Session session = run(*store, acts, FaultVfs::Mode::CutPower, at, 0, 1);
        faults.disk(after.folder(), static_cast<unsigned>(seed));
        std::filesystem::remove(after / "bench.mend.lock");
        expectWholeActs(after / "bench.mend", acts, session.acknowledged, "power cut at call " + std::to_string(at));
        if (HasFatalFailure()) {
            return;
        }
    }
}
