#pragma once

#include "app/parts/look.h"
#include "app/parts/scene.h"

#include <QImage>
#include <QSize>
#include <QString>

#include <functional>
#include <map>
#include <optional>
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
    /// What a piece looks like: a photo of it, else a drawing of such a pot with its breaks.
    struct Sight {
        int shape = 0;       ///< of parts::drawOutline
        double mended = 0.0; ///< share of it, 0 to 1
        QImage photo{};
    };
    /// A line of a list: what it is, more about it below, its value at the far edge.
    struct Row {
        QString key{};
        QString label{};
        QString below{};
        QString value{};
        std::function<void()> act{};  ///< empty: only to be read
        bool chosen = false;          ///< a seam is drawn under it
        int depth = 0;                ///< set in, for what belongs to the row above
        std::optional<Sight> sight{}; ///< stands before it
    };
    /// A line to type into.
    struct Field {
        QString key{};
        QString label{};
        QString value{};
        QString unit{};  ///< said behind the line
        QString fault{}; ///< what is wrong with what stands there
        std::function<void(const QString&)> edited{};
        bool large = false;   ///< the one line of its page
        bool figures = false; ///< mostly digits are typed into it
        bool pair = false;    ///< beside the line before it, where there is room
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
    /// Who or what a page is about: its picture, its name, a few lines.
    struct Portrait {
        Sight sight{};
        QString name{};
        std::vector<Words> lines{};
    };
    /// Short facts, two beside each other where there is room.
    struct Facts {
        struct Fact {
            QString label{};
            QString value{};
        };
        std::vector<Fact> all{};
    };
    /// Room for a widget that draws itself, such as a place to sign.
    struct Inset {
        QString key{};
        int height = 0; ///< units at 96 dpi
        int widest = 560;
    };
    /// Photos beside each other, each with the words under it.
    struct Picture {
        QString key{};
        QImage image{}; ///< null: its place is kept until it is there
        QString caption{};
        std::function<void()> act{}; ///< empty: only to be looked at
    };
    struct Pictures {
        std::vector<Picture> pictures{};
        int side = 150; ///< of each, units at 96 dpi
    };
    using Block = std::variant<Heading, Words, Row, Field, Choices, Ruler, Portrait, Facts, Inset, Pictures>;

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
    std::map<QString, QRect> fields; ///< where the lines to type into go, and the insets
};
/// Draws a sheet at this width. `focused` is the field that is being typed into.
SheetDrawn drawSheet(const Sheet& sheet, const Look& look, int width, bool mirrored, const QString& focused = {});

} // namespace mend::parts
