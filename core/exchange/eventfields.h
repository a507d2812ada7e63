#pragma once

// What an event, a place and the like are made of, by name, for exports; see core/record/form.h.

#include "core/bench/event.h"
#include "core/record/fields.h"

namespace mend::record {

inline constexpr std::array<FormWord<PlaceKind>, 6> placeKindWords{{{PlaceKind::Bench, "bench"},
                                                                    {PlaceKind::Shelf, "shelf"},
                                                                    {PlaceKind::Cabinet, "cabinet"},
                                                                    {PlaceKind::HumidBox, "humidBox"},
                                                                    {PlaceKind::Tray, "tray"},
                                                                    {PlaceKind::Outside, "outside"}}};

template <class Form> void fields(Form& form, Place& place)
{
    form.id("id", place.id);
    form.text("name", place.name);
    form.choice("kind", place.kind, placeKindWords, PlaceKind::Bench);
    form.number("slots", place.slots, 0);
}

} // namespace mend::record

namespace mend::bench {

/// The temperature as a whole number, so that it can be left out and is never rounded.
struct EventNumbers {
    std::optional<std::int64_t> temperature;
    std::optional<std::int64_t> humidity;
    std::optional<std::int64_t> sinceBoot;
};

template <class Form> void fields(Form& form, Event& event)
{
    EventNumbers numbers;
    if (event.temperature) {
        numbers.temperature = event.temperature->centidegrees();
    }
    if (event.humidity) {
        numbers.humidity = event.humidity->count();
    }
    numbers.sinceBoot = event.boot.sinceBoot.count();
    int what = static_cast<int>(event.what);
    form.id("id", event.id);
    form.number("what", what, 0);
    form.id("piece", event.piece);
    form.text("stage", event.stage.stage);
    form.number("repetition", event.stage.repetition, 1);
    form.id("person", event.person);
    form.id("place", event.place);
    form.id("mix", event.mix);
    form.text("rules", event.rules);
    form.instant("happened", event.happened);
    form.instant("recorded", event.recorded);
    form.text("boot", event.boot.bootId);
    form.number("sinceBootNs", numbers.sinceBoot);
    form.id("target", event.target);
    form.number("temperatureCc", numbers.temperature);
    form.number("humidityCp", numbers.humidity);
    form.number("amount", event.amount);
    form.instant("from", event.from);
    form.instant("until", event.until);
    form.text("word", event.word);
    form.text("note", event.note);
    event.what = static_cast<What>(what);
    event.boot.sinceBoot = std::chrono::nanoseconds(numbers.sinceBoot.value_or(0));
    event.temperature.reset();
    if (numbers.temperature) {
        event.temperature = Temperature::fromCentidegrees(*numbers.temperature);
    }
    event.humidity.reset();
    if (numbers.humidity) {
        event.humidity = Humidity::fromCount(*numbers.humidity);
    }
}

} // namespace mend::bench
