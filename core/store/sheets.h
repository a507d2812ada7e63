#pragma once

#include "core/record/fields.h"
#include "core/store/seal.h"

#include <string>

namespace mend::store {

/// The parts of a record that have no column of their own, as one line of text. Empty where there are none, as
/// in files from before they were known.
template <class T> std::string restText(const T& row)
{
    const record::Sheet sheet = record::sheetOf(record::RestOf<T>{row});
    return sheet.isEmptyGroup() ? std::string() : record::sheetText(sheet);
}

/// They count towards the seal only where they stand, so that seals of older rows hold.
template <class T> Canon& addRest(Canon& canon, const T& row)
{
    const std::string text = restText(row);
    return text.empty() ? canon : canon.add(text);
}

/// Fills them into a row whose other columns were read already. Text that cannot be read, or that this program
/// would have written otherwise, is damage: only it writes them.
template <class T> void takeRest(const Statement& row, int column, T& into, const char* table)
{
    const std::string text = row.text(column);
    if (text.empty()) {
        return;
    }
    const auto sheet = record::sheetFromText(text);
    record::RestOf<T> rest{into};
    if (!sheet || !record::SheetReader::fill(*sheet, rest)) {
        throw SqlError(
            Fault{FaultKind::Damaged, std::string(table) + " " + std::to_string(row.integer(0)) + ": sheet"});
    }
    into = std::move(rest.record);
}

} // namespace mend::store
