#include "core/bench/hazardrows.h"

#include "core/cure/progress.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// A stage that waits to be done after one that is about to start, and when it would close.
class Forecast {
public:
    Forecast(const StartAsked& asked, const BenchPicture& picture)
        : m_asked(asked), m_picture(picture), m_hands(handsOn(*asked.stage, *asked.contents->piece, picture.book()))
    {
    }

    Span handsOnStart() const { return m_hands; }

    /// Every stage with a close that hangs on the start alone, of those that are meant.
    template <class Meant> std::vector<Closing> dependents(Meant isMeant) const
    {
        std::vector<Closing> closings;
        for (const rules::Stage& stage : m_asked.contents->procedure->stages) {
            const auto closing = isMeant(stage) ? closingOf(stage) : std::nullopt;
            if (closing) {
                closings.push_back(*closing);
            }
        }
        return closings;
    }

    /// When the stage could be begun after this start: the latest of what hangs on it.
    Instant opensAfter(const rules::Stage& stage) const
    {
        Instant opens = m_picture.now() + m_hands;
        for (const rules::Lag& lag : stage.opens) {
            if (lag.from.stage == m_asked.stage->key && holds(lag.when, *m_asked.contents->piece)) {
                opens = std::max(opens, originOf(lag) + (lag.waitOfStage ? Span{0} : lag.span.value));
            }
        }
        return opens;
    }

private:
    std::optional<Closing> closingOf(const rules::Stage& stage) const
    {
        std::optional<Instant> closes;
        bool soft = false;
        for (const rules::Lag& lag : stage.closes) {
            if (lag.from.stage != m_asked.stage->key || !holds(lag.when, *m_asked.contents->piece)) {
                continue;
            }
            const Instant end = endOf(lag);
            if (!closes || end < *closes) {
                closes = end;
                soft = lag.soft;
            }
        }
        if (!closes) {
            return std::nullopt;
        }
        const bool sameRepeat = stage.repeat == m_asked.stage->repeat;
        const int repetition = sameRepeat ? m_asked.start.stage.repetition : 1;
        return Closing{m_asked.start.piece,
                       {stage.key, repetition},
                       opensAfter(stage),
                       *closes,
                       handsOn(stage, *m_asked.contents->piece, m_picture.book()),
                       soft};
    }

    Instant originOf(const rules::Lag& lag) const
    {
        switch (lag.from.touch) {
        case rules::Touch::First:
            return m_picture.now();
        case rules::Touch::Last:
            return m_picture.now() + m_hands;
        case rules::Touch::Mixing:
            return mixedAt();
        }
        return m_picture.now();
    }

    /// The oldest living mix of that kind is the one that would be taken.
    Instant mixedAt() const
    {
        Instant mixed = m_picture.now();
        for (const auto& [id, mix] : m_picture.bench().mixes) {
            if (mix.isAlive() && mix.material == m_asked.stage->mix) {
                mixed = std::min(mixed, mix.mixedAt);
            }
        }
        return mixed;
    }

    /// What stiffens is the stage that is started, by its law and its place's air.
    Instant endOf(const rules::Lag& lag) const
    {
        const rules::NamedLaw* law = m_picture.book().law(m_asked.stage->law);
        const auto air = m_picture.airOf(m_asked.start.place);
        const Instant origin = originOf(lag);
        if (!law || !air) {
            return origin + lag.span.value;
        }
        const cure::Climate asNow{{cure::Air{origin, air->temperature, air->humidity, air->trust}}};
        return cure::forecastClose(lag.span.value, law->law, m_asked.stage->reference, asNow, origin);
    }

    const StartAsked& m_asked;
    const BenchPicture& m_picture;
    Span m_hands;
};

bool isNamed(const rules::Stage& stage, const rules::Hazard& hazard, const BenchPicture& picture)
{
    const StageFacts& facts = picture.factsOf(stage);
    return facts.bringsAny(hazard.one) || facts.bringsAny(hazard.other);
}

