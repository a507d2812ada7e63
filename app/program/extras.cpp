#include "app/program/extras.h"

#include "core/service/reachwording.h"
#include "core/service/toldwording.h"

#include <algorithm>

namespace mend::app {

using bench::What;
using service::text;

namespace {

PlaceNow placeNow(const record::Place& place, const bench::BenchFold& bench, Instant now)
{
    PlaceNow shown;
    shown.place = place.id;
    shown.name = text(place.name);
    shown.slots = place.slots;
    shown.heated = place.kind == record::PlaceKind::Cabinet || place.kind == record::PlaceKind::HumidBox;
    shown.takesHumidity = place.kind == record::PlaceKind::HumidBox || place.kind == record::PlaceKind::Bench;
    if (const auto air = bench.air.find(place.id); air != bench.air.end()) {
        for (const cure::Reading& reading : air->second.forClosings.readings) {
            if (reading.at <= now) {
                shown.temperature = reading.temperature;
                shown.humidity = reading.humidity;
                shown.readAt = reading.at;
                shown.stale = now - reading.at > air->second.forClosings.maxAge;
            }
        }
    }
    shown.taken = static_cast<int>(
        std::ranges::count_if(bench.pieces, [&](const auto& held) { return held.second.placeAt(now) == place.id; }));
    return shown;
}

/// The kinds of mix that the pieces in hand still need, each with how far it goes.
std::vector<MixKind> mixKinds(const service::BenchService& service, const service::Manner& manner, Instant now)
{
    const bench::Board& board = service.board();
    const service::Names names = service::namesOf(board);
    std::vector<MixKind> kinds;
    for (const bench::Reach& reach : board.reaches) {
        const rules::Material* material = service.book().material(reach.material);
        if (!material) {
            continue;
        }
        MixKind kind{text(reach.material),
                     text(material->tile),
                     {},
                     service::reachShort(reach, manner),
                     service::reachWords(reach, names, manner)};
        Instant last = Instant::min();
        for (const auto& [id, mix] : service.bench().mixes) {
            if (mix.material == reach.material && mix.mixedAt > last && mix.mixedAt <= now) {
                last = mix.mixedAt;
                kind.batch = text(mix.batch);
            }
        }
        kinds.push_back(kind);
    }
    return kinds;
}

SoundNow soundNow(const service::AlertService& alerts, bool works, Instant now)
{
    SoundNow sound;
    const service::SoundWishes& wishes = alerts.wishes();
    if (wishes.off) {
        sound.state = SoundNow::State::Off;
    } else if (wishes.pausedUntil && *wishes.pausedUntil > now) {
        sound.state = SoundNow::State::Paused;
        sound.pausedUntil = wishes.pausedUntil;
    } else if (!works) {
        sound.state = SoundNow::State::NoDevice;
    }
    for (const bench::Alert& alert : alerts.alerts()) {
        if (alert.due > now && (!sound.nextAlert || alert.due < *sound.nextAlert)) {
            sound.nextAlert = alert.due;
        }
    }
    return sound;
}

std::vector<Flashing> flashing(const service::AlertService& alerts)
{
    std::vector<Flashing> blocks;
    for (const bench::VisibleAlert& visible : alerts.decision().visible) {
        const bool flashes = bench::milliHertz(visible.look) > 0; // one of all: the others need no looking up
        const bench::Alert* alert = flashes ? alerts.alert(visible.key) : nullptr;
        if (alert) {
            blocks.push_back({alert->piece, visible.urgency});
        }
    }
    return blocks;
}

std::vector<PutOffNow> putOffNow(const service::AlertService& alerts)
{
    std::vector<PutOffNow> shown;
    for (const bench::ShelvedAlert& shelved : alerts.decision().shelved) {
        if (const bench::Alert* alert = alerts.alert(shelved.key)) {
            shown.push_back({text(alert->key), alert->piece, text(alert->act), shelved.until});
        }
    }
    std::ranges::stable_sort(shown, {}, [](const PutOffNow& each) { return each.until.value_or(Instant::max()); });
    return shown;
}

std::vector<UndoOffer> undoOffers(const service::BenchService& bench, const service::Manner& manner, Instant now)
{
    const auto offer = bench.undoOffer(now);
    if (!offer || offer->events.empty()) {
        return {};
    }
    const auto told = std::ranges::find(bench.events(), offer->events.front(), &bench::Event::id);
    if (told == bench.events().end()) {
        return {};
    }
    UndoOffer shown;
    shown.piece = offer->piece;
    shown.event = told->id;
    shown.told = service::toldWords(*told, bench.bench(), bench.book(), manner);
    shown.until = offer->until;
    if (told->what == What::MixStarted) {
        shown.spot = QStringLiteral("mixnow/") + text(told->word);
    } else if (told->what == What::ReadingTaken) {
        shown.spot = QStringLiteral("place/%1").arg(told->place.value());
    }
    return {shown};
}

} // namespace

Extras extrasOf(const service::BenchService& service, const service::AlertService& alerts,
                const service::Manner& manner, bool soundWorks, Instant now)
{
    const bench::BenchFold& bench = service.bench();
    Extras extras;
    for (const record::Place& place : bench.roster.places) {
        const auto air = bench.air.find(place.id);
        const bool wasRead = air != bench.air.end() && !air->second.forWaits.readings.empty();
        if (place.kind != record::PlaceKind::Outside && (wasRead || place.kind != record::PlaceKind::Tray)) {
            extras.places.push_back(placeNow(place, bench, now));
        }
    }
    extras.mixKinds = mixKinds(service, manner, now);
    for (const record::Person& person : bench.roster.people) {
        extras.people.push_back({person.id, text(person.name)});
    }
    extras.atBench = service.atBench();
    extras.away = bench.awaySince.has_value();
    extras.sound = soundNow(alerts, soundWorks, now);
    extras.flashing = flashing(alerts);
    extras.putOff = putOffNow(alerts);
    extras.pending = service.notStoredYet();
    extras.undo = undoOffers(service, manner, now);
    if (alerts.counting()) {
        extras.counting = CountedNow{alerts.counting()->piece, alerts.counting()->until};
    }
    return extras;
}

} // namespace mend::app
