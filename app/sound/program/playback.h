#pragma once

#include "app/sound/lines.h"
#include "app/sound/program/operations.h"
#include "app/sound/program/timer.h"

#include <functional>
#include <memory>
#include <optional>
#include <pulse/context.h>
#include <pulse/stream.h>
#include <string>

namespace mend::sound {

/// One stretch of samples on its way to the sink, from the hand-over to the last one played.
/// It ends exactly once: heard whole (no reason), or with the reason it was not.
/// All samples go to the server at once, so that our own process cannot starve them.
class Playback {
public:
    struct Events {
        std::function<void()> firstSample;
        std::function<void(std::optional<Unheard>)> ended; ///< do not destroy the playback inside
    };
    Playback(pa_mainloop_api& api, pa_context* context, Pcm pcm, const std::string& target, Events events);
    ~Playback() = default;
    Playback(const Playback&) = delete;
    Playback& operator=(const Playback&) = delete;

private:
    struct Release {
        void operator()(pa_stream* stream) const;
    };

    void streamChanged();
    void handOver();
    void askSilence();
    void noteSilence(bool isSilent);
    void watch();
    void noteProgress();
    void drained(bool isWhole);
    void end(std::optional<Unheard> why);

    Pcm m_pcm;
    Events m_events;
    pa_context* m_context;
    std::unique_ptr<pa_stream, Release> m_stream;
    Operations m_operations; // after the stream: cancelled before it goes
    Timer m_watch;
    std::int64_t m_taken = 0;  ///< bytes the sink has taken
    pa_usec_t m_sinkHolds = 0; ///< microseconds of samples in the sink's own store
    std::chrono::milliseconds m_stuckFor{0};
    std::chrono::milliseconds m_sounding{0};
    int m_openSilenceQuestions = 0;
    bool m_isSilent = false;
    bool m_isDrained = false;
    bool m_hasEnded = false;
};

} // namespace mend::sound
