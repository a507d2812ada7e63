#pragma once

// The names of every part of a record, said once. Keeping a record in the file, exporting and importing it
// and carrying a half filled page over a crash all walk along these names (`fields` in fields.h), so a new part
// of a record is added there and nowhere else.

#include "core/base/civil.h"
#include "core/base/id.h"
#include "core/base/time.h"
#include "core/base/units.h"
#include "core/record/sheet.h"

#include <array>
#include <limits>
#include <set>

namespace mend::record {

/// One word of a fixed set.
template <class E> struct FormWord {
    E value;
    std::string_view text;
};

/// Turns a record into a sheet. What is empty is left out, so that one record has one sheet only.
class SheetWriter {
public:
    template <class T> static Sheet write(const T& record)
    {
        SheetWriter writer;
        T copy = record; // a form may read or fill, so it wants something that could be filled
        fields(writer, copy);
        return std::move(writer.m_sheet);
    }

    void text(const char* name, const std::string& value)
    {
        if (!value.empty()) {
            put(name, Sheet::ofText(value));
        }
    }
    void texts(const char* name, const std::vector<std::string>& values)
    {
        if (!values.empty()) {
            Sheet list = Sheet::list();
            for (const std::string& value : values) {
                list.items.push_back(Sheet::ofText(value));
            }
            put(name, std::move(list));
        }
    }
    void flag(const char* name, bool value, bool usual)
    {
        if (value != usual) {
            put(name, Sheet::ofFlag(value));
        }
    }
    void number(const char* name, int value, int usual)
    {
        if (value != usual) {
            put(name, Sheet::ofNumber(value));
        }
    }
    void number(const char* name, const std::optional<std::int64_t>& value)
    {
        if (value) {
            put(name, Sheet::ofNumber(*value));
        }
    }
    template <class Unit> void amount(const char* name, const std::optional<Quantity<Unit>>& value)
    {
        if (value) {
            put(name, Sheet::ofNumber(value->count()));
        }
    }
    template <class Unit> void amount(const char* name, const Quantity<Unit>& value)
    {
        if (value.count() != 0) {
            put(name, Sheet::ofNumber(value.count()));
        }
    }
    template <class Tag> void id(const char* name, Id<Tag> value)
    {
        if (value.isSet()) {
            put(name, Sheet::ofNumber(value.value()));
        }
    }
    template <class E, std::size_t N>
    void choice(const char* name, E value, const std::array<FormWord<E>, N>& words, E usual)
    {
        for (const FormWord<E>& word : words) {
            if (word.value == value && value != usual) {
                put(name, Sheet::ofText(std::string(word.text)));
            }
        }
    }
    void money(const char* name, const std::optional<Money>& value)
    {
        if (value) {
            Sheet sheet;
            sheet.members.emplace_back("minor", Sheet::ofNumber(value->minorUnits()));
            sheet.members.emplace_back("currency", Sheet::ofText(value->currency()));
            put(name, std::move(sheet));
        }
    }
    void day(const char* name, const std::optional<CivilDay>& value)
    {
        if (value) {
            put(name, Sheet::ofText(dayText(*value)));
        }
    }
    void instant(const char* name, const std::optional<Instant>& value)
    {
        if (value) {
            put(name, Sheet::ofText(toRfc3339(*value)));
        }
    }
    void instant(const char* name, Instant value) { put(name, Sheet::ofText(toRfc3339(value))); }
    template <class T> void part(const char* name, const T& value)
    {
        if (Sheet sheet = write(value); !sheet.isEmptyGroup()) {
            put(name, std::move(sheet));
        }
    }
    template <class T> void list(const char* name, const std::vector<T>& values)
    {
        if (!values.empty()) {
            Sheet sheet = Sheet::list();
            for (const T& value : values) {
                sheet.items.push_back(write(value));
            }
            put(name, std::move(sheet));
        }
    }

private:
    void put(const char* name, Sheet sheet) { m_sheet.members.emplace_back(name, std::move(sheet)); }
    Sheet m_sheet;
};

/// Fills a record from a sheet. It never stops at a fault: what is of the wrong kind, out of range or unknown is
/// listed by its path ("visit/consent/signedOn"), and that part of the record keeps its default.
class SheetReader {
public:
    /// The record where nothing was wrong; else `faults` (may be null) says what.
    template <class T> static std::optional<T> read(const Sheet& sheet, std::vector<std::string>* faults = nullptr)
    {
        std::vector<std::string> found;
        T record{};
        readInto(sheet, "", found, record);
        if (found.empty()) {
            return record;
        }
        if (faults) {
            faults->insert(faults->end(), found.begin(), found.end());
        }
        return std::nullopt;
    }

