#include "core/rules/stagecheck.h"

#include "core/rules/vocabulary.h"

#include <algorithm>

namespace mend::rules {
namespace {

constexpr std::size_t longestDone = 22;
constexpr std::size_t longestAct = 32;

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

} // namespace

void StageCheck::look(const Stage& stage, const std::string& path)
{
    checkWords(stage, path);
    checkReferences(stage, path);
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

void StageCheck::checkWords(const Stage& stage, const std::string& path)
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

void StageCheck::checkReferences(const Stage& stage, const std::string& path)
{
    rules::checkWords(stage.places, knownPlaces(), path + "/places", "place", m_faults);
    rules::checkWords(stage.resources, knownResources(), path + "/resources", "resource", m_faults);
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
        checkMaterial(stage.uses[i], m_book, path + "/uses/" + std::to_string(i), m_faults);
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

void StageCheck::checkMixed(const std::string& key, const std::string& path)
{
    checkMaterial(key, m_book, path, m_faults);
    const Material* material = m_book.material(key);
    if (material != nullptr && (!material->potLife || material->tile.empty())) {
        m_faults.add(path, "\"" + key + "\" is never mixed: it has no pot life or no tile");
    }
}

void StageCheck::checkState(const std::string& key, const std::string& path)
{
    if (m_book.state(key) == nullptr) {
        m_faults.add(path, "there is no state \"" + key + "\"");
    }
}

void StageCheck::checkWait(const Wait& wait, const std::string& path, bool last)
{
    checkCondition(wait.when, path, m_faults);
    if (wait.when.empty() && !last) {
        m_faults.add(path, "a wait without a condition stands last: nothing after it can ever rule");
    }
    if (wait.longest && wait.longest->value < wait.span.value) {
        m_faults.add(path + "/longest", "the longest wait is shorter than the wait");
    }
}

const Stage* StageCheck::checkOrigin(const Lag& lag, const std::string& path)
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

void StageCheck::checkOpening(const Stage& stage, const Lag& lag, const std::string& path)
{
    checkOrigin(lag, path);
    if (lag.from.stage == stage.key && lag.from.which != Which::Previous) {
        m_faults.add(path + "/from", "a stage cannot wait for itself");
    }
    if (lag.lost || lag.soft) {
        m_faults.add(path, "only a closing can be soft or lost");
    }
}

void StageCheck::checkClosing(const Stage& stage, const Lag& lag, const std::string& path)
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

void StageCheck::checkCost(const Stage& stage, const std::string& path)
{
    const bool closes = !stage.closes.empty() || stage.closesAtEndOfDay || stage.counted.has_value();
    if (closes && (stage.miss == Miss::Nothing || stage.missText.empty())) {
        m_faults.add(path + "/miss", "it closes: say what a miss costs, in \"miss\" and in \"missText\"");
    }
    if (!closes && stage.miss != Miss::Nothing) {
        m_faults.add(path + "/miss", "it never closes, so nothing can be missed");
    }
}

void StageCheck::checkTimes(const Stage& stage, const std::string& path)
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
    const bool cabinet = std::find(stage.places.begin(), stage.places.end(), "cabinet") != stage.places.end();
    if (!cabinet && !stage.warmCures.empty()) {
        m_faults.add(path + "/warmCures", "warm cures need a cabinet among the places");
    }
}

} // namespace mend::rules
