#pragma once

#include "core/store/store.h"

#include <random>
#include <string>
#include <vector>

namespace mend::test {

/// The bench of the tests: a fixed start, one rule revision, places 1 and 2, people 1 and 2.
constexpr Instant benchStart{std::chrono::sys_days{std::chrono::year{2026} / 3 / 9} + std::chrono::hours{8}};

std::unique_ptr<store::Store> openOrDie(const std::filesystem::path& file,
                                        store::OpenMode mode = store::OpenMode::CreateIfMissing,
                                        const std::string& vfs = {});
/// Rules, places, people and `pieces` pieces of as many owners.
void furnish(store::Store& store, int pieces = 3);

record::Piece somePiece(int running);
bench::Event someEvent(std::int64_t id, bench::What what, PieceId piece = PieceId(1));

/// Random events that a furnished bench accepts: every kind, every field, odd texts, voids and retellings.
class EventMaker {
public:
    explicit EventMaker(unsigned seed, int pieces = 3) : m_random(seed), m_pieces(pieces) {}
    bench::Event next();
    std::vector<bench::Event> some(int count);
    int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }
    void startAfter(EventId last) { m_last = last.value(); }

private:
    std::mt19937 m_random;
    int m_pieces;
    std::int64_t m_last = 0;
};

} // namespace mend::test
