#include "core/bench/night.h"

#include "core/bench/hazardcheck.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// Where no hours were told the bench is taken to be looked at again after so long (common practice, no source).
constexpr Span untoldNight = std::chrono::hours(12);

bool isWait(const Window& window, Instant now)
{
    const Phase phase = phaseOf(window, now);
    return !window.begunAt && (phase == Phase::Waiting || phase == Phase::Stalled);
}

Instant lastOpening(const Window& window) { return window.opensAtLatest.value_or(Instant::max()); }

/// One wait a piece, the one that ends first; a stalled one only where nothing else is waited for.
std::vector<Window> waitsOf(const std::vector<Window>& windows, Instant now)
{
    std::vector<Window> waits;
    for (const Window& window : windows) {
        if (!isWait(window, now)) {
            continue;
        }
        const auto known = std::ranges::find(waits, window.piece, &Window::piece);
        if (known == waits.end()) {
            waits.push_back(window);
        } else if (lastOpening(window) < lastOpening(*known)) {
            *known = window;
        }
    }
    return waits;
}

bool isHeated(record::PlaceKind kind)
{
    return kind == record::PlaceKind::Cabinet || kind == record::PlaceKind::HumidBox;
}

} // namespace

NightAhead nightAhead(const std::vector<Window>& windows, const BenchFold& bench, Instant now)
{
    NightAhead night;
    const auto opens = benchDayOf(bench.roster, now).nextOpens;
    night.isTold = opens.has_value();
    night.morning = opens.value_or(now + untoldNight);
    for (const Window& window : windows) {
        const bool closes = window.closes && *window.closes > now && *window.closes < night.morning;
        if (closes && !window.soft && !window.counted && window.miss != rules::Miss::Nothing) {
            night.closesAlone.push_back(window);
        }
    }
    std::ranges::stable_sort(night.closesAlone, [](const Window& a, const Window& b) {
        return a.miss != b.miss ? a.miss > b.miss : *a.latestStart < *b.latestStart;
    });
    for (const Window& wait : waitsOf(windows, now)) {
        (lastOpening(wait) > night.morning ? night.notCured : night.overByMorning).push_back(wait);
    }
    std::ranges::stable_sort(night.notCured, [](const Window& a, const Window& b) {
        return a.stalled != b.stalled ? a.stalled : lastOpening(a) < lastOpening(b);
    });
    std::ranges::stable_sort(night.overByMorning, {}, lastOpening);
    for (const record::Place& place : bench.roster.places) {
        const bool used =
            std::ranges::any_of(bench.pieces, [&](const auto& held) { return held.second.placeAt(now) == place.id; });
        if (isHeated(place.kind) && used) {
            night.staysOn.push_back(place.id);
        }
    }
    return night;
}

std::vector<Window> endedMeanwhile(const std::vector<Window>& windows, InstantRange away)
{
    std::vector<Window> ended;
    for (const Window& window : windows) {
        const bool over = !window.stalled && window.opens && *window.opens > away.from && *window.opens <= away.to;
        const auto known = std::ranges::find(ended, window.piece, &Window::piece);
        if (!over || window.begunAt) {
            continue;
        }
        if (known == ended.end()) {
            ended.push_back(window);
        } else if (*window.opens < *known->opens) {
            *known = window;
        }
    }
    std::ranges::stable_sort(ended, {}, [](const Window& window) { return *window.opens; });
    return ended;
}

} // namespace mend::bench
