#include "core/bench/gapair.h"

#include <algorithm>
#include <tuple>

namespace mend::bench {

namespace {

/// The word is the alert's key, a bar, and how it was answered.
void keepAnswer(std::vector<AlertAnswer>& answers, const Event& event)
{
    const auto bar = event.word.rfind('|');
    if (bar == std::string::npos) {
        return;
    }
    AlertAnswer answer{event.word.substr(0, bar), event.word.substr(bar + 1), event.happened, event.until,
                       event.person};
    const auto held = std::ranges::find(answers, answer.key, &AlertAnswer::key);
    if (held == answers.end()) {
        answers.push_back(std::move(answer));
    } else {
        *held = std::move(answer);
    }
}

using Gaps = std::map<std::tuple<PlaceId, Instant>, Event>;

/// Tells one event after the other into the fold. What each `What` means stands in event.h.
class Teller {
public:
    Teller(BenchFold& bench, const rules::RuleBook& book) : m_bench(bench), m_book(book) {}

    void tell(const Event& event)
    {
        if (PieceState* piece = pieceOf(event)) {
            tellPiece(*piece, event);
        }
        tellMix(event);
        tellBench(event);
    }

    /// Gap answers change the air between readings, so they are told once all readings are known.
    void tellGaps()
    {
        for (const auto& [key, gap] : m_gaps) {
            fillGap(m_bench, gap);
        }
    }

private:
    PieceState* pieceOf(const Event& event)
    {
        const auto found = m_bench.pieces.find(event.piece);
        return found == m_bench.pieces.end() ? nullptr : &found->second;
    }

    StageRecord& recordOf(PieceState& piece, const StageInstance& at)
    {
        const auto place = std::ranges::lower_bound(piece.stages, at, {}, &StageRecord::at);
        if (place != piece.stages.end() && place->at == at) {
            return *place;
        }
        StageRecord fresh;
        fresh.at = at;
        return *piece.stages.insert(place, fresh);
    }

    void tellPiece(PieceState& piece, const Event& event)
    {
        switch (event.what) {
        case What::Begun:
        case What::Done:
        case What::NotYet:
        case What::Skipped:
        case What::Missed:
        case What::DoingLate:
            tellStage(piece, event);
            break;
        case What::SentBack:
            sendBack(piece, event.stage.stage);
            break;
        case What::MoreToCome:
            ++piece.moreToCome[event.stage.stage];
            break;
        case What::Placed:
            lay(piece, event);
            break;
        case What::HoldBegun:
            piece.onHold = true;
            break;
        case What::HoldEnded:
            piece.onHold = false;
            break;
        case What::Overridden:
            answerHazard(piece, event);
            break;
        case What::RulesAdopted:
            piece.rules = event.rules;
            break;
        case What::HandedOver:
            piece.handedOverAt = event.happened;
            break;
        case What::ReturnedUnmended:
            piece.returnedUnmended = true;
            break;
        case What::Received:
            if (!piece.receivedAt) {
                receive(piece, event);
            }
            break;
        case What::CameBack:
            comeBack(piece, event);
            break;
        case What::WaitShortened:
            piece.waitShortenedTo = event.until;
            break;
        case What::MaterialRemoved:
            std::erase_if(piece.earlier, [&](const auto& held) { return held.material == event.word; });
            std::erase(piece.piece.materialsInIt, event.word);
            break;
        case What::Agreed:
            if (!piece.agreed) {
                piece.rules = event.rules;
            }
            piece.agreed = true;
            if (!piece.receivedAt) {
                receive(piece, event);
            }
            lay(piece, event);
            break;
        case What::OptionChosen:
            piece.chosenOptions.insert(event.stage.stage);
            break;
        case What::Lifted:
            piece.conditions.insert("lifted");
            break;
        case What::WaitingForOwner:
            piece.waitingForOwner = true;
            break;
        case What::OwnerAnswered:
            piece.waitingForOwner = false;
            break;
        default:
            break;
        }
    }

    static void receive(PieceState& piece, const Event& event)
    {
        piece.receivedAt = event.happened;
        piece.rules = event.rules;
        piece.stays.front().from = std::min(piece.stays.front().from, event.happened);
        if (event.place.isSet()) {
            piece.stays.front().place = event.place;
        }
    }

