#pragma once

#include "core/bench/acts.h"
#include "core/bench/card.h"

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

namespace mend::test {

/// A bench for tests: pieces, places and a thermometer, told things at given minutes.
/// Minute 0 is 2027-03-01 09:00 UTC; the room is at the temperature given.
class TestBench {
public:
    explicit TestBench(rules::RuleBook book, double roomCelsius = 23.0) : m_book(std::move(book))
    {
        using record::PlaceKind;
        m_roster.places = {{benchPlace, "Bench", PlaceKind::Bench, 0},
                           {shelf, "Shelf", PlaceKind::Shelf, 0},
                           {cabinet, "Cabinet", PlaceKind::Cabinet, 4},
                           {humidBox, "Humid box", PlaceKind::HumidBox, 6},
                           {tray, "Gold tray", PlaceKind::Tray, 1}};
        m_roster.people = {{PersonId(1), "Mender"}};
        m_roster.customers = {{CustomerId(1), "Owner", "owner@example.org"}};
        for (const PlaceId place : {benchPlace, shelf, tray}) {
            read(place, roomCelsius, 45, -1);
        }
    }

    static constexpr PlaceId benchPlace{1};
    static constexpr PlaceId shelf{2};
    static constexpr PlaceId cabinet{3};
    static constexpr PlaceId humidBox{4};
    static constexpr PlaceId tray{5};

    static Instant at(double minute)
    {
        using namespace std::chrono;
        return Instant(sys_days(year(2027) / March / 1) + hours(9)) +
               milliseconds(static_cast<std::int64_t>(minute * 60000.0));
    }

    record::Piece& add(const std::string& procedure, double minute = 0, double chipCm = 3, double seamCm = 6)
    {
        record::Piece piece;
        piece.id = PieceId(static_cast<std::int64_t>(m_roster.pieces.size()) + 1);
        piece.number = "27000" + std::to_string(piece.id.value());
        piece.benchName = "Piece " + std::to_string(piece.id.value());
        piece.owner = CustomerId(1);
        piece.procedure = procedure;
        piece.body = record::Body::Vitrified;
        piece.fragments = 4;
        piece.chip = centimetres(chipCm);
        piece.seam = centimetres(seamCm);
        m_roster.pieces.push_back(piece);
        bench::Event agreed = event(bench::What::Agreed, minute);
        agreed.piece = piece.id;
        agreed.place = benchPlace;
        if (const rules::Procedure* found = m_book.procedure(procedure)) {
            agreed.rules = found->hash;
        }
        tell(agreed);
        return m_roster.pieces.back();
    }

    bench::Event event(bench::What what, double minute) const
    {
        bench::Event event;
        event.what = what;
        event.person = PersonId(1);
        event.happened = event.recorded = at(minute);
        event.boot = {"boot", std::chrono::minutes(600) +
                                  std::chrono::duration_cast<std::chrono::nanoseconds>(at(minute) - at(0))};
        return event;
    }

    EventId tell(bench::Event event)
    {
        event.id = EventId(static_cast<std::int64_t>(m_events.size()) + 1);
        if (event.what == bench::What::MixStarted) {
            event.mix = MixId(event.id.value());
        }
        m_events.push_back(event);
        return event.id;
    }

    EventId read(PlaceId place, double celsius, double percent, double minute)
    {
        bench::Event reading = event(bench::What::ReadingTaken, minute);
        reading.place = place;
        reading.temperature = Temperature::fromCelsius(celsius);
        reading.humidity = percentHumidity(percent);
        return tell(reading);
    }

    EventId stage(bench::What what, PieceId piece, const std::string& key, double minute, int repetition = 1,
                  MixId mix = {}, PlaceId place = {})
    {
        bench::Event act = event(what, minute);
        act.piece = piece;
        act.stage = {key, repetition};
        act.mix = mix;
        act.place = place;
        return tell(act);
    }

    EventId done(PieceId piece, const std::string& key, double minute, int repetition = 1, MixId mix = {},
                 PlaceId place = {})
    {
        return stage(bench::What::Done, piece, key, minute, repetition, mix, place);
    }

    EventId begun(PieceId piece, const std::string& key, double minute, int repetition = 1, MixId mix = {})
    {
        return stage(bench::What::Begun, piece, key, minute, repetition, mix);
    }

    MixId mix(const std::string& material, double minute)
    {
        bench::Event started = event(bench::What::MixStarted, minute);
        started.word = material;
        return MixId(tell(started).value());
    }

    EventId voidEvent(EventId target, double minute)
    {
        bench::Event gone = event(bench::What::Voided, minute);
        gone.target = target;
        return tell(gone);
    }

    /// Tells every stage before `key` as done, one a minute, starting at `minute`; the minute after the last.
    double upTo(PieceId piece, const std::string& key, double minute)
    {
        const bench::BenchFold folded = fold();
        const rules::Procedure* procedure = bench::procedureOf(*folded.piece(piece), m_book);
        for (const rules::Stage& each : procedure->stages) {
            if (each.key == key) {
                break;
            }
            if (each.byItself || bench::isPassedOver(each, *folded.piece(piece))) {
                continue;
            }
            for (int rep = 1; rep <= bench::repetitionsOf(each, *folded.piece(piece), m_book); ++rep) {
                done(piece, each.key, minute, rep);
                minute += 1;
            }
        }
        return minute;
    }

    bench::BenchFold fold() const { return bench::fold(m_roster, m_events, m_book); }
    bench::Board board(double minute) const { return bench::boardOf(fold(), m_book, at(minute)); }
    std::vector<bench::Window> windows(double minute) const { return bench::windowsOf(fold(), m_book, at(minute)); }
    std::optional<bench::Window> window(PieceId piece, const std::string& key, double minute, int repetition = 1) const
    {
        for (const bench::Window& each : windows(minute)) {
            if (each.piece == piece && each.stage == bench::StageInstance{key, repetition}) {
                return each;
            }
        }
        return std::nullopt;
    }
    std::optional<bench::Card> card(PieceId piece, double minute) const
    {
        for (const bench::Card& each : board(minute).cards) {
            if (each.piece == piece) {
                return each;
            }
        }
        return std::nullopt;
    }

    bench::Roster& roster() { return m_roster; }
    const rules::RuleBook& book() const { return m_book; }
    std::vector<bench::Event>& events() { return m_events; }

private:
    rules::RuleBook m_book;
    bench::Roster m_roster;
    std::vector<bench::Event> m_events;
};

/// Minutes after minute 0, for reading failures.
inline double minuteOf(std::optional<Instant> instant)
{
    return instant ? std::chrono::duration<double, std::ratio<60>>(*instant - TestBench::at(0)).count() : -1.0;
}

} // namespace mend::test
