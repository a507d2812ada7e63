#pragma once

#include "core/bench/alert.h"
#include "core/bench/alertanswer.h"
#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

namespace mend::bench::test {

/// Two pieces in hand, with windows laid down by hand: what the alerts make of them is asked, not how they came about.
class AlertsOfWindows : public testing::Test {
protected:
    AlertsOfWindows()
    {
        for (const std::int64_t id : {1, 2}) {
            PieceState& piece = bench.pieces[PieceId(id)];
            piece.piece.id = PieceId(id);
            piece.piece.benchName = id == 1 ? "Heron bowl" : "Tea cup";
        }
    }

    static Window wipe(std::int64_t piece = 1, Instant origin = noon)
    {
        Window window;
        window.piece = PieceId(piece);
        window.stage = {"wipeBack", 1};
        window.act = "Wipe back the filler";
        window.handsOn = minutes(5);
        window.opens = origin + minutes(2);
        window.closes = origin + minutes(62);
        window.latestStart = *window.closes - window.handsOn;
        window.miss = rules::Miss::Afternoon;
        Reckoning wait;
        wait.event = EventId(origin.time_since_epoch() / minutes(1));
        wait.origin = origin;
        wait.figure = minutes(2);
        Reckoning close = wait;
        close.figure = minutes(62);
        close.closing = true;
        close.result = window.closes;
        window.why = {wait, close};
        return window;
    }

    std::vector<Alert> alerts(Instant now) const { return alertsFor(bench, windows, book, now); }

    const Alert* find(const std::vector<Alert>& all, AlertKind kind, std::int64_t piece = 1) const
    {
        for (const Alert& alert : all) {
            if (alert.kind == kind && alert.piece == PieceId(piece)) {
                return &alert;
            }
        }
        return nullptr;
    }

    void answer(const std::string& key, Answered how, Instant at)
    {
        std::erase_if(bench.answers, [&](const AlertAnswer& held) { return held.key == key; });
        bench.answers.push_back({key, answeredKey(how), at, {}, PersonId(1)});
    }

    BenchFold bench;
    rules::RuleBook book;
    std::vector<Window> windows;
};

} // namespace mend::bench::test
