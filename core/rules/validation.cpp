#include "core/rules/validation.h"

#include "core/rules/figurecheck.h"

#include <algorithm>
#include <array>
#include <set>
#include <span>
#include <string_view>

namespace mend::rules {
namespace {

using Words = std::span<const std::string_view>;

constexpr std::array<std::string_view, 4> knownConditions = {"porous", "vitrified", "lifted", "supported"};
constexpr std::array<std::string_view, 6> knownPlaces = {"bench", "shelf", "cabinet", "humidBox", "tray", "outside"};
constexpr std::array<std::string_view, 6> knownResources = {"hands", "solvent", "tray", "sandBox", "blade", "heat"};
constexpr std::array<std::string_view, 11> knownFamilies = {"epoxy",   "lacquer", "urushi", "acrylicResin",
                                                            "plaster", "filler",  "colour", "metalPowder",
                                                            "solvent", "support", "oldMend"};
constexpr std::size_t longestDone = 22;
constexpr std::size_t longestAct = 32;

bool isOneOf(std::string_view word, Words words) { return std::find(words.begin(), words.end(), word) != words.end(); }

std::string list(Words words)
{
    std::string text;
    for (const std::string_view word : words) {
        text += (text.empty() ? "" : ", ") + std::string(word);
    }
    return text;
}

void checkWords(const std::vector<std::string>& used, Words known, const std::string& path, std::string_view what,
                Faults& faults)
{
    for (std::size_t i = 0; i < used.size(); ++i) {
        if (!isOneOf(used[i], known)) {
            faults.add(path + "/" + std::to_string(i),
                       "\"" + used[i] + "\" is no " + std::string(what) + ": " + list(known));
        }
    }
}

void checkCondition(const Condition& when, const std::string& path, Faults& faults)
{
    if (!when.empty() && !isOneOf(when, knownConditions)) {
        faults.add(path + "/when", "\"" + when + "\" is no condition: " + list(knownConditions));
    }
}

/// Letters, digits and hyphens after a letter: what may name a row.
bool isKey(std::string_view key)
{
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    return !key.empty() && letter(key.front()) &&
           std::all_of(key.begin(), key.end(), [&](char c) { return letter(c) || (c >= '0' && c <= '9') || c == '-'; });
}

std::size_t charactersIn(std::string_view text)
{
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::size_t wordsIn(std::string_view text)
{
    std::size_t words = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        words += text[i] != ' ' && (i == 0 || text[i - 1] == ' ') ? 1 : 0;
    }
    return words;
}

template <class Row> void checkKeys(const std::vector<Row>& rows, const std::string& path, Faults& faults)
{
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string at = path + "/" + std::to_string(i) + "/key";
        if (!isKey(rows[i].key)) {
            faults.add(at, "a key is made of letters, digits and hyphens and begins with a letter");
        } else if (!seen.insert(rows[i].key).second) {
            faults.add(at, "\"" + rows[i].key + "\" is given twice");
        }
    }
}

void checkCautions(const std::vector<std::string>& keys, const RuleBook& book, const std::string& path, Faults& faults)
{
    for (std::size_t i = 0; i < keys.size(); ++i) {
        if (book.caution(keys[i]) == nullptr) {
            faults.add(path + "/cautions/" + std::to_string(i), "there is no caution \"" + keys[i] + "\"");
        }
    }
}

/// The warmest a material may get at that age, if it has a limit then.
std::optional<Temperature> warmestAt(const Material& material, Span age)
{
    for (const HeatLimit& limit : material.heatLimits) {
        if (limit.fromAge.value_or(Span{0}) <= age && (!limit.untilAge || age < *limit.untilAge)) {
            return limit.warmest.value;
        }
    }
    return std::nullopt;
}

// ---- one procedure ----------------------------------------------------------------------

class ProcedureCheck {
public:
    ProcedureCheck(const Procedure& procedure, const RuleBook& book) : m_procedure(procedure), m_book(book) {}

