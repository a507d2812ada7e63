#include "core/service/alertservice.h"

#include <algorithm>

namespace mend::service {

AlertService::AlertService(BenchService& bench, QObject* parent) : QObject(parent), m_bench(bench) {}

const bench::Alert* AlertService::alert(const std::string& key) const
{
    const auto found = std::ranges::find(m_alerts, key, &bench::Alert::key);
    return found == m_alerts.end() ? nullptr : &*found;
}

bench::DeskInputs AlertService::inputsAt(Instant now) const
{
    bench::DeskInputs inputs;
    inputs.now = now;
    const auto& hours = m_bench.bench().roster.openHours;
    inputs.benchOpen = hours.empty();
    for (const InstantRange& open : hours) {
        const bool within = open.from <= now && now < open.to;
        inputs.benchOpen = inputs.benchOpen || within;
        for (const Instant edge : {open.from, open.to}) {
            if (edge > now && (!inputs.hoursChange || edge < *inputs.hoursChange)) {
                inputs.hoursChange = edge;
            }
        }
    }
    inputs.soundOff = m_wishes.off;
    inputs.soundPausedUntil = m_wishes.pausedUntil;
    inputs.soundWorks = m_soundWorks;
    inputs.counting = m_counting;
    inputs.gap = m_gap;
    return inputs;
}

void AlertService::look(Instant now)
{
    if (m_looking) {
        return; // a fact told below changes the bench, which asks for a look of its own
    }
    m_looking = true;
    m_alerts = bench::alertsFor(m_bench.bench(), m_bench.board().windows, m_bench.book(), now);
    m_counting = bench::countingOf(m_bench.bench(), m_bench.board().windows, m_bench.book(), now);
    m_decision = bench::decide(m_decision.memory, m_alerts, m_bench.bench().answers, inputsAt(now));
    m_gap.reset();
    carryOut(m_decision);
    m_looking = false;
    Q_EMIT decided();
}

void AlertService::carryOut(const bench::Decision& decision)
{
    if (decision.play) {
        Q_EMIT playWanted(*decision.play);
    }
    for (const std::string& key : decision.notify) {
        if (const bench::Alert* calling = alert(key)) {
            Q_EMIT notifyWanted(*calling);
        }
    }
    std::vector<bench::Event> facts;
    for (const bench::AlertFact& fact : decision.facts) {
        bench::Event event = m_bench.told(bench::What::AlertAnswered);
        const bench::Event kept = bench::factEvent(fact, m_bench.atBench());
        event.piece = kept.piece;
        event.stage = kept.stage;
        event.word = kept.word;
        facts.push_back(event);
    }
    m_bench.tellAside(std::move(facts));
    if (decision.missed) {
        Q_EMIT missedWhileAsleep(*decision.missed);
    }
}

void AlertService::answer(const std::string& key, bench::Answered how, std::optional<Instant> until)
{
    const bench::Alert* calling = alert(key);
    if (!calling) {
        return;
    }
    bench::Event event = m_bench.told(bench::What::AlertAnswered);
    const bench::Event answered = bench::answerEvent(*calling, how, m_bench.atBench(), until);
    event.piece = answered.piece;
    event.stage = answered.stage;
    event.word = answered.word;
    event.until = answered.until;
    m_bench.tell({event});
}

bool AlertService::handsOnFirst()
{
    if (m_decision.visible.empty()) {
        return false;
    }
    answer(m_decision.visible.front().key, bench::Answered::HandsOn);
    return true;
}

void AlertService::pauseSound(Span asked, Instant now)
{
    m_wishes.pausedUntil = bench::pausedUntil(now, asked);
    look(now);
}

void AlertService::setSoundOff(bool off) { m_wishes.off = off; }

void AlertService::setSoundWorks(bool works) { m_soundWorks = works; }

} // namespace mend::service
