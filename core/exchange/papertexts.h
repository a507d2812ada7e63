#pragma once

#include "core/exchange/placedjson.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace mend::exchange {

/// One standing text of a paper: what it is for, and its paragraphs as they ship.
struct PaperText {
    std::string says; ///< where it stands: "On every care sheet"
    std::vector<std::string> lines;
    bool operator==(const PaperText&) const = default;
};

/// The standing texts of all papers under their keys, or everything wrong with the file at once.
struct ReadPaperTexts {
    std::map<std::string, PaperText> texts;
    std::vector<JsonFault> faults;
};

/// Reads `resources/papers/texts.json`. Faults: those of `readPlacedJson`, another format, a text without key
/// or lines, a key twice.
ReadPaperTexts readPaperTexts(std::string_view json);

} // namespace mend::exchange
