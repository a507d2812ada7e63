#pragma once

#include "app/parts/look.h"
#include "app/parts/scene.h"

#include <QSize>
#include <QString>

#include <functional>
#include <map>
#include <variant>
#include <vector>

namespace mend::parts {

/// A page of a space to read and to fill in, said as data: headings, words, rows, lines to type
/// into, answers to choose from. One drawer draws them all, so every page has the same hand.
struct Sheet {
    struct Heading {
        QString words{};
    };
    enum class Tone { Plain, Quiet, Grave };
    struct Words {
        QString words{};
        Tone tone = Tone::Plain;
    };
    /// A line of a list: what it is, more about it below, its value at the far edge.
    struct Row {
        QString key{};
        QString label{};
        QString below{};
        QString value{};
        std::function<void()> act{}; ///< empty: only to be read
        bool chosen = false;         ///< a seam is drawn under it
        int depth = 0;               ///< set in, for what belongs to the row above
    };
    /// A line to type into.
    struct Field {
        QString key{};
        QString label{};
        QString value{};
        QString unit{};  ///< said behind the line
        QString fault{}; ///< what is wrong with what stands there
        std::function<void(const QString&)> edited{};
    };
    struct Choice {
        QString key{};
        QString label{};
        QString below{};
        std::function<void()> act{}; ///< empty: cannot be done now; `below` says why
        bool strong = false;
        bool chosen = false;
    };
    /// Answers beside each other, all of one size.
    struct Choices {
        QString label{}; ///< read before each of them; may be empty
        std::vector<Choice> choices{};
        bool bench = false; ///< as large as the acts of the Bench
    };
    /// A drawing of true size on the glass, for holding something against it.
    struct Ruler {
        QSizeF millimetres{};
        QString name{};
    };
    using Block = std::variant<Heading, Words, Row, Field, Choices, Ruler>;

    QString title;
    QString beside; ///< quiet words after the title
    Choice back;    ///< at the far end of the title; without a key: none
    std::vector<Block> blocks;

    template <class B> void add(B block) { blocks.emplace_back(std::move(block)); }
    void say(const QString& words, Tone tone = Tone::Plain) { add(Words{words, tone}); }
    void head(const QString& words) { add(Heading{words}); }
};

struct SheetDrawn {
    Scene scene;
    int height = 0;
    std::map<QString, QRect> fields; ///< where the lines to type into go
};
/// Draws a sheet at this width. `focused` is the field that is being typed into.
SheetDrawn drawSheet(const Sheet& sheet, const Look& look, int width, bool mirrored, const QString& focused = {});

} // namespace mend::parts
