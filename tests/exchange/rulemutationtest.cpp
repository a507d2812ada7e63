#include "core/exchange/rulereader.h"

#include "core/rules/keep.h"
#include "tests/support/rulefiles.h"

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

#include <random>

using namespace mend;
using namespace mend::exchange;

// The shipped files broken at random. A file that was broken must be refused with places inside
// it, or, where the change is one that the format allows, mean something whole.
namespace {

using Dice = std::mt19937;
using Json = nlohmann::ordered_json;

std::size_t below(Dice& dice, std::size_t count)
{
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(dice);
}

std::vector<RuleText> procedureFiles()
{
    std::vector<RuleText> files = test::shippedRuleFiles();
    std::erase_if(files, [](const RuleText& file) { return !file.file.starts_with("procedures/"); });
    return files;
}

const rules::RuleBook& unbrokenBook()
{
    static const rules::RuleBook book = test::shippedRules();
    return book;
}

void gather(Json& node, std::vector<Json*>& all)
{
    all.push_back(&node);
    if (node.is_structured()) {
        for (Json& child : node) {
            gather(child, all);
        }
    }
}

/// A random node for which `fits` holds.
template <class Fits> Json& pick(Json& root, Dice& dice, Fits fits)
{
    std::vector<Json*> all;
    gather(root, all);
    std::erase_if(all, [&](const Json* node) { return !fits(*node); });
    return *all[below(dice, all.size())];
}

std::string cutShort(const std::string& text, Dice& dice)
{
    const std::size_t lastBrace = text.rfind('}');
    return text.substr(0, below(dice, lastBrace + 1));
}

std::string keyTwice(std::string text, Dice& dice)
{
    std::vector<std::size_t> braces;
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        if (text[i] == '{') {
            braces.push_back(i);
        }
    }
    const std::size_t brace = braces[below(dice, braces.size())];
    const std::size_t open = text.find('"', brace);
    const std::size_t close = text.find('"', open + 1);
    return text.insert(brace + 1, text.substr(open, close - open + 1) + ": 1, ");
}

std::string otherKind(const std::string& text, Dice& dice)
{
    Json root = Json::parse(text);
    Json& node = pick(root, dice, [&](const Json& each) { return &each != &root; });
    if (node.is_string()) {
        node = below(dice, 2) == 0 ? Json(17) : Json::array({"a"});
    } else if (node.is_number()) {
        node = below(dice, 2) == 0 ? Json("17") : Json(true);
    } else if (node.is_boolean()) {
        node = Json(nullptr);
    } else {
        node = below(dice, 2) == 0 ? Json("things") : Json(3);
    }
    return root.dump(2);
}

std::string unknownKey(const std::string& text, Dice& dice)
{
    Json root = Json::parse(text);
    pick(root, dice, [](const Json& each) { return each.is_object(); })["colour"] = "red";
    return root.dump(2);
}

std::string outOfRange(const std::string& text, Dice& dice)
{
    Json root = Json::parse(text);
    Json& figure = pick(root, dice, [](const Json& each) { return each.is_object() && each.contains("least"); });
    const bool over = below(dice, 2) == 0;
    figure.begin().value() = over ? figure["most"].get<double>() + 1.0 : figure["least"].get<double>() - 1.0;
    return root.dump(2);
}

std::string noSuchName(const std::string& text, Dice& dice)
{
    Json root = Json::parse(text);
    Json& stage = root["stages"][below(dice, root["stages"].size())];
    const std::vector<const char*> names = {"law", "mix", "uses", "cautions", "leaves", "during", "places", "key"};
    std::vector<const char*> here;
    for (const char* name : names) {
        if (stage.contains(name)) {
            here.push_back(name);
        }
    }
    const std::string name = here[below(dice, here.size())];
    if (name == "leaves") {
        stage[name][0]["state"] = "no such thing";
    } else if (stage[name].is_array()) {
        stage[name][0] = "no such thing";
    } else {
        stage[name] = "no such thing";
    }
    return root.dump(2);
}

std::string keyGone(const std::string& text, Dice& dice)
{
    Json root = Json::parse(text);
    Json& object = pick(root, dice, [](const Json& each) { return each.is_object() && !each.empty(); });
    auto gone = object.begin();
    std::advance(gone, static_cast<std::ptrdiff_t>(below(dice, object.size())));
    object.erase(gone.key());
    return root.dump(2);
}

std::string anyByte(std::string text, Dice& dice)
{
    const std::size_t changes = 1 + below(dice, 3);
    for (std::size_t i = 0; i < changes; ++i) {
        text[below(dice, text.size())] = static_cast<char>(below(dice, 256));
    }
    return text;
}

