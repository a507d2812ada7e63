#include "app/sound/program/playback.h"

#include <algorithm>
#include <pulse/introspect.h>

namespace mend::sound {
namespace {

constexpr std::chrono::milliseconds watchEach{250};
/// A person must know within 2 s that nothing sounds; the rest is for telling it.
constexpr std::chrono::milliseconds stuckLimit{1500};
/// A sink may have two seconds of silence in store before our first sample, and two more after the last.
constexpr std::chrono::milliseconds drainLimit{4000};

Playback& playbackOf(void* data) { return *static_cast<Playback*>(data); }

} // namespace

void Playback::Release::operator()(pa_stream* stream) const
{
    pa_stream_set_state_callback(stream, nullptr, nullptr);
    pa_stream_disconnect(stream);
    pa_stream_unref(stream);
}

Playback::Playback(pa_mainloop_api& api, pa_context* context, Pcm pcm, const std::string& target, Events events)
    : m_pcm(std::move(pcm)), m_events(std::move(events)), m_context(context), m_watch(api)
{
    const pa_sample_spec spec{PA_SAMPLE_S16NE, static_cast<std::uint32_t>(m_pcm.sampleRate), 1};
    const auto bytesIn = [&spec](int milliseconds) {
        return static_cast<std::uint32_t>(pa_usec_to_bytes(static_cast<pa_usec_t>(milliseconds) * 1000, &spec));
    };
    const auto none = static_cast<std::uint32_t>(-1);
    // Starts with the first 10 ms; not with 0, for such a stream never runs dry and so never drains.
    const pa_buffer_attr buffer{none, bytesIn(100), bytesIn(10), bytesIn(20), none};
    m_stream.reset(pa_stream_new(m_context, "alert", &spec, nullptr));
    m_watch.start(watchEach, [this] { watch(); });
    if (m_stream == nullptr) {
        return; // the watch ends it
    }
    pa_stream_set_state_callback(
        m_stream.get(), [](pa_stream*, void* data) { playbackOf(data).streamChanged(); }, this);
    pa_stream_connect_playback(m_stream.get(), target.empty() ? nullptr : target.c_str(), &buffer,
                               PA_STREAM_ADJUST_LATENCY, nullptr, nullptr);
}

void Playback::streamChanged()
{
    const pa_stream_state_t now = pa_stream_get_state(m_stream.get());
    if (now == PA_STREAM_READY) {
        handOver();
    } else if (!PA_STREAM_IS_GOOD(now)) {
        end(Unheard::Lost);
    }
}

void Playback::handOver()
{
    const std::size_t bytes = m_pcm.samples.size() * sizeof(std::int16_t);
    if (pa_stream_write(m_stream.get(), m_pcm.samples.data(), bytes, nullptr, 0, PA_SEEK_RELATIVE) < 0) {
        end(Unheard::Lost);
        return;
    }
    m_events.firstSample();
    m_operations.add(pa_stream_drain(
        m_stream.get(), [](pa_stream*, int isWhole, void* data) { playbackOf(data).drained(isWhole != 0); }, this));
    askSilence();
}

void Playback::askSilence()
{
    m_openSilenceQuestions += 2;
    m_operations.add(pa_context_get_sink_info_by_index(
        m_context, pa_stream_get_device_index(m_stream.get()),
        [](pa_context*, const pa_sink_info* info, int isLast, void* data) {
            if (isLast == 0) {
                playbackOf(data).noteSilence(info->mute != 0 || pa_cvolume_is_muted(&info->volume) != 0);
            } else if (isLast < 0) {
                playbackOf(data).noteSilence(true); // the sink has just gone
            }
        },
        this));
    m_operations.add(pa_context_get_sink_input_info(
        m_context, pa_stream_get_index(m_stream.get()),
        [](pa_context*, const pa_sink_input_info* info, int isLast, void* data) {
            if (isLast == 0) {
                playbackOf(data).noteSilence(info->mute != 0 || pa_cvolume_is_muted(&info->volume) != 0);
            } else if (isLast < 0) {
                playbackOf(data).noteSilence(true);
            }
        },
        this));
}

void Playback::noteSilence(bool isSilent)
{
    m_isSilent = m_isSilent || isSilent;
    --m_openSilenceQuestions;
    if (m_isDrained && m_openSilenceQuestions == 0) {
        end(m_isSilent ? std::optional(Unheard::Muted) : std::nullopt);
    }
}

void Playback::drained(bool isWhole)
{
    if (!isWhole) {
        end(Unheard::Lost);
        return;
    }
    m_isDrained = true;
    askSilence(); // it may have been silenced in the middle
}

void Playback::watch()
{
    m_stuckFor += watchEach;
    m_sounding += watchEach;
    const bool isAllTaken = m_taken >= static_cast<std::int64_t>(m_pcm.samples.size() * sizeof(std::int16_t));
    if ((m_stuckFor >= stuckLimit && !isAllTaken) || m_sounding >= m_pcm.length() + drainLimit) {
        end(Unheard::Stalled);
        return;
    }
    m_watch.start(watchEach, [this] { watch(); });
    if (m_stream != nullptr && pa_stream_get_state(m_stream.get()) == PA_STREAM_READY) {
        m_operations.add(pa_stream_update_timing_info(
            m_stream.get(),
            [](pa_stream*, int isGood, void* data) { isGood != 0 ? playbackOf(data).noteProgress() : void(); }, this));
    }
}

void Playback::noteProgress()
{
    const pa_timing_info* timing = pa_stream_get_timing_info(m_stream.get());
    if (timing == nullptr || timing->read_index_corrupt != 0) {
        return;
    }
    // Either our samples are taken, or the sink is still working off what it holds before them.
    if (timing->read_index > m_taken || timing->sink_usec != m_sinkHolds) {
        m_stuckFor = std::chrono::milliseconds(0);
    }
    m_taken = std::max<std::int64_t>(m_taken, timing->read_index);
    m_sinkHolds = timing->sink_usec;
}

void Playback::end(std::optional<Unheard> why)
{
    if (!std::exchange(m_hasEnded, true)) {
        m_watch.stop();
        m_events.ended(why);
    }
}

} // namespace mend::sound
