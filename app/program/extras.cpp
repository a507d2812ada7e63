#include "app/program/extras.h"

#include <QCoreApplication>
#include <algorithm>
#include <set>

namespace mend::app {

using bench::What;
using service::text;

namespace {

QString sayExtra(const char* words) { return QCoreApplication::translate("Extras", words); }

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

/// The kinds of mix that the pieces in hand still need.
std::vector<MixKind> mixKinds(const bench::BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    std::set<std::string> wanted;
    for (const auto& [id, piece] : bench.pieces) {
        const rules::Procedure* procedure = bench::procedureOf(piece, book);
        for (const rules::Stage& stage : procedure ? procedure->stages : std::vector<rules::Stage>{}) {
            const bench::StageRecord* told = piece.record({stage.key, bench::repetitionsOf(stage, piece, book)});
            const bool over = (told && told->isSettled()) || bench::isPassedOver(stage, piece);
            if (!stage.mix.empty() && !over) {
                wanted.insert(stage.mix);
            }
        }
    }
    std::vector<MixKind> kinds;
    for (const std::string& key : wanted) {
        const rules::Material* material = book.material(key);
        if (!material || material->tile.empty()) {
            continue;
        }
        MixKind kind{text(key), text(material->tile), {}, {}};
        Instant last = Instant::min();
        for (const auto& [id, mix] : bench.mixes) {
            if (mix.material == key && mix.mixedAt > last && mix.mixedAt <= now) {
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
        const bench::Alert* alert = alerts.alert(visible.key);
        if (alert && bench::milliHertz(visible.look) > 0) {
            blocks.push_back({alert->piece, visible.urgency});
        }
    }
    return blocks;
}

std::vector<UndoOffer> undoOffers(const service::BenchService& bench, Instant now)
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
    shown.told = factWords(*told, bench.bench(), bench.book());
    shown.until = offer->until;
    if (told->what == What::MixStarted) {
        shown.spot = QStringLiteral("mixnow/") + text(told->word);
    } else if (told->what == What::ReadingTaken) {
        shown.spot = QStringLiteral("place/%1").arg(told->place.value());
    }
    return {shown};
}

const rules::Stage* stageOf(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book)
{
    const bench::PieceState* piece = bench.piece(event.piece);
    const rules::Procedure* procedure = piece ? bench::procedureOf(*piece, book) : nullptr;
    return procedure ? procedure->find(event.stage.stage) : nullptr;
}

QString stageFact(const bench::Event& event, const rules::Stage& stage)
{
    switch (event.what) {
    case What::Begun:
        return stage.begun.empty() ? sayExtra("Begun: %1").arg(text(stage.act)) : text(stage.begun);
    case What::NotYet:
        return sayExtra("Not yet: %1").arg(text(stage.act));
    case What::Skipped:
        return sayExtra("Skipped: %1").arg(text(stage.act));
    case What::SentBack:
        return sayExtra("Sent back to: %1").arg(text(stage.act));
    case What::Missed:
        return sayExtra("Not done: %1").arg(text(stage.act));
    case What::DoingLate:
        return sayExtra("Doing it late: %1").arg(text(stage.act));
    case What::MoreToCome:
        return sayExtra("Once more: %1").arg(text(stage.act));
    case What::AlertAnswered:
        return sayExtra("Hands on it: %1").arg(text(stage.act));
    default:
        return text(stage.done);
    }
}

} // namespace

QString factWords(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book)
{
    if (const rules::Stage* stage = stageOf(event, bench, book)) {
        return stageFact(event, *stage);
    }
    const record::Place* place = bench.roster.place(event.place);
    const rules::Material* material = book.material(event.word);
    const rules::BenchState* state = book.state(event.word);
    switch (event.what) {
    case What::Placed:
        return place ? sayExtra("Put in: %1").arg(text(place->name)) : sayExtra("Moved");
    case What::MixStarted:
        return material ? sayExtra("Mixed: %1").arg(text(material->tile)) : sayExtra("Mixed");
    case What::MixEnded:
        return sayExtra("Mix ended");
    case What::ReadingTaken:
        return place ? sayExtra("Reading: %1").arg(text(place->name)) : sayExtra("Reading");
    case What::HoldBegun:
        return sayExtra("Work stopped");
    case What::HoldEnded:
        return sayExtra("Work goes on");
    case What::StateBegun:
        return state ? text(state->text) : sayExtra("Told");
    case What::StateEnded:
        return state && !state->toldOver.empty() ? text(state->toldOver) : sayExtra("Over");
    case What::HandedOver:
        return sayExtra("Handed over");
    case What::AlertAnswered:
        return sayExtra("Hands on it");
    case What::Voided:
        return sayExtra("Taken back");
    case What::Retold:
        return sayExtra("Told differently");
    case What::Noted:
        return sayExtra("Note");
    case What::PersonCame:
        return sayExtra("At the bench");
    case What::AwayBegun:
        return sayExtra("Away");
    case What::AwayEnded:
        return sayExtra("Back");
    default:
        return sayExtra("Told");
    }
}

Extras extrasOf(const service::BenchService& service, const service::AlertService& alerts, bool soundWorks, Instant now)
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
    extras.mixKinds = mixKinds(bench, service.book(), now);
    for (const record::Person& person : bench.roster.people) {
        extras.people.push_back({person.id, text(person.name)});
    }
    extras.atBench = service.atBench();
    extras.away = bench.awaySince.has_value();
    extras.sound = soundNow(alerts, soundWorks, now);
    extras.flashing = flashing(alerts);
    extras.pending = service.notStoredYet();
    extras.undo = undoOffers(service, now);
    if (alerts.counting()) {
        extras.counting = CountedNow{alerts.counting()->piece, alerts.counting()->until};
    }
    return extras;
}

} // namespace mend::app
