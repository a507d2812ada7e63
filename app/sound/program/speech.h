#pragma once

#include "app/sound/lines.h"
#include "app/sound/program/timer.h"
#include "app/sound/wav.h"

#include <functional>
#include <string>
#include <sys/types.h>
#include <variant>
#include <vector>

namespace mend::sound {

/// Has a speech engine write words as samples. The engine is a child process that is
/// given `limit` and then ended, so it can neither hang nor crash the tones.
/// It is called as `ENGINE --stdout -v LANGUAGE -- WORDS` and writes a WAVE to its output.
class Speech {
public:
    static constexpr std::chrono::seconds limit{5};
    using Outcome = std::variant<Pcm, Unheard>; ///< NoEngine or LateEngine

    /// `done` comes once, never from within the constructor; do not destroy the speech inside it.
    Speech(pa_mainloop_api& api, const std::string& engine, const std::string& language, const std::string& words,
           std::function<void(Outcome)> done);
    ~Speech();
    Speech(const Speech&) = delete;
    Speech& operator=(const Speech&) = delete;

private:
    void takeOutput();
    void finish(Outcome outcome);
    void endEngine();

    pa_mainloop_api& m_api;
    std::function<void(Outcome)> m_done;
    Timer m_limit;
    pid_t m_engine = -1;
    int m_output = -1;
    pa_io_event* m_readable = nullptr;
    std::vector<std::uint8_t> m_wav;
};

} // namespace mend::sound
