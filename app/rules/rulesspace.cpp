#include "app/rules/rulesspace.h"

#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

RulesSpace::RulesSpace(parts::TapGate& gate, QWidget* parent) : SheetSpace(gate, parent)
{
    list().setAccessibleName(tr("Rules"));
    page().setAccessibleName(tr("One rule"));
}

void RulesSpace::setManner(const service::Manner& manner)
{
    m_manner = manner;
    refresh();
}

void RulesSpace::setNow(RulesNow now)
{
    m_now = std::move(now);
    refresh();
}

const rules::Procedure* RulesSpace::draft(const std::string& key) const
{
    const auto found = m_drafts.find(key);
    return found == m_drafts.end() ? nullptr : &found->second;
}

const rules::Procedure* RulesSpace::shown(const std::string& key) const
{
    const rules::Procedure* changed = draft(key);
    return changed ? changed : m_now.book ? m_now.book->procedure(key) : nullptr;
}

std::vector<rules::RuleFault> RulesSpace::faultsOf(const rules::Procedure& procedure) const
{
    return rules::validate(procedure, *m_now.book);
}

void RulesSpace::goTo(Place place)
{
    m_place = std::move(place);
    m_fault.clear();
    openPage();
}

void RulesSpace::openProcedure(const std::string& key) { goTo({key, {}, {}, {}, {}}); }
void RulesSpace::openStage(const std::string& key, std::size_t stage) { goTo({key, stage, {}, {}, {}}); }
void RulesSpace::openShared(SharedRules which) { goTo({{}, {}, {}, which, {}}); }

void RulesSpace::openFigure(const std::string& path)
{
    const rules::Procedure* procedure = shown(m_place.procedure);
    const auto figure = procedure ? rules::figureAt(*procedure, path) : std::nullopt;
    if (figure) {
        m_typed = service::typedFigure(*figure, m_manner).digits;
        m_source = tr("our own bench");
        goTo({m_place.procedure, m_place.stage, path, {}, {}});
    }
}

void RulesSpace::showKept(const QString& procedure)
{
    m_drafts.erase(procedure.toStdString());
    m_told = tr("Kept. New pieces follow it from now on; those in hand keep theirs until you say otherwise.");
    refresh();
}

void RulesSpace::showRefused(const QString& why)
{
    m_told = why;
    refresh();
}

Sheet RulesSpace::listSheet()
{
    Sheet sheet;
    sheet.title = tr("Rules");
    if (!m_now.book) {
        return sheet;
    }
    sheet.beside = tr("%1 procedures").arg(m_now.book->procedures.size());
    for (const rules::RuleFault& fault : m_now.faults) {
        sheet.say(tr("Refused: %1, line %2: %3").arg(text(fault.file)).arg(fault.line).arg(text(fault.text)),
                  Sheet::Tone::Grave);
    }
    for (const rules::Procedure& procedure : m_now.book->procedures) {
        const bool here = procedure.key == m_place.procedure;
        sheet.add(Sheet::Row{QStringLiteral("rules/") + text(procedure.key), text(procedure.name),
                             draft(procedure.key) ? tr("changed, not kept yet") : QString(),
                             tr("rev. %1").arg(procedure.revision), [this, key = procedure.key] { openProcedure(key); },
                             here && !m_place.stage});
        for (std::size_t i = 0; here && i < procedure.stages.size(); ++i) {
            sheet.add(Sheet::Row{QStringLiteral("rules/%1/%2").arg(text(procedure.key)).arg(i),
                                 text(procedure.stages[i].act),
                                 {},
                                 text(procedure.stages[i].row),
                                 [this, key = procedure.key, i] { openStage(key, i); },
                                 m_place.stage == i,
                                 1});
        }
    }
    sheet.head(tr("What they share"));
    const std::pair<SharedRules, QString> shared[] = {{SharedRules::Materials, tr("Materials")},
                                                      {SharedRules::Laws, tr("How warmth hastens a cure")},
                                                      {SharedRules::Hazards, tr("What must not meet")},
                                                      {SharedRules::Cautions, tr("Cautions")},
                                                      {SharedRules::Practice, tr("Habits of the bench")}};
    for (const auto& [which, words] : shared) {
        sheet.add(Sheet::Row{QStringLiteral("rules/shared/%1").arg(int(which)),
                             words,
                             {},
                             {},
                             [this, which = which] { openShared(which); },
                             m_place.shared == which});
    }
    return sheet;
}

