#include "app/whileaway/whileawayspace.h"

#include "core/service/cardwording.h"
#include "core/service/figurewording.h"

#include <QEvent>
#include <algorithm>
#include <cmath>
#include <utility>

namespace mend::app {

using parts::Sheet;

namespace {

/// What a thermometer in a studio can have read (common practice, no source).
const Temperature coldestRead = Temperature::fromCelsius(-40);
const Temperature warmestRead = Temperature::fromCelsius(120);

void drop(std::vector<WhileAwayNow::Place>& places, PlaceId id)
{
    std::erase_if(places, [id](const WhileAwayNow::Place& place) { return place.id == id; });
}

} // namespace

WhileAwaySpace::WhileAwaySpace(parts::TapGate& gate, QWidget* parent)
    : QWidget(parent), m_sheet(new parts::SheetView(gate, this))
{
    setAutoFillBackground(true);
    m_sheet->setAccessibleName(tr("While nobody looked"));
    refresh();
}

void WhileAwaySpace::setLook(const parts::Look& look)
{
    QPalette colours = palette();
    colours.setColor(QPalette::Window, look.tokens().ground);
    setPalette(colours);
    m_sheet->setLook(look);
}

void WhileAwaySpace::setManner(const service::Manner& manner)
{
    m_manner = manner;
    refresh();
}

void WhileAwaySpace::setNow(WhileAwayNow now, Instant at)
{
    m_now = std::move(now);
    m_at = at;
    refresh();
}

bool WhileAwaySpace::hasQuestions() const
{
    return !m_now.missed.empty() || !m_now.heated.empty() || !m_now.nights.empty();
}

void WhileAwaySpace::refresh()
{
    Sheet sheet;
    sheet.title = tr("While nobody looked");
    sheet.beside = tr("%1 to %2")
                       .arg(service::clockTime(m_now.away.from, m_at, m_manner),
                            service::clockTime(m_now.away.to, m_at, m_manner));
    if (!hasQuestions()) {
        sheet.say(tr("Nothing is left to answer."));
    }
    sayMissed(sheet);
    if (!m_now.ended.empty()) {
        sheet.head(tr("Over meanwhile"));
        for (const QString& line : m_now.ended) {
            sheet.say(line);
        }
    }
    askHeated(sheet);
    askNights(sheet);
    Sheet::Choices back;
    back.bench = true;
    back.choices = {{QStringLiteral("away/bench"), tr("To the bench"),
                     hasQuestions() ? tr("what is left open counts to the safe side") : QString(),
                     [this] { Q_EMIT benchWanted(); }, true}};
    sheet.add(back);
    m_sheet->setSheet(std::move(sheet));
}

void WhileAwaySpace::sayMissed(Sheet& sheet)
{
    bool saving = false;
    bool past = false;
    for (const service::MissedLine& line : m_now.missed) {
        if (line.savable && !std::exchange(saving, true)) {
            sheet.head(tr("Can still be saved"));
        } else if (!line.savable && !std::exchange(past, true)) {
            sheet.head(tr("What closed or opened"));
        }
        const QString key = service::text(line.key);
        sheet.add(Sheet::Row{QStringLiteral("missed/") + key, line.act, service::isolated(line.pieceName), line.time});
        Sheet::Choices answers;
        answers.bench = true;
        for (std::size_t i = 0; i < line.answers.size(); ++i) {
            const bench::CardAct act = line.answers[i];
            answers.choices.push_back({QStringLiteral("missed/%1/%2").arg(key).arg(i),
                                       service::actWords(act),
                                       {},
                                       [this, key, piece = line.piece, act] {
                                           std::erase_if(m_now.missed, [&](const service::MissedLine& each) {
                                               return service::text(each.key) == key;
                                           });
                                           refresh();
                                           Q_EMIT missedAnswered(key, piece, act);
                                       }});
        }
        sheet.add(answers);
    }
}

void WhileAwaySpace::askHeated(Sheet& sheet)
{
    if (m_now.heated.empty()) {
        return;
    }
    sheet.head(tr("Did it stay warm?"));
    sheet.say(tr("Where nobody knows, waits are credited with the room and closings with the full heat."),
              Sheet::Tone::Quiet);
    for (const WhileAwayNow::Place& place : m_now.heated) {
        const auto answer = [this, id = place.id](const char* how) {
            return [this, id, how] {
                drop(m_now.heated, id);
                refresh();
                Q_EMIT gapAnswered(id, m_now.away, QString::fromLatin1(how));
            };
        };
        const QString key = QStringLiteral("gap/%1/").arg(place.id.value());
        Sheet::Choices answers;
        answers.label = place.name;
        answers.bench = true;
        answers.choices = {{key + QStringLiteral("stayedOn"), tr("It stayed on"), {}, answer("stayedOn")},
                           {key + QStringLiteral("wentOff"), tr("It went off"), {}, answer("wentOff")},
                           {key + QStringLiteral("unknown"), tr("I do not know"), {}, answer("unknown")}};
        sheet.add(answers);
    }
}

void WhileAwaySpace::askNights(Sheet& sheet)
{
    if (m_now.nights.empty()) {
        return;
    }
    sheet.head(tr("What did the thermometers keep?"));
    sheet.say(tr("Waits are given the lowest, closings the highest."), Sheet::Tone::Quiet);
    const QString unit = m_manner.fahrenheit ? tr("°F") : tr("°C");
    for (const WhileAwayNow::Place& place : m_now.nights) {
        Night& night = m_nights[place.id];
        const QString key = QStringLiteral("night/%1/").arg(place.id.value());
        sheet.add(Sheet::Field{key + QStringLiteral("lowest"),
                               tr("%1: lowest").arg(place.name),
                               night.lowest,
                               unit,
                               {},
                               [&night](const QString& typed) { night.lowest = typed; }});
        sheet.add(Sheet::Field{key + QStringLiteral("highest"), tr("%1: highest").arg(place.name), night.highest, unit,
                               night.fault, [&night](const QString& typed) { night.highest = typed; }});
        Sheet::Choices acts;
        acts.choices = {{key + QStringLiteral("tell"), tr("So it was"), {}, [this, place] { tellNight(place); }, true},
                        {key + QStringLiteral("pass"), tr("Not read"), {}, [this, id = place.id] {
                             drop(m_now.nights, id);
                             refresh();
                         }}};
        sheet.add(acts);
    }
}

std::optional<Temperature> WhileAwaySpace::read(const QString& typed) const
{
    const auto number = service::typedNumber(typed, m_manner.locale);
    constexpr double beyondAny = 1000.0;
    if (!number || std::abs(*number) > beyondAny) {
        return std::nullopt;
    }
    const Temperature told =
        m_manner.fahrenheit ? Temperature::fromFahrenheit(*number) : Temperature::fromCelsius(*number);
    return told < coldestRead || warmestRead < told ? std::nullopt : std::optional(told);
}

void WhileAwaySpace::tellNight(const WhileAwayNow::Place& place)
{
    Night& night = m_nights[place.id];
    const auto lowest = read(night.lowest);
    const auto highest = read(night.highest);
    if (!lowest || !highest || *highest < *lowest) {
        night.fault = lowest && highest ? tr("The highest is below the lowest: are they the wrong way round?")
                                        : tr("Two temperatures are needed, the lowest and the highest.");
        refresh();
        return;
    }
    drop(m_now.nights, place.id);
    m_nights.erase(place.id);
    refresh();
    Q_EMIT nightTold(place.id, m_now.away, *lowest, *highest);
}

void WhileAwaySpace::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_sheet->setGeometry(rect());
}

void WhileAwaySpace::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::LanguageChange) {
        refresh();
    }
}

} // namespace mend::app