    std::vector<RuleFault> all()
    {
        FigureCheck::look(m_procedure, "", m_faults);
        checkHead();
        checkKeys(m_procedure.stages, "/stages", m_faults);
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            checkStage(m_procedure.stages[i], "/stages/" + std::to_string(i));
        }
        checkRings();
        checkHeat();
        checkKeepsApart();
        return m_faults.take();
    }

private:
    void checkHead()
    {
        if (!isKey(m_procedure.key)) {
            m_faults.add("/key", "a key is made of letters, digits and hyphens and begins with a letter");
        }
        if (m_procedure.revision < 1) {
            m_faults.add("/revision", "revisions count from 1");
        }
        checkCautions(m_procedure.cautions, m_book, "", m_faults);
        for (std::size_t i = 0; i < m_procedure.materials.size(); ++i) {
            checkMaterial(m_procedure.materials[i], "/materials/" + std::to_string(i));
        }
    }

    void checkMaterial(const std::string& key, const std::string& path)
    {
        if (m_book.material(key) == nullptr) {
            m_faults.add(path, "there is no material \"" + key + "\"");
        }
    }

    void checkStage(const Stage& stage, const std::string& path)
    {
        checkStageWords(stage, path);
        checkStageReferences(stage, path);
        for (std::size_t i = 0; i < stage.waits.size(); ++i) {
            checkWait(stage.waits[i], path + "/waits/" + std::to_string(i), i + 1 == stage.waits.size());
        }
        for (std::size_t i = 0; i < stage.opens.size(); ++i) {
            checkOpening(stage, stage.opens[i], path + "/opens/" + std::to_string(i));
        }
        for (std::size_t i = 0; i < stage.closes.size(); ++i) {
            checkClosing(stage, stage.closes[i], path + "/closes/" + std::to_string(i));
        }
        checkCost(stage, path);
        checkTimes(stage, path);
    }

    void checkStageWords(const Stage& stage, const std::string& path)
    {
        if (charactersIn(stage.done) > longestDone) {
            m_faults.add(path + "/done", "what is said when it is done fits a button: 22 characters at most");
        }
        if (charactersIn(stage.begun) > longestDone) {
            m_faults.add(path + "/begun", "what is said when it is begun fits a button: 22 characters at most");
        }
        if (charactersIn(stage.act) > longestAct) {
            m_faults.add(path + "/act", "what to do fits a card: 32 characters at most");
        }
        if (wordsIn(stage.spoken) > 3) {
            m_faults.add(path + "/spoken", "the voice says three words at most");
        }
    }

    void checkStageReferences(const Stage& stage, const std::string& path)
    {
        checkWords(stage.places, knownPlaces, path + "/places", "place", m_faults);
        checkWords(stage.resources, knownResources, path + "/resources", "resource", m_faults);
        checkCautions(stage.cautions, m_book, path, m_faults);
        if (stage.places.empty()) {
            m_faults.add(path, "a stage happens somewhere: name its places");
        }
        if (m_book.law(stage.law) == nullptr) {
            m_faults.add(path + "/law", "there is no law \"" + stage.law + "\"");
        }
        if (!stage.mix.empty()) {
            checkMixed(stage.mix, path + "/mix");
        }
        for (std::size_t i = 0; i < stage.uses.size(); ++i) {
            checkMaterial(stage.uses[i], path + "/uses/" + std::to_string(i));
        }
        for (std::size_t i = 0; i < stage.during.size(); ++i) {
            checkState(stage.during[i], path + "/during/" + std::to_string(i));
        }
        for (std::size_t i = 0; i < stage.ends.size(); ++i) {
            checkState(stage.ends[i], path + "/ends/" + std::to_string(i));
        }
        for (std::size_t i = 0; i < stage.leaves.size(); ++i) {
            checkState(stage.leaves[i].state, path + "/leaves/" + std::to_string(i) + "/state");
        }
    }

