#pragma once

#include "app/sound/program/connection.h"
#include "app/sound/program/playback.h"
#include "app/sound/program/speech.h"

#include <functional>
#include <memory>
#include <optional>

namespace mend::sound {

/// One sound from request to end: the burst, a short gap, then the words where there are any.
/// Words are made while the burst sounds; what goes wrong with them never touches the burst.
class Performance {
public:
    /// Between burst and words; opening the second stream adds a little, and 0.3 to 1.0 s is the aim.
    static constexpr std::chrono::milliseconds gapBeforeWords{400};

    struct Voice {
        std::string engine;
        std::string language;
    };
    using Tell = std::function<void(const Reply&)>;

    Performance(pa_mainloop_api& api, const Connection& connection, Play play, const Signal& signal, const Voice& voice,
                Tell tell);

    /// Words alone, to be said after a burst that has sounded.
    Performance(pa_mainloop_api& api, const Connection& connection, const Say& say, const Voice& voice, Tell tell);

    std::int64_t id() const { return m_play.id; }
    bool isAlert() const { return m_isAlert; }
    /// A performance waits until the connection is ready; then this begins it.
    void begin();
    /// Ends what is left of it with the reason.
    void cut(Unheard why);
    bool isOver() const { return m_isBurstOver && m_areWordsOver; }

private:
    void makeWords(const Voice& voice);
    void burstEnded(std::optional<Unheard> why);
    void sayWhenReady();
    void wordsEnded(std::optional<Unheard> why);

    pa_mainloop_api& m_api;
    const Connection& m_connection;
    Play m_play;
    Pcm m_burstPcm;
    bool m_isAlert;
    Tell m_tell;
    Timer m_gap;
    std::unique_ptr<Speech> m_speech;
    std::optional<Pcm> m_words;
    std::unique_ptr<Playback> m_burst;
    std::unique_ptr<Playback> m_spoken;
    bool m_isBurstOver = false;
    bool m_isGapOver = false;
    bool m_areWordsOver = false;
};

} // namespace mend::sound
