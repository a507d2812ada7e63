// The page of one number that the procedures share, and a studio's own in its place.
#include "app/rules/rulesspace.h"

#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

void RulesSpace::setOwn(std::vector<rules::OwnFigure> own)
{
    m_own = std::move(own);
    m_ownDraft.reset();
    refresh();
}

void RulesSpace::openSharedFigure(const std::string& ofAndPath)
{
    const auto bar = ofAndPath.find('|');
    const std::string of = ofAndPath.substr(0, bar);
    const std::string path = bar == std::string::npos ? std::string() : ofAndPath.substr(bar + 1);
    const auto figure = m_now.book ? rules::sharedFigureAt(*m_now.book, of, path) : std::nullopt;
    if (figure) {
        m_typed = service::typedFigure(figure->at, m_manner).digits;
        m_source = tr("our own bench");
        m_ownDraft.reset();
        m_told.clear();
        goTo({{}, {}, path, m_place.shared, of});
    }
}

Sheet RulesSpace::sharedFigureSheet()
{
    Sheet sheet;
    const auto figure = rules::sharedFigureAt(*m_now.book, m_place.of, m_place.figure);
    if (!figure) {
        return sheet;
    }
    const std::string key = m_place.of.substr(m_place.of.find('/') + 1);
    const rules::Material* material = m_now.book->material(key);
    const rules::Hazard* hazard = m_now.book->hazard(key);
    sheet.title = material ? text(material->name) : hazard ? text(hazard->title) : tr("Habits of the bench");
    sheet.back = {
        QStringLiteral("own/back"), tr("Back to the list"), {}, [this, which = *m_place.shared] { openShared(which); }};
    if (!m_told.isEmpty()) {
        sheet.say(m_told, Sheet::Tone::Grave);
    }
    const auto typed = service::typedFigure(figure->at, m_manner);
    sheet.add(Sheet::Row{QStringLiteral("own/now"), tr("In force"), service::sourceWords(figure->at.source()),
                         service::figureValue(figure->at, m_manner)});
    sheet.add(Sheet::Row{QStringLiteral("own/range"), tr("It may be"),
                         figure->isLimit ? tr("a limit that the piece is harmed beyond: only lower") : QString(),
                         service::figureRange(figure->at, m_manner)});
    sheet.add(Sheet::Field{QStringLiteral("own/value"), tr("The new number"), m_typed, typed.unit, m_fault,
                           [this](const QString& words) {
                               m_typed = words;
                               m_fault.clear();
                               m_ownDraft.reset();
                               refresh();
                           }});
    sheet.add(Sheet::Field{QStringLiteral("own/source"),
                           tr("Where it comes from"),
                           m_source,
                           {},
                           m_source.simplified().isEmpty() ? tr("No number stands without its source.") : QString(),
                           [this](const QString& words) {
                               m_source = words;
                               m_ownDraft.reset();
                               refresh();
                           }});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("own/put"),
                     tr("See what it would do"),
                     {},
                     [this, held = figure->at] { putOwn(held); },
                     !m_ownDraft}};
    const bool isOwn = std::ranges::any_of(
        m_own, [this](const rules::OwnFigure& own) { return own.of == m_place.of && own.path == m_place.figure; });
    if (isOwn) {
        acts.choices.push_back({QStringLiteral("own/shipped"), tr("The shipped number again"), {}, [this] {
                                    Q_EMIT ownDropped(text(m_place.of), text(m_place.figure));
                                }});
    }
    sheet.add(acts);
    if (m_ownDraft) {
        sheet.head(tr("What it would do to the bench now"));
        const QStringList moves = m_answers ? m_answers->movedIfOwn(*m_ownDraft) : QStringList();
        for (const QString& move : moves) {
            sheet.say(move);
        }
        if (moves.isEmpty()) {
            sheet.say(tr("Nothing that runs now would move."));
        }
        Sheet::Choices keep;
        keep.choices = {{QStringLiteral("own/keep"), tr("Keep it"), tr("for this bench, from now on"),
                         [this, own = *m_ownDraft] { Q_EMIT ownTold(own); }, true}};
        sheet.add(keep);
    }
    return sheet;
}

void RulesSpace::putOwn(const rules::FigureAt& figure)
{
    const auto value = service::readFigure(m_typed, figure, m_manner);
    if (!value) {
        m_fault = tr("This is no number.");
        refresh();
        return;
    }
    rules::OwnFigure own;
    own.of = m_place.of;
    own.path = m_place.figure;
    if (const Span* span = std::get_if<Span>(&*value)) {
        own.span = *span;
    } else {
        own.temperature = std::get<Temperature>(*value);
    }
    own.source = {m_source.simplified().toStdString(), rules::Mark::Practice};
    rules::RuleBook tried = *m_now.book;
    if (const Outcome put = rules::putOwn(tried, own); !put) {
        m_fault = tr("It may be %1; a limit may only be lowered.").arg(service::figureRange(figure, m_manner));
    } else {
        m_ownDraft = own;
    }
    refresh();
}

} // namespace mend::app
