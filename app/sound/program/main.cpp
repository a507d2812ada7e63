#include "app/sound/program/conductor.h"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <memory>
#include <pulse/mainloop.h>
#include <string>
#include <string_view>
#include <unistd.h>

// The sound process: reads requests on its input, sounds them, and tells on its output what was
// heard. It stands apart from the program so that a sound server can hang or crash nothing else.
// When its input ends, so does it.
namespace {

using namespace mend::sound;

constexpr int exitGood = 0;
constexpr int exitBadInput = 2;

/// Cuts what arrives into lines and obeys each.
class Input {
public:
    Input(Conductor& conductor, pa_mainloop_api& api) : m_conductor(conductor), m_api(api)
    {
        fcntl(STDIN_FILENO, F_SETFL, fcntl(STDIN_FILENO, F_GETFL) | O_NONBLOCK);
        m_event = m_api.io_new(
            &m_api, STDIN_FILENO, PA_IO_EVENT_INPUT,
            [](pa_mainloop_api*, pa_io_event*, int, pa_io_event_flags_t, void* self) {
                static_cast<Input*>(self)->take();
            },
            this);
    }
    ~Input() { m_api.io_free(m_event); }
    Input(const Input&) = delete;
    Input& operator=(const Input&) = delete;

private:
    void take()
    {
        std::array<char, 4096> block{};
        const ssize_t got = read(STDIN_FILENO, block.data(), block.size());
        if (got == 0 || (got < 0 && errno != EAGAIN && errno != EINTR)) {
            m_api.quit(&m_api, exitGood);
            return;
        }
        m_text.append(block.data(), got > 0 ? static_cast<std::size_t>(got) : 0);
        std::size_t end = 0;
        while ((end = m_text.find('\n')) != std::string::npos) {
            obey(m_text.substr(0, end));
            m_text.erase(0, end + 1);
        }
    }

    void obey(const std::string& line)
    {
        const auto command = commandFrom(line);
        if (!command) {
            std::fprintf(stderr, "mendbench-sound: not understood: %.80s\n", line.c_str());
        } else if (std::holds_alternative<Quit>(*command)) {
            m_api.quit(&m_api, exitGood);
        } else {
            m_conductor.obey(*command);
        }
    }

    Conductor& m_conductor;
    pa_mainloop_api& m_api;
    pa_io_event* m_event = nullptr;
    std::string m_text;
};

int usage(FILE* where, int code)
{
    std::fputs("Sounds Mendbench's signals; started by the program itself.\n"
               "usage: mendbench-sound [--speech PROGRAM]\n"
               "Reads one request a line: play ID A|B|C|tick|pedal-taken|pedal-done GAIN_DB [WORDS],\n"
               "say ID GAIN_DB WORDS, stop, device [NAME], devices, voice LANGUAGE, probe, quit.\n"
               "PROGRAM (default espeak-ng) is called as PROGRAM --stdout -v LANGUAGE -- WORDS\n"
               "and writes a WAVE file to its output.\n",
               where);
    return code;
}

int run(const std::string& engine)
{
    const std::unique_ptr<pa_mainloop, void (*)(pa_mainloop*)> loop(pa_mainloop_new(), pa_mainloop_free);
    pa_mainloop_api& api = *pa_mainloop_get_api(loop.get());
    Conductor conductor(api, engine, [&api](const Reply& reply) {
        const std::string line = toLine(reply) + '\n';
        if (write(STDOUT_FILENO, line.data(), line.size()) < 0) {
            api.quit(&api, exitGood); // nobody listens any more
        }
    });
    const Input input(conductor, api);
    int code = exitGood;
    pa_mainloop_run(loop.get(), &code);
    return code;
}

} // namespace

int main(int argc, char** argv)
{
    std::signal(SIGPIPE, SIG_IGN);
    std::string engine = "espeak-ng";
    for (int i = 1; i < argc; ++i) {
        const std::string_view argument = argv[i];
        if (argument == "--help") {
            return usage(stdout, exitGood);
        }
        if (argument != "--speech" || i + 1 == argc) {
            return usage(stderr, exitBadInput);
        }
        engine = argv[++i];
    }
    return run(engine);
}
