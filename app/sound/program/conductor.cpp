#include "app/sound/program/conductor.h"

#include <algorithm>
#include <utility>

namespace mend::sound {

Conductor::Conductor(pa_mainloop_api& api, std::string engine, Performance::Tell tell)
    : m_api(api), m_voice{std::move(engine), "en"}, m_tell(std::move(tell)), m_sweep(api),
      m_connection(std::make_unique<Connection>(
          api, Connection::Events{[this] { settled(); }, [this](Unheard why) { lost(why); }}))
{
    m_connection->look();
}

Conductor::~Conductor() { m_performances.clear(); }

void Conductor::obey(const Command& command)
{
    if (const auto* asked = std::get_if<Play>(&command)) {
        play(*asked);
    } else if (const auto* wanted = std::get_if<Say>(&command)) {
        m_unsaid.push_back(*wanted);
        sayNext();
    } else if (std::holds_alternative<Stop>(command)) {
        cutAll(Unheard::Stopped);
    } else if (const auto* use = std::get_if<UseDevice>(&command)) {
        m_connection->useDevice(use->name);
    } else if (const auto* voice = std::get_if<UseVoice>(&command)) {
        m_voice.language = voice->language.empty() ? "en" : voice->language;
    } else if (std::holds_alternative<ListDevices>(command)) {
        m_isListWanted = true;
        m_connection->look();
    } else if (std::holds_alternative<Probe>(command)) {
        m_isStateWanted = true;
        m_connection->look();
    }
}

void Conductor::play(const Play& play)
{
    const Signal& signal = signalFor(shippedSignals(), play.tone);
    if (signal.isAlert) {
        leaveUnsaid(Unheard::Replaced); // the new burst says for itself what there is to say
    }
    for (const auto& performance : m_performances) {
        if (signal.isAlert && performance->isAlert()) {
            performance->cut(Unheard::Replaced);
        }
    }
    m_performances.push_back(std::make_unique<Performance>(m_api, *m_connection, play, signal, m_voice,
                                                           [this](const Reply& reply) { tellOf(reply); }));
    if (m_connection->isReady() && m_connection->state().state != DeviceState::NoDevice) {
        m_performances.back()->begin();
    } else {
        m_connection->look();
    }
}

/// One voice at a time: words that follow wait for the burst and the words before them.
void Conductor::sayNext()
{
    const bool isQuiet = std::ranges::all_of(m_performances, [](const auto& each) { return each->isOver(); });
    if (m_unsaid.empty() || !isQuiet) {
        return;
    }
    m_performances.push_back(std::make_unique<Performance>(m_api, *m_connection, m_unsaid.front(), m_voice,
                                                           [this](const Reply& reply) { tellOf(reply); }));
    m_unsaid.pop_front();
}

void Conductor::leaveUnsaid(Unheard why)
{
    for (const Say& say : std::exchange(m_unsaid, {})) {
        m_tell(NotSpoken{say.id, why});
    }
}

void Conductor::cutAll(Unheard why)
{
    leaveUnsaid(why);
    for (const auto& performance : m_performances) {
        performance->cut(why);
    }
}

void Conductor::tellOf(const Reply& reply)
{
    const auto* bad = std::get_if<NotHeard>(&reply);
    m_isLineDead = m_isLineDead || (bad != nullptr && bad->why == Unheard::Stalled);
    m_tell(reply);
    // What has ended may still be inside its own callback: it is swept a moment later.
    m_sweep.start(std::chrono::milliseconds(1), [this] { sweep(); });
}

void Conductor::settled()
{
    tellState();
    if (std::exchange(m_isListWanted, false)) {
        tellDevices();
    }
    if (m_connection->state().state == DeviceState::NoDevice) {
        cutAll(Unheard::NoDevice);
        return;
    }
    for (const auto& performance : m_performances) {
        performance->begin();
    }
}

void Conductor::lost(Unheard why)
{
    tellState();
    if (std::exchange(m_isListWanted, false)) {
        tellDevices();
    }
    cutAll(why);
}

void Conductor::tellState()
{
    const StateNow now = m_connection->state();
    if (std::exchange(m_isStateWanted, false) || now != m_told) {
        m_told = now;
        m_tell(now);
    }
}

void Conductor::tellDevices()
{
    for (const Device& device : m_connection->devices()) {
        m_tell(device);
    }
    m_tell(DevicesEnd{});
}

void Conductor::sweep()
{
    std::erase_if(m_performances, [](const auto& performance) { return performance->isOver(); });
    sayNext();
    if (std::exchange(m_isLineDead, false)) {
        m_connection->drop(Unheard::Stalled);
    }
}

} // namespace mend::sound