/// When a set that is in somebody's hands has to be in place, counted from its mixing.
Instant countedClose(const StageRecord& told, const rules::Counted& counted, const BenchFold& bench)
{
    const auto mix = bench.mixes.find(told.mix);
    const bool fromMix = counted.from == rules::Touch::Mixing && mix != bench.mixes.end();
    return (fromMix ? mix->second.mixedAt : *told.firstTouch) + counted.red.value;
}

/// Counted windows of the row: they exist only while they are in somebody's hands.
void addCounted(const Contents& contents, const rules::Hazard& hazard, const BenchPicture& picture,
                std::vector<Closing>& closings)
{
    for (const StageRecord& told : contents.piece->stages) {
        const rules::Stage* stage =
            contents.procedure && told.isUnderHands() ? contents.procedure->find(told.at.stage) : nullptr;
        if (!stage || !stage->counted || !isNamed(*stage, hazard, picture)) {
            continue;
        }
        const Instant closes = countedClose(told, *stage->counted, picture.bench());
        if (closes > picture.now()) {
            closings.push_back({contents.piece->piece.id, told.at, picture.now(), closes, Span{0}, false});
        }
    }
}

/// The closings that a start brings: of the stage itself and of what hangs on it.
std::vector<Closing> closingsOfStart(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture)
{
    std::vector<Closing> closings;
    const Forecast forecast(asked, picture);
    if (isNamed(*asked.stage, hazard, picture)) {
        const auto own = std::ranges::find_if(picture.windows(), [&](const Window& window) {
            return window.piece == asked.start.piece && window.stage == asked.start.stage;
        });
        std::optional<Instant> closes;
        if (asked.stage->counted) {
            closes = picture.now() + asked.stage->counted->red.value;
        } else if (own != picture.windows().end()) {
            closes = own->closes;
        }
        if (closes) {
            closings.push_back({asked.start.piece, asked.start.stage, picture.now(), *closes, Span{0}, false});
        }
    }
    const std::vector<Closing> opened = forecast.dependents(
        [&](const rules::Stage& stage) { return !stage.counted && isNamed(stage, hazard, picture); });
    closings.insert(closings.end(), opened.begin(), opened.end());
    return closings;
}

bool isSame(const Closing& a, const Closing& b) { return a.piece == b.piece && a.stage == b.stage; }

/// Adds the two to the row's one finding if they close within its span of each other.
void addIfClose(const Closing& a, const Closing& b, const rules::Hazard& hazard, Findings& found)
{
    const Span apart = a.closes < b.closes ? b.closes - a.closes : a.closes - b.closes;
    if (isSame(a, b) || apart >= hazard.span->value) {
        return;
    }
    auto held = std::ranges::find(found, &hazard, &HazardFinding::hazard);
    if (held == found.end()) {
        HazardFinding fresh;
        fresh.hazard = &hazard;
        fresh.verdict = hazard.verdict;
        found.push_back(fresh);
        held = std::prev(found.end());
    }
    addPiece(held->pieces, a.piece);
    addPiece(held->pieces, b.piece);
    held->until = std::max(held->until.value_or(b.closes), b.closes);
}

/// Nobody is there at the close, nor so long before it that the hands would be off in time
/// on the next day.
bool closesUnattended(const Closing& closing, const BenchDay& day)
{
    return closing.closes > *day.benchCloses && (!day.nextOpens || closing.closes - closing.handsOn < *day.nextOpens);
}

HazardFinding afterHours(const rules::Hazard& hazard, const BenchDay& day, rules::Verdict verdict)
{
    HazardFinding finding;
    finding.hazard = &hazard;
    finding.verdict = verdict;
    finding.until = day.nextOpens;
    return finding;
}

} // namespace

