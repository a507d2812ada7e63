#include "core/bench/alertdesk.h"

#include "core/bench/alertlist.h"
#include "core/bench/alertspeech.h"

#include <algorithm>
#include <tuple>

namespace mend::bench {

namespace {

using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr Span mergeSpan = seconds(15);   ///< what falls due so soon after a burst joins its list
constexpr Span louderAfter = seconds(60); ///< unanswered: louder, and the voice again
constexpr Span notifyAfter = minutes(3);  ///< unanswered: a critical desktop notification
constexpr Span longestPause = minutes(10);
constexpr Span gapOfA = seconds(8); ///< between the end of a burst and the next
constexpr Span briskGapOfB = seconds(25);
constexpr Span gapOfB = seconds(120);
constexpr Span brisk = minutes(2);    ///< how long a B repeats at its short gap
constexpr Span lateTick = seconds(1); ///< a tick later than this would count wrong: left out
constexpr int louderBy = 6;
constexpr int mostLines = 3;

Signal signalOf(Urgency urgency)
{
    return urgency == Urgency::A ? Signal::A : urgency == Urgency::B ? Signal::B : Signal::C;
}

/// One look at the desk.
class Desk {
public:
    Desk(const AlertMemory& memory, CallList list, const DeskInputs& inputs)
        : m_calling(std::move(list.calling)), m_next(list.next), m_inputs(inputs), m_now(inputs.now)
    {
        m_out.memory = memory;
        m_out.shelved = std::move(list.shelved);
        m_out.busy = list.busy;
        if (memory.burst && *memory.burst > m_now) {
            m_out.memory.burst = m_now; // the clock was put back
        }
    }

    Decision look()
    {
        tellMissed();
        tellShown();
        if (!isMuted()) {
            sound();
            tick();
        }
        notify();
        show();
        banners();
        remember();
        return std::move(m_out);
    }

private:
    void consider(std::optional<Instant> instant) { m_next.consider(instant); }

    std::optional<Instant> paused() const
    {
        if (!m_inputs.soundPausedUntil || *m_inputs.soundPausedUntil <= m_now) {
            return std::nullopt;
        }
        return std::min(*m_inputs.soundPausedUntil, m_now + longestPause);
    }
    bool isMuted() const { return m_inputs.soundOff || paused().has_value(); }

    /// After sleep or a start: one screen, one burst, whatever called meanwhile.
    void tellMissed()
    {
        if (!m_inputs.gap) {
            return;
        }
        MissedReport report{*m_inputs.gap, {}};
        std::vector<Calling*> missed;
        bool mayWakePeople = m_inputs.benchOpen;
        for (Calling& calling : m_calling) {
            if (calling.heard.sounded || calling.call.since <= m_inputs.gap->from || calling.alert->quiet) {
                continue;
            }
            const bool savable = isSavable(*calling.alert, m_now);
            const Span time = savable ? *calling.alert->latestStart - m_now : m_now - calling.call.since;
            report.lines.push_back({calling.alert->key, savable, time});
            missed.push_back(&calling);
            mayWakePeople = mayWakePeople || !calling.waits;
        }
        if (report.lines.empty()) {
            return;
        }
        std::ranges::stable_sort(report.lines, {}, [](const MissedAlert& line) {
            return std::tuple(!line.savable, line.savable ? line.time : -line.time);
        });
        const Signal signal = report.lines.front().savable ? Signal::A : Signal::B;
        m_out.missed = std::move(report);
        if (mayWakePeople && !isMuted()) {
            std::ranges::for_each(missed, [](Calling* calling) { calling->waits = false; });
            burst(signal, missed, missed, 0);
        }
    }

    /// The first time an alert stands before people as one that calls is a fact worth keeping.
    void tellShown()
    {
        for (Calling& calling : m_calling) {
            if (calling.waits || calling.heard.shown) {
                continue;
            }
            calling.heard.shown = true;
            const Alert& alert = *calling.alert;
            m_out.facts.push_back({calling.heard.call, alert.piece, alert.stage});
        }
    }

    void sound()
    {
        std::vector<Calling*> sounding;
        std::vector<Calling*> fresh;
        for (Calling& calling : m_calling) {
            if (!calling.waits) {
                sounding.push_back(&calling);
                if (!calling.heard.sounded) {
                    fresh.push_back(&calling);
                }
            }
        }
        if (m_out.play) {
            // The report of what was missed has just been heard.
        } else if (isTimeToRepeat(sounding, fresh)) {
            repeat(sounding, fresh);
        } else if (!fresh.empty() && joins(*fresh.front(), sounding)) {
            join(fresh);
        } else if (!fresh.empty() && mustLetFinish(*fresh.front())) {
            consider(burstEnd());
        } else if (!fresh.empty()) {
            burst(signalOf(fresh.front()->alert->urgency), fresh, fresh, louder(*fresh.front()));
        }
        sayHowManyMore();
        consider(repeatAt(sounding));
    }

