#include "core/bench/benchpicture.h"

#include "core/cure/progress.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// What a stage puts into the piece: what it uses, and the mix it is done with.
std::vector<const rules::Material*> putInBy(const rules::Stage& stage, const rules::RuleBook& book)
{
    std::vector<const rules::Material*> materials;
    for (const std::string& key : stage.uses) {
        if (const rules::Material* material = book.material(key)) {
            materials.push_back(material);
        }
    }
    if (!stage.mix.empty() && !holdsName(stage.uses, stage.mix)) {
        if (const rules::Material* material = book.material(stage.mix)) {
            materials.push_back(material);
        }
    }
    return materials;
}

StageFacts reckonFacts(const rules::Stage& stage, const rules::RuleBook& book)
{
    StageFacts facts;
    facts.materials = putInBy(stage, book);
    facts.names.push_back(stage.key);
    facts.names.insert(facts.names.end(), stage.during.begin(), stage.during.end());
    facts.names.insert(facts.names.end(), stage.resources.begin(), stage.resources.end());
    for (const rules::Leaves& left : stage.leaves) {
        facts.names.push_back(left.state);
    }
    for (const rules::Material* material : facts.materials) {
        facts.names.push_back(material->key);
        facts.names.push_back(material->family);
    }
    return facts;
}

std::vector<std::string> sideInPieces(const std::vector<std::string>& side, const rules::RuleBook& book)
{
    std::vector<std::string> names;
    std::ranges::copy_if(side, std::back_inserter(names), [&](const std::string& name) { return !book.state(name); });
    return names;
}

/// Something nobody can name limits like an old mend of unknown make.
const rules::Material* oldMendNamed(const std::string& key, const rules::RuleBook& book)
{
    if (const rules::Material* known = book.material(key)) {
        return known;
    }
    const auto unknown = std::ranges::find(book.materials, "oldMend", &rules::Material::family);
    return unknown == book.materials.end() ? nullptr : &*unknown;
}

std::vector<std::string> powdersIn(const rules::Procedure& procedure, const rules::RuleBook& book)
{
    std::vector<std::string> powders;
    for (const rules::Stage& stage : procedure.stages) {
        for (const std::string& key : stage.uses) {
            const rules::Material* material = book.material(key);
            if (material && material->family == "metalPowder" && !holdsName(powders, key)) {
                powders.push_back(key);
            }
        }
    }
    return powders;
}

std::vector<cure::Stay> staysOf(const PieceState& piece, const BenchFold& bench)
{
    std::vector<cure::Stay> stays;
    stays.reserve(piece.stays.size());
    for (const PieceStay& stay : piece.stays) {
        const auto air = bench.air.find(stay.place);
        stays.push_back({stay.from, air == bench.air.end() ? nullptr : &air->second.forWaits});
    }
    return stays;
}

} // namespace

bool holdsName(const std::vector<std::string>& names, std::string_view name)
{
    return std::ranges::find(names, name) != names.end();
}

bool StageFacts::brings(std::string_view name) const
{
    if (name.starts_with(uncuredPrefix)) {
        name.remove_prefix(uncuredPrefix.size());
    }
    return std::ranges::find(names, name) != names.end();
}

bool StageFacts::bringsAny(const std::vector<std::string>& rowNames) const
{
    return std::ranges::any_of(rowNames, [this](const std::string& name) { return brings(name); });
}

bool meansMaterial(std::string_view bareName, const rules::Material& material)
{
    return material.key == bareName || material.family == bareName;
}

BenchPicture::BenchPicture(const BenchFold& bench, const std::vector<Window>& windows, const rules::RuleBook& book,
                           Instant now)
    : m_bench(bench), m_windows(windows), m_book(book), m_now(now)
{
    for (const StateInForce& state : bench.states) {
        if (state.since <= now && (!state.until || *state.until > now)) {
            m_presences.push_back({state, {}, true});
        }
    }
    for (const rules::Hazard& row : book.hazards) {
        m_rows.push_back({sideInPieces(row.one, book), sideInPieces(row.other, book)});
    }
    m_pieces.reserve(bench.pieces.size());
    for (const auto& [id, piece] : bench.pieces) {
        addPiece(piece);
        addPresences(piece);
    }
    index();
}

