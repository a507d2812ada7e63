#include "core/service/demobench.h"

#include "core/service/datafolder.h"
#include "core/service/demopast.h"
#include "core/store/bulk.h"
#include "core/store/seal.h"

#include <set>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

constexpr auto builtKey = "demo.builtAt";
constexpr std::chrono::hours demoKeeps{4};
constexpr unsigned demoSeed = 2604; ///< any other gives another past

/// When the demo in that file was built; empty where there is no file.
Result<std::optional<Instant>> builtAt(const fs::path& file)
{
    std::error_code ignored;
    if (!fs::exists(file, ignored)) {
        return std::optional<Instant>{};
    }
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    if (!opened) {
        return opened.fault();
    }
    const auto settings = opened.value()->settings();
    if (!settings) {
        return settings.fault();
    }
    const auto told = settings.value().find(builtKey);
    const auto at = told == settings.value().end() ? std::nullopt : fromRfc3339(told->second);
    if (!at) {
        return Fault{FaultKind::Conflict, "not a demo bench"};
    }
    return at;
}

/// Several writes of which the first that fails is told.
class Writes {
public:
    template <class T> void operator()(const Result<T>& result)
    {
        if (!result && !m_fault) {
            m_fault = result.fault();
        }
    }
    Outcome outcome() const { return m_fault ? Outcome(*m_fault) : Outcome(Done{}); }

private:
    std::optional<Fault> m_fault;
};

} // namespace

fs::path demoFile() { return benchFolder() / "demo.mendbench"; }

Outcome writeDemo(const DemoBench& demo, const rules::RuleBook& book, const fs::path& file, const DrawPhotos& draw)
{
    store::OpenOptions options;
    options.mode = store::OpenMode::CreateIfMissing;
    auto opened = store::Store::open(file, options);
    if (!opened) {
        return opened.fault();
    }
    const EventId last = demo.events.empty() ? EventId() : demo.events.back().id;
    const DemoPast past = demoPast(demo.roster, last, book, demo.now, demoSeed);
    std::vector<DemoPhoto> photos = draw ? draw(demo.roster, demo.now) : std::vector<DemoPhoto>{};
    return opened.value()->fill([&](store::Bulk& bulk) {
        Writes write;
        for (const store::RuleText& text : revisionsOf(demo.events, book, {})) {
            write(bulk.putRules(text));
        }
        for (const auto& person : demo.roster.people) {
            write(bulk.put(person));
        }
        for (const auto& place : demo.roster.places) {
            write(bulk.put(place));
        }
        for (const auto* owners : {&demo.roster.customers, &past.people}) {
            for (const record::Customer& owner : *owners) {
                write(bulk.put(owner));
            }
        }
        for (const auto* pieces : {&demo.roster.pieces, &past.pieces}) {
            for (const record::Piece& piece : *pieces) {
                write(bulk.put(piece));
            }
        }
        for (const record::Visit& visit : past.visits) {
            write(bulk.put(visit));
        }
        for (const auto& [key, value] : settingsOf(demo.studio)) {
            write(bulk.setSetting(key, value));
        }
        write(bulk.append(demo.events));
        write(bulk.append(past.events));
        for (DemoPhoto& photo : photos) {
            photo.noted.use.photo = store::toHex(store::sha256(photo.working));
            write(bulk.putPhoto(photo.noted.use.photo, photo.working, photo.thumbnail));
            write(bulk.use(photo.noted));
        }
        return write.outcome();
    });
}

Outcome prepareDemo(const fs::path& file, const rules::RuleBook& book, const Moment& now, const QTimeZone& zone,
                    bool fresh, const DrawPhotos& draw)
{
    const auto built = builtAt(file);
    if (!built) {
        return built.fault();
    }
    const bool isYoung = built.value() && *built.value() <= now.utc && now.utc - *built.value() < demoKeeps;
    if (isYoung && !fresh) {
        return Done{};
    }
    std::error_code unmade; // where the folder cannot be made, taking the lock says so
    fs::create_directories(file.parent_path(), unmade);
    auto lock = store::OwnerLock::take(file); // whoever has it open keeps it
    if (!lock) {
        return lock.fault();
    }
    const auto demo = demoBench(book, now, zone);
    if (!demo) {
        return demo.fault();
    }
    const fs::path half = file.string() + ".new";
    std::error_code ignored;
    fs::remove(half, ignored);
    if (const Outcome written = writeDemo(demo.value(), book, half, draw); !written) {
        return written;
    }
    {
        auto opened = store::Store::open(half, store::OpenMode::ReadWrite);
        if (!opened) {
            return opened.fault();
        }
        // Told last: a file that was left half made is not taken for a demo, nor for anything else.
        if (const Outcome told = opened.value()->setSetting(builtKey, toRfc3339(now.utc)); !told) {
            return told;
        }
    }
    std::error_code failed;
    fs::rename(half, file, failed);
    return failed ? Outcome(Fault{FaultKind::Unwritable, failed.message()}) : Outcome(Done{});
}

} // namespace mend::service
