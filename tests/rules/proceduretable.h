#pragma once

#include "core/rules/fields.h"

#include <sstream>
#include <string>

namespace mend::test {

/// One row of a procedure as the trade prints it, all times in minutes.
struct TradeRow {
    std::string row;
    std::string key;
    std::string repeat; ///< "", "set", "run", "pass", "join"; "(o)" for an option
    std::string on;     ///< "20+2/fragment"
    std::string wait;   ///< "30 (porous 60)", "1440..4320"
    std::string opens;  ///< "30 after glueSet"
    std::string closes; ///< "90 from first touch of glueSet, soft"
    std::string miss;
};

inline std::string minutesOf(Span span)
{
    std::ostringstream text;
    text << static_cast<double>(span.count()) / 60'000.0;
    return text.str();
}

inline std::string onOf(const rules::HandsOn& hands)
{
    std::string text = hands.fixed.value > Span{0} ? minutesOf(hands.fixed.value) : "";
    const auto add = [&text](const std::optional<rules::SpanFigure>& each, const std::string& unit) {
        if (each) {
            text += (text.empty() ? "" : "+") + minutesOf(each->value) + "/" + unit;
        }
    };
    add(hands.perFragment, "fragment");
    add(hands.perJoin, "join");
    add(hands.perCmSeam, "cm seam");
    add(hands.perCmChip, "cm chip");
    return text.empty() ? "0" : text;
}

inline std::string waitOf(const rules::Stage& stage)
{
    std::string text;
    for (const rules::Wait& wait : stage.waits) {
        text += (text.empty() ? "" : ", ") + (wait.when.empty() ? "" : wait.when + " ") + minutesOf(wait.span.value);
        if (wait.longest) {
            text += ".." + minutesOf(wait.longest->value);
        }
    }
    return text.empty() ? "-" : text;
}

inline std::string originOf(const rules::Origin& origin)
{
    std::string text;
    if (origin.touch == rules::Touch::First) {
        text += "first touch of ";
    } else if (origin.touch == rules::Touch::Mixing) {
        text += "mix of ";
    }
    switch (origin.which) {
    case rules::Which::Same:
        break;
    case rules::Which::Previous:
        text += "previous ";
        break;
    case rules::Which::First:
        text += "first ";
        break;
    case rules::Which::Last:
        text += "last ";
        break;
    case rules::Which::Latest:
        text += "latest ";
        break;
    }
    return text + origin.stage;
}

inline std::string opensOf(const rules::Stage& stage)
{
    std::string text;
    for (const rules::Lag& lag : stage.opens) {
        text += text.empty() ? "" : ", ";
        text += lag.waitOfStage ? "wait of " : minutesOf(lag.span.value) + " after ";
        text += originOf(lag.from) + (lag.when.empty() ? "" : " if " + lag.when);
    }
    if (stage.recommended) {
        text += ", best " + minutesOf(stage.recommended->value);
    }
    if (stage.test) {
        text += text.empty() ? "test" : ", test";
    }
    return text.empty() ? "-" : text;
}

inline std::string closesOf(const rules::Stage& stage)
{
    std::string text;
    for (const rules::Lag& lag : stage.closes) {
        text += (text.empty() ? "" : ", ") + minutesOf(lag.span.value) + " from " + originOf(lag.from);
        text += lag.lost ? ", lost " + minutesOf(lag.lost->value) : "";
        text += lag.soft ? ", soft" : "";
    }
    if (stage.counted) {
        text += "counted from " + std::string(stage.counted->from == rules::Touch::Mixing ? "mixing" : "first touch") +
                ": " + minutesOf(stage.counted->goal.value) + ", red " + minutesOf(stage.counted->red.value);
    }
    if (stage.closesAtEndOfDay) {
        text += "end of day";
    }
    return text.empty() ? "-" : text;
}

inline std::string repeatOf(const rules::Stage& stage)
{
    std::string text;
    for (const auto& word : rules::repeatWords) {
        if (word.value == stage.repeat && stage.repeat != rules::Repeat::Once) {
            text = word.text;
        }
    }
    return stage.optional ? "(o)" : text;
}

/// The shipped stage in the same notation.
inline TradeRow tradeRow(const rules::Stage& stage)
{
    return {stage.row,     stage.key,      repeatOf(stage), onOf(stage.handsOn),
            waitOf(stage), opensOf(stage), closesOf(stage), stage.missText.empty() ? "-" : stage.missText};
}

inline std::string lineOf(const TradeRow& row)
{
    return row.row + " | " + row.key + " | " + row.repeat + " | " + row.on + " | " + row.wait + " | " + row.opens +
           " | " + row.closes + " | " + row.miss;
}

} // namespace mend::test