/// Every fault names a place that the text has.
void expectPlacesInside(const std::string& text, const std::vector<rules::RuleFault>& faults)
{
    std::vector<std::size_t> lengths = {0};
    for (const char c : text) {
        if (c == '\n') {
            lengths.push_back(0);
        } else {
            ++lengths.back();
        }
    }
    for (const rules::RuleFault& fault : faults) {
        ASSERT_GE(fault.line, 1) << fault.text;
        ASSERT_LE(static_cast<std::size_t>(fault.line), lengths.size()) << fault.text;
        ASSERT_GE(fault.column, 1) << fault.text;
        ASSERT_LE(static_cast<std::size_t>(fault.column), lengths[static_cast<std::size_t>(fault.line) - 1] + 1)
            << fault.text;
        ASSERT_TRUE(fault.path.empty() || fault.path[0] == '/') << fault.path;
        ASSERT_FALSE(fault.text.empty());
    }
}

/// Form and meaning of one procedure file against the shipped rest.
struct Judged {
    std::optional<rules::Procedure> procedure;
    std::vector<rules::RuleFault> form;
    std::vector<rules::RuleFault> meaning;
    bool isRefused() const { return !form.empty() || !meaning.empty(); }
};

Judged judge(const RuleText& file)
{
    ReadProcedure read = readProcedure(file);
    Judged judged{std::move(read.procedure), std::move(read.faults), {}};
    if (judged.procedure) {
        judged.meaning = rules::validate(*judged.procedure, unbrokenBook());
    }
    return judged;
}

using Breaker = std::string (*)(const std::string&, Dice&);

std::string keyTwiceIn(const std::string& text, Dice& dice) { return keyTwice(text, dice); }

void expectRefused(Breaker breaker, int rounds)
{
    const std::vector<RuleText> files = procedureFiles();
    Dice dice(20240611);
    for (int round = 0; round < rounds; ++round) {
        const RuleText& file = files[below(dice, files.size())];
        const std::string text = breaker(file.text, dice);
        const Judged judged = judge({file.file, text});
        ASSERT_TRUE(judged.isRefused()) << file.file << " round " << round;
        expectPlacesInside(text, judged.form);
    }
}

} // namespace

TEST(BrokenRules, CutShortAreRefused) { expectRefused(cutShort, 40); }
TEST(BrokenRules, WithAKeyTwiceAreRefused) { expectRefused(keyTwiceIn, 40); }
TEST(BrokenRules, WithAnotherKindOfValueAreRefused) { expectRefused(otherKind, 40); }
TEST(BrokenRules, WithAnUnknownKeyAreRefused) { expectRefused(unknownKey, 40); }
TEST(BrokenRules, WithAFigureOutsideItsRangeAreRefused) { expectRefused(outOfRange, 40); }
TEST(BrokenRules, WithANameOfNothingAreRefused) { expectRefused(noSuchName, 40); }

TEST(BrokenRules, WithAKeyGoneAreRefusedOrStillWhole)
{
    const std::vector<RuleText> files = procedureFiles();
    Dice dice(19750101);
    int refused = 0;
    for (int round = 0; round < 90; ++round) {
        const RuleText& file = files[below(dice, files.size())];
        const std::string text = keyGone(file.text, dice);
        const Judged judged = judge({file.file, text});
        expectPlacesInside(text, judged.form);
        refused += judged.isRefused() ? 1 : 0;
        if (!judged.isRefused()) {
            const auto back = readProcedure({"again", canonicalText(*judged.procedure)});
            ASSERT_TRUE(back.procedure);
            ASSERT_EQ(*back.procedure, *judged.procedure);
        }
    }
    EXPECT_GT(refused, 45);
}

TEST(BrokenRules, WithAnyByteChangedNeverCrashAndNeverHalfMean)
{
    const std::vector<RuleText> files = procedureFiles();
    Dice dice(4711);
    for (int round = 0; round < 200; ++round) {
        const RuleText& file = files[below(dice, files.size())];
        const std::string text = anyByte(file.text, dice);
        const Judged judged = judge({file.file, text});
        expectPlacesInside(text, judged.form);
        if (!judged.isRefused()) {
            const auto back = readProcedure({"again", canonicalText(*judged.procedure)});
            ASSERT_TRUE(back.procedure);
            ASSERT_EQ(*back.procedure, *judged.procedure);
        }
    }
}

TEST(BrokenRules, OfWhatProceduresShareLeaveTheLastGoodBookInForce)
{
    std::vector<RuleText> files = test::shippedRuleFiles();
    Dice dice(300);
    for (int round = 0; round < 24; ++round) {
        RuleText& file = files[below(dice, files.size())];
        const std::string whole = file.text;
        const Breaker breakers[] = {cutShort, keyTwiceIn, otherKind, unknownKey};
        file.text = breakers[below(dice, 4)](whole, dice);
        ReadRules read = readRules(files);
        ASSERT_FALSE(read.isGood()) << file.file << " round " << round;
        for (const rules::RuleFault& fault : read.faults) {
            if (fault.file == file.file) {
                expectPlacesInside(file.text, {fault});
            }
        }
        const rules::Swap swap = rules::keepOrRefuse(unbrokenBook(), std::move(read.book), std::move(read.faults));
        ASSERT_FALSE(swap.taken);
        ASSERT_EQ(swap.inForce, unbrokenBook());
        file.text = whole;
    }
}
