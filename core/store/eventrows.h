#pragma once

#include "core/bench/event.h"
#include "core/store/recordrows.h"
#include "core/store/sqlite.h"

#include <functional>
#include <optional>
#include <vector>

namespace mend::store {

/// An event as it lies in the file, with its place in the hash chain.
struct ChainedEvent {
    bench::Event event;
    Bytes link;
};

/// Where the chain ends.
struct ChainEnd {
    std::int64_t events = 0;
    EventId last;
    Bytes link;
    bool operator==(const ChainEnd&) const = default;
};

/// Whether a file can hold the event: times within 1900 to 2200, a temperature, humidity
/// and repetition that can be, texts of reasonable length. What is wrong, else empty.
std::optional<std::string> whyNotStorable(const bench::Event& event);

/// The event table: rows are added at its end and never touched again. Throws SqlError.
class EventRows {
public:
    explicit EventRows(const Database& database) : m_database(&database) {}

    ChainEnd end() const;
    /// Adds one and moves the end of the chain on. Only within a transaction.
    void add(const bench::Event& event, ChainEnd& end);
    std::optional<bench::Event> find(EventId id) const;
    std::vector<bench::Event> all() const;
    /// Everything told of a piece: its own events, those moved to it, those that void or move one of these.
    std::vector<bench::Event> concerning(PieceId piece) const;
    /// The events that began the mixes that went on a piece.
    std::vector<bench::Event> mixesOn(PieceId piece) const;
    /// What the bench must know at start: everything told of the pieces in hand and the mixes on
    /// them, and of the bench itself from `since` on, with the last three readings of each place and the last
    /// hundred tellings of states and persons before that.
    std::vector<bench::Event> forBench(Instant since) const;
    /// The earliest happening among the events of pieces in hand.
    std::optional<Instant> oldestInHand() const;
    /// At most `count` rows after `after`, with their links, in order of number.
    std::vector<ChainedEvent> linksAfter(EventId after, int count) const;
    CheckedRows checkNotes(std::int64_t after, int count) const;

private:
    const Database* m_database;
};

/// Everything told of one piece after another, for who asks about many: the question is prepared once.
class EventsOfPieces {
public:
    explicit EventsOfPieces(const Database& database);
    std::vector<bench::Event> of(PieceId piece);

private:
    Statement m_statement;
};

} // namespace mend::store