    void checkMixed(const std::string& key, const std::string& path)
    {
        checkMaterial(key, path);
        const Material* material = m_book.material(key);
        if (material != nullptr && (!material->potLife || material->tile.empty())) {
            m_faults.add(path, "\"" + key + "\" is never mixed: it has no pot life or no tile");
        }
    }

    void checkState(const std::string& key, const std::string& path)
    {
        if (m_book.state(key) == nullptr) {
            m_faults.add(path, "there is no state \"" + key + "\"");
        }
    }

    void checkWait(const Wait& wait, const std::string& path, bool last)
    {
        checkCondition(wait.when, path, m_faults);
        if (wait.when.empty() && !last) {
            m_faults.add(path, "a wait without a condition stands last: nothing after it can ever rule");
        }
        if (wait.longest && wait.longest->value < wait.span.value) {
            m_faults.add(path + "/longest", "the longest wait is shorter than the wait");
        }
    }

    /// The stage a time hangs on; null, and told, where there is none.
    const Stage* checkOrigin(const Lag& lag, const std::string& path)
    {
        checkCondition(lag.when, path, m_faults);
        const Stage* origin = m_procedure.find(lag.from.stage);
        if (origin == nullptr) {
            m_faults.add(path + "/from/stage", "there is no stage \"" + lag.from.stage + "\" in this procedure");
            return nullptr;
        }
        if (lag.waitOfStage && origin->waits.empty()) {
            m_faults.add(path + "/waitOfStage", "\"" + origin->key + "\" has no wait to hang on");
        }
        if (lag.waitOfStage && lag.from.touch != Touch::Last) {
            m_faults.add(path + "/from/touch", "a wait begins at the last touch");
        }
        if (lag.from.touch == Touch::Mixing && origin->mix.empty()) {
            m_faults.add(path + "/from/touch", "\"" + origin->key + "\" is made without a mix");
        }
        if (lag.from.which == Which::Previous && origin->repeat == Repeat::Once) {
            m_faults.add(path + "/from/which", "\"" + origin->key + "\" is done once: it has none before");
        }
        return origin;
    }

    void checkOpening(const Stage& stage, const Lag& lag, const std::string& path)
    {
        checkOrigin(lag, path);
        if (lag.from.stage == stage.key && lag.from.which != Which::Previous) {
            m_faults.add(path + "/from", "a stage cannot wait for itself");
        }
        if (lag.lost || lag.soft) {
            m_faults.add(path, "only a closing can be soft or lost");
        }
    }

    void checkClosing(const Stage& stage, const Lag& lag, const std::string& path)
    {
        checkOrigin(lag, path);
        if (lag.waitOfStage) {
            m_faults.add(path + "/waitOfStage", "a closing needs a time of its own");
        }
        if (lag.from.stage == stage.key && lag.from.touch == Touch::Last && lag.from.which != Which::Previous) {
            m_faults.add(path + "/from", "a closing cannot count from the end of its own stage");
        }
        if (lag.lost && lag.lost->value < lag.span.value) {
            m_faults.add(path + "/lost", "what is lost is lost after it closes, not before");
        }
        for (const Lag& open : stage.opens) {
            const bool together = open.from == lag.from && open.when == lag.when && !open.waitOfStage;
            if (together && open.span.value >= lag.span.value) {
                m_faults.add(path + "/span", "it closes before it opens");
            }
        }
    }

    void checkCost(const Stage& stage, const std::string& path)
    {
        const bool closes = !stage.closes.empty() || stage.closesAtEndOfDay || stage.counted.has_value();
        if (closes && (stage.miss == Miss::Nothing || stage.missText.empty())) {
            m_faults.add(path + "/miss", "it closes: say what a miss costs, in \"miss\" and in \"missText\"");
        }
        if (!closes && stage.miss != Miss::Nothing) {
            m_faults.add(path + "/miss", "it never closes, so nothing can be missed");
        }
    }

