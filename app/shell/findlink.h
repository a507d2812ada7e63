#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/find/findspace.h"
#include "core/service/benchservice.h"
#include "core/service/door.h"
#include "core/service/wording.h"

namespace mend::app {

/// Answers the Find space out of the bench and the file. It decides nothing: what is late or may be collected is
/// worked out below.
class FindLink : public QObject {
    Q_OBJECT

public:
    struct Services {
        service::Door& door;
        service::BenchService& bench;
        const Clock& clock;
    };
    FindLink(Services services, FindSpace& space, QObject* parent = nullptr);

    void setManner(const service::Manner& manner) { m_manner = manner; }
    /// What may be collected, what is late, what waits: worked out anew.
    void show();
    /// A number from a scanner: brings its piece up, or says in Find what is wrong with it.
    void scanned(const QString& typed);

Q_SIGNALS:
    /// Find has something to say and has to be in sight.
    void findWanted();
    void pieceWanted(mend::PieceId piece);

private:
    void ask(const QString& typed);
    void openPerson(CustomerId person);
    void openPiece(PieceId piece);
    FindPiece lineOf(const record::Piece& piece, const QString& owner, bool inHand) const;
    FindPage pageOf(const service::PieceFile& file) const;
    void addFacts(FindPage& page, const service::PieceFile& file, const service::HandOverFacts& facts) const;
    std::vector<FindPiece> linesOf(const std::vector<bench::CounterLine>& lines) const;
    QString stateOf(PieceId piece) const;
    double mendedOf(PieceId piece) const;
    Instant now() const { return m_services.clock.now().utc; }
    bench::DayOf dayOf() const { return service::dayIn(m_manner.zone); }

    Services m_services;
    FindSpace& m_space;
    service::Manner m_manner;
};

} // namespace mend::app
