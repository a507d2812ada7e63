#pragma once

#include "app/shell/doorlink.h"
#include "tests/record/somepage.h"
#include "tests/spaces/spacewalk.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QElapsedTimer>

namespace mend::app {

/// The window on a bench file of its own, with the file's thread and the door, as the program puts them together.
struct DoorHouse {
    explicit DoorHouse(QSize size = {1280, 800}) : clock(test::TestBench::at(0))
    {
        store::OpenOptions options;
        options.mode = store::OpenMode::CreateIfMissing;
        auto store = store::Store::open(scratch / "bench.mend", options).takeValue();
        const rules::RuleBook book = test::shippedRules();
        for (const rules::Procedure& procedure : book.procedures) {
            EXPECT_TRUE(store->putRules({procedure.hash, "the rules of " + procedure.key}).isOk());
        }
        EXPECT_TRUE(store->put(record::Place{PlaceId(1), "Bench", record::PlaceKind::Bench, 0}).isOk());
        service::BenchRecord record;
        record.roster.places = store->places().value();
        record.next = store->nextEventId();
        bench = std::make_unique<service::BenchService>(clock, book, record,
                                                        [this](const auto& events) { thread->append(events); });
        thread = std::make_unique<store::StoreThread>(std::move(store), store::StoreNews{});
        door = std::make_unique<service::Door>(clock, *bench, *thread, service::Door::KeepRules{});
        window = std::make_unique<MainWindow>(gate.gate);
        window->resize(size);
        link =
            std::make_unique<DoorLink>(DoorLink::Services{*door, *bench, clock}, *window, gate.gate, service::Manner());
        QObject::connect(link.get(), &DoorLink::pieceWanted, link.get(), [this](PieceId piece) { wanted = piece; });
        window->show();
        window->activateWindow();
    }
    ~DoorHouse() { thread.reset(); }

    /// Lets everything that was asked be answered.
    template <class Done> bool waitFor(Done done)
    {
        QElapsedTimer waited;
        waited.start();
        while (!done() && waited.elapsed() < 10'000) {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
        }
        return done();
    }
    PieceId takeIn(const record::Intake& page)
    {
        std::optional<PieceId> taken;
        door->takeIn(page, [&taken](const Result<store::TakenIn>& result) {
            EXPECT_TRUE(result.isOk());
            taken = result ? result.value().piece : PieceId();
        });
        waitFor([&] { return taken.has_value(); });
        return taken.value_or(PieceId());
    }
    /// A page with these on it, agreed and signed.
    static record::Intake pageOf(const std::string& name, const std::string& owner, const std::string& phone,
                                 const std::string& looks = {})
    {
        record::Intake page = test::somePage();
        page.piece.benchName = name;
        page.piece.looks = looks;
        page.owner = {};
        page.owner.name = owner;
        page.owner.contact = phone;
        page.samePersonAnswered = true;
        return page;
    }
    std::string numberOf(PieceId piece) const { return bench->bench().roster.piece(piece)->number; }

    test::Scratch scratch;
    test::FakeClock clock;
    GateClock gate;
    std::unique_ptr<service::BenchService> bench;
    std::unique_ptr<store::StoreThread> thread;
    std::unique_ptr<service::Door> door;
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<DoorLink> link;
    PieceId wanted;
};

} // namespace mend::app