    void checkTimes(const Stage& stage, const std::string& path)
    {
        if (stage.recommended && stage.opens.empty()) {
            m_faults.add(path + "/recommended", "it counts from the first opening, and there is none");
        }
        if (stage.recommended && !stage.opens.empty() && !stage.opens.front().waitOfStage &&
            stage.recommended->value < stage.opens.front().span.value) {
            m_faults.add(path + "/recommended", "it is recommended before it opens");
        }
        if (stage.byItself && (stage.handsOn.fixed.value > Span{0} || stage.waits.empty())) {
            m_faults.add(path + "/byItself", "a rest needs no hands and has a wait");
        }
        if (stage.counted && stage.counted->red.value < stage.counted->goal.value) {
            m_faults.add(path + "/counted/red", "red comes after the goal");
        }
        if (stage.warnBelow && stage.noForecastBelow && stage.warnBelow->value < stage.noForecastBelow->value) {
            m_faults.add(path + "/warnBelow", "the warning comes before the forecast ends, not after");
        }
        if (stage.mixesHere && stage.mix.empty()) {
            m_faults.add(path + "/mixesHere", "say what is mixed here in \"mix\"");
        }
        const bool cabinet = isIn(stage.places, "cabinet");
        if (!cabinet && !stage.warmCures.empty()) {
            m_faults.add(path + "/warmCures", "warm cures need a cabinet among the places");
        }
    }

    static bool isIn(const std::vector<std::string>& words, std::string_view word)
    {
        return std::find(words.begin(), words.end(), word) != words.end();
    }

    /// Follows what each stage hangs on; the repetition before is always over, so it makes no ring.
    void checkRings()
    {
        std::vector<int> state(m_procedure.stages.size(), 0);
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            visit(i, state);
        }
    }

    void visit(std::size_t index, std::vector<int>& state)
    {
        if (state[index] != 0) {
            return;
        }
        state[index] = 1;
        const Stage& stage = m_procedure.stages[index];
        follow(stage.opens, "/stages/" + std::to_string(index) + "/opens/", index, state);
        follow(stage.closes, "/stages/" + std::to_string(index) + "/closes/", index, state);
        state[index] = 2;
    }

    void follow(const std::vector<Lag>& lags, const std::string& path, std::size_t self, std::vector<int>& state)
    {
        for (std::size_t i = 0; i < lags.size(); ++i) {
            const auto next = m_procedure.indexOf(lags[i].from.stage);
            if (!next || *next == self || lags[i].from.which == Which::Previous) {
                continue;
            }
            if (state[*next] == 1) {
                m_faults.add(path + std::to_string(i) + "/from/stage",
                             "a ring: \"" + lags[i].from.stage + "\" waits for this stage too");
            } else {
                visit(*next, state);
            }
        }
    }

    /// A figure that practice gives for the cabinet against the lowest limit of everything
    /// that has gone into the piece by then.
    void checkHeat()
    {
        std::set<std::string> inside;
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            const Stage& stage = m_procedure.stages[i];
            if (!stage.optional) { // what an option puts in is looked at on the bench, once it is chosen
                inside.insert(stage.uses.begin(), stage.uses.end());
            }
            for (std::size_t k = 0; k < stage.warmCures.size(); ++k) {
                checkWarmCure(stage.warmCures[k], inside,
                              "/stages/" + std::to_string(i) + "/warmCures/" + std::to_string(k));
            }
        }
    }

    void checkWarmCure(const WarmCure& cure, const std::set<std::string>& inside, const std::string& path)
    {
        for (const std::string& key : inside) {
            const Material* material = m_book.material(key);
            const auto limit =
                material == nullptr ? std::nullopt : warmestAt(*material, cure.fromAge.value_or(Span{0}));
            if (limit && cure.temperature.value > *limit) {
                m_faults.add(path + "/temperature",
                             "warmer than " + material->name + " may get at that age: the limit rules");
            }
        }
    }

    /// A stage that follows another sooner than a blocking hazard lets the two meet.
    void checkKeepsApart()
    {
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            const Stage& stage = m_procedure.stages[i];
            for (std::size_t k = 0; k < stage.opens.size(); ++k) {
                const Lag& lag = stage.opens[k];
                const Stage* before = m_procedure.find(lag.from.stage);
                if (before == nullptr || lag.waitOfStage) {
                    continue;
                }
                for (const Hazard& hazard : m_book.hazards) {
                    if (hazard.verdict == Verdict::Block && hazard.meeting == Meeting::Overlap && hazard.span &&
                        lag.span.value < hazard.span->value && leavesOneOf(*before, hazard.one) &&
                        bringsOneOf(stage, hazard.other)) {
                        m_faults.add("/stages/" + std::to_string(i) + "/opens/" + std::to_string(k) + "/span",
                                     "sooner than " + hazard.key + " allows: the hazard rules");
                    }
                }
            }
        }
    }

    static bool leavesOneOf(const Stage& stage, const std::vector<std::string>& states)
    {
        return std::any_of(stage.leaves.begin(), stage.leaves.end(),
                           [&](const Leaves& left) { return isIn(states, left.state); });
    }

    /// What starting a stage brings: its states, its resources, its usual place, its own key.
    static bool bringsOneOf(const Stage& stage, const std::vector<std::string>& names)
    {
        const auto named = [&](const std::string& name) { return isIn(names, name); };
        return std::any_of(stage.during.begin(), stage.during.end(), named) ||
               std::any_of(stage.resources.begin(), stage.resources.end(), named) ||
               (!stage.places.empty() && named(stage.places.front())) || named(stage.key);
    }

    const Procedure& m_procedure;
    const RuleBook& m_book;
    Faults m_faults;
};

