#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "app/rules/rulepages.h"
#include "core/base/id.h"
#include "core/rules/ownfigures.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mend::app {

/// What the Rules space shows.
struct RulesNow {
    struct Piece {
        PieceId id;
        QString name;
        std::string procedure; ///< key
        std::string revision;  ///< hash of the revision that it follows
    };
    std::shared_ptr<const rules::RuleBook> book;
    std::vector<rules::RuleFault> faults; ///< of files of the studio's own that were refused
    std::vector<Piece> pieces;            ///< in hand
    QString ownFolder;                    ///< where revisions are kept
};

/// What the Rules space asks; answered by whoever holds the service.
class RulesAnswers {
public:
    virtual ~RulesAnswers() = default;
    /// Every window that would move if these pieces followed this procedure from now on, one line each.
    virtual QStringList movedIf(const rules::Procedure& procedure, const std::vector<PieceId>& pieces) const = 0;
    /// What this number would move if it stood in the place of the shipped one: windows, and when mixes are stiff.
    virtual QStringList movedIfOwn(const rules::OwnFigure& own) const = 0;
};

/// Procedures and stage rules, whole and readable. A number is changed within its range, what it would
/// do to the windows open now is shown, and it is kept as a new revision beside the others.
class RulesSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit RulesSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setManner(const service::Manner& manner);
    void setAnswers(const RulesAnswers* answers) { m_answers = answers; }
    void setNow(RulesNow now);
    /// The revision stands in its file: the draft is over.
    void showKept(const QString& procedure);
    /// It could not be kept; the draft stays.
    void showRefused(const QString& why);
    /// The numbers that the studio has put in the place of shipped ones.
    void setOwn(std::vector<rules::OwnFigure> own);

    void openProcedure(const std::string& key);
    void openStage(const std::string& key, std::size_t stage);
    void openShared(SharedRules which);
    /// The procedure as it is being changed; null where nothing was.
    const rules::Procedure* draft(const std::string& key) const;

Q_SIGNALS:
    /// To be kept as the next revision of its procedure.
    void revised(const mend::rules::Procedure& edited);
    /// These pieces follow the newest revision from now on: one event for each.
    void adopted(const QString& procedure, const std::vector<mend::PieceId>& pieces);

    /// A number of the studio's own, to stand in the place of the shipped one.
    void ownTold(const mend::rules::OwnFigure& own);
    void ownDropped(const QString& of, const QString& path);

private:
    struct Place {
        std::string procedure;
        std::optional<std::size_t> stage;
        std::string figure; ///< path; empty: none is being changed
        std::optional<SharedRules> shared;
        std::string of; ///< of a shared figure: "material/fillerPaste"
    };
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    parts::Sheet procedureSheet(const rules::Procedure& procedure);
    parts::Sheet figureSheet(const rules::Procedure& procedure);
    void goTo(Place place);
    void openFigure(const std::string& path);
    void putIn(const rules::FigureAt& figure);
    parts::Sheet sharedFigureSheet();
    void openSharedFigure(const std::string& ofAndPath);
    void putOwn(const rules::FigureAt& figure);
    void sayDraft(parts::Sheet& sheet, const rules::Procedure& draft);
    void offerAdoption(parts::Sheet& sheet, const rules::Procedure& procedure);
    void sayMoves(parts::Sheet& sheet, const rules::Procedure& procedure, const std::vector<PieceId>& pieces) const;
    /// The draft where there is one, else the book's.
    const rules::Procedure* shown(const std::string& key) const;
    std::vector<rules::RuleFault> faultsOf(const rules::Procedure& procedure) const;

    RulesNow m_now;
    service::Manner m_manner;
    const RulesAnswers* m_answers = nullptr;
    Place m_place;
    std::map<std::string, rules::Procedure> m_drafts;
    std::vector<rules::OwnFigure> m_own;
    std::optional<rules::OwnFigure> m_ownDraft; ///< put in, shown in its effect, not kept yet
    QString m_typed;
    QString m_source;
    QString m_fault; ///< of what was typed
    QString m_told;
};

} // namespace mend::app