    /// A piece that came back begins anew, with what was put into it before.
    void comeBack(PieceState& piece, const Event& event)
    {
        PieceState fresh;
        fresh.piece = piece.piece;
        fresh.visit = piece.visit + 1;
        fresh.agreed = false;
        fresh.earlier = piece.earlier;
        for (EarlierMaterial& put : materialsPutIn(piece, m_book)) {
            fresh.earlier.push_back(std::move(put));
        }
        fresh.stays.push_back({event.happened, piece.placeAt(event.happened)});
        fresh.chosenOptions.insert(fresh.piece.optionalStages.begin(), fresh.piece.optionalStages.end());
        receive(fresh, event);
        piece = std::move(fresh);
    }

    static void lay(PieceState& piece, const Event& event)
    {
        if (event.place.isSet() && piece.placeAt(event.happened) != event.place) {
            // A fact can be told for a time before the piece came in; it lay somewhere then, too.
            piece.stays.front().from = std::min(piece.stays.front().from, event.happened);
            piece.stays.push_back({event.happened, event.place});
        }
    }

    void tellStage(PieceState& piece, const Event& event)
    {
        StageRecord& told = recordOf(piece, event.stage);
        switch (event.what) {
        case What::Begun:
            if (!told.firstTouch) {
                told.firstTouch = event.happened;
                told.firstBy = event.id;
            }
            break;
        case What::Done:
            finish(piece, told, event);
            break;
        case What::NotYet:
            told.notYet = event.happened;
            break;
        case What::Skipped:
            told.skipped = true;
            break;
        case What::Missed:
            told.missed = true;
            break;
        default:
            told.doingLate = true;
            told.missed = false;
            break;
        }
        if (event.mix.isSet()) {
            told.mix = event.mix;
        }
        lay(piece, event);
    }

    void finish(PieceState& piece, StageRecord& told, const Event& event)
    {
        told.lastTouch = event.happened;
        told.lastBy = event.id;
        told.missed = false;
        const rules::Procedure* procedure = procedureOf(piece, m_book);
        const rules::Stage* stage = procedure ? procedure->find(event.stage.stage) : nullptr;
        if (!told.firstTouch || *told.firstTouch > event.happened) {
            told.firstTouch = event.happened - (stage ? handsOn(*stage, piece, m_book) : Span{0});
            told.firstBy = event.id;
        }
        if (!stage) {
            return;
        }
        for (const std::string& state : stage->ends) {
            endState(state, piece.piece.id);
        }
        for (const rules::Leaves& left : stage->leaves) {
            beginState(left.state, left.lasts, piece.piece.id, event);
        }
    }

    /// A stage's own figure for how long rules over the state's; with neither it lasts until told.
    void beginState(const std::string& key, const std::optional<rules::SpanFigure>& lasts, PieceId piece,
                    const Event& event)
    {
        const rules::BenchState* known = m_book.state(key);
        const auto& figure = lasts || !known ? lasts : known->lasts;
        std::optional<Instant> until = event.until;
        if (!until && figure) {
            until = event.happened + figure->value;
        }
        m_bench.states.push_back({key, event.happened, until, piece, event.id});
    }

    /// Of one piece, or of all where none is named.
    void endState(const std::string& key, PieceId piece)
    {
        std::erase_if(m_bench.states, [&](const StateInForce& state) {
            return state.state == key && (!piece.isSet() || state.piece == piece);
        });
    }

    /// An answer that ends a state ends it for the whole bench: the can holds all pads.
    void answerHazard(PieceState& piece, const Event& event)
    {
        piece.overrides.push_back({event.stage, event.word, event.happened});
        const auto colon = event.word.find(':');
        const rules::Hazard* hazard = m_book.hazard(event.word.substr(0, colon));
        if (!hazard || colon == std::string::npos) {
            return;
        }
        const auto answer = std::ranges::find(hazard->answers, event.word.substr(colon + 1), &rules::Answer::key);
        if (answer != hazard->answers.end() && !answer->ends.empty()) {
            endState(answer->ends, PieceId{});
        }
    }

    void sendBack(PieceState& piece, const std::string& stageKey)
    {
        const rules::Procedure* procedure = procedureOf(piece, m_book);
        const auto from = procedure ? procedure->indexOf(stageKey) : std::nullopt;
        if (!from) {
            return;
        }
        std::erase_if(piece.stages, [&](const StageRecord& told) {
            const auto index = procedure->indexOf(told.at.stage);
            return index && *index >= *from;
        });
    }

