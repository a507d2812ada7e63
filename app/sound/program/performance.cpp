#include "app/sound/program/performance.h"

#include <utility>

namespace mend::sound {
namespace {

constexpr int sampleRate = 48000;

/// Silence before a burst: a waking sink, or one that has already passed its next few
/// milliseconds on, swallows the first of what it is given.
constexpr std::chrono::milliseconds leadIn{20};

Pcm withLeadIn(Pcm pcm)
{
    const auto silence = static_cast<std::size_t>(pcm.sampleRate * leadIn.count() / 1000);
    pcm.samples.insert(pcm.samples.begin(), silence, 0);
    return pcm;
}

std::chrono::microseconds steadyNow()
{
    return std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now().time_since_epoch());
}

} // namespace

Performance::Performance(pa_mainloop_api& api, const Connection& connection, Play play, const Signal& signal,
                         const Voice& voice, Tell tell)
    : m_api(api), m_connection(connection), m_play(std::move(play)),
      m_burstPcm(withLeadIn(render(signal, sampleRate, m_play.gain))), m_isAlert(signal.isAlert),
      m_tell(std::move(tell)), m_gap(api), m_areWordsOver(m_play.words.empty())
{
    if (!m_areWordsOver) {
        makeWords(voice);
    }
}

Performance::Performance(pa_mainloop_api& api, const Connection& connection, const Say& say, const Voice& voice,
                         Tell tell)
    : m_api(api), m_connection(connection), m_play{say.id, Tone::C, say.gain, say.words}, m_isAlert(true),
      m_tell(std::move(tell)), m_gap(api), m_isBurstOver(true), m_isGapOver(true)
{
    makeWords(voice);
}

void Performance::makeWords(const Voice& voice)
{
    m_speech =
        std::make_unique<Speech>(m_api, voice.engine, voice.language, m_play.words, [this](Speech::Outcome outcome) {
            if (auto* pcm = std::get_if<Pcm>(&outcome)) {
                m_words = std::move(*pcm);
                sayWhenReady();
            } else {
                wordsEnded(std::get<Unheard>(outcome));
            }
        });
}

void Performance::begin()
{
    if (m_burst == nullptr && !m_isBurstOver) {
        m_burst =
            std::make_unique<Playback>(m_api, m_connection.context(), std::move(m_burstPcm), m_connection.target(),
                                       Playback::Events{[this] {
                                                            m_tell(FirstSample{m_play.id, steadyNow()});
                                                        },
                                                        [this](std::optional<Unheard> why) { burstEnded(why); }});
    }
}

void Performance::burstEnded(std::optional<Unheard> why)
{
    if (std::exchange(m_isBurstOver, true)) {
        return;
    }
    if (why) {
        m_tell(NotHeard{m_play.id, *why});
        wordsEnded(*why); // words never come without the sound that leads them
        return;
    }
    m_tell(Heard{m_play.id});
    if (!m_areWordsOver) {
        m_gap.start(gapBeforeWords, [this] {
            m_isGapOver = true;
            sayWhenReady();
        });
    }
}

void Performance::sayWhenReady()
{
    if (!m_isGapOver || !m_words || m_spoken != nullptr || m_areWordsOver) {
        return;
    }
    if (!m_connection.isReady()) {
        wordsEnded(Unheard::Lost);
        return;
    }
    for (std::int16_t& sample : m_words->samples) {
        sample = static_cast<std::int16_t>(sample * asFactor(m_play.gain));
    }
    m_spoken =
        std::make_unique<Playback>(m_api, m_connection.context(), std::move(*m_words), m_connection.target(),
                                   Playback::Events{[] {}, [this](std::optional<Unheard> why) { wordsEnded(why); }});
}

void Performance::wordsEnded(std::optional<Unheard> why)
{
    if (std::exchange(m_areWordsOver, true)) {
        return;
    }
    m_gap.stop();
    m_tell(why ? Reply(NotSpoken{m_play.id, *why}) : Reply(Spoken{m_play.id}));
}

void Performance::cut(Unheard why)
{
    if (m_isBurstOver) {
        wordsEnded(why);
    } else {
        burstEnded(why);
    }
}

} // namespace mend::sound
