#pragma once

#include "app/parts/look.h"
#include "core/bench/alert.h"
#include "core/bench/card.h"
#include "core/service/cardwording.h"

#include <QImage>
#include <QString>

#include <map>
#include <optional>
#include <set>
#include <vector>

namespace mend::app {

/// A place with what was last read there.
struct PlaceNow {
    PlaceId place;
    QString name;
    std::optional<Temperature> temperature;
    std::optional<Humidity> humidity;
    std::optional<Instant> readAt;
    bool stale = false;         ///< older than the rule allows
    bool takesHumidity = false; ///< humidity is asked for as well
    bool heated = false;        ///< asked about after a gap
    int slots = 0;              ///< 0: as many as you like
    int taken = 0;
};

/// One kind of mix in use: its tile starts a mix with the last batch and no question.
struct MixKind {
    QString material; ///< key
    QString tile;     ///< "Filler"
    QString batch;    ///< the last one, may be empty
    QString reach;    ///< how far it goes in a few words, or what heat does to it; may be empty
    QString advice;   ///< the same in full: said before mixing
};

struct PersonChoice {
    PersonId id;
    QString name;
};

/// What the sound is doing, always in sight.
struct SoundNow {
    enum class State { On, Paused, Off, NoDevice } state = State::On;
    std::optional<Instant> pausedUntil;
    std::optional<Instant> nextAlert;
};

/// An unanswered alert whose block border flashes.
struct Flashing {
    PieceId piece;
    bench::Urgency urgency = bench::Urgency::B;
    bool operator==(const Flashing&) const = default;
};

/// An alert that was put off on purpose.
struct PutOffNow {
    QString key; ///< the alert's
    PieceId piece;
    QString act;
    std::optional<Instant> until; ///< it calls again then, at the latest
};

/// A fact just told that can still be taken back by one tap.
struct UndoOffer {
    PieceId piece; ///< unset: it belongs to no card (a mix, a reading)
    QString spot;  ///< where it then stands: "mixnow/filler", "place/2"
    EventId event;
    QString told; ///< "Wiped back"
    Instant until;
};

/// A window of less than three minutes that is being counted: its card becomes the block and
/// shows large seconds. It ends by itself.
struct CountedNow {
    PieceId piece;
    Instant until;
};

/// What the Bench shows beside the board: told by the service, without a rule in it.
struct Extras {
    std::vector<PlaceNow> places;
    std::vector<MixKind> mixKinds;
    std::vector<PersonChoice> people;
    PersonId atBench;
    bool away = false;
    SoundNow sound;
    std::vector<Flashing> flashing;
    std::vector<PutOffNow> putOff; ///< what calls first again comes first
    std::set<PieceId> pending;     ///< told, not stored yet
    std::vector<UndoOffer> undo;
    std::map<PieceId, QImage> photos;
    std::optional<CountedNow> counting;
};

/// All that any part of the Bench needs for drawing itself once.
struct Picture {
    bench::Board board;
    Extras extras;
    service::Names names;
    service::Manner manner;
    parts::Look look;
    Instant now;
    bool hideOwners = false;

    const bench::Card* card(PieceId piece) const;
    /// The offer that stands at a spot which is no card, if one is left.
    const UndoOffer* undoAt(const QString& spot) const;
};

} // namespace mend::app
