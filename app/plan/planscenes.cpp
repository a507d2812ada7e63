#include "app/plan/planscenes.h"

#include "app/parts/scribe.h"

#include <QCoreApplication>
#include <QDate>
#include <QDateTime>

#include <algorithm>
#include <cmath>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Role;
using parts::Scribe;
using service::PlanLine;

// What a translator finds these words under.
class PlanList {
    Q_DECLARE_TR_FUNCTIONS(PlanList)
};

constexpr int week = 7;

QDate dayOf(Instant at, const service::Manner& manner)
{
    return QDateTime::fromMSecsSinceEpoch(at.time_since_epoch().count(), manner.zone).date();
}

/// What is begun already belongs to today, whenever that was.
QDate dayOf(const PlanLine& line, const PlanPicture& picture)
{
    return dayOf(std::max(line.from, picture.shown.now), picture.manner);
}

QString groupOf(const PlanLine& line, const PlanPicture& picture)
{
    switch (picture.group) {
    case PlanGroup::ByPerson:
        return line.person.isEmpty() ? picture.shown.person : line.person;
    case PlanGroup::ByPlace:
        return line.place;
    case PlanGroup::InOrder:
        break;
    }
    if (picture.reach == PlanReach::Today) {
        return {};
    }
    return picture.manner.locale.toString(dayOf(line, picture), QStringLiteral("dddd d MMMM"));
}

class HeadDrawing {
public:
    HeadDrawing(const PlanPicture& picture, int width)
        : m_picture(picture), m_scribe(picture.look, QSize(width, most), picture.mirrored), m_width(width)
    {
    }

    PlanDrawn draw()
    {
        const double pad = m_scribe.px(planPadUnits);
        const auto& t = m_scribe.tokens();
        const double high = m_scribe.lineHeight(Role::Clock);
        const QString clock = service::timeOfDay(m_picture.shown.now, m_picture.manner);
        const double clockWide = m_scribe.width(clock, Role::Clock);
        double top = m_scribe.px(10);
        const QString title = m_picture.reach == PlanReach::Today ? PlanList::tr("Today") : PlanList::tr("This week");
        const double titleWide =
            m_scribe.text({pad, top, m_width - 2 * pad - clockWide, high}, title, {Role::Clock, t.ink, t.ground});
        m_scribe.text({m_width - pad - clockWide, top, clockWide, high}, clock, {Role::Clock, t.ink, t.ground},
                      Qt::AlignRight);
        words(QStringLiteral("plan/title"), QRect(int(pad), int(top), int(titleWide), int(high)), title);
        words(QStringLiteral("plan/clock"), QRect(int(m_width - pad - clockWide), int(top), int(clockWide), int(high)),
              clock);
        const double gap = m_scribe.px(18);
        const double room = m_width - 2 * pad - clockWide - titleWide - 2 * gap;
        if (m_scribe.width(summary(), Role::Reason) <= room) {
            m_scribe.text({pad + titleWide + gap, top, room, high}, summary(), {Role::Reason, t.ink2, t.ground});
            words(QStringLiteral("plan/summary"), QRect(int(pad + titleWide + gap), int(top), int(room), int(high)),
                  summary());
            top += high;
        } else {
            top += high;
            const double took = m_scribe.lines({pad, top, m_width - 2 * pad, 3.0 * m_scribe.lineHeight(Role::Reason)},
                                               summary(), {Role::Reason, t.ink2, t.ground}, 3);
            words(QStringLiteral("plan/summary"), QRect(int(pad), int(top), int(m_width - 2 * pad), int(took)),
                  summary());
            top += took;
        }
        top += m_scribe.px(8);
        top = choices(top);
        m_scribe.line({0.0, top + 0.5}, {double(m_width), top + 0.5}, t.edge, 1.0, t.ground, Qt::SolidLine, false);
        return {m_scribe.take(), int(std::ceil(top)) + 1};
    }

private:
    static constexpr int most = 2000;

    QString summary() const
    {
        const PlanShown& shown = m_picture.shown;
        const auto count = static_cast<int>(m_picture.lines().size());
        if (shown.plan.conflict) {
            return PlanList::tr("No plan keeps every window");
        }
        if (!shown.plan.isKnown) {
            return shown.isPlanning ? PlanList::tr("The plan is being made")
                                    : PlanList::tr("No whole plan was found yet");
        }
        const QString things = count == 1 ? PlanList::tr("1 thing to do") : PlanList::tr("%1 things to do").arg(count);
        return shown.plan.leftOut.isEmpty()
                   ? service::joined({things, PlanList::tr("every window kept")})
                   : service::joined({things, PlanList::tr("not all of it, see beside the list")});
    }

    void words(const QString& key, const QRect& rect, const QString& name)
    {
        Hit hit;
        hit.key = key;
        hit.rect = rect;
        hit.name = name;
        hit.kind = HitKind::Words;
        m_scribe.hit(hit);
    }

