#pragma once

#include "core/bench/hazardside.h"
#include "core/bench/window.h"

#include <map>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace mend::bench {

/// Something that was put into a piece, once: the joins of one set, an old mend.
struct MaterialIn {
    const rules::Material* material = nullptr;
    Instant since;        ///< last touch of the stage that put it in; for an old mend when the piece came
    bool oldMend = false; ///< it was in the piece before this work
};

/// What one stage brings to the bench, looked up once an instant.
struct StageFacts {
    std::vector<const rules::Material*> materials; ///< what it puts into the piece: what it uses, and its mix
    std::vector<std::string_view> names; ///< all that a row can call it by: key, states, resources, materials, families

    /// "uncured:" makes no difference: what is laid now is not cured.
    bool brings(std::string_view name) const;
    bool bringsAny(const std::vector<std::string>& rowNames) const;
};

/// The names of a row's two sides that can mean something in a piece: no states.
struct RowNames {
    std::vector<std::string> one;
    std::vector<std::string> other;
};

/// What one piece is and holds, looked up once for all rows.
struct Contents {
    const PieceState* piece = nullptr;
    const rules::Procedure* procedure = nullptr; ///< null where its rules are gone
    PlaceId place;
    std::vector<MaterialIn> materials;
};

/// Something in force: a state, or what a stage under hands is by name or has in use.
struct Presence {
    StateInForce state;
    StageInstance stage; ///< the stage under hands that brings it; empty for what was told or left
    bool isState = true; ///< false for a stage's key and its resources
};

/// Everything that hazards are held against, gathered once an instant: what lies where,
/// what is in it, what is in force. Points into the fold, the windows and the book, which
/// must outlive it.
class BenchPicture {
public:
    BenchPicture(const BenchFold& bench, const std::vector<Window>& windows, const rules::RuleBook& book, Instant now);
    BenchPicture(const BenchPicture&) = delete; // what is kept points into it
    BenchPicture& operator=(const BenchPicture&) = delete;

    const BenchFold& bench() const { return m_bench; }
    const std::vector<Window>& windows() const { return m_windows; }
    const rules::RuleBook& book() const { return m_book; }
    Instant now() const { return m_now; }

    const Contents* contents(PieceId piece) const;
    const std::vector<Contents>& pieces() const { return m_pieces; }
    const std::vector<Presence>& presences() const { return m_presences; }
    /// Whether a piece brings one of the names to the bench just now.
    bool isInForce(PieceId piece, const std::vector<std::string>& names) const;
    bool isInForce(PieceId piece, std::string_view name) const;
    const std::vector<const Contents*>& piecesAt(PlaceId place) const;
    /// What a side (`other` or `one`) of a row of this picture's book finds here.
    const RowSide& side(const rules::Hazard& row, bool other) const;
    /// The running closings that a row of this picture's book means.
    const std::vector<Closing>& closings(const rules::Hazard& row) const;
    /// The powders that a piece's procedure lays.
    const std::vector<std::string>& powdersOf(const Contents& contents) const;
    const rules::Stage* stage(PieceId piece, std::string_view key) const;
    const StageFacts& factsOf(const rules::Stage& stage) const;
    /// Of a row of this picture's book.
    const RowNames& namesInPieces(const rules::Hazard& row) const;
    record::PlaceKind kindOf(PlaceId place) const;

    /// The air of a place as a closing sees it (an old reading counts as warmer); empty where
    /// nobody ever read it.
    std::optional<cure::Air> airOf(PlaceId place) const;
    /// The coolest a piece can be after the last `span`: an old reading counts as colder.
    std::optional<Temperature> coolest(const Contents& contents, Span span) const;

    /// Whether a name of a row means this material in this piece; "uncured:" before it asks its age.
    bool matches(std::string_view name, const Contents& contents, const MaterialIn& in) const;
    /// Whether a piece holds any material that one of the names means; the first such, or null.
    const MaterialIn* findMaterial(const std::vector<std::string>& names, const Contents& contents) const;
    /// Whether a material has not reached its full cure: by equivalent age where the cure has a law.
    bool isUncured(const Contents& contents, const MaterialIn& in) const;

private:
    void addPiece(const PieceState& piece);
    void addPresences(const PieceState& piece);
    void index();
    std::size_t at(const rules::Hazard& row) const;
    std::optional<cure::Air> reckonAir(PlaceId place) const;
    bool reckonUncured(const Contents& contents, const MaterialIn& in) const;

    const BenchFold& m_bench;
    const std::vector<Window>& m_windows;
    const rules::RuleBook& m_book;
    Instant m_now;
    std::vector<Contents> m_pieces; ///< by piece id
    std::vector<Presence> m_presences;
    std::vector<RowNames> m_rows; ///< by row of the book
    std::map<PieceId, std::vector<const Presence*>> m_presencesOf;
    std::map<PlaceId, std::vector<const Contents*>> m_piecesAt;
    // Worked out when first asked for, then kept for this instant.
    mutable std::map<const MaterialIn*, bool> m_uncured;
    mutable std::unordered_map<const rules::Stage*, StageFacts> m_facts;
    mutable std::vector<std::optional<RowSide>> m_sides; ///< two a row
    mutable std::vector<std::optional<std::vector<Closing>>> m_closings;
    mutable std::map<PlaceId, std::optional<cure::Air>> m_air;
    mutable std::map<const rules::Procedure*, std::vector<std::string>> m_powders;
};

/// What "uncured:" in front of a name says.
inline constexpr std::string_view uncuredPrefix = "uncured:";

bool holdsName(const std::vector<std::string>& names, std::string_view name);
/// Whether a name of a row means this material by key or family.
bool meansMaterial(std::string_view bareName, const rules::Material& material);

} // namespace mend::bench
