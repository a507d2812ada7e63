#include "core/exchange/flattable.h"

#include <map>
#include <utility>
#include <vector>

namespace mend::exchange {

using record::Sheet;

namespace {

using Cells = std::map<std::string, const Sheet*>;

void flatten(const Sheet& sheet, const std::string& path, Cells& cells, std::vector<std::string>& order)
{
    const std::string below = path.empty() ? "" : path + ".";
    if (sheet.kind == Sheet::Kind::Group) {
        for (const auto& [name, member] : sheet.members) {
            flatten(member, below + name, cells, order);
        }
    } else if (sheet.kind == Sheet::Kind::List) {
        for (std::size_t i = 0; i < sheet.items.size(); ++i) {
            flatten(sheet.items[i], below + std::to_string(i + 1), cells, order);
        }
    } else {
        order.push_back(path);
        cells.emplace(path, &sheet);
    }
}

} // namespace

void writeFlatTable(std::ostream& out, std::span<const Sheet> sheets)
{
    std::vector<Cells> rows;
    std::vector<std::string> columns;
    std::map<std::string, bool> known;
    for (const Sheet& sheet : sheets) {
        std::vector<std::string> order;
        flatten(sheet, "", rows.emplace_back(), order);
        for (std::string& column : order) {
            if (!std::exchange(known[column], true)) {
                columns.push_back(std::move(column));
            }
        }
    }
    CsvWriter csv(out);
    for (const std::string& column : columns) {
        csv.text(column);
    }
    csv.endRow();
    for (const Cells& cells : rows) {
        for (const std::string& column : columns) {
            const auto cell = cells.find(column);
            if (cell == cells.end()) {
                csv.text("");
            } else if (cell->second->kind == Sheet::Kind::Number) {
                csv.number(cell->second->number);
            } else if (cell->second->kind == Sheet::Kind::Flag) {
                csv.text(cell->second->flag ? "yes" : "no");
            } else {
                csv.text(cell->second->text);
            }
        }
        csv.endRow();
    }
}

} // namespace mend::exchange
