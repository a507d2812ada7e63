#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "core/bench/card.h"

#include <QString>
#include <optional>
#include <vector>

namespace mend::app {

/// One thing told of a piece in the last day, that may be taken back or told differently.
struct Fact {
    EventId event;
    QString words; ///< "Filler is in"
    Instant happened;
};

/// A stage that can be done again.
struct StageDone {
    bench::StageInstance stage;
    QString act;
};

/// A state of the bench that a person may tell: "Pads are in the can", "Flame is lit".
struct StateTold {
    QString state; ///< key
    QString words;
    bool begins = false;
};

/// A way to put an alert off on purpose: "after this step", "in time to start at 14:20".
struct PutOff {
    QString key;
    QString words;
};

/// What the Bench asks about one piece when somebody wants more of it. Answered by whoever
/// holds the service; the Bench never works it out.
class Details {
public:
    virtual ~Details() = default;
    virtual std::vector<Fact> factsOf(PieceId piece) const = 0; ///< newest first
    virtual std::vector<StageDone> stagesDoneOf(PieceId piece) const = 0;
    virtual std::vector<PutOff> putOffsOf(PieceId piece) const = 0;
    virtual std::vector<StateTold> states() const = 0;
    /// What is to be known before everybody goes home, one line each.
    virtual QStringList nightAhead() const = 0;
    /// What telling a fact differently would move, one line each; shown before it is kept.
    virtual QStringList movedBy(EventId event, Instant happened, PieceId piece) const = 0;
};

/// Everything a person can tell at the Bench. Each signal is one act.
class Told : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

Q_SIGNALS:
    /// A button of a card. `told`: when it happened, where it was told later; empty: now.
    void acted(mend::PieceId piece, const mend::bench::CardAct& act, std::optional<mend::Instant> told);
    /// The same, after it was asked which living mix was used.
    void actedWithMix(mend::PieceId piece, const mend::bench::CardAct& act, mend::MixId mix,
                      std::optional<mend::Instant> told);
    void hazardAnswered(mend::PieceId piece, const mend::bench::StageInstance& stage, const QString& hazard,
                        const QString& answer, const QString& words);
    void undone(mend::EventId event);
    void factMoved(mend::EventId event, mend::Instant happened, mend::PieceId piece);
    void pieceWanted(mend::PieceId piece); ///< everything about it
    void noted(mend::PieceId piece, const QString& words);
    void placed(mend::PieceId piece, mend::PlaceId place);
    void skipped(mend::PieceId piece, const mend::bench::StageInstance& stage, const QString& reason);
    void sentBack(mend::PieceId piece, const mend::bench::StageInstance& stage, const QString& reason);
    void holdBegun(mend::PieceId piece, const QString& reason);
    /// What closes meanwhile was seen; it is begun all the same.
    void begunAllTheSame(mend::PieceId piece, const mend::bench::CardAct& act);
    /// What was put off under that key is to call now.
    void calledBack(const QString& key);
    void putOff(mend::PieceId piece, const QString& how);
    void readingEntered(mend::PlaceId place, mend::Temperature temperature, std::optional<mend::Humidity> humidity);
    void mixStarted(const QString& material);
    void mixEnded(mend::MixId mix, const QString& how); ///< "stiff", "thrownAway", "usedUp"
    void stateTold(const QString& state, bool begins);
    void personChosen(mend::PersonId person);
    void awayTold(bool away);
    void soundPaused(bool paused);
    void ownersHidden(bool hidden);
};

} // namespace mend::app
