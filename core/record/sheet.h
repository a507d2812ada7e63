#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace mend::record {

/// A filled-in form as plain values under names: what a customer, a piece or a visit is turned into to be
/// kept in the file, exported or carried over a crash. `form.h` fills it and reads it back.
struct Sheet {
    enum class Kind { Text, Number, Flag, List, Group };
    Kind kind = Kind::Group;
    std::string text;
    std::int64_t number = 0;
    bool flag = false;
    std::vector<Sheet> items;                           ///< of a list
    std::vector<std::pair<std::string, Sheet>> members; ///< of a group, in the order of the form
    bool operator==(const Sheet&) const = default;

    static Sheet ofText(std::string text);
    static Sheet ofNumber(std::int64_t number);
    static Sheet ofFlag(bool flag);
    static Sheet list();
    const Sheet* member(std::string_view name) const;
    bool isEmptyGroup() const { return kind == Kind::Group && members.empty(); }
};

/// One line of JSON (RFC 8259), the same for the same sheet: no blanks, only what must be is escaped. A whole
/// number beyond 2^53 is written as text, because other readers would round it.
std::string sheetText(const Sheet& sheet);

/// Reads what `sheetText` writes. Empty at anything else, for what stands in the bench file was written here.
std::optional<Sheet> sheetFromText(std::string_view text);

} // namespace mend::record
