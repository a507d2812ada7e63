#include "app/daylog/daylogspace.h"

#include <QDateTime>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::LogLine;
using std::chrono::minutes;

namespace {

QString lineKey(EventId event) { return QStringLiteral("log/%1").arg(event.value()); }

QDateTime localTime(Instant at, const service::Manner& manner)
{
    return QDateTime::fromMSecsSinceEpoch(at.time_since_epoch().count(), manner.zone);
}

} // namespace

DayLogSpace::DayLogSpace(parts::TapGate& gate, QWidget* parent) : SheetSpace(gate, parent)
{
    list().setAccessibleName(tr("The day's log"));
    page().setAccessibleName(tr("One fact"));
}

void DayLogSpace::setManner(const service::Manner& manner)
{
    m_manner = manner;
    refresh();
}

void DayLogSpace::setNow(DayLogNow now, Instant at)
{
    m_now = std::move(now);
    m_at = at;
    if (m_chosen && !line()) {
        m_chosen.reset();
    }
    refresh();
}

const LogLine* DayLogSpace::line() const
{
    const auto found = m_chosen ? std::ranges::find(m_now.lines, *m_chosen, &LogLine::event) : m_now.lines.end();
    return found == m_now.lines.end() ? nullptr : &*found;
}

void DayLogSpace::open(EventId event)
{
    m_chosen = event;
    const LogLine* chosen = line();
    if (!chosen) {
        m_chosen.reset();
        refresh();
        return;
    }
    m_piece = chosen->piece;
    m_reason.clear();
    m_takingBack = false;
    moveTo(chosen->happened);
    openPage();
}

QString DayLogSpace::below(const LogLine& line) const
{
    QStringList words{line.pieceName, line.person, line.note};
    if (line.takenBack) {
        words << tr("taken back");
    } else if (line.toldAgain) {
        words << tr("told differently");
    }
    return service::joined(words);
}

Sheet DayLogSpace::listSheet()
{
    Sheet sheet;
    sheet.title = tr("Log");
    sheet.beside = m_now.day;
    Sheet::Choices days;
    days.choices = {{QStringLiteral("log/earlier"), tr("The day before"), {}, [this] { Q_EMIT dayWanted(-1); }}};
    if (m_now.hasLater) {
        days.choices.push_back({QStringLiteral("log/later"), tr("The day after"), {}, [this] { Q_EMIT dayWanted(1); }});
    }
    sheet.add(days);
    if (m_now.lines.empty()) {
        sheet.say(tr("Nothing was told on this day. Every tap on the Bench becomes a line here."));
    }
    for (const LogLine& each : m_now.lines) {
        const QString words = each.takenBack ? tr("%1 (taken back)").arg(each.words) : each.words;
        sheet.add(Sheet::Row{lineKey(each.event), words, below(each), service::timeOfDay(each.happened, m_manner),
                             [this, event = each.event] { open(event); }, m_chosen == each.event});
    }
    return sheet;
}

Sheet DayLogSpace::pageSheet()
{
    Sheet sheet;
    const LogLine* chosen = line();
    if (!chosen) {
        sheet.title = tr("What was told");
        sheet.say(tr("Choose a line to see it whole, to move it to another time or piece, or to take it back."),
                  Sheet::Tone::Quiet);
        sheet.head(tr("For the wall"));
        sheet.say(tr("Every card of the Bench with its clock times, to be hung up. No owners stand on it."),
                  Sheet::Tone::Quiet);
        sheet.add(Sheet::Choices{
            {}, {{QStringLiteral("log/wall"), tr("Write the list as PDF"), {}, [this] { Q_EMIT wallListWanted(); }}}});
        if (!m_wallWritten.isEmpty()) {
            sheet.say(m_wallWritten);
        }
        return sheet;
    }
    sheet.title = chosen->words;
    sayFact(sheet, *chosen);
    if (m_takingBack) {
        offerTakingBack(sheet, *chosen);
        return sheet;
    }
    if (chosen->canMove) {
        askTime(sheet);
        askPiece(sheet, *chosen);
        offerMove(sheet, *chosen);
    } else if (!chosen->takenBack) {
        sheet.say(chosen->canTakeBack ? tr("It cannot be moved, but taken back and told anew.")
                                      : tr("More than a day ago: it stands as it was told."),
                  Sheet::Tone::Quiet);
    }
    if (chosen->canTakeBack) {
        sheet.say(tr("Or was it told by mistake?"), Sheet::Tone::Quiet);
        Sheet::Choices back;
        back.choices = {{QStringLiteral("log/takeback"), tr("It did not happen"), {}, [this] {
                             m_takingBack = true;
                             refresh();
                         }}};
        sheet.add(back);
    }
    return sheet;
}

void DayLogSpace::sayFact(Sheet& sheet, const LogLine& line) const
{
    const auto say = [&](const char* key, const QString& label, const QString& value) {
        if (!value.isEmpty()) {
            sheet.add(Sheet::Row{QStringLiteral("log/fact/") + QLatin1String(key), label, {}, value});
        }
    };
    say("piece", tr("Piece"), line.pieceName);
    say("happened", tr("Happened"), service::clockTime(line.happened, m_at, m_manner));
    if (line.recorded != line.happened) {
        say("recorded", tr("Told"), service::clockTime(line.recorded, m_at, m_manner));
    }
    say("person", tr("By"), line.person);
    say("note", tr("Note"), line.note);
    if (line.takenBack) {
        sheet.say(tr("It was taken back: nothing on the bench counts from it."), Sheet::Tone::Grave);
    }
}

