#include "tests/bench/yearjudge.h"

#include "core/bench/alertspeech.h"

#include <algorithm>

namespace mend::bench::test {

using std::chrono::minutes;
using std::chrono::seconds;

/// A miss costs an afternoon or more, and there is room for an alarm at all.
bool YearJudge::isCounted(const Window& window) const
{
    if (!window.closes || !window.latestStart || window.counted || window.miss < rules::Miss::Afternoon) {
        return false;
    }
    const Instant opens = window.opens.value_or(*window.closes - window.handsOn);
    const Span width = *window.closes - opens;
    return width >= minutes(3) && width - window.handsOn >= seconds(1);
}

void YearJudge::settle(const WindowRun& run, const Costly& window)
{
    ++m_figures.costly;
    switch (window.fate) {
    case Fate::Open:
        ++m_figures.gone;
        break;
    case Fate::Acted:
        ++m_figures.actedBefore;
        break;
    case Fate::Heard:
        ++m_figures.heardInTime;
        break;
    case Fate::Asleep:
    case Fate::Missed:
        m_figures.unheard.push_back(std::to_string(run.piece.value()) + ' ' + run.stage.stage + " latest start " +
                                    toRfc3339(window.latestStart) + (window.fate == Fate::Asleep ? " asleep" : ""));
        break;
    case Fate::Moved:
        ++m_figures.movedIntoPast;
        break;
    case Fate::Listed:
        ++m_figures.missedAsleep;
        break;
    }
}

void YearJudge::watch(Instant wall, Span skew, bool awake)
{
    const Span moved = skew - m_skew;
    m_skew = skew;
    std::set<WindowRun> present;
    for (const Window& window : m_bench.windows()) {
        const WindowRun run = runOfWindow(window);
        // Once counted it stays so, whatever a reading does to its room.
        const bool stays = window.closes && window.latestStart && m_costly.contains(run);
        if (!stays && !isCounted(window)) {
            continue;
        }
        present.insert(run);
        const auto [at, isNew] = m_costly.try_emplace(run);
        Costly& costly = at->second;
        if (isNew) {
            costly.latestStart = *window.latestStart;
            costly.seen = wall;
        }
        const Instant before = costly.latestStart + moved;
        const Instant seen = costly.seen + moved;
        costly.latestStart = *window.latestStart;
        costly.seen = wall;
        if (costly.fate != Fate::Open) {
            continue;
        }
        const bool hasHands =
            window.begunAt.has_value() || std::ranges::any_of(m_bench.alerts(), [&](const Alert& alert) {
                return alert.piece == window.piece && alert.stage == window.stage && alert.handsSince;
            });
        if (hasHands) {
            costly.fate = Fate::Acted;
        } else if (wall >= costly.latestStart) {
            // The year stops at every latest start. It went by while it stood where it stands, or it was moved behind
            // now in one stroke.
            const bool wentBy = !isNew && before > seen && before <= wall;
            costly.fate = !wentBy ? Fate::Moved : (awake ? Fate::Missed : Fate::Asleep);
        }
    }
    for (auto it = m_costly.begin(); it != m_costly.end();) {
        if (present.contains(it->first)) {
            ++it;
            continue;
        }
        if (it->second.fate == Fate::Open) {
            it->second.fate = Fate::Acted; // done, or taken back, before anything was due
        }
        settle(it->first, it->second);
        it = m_costly.erase(it);
    }
}

void YearJudge::heardOf(const Alert& alert, Instant wall)
{
    for (auto& [run, costly] : m_costly) {
        bool covers = run.piece == alert.piece && run.stage == alert.stage;
        for (std::size_t i = 0; i < alert.chain.size(); ++i) {
            covers = covers || (run.piece == alert.chainPieces[i] && run.stage == alert.chain[i]);
        }
        if (covers && alert.kind == AlertKind::Closes && costly.fate == Fate::Open && wall < costly.latestStart) {
            costly.fate = Fate::Heard;
        }
    }
}

/// One more now; how many in the ten minutes up to now.
int YearJudge::countWithin(std::deque<Instant>& lately, Instant now)
{
    lately.push_back(now);
    while (lately.front() <= now - minutes(10)) {
        lately.pop_front();
    }
    return static_cast<int>(lately.size());
}

/// How many of a play are heard one by one: those whose line the voice says, and one at least for the burst.
void YearJudge::countHeard(const Play& play, Instant now)
{
    auto lines = play.speech.size();
    if (lines > 0 && lines - 1 < play.keys.size() &&
        play.speech.back() == spokenMore(static_cast<int>(play.keys.size() - (lines - 1)))) {
        --lines; // "And 4 more." is no alert
    }
    const auto heard = std::max<std::size_t>(play.signal == Signal::None ? 0 : 1, std::min(lines, play.keys.size()));
    for (std::size_t i = 0; i < heard; ++i) {
        m_figures.mostHeard = std::max(m_figures.mostHeard, countWithin(m_heardLately, now));
    }
}

void YearJudge::countAlert(const std::string& key, Urgency urgency, Instant now)
{
    if (!m_sounded.insert(key).second) {
        return; // repeats and later calls of one alert count once
    }
    ++m_figures.alerts;
    (urgency == Urgency::A ? m_figures.a : urgency == Urgency::B ? m_figures.b : m_figures.c) += 1;
    m_figures.mostAnnounced = std::max(m_figures.mostAnnounced, countWithin(m_announcedLately, now));
}

void YearJudge::hear(const Decision& decision, Instant wall, Instant now)
{
    if (decision.missed) {
        for (const MissedAlert& line : decision.missed->lines) {
            const auto alert = std::ranges::find(m_bench.alerts(), line.key, &Alert::key);
            for (auto& [run, costly] : m_costly) {
                const bool isIt =
                    alert != m_bench.alerts().end() && run.piece == alert->piece && run.stage == alert->stage;
                bool inChain = false;
                for (std::size_t i = 0; alert != m_bench.alerts().end() && i < alert->chain.size(); ++i) {
                    inChain = inChain || (run.piece == alert->chainPieces[i] && run.stage == alert->chain[i]);
                }
                if ((isIt || inChain) && costly.fate == Fate::Asleep) {
                    costly.fate = Fate::Listed;
                }
            }
        }
    }
    if (!decision.play || decision.play->keys.empty()) {
        return;
    }
    ++m_figures.bursts;
    countHeard(*decision.play, now);
    bool isListCounted = false;
    for (const std::string& key : decision.play->keys) {
        const auto alert = std::ranges::find(m_bench.alerts(), key, &Alert::key);
        const HeardAlert& heard = decision.memory.heard.at(key);
        m_figures.early += wall < alert->due ? 1 : 0;
        const auto answered = std::ranges::find(m_bench.bench().answers, key, &AlertAnswer::key);
        const bool isAnswered =
            answered != m_bench.bench().answers.end() && answered->how != answeredKey(Answered::Shown);
        const std::string call = heard.call + (isAnswered ? '/' + toRfc3339(answered->at - m_skew) : "");
        m_figures.duplicates += m_calls.insert(call).second ? 0 : 1;
        auto& times = m_announced[key];
        times.push_back(now);
        m_figures.chattering += times.size() >= 3 && now - times[times.size() - 3] < minutes(1) ? 1 : 0;
        countAlert(key, alert->urgency, now);
        const bool waited = wall - alert->due > minutes(1);
        if (!waited || !isListCounted) {
            m_figures.mostInTenMinutes = std::max(m_figures.mostInTenMinutes, countWithin(m_soundedLately, now));
            m_figures.floods += m_soundedLately.size() == 11 ? 1 : 0;
        }
        isListCounted = isListCounted || waited;
        heardOf(*alert, wall);
    }
}

void YearJudge::handedOver(PieceId piece)
{
    std::erase_if(m_costly, [&](const auto& entry) {
        if (entry.first.piece == piece) {
            settle(entry.first, entry.second);
        }
        return entry.first.piece == piece;
    });
}

void YearJudge::finish()
{
    for (const auto& [run, costly] : m_costly) {
        settle(run, costly);
    }
}

std::optional<Instant> YearJudge::next(Instant wall) const
{
    std::optional<Instant> soonest;
    for (const auto& [run, costly] : m_costly) {
        if (costly.latestStart > wall && (!soonest || costly.latestStart < *soonest)) {
            soonest = costly.latestStart;
        }
    }
    return soonest;
}

} // namespace mend::bench::test
