#include "core/record/piece.h"

#include <algorithm>
#include <array>
#include <utility>

namespace mend::record {

namespace {
constexpr int joinsPerSet = 3; // common practice, no source
constexpr std::array<std::pair<PlaceKind, const char*>, 6> placeKinds{{{PlaceKind::Bench, "bench"},
                                                                       {PlaceKind::Shelf, "shelf"},
                                                                       {PlaceKind::Cabinet, "cabinet"},
                                                                       {PlaceKind::HumidBox, "humidBox"},
                                                                       {PlaceKind::Tray, "tray"},
                                                                       {PlaceKind::Outside, "outside"}}};
} // namespace

int joinsOf(const Piece& piece) { return piece.joins > 0 ? piece.joins : std::max(0, piece.fragments - 1); }

int setsOf(const Piece& piece)
{
    return piece.sets > 0 ? piece.sets : std::max(1, (joinsOf(piece) + joinsPerSet - 1) / joinsPerSet);
}

std::string placeKindKey(PlaceKind kind)
{
    const auto found = std::ranges::find(placeKinds, kind, [](const auto& pair) { return pair.first; });
    return found == placeKinds.end() ? std::string() : std::string(found->second);
}

std::optional<PlaceKind> placeKindFromKey(const std::string& key)
{
    const auto found = std::ranges::find(placeKinds, key, [](const auto& pair) { return std::string(pair.second); });
    return found == placeKinds.end() ? std::nullopt : std::optional(found->first);
}

} // namespace mend::record
