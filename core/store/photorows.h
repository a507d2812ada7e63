#pragma once

#include "core/base/id.h"
#include "core/store/recordrows.h"
#include "core/store/sqlite.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::store {

/// Where a picture is used.
struct PhotoUse {
    std::string photo; ///< its hash, 64 hexadecimal digits
    PieceId piece;
    EventId event;       ///< what it was taken at, if anything
    std::string purpose; ///< a key: "condition", "seamMap", "finished"
    bool operator==(const PhotoUse&) const = default;
};

/// Pictures, each written once under the hash of its bytes (SHA-256) and never changed.
/// Throws SqlError; Damaged where bytes no longer fit their hash.
class PhotoRows {
public:
    explicit PhotoRows(const Database& database) : m_database(&database) {}

    /// The hash it is kept under; one that is there already is not written again.
    std::string put(const Bytes& bytes, const Bytes& thumbnail);
    std::optional<Bytes> bytes(const std::string& hash) const;
    std::optional<Bytes> thumbnail(const std::string& hash) const;
    std::vector<std::string> hashes() const;
    /// The hash that follows in order, empty at the end: for a check of one picture at a time.
    std::string hashAfter(const std::string& hash) const;
    void use(const PhotoUse& use);
    std::vector<PhotoUse> usesOf(PieceId piece) const;
    CheckedRows checkUses(std::int64_t after, int count) const;

private:
    const Database* m_database;
};

} // namespace mend::store
