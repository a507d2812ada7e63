#pragma once

#include <QImage>
#include <QLocale>
#include <QString>
#include <QStringList>
#include <QVector>
#include <variant>
#include <vector>

// What stands on a paper, in order. Every word is text, never markup: a name that looks like a
// tag or an address of a file is printed as it was typed.
namespace mend::papers {

/// A title inside the paper: "Condition", "What was done".
struct Heading {
    QString words;
};

/// A paragraph. A caution stands between two rules and is never parted from its sign.
struct Paragraph {
    QString words;
    bool isCaution = false;
};

/// A label and what it says: "Fragments" "7 in one bag".
struct Fact {
    QString label;
    QString words;
};

/// Facts one under the other, the labels in a column of their own.
struct Facts {
    std::vector<Fact> rows;
};

/// Things to do or to know, one a line.
struct Points {
    QStringList lines;
};

/// A table with a head that is said again on each page. Every row is as long as the head.
struct Table {
    QStringList head;
    std::vector<QStringList> rows;
};

/// A photo and the line under it.
struct Picture {
    QImage image;
    QString caption;
};

/// Photos side by side, two a row.
struct Pictures {
    std::vector<Picture> all;
};

/// A place to sign: what was signed is drawn into it, else the line is left free.
struct Signature {
    QString who;     ///< printed under the line
    QString date;    ///< in words; empty where it is still to be signed
    QImage drawn;    ///< null: nothing was drawn on a screen
    QString instead; ///< "signed on paper", where that was told
};

using Block = std::variant<Heading, Paragraph, Facts, Points, Table, Pictures, Signature>;

/// One paper for one piece, or for the wall.
struct Paper {
    QString kind;   ///< "Intake receipt"
    QString number; ///< shown in the head, in the foot and as a code; empty for the wall's list
    QString code;   ///< what the code holds: the piece number alone; empty for none
    QString studio; ///< the studio's name and how to reach it, one line
    QString date;   ///< when it was printed, in words
    QLocale locale;
    std::vector<Block> blocks;
};

/// The sheets that papers are printed on.
enum class Sheet { A4, Letter };

} // namespace mend::papers
