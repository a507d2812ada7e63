#pragma once

#include "core/record/photo.h"
#include "core/record/visit.h"
#include "core/store/photorows.h"
#include "core/store/recordrows.h"
#include "core/store/sqlite.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::store {

/// A page that was begun and not kept yet.
struct Draft {
    std::string name;  ///< "intake"
    std::string sheet; ///< see record::sheetText
    Instant saved;
    bool operator==(const Draft&) const = default;
};

/// A picture with all that is told of it.
struct NotedPhoto {
    PhotoUse use;
    record::PhotoNote note;
    bool operator==(const NotedPhoto&) const = default;
};

/// The rows of the door: visits, notes on photos, drafts. Each carries a seal. Throws SqlError; Damaged where a
/// seal is broken.
class VisitRows {
public:
    explicit VisitRows(const Database& database) : m_database(&database) {}

    /// Replaces the visit of that piece and number, or adds it.
    void put(const record::Visit& visit);
    std::vector<record::Visit> of(PieceId piece) const;
    std::vector<record::Visit> all() const;
    /// The number that a new visit gets.
    int nextNumber(PieceId piece) const;

    /// Conflict where the picture is not used so.
    void putNote(const PhotoUse& use, const record::PhotoNote& note);
    std::vector<NotedPhoto> photosOf(PieceId piece) const;

    void putDraft(const Draft& draft);
    std::vector<Draft> drafts() const;
    void dropDraft(const std::string& name);

    enum class Table { Visits, PhotoNotes, Drafts };
    CheckedRows check(Table table, std::int64_t after, int count) const;

private:
    const Database* m_database;
};

} // namespace mend::store