    /// Fills those parts of a record that the sheet is about and leaves the others; false where anything was wrong.
    template <class T> static bool fill(const Sheet& sheet, T& record)
    {
        std::vector<std::string> found;
        readInto(sheet, "", found, record);
        return found.empty();
    }

    void text(const char* name, std::string& value)
    {
        if (const Sheet* held = take(name, Sheet::Kind::Text)) {
            value = held->text;
        }
    }
    void texts(const char* name, std::vector<std::string>& values)
    {
        if (const Sheet* held = take(name, Sheet::Kind::List)) {
            for (const Sheet& item : held->items) {
                item.kind == Sheet::Kind::Text ? values.push_back(item.text)
                                               : wrong(name, "holds something else than text");
            }
        }
    }
    void flag(const char* name, bool& value, bool usual)
    {
        const Sheet* held = take(name, Sheet::Kind::Flag);
        value = held ? held->flag : usual;
    }
    void number(const char* name, int& value, int usual)
    {
        value = usual;
        const auto held = takeNumber(name);
        if (held && (*held < std::numeric_limits<int>::min() || *held > std::numeric_limits<int>::max())) {
            wrong(name, "is too large");
        } else if (held) {
            value = static_cast<int>(*held);
        }
    }
    void number(const char* name, std::optional<std::int64_t>& value) { value = takeNumber(name); }
    template <class Unit> void amount(const char* name, std::optional<Quantity<Unit>>& value)
    {
        if (const auto held = takeNumber(name)) {
            value = Quantity<Unit>::fromCount(*held);
        }
    }
    template <class Unit> void amount(const char* name, Quantity<Unit>& value)
    {
        value = Quantity<Unit>::fromCount(takeNumber(name).value_or(0));
    }
    template <class Tag> void id(const char* name, Id<Tag>& value) { value = Id<Tag>(takeNumber(name).value_or(0)); }
    template <class E, std::size_t N>
    void choice(const char* name, E& value, const std::array<FormWord<E>, N>& words, E usual)
    {
        value = usual;
        if (const Sheet* held = take(name, Sheet::Kind::Text)) {
            for (const FormWord<E>& word : words) {
                if (word.text == held->text) {
                    value = word.value;
                    return;
                }
            }
            wrong(name, "\"" + held->text + "\" is none of the words known here");
        }
    }
    void money(const char* name, std::optional<Money>& value);
    void day(const char* name, std::optional<CivilDay>& value);
    void instant(const char* name, std::optional<Instant>& value);
    void instant(const char* name, Instant& value);
    template <class T> void part(const char* name, T& value)
    {
        if (const Sheet* held = take(name, Sheet::Kind::Group)) {
            readInto(*held, m_path + name + "/", m_faults, value);
        }
    }
    template <class T> void list(const char* name, std::vector<T>& values)
    {
        if (const Sheet* held = take(name, Sheet::Kind::List)) {
            for (std::size_t i = 0; i < held->items.size(); ++i) {
                readInto(held->items[i], m_path + name + "/" + std::to_string(i) + "/", m_faults,
                         values.emplace_back());
            }
        }
    }

private:
    SheetReader(const Sheet& sheet, std::string path, std::vector<std::string>& faults)
        : m_sheet(sheet), m_path(std::move(path)), m_faults(faults)
    {
    }
    template <class T>
    static void readInto(const Sheet& sheet, const std::string& path, std::vector<std::string>& faults, T& record)
    {
        SheetReader reader(sheet, path, faults);
        if (sheet.kind != Sheet::Kind::Group) {
            reader.wrong("", "is not a group of names and values");
            return;
        }
        fields(reader, record);
        reader.refuseUnknown();
    }
    const Sheet* take(const char* name, Sheet::Kind kind);
    std::optional<std::int64_t> takeNumber(const char* name);
    void wrong(const char* name, const std::string& what) { m_faults.push_back(m_path + name + ": " + what); }
    void refuseUnknown();

    const Sheet& m_sheet;
    std::string m_path;
    std::vector<std::string>& m_faults;
    std::set<std::string, std::less<>> m_known;
};

template <class T> Sheet sheetOf(const T& record) { return SheetWriter::write(record); }
template <class T> std::optional<T> fromSheet(const Sheet& sheet, std::vector<std::string>* faults = nullptr)
{
    return SheetReader::read<T>(sheet, faults);
}

} // namespace mend::record
