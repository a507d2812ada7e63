#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetview.h"
#include "app/parts/signaturepad.h"
#include "core/bench/counter.h"
#include "core/record/intake.h"
#include "core/service/wording.h"

#include <map>
#include <vector>

namespace mend::app {

/// What the intake offers to choose from.
struct IntakeNow {
    /// Something that rules call by a key, and a person by its name.
    struct Named {
        QString key;
        QString name;
    };
    struct Procedure {
        QString key;
        QString name;
        QString summary;
        std::vector<Named> options{}; ///< steps that are done only where they were agreed
    };
    std::vector<Procedure> procedures;
    std::vector<Named> oldMaterials; ///< what may be in a piece from before
    std::string currency;            ///< ISO 4217
    CivilDay today{};
    service::Manner manner;
};

/// What stands against a page: answered by whoever holds the bench, asked with every letter.
class IntakeAnswers {
public:
    virtual ~IntakeAnswers() = default;
    virtual std::vector<record::IntakeFault> faultsOf(const record::Intake& page,
                                                      const std::vector<record::Customer>& known) const = 0;
    virtual std::vector<std::string> alikeNames(const record::Intake& page) const = 0;
    /// Whether the day that is promised can be kept, in words; empty where nothing is known or promised.
    virtual QString promiseWords(const record::Intake& page) const = 0;
};

/// Takes a piece in on one page, from top to bottom, while its owner stands there: whose it is, what it is, how it
/// will be mended and by when, what the owner agrees to. What is missing stands beside the page with the one button.
class IntakeSpace : public QWidget {
    Q_OBJECT

public:
    explicit IntakeSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setAnswers(const IntakeAnswers* answers) { m_answers = answers; }
    void setLook(const parts::Look& look);
    void setNow(IntakeNow now);
    /// People who may be the one whose name is being typed.
    void setKnown(std::vector<record::Customer> known);
    /// The pieces that the chosen person has had here, none of them in the house now.
    void setHers(std::vector<record::Piece> pieces);
    /// Goes on with a page that was left half filled; a page somebody has begun to fill stays.
    void goOnWith(record::Intake page);
    /// It stands in the file under this number; the next page begins.
    void showTaken(PieceId piece, const QString& number);
    /// It could not be kept; everything on the page stays.
    void showRefused(const QString& why);
    /// The first line has the focus.
    void begin();

    const record::Intake& intake() const { return m_page; }
    parts::SheetView& form() { return *m_form; }
    parts::SheetView& slip() { return *m_slip; }
    parts::SignaturePad& pad() { return *m_pad; }

Q_SIGNALS:
    /// Something on the page changed; worth keeping through a crash.
    void edited(const mend::record::Intake& page);
    void nameTyped(const QString& name);
    void personChosen(mend::CustomerId person);
    void takeInTold(const mend::record::Intake& page, const QImage& signature);
    void cleared();
    void pieceWanted(mend::PieceId piece);
    void benchWanted();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    friend class IntakeForm;
    void arrange();
    void refresh();
    void change();
    void addSlip(parts::Sheet& sheet);
    void addActs(parts::Sheet& sheet);
    void takeIn(bool agreed);
    void clear();
    void choose(const record::Customer& person);
    std::vector<record::IntakeFault> faults() const;

    const IntakeAnswers* m_answers = nullptr;
    parts::Look m_look;
    IntakeNow m_now;
    record::Intake m_page;
    std::map<QString, QString> m_typed; ///< figures and days as they were typed
    std::vector<record::Customer> m_known;
    std::vector<record::Piece> m_hers;
    parts::SheetView* m_form;
    parts::SheetView* m_slip;
    parts::SignaturePad* m_pad;
    QString m_told; ///< what became of the last page
    PieceId m_taken;
    bool m_tried = false;
    bool m_busy = false;
    bool m_more = false;
    bool m_emptying = false; ///< asked whether the page is to go
    bool m_narrow = false;
};

} // namespace mend::app