std::vector<Closing> runningClosings(const rules::Hazard& row, const BenchPicture& picture)
{
    std::vector<Closing> closings;
    for (const Window& window : picture.windows()) {
        const rules::Stage* stage = picture.stage(window.piece, window.stage.stage);
        if (stage && !stage->counted && isNamed(*stage, row, picture) && window.closes &&
            *window.closes > picture.now()) {
            closings.push_back(
                {window.piece, window.stage, picture.now(), *window.closes, window.handsOn, window.soft});
        }
    }
    for (const Contents& contents : picture.pieces()) {
        addCounted(contents, row, picture, closings);
    }
    return closings;
}

BenchDay benchDayOf(const Roster& roster, Instant now)
{
    BenchDay day;
    for (const InstantRange& hours : roster.openHours) {
        if (hours.to < now) {
            continue;
        }
        if (!day.benchCloses && hours.from <= now) {
            day.benchCloses = hours.to;
        } else if (hours.from > now) {
            day.nextOpens = hours.from;
            break;
        }
    }
    if (!day.benchCloses && day.nextOpens) {
        day.benchCloses = now; // nobody is there already
    }
    return day;
}

void findOnOneHand(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    if (!asked.stage || !hazard.span || answeredAt(asked, hazard)) {
        return;
    }
    const std::vector<Closing> mine = closingsOfStart(asked, hazard, picture);
    if (mine.empty()) {
        return;
    }
    for (const Closing& running : picture.closings(hazard)) {
        for (const Closing& closing : mine) {
            addIfClose(closing, running, hazard, found);
        }
    }
}

void findStandingOnOneHand(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    if (!hazard.span) {
        return;
    }
    const std::vector<Closing>& running = picture.closings(hazard);
    for (std::size_t i = 0; i < running.size(); ++i) {
        for (std::size_t j = i + 1; j < running.size(); ++j) {
            addIfClose(running[i], running[j], hazard, found);
        }
    }
}

/// What can still be done before the bench closes is only said; what cannot is the row's own verdict.
void findAfterHours(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture,
                    const BenchDay& day, Findings& found)
{
    if (!asked.stage || !day.benchCloses || answeredAt(asked, hazard)) {
        return;
    }
    const Forecast forecast(asked, picture);
    std::optional<rules::Verdict> worst;
    for (const Closing& closing : forecast.dependents([](const rules::Stage&) { return true; })) {
        if (!closesUnattended(closing, day)) {
            continue;
        }
        const bool canBeDone = closing.opens + closing.handsOn <= *day.benchCloses;
        const auto verdict = canBeDone || closing.soft ? rules::Verdict::Remind : hazard.verdict;
        worst = std::min(worst.value_or(verdict), verdict);
    }
    for (const rules::Stage& stage : asked.contents->procedure->stages) {
        const bool hangsOnStart =
            std::ranges::any_of(stage.opens, [&](const rules::Lag& lag) { return lag.from.stage == asked.stage->key; });
        const Span hands = handsOn(stage, *asked.contents->piece, picture.book());
        if (stage.closesAtEndOfDay && hangsOnStart && forecast.opensAfter(stage) + hands > *day.benchCloses) {
            worst = worst.value_or(rules::Verdict::Remind);
        }
    }
    if (worst) {
        HazardFinding finding = afterHours(hazard, day, *worst);
        addPiece(finding.pieces, asked.start.piece);
        found.push_back(finding);
    }
}

void findStandingAfterHours(const rules::Hazard& hazard, const BenchPicture& picture, const BenchDay& day,
                            Findings& found)
{
    if (!day.benchCloses) {
        return;
    }
    HazardFinding finding = afterHours(hazard, day, rules::Verdict::Remind);
    for (const Window& window : picture.windows()) {
        if (!window.closes || *window.closes < picture.now() || window.counted) {
            continue;
        }
        if (closesUnattended({window.piece, window.stage, picture.now(), *window.closes, window.handsOn, window.soft},
                             day)) {
            addPiece(finding.pieces, window.piece);
        }
    }
    if (!finding.pieces.empty()) {
        found.push_back(finding);
    }
}

} // namespace mend::bench