// ---- what procedures share --------------------------------------------------------------

template <class Row> void lookAtRows(const std::vector<Row>& rows, const std::string& path, Faults& faults)
{
    checkKeys(rows, path, faults);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        FigureCheck::look(rows[i], path + "/" + std::to_string(i), faults);
    }
}

struct LawCheck {
    std::string path;
    Faults& faults;

    void operator()(const cure::ClockOnly&) const {}
    void operator()(const cure::Arrhenius& law) const
    {
        if (!(law.noCreditBelow < law.noExtraAbove)) {
            faults.add(path + "/noExtraAbove", "no extra credit begins above where credit begins");
        }
        if (law.bend && !(law.noCreditBelow < *law.bend && *law.bend < law.noExtraAbove)) {
            faults.add(path + "/bend", "the bend lies between both limits");
        }
    }
    void operator()(const cure::HumidBand& law) const
    {
        if (!(law.coldest < law.warmest)) {
            faults.add(path + "/warmest", "the band is upside down");
        }
        if (!(law.driest < law.dampest)) {
            faults.add(path + "/dampest", "the band is upside down");
        }
    }
};

void checkMaterialRow(const Material& material, const RuleBook& book, const std::string& path, Faults& faults)
{
    if (book.law(material.law) == nullptr) {
        faults.add(path + "/law", "there is no law \"" + material.law + "\"");
    }
    if (!isOneOf(material.family, knownFamilies)) {
        faults.add(path + "/family", "\"" + material.family + "\" is no family: " + list(knownFamilies));
    }
    if (!material.tile.empty() && !material.potLife) {
        faults.add(path + "/tile", "what is mixed has a pot life");
    }
    for (std::size_t i = 0; i < material.heatLimits.size(); ++i) {
        const HeatLimit& limit = material.heatLimits[i];
        if (limit.untilAge && !(limit.fromAge.value_or(Span{0}) < *limit.untilAge)) {
            faults.add(path + "/heatLimits/" + std::to_string(i) + "/untilAge", "it ends before it begins");
        }
    }
    checkCautions(material.cautions, book, path, faults);
}

bool isAnyStage(const RuleBook& book, std::string_view key)
{
    return std::any_of(book.procedures.begin(), book.procedures.end(),
                       [&](const Procedure& procedure) { return procedure.find(key) != nullptr; });
}

