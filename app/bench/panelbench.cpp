// Pages of the panel that are about the bench: places, mixes, people, sound.
#include "app/bench/panel.h"

#include <QLocale>
#include <algorithm>

namespace mend::app {

namespace {
constexpr int mostDigits = 6;

/// What was typed, as a number; our own pad only ever types a point.
std::optional<double> typedNumber(const QString& typed)
{
    bool read = false;
    const double number = QLocale::c().toDouble(typed, &read);
    return read && std::isfinite(number) ? std::optional(number) : std::nullopt;
}
} // namespace

void Panel::openPlace(PlaceId place)
{
    m_temperature.reset();
    open([this, place] { return readingPage(place); });
}

void Panel::openPlaces()
{
    open([this] {
        PanelPage page;
        page.title = tr("Which place has been read?");
        for (const auto& place : m_picture.extras.places) {
            const QString last =
                place.temperature ? service::temperatureWords(*place.temperature, m_picture.manner) : tr("no reading");
            page.choices.push_back({QStringLiteral("place/%1").arg(place.place.value()), place.name, last,
                                    [this, id = place.place] { openPlace(id); }, true});
        }
        return page;
    });
}

PanelPage Panel::readingPage(PlaceId place)
{
    const auto& places = m_picture.extras.places;
    const auto found = std::ranges::find(places, place, &PlaceNow::place);
    PanelPage page;
    const QString name = found == places.end() ? tr("Place") : found->name;
    const bool humidity = m_temperature.has_value();
    page.title = humidity ? tr("%1: humidity").arg(name) : tr("%1: temperature").arg(name);
    const QString unit = humidity ? tr("%") : m_picture.manner.fahrenheit ? tr("°F") : tr("°C");
    page.figure = m_typed.isEmpty() ? tr("– %1").arg(unit) : tr("%1 %2").arg(m_typed, unit);
    page.pad = true;
    page.comma = true;
    page.typed = [this, place](QChar key) { typeReading(place, key); };
    page.choices.push_back(
        {QStringLiteral("reading/keep"), tr("That is the reading"), {}, [this, place] { readOn(place); }, true});
    if (humidity) {
        page.choices.push_back(
            {QStringLiteral("reading/nohumidity"),
             tr("Without humidity"),
             {},
             closing([this, place, t = *m_temperature] { Q_EMIT m_told.readingEntered(place, t, std::nullopt); }),
             false});
    } else {
        page.choices.push_back({QStringLiteral("reading/sign"),
                                tr("Below zero"),
                                {},
                                [this, place] { typeReading(place, QLatin1Char('-')); },
                                false});
    }
    return page;
}

void Panel::typeReading(PlaceId place, QChar key)
{
    if (key == QLatin1Char('<')) {
        m_typed.chop(1);
    } else if (key == QLatin1Char('-')) {
        m_typed = m_typed.startsWith(key) ? m_typed.mid(1) : key + m_typed;
    } else if (m_typed.size() < mostDigits && !(key == QLatin1Char('.') && m_typed.contains(key))) {
        m_typed += key;
    }
    m_page = readingPage(place);
    compose();
}

void Panel::readOn(PlaceId place)
{
    const auto number = typedNumber(m_typed);
    const auto& places = m_picture.extras.places;
    const auto found = std::ranges::find(places, place, &PlaceNow::place);
    if (!number || found == places.end()) {
        return;
    }
    if (m_temperature) {
        if (*number < 0.0 || *number > 100.0) {
            return;
        }
        const Temperature temperature = *m_temperature;
        close();
        Q_EMIT m_told.readingEntered(place, temperature, percentHumidity(*number));
        return;
    }
    const Temperature temperature =
        m_picture.manner.fahrenheit ? Temperature::fromFahrenheit(*number) : Temperature::fromCelsius(*number);
    if (temperature < Temperature::fromCelsius(-30.0) || temperature > Temperature::fromCelsius(150.0)) {
        return;
    }
    if (found->takesHumidity) {
        m_temperature = temperature;
        open([this, place] { return readingPage(place); });
        return;
    }
    close();
    Q_EMIT m_told.readingEntered(place, temperature, std::nullopt);
}

PanelPage Panel::mixPage(MixId mix)
{
    PanelPage page;
    const auto& mixes = m_picture.board.mixes;
    const auto found = std::ranges::find(mixes, mix, &bench::MixCard::mix);
    if (found == mixes.end()) {
        page.title = tr("This mix is over");
        return page;
    }
    page.title = tr("%1 mix").arg(service::text(found->materialName));
    QStringList on;
    for (const PieceId piece : found->on) {
        on << pieceName(piece);
    }
    page.text << service::joined(
        {tr("mixed %1").arg(service::clockTime(found->mixedAt, m_picture.now, m_picture.manner)),
         found->stiffAt ? tr("stiff by %1").arg(service::clockTime(*found->stiffAt, m_picture.now, m_picture.manner))
                        : QString(),
         found->batch.empty() ? QString() : tr("batch %1").arg(service::text(found->batch))});
    page.text << (on.isEmpty() ? tr("On nothing yet.") : tr("On %1.").arg(on.join(QStringLiteral(", "))));
    const auto end = [this, mix](const char* how) {
        return closing([this, mix, how] { Q_EMIT m_told.mixEnded(mix, QLatin1String(how)); });
    };
    page.choices.push_back({QStringLiteral("mixend/stiff"), tr("It is stiff"), {}, end("stiff"), true});
    page.choices.push_back({QStringLiteral("mixend/used"), tr("It is used up"), {}, end("usedUp"), true});
    page.choices.push_back({QStringLiteral("mixend/away"), tr("Thrown away"), {}, end("thrownAway"), true});
    return page;
}

void Panel::openMixKinds()
{
    open([this] {
        PanelPage page;
        page.title = tr("What is being mixed now?");
        for (const auto& kind : m_picture.extras.mixKinds) {
            page.choices.push_back({QStringLiteral("mixing/") + kind.material, kind.tile,
                                    kind.batch.isEmpty() ? QString() : tr("batch %1").arg(kind.batch),
                                    closing([this, material = kind.material] { Q_EMIT m_told.mixStarted(material); }),
                                    true});
            if (!kind.advice.isEmpty()) {
                page.text << tr("%1: %2").arg(kind.tile, kind.advice);
            }
        }
        return page;
    });
}

void Panel::openPeople()
{
    open([this] {
        PanelPage page;
        const auto& extras = m_picture.extras;
        page.title = tr("Who is at the bench?");
        page.text << nextForTheseHands();
        for (const auto& person : extras.people) {
            const bool here = person.id == extras.atBench;
            page.choices.push_back({QStringLiteral("person/%1").arg(person.id.value()), service::isolated(person.name),
                                    here ? tr("at the bench now") : QString(),
                                    closing([this, id = person.id] { Q_EMIT m_told.personChosen(id); }), here});
        }
        page.choices.push_back(
            {QStringLiteral("person/away"), extras.away ? tr("I am back") : tr("I am away for a while"),
             m_picture.board.freeUntil
                 ? tr("free until %1")
                       .arg(service::clockTime(*m_picture.board.freeUntil, m_picture.now, m_picture.manner))
                 : QString(),
             closing([this, away = !extras.away] { Q_EMIT m_told.awayTold(away); }), false});
        page.choices.push_back({QStringLiteral("person/closing"), tr("Closing for today"), tr("before you go"),
                                [this] { openClosing(); }, false});
        page.choices.push_back({QStringLiteral("person/hide"),
                                m_picture.hideOwners ? tr("Show owners' names") : tr("Hide owners' names"),
                                {},
                                closing([this, hide = !m_picture.hideOwners] { Q_EMIT m_told.ownersHidden(hide); }),
                                false});
        page.choices.push_back({QStringLiteral("person/wipe"), tr("Wipe the glass"), tr("20 s without touch"),
                                closing([this] { Q_EMIT glassWipeWanted(); }), false});
        addStates(page);
        return page;
    });
}

/// What has to be done first by whoever turns away; empty where nothing closes.
QStringList Panel::nextForTheseHands() const
{
    const auto& until = m_picture.board.freeUntil;
    for (const bench::Window& window : m_picture.board.windows) {
        if (until && window.latestStart == until && !window.begunAt) {
            return {tr("First: %1, start by %2")
                        .arg(titleFor(window.piece, service::text(window.act)),
                             service::clockTime(*until, m_picture.now, m_picture.manner))};
        }
    }
    return {};
}

void Panel::openClosing()
{
    open([this] {
        PanelPage page;
        page.title = tr("Closing for today");
        page.text = m_details ? m_details->nightAhead() : QStringList();
        for (const PlaceNow& place : m_picture.extras.places) {
            if (place.heated && place.taken > 0 && (place.stale || !place.readAt)) {
                page.choices.push_back({QStringLiteral("closing/read/%1").arg(place.place.value()),
                                        tr("Read the %1 first").arg(place.name), tr("its reading is too old"),
                                        [this, id = place.place] { openPlace(id); }, false});
            }
        }
        page.choices.push_back({QStringLiteral("closing/away"),
                                tr("The bench is left"),
                                {},
                                closing([this] { Q_EMIT m_told.awayTold(true); }),
                                true});
        return page;
    });
}

void Panel::openStanding()
{
    open([this] {
        PanelPage page;
        page.title = tr("What hangs over the bench");
        for (const auto& finding : m_picture.board.standing) {
            page.text << service::hazardWords(finding, m_picture.names, m_picture.now, m_picture.manner);
        }
        if (page.text.isEmpty()) {
            page.text << tr("Nothing.");
        }
        addStates(page);
        return page;
    });
}

void Panel::addStates(PanelPage& page)
{
    const auto states = m_details ? m_details->states() : std::vector<StateTold>();
    for (const StateTold& state : states) {
        page.choices.push_back({QStringLiteral("state/%1/%2").arg(state.state).arg(state.begins ? 1 : 0),
                                state.words,
                                {},
                                closing([this, state] { Q_EMIT m_told.stateTold(state.state, state.begins); }),
                                false});
    }
}

void Panel::openPutOff()
{
    open([this] {
        PanelPage page;
        page.title = tr("Put off on purpose");
        for (const PutOffNow& each : m_picture.extras.putOff) {
            page.text << (each.until ? tr("%1: calls again at %2")
                                           .arg(titleFor(each.piece, each.act),
                                                service::clockTime(*each.until, m_picture.now, m_picture.manner))
                                     : titleFor(each.piece, each.act));
            page.choices.push_back({QStringLiteral("callnow/") + each.key, tr("Call me now"),
                                    titleFor(each.piece, each.act),
                                    closing([this, key = each.key] { Q_EMIT m_told.calledBack(key); }), false});
        }
        if (page.text.isEmpty()) {
            page.text << tr("Nothing.");
        }
        return page;
    });
}

void Panel::openSound()
{
    open([this] {
        PanelPage page;
        const auto& sound = m_picture.extras.sound;
        page.title = tr("Sound");
        const bool paused = sound.state == SoundNow::State::Paused;
        if (sound.state == SoundNow::State::NoDevice) {
            page.text << tr("No sound can be played on this device. Windows are shown as before.");
        }
        if (sound.state == SoundNow::State::Off) {
            page.text << tr("Sound is off in Settings. Alerts are only seen.");
        }
        if (sound.nextAlert) {
            page.text << tr("The next alert is due at %1.")
                             .arg(service::clockTime(*sound.nextAlert, m_picture.now, m_picture.manner));
        }
        page.choices.push_back({QStringLiteral("sound/pause"), paused ? tr("Sound again") : tr("Pause all sound"),
                                paused ? QString() : tr("10 min at most"),
                                closing([this, pause = !paused] { Q_EMIT m_told.soundPaused(pause); }), true});
        return page;
    });
}

} // namespace mend::app