Sheet RulesSpace::pageSheet()
{
    if (m_now.book && m_place.shared) {
        const std::vector<rules::RuleFault> none;
        if (!m_place.figure.empty()) {
            return sharedFigureSheet();
        }
        return sharedPage(*m_place.shared, {*m_now.book, m_manner, none,
                                            [this](const std::string& figure) { openSharedFigure(figure); }});
    }
    const rules::Procedure* procedure = shown(m_place.procedure);
    if (!procedure) {
        Sheet sheet;
        sheet.title = tr("Every number the bench counts by");
        sheet.say(tr("Choose a procedure, then a stage. Each number stands with its unit, the range that it may be "
                     "changed in, and where it comes from."));
        sheet.say(tr("A change becomes a new revision. Windows that are open keep the rule they were begun under, "
                     "unless you say “use it for these too”."),
                  Sheet::Tone::Quiet);
        return sheet;
    }
    if (!m_place.figure.empty()) {
        return figureSheet(*procedure);
    }
    if (m_place.stage && *m_place.stage < procedure->stages.size()) {
        const auto faults = faultsOf(*procedure);
        return stagePage(*procedure, *m_place.stage,
                         {*m_now.book, m_manner, faults, [this](const std::string& path) { openFigure(path); }});
    }
    return procedureSheet(*procedure);
}

Sheet RulesSpace::procedureSheet(const rules::Procedure& procedure)
{
    Sheet sheet;
    sheet.title = text(procedure.name);
    sheet.beside = tr("revision %1").arg(procedure.revision);
    if (!m_told.isEmpty()) {
        sheet.say(m_told, Sheet::Tone::Grave);
    }
    sheet.say(text(procedure.summary));
    if (const rules::Procedure* changed = draft(procedure.key)) {
        sayDraft(sheet, *changed);
    } else {
        offerAdoption(sheet, procedure);
    }
    sheet.head(tr("Stages"));
    for (std::size_t i = 0; i < procedure.stages.size(); ++i) {
        const rules::Stage& stage = procedure.stages[i];
        sheet.add(Sheet::Row{QStringLiteral("procedure/stage/%1").arg(i), text(stage.act),
                             service::joined({service::repeatWords(stage.repeat), service::missWords(stage.miss)}),
                             service::spanWords(stage.handsOn.fixed.value),
                             [this, key = procedure.key, i] { openStage(key, i); }});
    }
    sheet.head(tr("Materials and cautions"));
    for (const std::string& key : procedure.materials) {
        if (const rules::Material* material = m_now.book->material(key)) {
            sheet.say(text(material->name));
        }
    }
    for (const std::string& key : procedure.cautions) {
        if (const rules::Caution* caution = m_now.book->caution(key)) {
            sheet.say(text(caution->text), Sheet::Tone::Quiet);
        }
    }
    return sheet;
}

void RulesSpace::sayMoves(Sheet& sheet, const rules::Procedure& procedure, const std::vector<PieceId>& pieces) const
{
    const QStringList moves = m_answers && !pieces.empty() ? m_answers->movedIf(procedure, pieces) : QStringList();
    for (const QString& move : moves) {
        sheet.say(move);
    }
    if (moves.isEmpty()) {
        sheet.say(tr("No window that is open now would move."));
    }
}

void RulesSpace::sayDraft(Sheet& sheet, const rules::Procedure& changed)
{
    const rules::Procedure* before = m_now.book->procedure(changed.key);
    sheet.head(tr("Changed, not kept yet"));
    for (const rules::FigureAt& figure : rules::figuresOf(changed)) {
        const auto old = before ? rules::figureAt(*before, figure.path) : std::nullopt;
        if (!old || *old == figure) {
            continue;
        }
        sheet.add(Sheet::Row{
            QStringLiteral("draft") + text(figure.path), figureTitle(changed, figure.path),
            tr("instead of %1 · %2").arg(service::figureValue(*old, m_manner), service::sourceWords(figure.source())),
            service::figureValue(figure, m_manner)});
    }
    const auto faults = faultsOf(changed);
    for (const rules::RuleFault& fault : faults) {
        sheet.say(tr("%1: %2").arg(figureTitle(changed, fault.path), text(fault.text)), Sheet::Tone::Grave);
    }
    sheet.head(tr("What it would do to the windows open now"));
    std::vector<PieceId> pieces;
    for (const auto& piece : m_now.pieces) {
        if (piece.procedure == changed.key) {
            pieces.push_back(piece.id);
        }
    }
    sayMoves(sheet, changed, pieces);
    const int next = rules::nextRevision(changed, *m_now.book).revision;
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("rules/keep"), tr("Keep it as revision %1").arg(next),
                     faults.empty() ? tr("for new pieces") : tr("not with the faults above"),
                     faults.empty() ? std::function<void()>([this, changed] { Q_EMIT revised(changed); }) : nullptr,
                     true},
                    {QStringLiteral("rules/drop"), tr("Drop the changes"), {}, [this, key = changed.key] {
                         m_drafts.erase(key);
                         refresh();
                     }}};
    sheet.add(acts);
}

