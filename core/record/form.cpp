#include "core/record/form.h"

#include "core/base/currency.h"

#include <algorithm>
#include <charconv>

namespace mend::record {

const Sheet* SheetReader::take(const char* name, Sheet::Kind kind)
{
    m_known.emplace(name);
    const Sheet* const held = m_sheet.member(name);
    if (held && held->kind != kind) {
        wrong(name, "is of another kind than it should be");
        return nullptr;
    }
    return held;
}

/// A number, or the text of one: what is beyond 2^53 is written as text.
std::optional<std::int64_t> SheetReader::takeNumber(const char* name)
{
    m_known.emplace(name);
    const Sheet* const held = m_sheet.member(name);
    if (!held) {
        return std::nullopt;
    }
    if (held->kind == Sheet::Kind::Number) {
        return held->number;
    }
    std::int64_t value = 0;
    const char* const end = held->text.data() + held->text.size();
    const auto read = std::from_chars(held->text.data(), end, value);
    if (held->kind != Sheet::Kind::Text || read.ec != std::errc{} || read.ptr != end) {
        wrong(name, "is not a whole number");
        return std::nullopt;
    }
    return value;
}

void SheetReader::money(const char* name, std::optional<Money>& value)
{
    const Sheet* const held = take(name, Sheet::Kind::Group);
    if (!held) {
        return;
    }
    const Sheet* const currency = held->member("currency");
    SheetReader reader(*held, m_path + name + "/", m_faults);
    const auto minor = reader.takeNumber("minor");
    reader.m_known.emplace("currency");
    reader.refuseUnknown();
    if (!minor || !currency || currency->kind != Sheet::Kind::Text || !decimalsOf(currency->text)) {
        wrong(name, "is not an amount of a currency");
        return;
    }
    value = Money(*minor, currency->text);
}

void SheetReader::day(const char* name, std::optional<CivilDay>& value)
{
    if (const Sheet* const held = take(name, Sheet::Kind::Text)) {
        value = dayFrom(held->text);
        if (!value) {
            wrong(name, "\"" + held->text + "\" is no day of the calendar");
        }
    }
}

void SheetReader::instant(const char* name, std::optional<Instant>& value)
{
    if (const Sheet* const held = take(name, Sheet::Kind::Text)) {
        value = fromRfc3339(held->text);
        if (!value) {
            wrong(name, "\"" + held->text + "\" is no time in UTC");
        }
    }
}

void SheetReader::instant(const char* name, Instant& value)
{
    std::optional<Instant> held;
    instant(name, held);
    if (held) {
        value = *held;
    } else if (!m_sheet.member(name)) {
        wrong(name, "is missing");
    }
}

void SheetReader::refuseUnknown()
{
    std::set<std::string_view> met;
    for (const auto& [name, member] : m_sheet.members) {
        if (!m_known.contains(name)) {
            wrong(name.c_str(), "is not known here");
        } else if (!met.insert(name).second) {
            wrong(name.c_str(), "is given twice");
        }
    }
}

} // namespace mend::record
