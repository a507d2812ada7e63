#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "core/record/newpiece.h"

#include <string>
#include <vector>

namespace mend::app {

/// What the short form offers: the procedures to choose from, and who is known already.
struct AddPieceNow {
    struct Procedure {
        QString key;
        QString name;
        QString summary;
    };
    std::vector<Procedure> procedures;
    std::vector<record::Customer> owners;
    std::vector<std::string> namesInHand; ///< bench names in use
};

/// Takes a piece in with four facts: what it is called at the bench, whose it is, how it will be
/// mended, how many fragments. The form is told as a whole by one signal.
class AddPieceSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit AddPieceSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setNow(AddPieceNow now);
    /// It stands in the file under this number: the form says so and begins anew.
    void showTaken(const QString& number);
    /// It could not be kept; everything typed stays.
    void showRefused(const QString& why);

    const record::NewPiece& piece() const { return m_piece; }

Q_SIGNALS:
    void pieceTold(const mend::record::NewPiece& piece);
    void benchWanted();

private:
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    void askNames(parts::Sheet& sheet);
    void offerOwners(parts::Sheet& sheet);
    void askFragments(parts::Sheet& sheet);
    void askProcedure(parts::Sheet& sheet);
    void takeIn();
    bool has(record::NewPieceFault fault) const;

    AddPieceNow m_now;
    record::NewPiece m_piece;
    QString m_fragments; ///< as typed
    QString m_told;      ///< what became of the last one
    bool m_tried = false;
};

} // namespace mend::app