void DayLogSpace::askTime(Sheet& sheet)
{
    sheet.head(tr("When was it really?"));
    Sheet::Choices steps;
    struct Step {
        int minutes;
        QString words;
    };
    for (const Step& step : {Step{-15, tr("15 min sooner")}, Step{-5, tr("5 min sooner")}, Step{-1, tr("1 min sooner")},
                             Step{1, tr("1 min later")}, Step{5, tr("5 min later")}, Step{15, tr("15 min later")}}) {
        const Instant then = m_happened + minutes(step.minutes);
        const bool good = service::moveFault(then, m_at) == service::MoveFault::None;
        steps.choices.push_back({QStringLiteral("log/step/%1").arg(step.minutes), step.words,
                                 good ? QString() : tr("still to come"),
                                 good ? std::function<void()>([this, then] { moveTo(then); }) : nullptr});
    }
    sheet.add(steps);
    sheet.add(Sheet::Field{QStringLiteral("log/time"),
                           tr("Or by the clock, such as 13:29"),
                           m_typed,
                           {},
                           m_timeIsWrong ? tr("A time of the last day is needed, not one to come.") : QString(),
                           [this](const QString& typed) { typeTime(typed); }});
}

void DayLogSpace::askPiece(Sheet& sheet, const LogLine& line)
{
    if (!line.piece.isSet() || m_now.pieces.size() < 2) {
        return;
    }
    Sheet::Choices pieces;
    pieces.label = tr("Which piece was it?");
    for (const auto& piece : m_now.pieces) {
        pieces.choices.push_back({QStringLiteral("log/piece/%1").arg(piece.id.value()),
                                  service::isolated(piece.name),
                                  {},
                                  [this, id = piece.id] {
                                      m_piece = id;
                                      refresh();
                                  },
                                  false,
                                  piece.id == m_piece});
    }
    sheet.add(pieces);
}

void DayLogSpace::offerMove(Sheet& sheet, const LogLine& line)
{
    if (!isMoved(line) || m_timeIsWrong) {
        return;
    }
    sheet.head(tr("If it is kept so"));
    const QStringList moves = m_answers ? m_answers->movedBy(line.event, m_happened, m_piece) : QStringList();
    for (const QString& move : moves) {
        sheet.say(move);
    }
    if (moves.isEmpty()) {
        sheet.say(tr("No window moves."));
    }
    const auto piece = std::ranges::find(m_now.pieces, m_piece, &DayLogNow::Piece::id);
    const QString when = service::clockTime(m_happened, m_at, m_manner);
    const QString keep = m_piece == line.piece || piece == m_now.pieces.end()
                             ? tr("It was at %1").arg(when)
                             : tr("It was the %1, at %2").arg(service::isolated(piece->name), when);
    Sheet::Choices acts;
    acts.bench = true;
    acts.choices = {
        {QStringLiteral("log/keep"),
         keep,
         {},
         [this, event = line.event] { Q_EMIT factMoved(event, m_happened, m_piece); },
         true},
        {QStringLiteral("log/leave"), tr("Leave it as told"), {}, [this, event = line.event] { open(event); }}};
    sheet.add(acts);
}

void DayLogSpace::offerTakingBack(Sheet& sheet, const LogLine& line)
{
    sheet.head(tr("If it did not happen"));
    const QStringList also = m_answers ? m_answers->goesWith(line.event) : QStringList();
    if (!also.isEmpty()) {
        sheet.say(tr("These were told on top of it and go with it:"), Sheet::Tone::Grave);
        for (const QString& each : also) {
            sheet.say(each);
        }
    }
    const QStringList moves = m_answers ? m_answers->movedByTakingBack(line.event) : QStringList();
    for (const QString& move : moves) {
        sheet.say(move);
    }
    if (moves.isEmpty()) {
        sheet.say(tr("No window moves."));
    }
    sheet.add(Sheet::Field{
        QStringLiteral("log/reason"), tr("Why, if you like"), m_reason, {}, {}, [this](const QString& typed) {
            m_reason = typed;
        }});
    Sheet::Choices acts;
    acts.bench = true;
    acts.choices = {
        {QStringLiteral("log/takebacknow"),
         also.isEmpty() ? tr("Take it back") : tr("Take all of it back"),
         {},
         [this, event = line.event] {
             m_takingBack = false;
             Q_EMIT factTakenBack(event, m_reason.simplified());
         },
         true},
        {QStringLiteral("log/leave"), tr("Leave it as told"), {}, [this, event = line.event] { open(event); }}};
    sheet.add(acts);
}

void DayLogSpace::moveTo(Instant happened)
{
    m_happened = happened;
    m_typed = service::timeOfDay(happened, m_manner);
    m_timeIsWrong = false;
    refresh();
}

/// A time of day means the last one that was: at 00:10, 23:50 is yesterday's.
void DayLogSpace::typeTime(const QString& typed)
{
    m_typed = typed;
    const QTime time = QTime::fromString(typed.trimmed(), QStringLiteral("H:mm"));
    m_timeIsWrong = !time.isValid();
    if (time.isValid()) {
        QDateTime then(localTime(m_at, m_manner).date(), time, m_manner.zone);
        if (then.toMSecsSinceEpoch() > m_at.time_since_epoch().count()) {
            then = QDateTime(then.date().addDays(-1), time, m_manner.zone);
        }
        m_happened = Instant(Span(then.toMSecsSinceEpoch()));
        m_timeIsWrong = !then.isValid() || service::moveFault(m_happened, m_at) != service::MoveFault::None;
    }
    refresh();
}

} // namespace mend::app