    double choices(double top)
    {
        struct Choice {
            QString key;
            QString label;
            bool chosen;
            std::function<void()> act;
        };
        const PlanActs& acts = m_picture.acts;
        const auto reach = [&](const char* key, const QString& label, PlanReach to) {
            return Choice{QLatin1String(key), label, m_picture.reach == to, [go = acts.reach, to] { go(to); }};
        };
        const auto group = [&](const char* key, const QString& label, PlanGroup to) {
            return Choice{QLatin1String(key), label, m_picture.group == to, [go = acts.group, to] { go(to); }};
        };
        const std::vector<Choice> all{reach("plan/today", PlanList::tr("Today"), PlanReach::Today),
                                      reach("plan/week", PlanList::tr("This week"), PlanReach::Week),
                                      group("plan/inorder", PlanList::tr("In order"), PlanGroup::InOrder),
                                      group("plan/byperson", PlanList::tr("By person"), PlanGroup::ByPerson),
                                      group("plan/byplace", PlanList::tr("By place"), PlanGroup::ByPlace)};
        const double pad = m_scribe.px(planPadUnits);
        const int high = m_scribe.mm(parts::otherActMm);
        const int gap = std::max(m_scribe.mm(parts::gapMm), m_scribe.px(12));
        double left = pad;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const Choice& each = all[i];
            const int wide =
                std::max(high, int(std::ceil(m_scribe.width(each.label, Role::Body))) + 2 * m_scribe.px(14));
            const double before = i == 2 && left > pad ? m_scribe.px(24) : 0.0; // two questions, kept apart
            if (left > pad && left + before + wide > m_width - pad) {
                left = pad;
                top += high + gap;
            } else {
                left += before;
            }
            Scribe::Button button;
            button.label = each.label;
            button.role = each.chosen ? Role::BodyBold : Role::Body;
            button.weight = each.chosen ? Scribe::Button::Weight::Strong : Scribe::Button::Weight::Plain;
            button.hit.key = each.key;
            button.hit.rect = QRect(int(left), int(top), wide, high);
            button.hit.name = each.label;
            button.hit.more = each.chosen ? PlanList::tr("chosen") : QString();
            button.hit.chosen = each.chosen;
            button.hit.kind = HitKind::Other;
            button.hit.act = each.act;
            m_scribe.button(button);
            left += wide + gap;
        }
        return top + high + m_scribe.px(12);
    }

    const PlanPicture& m_picture;
    Scribe m_scribe;
    int m_width;
};

class ListDrawing {
public:
    ListDrawing(const PlanPicture& picture, int width)
        : m_picture(picture), m_scribe(picture.look, QSize(width, most), picture.mirrored), m_width(width)
    {
    }

    PlanDrawn draw()
    {
        const std::vector<const PlanLine*> lines = m_picture.lines();
        measure(lines);
        m_top = m_scribe.px(8);
        std::vector<QString> groups;
        for (const PlanLine* line : lines) {
            const QString group = groupOf(*line, m_picture);
            if (std::ranges::find(groups, group) == groups.end()) {
                groups.push_back(group);
            }
        }
        for (const QString& group : groups) {
            heading(group);
            for (std::size_t i = 0; i < lines.size(); ++i) {
                if (groupOf(*lines[i], m_picture) == group) {
                    row(*lines[i], static_cast<int>(i) + 1);
                }
            }
        }
        if (lines.empty()) {
            nothing();
        }
        return {m_scribe.take(), int(std::ceil(m_top)) + m_scribe.px(12)};
    }

private:
    static constexpr int most = 100'000;

    /// The columns of figures are as wide as the widest in them, so that they line up.
    void measure(const std::vector<const PlanLine*>& lines)
    {
        m_numberWide = m_scribe.width(QString::number(lines.size()), Role::ReasonBold) + m_scribe.px(14);
        m_clockWide = 0.0;
        m_personWide = 0.0;
        for (const PlanLine* line : lines) {
            m_clockWide = std::max(m_clockWide, m_scribe.width(line->clock, Role::Reading));
            m_personWide = std::max(m_personWide, m_scribe.width(line->person, Role::Reason));
        }
        m_clockWide += m_scribe.px(18);
        m_personWide = std::min(m_personWide, m_width * 0.2);
    }

    void heading(const QString& group)
    {
        if (group.isEmpty()) {
            return;
        }
        const auto& t = m_scribe.tokens();
        const double high = m_scribe.lineHeight(Role::BodyBold);
        m_top += m_scribe.px(10);
        const QRectF rect(m_scribe.px(planPadUnits), m_top, m_width - m_scribe.px(planPadUnits), high);
        m_scribe.text(rect, group, {Role::BodyBold, t.ink, t.ground});
        Hit hit;
        hit.key = QStringLiteral("plan/group/") + group;
        hit.rect = rect.toRect();
        hit.name = group;
        hit.kind = HitKind::Words;
        m_scribe.hit(hit);
        m_top += high + m_scribe.px(4);
    }