void BenchPicture::index()
{
    m_sides.resize(2 * m_rows.size());
    m_closings.resize(m_rows.size());
    for (const Presence& presence : m_presences) {
        m_presencesOf[presence.state.piece].push_back(&presence);
    }
    for (const Contents& contents : m_pieces) {
        m_piecesAt[contents.place].push_back(&contents);
    }
}

void BenchPicture::addPiece(const PieceState& piece)
{
    Contents contents;
    contents.piece = &piece;
    contents.procedure = procedureOf(piece, m_book);
    contents.place = piece.placeAt(m_now);
    for (const std::string& key : piece.piece.materialsInIt) {
        if (const rules::Material* material = oldMendNamed(key, m_book)) {
            contents.materials.push_back({material, piece.receivedAt.value_or(m_now), true});
        }
    }
    for (const EarlierMaterial& earlier : piece.earlier) {
        if (const rules::Material* material = oldMendNamed(earlier.material, m_book)) {
            contents.materials.push_back({material, earlier.at, false});
        }
    }
    for (const StageRecord& told : piece.stages) {
        const rules::Stage* stage = contents.procedure ? contents.procedure->find(told.at.stage) : nullptr;
        if (!stage || !told.firstTouch) {
            continue;
        }
        for (const rules::Material* material : factsOf(*stage).materials) {
            contents.materials.push_back({material, told.lastTouch.value_or(m_now), false});
        }
    }
    m_pieces.push_back(std::move(contents));
}

void BenchPicture::addPresences(const PieceState& piece)
{
    const rules::Procedure* procedure = m_pieces.back().procedure;
    for (const StageRecord& told : piece.stages) {
        const rules::Stage* stage = procedure && told.isUnderHands() ? procedure->find(told.at.stage) : nullptr;
        if (!stage) {
            continue;
        }
        const auto bring = [&](const std::string& name, bool isState) {
            m_presences.push_back(
                {{name, *told.firstTouch, std::nullopt, piece.piece.id, told.firstBy}, told.at, isState});
        };
        for (const std::string& state : stage->during) {
            bring(state, true);
        }
        for (const std::string& resource : stage->resources) {
            bring(resource, false);
        }
        bring(stage->key, false);
    }
}

const Contents* BenchPicture::contents(PieceId piece) const
{
    const auto found =
        std::ranges::lower_bound(m_pieces, piece, {}, [](const Contents& each) { return each.piece->piece.id; });
    return found != m_pieces.end() && found->piece->piece.id == piece ? &*found : nullptr;
}

const rules::Stage* BenchPicture::stage(PieceId piece, std::string_view key) const
{
    const Contents* held = contents(piece);
    return held && held->procedure ? held->procedure->find(key) : nullptr;
}

const StageFacts& BenchPicture::factsOf(const rules::Stage& stage) const
{
    const auto [asked, isNew] = m_facts.try_emplace(&stage);
    if (isNew) {
        asked->second = reckonFacts(stage, m_book);
    }
    return asked->second;
}

bool BenchPicture::isInForce(PieceId piece, std::string_view name) const
{
    const auto own = m_presencesOf.find(piece);
    return own != m_presencesOf.end() &&
           std::ranges::any_of(own->second, [&](const Presence* each) { return each->state.state == name; });
}

bool BenchPicture::isInForce(PieceId piece, const std::vector<std::string>& names) const
{
    return std::ranges::any_of(names, [&](const std::string& name) { return isInForce(piece, name); });
}

const std::vector<const Contents*>& BenchPicture::piecesAt(PlaceId place) const
{
    static const std::vector<const Contents*> none;
    const auto found = m_piecesAt.find(place);
    return found == m_piecesAt.end() ? none : found->second;
}

std::size_t BenchPicture::at(const rules::Hazard& row) const
{
    return static_cast<std::size_t>(&row - m_book.hazards.data());
}

const RowNames& BenchPicture::namesInPieces(const rules::Hazard& row) const { return m_rows[at(row)]; }

const RowSide& BenchPicture::side(const rules::Hazard& row, bool other) const
{
    std::optional<RowSide>& kept = m_sides[2 * at(row) + (other ? 1 : 0)];
    if (!kept) {
        const RowNames& names = m_rows[at(row)];
        kept = other ? sideOf(row.other, names.other, *this) : sideOf(row.one, names.one, *this);
    }
    return *kept;
}