/// Whether a name of a hazard's side means anything; see Hazard for what it may be.
bool isKnownName(std::string_view name, const RuleBook& book)
{
    constexpr std::string_view uncured = "uncured:";
    if (name.starts_with(uncured)) {
        name.remove_prefix(uncured.size());
        return book.material(name) != nullptr || isOneOf(name, knownFamilies);
    }
    return book.state(name) != nullptr || book.material(name) != nullptr || isOneOf(name, knownFamilies) ||
           isOneOf(name, knownConditions) || isOneOf(name, knownResources) || isOneOf(name, knownPlaces) ||
           isAnyStage(book, name);
}

void checkSide(const Hazard& hazard, const std::vector<std::string>& side, const RuleBook& book,
               const std::string& path, Faults& faults)
{
    for (std::size_t i = 0; i < side.size(); ++i) {
        const bool known = hazard.meeting == Meeting::Assembly ? side[i] == "lockOut" || side[i] == "ringClosure"
                                                               : isKnownName(side[i], book);
        if (!known) {
            faults.add(path + "/" + std::to_string(i),
                       "\"" + side[i] + "\" is no state, material, family, condition, resource, place or stage");
        }
    }
}

void checkHazardRow(const Hazard& hazard, const RuleBook& book, const std::string& path, Faults& faults)
{
    checkSide(hazard, hazard.one, book, path + "/one", faults);
    checkSide(hazard, hazard.other, book, path + "/other", faults);
    for (std::size_t i = 0; i < hazard.answers.size(); ++i) {
        const Answer& answer = hazard.answers[i];
        if (!answer.ends.empty() && book.state(answer.ends) == nullptr) {
            faults.add(path + "/answers/" + std::to_string(i) + "/ends", "there is no state \"" + answer.ends + "\"");
        }
    }
    for (std::size_t i = 0; i < hazard.exceptStages.size(); ++i) {
        if (!isAnyStage(book, hazard.exceptStages[i])) {
            faults.add(path + "/exceptStages/" + std::to_string(i),
                       "no procedure has a stage \"" + hazard.exceptStages[i] + "\"");
        }
    }
    if (hazard.meeting == Meeting::Overlap && (hazard.one.empty() || hazard.other.empty())) {
        faults.add(path, "two things overlap: name both sides");
    }
    if (hazard.meeting == Meeting::Climate && !hazard.temperature && !hazard.margin && !hazard.humidity) {
        faults.add(path, "say which air is wrong: temperature, margin or humidity");
    }
    if (hazard.verdict == Verdict::Block && hazard.answers.empty()) {
        faults.add(path + "/answers", "a start that is stopped needs answers that let it go on");
    }
}

} // namespace

std::vector<RuleFault> validate(const Procedure& procedure, const RuleBook& book)
{
    return ProcedureCheck(procedure, book).all();
}

std::vector<RuleFault> validate(const RuleBook& book)
{
    Faults faults;
    lookAtRows(book.laws, "/laws", faults);
    lookAtRows(book.materials, "/materials", faults);
    lookAtRows(book.states, "/states", faults);
    lookAtRows(book.hazards, "/hazards", faults);
    lookAtRows(book.cautions, "/cautions", faults);
    FigureCheck::look(book.practice, "/practice", faults);
    for (std::size_t i = 0; i < book.laws.size(); ++i) {
        std::visit(LawCheck{"/laws/" + std::to_string(i), faults}, book.laws[i].law);
    }
    for (std::size_t i = 0; i < book.materials.size(); ++i) {
        checkMaterialRow(book.materials[i], book, "/materials/" + std::to_string(i), faults);
    }
    for (std::size_t i = 0; i < book.hazards.size(); ++i) {
        checkHazardRow(book.hazards[i], book, "/hazards/" + std::to_string(i), faults);
    }
    return faults.take();
}

} // namespace mend::rules