    Instant burstEnd() const { return *m_out.memory.burst + burstLength(m_out.memory.burstOf); }

    /// One sound at a time: only what is more urgent cuts off a burst.
    bool mustLetFinish(const Calling& calling) const
    {
        return m_out.memory.burst && m_now < burstEnd() && m_out.memory.burstOf >= signalOf(calling.alert->urgency);
    }

    /// A close that nobody answered does not join the last burst of the alert that it ends.
    bool joins(const Calling& calling, const std::vector<Calling*>& sounding) const
    {
        const AlertMemory& memory = m_out.memory;
        const Signal own = signalOf(calling.alert->urgency);
        const bool endsTheList = calling.alert->kind == AlertKind::Closed && memory.burstOf > own &&
                                 signalOf(sounding.front()->alert->urgency) == own;
        const bool isRepeatDue = own == Signal::A && memory.burst && m_now >= burstEnd() + gapOfA;
        return memory.burst && m_now - *memory.burst < mergeSpan && memory.burstOf >= own && !endsTheList &&
               !isRepeatDue;
    }

    static bool wasHeard(const Calling* calling) { return calling->heard.sounded.has_value(); }

    bool isTimeToRepeat(const std::vector<Calling*>& sounding, const std::vector<Calling*>& fresh) const
    {
        const auto again = repeatAt(sounding);
        const auto leading = std::ranges::find_if(sounding, wasHeard);
        return again && *again <= m_now &&
               (fresh.empty() || fresh.front()->alert->urgency <= (*leading)->alert->urgency);
    }

    /// When the most urgent of what was heard is to be heard again.
    std::optional<Instant> repeatAt(const std::vector<Calling*>& sounding) const
    {
        const auto leading = std::ranges::find_if(sounding, wasHeard);
        const Urgency top = leading == sounding.end() ? Urgency::C : (*leading)->alert->urgency;
        if (top == Urgency::C) {
            return std::nullopt;
        }
        const AlertMemory& memory = m_out.memory;
        if (!memory.burst) {
            return m_now; // nothing is known of the last burst: it goes on from here
        }
        Span gap = top == Urgency::A ? gapOfA : gapOfB;
        for (const Calling* calling : sounding) {
            if (top == Urgency::B && calling->alert->urgency == top && wasHeard(calling) &&
                *memory.burst - *calling->heard.sounded < brisk) {
                gap = briskGapOfB;
            }
        }
        return *memory.burst + burstLength(memory.burstOf) + gap;
    }

    int louder(const Calling& calling) const { return isUnheeded(calling, louderAfter) ? louderBy : 0; }

    bool isUnheeded(const Calling& calling, Span after) const
    {
        return calling.alert->urgency == Urgency::A && calling.heard.firstSounded &&
               m_now - *calling.heard.firstSounded >= after;
    }

    void repeat(const std::vector<Calling*>& sounding, const std::vector<Calling*>& fresh)
    {
        const bool speaksAgain = isUnheeded(*sounding.front(), louderAfter);
        burst(signalOf(sounding.front()->alert->urgency), fresh, speaksAgain ? sounding : fresh,
              louder(*sounding.front()));
    }

    void burst(Signal signal, const std::vector<Calling*>& fresh, const std::vector<Calling*>& spoken, int decibels)
    {
        Play play;
        play.signal = signal;
        play.decibelsLouder = decibels;
        play.cutsOff = true;
        m_out.memory.burst = m_now;
        m_out.memory.burstOf = signal;
        m_out.memory.linesSaid = 0;
        m_out.memory.unsaid = 0;
        speak(play, spoken);
        if (m_out.memory.unsaid > 0) {
            play.speech.push_back(spokenMore(m_out.memory.unsaid));
            m_out.memory.unsaid = 0;
        }
        markHeard(play, fresh);
        m_out.play = std::move(play);
    }

    void join(const std::vector<Calling*>& fresh)
    {
        Play play;
        speak(play, fresh);
        markHeard(play, fresh);
        m_out.play = std::move(play);
    }