    void tellMix(const Event& event)
    {
        if (event.what == What::MixStarted) {
            MixState mix;
            mix.id = event.mix;
            mix.material = event.word;
            mix.batch = event.note;
            mix.mixedAt = event.happened;
            mix.mixedBy = event.id;
            m_bench.mixes[event.mix] = mix;
            return;
        }
        const auto found = m_bench.mixes.find(event.mix);
        if (found == m_bench.mixes.end()) {
            return;
        }
        MixState& mix = found->second;
        if (event.what == What::MixEnded) {
            mix.endedAt = event.happened;
            mix.ended = event.word;
        } else if (event.what == What::MixWeighed && event.amount) {
            mix.mass = milligrams(*event.amount);
        } else if ((event.what == What::Begun || event.what == What::Done) && event.piece.isSet() &&
                   std::ranges::find(mix.on, event.piece) == mix.on.end()) {
            mix.on.push_back(event.piece);
        }
    }

    void tellBench(const Event& event)
    {
        switch (event.what) {
        case What::ReadingTaken:
            if (event.temperature) {
                const cure::Reading reading{event.happened, *event.temperature, event.humidity};
                m_bench.air[event.place].forWaits.readings.push_back(reading);
                m_bench.air[event.place].forClosings.readings.push_back(reading);
            }
            break;
        case What::GapAnswered:
            if (event.from) {
                m_gaps[{event.place, *event.from}] = event;
            }
            break;
        case What::StateBegun:
            beginState(event.word, std::nullopt, event.piece, event);
            break;
        case What::StateEnded:
            endState(event.word, event.piece);
            break;
        case What::AlertAnswered:
            keepAnswer(m_bench.answers, event);
            break;
        case What::PersonCame:
            m_bench.atBench = event.person;
            break;
        case What::AwayBegun:
            m_bench.awaySince = event.happened;
            break;
        case What::AwayEnded:
            m_bench.awaySince.reset();
            break;
        default:
            break;
        }
    }

    BenchFold& m_bench;
    const rules::RuleBook& m_book;
    Gaps m_gaps;
};

Span readingAge(record::PlaceKind kind, const rules::Practice& practice)
{
    const bool steady = kind == record::PlaceKind::Cabinet || kind == record::PlaceKind::HumidBox;
    return steady ? practice.cabinetReadingAge.value : practice.benchReadingAge.value;
}

PieceState untold(const record::Piece& piece, const Roster& roster)
{
    PieceState state;
    state.piece = piece;
    state.agreed = false;
    const record::Place* bench = roster.firstOfKind(record::PlaceKind::Bench);
    state.stays.push_back({Instant::max(), bench ? bench->id : PlaceId{}});
    state.chosenOptions.insert(piece.optionalStages.begin(), piece.optionalStages.end());
    return state;
}

} // namespace

bool addAnswers(BenchFold& bench, std::span<const Event> events)
{
    Instant newest = Instant::min();
    for (const AlertAnswer& answer : bench.answers) {
        newest = std::max(newest, answer.at);
    }
    for (const Event& event : events) {
        if (event.what != What::AlertAnswered || event.happened < newest) {
            return false;
        }
        newest = event.happened;
    }
    for (const Event& event : events) {
        keepAnswer(bench.answers, event);
    }
    return true;
}

BenchFold fold(const Roster& roster, std::span<const Event> events, const rules::RuleBook& book)
{
    BenchFold bench;
    bench.roster = roster;
    for (const record::Piece& piece : roster.pieces) {
        bench.pieces.emplace(piece.id, untold(piece, roster));
    }
    for (const record::Place& place : roster.places) {
        PlaceAir& air = bench.air[place.id];
        air.forWaits.maxAge = air.forClosings.maxAge = readingAge(place.kind, book.practice);
    }
    Teller teller(bench, book);
    for (const Event& event : effective(events)) {
        teller.tell(event);
    }
    teller.tellGaps();
    std::erase_if(bench.pieces, [](const auto& held) {
        return held.second.handedOverAt.has_value() || held.second.returnedUnmended;
    });
    return bench;
}

} // namespace mend::bench
