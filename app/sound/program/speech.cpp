#include "app/sound/program/speech.h"

#include <array>
#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>
#include <utility>

namespace mend::sound {
namespace {

/// Far more than five seconds of words need; a runaway engine is cut off here.
constexpr std::size_t mostBytes = 8U << 20U;

/// Starts the engine with its output in the pipe and everything else closed to it.
pid_t startEngine(std::vector<std::string> arguments, int output)
{
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, output, STDOUT_FILENO);
    posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    std::vector<char*> argv;
    argv.reserve(arguments.size() + 1);
    for (std::string& argument : arguments) {
        argv.push_back(argument.data());
    }
    argv.push_back(nullptr);
    pid_t pid = -1;
    const int error = posix_spawnp(&pid, argv[0], &actions, nullptr, argv.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    return error == 0 ? pid : -1;
}

} // namespace

Speech::Speech(pa_mainloop_api& api, const std::string& engine, const std::string& language, const std::string& words,
               std::function<void(Outcome)> done)
    : m_api(api), m_done(std::move(done)), m_limit(api)
{
    std::array<int, 2> ends{-1, -1};
    if (pipe2(ends.data(), O_CLOEXEC) == 0) {
        m_output = ends[0];
        fcntl(m_output, F_SETFL, O_NONBLOCK);
        m_engine = startEngine({engine, "--stdout", "-v", language, "--", words}, ends[1]);
        close(ends[1]);
    }
    if (m_engine < 0) {
        m_limit.start(std::chrono::milliseconds(1), [this] { finish(Unheard::NoEngine); });
        return;
    }
    m_limit.start(limit, [this] { finish(Unheard::LateEngine); });
    m_readable = m_api.io_new(
        &m_api, m_output, PA_IO_EVENT_INPUT,
        [](pa_mainloop_api*, pa_io_event*, int, pa_io_event_flags_t, void* self) {
            static_cast<Speech*>(self)->takeOutput();
        },
        this);
}

Speech::~Speech() { endEngine(); }

void Speech::takeOutput()
{
    std::array<std::uint8_t, 16384> block{};
    const ssize_t got = read(m_output, block.data(), block.size());
    if (got > 0) {
        m_wav.insert(m_wav.end(), block.begin(), block.begin() + got);
    }
    const bool isWaiting = got < 0 && (errno == EAGAIN || errno == EINTR);
    if ((got <= 0 && !isWaiting) || m_wav.size() > mostBytes) {
        Result<Pcm> pcm = pcmFromWav(m_wav);
        finish(pcm && !pcm.value().samples.empty() ? Outcome(pcm.takeValue()) : Outcome(Unheard::NoEngine));
    }
}

void Speech::finish(Outcome outcome)
{
    endEngine();
    const auto done = std::exchange(m_done, nullptr);
    done(std::move(outcome));
}

void Speech::endEngine()
{
    m_limit.stop();
    if (m_readable != nullptr) {
        m_api.io_free(std::exchange(m_readable, nullptr));
    }
    if (m_output >= 0) {
        close(std::exchange(m_output, -1));
    }
    if (m_engine > 0) {
        // Its words are in or given up: ending it leaves nothing behind, however stuck it is.
        kill(m_engine, SIGKILL);
        waitpid(std::exchange(m_engine, -1), nullptr, 0);
    }
}

} // namespace mend::sound