    void nothing()
    {
        const auto& t = m_scribe.tokens();
        const QString words = !m_picture.shown.plan.isKnown ? QString()
                              : m_picture.shown.plan.lines.empty()
                                  ? PlanList::tr("Nothing on the bench needs hands. Take a piece in to plan it.")
                                  : PlanList::tr("Nothing more needs hands today. This week shows what comes next.");
        if (words.isEmpty()) {
            return;
        }
        const double left = m_scribe.px(planPadUnits);
        const double wide = m_width - left;
        const double high = m_scribe.lines({left, m_top, wide, 4.0 * m_scribe.lineHeight(Role::Body)}, words,
                                           {Role::Body, t.ink2, t.ground}, 4);
        Hit hit;
        hit.key = QStringLiteral("plan/nothing");
        hit.rect = QRect(int(left), int(m_top), int(wide), int(high));
        hit.name = words;
        hit.kind = HitKind::Words;
        m_scribe.hit(hit);
        m_top += high;
    }

    void row(const PlanLine& line, int number)
    {
        const auto& t = m_scribe.tokens();
        const double pad = m_scribe.px(planPadUnits);
        const double actHigh = m_scribe.lineHeight(Role::CardVerb);
        const double whyHigh = m_scribe.lineHeight(Role::Reason);
        const double left = pad + m_numberWide + m_clockWide;
        const double personRoom = m_personWide > 0 ? m_personWide + m_scribe.px(10) : 0.0;
        const double wide = m_width - left - personRoom;
        const QString why = service::joined({line.name, line.why});
        const int whyRows = m_scribe.width(why, Role::Reason) > wide ? 2 : 1;
        const double content = actHigh + whyRows * whyHigh;
        const double high = std::max<double>(m_scribe.mm(parts::otherActMm), content + m_scribe.px(20));
        const double middle = m_top + high / 2.0;
        m_scribe.text({pad, m_top, m_numberWide, high}, QString::number(number), {Role::ReasonBold, t.ink2, t.ground});
        m_scribe.text({pad + m_numberWide, m_top, m_clockWide, high}, line.clock, {Role::Reading, t.ink, t.ground});
        const double top = middle - content / 2.0;
        m_scribe.text({left, top, wide, actHigh}, line.act, {Role::CardVerb, t.ink, t.ground});
        m_scribe.lines({left, top + actHigh, wide, whyRows * whyHigh}, why, {Role::Reason, t.ink2, t.ground}, whyRows);
        if (m_personWide > 0) {
            m_scribe.text({m_width - m_personWide, m_top, m_personWide, high}, line.person,
                          {Role::Reason, t.ink2, t.ground}, Qt::AlignRight);
        }
        Hit hit;
        hit.key = QStringLiteral("plan/do/%1/%2/%3")
                      .arg(line.piece.value())
                      .arg(service::text(line.stage.stage))
                      .arg(line.stage.repetition);
        hit.rect = QRect(int(pad), int(m_top), int(m_width - pad), int(high));
        hit.name = PlanList::tr("%1: %2, %3, %4").arg(number).arg(line.clock, line.act, line.name);
        hit.more = service::joined({line.why, line.person, line.place});
        hit.kind = HitKind::Card;
        hit.act = [open = m_picture.acts.openPiece, piece = line.piece] { open(piece); };
        m_scribe.hit(hit);
        m_top += high;
        m_scribe.line({pad, m_top - 0.5}, {double(m_width), m_top - 0.5}, t.edge, 1.0, t.ground, Qt::SolidLine, false);
    }

    const PlanPicture& m_picture;
    Scribe m_scribe;
    int m_width;
    double m_top = 0.0;
    double m_numberWide = 0.0;
    double m_clockWide = 0.0;
    double m_personWide = 0.0;
};

} // namespace

std::vector<const PlanLine*> PlanPicture::lines() const
{
    const QDate today = dayOf(shown.now, manner);
    const QDate last = reach == PlanReach::Today ? today : today.addDays(week - 1);
    std::vector<const PlanLine*> within;
    for (const PlanLine& line : shown.plan.lines) {
        if (dayOf(line, *this) <= last) {
            within.push_back(&line);
        }
    }
    return within;
}

std::vector<const PlanLine*> PlanPicture::linesOfTheDay() const
{
    std::vector<const PlanLine*> all = lines();
    const auto later = std::ranges::find_if(
        all, [&](const PlanLine* line) { return dayOf(*line, *this) != dayOf(*all.front(), *this); });
    all.erase(later, all.end());
    return all;
}

PlanDrawn planHead(const PlanPicture& picture, int width) { return HeadDrawing(picture, width).draw(); }

PlanDrawn planList(const PlanPicture& picture, int width) { return ListDrawing(picture, width).draw(); }

} // namespace mend::app
