#include "core/base/foldedtext.h"
#include "core/exchange/csv.h"
#include "core/exchange/people.h"

#include <array>
#include <map>

namespace mend::exchange {

namespace {

enum class Column { Name, Contact, Note, Other };

struct ColumnName {
    const char* folded;
    Column column;
    record::ContactKind kind;
};

constexpr std::array<ColumnName, 9> columnNames{{{"name", Column::Name, record::ContactKind::Other},
                                                 {"contact", Column::Contact, record::ContactKind::Other},
                                                 {"phone", Column::Contact, record::ContactKind::Phone},
                                                 {"telephone", Column::Contact, record::ContactKind::Phone},
                                                 {"mail", Column::Contact, record::ContactKind::Mail},
                                                 {"email", Column::Contact, record::ContactKind::Mail},
                                                 {"e-mail", Column::Contact, record::ContactKind::Mail},
                                                 {"address", Column::Contact, record::ContactKind::Post},
                                                 {"note", Column::Note, record::ContactKind::Other}}};

class TableOfPeople {
public:
    void take(const std::vector<std::string>& row, std::int64_t number)
    {
        if (m_columns.empty()) {
            readHeader(row);
            return;
        }
        if (!m_hasName || m_list.people.size() >= mostPeopleListed) {
            m_tooMany = m_hasName;
            return;
        }
        ListedPerson listed;
        listed.line = static_cast<int>(number);
        for (std::size_t i = 0; i < row.size(); ++i) {
            fill(listed.person, m_columns[i], row[i]);
        }
        if (listed.person.name.empty() || listed.person.contact.empty()) {
            m_list.faults.push_back(
                {listed.line, listed.person.name.empty() ? "nobody is named" : "no way to reach them"});
            return;
        }
        m_list.people.push_back(std::move(listed));
    }

    PeopleList finish(const std::vector<CsvFault>& faults)
    {
        for (const CsvFault& fault : faults) {
            m_list.people.clear();
            m_list.faults.push_back({static_cast<int>(fault.row), fault.text});
        }
        if (faults.empty() && !m_hasName) {
            m_list.faults.push_back({1, "no column is called \"name\""});
        }
        if (m_tooMany) {
            m_list.faults.push_back({0, "only the first 10,000 people were read"});
        }
        return std::move(m_list);
    }

private:
    void readHeader(const std::vector<std::string>& row)
    {
        for (const std::string& title : row) {
            const ColumnName* found = nullptr;
            for (const ColumnName& known : columnNames) {
                found = foldedText(cleanText(title)) == known.folded ? &known : found;
            }
            m_columns.push_back(found ? *found : ColumnName{"", Column::Other, record::ContactKind::Other});
            m_hasName = m_hasName || (found && found->column == Column::Name);
        }
    }

    static void fill(record::Customer& person, const ColumnName& column, const std::string& field)
    {
        const std::string text = cleanText(field, column.column != Column::Name);
        if (text.empty()) {
            return;
        }
        if (column.column == Column::Name) {
            person.name = text;
        } else if (column.column == Column::Note) {
            person.note = text;
        } else if (column.column == Column::Contact && person.contact.empty()) {
            person.contact = text;
        } else if (column.column == Column::Contact) {
            person.more.push_back({column.kind, text});
        }
    }

    std::vector<ColumnName> m_columns;
    bool m_hasName = false;
    bool m_tooMany = false;
    PeopleList m_list;
};

} // namespace

PeopleList readPeopleTable(std::istream& in)
{
    TableOfPeople table;
    CsvLimits limits;
    limits.field = longestListField;
    const auto faults = readCsv(
        in, [&](const std::vector<std::string>& row, std::int64_t number) { table.take(row, number); }, limits);
    return table.finish(faults);
}

} // namespace mend::exchange
