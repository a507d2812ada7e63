#pragma once

#include "app/sound/program/connection.h"
#include "app/sound/program/performance.h"

#include <deque>
#include <memory>
#include <string>
#include <vector>

namespace mend::sound {

/// Takes the program's requests, keeps one alert sounding at a time, and tells what became of each.
class Conductor {
public:
    Conductor(pa_mainloop_api& api, std::string engine, Performance::Tell tell);
    ~Conductor();
    Conductor(const Conductor&) = delete;
    Conductor& operator=(const Conductor&) = delete;

    void obey(const Command& command);

private:
    void play(const Play& play);
    void sayNext();
    void leaveUnsaid(Unheard why);
    void cutAll(Unheard why);
    void settled();
    void lost(Unheard why);
    void tellOf(const Reply& reply);
    void tellState();
    void tellDevices();
    void sweep();

    pa_mainloop_api& m_api;
    Performance::Voice m_voice;
    Performance::Tell m_tell;
    Timer m_sweep;
    std::unique_ptr<Connection> m_connection;
    std::vector<std::unique_ptr<Performance>> m_performances;
    std::deque<Say> m_unsaid; ///< waits until nothing else sounds
    StateNow m_told;
    bool m_isListWanted = false;
    bool m_isStateWanted = false;
    bool m_isLineDead = false;
};

} // namespace mend::sound
