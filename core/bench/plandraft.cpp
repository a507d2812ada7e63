#include "core/bench/plandraft.h"

#include <algorithm>

namespace mend::bench {

namespace {

using plan::Minute;

template <class T> void addOnce(std::vector<T>& list, const T& each)
{
    if (std::ranges::find(list, each) == list.end()) {
        list.push_back(each);
    }
}

bool namesAny(const std::vector<std::string>& row, const std::vector<std::string>& names)
{
    return std::ranges::any_of(names,
                               [&](const std::string& name) { return std::ranges::find(row, name) != row.end(); });
}

/// Rows that the planner has to keep; those that only warn never enter a plan.
bool keepsApart(const rules::Hazard& hazard)
{
    return hazard.meeting == rules::Meeting::Overlap && hazard.verdict == rules::Verdict::Block;
}

} // namespace

PlanDraft::PlanDraft(const BenchFold& bench, const rules::RuleBook& book, Instant now, Instant horizon)
    : m_bench(bench), m_book(book)
{
    m_result.zero = std::chrono::floor<std::chrono::days>(now);
    m_result.problem.name = "bench";
    m_result.problem.now = m_result.minuteUp(now);
    m_result.problem.horizon = m_result.minuteDown(horizon);
}

void PlanDraft::setStaff(const Staffing& staffing)
{
    m_result.people = staffing.people;
    for (const PersonId id : staffing.people) {
        const record::Person* person = m_bench.roster.person(id);
        m_result.problem.people.push_back(named(person ? person->name : "hands"));
    }
    for (const InstantRange& open : staffing.open) {
        const plan::Stretch stretch{m_result.minuteUp(open.from), m_result.minuteDown(open.to)};
        if (stretch.from < stretch.to) {
            m_result.problem.open.push_back(stretch);
        }
    }
}

void PlanDraft::beginPiece(PieceId piece, std::optional<Minute> promised)
{
    m_result.pieces.push_back(piece);
    plan::Piece row;
    const PieceState* state = m_bench.piece(piece);
    row.id = named(state ? state->piece.number + " " + state->piece.benchName : "room");
    row.weight = promised ? 1 : 0;
    row.promised = promised.value_or(m_result.problem.horizon);
    m_result.problem.pieces.push_back(row);
}

void PlanDraft::beginRoom(const Staffing& staffing)
{
    beginPiece(PieceId{}, std::nullopt);
    for (const Booking& booking : staffing.taken) {
        // Cut to whole minutes of the hours that the hands would have.
        const Minute from = std::max(m_result.problem.now, m_result.minuteUp(booking.when.from));
        const Minute to = m_result.minuteDown(booking.when.to);
        if (from >= to) {
            continue;
        }
        plan::Step step;
        step.kind = booking.what;
        step.id = named(booking.what);
        step.duration = to - from;
        step.earliest = from;
        step.latestEnd = to;
        add(std::move(step), {});
    }
}

/// What a mender reads in a reason; a second one of the same name is told apart by a figure.
std::string PlanDraft::named(const std::string& name)
{
    const int count = ++m_names[name];
    return count == 1 ? name : named(name + " #" + std::to_string(count));
}

std::string PlanDraft::nameOf(PieceId piece, const StageInstance& at, const std::string& act) const
{
    const PieceState* state = m_bench.piece(piece);
    std::string name = (state ? state->piece.number + " " + state->piece.benchName : std::string()) + ": " + act;
    if (at.repetition > 1) {
        name += ", " + std::to_string(at.repetition);
    }
    return name;
}

int PlanDraft::add(plan::Step step, const PlanStep& means)
{
    step.piece = static_cast<int>(m_result.problem.pieces.size()) - 1;
    m_result.problem.steps.push_back(std::move(step));
    m_result.steps.push_back(means);
    return static_cast<int>(m_result.steps.size()) - 1;
}

int PlanDraft::addStage(const StageInstance& at, const rules::Stage& stage, Minute hands)
{
    plan::Step step;
    const PieceId piece = m_result.pieces.back();
    step.id = named(nameOf(piece, at, stage.act));
    step.kind = at.stage;
    step.duration = hands;
    Held held;
    held.piece = piece;
    held.stage = stage.key;
    held.names = stage.during;
    held.names.insert(held.names.end(), stage.resources.begin(), stage.resources.end());
    if (!stage.places.empty()) {
        held.names.push_back(stage.places.front());
    }
    const auto trays = std::ranges::count(m_bench.roster.places, record::PlaceKind::Tray, &record::Place::kind);
    if (std::ranges::find(stage.resources, "tray") != stage.resources.end()) {
        step.uses.push_back({resourceOf("tray", std::max(1, static_cast<int>(trays))), 1});
    }
    held.step = add(std::move(step), {piece, at});
    m_held.push_back(held);
    return held.step;
}

int PlanDraft::addTodo(const StageInstance& at, const rules::Stage& stage, Minute hands, Minute earliest)
{
    const int index = addStage(at, stage, hands);
    if (earliest > m_result.problem.now) {
        m_result.problem.steps[plan::slot(index)].earliest = earliest;
    }
    return index;
}

int PlanDraft::addRunning(const StageInstance& at, const rules::Stage& stage, Instant begun, Minute hands)
{
    const int index = addStage(at, stage, hands);
    plan::Step& step = m_result.problem.steps[plan::slot(index)];
    step.started = m_result.minuteDown(begun);
    // Longer than reckoned, it will be done any minute.
    step.duration = std::max(hands, m_result.problem.now - *step.started + 1);
    const auto atBench = std::ranges::find(m_result.people, m_bench.atBench);
    step.person = atBench == m_result.people.end() ? 0 : static_cast<int>(atBench - m_result.people.begin());
    return index;
}

int PlanDraft::addDone(const PieceState& piece, const StageRecord& told)
{
    const PlanStep means{piece.piece.id, told.at};
    const auto [held, fresh] = m_done.try_emplace(means, -1);
    if (!fresh) {
        return held->second;
    }
    plan::Step step;
    const rules::Procedure* procedure = procedureOf(piece, m_book);
    const rules::Stage* stage = procedure ? procedure->find(told.at.stage) : nullptr;
    step.id = named(nameOf(piece.piece.id, told.at, stage ? stage->act : told.at.stage));
    step.kind = told.at.stage;
    step.started = m_result.minuteDown(told.firstTouch.value_or(*told.lastTouch));
    step.duration = std::max(1, m_result.minuteDown(*told.lastTouch) - *step.started);
    step.person = 0;
    return held->second = add(std::move(step), means);
}

int PlanDraft::addAfter(int before, Minute minutes)
{
    plan::Step step;
    const plan::Step& done = m_result.problem.steps[plan::slot(before)];
    step.id = named("after " + done.id);
    step.kind = "by itself";
    step.hands = false;
    step.duration = std::max(1, minutes);
    const int index = add(std::move(step), {m_result.steps[plan::slot(before)].piece, {}});
    m_result.problem.steps.back().piece = m_result.problem.steps[plan::slot(before)].piece;
    tie(before, index, 0, 0);
    return index;
}

void PlanDraft::endBy(int step, Minute end)
{
    auto& latest = m_result.problem.steps[plan::slot(step)].latestEnd;
    latest = latest ? std::min(*latest, end) : end;
}

void PlanDraft::tie(int from, int to, Minute least, std::optional<Minute> most)
{
    const auto [held, fresh] = m_lags.try_emplace({from, to}, m_result.problem.lags.size());
    if (fresh) {
        m_result.problem.lags.push_back({from, to, std::max(least, -plan::farthest), most});
        return;
    }
    plan::Lag& lag = m_result.problem.lags[held->second];
    lag.least = std::max(lag.least, least);
    if (most) {
        lag.most = lag.most ? std::min(*lag.most, *most) : most;
    }
}

bool PlanDraft::isTied(int from, int to) const
{
    const auto held = m_lags.find({from, to});
    return held != m_lags.end() && m_result.problem.lags[held->second].most;
}

void PlanDraft::tag(int step, const std::string& name) { addOnce(m_result.problem.steps[plan::slot(step)].tags, name); }

void PlanDraft::tag(const Held& held, const std::string& name)
{
    addOnce(held.step >= 0 ? m_result.problem.steps[plan::slot(held.step)].tags
                           : m_result.problem.waits[plan::slot(held.wait)].tags,
            name);
}

void PlanDraft::keepApart(const std::string& one, const std::string& other)
{
    addOnce(m_result.problem.incompatible, {one, other});
}

int PlanDraft::resourceOf(const std::string& id, int capacity)
{
    auto& resources = m_result.problem.resources;
    const auto found = std::ranges::find(resources, id, &plan::Resource::id);
    if (found != resources.end()) {
        return static_cast<int>(found - resources.begin());
    }
    resources.push_back({id, capacity});
    return static_cast<int>(resources.size()) - 1;
}

plan::Wait& PlanDraft::waitBetween(int from, int to)
{
    const auto [held, fresh] = m_waits.try_emplace({from, to}, m_result.problem.waits.size());
    if (fresh) {
        tie(from, to, 1, std::nullopt);
        m_result.problem.waits.push_back({named("wait after " + step(from).id), from, to, {}, {}});
    }
    return m_result.problem.waits[held->second];
}

void PlanDraft::holdPlace(int from, int to, record::PlaceKind kind)
{
    int slots = 0;
    for (const record::Place& place : m_bench.roster.places) {
        if (place.kind == kind && place.slots == 0) {
            return; // as many as one likes
        }
        slots += place.kind == kind ? place.slots : 0;
    }
    if (slots > 0) {
        const int resource = resourceOf(record::placeKindKey(kind), slots);
        waitBetween(from, to).uses.push_back({resource, 1});
    }
}

void PlanDraft::holdState(int from, int to, const std::string& state, PieceId piece)
{
    waitBetween(from, to);
    Held held;
    held.names = {state};
    held.piece = piece;
    held.stage = m_result.steps[plan::slot(from)].stage.stage;
    held.wait = static_cast<int>(m_waits.at({from, to}));
    m_held.push_back(held);
}

void PlanDraft::leaveState(int after, Minute minutes, const std::string& state, PieceId piece)
{
    const bool matters = std::ranges::any_of(m_book.hazards, [&](const rules::Hazard& hazard) {
        return keepsApart(hazard) && (namesAny(hazard.one, {state}) || namesAny(hazard.other, {state}));
    });
    if (!matters) {
        return;
    }
    Held held;
    held.names = {state};
    held.piece = piece;
    held.stage = m_result.steps[plan::slot(after)].stage.stage;
    // States that a stage leaves for the same time are one interval.
    const auto same = std::ranges::find_if(m_held, [&](const Held& each) {
        return each.step >= 0 && m_lags.contains({after, each.step}) &&
               m_result.steps[plan::slot(each.step)].stage.stage.empty() &&
               step(each.step).duration == std::max(1, minutes);
    });
    if (same != m_held.end()) {
        same->names.push_back(state);
        return;
    }
    held.step = addAfter(after, minutes);
    m_held.push_back(held);
}

void PlanDraft::addInForce(const StateInForce& state, int ender)
{
    const Minute now = m_result.problem.now;
    const bool endsInTime = state.until && m_result.minuteUp(*state.until) > now;
    if (ender < 0 && !endsInTime) {
        return;
    }
    plan::Step step;
    const rules::BenchState* known = m_book.state(state.state);
    step.id = named(known ? known->text : state.state);
    step.kind = state.state;
    step.hands = false;
    step.started = std::min(now - 1, m_result.minuteDown(state.since));
    step.duration = ender >= 0 ? 1 : m_result.minuteUp(*state.until) - *step.started;
    const int index = add(std::move(step), {});
    if (ender >= 0) {
        holdState(index, ender, state.state, state.piece);
        return;
    }
    Held held;
    held.names = {state.state};
    held.piece = state.piece;
    held.step = index;
    m_held.push_back(held);
}

/// Pieces that a row does not hold against each other are one group.
std::string PlanDraft::groupOf(const rules::Hazard& hazard, PieceId piece) const
{
    const PieceState* state = m_bench.piece(piece);
    if (hazard.reach != rules::Reach::Piece && hazard.spares == rules::Spares::SameOwner && state) {
        return "owner " + std::to_string(state->piece.owner.value());
    }
    return std::to_string(piece.value());
}

void PlanDraft::addHazard(const rules::Hazard& hazard)
{
    struct Side {
        std::string group;
        std::size_t held;
    };
    std::vector<Side> one;
    std::vector<Side> other;
    for (std::size_t i = 0; i < m_held.size(); ++i) {
        if (namesAny(hazard.exceptStages, {m_held[i].stage})) {
            continue;
        }
        if (namesAny(hazard.one, m_held[i].names)) {
            one.push_back({groupOf(hazard, m_held[i].piece), i});
        }
        if (namesAny(hazard.other, m_held[i].names)) {
            other.push_back({groupOf(hazard, m_held[i].piece), i});
        }
    }
    const bool samePiece = hazard.reach == rules::Reach::Piece;
    const bool spares = !samePiece && hazard.spares != rules::Spares::Nothing;
    for (const Side& a : one) {
        for (const Side& b : other) {
            if ((samePiece && a.group != b.group) || (spares && a.group == b.group)) {
                continue;
            }
            const bool apart = samePiece || spares;
            const std::string first = hazard.key + " one" + (apart ? " " + a.group : "");
            const std::string second = hazard.key + " other" + (apart ? " " + b.group : "");
            tag(m_held[a.held], first);
            tag(m_held[b.held], second);
            keepApart(first, second);
        }
    }
}

void PlanDraft::addHazards()
{
    for (const rules::Hazard& hazard : m_book.hazards) {
        if (keepsApart(hazard)) {
            addHazard(hazard);
        }
    }
}

BenchProblem PlanDraft::finish()
{
    addHazards();
    const int room = static_cast<int>(m_result.pieces.size()) - 1;
    const auto isRooms = [room](const plan::Step& step) { return step.piece == room; };
    if (std::ranges::none_of(m_result.problem.steps, isRooms)) {
        m_result.pieces.pop_back();
        m_result.problem.pieces.pop_back();
    }
    return std::move(m_result);
}

} // namespace mend::bench