const std::vector<Closing>& BenchPicture::closings(const rules::Hazard& row) const
{
    std::optional<std::vector<Closing>>& kept = m_closings[at(row)];
    if (!kept) {
        kept = runningClosings(row, *this);
    }
    return *kept;
}

const std::vector<std::string>& BenchPicture::powdersOf(const Contents& contents) const
{
    const auto [kept, isNew] = m_powders.try_emplace(contents.procedure);
    if (isNew && contents.procedure) {
        kept->second = powdersIn(*contents.procedure, m_book);
    }
    return kept->second;
}

record::PlaceKind BenchPicture::kindOf(PlaceId place) const
{
    const record::Place* known = m_bench.roster.place(place);
    return known ? known->kind : record::PlaceKind::Bench;
}

std::optional<cure::Air> BenchPicture::airOf(PlaceId place) const
{
    const auto [kept, isNew] = m_air.try_emplace(place);
    if (isNew) {
        kept->second = reckonAir(place);
    }
    return kept->second;
}

std::optional<cure::Air> BenchPicture::reckonAir(PlaceId place) const
{
    const auto air = m_bench.air.find(place);
    if (air == m_bench.air.end()) {
        return std::nullopt;
    }
    const cure::Stay here{m_now, &air->second.forClosings};
    const cure::Climate climate = cure::climateAlong(std::span(&here, 1), cure::Side::Closing, Temperature{});
    const cure::Air& now = climate.at(m_now);
    return now.trust == cure::Trust::Reference ? std::nullopt : std::optional(now);
}

std::optional<Temperature> BenchPicture::coolest(const Contents& contents, Span span) const
{
    const std::vector<cure::Stay> stays = staysOf(*contents.piece, m_bench);
    const cure::Climate climate = cure::climateAlong(stays, cure::Side::Wait, Temperature{});
    std::optional<Temperature> coolest;
    for (std::size_t i = 0; i < climate.steps.size(); ++i) {
        const cure::Air& step = climate.steps[i];
        const bool overBefore = i + 1 < climate.steps.size() && climate.steps[i + 1].from <= m_now - span;
        if (step.from > m_now || overBefore || step.trust == cure::Trust::Reference) {
            continue;
        }
        coolest = std::min(coolest.value_or(step.temperature), step.temperature);
    }
    return coolest;
}

bool BenchPicture::matches(std::string_view name, const Contents& contents, const MaterialIn& in) const
{
    if (!name.starts_with(uncuredPrefix)) {
        return meansMaterial(name, *in.material);
    }
    return meansMaterial(name.substr(uncuredPrefix.size()), *in.material) && isUncured(contents, in);
}

const MaterialIn* BenchPicture::findMaterial(const std::vector<std::string>& names, const Contents& contents) const
{
    for (const MaterialIn& in : contents.materials) {
        if (std::ranges::any_of(names, [&](const std::string& name) { return matches(name, contents, in); })) {
            return &in;
        }
    }
    return nullptr;
}

bool BenchPicture::isUncured(const Contents& contents, const MaterialIn& in) const
{
    const auto [asked, isNew] = m_uncured.try_emplace(&in, false);
    if (isNew) {
        asked->second = reckonUncured(contents, in);
    }
    return asked->second;
}

/// Where no full cure is known the wait before the hand-over stands for it, by the clock; where
/// neither is, the material counts as uncured.
bool BenchPicture::reckonUncured(const Contents& contents, const MaterialIn& in) const
{
    const rules::Material& material = *in.material;
    if (in.oldMend) {
        return false;
    }
    if (!material.fullCure) {
        return !material.handOverWait || m_now - in.since < material.handOverWait->value;
    }
    const rules::NamedLaw* law = m_book.law(material.law);
    if (!law) {
        return m_now - in.since < material.fullCure->value;
    }
    const std::vector<cure::Stay> stays = staysOf(*contents.piece, m_bench);
    const Temperature reference = material.cureReference.value_or(material.potReference);
    const cure::Climate climate = cure::climateAlong(stays, cure::Side::Wait, reference);
    return cure::progress(law->law, cure::EnergyEnd::Typical, reference, climate, in.since, m_now).served <
           material.fullCure->value;
}

} // namespace mend::bench
