#include "core/store/photorows.h"

#include "core/store/seal.h"

namespace mend::store {

namespace {

Bytes keyOf(const std::string& hash)
{
    const auto key = fromHex(hash);
    if (!key || key->size() != 32) {
        throw SqlError(Fault{FaultKind::BadInput, "not a picture's hash"});
    }
    return *key;
}

Bytes sealOf(std::string_view key, std::int64_t size, std::string_view thumbnail)
{
    return Canon("photo").add(key).add(size).add(thumbnail).seal();
}

Bytes sealOf(const PhotoUse& use)
{
    return Canon("photo_use").add(use.photo).add(use.piece.value()).add(use.event.value()).add(use.purpose).seal();
}

const std::string selectUse = "SELECT id, photo, piece, event, purpose, seal FROM photo_use ";

PhotoUse useAt(const Statement& row)
{
    PhotoUse use{toHex(row.text(1)), PieceId(row.integer(2)), EventId(row.integer(3)), row.text(4)};
    if (row.text(5) != sealOf(use)) {
        throw SqlError(Fault{FaultKind::Damaged, "use of picture " + use.photo});
    }
    return use;
}

} // namespace

std::string PhotoRows::put(const Bytes& bytes, const Bytes& thumbnail)
{
    const Bytes key = sha256(bytes);
    const auto size = static_cast<std::int64_t>(bytes.size());
    Statement known = m_database->prepare("SELECT 1 FROM photo WHERE hash = ?1");
    known.with(Blob{key});
    if (!known.step()) {
        m_database->prepare("INSERT INTO photo VALUES (?1, ?2, ?3, ?4)")
            .with(Blob{key}, size, Blob{thumbnail}, Blob{sealOf(key, size, thumbnail)})
            .run();
        m_database->prepare("INSERT INTO photo_bytes VALUES (?1, ?2)").with(Blob{key}, Blob{bytes}).run();
    }
    return toHex(key);
}

std::optional<Bytes> PhotoRows::bytes(const std::string& hash) const
{
    const Bytes key = keyOf(hash);
    Statement row = m_database->prepare("SELECT bytes FROM photo_bytes WHERE hash = ?1");
    row.with(Blob{key});
    if (!row.step()) {
        return std::nullopt;
    }
    Bytes bytes = row.text(0);
    if (sha256(bytes) != key) {
        throw SqlError(Fault{FaultKind::Damaged, "picture " + hash});
    }
    return bytes;
}

std::optional<Bytes> PhotoRows::thumbnail(const std::string& hash) const
{
    const Bytes key = keyOf(hash);
    Statement row = m_database->prepare("SELECT size, thumbnail, seal FROM photo WHERE hash = ?1");
    row.with(Blob{key});
    if (!row.step()) {
        return std::nullopt;
    }
    Bytes thumbnail = row.text(1);
    if (row.text(2) != sealOf(key, row.integer(0), thumbnail)) {
        throw SqlError(Fault{FaultKind::Damaged, "small picture " + hash});
    }
    return thumbnail;
}

std::vector<std::string> PhotoRows::hashes() const
{
    std::vector<std::string> all;
    Statement rows = m_database->prepare("SELECT hash FROM photo ORDER BY hash");
    while (rows.step()) {
        all.push_back(toHex(rows.text(0)));
    }
    return all;
}

std::string PhotoRows::hashAfter(const std::string& hash) const
{
    const Bytes key = hash.empty() ? Bytes() : keyOf(hash);
    Statement row = m_database->prepare("SELECT min(hash) FROM photo WHERE hash > ?1");
    row.with(Blob{key});
    return row.step() ? toHex(row.text(0)) : std::string();
}

void PhotoRows::use(const PhotoUse& use)
{
    const auto event = use.event.isSet() ? std::optional(use.event.value()) : std::nullopt;
    m_database
        ->prepare("INSERT INTO photo_use (photo, piece, event, purpose, seal) VALUES (?1, ?2, ?3, ?4, ?5) "
                  "ON CONFLICT (photo, piece, purpose) DO UPDATE SET event = excluded.event, seal = excluded.seal")
        .with(Blob{keyOf(use.photo)}, use.piece.value(), event, use.purpose, Blob{sealOf(use)})
        .run();
}

std::vector<PhotoUse> PhotoRows::usesOf(PieceId piece) const
{
    Statement rows = m_database->prepare(selectUse + "WHERE piece = ?1 ORDER BY id");
    rows.with(piece.value());
    std::vector<PhotoUse> uses;
    while (rows.step()) {
        uses.push_back(useAt(rows));
    }
    return uses;
}

CheckedRows PhotoRows::checkUses(std::int64_t after, int count) const
{
    return checkRows(m_database->prepare(selectUse + "WHERE id > ?1 ORDER BY id LIMIT ?2"), after, count, useAt);
}

} // namespace mend::store