    void speak(Play& play, const std::vector<Calling*>& spoken)
    {
        for (const Calling* calling : spoken) {
            if (m_out.memory.linesSaid < mostLines) {
                play.speech.push_back(spokenText(*calling->alert, m_now));
                ++m_out.memory.linesSaid;
            } else {
                ++m_out.memory.unsaid;
            }
        }
    }

    void markHeard(Play& play, const std::vector<Calling*>& fresh) const
    {
        for (Calling* calling : fresh) {
            calling->heard.sounded = m_now;
            calling->heard.firstSounded = calling->heard.firstSounded.value_or(m_now);
            play.keys.push_back(calling->alert->key);
        }
    }

    /// Once nothing more can join, the voice says how many it had no room for.
    void sayHowManyMore()
    {
        AlertMemory& memory = m_out.memory;
        if (memory.unsaid == 0 || !memory.burst) {
            return;
        }
        if (m_now < *memory.burst + mergeSpan) {
            consider(*memory.burst + mergeSpan);
            return;
        }
        if (!m_out.play) {
            m_out.play = Play{Signal::None, 0, false, {spokenMore(memory.unsaid)}, {}};
        }
        memory.unsaid = 0;
    }

    void tick()
    {
        if (!m_inputs.counting) {
            return;
        }
        for (const Instant mark : m_inputs.counting->ticks) {
            consider(mark);
            const bool isFresh =
                mark <= m_now && m_now - mark < lateTick && (!m_out.memory.looked || *m_out.memory.looked < mark);
            if (isFresh && !m_out.play && (!m_out.memory.burst || m_now >= burstEnd())) {
                m_out.play = Play{Signal::Tick, 0, false, {}, {}};
            }
        }
        consider(m_inputs.counting->until);
    }

    void notify()
    {
        for (Calling& calling : m_calling) {
            const Instant since = calling.heard.firstSounded.value_or(calling.call.since);
            if (calling.alert->urgency != Urgency::A || calling.waits || calling.heard.notified) {
                continue;
            }
            consider(since + notifyAfter);
            if (m_now >= since + notifyAfter) {
                calling.heard.notified = true;
                m_out.notify.push_back(calling.alert->key);
            }
        }
    }

    void show()
    {
        bool flashes = false;
        for (const Calling& calling : m_calling) {
            const Urgency urgency = calling.alert->urgency;
            Look look = urgency == Urgency::A ? Look::Inverted : Look::Steady;
            if (!flashes && !calling.waits && urgency != Urgency::C) {
                look = urgency == Urgency::A ? Look::FlashFast : Look::FlashSlow;
                flashes = true;
            }
            m_out.visible.push_back(
                {calling.alert->key, urgency, look, calling.call.stage == CallStage::Last, calling.waits});
        }
    }

    void banners()
    {
        if (m_inputs.soundOff) {
            m_out.banners.push_back({BannerKind::SoundOff, {}});
        }
        if (const auto until = paused()) {
            m_out.banners.push_back({BannerKind::SoundPaused, until});
            consider(until);
        }
        if (!m_inputs.soundWorks) {
            m_out.banners.push_back({BannerKind::NoSoundDevice, {}});
        }
    }

    void remember()
    {
        m_out.memory.looked = m_now;
        m_out.memory.heard.clear();
        for (const Calling& calling : m_calling) {
            m_out.memory.heard.emplace(calling.alert->key, calling.heard);
        }
        m_out.next = m_next.at();
    }

    std::vector<Calling> m_calling;
    Soonest m_next;
    const DeskInputs& m_inputs;
    Instant m_now;
    Decision m_out;
};

} // namespace

Span burstLength(Signal signal)
{
    switch (signal) {
    case Signal::None:
        return Span{0};
    case Signal::Tick:
        return milliseconds(60);
    case Signal::C:
        return milliseconds(2 * 200 + 175);
    case Signal::B:
        return milliseconds(3 * 200 + 2 * 175);
    case Signal::A:
        return milliseconds(7 * 125 + 4 * 75 + 2 * 275);
    }
    return Span{0};
}

Instant pausedUntil(Instant now, Span asked) { return now + std::clamp(asked, Span{0}, longestPause); }

Event factEvent(const AlertFact& fact, PersonId by)
{
    Event event;
    event.what = What::AlertAnswered;
    event.piece = fact.piece;
    event.stage = fact.stage;
    event.person = by;
    event.word = answerWord(fact.key, Answered::Shown);
    return event;
}

Decision decide(const AlertMemory& memory, std::span<const Alert> alerts, std::span<const AlertAnswer> answers,
                const DeskInputs& inputs)
{
    return Desk(memory, callList(memory, alerts, answers, inputs), inputs).look();
}

} // namespace mend::bench