void RulesSpace::offerAdoption(Sheet& sheet, const rules::Procedure& procedure)
{
    std::vector<PieceId> pieces;
    QStringList names;
    for (const auto& piece : m_now.pieces) {
        if (piece.procedure == procedure.key && piece.revision != procedure.hash) {
            pieces.push_back(piece.id);
            names << service::isolated(piece.name);
        }
    }
    if (pieces.empty()) {
        return;
    }
    sheet.head(tr("Pieces in hand under an earlier revision"));
    sheet.say(names.join(QStringLiteral(", ")));
    sayMoves(sheet, procedure, pieces);
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("rules/adopt"),
                     tr("Use it for these too"),
                     {},
                     [this, key = procedure.key, pieces] {
                         m_told.clear();
                         Q_EMIT adopted(text(key), pieces);
                     },
                     true}};
    sheet.add(acts);
}

Sheet RulesSpace::figureSheet(const rules::Procedure& procedure)
{
    Sheet sheet;
    sheet.title = figureTitle(procedure, m_place.figure);
    const auto figure = rules::figureAt(procedure, m_place.figure);
    if (!figure) {
        return sheet;
    }
    const auto typed = service::typedFigure(*figure, m_manner);
    sheet.add(Sheet::Row{QStringLiteral("figure/now"), tr("In force"), service::sourceWords(figure->source()),
                         service::figureValue(*figure, m_manner)});
    sheet.add(Sheet::Row{QStringLiteral("figure/range"), tr("It may be"), {}, service::figureRange(*figure, m_manner)});
    sheet.add(Sheet::Field{QStringLiteral("figure/value"), tr("The new number"), m_typed, typed.unit, m_fault,
                           [this](const QString& words) {
                               m_typed = words;
                               m_fault.clear();
                               refresh();
                           }});
    sheet.add(Sheet::Field{QStringLiteral("figure/source"),
                           tr("Where it comes from"),
                           m_source,
                           {},
                           m_source.simplified().isEmpty() ? tr("No number stands without its source.") : QString(),
                           [this](const QString& words) {
                               m_source = words;
                               refresh();
                           }});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("figure/put"), tr("Put it in"), {}, [this, held = *figure] { putIn(held); }, true},
                    {QStringLiteral("figure/leave"), tr("Leave it as it is"), {}, [this] {
                         goTo({m_place.procedure, m_place.stage, {}, {}, {}});
                     }}};
    sheet.add(acts);
    sheet.say(tr("Nothing changes on the bench by this alone: it is first shown what it would do."),
              Sheet::Tone::Quiet);
    return sheet;
}

void RulesSpace::putIn(const rules::FigureAt& figure)
{
    const auto value = service::readFigure(m_typed, figure, m_manner);
    const QString source = m_source.simplified();
    const rules::Procedure* procedure = shown(m_place.procedure);
    if (!procedure || source.isEmpty()) {
        refresh();
        return;
    }
    if (!value) {
        m_fault = tr("This is no number.");
        refresh();
        return;
    }
    const bool same = std::visit(
        [&](const auto& held) { return *value == std::variant<Span, Temperature>(held.value); }, figure.figure);
    if (same) {
        goTo({m_place.procedure, m_place.stage, {}, {}, {}});
        return;
    }
    rules::Procedure changed = *procedure;
    if (!rules::changeFigure(changed, figure.path, *value, {source.toStdString(), rules::Mark::Practice})) {
        m_fault =
            tr("It may be %1: beyond that the procedure no longer holds.").arg(service::figureRange(figure, m_manner));
        refresh();
        return;
    }
    m_drafts[changed.key] = std::move(changed);
    m_told.clear();
    openProcedure(m_place.procedure);
}

} // namespace mend::app
