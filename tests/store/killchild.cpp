// Taps for its life: opens a bench file, tells random acts without end, and says on its standard
// output which of them the store acknowledged. killtest.cpp kills it at a random moment.
#include "core/store/backups.h"
#include "core/store/storethread.h"

#include "tests/store/benchmaker.h"

#include <QCoreApplication>
#include <cstdlib>
#include <string>

#include <unistd.h>

using namespace mend;
using namespace mend::store;

int main(int argc, char** argv)
{
    if (argc != 4) {
        return 2;
    }
    const QCoreApplication application(argc, argv);
    const std::filesystem::path file = argv[1];
    test::EventMaker maker(static_cast<unsigned>(std::atoi(argv[2])));
    auto store = test::openOrDie(file, OpenMode::ReadWrite);
    maker.startAfter(EventId(store->nextEventId().value() - 1));
    StoreNews news;
    news.stored = [](std::span<const EventId> ids) {
        std::string line;
        for (const EventId id : ids) {
            line += std::to_string(id.value()) + ' ';
        }
        line.back() = '\n';
        // One call, so that the parent never reads half a line.
        if (::write(STDOUT_FILENO, line.data(), line.size()) < 0) {
            std::_Exit(3);
        }
    };
    StoreThread thread(std::move(store), news);
    if (std::string(argv[3]) == "backup") {
        const Instant now = std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
        thread.start(std::make_unique<BackupJob>(Backups(file.parent_path() / "backups"), now, BackupJob::Done()));
    }
    for (;;) {
        auto act = maker.some(1 + maker.upTo(2));
        for (std::size_t i = 0; i < act.size(); ++i) {
            // How many belong together, so that half an act can be told from a whole one.
            act[i].word = std::to_string(i) + " of " + std::to_string(act.size());
        }
        thread.append(std::move(act));
        if (!thread.waitUntilStored(std::chrono::seconds(10))) {
            return 4;
        }
    }
}
