#include "core/bench/hazardrows.h"

#include <algorithm>

namespace mend::bench {

namespace {

HazardFinding reminder(const rules::Hazard& hazard)
{
    HazardFinding finding;
    finding.hazard = &hazard;
    finding.verdict = hazard.verdict;
    return finding;
}

/// Whether anything is open on the bench: a state, a mix, hands on a piece.
bool isAnythingOpen(const BenchPicture& picture)
{
    const auto& mixes = picture.bench().mixes;
    return !picture.presences().empty() ||
           std::ranges::any_of(mixes, [](const auto& held) { return held.second.isAlive(); });
}

/// A row with a span is about a layer that has lain too long, not about what lies open.
bool isAboutLayers(const rules::Hazard& hazard) { return hazard.span.has_value(); }

bool meansLayer(const rules::Hazard& hazard, const rules::Material& material)
{
    return std::ranges::any_of(hazard.one, [&](const std::string& name) { return meansMaterial(name, material); });
}

bool abrades(const rules::Hazard& hazard, const rules::Stage& stage, const BenchPicture& picture)
{
    return picture.factsOf(stage).bringsAny(hazard.other);
}

/// When the piece was last abraded.
std::optional<Instant> lastAbraded(const rules::Hazard& hazard, const Contents& contents, const BenchPicture& picture)
{
    std::optional<Instant> last;
    for (const StageRecord& told : contents.piece->stages) {
        const rules::Stage* stage = contents.procedure ? contents.procedure->find(told.at.stage) : nullptr;
        if (stage && told.lastTouch && abrades(hazard, *stage, picture)) {
            last = std::max(last.value_or(*told.lastTouch), *told.lastTouch);
        }
    }
    return last;
}

/// A new coat goes on, the coat below is past hard and nothing was abraded since.
bool wouldPeel(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture)
{
    const auto& laid = picture.factsOf(*asked.stage).materials;
    const bool laysCoat =
        std::ranges::any_of(laid, [&](const rules::Material* material) { return meansLayer(hazard, *material); });
    if (!laysCoat || abrades(hazard, *asked.stage, picture)) {
        return false;
    }
    const MaterialIn* below = nullptr;
    for (const MaterialIn& in : asked.contents->materials) {
        if (!in.oldMend && meansLayer(hazard, *in.material) && (!below || in.since > below->since)) {
            below = &in;
        }
    }
    if (!below) {
        return false;
    }
    const auto abraded = lastAbraded(hazard, *asked.contents, picture);
    const bool isHard =
        picture.now() - below->since >= hazard.span->value || !picture.isUncured(*asked.contents, *below);
    return isHard && (!abraded || *abraded < below->since);
}

bool isRemindedOf(const rules::Hazard& hazard, const Contents& contents, const BenchPicture& picture)
{
    return picture.findMaterial(hazard.one, contents) || picture.isInForce(contents.piece->piece.id, hazard.one);
}

} // namespace

void findReminders(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    if (!asked.stage || answeredAt(asked, hazard)) {
        return;
    }
    const bool isMet = isAboutLayers(hazard) ? wouldPeel(asked, hazard, picture)
                                             : !hazard.one.empty() && (isRemindedOf(hazard, *asked.contents, picture) ||
                                                                       brings(asked, hazard.one, picture));
    if (isMet) {
        found.push_back(reminder(hazard));
        addPiece(found.back().pieces, asked.start.piece);
    }
}

void findStandingReminders(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    if (isAboutLayers(hazard)) {
        return;
    }
    HazardFinding finding = reminder(hazard);
    for (const Contents& contents : picture.pieces()) {
        if (isRemindedOf(hazard, contents, picture)) {
            addPiece(finding.pieces, contents.piece->piece.id);
        }
    }
    if (hazard.one.empty() ? isAnythingOpen(picture) : !finding.pieces.empty()) {
        found.push_back(finding);
    }
}

} // namespace mend::bench
