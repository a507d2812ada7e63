#include "core/bench/state.h"

#include <algorithm>
#include <cmath>

namespace mend::bench {

bool holds(const rules::Condition& condition, const PieceState& piece)
{
    if (condition.empty()) {
        return true;
    }
    if (condition == "vitrified") {
        return piece.piece.body == record::Body::Vitrified;
    }
    if (condition == "porous") {
        return piece.piece.body != record::Body::Vitrified;
    }
    if (condition == "supported") {
        return !piece.conditions.contains("lifted");
    }
    return piece.conditions.contains(condition);
}

bool isPassedOver(const rules::Stage& stage, const PieceState& piece)
{
    if (!stage.optional || piece.chosenOptions.contains(stage.key)) {
        return false;
    }
    return std::ranges::none_of(piece.stages, [&](const StageRecord& told) {
        return told.at.stage == stage.key && told.firstTouch.has_value();
    });
}

const rules::Procedure* procedureOf(const PieceState& piece, const rules::RuleBook& book)
{
    if (const rules::Procedure* revision = book.revision(piece.rules)) {
        return revision;
    }
    return book.procedure(piece.piece.procedure);
}

namespace {

/// Asked for by the mender beyond what was reckoned: all stages that repeat together share it.
int moreAskedFor(const rules::Stage& stage, const PieceState& piece, const rules::RuleBook& book)
{
    const rules::Procedure* procedure = procedureOf(piece, book);
    int more = 0;
    for (const auto& [key, count] : piece.moreToCome) {
        const rules::Stage* asked = procedure ? procedure->find(key) : nullptr;
        if (asked && asked->repeat == stage.repeat) {
            more += count;
        }
    }
    return more;
}

/// As many runs as the chips and seams take at one run's reach (run sizes: common practice, no source).
int runsOf(const PieceState& piece, const rules::RuleBook& book)
{
    const rules::Practice& practice = book.practice;
    double runs = 0;
    if (practice.runChip.value.count() > 0) {
        runs += piece.piece.chip / practice.runChip.value;
    }
    if (practice.runSeam.value.count() > 0) {
        runs += piece.piece.seam / practice.runSeam.value;
    }
    return std::max(1, static_cast<int>(std::ceil(runs)));
}

int reckonedRepetitions(const rules::Stage& stage, const PieceState& piece, const rules::RuleBook& book)
{
    switch (stage.repeat) {
    case rules::Repeat::Set:
        return record::setsOf(piece.piece);
    case rules::Repeat::Join:
        return std::max(1, record::joinsOf(piece.piece));
    case rules::Repeat::Run:
        return runsOf(piece, book);
    case rules::Repeat::Once:
    case rules::Repeat::Pass:
        return 1;
    }
    return 1;
}

/// `each` for every centimetre, rounded up to the second.
Span perCentimetre(const std::optional<rules::SpanFigure>& each, Length length)
{
    if (!each) {
        return Span{0};
    }
    const double milliseconds = static_cast<double>(each->value.count()) * inCentimetres(length);
    return std::chrono::ceil<std::chrono::seconds>(Span{static_cast<std::int64_t>(std::ceil(milliseconds))});
}

} // namespace

int repetitionsOf(const rules::Stage& stage, const PieceState& piece, const rules::RuleBook& book)
{
    if (stage.repeat == rules::Repeat::Once) {
        return 1;
    }
    int count = reckonedRepetitions(stage, piece, book) + moreAskedFor(stage, piece, book);
    for (const StageRecord& told : piece.stages) {
        if (told.at.stage == stage.key) {
            count = std::max(count, told.at.repetition);
        }
    }
    return count;
}

std::vector<EarlierMaterial> materialsPutIn(const PieceState& piece, const rules::RuleBook& book)
{
    std::vector<EarlierMaterial> materials;
    const rules::Procedure* procedure = procedureOf(piece, book);
    const auto put = [&](const std::string& key, Instant at) {
        const auto held = std::ranges::find(materials, key, &EarlierMaterial::material);
        if (held == materials.end()) {
            materials.push_back({key, at});
        } else {
            held->at = std::max(held->at, at);
        }
    };
    for (const StageRecord& told : piece.stages) {
        const rules::Stage* stage = procedure ? procedure->find(told.at.stage) : nullptr;
        const auto touched = told.lastTouch ? told.lastTouch : told.firstTouch;
        if (!stage || !touched) {
            continue;
        }
        for (const std::string& key : stage->uses) {
            put(key, *touched);
        }
        if (!stage->mix.empty()) {
            put(stage->mix, *touched);
        }
    }
    return materials;
}

Span handsOn(const rules::Stage& stage, const PieceState& piece, const rules::RuleBook& book)
{
    const int shares = stage.repeat == rules::Repeat::Pass ? 1 : repetitionsOf(stage, piece, book);
    Span total = stage.handsOn.fixed.value;
    if (stage.handsOn.perFragment) {
        total += stage.handsOn.perFragment->value * piece.piece.fragments;
    }
    if (stage.handsOn.perJoin) {
        const int joins = record::joinsOf(piece.piece);
        total += stage.handsOn.perJoin->value * ((joins + shares - 1) / shares);
    }
    total += perCentimetre(stage.handsOn.perCmSeam, piece.piece.seam / shares);
    total += perCentimetre(stage.handsOn.perCmChip, piece.piece.chip / shares);
    return total;
}

} // namespace mend::bench
