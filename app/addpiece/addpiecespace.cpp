#include "app/addpiece/addpiecespace.h"

#include "core/service/wording.h"

#include <QEvent>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using record::NewPieceFault;
using service::text;

namespace {
constexpr int ownersOffered = 3;

QString ownerShown(const record::Customer& owner) { return text(owner.name); }
} // namespace

AddPieceSpace::AddPieceSpace(parts::TapGate& gate, QWidget* parent) : SheetSpace(gate, parent)
{
    list().setAccessibleName(tr("Add a piece"));
    page().setAccessibleName(tr("How it will be mended"));
}

void AddPieceSpace::setNow(AddPieceNow now)
{
    m_now = std::move(now);
    refresh();
}

void AddPieceSpace::showTaken(const QString& number)
{
    m_told = tr("%1 is taken in as %2.")
                 .arg(service::isolated(text(m_piece.benchName)), service::numberWords(number.toStdString()));
    m_piece = {};
    m_fragments.clear();
    m_tried = false;
    refresh();
    list().scrollTo(0);
}

void AddPieceSpace::showRefused(const QString& why)
{
    m_told = why;
    refresh();
    list().scrollTo(0);
}

bool AddPieceSpace::has(NewPieceFault fault) const
{
    const auto faults = record::faultsOf(m_piece, m_now.namesInHand);
    return m_tried && std::ranges::find(faults, fault) != faults.end();
}

Sheet AddPieceSpace::listSheet()
{
    Sheet sheet;
    sheet.title = tr("Add a piece");
    sheet.beside = tr("the rest can be told later");
    if (!m_told.isEmpty()) {
        sheet.say(m_told, Sheet::Tone::Grave);
    }
    askNames(sheet);
    askFragments(sheet);
    askProcedure(sheet);
    const bool missing = m_tried && !record::faultsOf(m_piece, m_now.namesInHand).empty();
    if (missing) {
        sheet.say(tr("Something is still missing: see above."), Sheet::Tone::Grave);
    }
    const QString name = text(m_piece.benchName).simplified();
    Sheet::Choices acts;
    acts.bench = true;
    acts.choices = {{QStringLiteral("addpiece/takein"),
                     name.isEmpty() ? tr("Take it in") : tr("Take in: %1").arg(service::isolated(name)),
                     {},
                     [this] { takeIn(); },
                     true},
                    {QStringLiteral("addpiece/bench"), tr("Back to the bench"), {}, [this] { Q_EMIT benchWanted(); }}};
    sheet.add(acts);
    return sheet;
}

Sheet AddPieceSpace::pageSheet()
{
    Sheet sheet;
    sheet.title = tr("How it will be mended");
    sheet.say(tr("Every window on the bench comes from the procedure. It can be read whole under Rules."),
              Sheet::Tone::Quiet);
    for (const auto& procedure : m_now.procedures) {
        sheet.add(Sheet::Row{QStringLiteral("addpiece/procedure/") + procedure.key,
                             procedure.name,
                             procedure.summary,
                             {},
                             [this, key = procedure.key.toStdString()] {
                                 m_piece.procedure = key;
                                 refresh();
                             },
                             m_piece.procedure == procedure.key.toStdString()});
    }
    return sheet;
}

