#include "app/bench/scenes.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Role;
using parts::Scribe;

// What a translator finds these words under.
class TopLineWords {
    Q_DECLARE_TR_FUNCTIONS(TopLineWords)
};

/// Two lines and what a tap on them does.
struct Pair {
    QString key;
    QString strong;
    QString below;
    std::function<void()> act;
    bool grave = false; ///< the second line is in bold: something is wrong
};

Pair placePair(const PlaceNow& place, const Picture& picture, Hands& hands)
{
    const QString key = QStringLiteral("place/%1").arg(place.place.value());
    if (const UndoOffer* offer = picture.undoAt(key)) {
        return {QStringLiteral("undo/%1").arg(offer->event.value()), TopLineWords::tr("Undo"), offer->told,
                [&hands, event = offer->event] { hands.undo(event); }, false};
    }
    QStringList strong;
    if (place.temperature) {
        strong << service::temperatureWords(*place.temperature, picture.manner);
    }
    if (place.humidity) {
        strong << service::humidityWords(*place.humidity, picture.manner);
    }
    QStringList below{place.name};
    if (!place.readAt) {
        below << TopLineWords::tr("no reading");
    } else if (place.stale) {
        below << TopLineWords::tr("reading too old");
    } else if (place.slots > 0) {
        below << TopLineWords::tr("%1 of %2 slots").arg(place.taken).arg(place.slots);
    } else {
        below << service::agoWords(picture.now - *place.readAt);
    }
    return {key, strong.isEmpty() ? QStringLiteral("–") : strong.join(QLatin1Char(' ')),
            below.join(QStringLiteral(", ")), [&hands, id = place.place] { hands.openPlace(id); },
            place.stale || !place.readAt};
}

Pair mixPair(const bench::MixCard& mix, const Picture& picture, Hands& hands)
{
    const QString name = service::text(mix.materialName);
    const Span age = picture.now - mix.mixedAt;
    QString strong = service::spanWords(age);
    bool stiff = false;
    if (mix.stiffAt) {
        const Span left = *mix.stiffAt - picture.now;
        stiff = left <= Span{0};
        strong = stiff ? TopLineWords::tr("stiff by now") : TopLineWords::tr("%1 left").arg(service::spanWords(left));
    }
    const QString on = mix.on.empty()       ? TopLineWords::tr("on nothing yet")
                       : mix.on.size() == 1 ? TopLineWords::tr("1 piece")
                                            : TopLineWords::tr("%n pieces", nullptr, static_cast<int>(mix.on.size()));
    return {QStringLiteral("mix/%1").arg(mix.mix.value()), strong,
            TopLineWords::tr("%1, %2 old, %3").arg(name, service::spanWords(age), on),
            [&hands, id = mix.mix] { hands.openMix(id); }, stiff};
}

QString soundWords(const SoundNow& sound, const Picture& picture)
{
    switch (sound.state) {
    case SoundNow::State::On:
        return TopLineWords::tr("sound on");
    case SoundNow::State::Paused:
        return sound.pausedUntil
                   ? TopLineWords::tr("sound paused %1").arg(service::countDigits(*sound.pausedUntil - picture.now))
                   : TopLineWords::tr("sound paused");
    case SoundNow::State::Off:
        return TopLineWords::tr("sound off");
    case SoundNow::State::NoDevice:
        return TopLineWords::tr("no sound here");
    }
    return {};
}

class TopDrawing {
public:
    TopDrawing(const Picture& picture, QSize size, bool mirrored, Hands& hands)
        : m_picture(picture), m_hands(hands), m_scribe(picture.look, size, mirrored), m_size(size)
    {
    }

    parts::Scene draw()
    {
        const auto& t = m_scribe.tokens();
        m_scribe.line({0.0, m_size.height() - 0.5}, {double(m_size.width()), m_size.height() - 0.5}, t.edge, 1.0,
                      t.ground, Qt::SolidLine, false);
        const double right = rightEnd();
        left(right - m_scribe.px(20));
        return m_scribe.take();
    }

private:
    // Draws one pair at `left` and gives its width.
    double pairAt(double left, double most, const Pair& pair, Qt::Alignment align = Qt::AlignLeft)
    {
        const auto& t = m_scribe.tokens();
        const Role below = pair.grave ? Role::ReasonBold : Role::Reason;
        const double wide =
            std::min(most, std::max({m_scribe.width(pair.strong, Role::Reading), m_scribe.width(pair.below, below),
                                     double(m_scribe.mm(parts::otherActMm))}));
        const double strongHigh = m_scribe.lineHeight(Role::Reading);
        const double belowHigh = m_scribe.lineHeight(below);
        const double top = (m_size.height() - strongHigh - belowHigh) / 2.0;
        m_scribe.text({left, top, wide, strongHigh}, pair.strong, {Role::Reading, t.ink, t.ground}, align);
        m_scribe.text({left, top + strongHigh, wide, belowHigh}, pair.below,
                      {below, pair.grave ? t.ink : t.ink2, t.ground}, align);
        Hit hit;
        hit.key = pair.key;
        const int high = std::max(m_scribe.mm(parts::otherActMm), int(strongHigh + belowHigh));
        hit.rect = QRect(int(left), (m_size.height() - high) / 2, int(wide), high);
        hit.name = pair.strong + QStringLiteral(", ") + pair.below;
        hit.act = pair.act;
        hit.kind = pair.act ? HitKind::Other : HitKind::Words;
        m_scribe.hit(hit);
        return wide;
    }

