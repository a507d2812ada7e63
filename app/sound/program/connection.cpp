#include "app/sound/program/connection.h"

#include <algorithm>
#include <pulse/subscribe.h>

namespace mend::sound {
namespace {

/// What a server shows when it has no sink at all: samples go nowhere.
constexpr std::string_view dummySink = "auto_null";

Connection& connectionOf(void* data) { return *static_cast<Connection*>(data); }

} // namespace

void Connection::Release::operator()(pa_context* context) const
{
    pa_context_set_state_callback(context, nullptr, nullptr);
    pa_context_set_subscribe_callback(context, nullptr, nullptr);
    pa_context_disconnect(context);
    pa_context_unref(context);
}

Connection::Connection(pa_mainloop_api& api, Events events)
    : m_api(api), m_events(std::move(events)), m_limit(api), m_again(api)
{
}

Connection::~Connection() { m_operations.cancel(); }

void Connection::look()
{
    if (m_context == nullptr) {
        open();
    } else if (m_isReady) {
        askServer();
    }
    // Otherwise the question is already on its way, with its limit running.
}

void Connection::lookSoon()
{
    // Changes come in swarms (a dragged slider, our own stream waking the sink): one question answers them all.
    if (!m_again.isRunning()) {
        m_again.start(std::chrono::milliseconds(50), [this] { look(); });
    }
}

void Connection::open()
{
    m_context.reset(pa_context_new(&m_api, "Mendbench"));
    m_limit.start(patience, [this] { drop(Unheard::NoServer); });
    pa_context_set_state_callback(
        m_context.get(), [](pa_context*, void* data) { connectionOf(data).contextChanged(); }, this);
    // No autospawn: starting a server is the desktop's affair, and libpulse would block while it does.
    if (pa_context_connect(m_context.get(), nullptr, PA_CONTEXT_NOAUTOSPAWN, nullptr) < 0 && m_context != nullptr) {
        // The state callback may not be called where the very first step fails.
        m_limit.start(std::chrono::milliseconds(1), [this] { drop(Unheard::NoServer); });
    }
}

void Connection::contextChanged()
{
    const pa_context_state_t now = pa_context_get_state(m_context.get());
    if (now == PA_CONTEXT_READY) {
        pa_context_set_subscribe_callback(
            m_context.get(),
            [](pa_context*, pa_subscription_event_type_t, std::uint32_t, void* data) { connectionOf(data).lookSoon(); },
            this);
        m_operations.add(pa_context_subscribe(
            m_context.get(),
            static_cast<pa_subscription_mask_t>(PA_SUBSCRIPTION_MASK_SINK | PA_SUBSCRIPTION_MASK_SERVER), nullptr,
            nullptr));
        askServer();
    } else if (!PA_CONTEXT_IS_GOOD(now)) {
        // Inside the context's own callback it may not be released yet.
        const Unheard why = m_isReady ? Unheard::Lost : Unheard::NoServer;
        m_isReady = false;
        m_limit.start(std::chrono::milliseconds(1), [this, why] { drop(why); });
    }
}

void Connection::drop(Unheard why)
{
    m_limit.stop();
    m_again.stop();
    m_operations.cancel();
    m_context.reset();
    m_isReady = false;
    m_devices.clear();
    m_state = {DeviceState::NoDevice, {}};
    m_events.lost(why);
}

void Connection::askServer()
{
    m_limit.start(patience, [this] { drop(Unheard::NoServer); });
    m_operations.cancel();
    m_arriving.clear();
    m_operations.add(pa_context_get_server_info(
        m_context.get(),
        [](pa_context*, const pa_server_info* info, void* data) {
            const char* name = info == nullptr ? nullptr : info->default_sink_name;
            connectionOf(data).m_default = name == nullptr ? "" : name;
        },
        this));
    m_operations.add(pa_context_get_sink_info_list(
        m_context.get(),
        [](pa_context*, const pa_sink_info* info, int isLast, void* data) {
            if (isLast == 0) {
                connectionOf(data).noteSink(*info);
            } else {
                connectionOf(data).takeSinks();
            }
        },
        this));
}

void Connection::noteSink(const pa_sink_info& info)
{
    if (info.name != dummySink) {
        const bool isSilent = info.mute != 0 || pa_cvolume_is_muted(&info.volume) != 0;
        m_arriving.push_back({{info.name, info.description}, isSilent});
    }
}

void Connection::takeSinks()
{
    m_limit.stop();
    m_isReady = true;
    m_devices.clear();
    for (const Sink& sink : m_arriving) {
        m_devices.push_back(sink.device);
    }
    const auto named = [this](const std::string& name) {
        return std::find_if(m_arriving.begin(), m_arriving.end(), [&](const Sink& s) { return s.device.name == name; });
    };
    auto used = named(m_wanted);
    if (used == m_arriving.end()) {
        used = named(m_default); // better heard elsewhere than not at all
    }
    if (used == m_arriving.end()) {
        m_state = {DeviceState::NoDevice, {}};
    } else {
        m_state = {used->isSilent ? DeviceState::Muted : DeviceState::Ready, used->device.name};
    }
    m_events.settled();
}

void Connection::useDevice(const std::string& name)
{
    m_wanted = name;
    look();
}

std::string Connection::target() const { return m_state.device == m_wanted ? m_wanted : std::string(); }

} // namespace mend::sound
