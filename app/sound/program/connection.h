#pragma once

#include "app/sound/lines.h"
#include "app/sound/program/operations.h"
#include "app/sound/program/timer.h"

#include <functional>
#include <memory>
#include <pulse/context.h>
#include <pulse/introspect.h>
#include <string>
#include <vector>

namespace mend::sound {

/// The line to the sound server: finds it, notices when it goes, and knows which sink
/// would sound now. It never waits; an answer that takes longer than `patience` counts as no server.
class Connection {
public:
    static constexpr std::chrono::milliseconds patience{1500};

    struct Events {
        std::function<void()> settled;     ///< the answer to look(): state() is fresh
        std::function<void(Unheard)> lost; ///< what was open is gone
    };
    Connection(pa_mainloop_api& api, Events events);
    ~Connection();
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;

    /// Connects where there is no line, asks for the sinks, then calls settled or lost.
    void look();
    /// Gives up a line that no longer answers.
    void drop(Unheard why);
    void useDevice(const std::string& name);

    /// Knows its sinks, so that a stream can be opened at once.
    bool isReady() const { return m_isReady; }
    pa_context* context() const { return m_context.get(); }
    const StateNow& state() const { return m_state; }
    const std::vector<Device>& devices() const { return m_devices; }
    /// What to open a stream on: empty for the server's default.
    std::string target() const;

private:
    struct Sink {
        Device device;
        bool isSilent = false;
    };
    struct Release {
        void operator()(pa_context* context) const;
    };

    void open();
    void lookSoon();
    void contextChanged();
    void askServer();
    void takeSinks();
    void noteSink(const pa_sink_info& info);

    pa_mainloop_api& m_api;
    Events m_events;
    std::unique_ptr<pa_context, Release> m_context;
    Operations m_operations;
    Timer m_limit;
    Timer m_again;
    bool m_isReady = false;
    std::string m_wanted;
    std::string m_default;
    std::vector<Sink> m_arriving;
    std::vector<Device> m_devices;
    StateNow m_state;
};

} // namespace mend::sound
