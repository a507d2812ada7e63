#include "app/find/findspace.h"

#include "core/service/wording.h"

#include <algorithm>

namespace mend::app {

using parts::Sheet;

namespace {
/// More rows than anybody reads at the counter: another word brings fewer (common practice, no source).
constexpr std::size_t mostRows = 12;

const QString& fieldKey()
{
    static const QString key = QStringLiteral("find");
    return key;
}
} // namespace

FindSpace::FindSpace(parts::TapGate& gate, QWidget* parent) : SheetSpace(gate, parent)
{
    list().setAccessibleName(tr("Find"));
    page().setAccessibleName(tr("What was found"));
    connect(&list(), &parts::SheetView::entered, this, &FindSpace::enter);
}

void FindSpace::setLists(QString house, std::vector<FindList> lists)
{
    m_house = std::move(house);
    m_lists = std::move(lists);
    refresh();
}

void FindSpace::setAnswer(FindAnswer answer)
{
    if (answer.whose.isEmpty() && answer.typed != m_typed) {
        return; // another letter was typed meanwhile
    }
    m_answer = std::move(answer);
    m_note = m_answer.note.isEmpty() ? m_note : m_answer.note;
    const bool one = m_answer.pieces.size() == 1 && m_answer.people.empty();
    const auto held = std::ranges::find(m_answer.pieces, m_chosen, &FindPiece::id);
    if (!m_answer.pieces.empty() && (one || (m_answer.sure && !m_ownersHidden))) {
        choose(m_answer.pieces.front().id);
    } else if (held == m_answer.pieces.end()) {
        m_chosen = {};
        m_page.reset();
    }
    refresh();
}

void FindSpace::setPage(FindPage page)
{
    if (page.piece.id == m_chosen) {
        m_page = std::move(page);
        refresh();
    }
}

void FindSpace::setOwnersHidden(bool hidden)
{
    m_ownersHidden = hidden;
    refresh();
}

void FindSpace::offerHandOver(bool offered)
{
    m_handOver = offered;
    refresh();
}

void FindSpace::begin()
{
    refresh();
    if (QLineEdit* const line = list().field(fieldKey())) {
        line->setFocus(Qt::ShortcutFocusReason);
        line->selectAll();
    }
}

void FindSpace::put(const QString& typed, const QString& note)
{
    type(typed);
    m_note = note;
    refresh();
}

void FindSpace::type(const QString& typed)
{
    m_typed = typed;
    m_note.clear();
    if (typed.simplified().isEmpty()) {
        m_answer = {};
        m_chosen = {};
        m_page.reset();
        refresh();
        return;
    }
    Q_EMIT asked(typed); // the rows stay until they are answered: no flicker between two letters
}

void FindSpace::choose(PieceId piece)
{
    const bool other = piece != m_chosen;
    m_chosen = piece;
    if (other) {
        m_page.reset();
        Q_EMIT pieceChosen(piece);
    }
    refresh();
}

/// Enter takes the first; once more opens it.
void FindSpace::enter()
{
    if (m_answer.pieces.empty()) {
        return;
    }
    const PieceId first = m_answer.pieces.front().id;
    if (m_chosen == first) {
        Q_EMIT pieceWanted(first);
    } else {
        choose(first);
        openPage();
    }
}

const FindList* FindSpace::opened() const
{
    const auto found = std::ranges::find(m_lists, m_opened, &FindList::key);
    return found != m_lists.end() ? &*found : m_lists.empty() ? nullptr : &m_lists.front();
}

Sheet::Row FindSpace::rowOf(const FindPiece& piece)
{
    const QString owner = m_ownersHidden ? QString() : service::isolated(piece.owner);
    return {QStringLiteral("find/piece/%1").arg(piece.id.value()),
            service::isolated(piece.name),
            service::joined({owner, piece.state}),
            piece.number,
            [this, id = piece.id] {
                choose(id);
                openPage();
            },
            piece.id == m_chosen,
            0,
            piece.sight};
}

Sheet FindSpace::listSheet()
{
    Sheet sheet;
    sheet.title = tr("Find");
    sheet.beside = m_house;
    sheet.back = {QStringLiteral("find/hide"), m_ownersHidden ? tr("Show owners") : tr("Hide owners"), {}, [this] {
                      Q_EMIT hidingWanted(!m_ownersHidden);
                  }};
    Sheet::Field field;
    field.key = fieldKey();
    field.label = tr("Number, name, phone, looks");
    field.value = m_typed;
    field.large = true;
    field.edited = [this](const QString& typed) { type(typed); };
    sheet.add(std::move(field));
    if (!m_note.isEmpty()) {
        sheet.say(m_note, Sheet::Tone::Grave);
    }
    if (m_typed.simplified().isEmpty()) {
        addLists(sheet);
    } else {
        addAnswer(sheet);
    }
    return sheet;
}

void FindSpace::addLists(Sheet& sheet)
{
    if (m_lists.empty()) {
        sheet.say(tr("Nothing may be collected, nothing is late, nothing waits for its owner."), Sheet::Tone::Quiet);
        return;
    }
    const FindList* const open = opened();
    for (const FindList& each : m_lists) {
        sheet.add(Sheet::Row{QStringLiteral("find/list/") + each.key,
                             each.words,
                             {},
                             {},
                             [this, key = each.key] {
                                 m_opened = key;
                                 m_chosen = {};
                                 m_page.reset();
                                 refresh();
                                 openPage();
                             },
                             &each == open});
    }
}

void FindSpace::addAnswer(Sheet& sheet)
{
    Sheet::Choices anew;
    anew.choices = {{QStringLiteral("find/clear"), tr("Clear"), {}, [this] {
                         type({});
                         begin();
                     }}};
    sheet.add(std::move(anew));
    if (!m_answer.whose.isEmpty()) {
        sheet.head(tr("Pieces of %1").arg(service::isolated(m_answer.whose)));
    }
    if (m_answer.pieces.empty() && m_answer.people.empty()) {
        if (m_answer.typed == m_typed) {
            sheet.say(tr("Nothing like that. Fewer words find more; so does the owner's phone."));
        }
        return;
    }
    for (std::size_t i = 0; i < std::min(mostRows, m_answer.pieces.size()); ++i) {
        sheet.add(rowOf(m_answer.pieces[i]));
    }
    if (m_answer.pieces.size() > mostRows) {
        sheet.say(tr("And more: one more word brings fewer."), Sheet::Tone::Quiet);
    }
    // Several names at once are several people's facts: with owners hidden only who is meant is named.
    if (m_answer.people.empty() || (m_ownersHidden && m_answer.people.size() > 1)) {
        return;
    }
    sheet.head(tr("People"));
    for (std::size_t i = 0; i < std::min(mostRows, m_answer.people.size()); ++i) {
        const FindPerson& person = m_answer.people[i];
        sheet.add(Sheet::Row{QStringLiteral("find/person/%1").arg(person.id.value()),
                             service::isolated(person.name),
                             m_ownersHidden ? QString() : service::isolated(person.contact),
                             {},
                             [this, id = person.id] { Q_EMIT personChosen(id); }});
    }
}

} // namespace mend::app