void AddPieceSpace::askNames(Sheet& sheet)
{
    QString fault;
    if (has(NewPieceFault::NoBenchName)) {
        fault = tr("Give it a name: it is called by it at the bench.");
    } else if (has(NewPieceFault::BenchNameTooLong)) {
        fault = tr("Too long to be spoken: two or three short words are enough.");
    } else if (has(NewPieceFault::BenchNameTaken)) {
        fault = tr("Another piece in hand is called so: give one that tells them apart by ear.");
    } else if (has(NewPieceFault::BenchNameHasOwner)) {
        fault = tr("The name is spoken aloud, so it must not hold the owner's.");
    }
    sheet.add(Sheet::Field{QStringLiteral("benchName"),
                           tr("What it is called at the bench, such as “Heron bowl”"),
                           text(m_piece.benchName),
                           {},
                           fault,
                           [this](const QString& typed) {
                               m_piece.benchName = typed.toStdString();
                               refresh();
                           }});
    sheet.add(Sheet::Field{QStringLiteral("owner"),
                           tr("Whose it is"),
                           text(m_piece.ownerName),
                           {},
                           has(NewPieceFault::NoOwner) ? tr("Whose is it? A name is enough.") : QString(),
                           [this](const QString& typed) {
                               m_piece.ownerName = typed.toStdString();
                               m_piece.owner = {};
                               refresh();
                           }});
    offerOwners(sheet);
    if (!m_piece.owner.isSet()) {
        sheet.add(Sheet::Field{QStringLiteral("contact"),
                               tr("How to reach them, if you like"),
                               text(m_piece.contact),
                               {},
                               {},
                               [this](const QString& typed) { m_piece.contact = typed.toStdString(); }});
    }
}

/// Somebody known already, so that one person does not become two.
void AddPieceSpace::offerOwners(Sheet& sheet)
{
    if (m_piece.owner.isSet()) {
        sheet.say(tr("Known already; the piece goes to the same person."), Sheet::Tone::Quiet);
        return;
    }
    const QString typed = text(m_piece.ownerName).simplified();
    Sheet::Choices known;
    known.label = tr("Or somebody known already:");
    for (const record::Customer& owner : m_now.owners) {
        const QString name = ownerShown(owner);
        if (typed.size() < 2 || !name.contains(typed, Qt::CaseInsensitive) ||
            static_cast<int>(known.choices.size()) == ownersOffered) {
            continue;
        }
        known.choices.push_back(
            {QStringLiteral("addpiece/owner/%1").arg(owner.id.value()), name, text(owner.contact), [this, owner] {
                 m_piece.owner = owner.id;
                 m_piece.ownerName = owner.name;
                 refresh();
             }});
    }
    if (!known.choices.empty()) {
        sheet.add(known);
    }
}

void AddPieceSpace::askFragments(Sheet& sheet)
{
    const auto told = [this](const QString& typed) {
        bool good = false;
        const int count = typed.trimmed().toInt(&good);
        m_fragments = typed;
        m_piece.fragments = good ? count : 0;
        refresh();
    };
    sheet.add(Sheet::Field{QStringLiteral("fragments"), tr("How many fragments came in"), m_fragments, tr("fragments"),
                           has(NewPieceFault::FragmentsOutOfRange)
                               ? tr("Count them: a whole number from 1 to %1.").arg(record::mostFragments)
                               : QString(),
                           told});
    Sheet::Choices counts;
    for (const int count : {2, 3, 4, 5, 6, 8, 10}) {
        counts.choices.push_back({QStringLiteral("addpiece/fragments/%1").arg(count),
                                  QString::number(count),
                                  {},
                                  [told, count] { told(QString::number(count)); },
                                  false,
                                  m_piece.fragments == count});
    }
    sheet.add(counts);
}

void AddPieceSpace::askProcedure(Sheet& sheet)
{
    const auto chosen = std::ranges::find(m_now.procedures, text(m_piece.procedure), &AddPieceNow::Procedure::key);
    const QString name = chosen == m_now.procedures.end() ? tr("not chosen yet") : chosen->name;
    sheet.add(Sheet::Row{
        QStringLiteral("addpiece/procedures"), tr("How it will be mended"), name, {}, [this] { openPage(); }});
    if (has(NewPieceFault::NoProcedure)) {
        sheet.say(tr("Choose a procedure: every window comes from it."), Sheet::Tone::Grave);
    }
}

void AddPieceSpace::takeIn()
{
    m_tried = true;
    m_told.clear();
    if (!record::faultsOf(m_piece, m_now.namesInHand).empty()) {
        refresh();
        return;
    }
    record::NewPiece told = m_piece;
    told.benchName = text(told.benchName).simplified().toStdString();
    told.ownerName = text(told.ownerName).simplified().toStdString();
    Q_EMIT pieceTold(told);
}

} // namespace mend::app
