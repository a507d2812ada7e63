#pragma once

#include "core/store/store.h"

#include <span>

namespace mend::store {

/// Rows that come in by the hundred, as they stood in another file: with their numbers. Only within Store::fill.
class Bulk {
public:
    explicit Bulk(Store& store) : m_store(store) {}

    Outcome put(const record::Customer& customer);
    Outcome put(const record::Piece& piece);
    Outcome put(const record::Place& place);
    Outcome put(const record::Person& person);
    Outcome put(const record::Visit& visit);
    Outcome put(const Draft& draft);
    Outcome putRules(const RuleText& rules);
    Outcome setSetting(const std::string& key, const std::string& value);
    Outcome append(std::span<const bench::Event> events);
    /// BadInput where the bytes have another hash.
    Outcome putPhoto(const std::string& hash, const Bytes& bytes, const Bytes& thumbnail);
    Outcome use(const NotedPhoto& photo);

private:
    Store& m_store;
};

} // namespace mend::store
