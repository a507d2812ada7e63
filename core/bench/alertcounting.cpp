#include "core/bench/alertcounting.h"

namespace mend::bench {

std::optional<Counting> countingOf(const BenchFold& bench, const std::vector<Window>& windows,
                                   const rules::RuleBook& book, Instant now)
{
    for (const Window& window : windows) {
        const PieceState* piece = window.counted ? bench.piece(window.piece) : nullptr;
        const rules::Procedure* procedure = piece ? procedureOf(*piece, book) : nullptr;
        const rules::Stage* stage = procedure ? procedure->find(window.stage.stage) : nullptr;
        if (!stage || !stage->counted) {
            continue;
        }
        std::optional<Instant> start = window.begunAt;
        for (const auto& [id, mix] : bench.mixes) {
            if (!stage->mix.empty() && mix.material == stage->mix && mix.isAlive() &&
                (!start || mix.mixedAt > *start)) {
                start = mix.mixedAt;
            }
        }
        if (!start || now < *start || now >= *start + stage->counted->red.value) {
            continue;
        }
        Counting counting{*start + stage->counted->red.value, {}, window.piece};
        for (const Span mark : stage->counted->ticks) {
            counting.ticks.push_back(*start + mark);
        }
        return counting;
    }
    return std::nullopt;
}

} // namespace mend::bench
