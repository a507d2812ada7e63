#pragma once

#include "core/exchange/rowfile.h"
#include "core/store/store.h"

#include <functional>
#include <set>

namespace mend::service {

/// Gets one row of an export after the other.
using TakeRow = std::function<void(exchange::FileRow)>;

/// Every row of a bench file, in an order in which each names only rows before it. Read within one moment of
/// the file.
Outcome rowsOf(const store::Store& store, const TakeRow& take);

/// Every row of one person: they themselves, their pieces, visits, what was told of these, and their pictures.
Outcome rowsOfPerson(const store::Store& store, CustomerId person, const TakeRow& take);

/// How each table of a bench file stands to what a person may ask for: a table that is not listed here fails a test.
struct TableRule {
    const char* table;
    const char* rowKind; ///< the kind of its rows in an export; empty: none
    bool ofPerson;       ///< rows of it that refer to a person are theirs
    const char* why;     ///< where it is not exported
};
const std::vector<TableRule>& tableRules();

/// Puts rows of an export into an empty file, all or none.
class RowsInto {
public:
    /// `picture` gives the bytes of a picture or of its thumbnail by hash; empty where they are missing.
    using Picture = std::function<std::optional<store::Bytes>(const std::string& hash, bool thumbnail)>;
    RowsInto(store::Bulk& bulk, Picture picture) : m_bulk(bulk), m_picture(std::move(picture)) {}

    /// BadInput with what is wrong in the row.
    Outcome take(const exchange::FileRow& row);
    Outcome finish();
    std::int64_t rows() const { return m_rows; }
    const std::vector<std::string>& missingPictures() const { return m_missing; }

private:
    Outcome takePhoto(const exchange::FileRow& row);
    Outcome takeWords(const exchange::FileRow& row);

    store::Bulk& m_bulk;
    Picture m_picture;
    std::vector<bench::Event> m_events;
    std::vector<store::NotedPhoto> m_photos;
    std::vector<std::string> m_missing;
    std::set<std::string> m_held;
    std::int64_t m_rows = 0;
};

} // namespace mend::service