    double pairWidth(const Pair& pair) const
    {
        return std::max({m_scribe.width(pair.strong, Role::Reading),
                         m_scribe.width(pair.below, pair.grave ? Role::ReasonBold : Role::Reason),
                         double(m_scribe.mm(parts::otherActMm))});
    }

    double rightEnd()
    {
        const auto& t = m_scribe.tokens();
        const QString clock = service::timeOfDay(m_picture.now, m_picture.manner);
        const double clockWide = m_scribe.width(clock, Role::Clock);
        double right = m_size.width() - clockWide;
        m_scribe.text({right, 0.0, clockWide, double(m_size.height())}, clock, {Role::Clock, t.ink, t.ground},
                      Qt::AlignRight);
        Hit hit;
        hit.key = QStringLiteral("clock");
        hit.rect = QRect(int(right), 0, int(clockWide), m_size.height());
        hit.name = clock;
        hit.kind = HitKind::Words;
        m_scribe.hit(hit);
        const Pair person = personPair();
        const Pair sound{QStringLiteral("sound"), soundWords(m_picture.extras.sound, m_picture), nextAlert(),
                         [hands = &m_hands] { hands->openSound(); },
                         m_picture.extras.sound.state != SoundNow::State::On};
        // What leads to the places keeps its room; these two are shortened before it is.
        const double room = right - m_scribe.px(2 * 24 + 20) - pairWidth(restPair());
        const double least = m_scribe.mm(parts::otherActMm);
        const double share = std::min(1.0, room / (pairWidth(person) + pairWidth(sound)));
        const double wide = std::max(least, pairWidth(person) * share);
        right -= m_scribe.px(24) + wide;
        pairAt(right, wide, person, Qt::AlignRight);
        const double soundWide = std::max(least, pairWidth(sound) * share);
        right -= m_scribe.px(24) + soundWide;
        pairAt(right, soundWide, sound, Qt::AlignRight);
        return right;
    }

    Pair restPair() const
    {
        return {QStringLiteral("places"), TopLineWords::tr("more"), TopLineWords::tr("all places"),
                [hands = &m_hands] { hands->allPlaces(); }};
    }

    Pair personPair()
    {
        const auto& extras = m_picture.extras;
        const auto found = std::ranges::find(extras.people, extras.atBench, &PersonChoice::id);
        const QString who =
            found == extras.people.end() ? TopLineWords::tr("nobody at the bench") : service::isolated(found->name);
        const auto& until = m_picture.board.freeUntil;
        QString free = TopLineWords::tr("free");
        if (until) {
            free =
                *until > m_picture.now
                    ? TopLineWords::tr("free until %1").arg(service::clockTime(*until, m_picture.now, m_picture.manner))
                    : TopLineWords::tr("not free");
        }
        return {QStringLiteral("person"), free, extras.away ? TopLineWords::tr("%1, away").arg(who) : who,
                [hands = &m_hands] { hands->openPeople(); }};
    }

    QString nextAlert() const
    {
        const auto& next = m_picture.extras.sound.nextAlert;
        return next ? TopLineWords::tr("next %1").arg(service::clockTime(*next, m_picture.now, m_picture.manner))
                    : TopLineWords::tr("none ahead");
    }

    // Places, then mixes, as many as stand whole; the last spot leads to the rest.
    void left(double until)
    {
        std::vector<Pair> mixes;
        for (const auto& mix : m_picture.board.mixes) {
            mixes.push_back(mixPair(mix, m_picture, m_hands));
        }
        std::vector<Pair> places;
        for (const auto& place : m_picture.extras.places) {
            places.push_back(placePair(place, m_picture, m_hands));
        }
        // A running mix and a reading that has grown too old keep their room before the others.
        std::vector<const Pair*> wanted;
        wanted.reserve(mixes.size() + places.size());
        for (const Pair& mix : mixes) {
            wanted.push_back(&mix);
        }
        for (const bool grave : {true, false}) {
            for (const Pair& place : places) {
                if (place.grave == grave) {
                    wanted.push_back(&place);
                }
            }
        }
        const double gap = m_scribe.px(24);
        const Pair rest = restPair();
        double all = 0.0;
        for (const Pair* each : wanted) {
            all += pairWidth(*each) + gap;
        }
        const bool whole = all - gap <= until;
        double room = whole ? until + gap : until - pairWidth(rest);
        std::vector<const Pair*> kept;
        for (const Pair* each : wanted) {
            const double wide = pairWidth(*each) + gap;
            if (wide <= room) {
                kept.push_back(each);
                room -= wide;
            }
        }
        double left = 0.0;
        for (const auto* group : {&places, &mixes}) {
            for (const Pair& each : *group) {
                if (std::ranges::find(kept, &each) != kept.end()) {
                    left += pairAt(left, until, each) + gap;
                }
            }
        }
        if (!whole) {
            pairAt(left, until, rest);
        }
    }

    const Picture& m_picture;
    Hands& m_hands;
    Scribe m_scribe;
    QSize m_size;
};

} // namespace

int topHeight(const parts::Look& look) { return std::max(look.measure.px(64), look.measure.mm(parts::otherActMm)); }

parts::Scene topScene(const Picture& picture, QSize size, bool mirrored, Hands& hands)
{
    return TopDrawing(picture, size, mirrored, hands).draw();
}

} // namespace mend::app
