#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "core/base/id.h"

#include <QStringList>
#include <optional>
#include <vector>

namespace mend::app {

/// A piece as one line of an answer.
struct FindPiece {
    PieceId id;
    QString name;    ///< bench name
    QString number;  ///< as it stands on the tag
    QString owner;   ///< shown only while owners are
    QString state;   ///< "resting, may be collected from Friday"
    QString outside; ///< what it looks like, in the owner's words; may be empty
    parts::Sheet::Sight sight{};
};

struct FindPerson {
    CustomerId id;
    QString name;
    QString contact;
};

/// One sentence with a count, and the pieces it counts.
struct FindList {
    QString key;
    QString words;
    std::vector<FindPiece> pieces;
};

/// What the field was answered with.
struct FindAnswer {
    QString typed;
    std::vector<FindPiece> pieces; ///< likeliest first
    std::vector<FindPerson> people;
    QString note;       ///< "One digit of this number is wrong"; may be empty
    bool sure = false;  ///< the first one is what was typed
    QString whose = {}; ///< all pieces of this one person
};

/// One piece, as much of it as is asked for at the counter.
struct FindPage {
    FindPiece piece;
    QString contact; ///< of the owner
    QString cameIn;  ///< "7 fragments, a lid"
    std::vector<parts::Sheet::Facts::Fact> facts;
    QString grave;        ///< said in bold: a promise that cannot be kept
    QString because;      ///< why
    bool inHouse = false; ///< it may be handed over some day
    QString notYet;       ///< why it cannot be handed over now; empty: it can
};

/// One field for a number, a name, a phone, what a piece looks like; without anything typed, what may be
/// collected, what is late, what waits, as sentences.
class FindSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit FindSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setLists(QString house, std::vector<FindList> lists);
    void setAnswer(FindAnswer answer);
    void setPage(FindPage page);
    /// Whoever stands beside the screen reads no owner's name but of the one piece that is opened.
    void setOwnersHidden(bool hidden);
    /// There is a hand-over to lead to.
    void offerHandOver(bool offered);
    /// Begins to type: the field has the focus and what stood in it is typed over.
    void begin();
    /// A number that was scanned or typed elsewhere; `note` says what is wrong with it.
    void put(const QString& typed, const QString& note);
    const QString& typed() const { return m_typed; }
    PieceId chosen() const { return m_chosen; }

Q_SIGNALS:
    void asked(const QString& typed);
    void pieceChosen(mend::PieceId piece);
    void personChosen(mend::CustomerId person);
    void pieceWanted(mend::PieceId piece);
    void handOverWanted(mend::PieceId piece);
    void hidingWanted(bool hide);

private:
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    void addLists(parts::Sheet& sheet);
    void addAnswer(parts::Sheet& sheet);
    parts::Sheet openedList();
    parts::Sheet pieceSheet();
    parts::Sheet::Row rowOf(const FindPiece& piece);
    void type(const QString& typed);
    void choose(PieceId piece);
    void enter();
    const FindList* opened() const;

    QString m_house;
    std::vector<FindList> m_lists;
    QString m_typed;
    QString m_note;
    FindAnswer m_answer;
    std::optional<FindPage> m_page;
    PieceId m_chosen;
    QString m_opened; ///< key of the list that is open
    bool m_ownersHidden = false;
    bool m_handOver = false;
};

} // namespace mend::app
