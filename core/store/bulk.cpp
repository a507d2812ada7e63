#include "core/store/bulk.h"

#include "core/store/recordrows.h"

namespace mend::store {

Outcome Bulk::put(const record::Customer& customer)
{
    return guarded([&] { m_store.putFindable(customer); });
}

Outcome Bulk::put(const record::Piece& piece)
{
    return guarded([&] { m_store.putFindable(piece); });
}

Outcome Bulk::put(const record::Place& place)
{
    return guarded([&] { RecordRows(m_store.m_database).put(place); });
}

Outcome Bulk::put(const record::Person& person)
{
    return guarded([&] { RecordRows(m_store.m_database).put(person); });
}

Outcome Bulk::put(const record::Visit& visit)
{
    return guarded([&] { VisitRows(m_store.m_database).put(visit); });
}

Outcome Bulk::put(const Draft& draft)
{
    return guarded([&] { VisitRows(m_store.m_database).putDraft(draft); });
}

Outcome Bulk::putRules(const RuleText& rules)
{
    return guarded([&] { WordRows(m_store.m_database).putRules(rules); });
}

Outcome Bulk::setSetting(const std::string& key, const std::string& value)
{
    return guarded([&] { WordRows(m_store.m_database).setSetting(key, value); });
}

Outcome Bulk::append(std::span<const bench::Event> events)
{
    return guarded([&] { m_store.addAll(events); });
}

Outcome Bulk::putPhoto(const std::string& hash, const Bytes& bytes, const Bytes& thumbnail)
{
    return guarded([&] {
        if (PhotoRows(m_store.m_database).put(bytes, thumbnail) != hash) {
            throw SqlError(Fault{FaultKind::BadInput, "picture " + hash + " is another"});
        }
    });
}

Outcome Bulk::use(const NotedPhoto& photo)
{
    return guarded([&] {
        PhotoRows(m_store.m_database).use(photo.use);
        if (photo.note != record::PhotoNote{}) {
            VisitRows(m_store.m_database).putNote(photo.use, photo.note);
        }
    });
}

} // namespace mend::store
