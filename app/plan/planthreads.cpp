// The threads, the waits and what cannot be: the time axis of the Plan space.
#include "app/parts/scribe.h"
#include "app/parts/seamdrawing.h"
#include "app/plan/planscenes.h"
#include "core/service/cardwording.h"

#include <QCoreApplication>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace mend::app {

namespace {

using parts::Hit;
using parts::HitKind;
using parts::Role;
using parts::Scribe;
using service::PlanLine;
using namespace std::chrono;

// What a translator finds these words under.
class PlanThreads {
    Q_DECLARE_TR_FUNCTIONS(PlanThreads)
};

/// From the first hands (or now) to the end of the last, and at least an hour.
parts::TimeAxis axisFor(const PlanPicture& picture, double left, double width)
{
    const auto lines = picture.linesOfTheDay();
    const Instant now = picture.shown.now;
    Instant from = now;
    Instant to = now + hours{2};
    if (!lines.empty() && lines.front()->from > now + hours{12}) { // another day: from its first hands on
        from = lines.front()->from;
        to = from + hours{2};
    }
    for (const PlanLine* line : lines) {
        to = std::max(to, line->to + minutes{10});
    }
    return {from, to - from, left, width};
}

Span stepFor(Span shown)
{
    for (const auto& [most, step] :
         {std::pair{Span(hours{3}), Span(minutes{30})}, std::pair{Span(hours{6}), Span(hours{1})}}) {
        if (shown <= most) {
            return step;
        }
    }
    return hours{2};
}

class ThreadDrawing {
public:
    ThreadDrawing(const PlanPicture& picture, int width)
        : m_picture(picture), m_scribe(picture.look, QSize(width, most), picture.mirrored), m_width(width),
          m_axis(axisFor(picture, m_scribe.px(8), width - m_scribe.px(planPadUnits) - m_scribe.px(8)))
    {
    }

    PlanDrawn draw()
    {
        m_top = m_scribe.px(10);
        conflict();
        offer();
        if (!m_picture.linesOfTheDay().empty()) {
            ticks();
            threads();
        }
        waits();
        leftOut();
        return {m_scribe.take(), int(std::ceil(m_top)) + m_scribe.px(16)};
    }

private:
    static constexpr int most = 100'000;

    void ticks()
    {
        const auto& t = m_scribe.tokens();
        const double high = m_scribe.lineHeight(Role::Reason);
        const parts::AlongTime straight(m_scribe, m_axis.left, m_axis.right());
        double free = m_axis.left;
        for (const Instant at : parts::wallTicks(m_axis, stepFor(m_axis.shown), m_picture.manner.zone)) {
            const double x = m_axis.x(at);
            const QString words = service::timeOfDay(at, m_picture.manner);
            const double half = m_scribe.width(words, Role::Reason) / 2.0;
            if (x - half < free || x + half > m_axis.right()) {
                continue;
            }
            free = x + half + m_scribe.px(10);
            m_scribe.text({x - half, m_top, 2 * half, high}, words, {Role::Reason, t.ink2, t.ground}, Qt::AlignHCenter);
            m_scribe.line({x, m_top + high}, {x, m_top + high + m_scribe.px(5)}, t.hair, 1.2, t.ground, Qt::SolidLine,
                          false);
        }
        m_top += high + m_scribe.px(20);
    }

    QString nameOf(const PlanLine& line) const { return line.person.isEmpty() ? m_picture.shown.person : line.person; }

    void threads()
    {
        const auto lines = m_picture.linesOfTheDay();
        QStringList people;
        for (const PlanLine* line : lines) {
            if (!people.contains(nameOf(*line))) {
                people << nameOf(*line);
            }
        }
        for (const QString& person : people) {
            thread(person, lines);
        }
    }

    /// The numbers are those of the list.
    void thread(const QString& person, const std::vector<const PlanLine*>& lines)
    {
        const auto& t = m_scribe.tokens();
        const double wordsHigh = m_scribe.lineHeight(Role::ReasonBold);
        const double breadth = m_scribe.px(18);
        const QString name = person.isEmpty() ? PlanThreads::tr("These hands") : person;
        m_scribe.text({m_axis.left, m_top, m_axis.width, wordsHigh}, name, {Role::ReasonBold, t.ink, t.ground});
        const double numbers = m_top + wordsHigh;
        const double middle = numbers + wordsHigh + breadth / 2.0 + m_scribe.px(2);
        m_scribe.line({m_axis.left, middle}, {m_axis.right(), middle}, t.ink, m_scribe.px(1.5), t.ground);
        const parts::AlongTime straight(m_scribe, m_axis.left, m_axis.right());
        double free = m_axis.left;
        QStringList said;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const PlanLine& line = *lines[i];
            if (nameOf(line) != person) {
                continue;
            }
            const double from = std::max(m_axis.left, m_axis.x(line.from));
            const double wide = std::max<double>(m_scribe.px(10), m_axis.x(line.to) - from);
            QPainterPath knot;
            knot.addEllipse(QRectF(from, middle - breadth / 2.0, wide, breadth));
            m_scribe.path(knot, t.ink, t.ground);
            m_scribe.stroke(knot, t.ground, m_scribe.px(1.5), t.ink); // two that touch stay two
            const QString number = QString::number(i + 1);
            const double numberWide = m_scribe.width(number, Role::ReasonBold);
            const double left = from + (wide - numberWide) / 2.0;
            if (left >= free && left + numberWide <= m_width) {
                m_scribe.text({left, numbers, numberWide, wordsHigh}, number, {Role::ReasonBold, t.ink, t.ground},
                              Qt::AlignHCenter);
                free = left + numberWide + m_scribe.px(3);
            }
            said << PlanThreads::tr("%1: %2 to %3")
                        .arg(number, service::timeOfDay(line.from, m_picture.manner),
                             service::timeOfDay(line.to, m_picture.manner));
        }
        const double bottom = middle + breadth / 2.0;
        words(QStringLiteral("plan/thread/") + name, {m_axis.left, m_top, m_axis.width, bottom - m_top}, name,
              said.join(QStringLiteral(", ")));
        m_top = bottom + m_scribe.px(20);
    }

    /// What has to be waited for, as far as it ends on the axis or begins before it ends.
    void waits()
    {
        const auto& t = m_scribe.tokens();
        const double wordsHigh = m_scribe.lineHeight(Role::Reason);
        const double row = wordsHigh + m_scribe.px(22);
        parts::TimeAxis axis = m_axis;
        axis.now = m_picture.shown.now;
        for (const bench::Card& card : m_picture.shown.waits) {
            const service::CountWords count = service::countWords(card, m_picture.shown.now, m_picture.manner);
            const QString said =
                PlanThreads::tr("%1: %2, %3")
                    .arg(service::text(card.placeName), service::isolated(service::text(card.benchName)), count.below);
            m_scribe.text({m_axis.left, m_top, m_axis.width, wordsHigh}, said, {Role::Reason, t.ink2, t.ground});
            const parts::SeamInk ink{t.gold, t.hair, t.ink, t.ground};
            parts::drawSeam(m_scribe, card.seam, axis, m_top + wordsHigh + m_scribe.px(7), m_scribe.px(9), ink,
                            parts::SeamDetail::Common);
            words(QStringLiteral("plan/wait/%1").arg(card.piece.value()), {m_axis.left, m_top, m_axis.width, row}, said,
                  {});
            m_top += row;
        }
    }

    void leftOut()
    {
        for (const QString& line : m_picture.shown.plan.leftOut) {
            paragraph(line, Role::ReasonBold, m_scribe.tokens().ink, m_axis.left, m_axis.width,
                      m_scribe.tokens().ground);
            m_top += m_scribe.px(6);
        }
    }

    double paragraph(const QString& said, Role role, const QColor& ink, double left, double wide, const QColor& ground)
    {
        constexpr int rows = 6;
        const double took =
            m_scribe.lines({left, m_top, wide, rows * m_scribe.lineHeight(role)}, said, {role, ink, ground}, rows);
        words(QStringLiteral("plan/words/%1").arg(m_said++), {left, m_top, wide, took}, said, {});
        m_top += took;
        return took;
    }

    void words(const QString& key, const QRectF& rect, const QString& name, const QString& more)
    {
        Hit hit;
        hit.key = key;
        hit.rect = rect.toAlignedRect();
        hit.name = name;
        hit.more = more;
        hit.kind = HitKind::Words;
        m_scribe.hit(hit);
    }

    struct Way {
        QString key;
        QString label;
        std::function<void()> act;
    };

    /// A thick frame around a fact, its reasons and what may be done about it. Drawn twice: its height comes first.
    void box(const QString& title, const QStringList& reasons, const QStringList& others, const std::vector<Way>& ways)
    {
        const auto& t = m_scribe.tokens();
        const double pad = m_scribe.px(18);
        const double left = m_axis.left + pad;
        const double wide = m_axis.width - 2 * pad;
        const double high = boxHeight(title, reasons, others, ways, wide) + 2 * pad;
        const QRectF frame(m_axis.left, m_top, m_axis.width, high);
        m_scribe.fill(frame, t.card, m_scribe.px(6));
        m_scribe.frame(frame, t.ink, m_scribe.px(3), t.card, m_scribe.px(6));
        m_top += pad;
        paragraph(title, Role::BodyBold, t.ink, left, wide, t.card);
        m_top += m_scribe.px(4);
        for (const QString& reason : reasons) {
            paragraph(reason, Role::Reason, t.ink2, left, wide, t.card);
        }
        for (const QString& other : others) {
            paragraph(other, Role::Reason, t.ink, left, wide, t.card);
        }
        for (const Way& way : ways) {
            m_top += m_scribe.px(12);
            Scribe::Button button;
            button.label = way.label;
            button.role = Role::Body;
            button.weight = &way == &ways.front() ? Scribe::Button::Weight::Strong : Scribe::Button::Weight::Plain;
            button.hit.key = way.key;
            button.hit.name = way.label;
            button.hit.kind = HitKind::Other;
            button.hit.rect = QRect(int(left), int(m_top), int(wide), buttonHigh());
            button.hit.act = way.act;
            m_scribe.button(button);
            m_top += buttonHigh();
        }
        m_top = frame.bottom() + m_scribe.px(20);
    }

    int buttonHigh() const { return std::max(m_scribe.mm(parts::otherActMm), m_scribe.px(46)); }

    double boxHeight(const QString& title, const QStringList& reasons, const QStringList& others,
                     const std::vector<Way>& ways, double wide)
    {
        Scribe trial(m_picture.look, QSize(m_width, most), false);
        const auto high = [&](const QString& said, Role role) {
            constexpr int rows = 6;
            return trial.lines({0.0, 0.0, wide, rows * trial.lineHeight(role)}, said,
                               {role, m_scribe.tokens().ink, m_scribe.tokens().card}, rows);
        };
        double all = high(title, Role::BodyBold) + m_scribe.px(4);
        for (const QStringList& list : {reasons, others}) {
            for (const QString& each : list) {
                all += high(each, Role::Reason);
            }
        }
        return all + static_cast<double>(ways.size()) * (buttonHigh() + m_scribe.px(12));
    }

    void conflict()
    {
        const auto& told = m_picture.shown.plan.conflict;
        if (!told) {
            return;
        }
        std::vector<Way> ways;
        QStringList others;
        for (const service::PlanConflict::Way& way : told->ways) {
            if (way.setAside.isSet()) {
                ways.push_back({QStringLiteral("plan/aside/%1").arg(way.setAside.value()), way.words,
                                [act = m_picture.acts.setAside, piece = way.setAside] { act(piece); }});
            } else {
                others << PlanThreads::tr("Or: %1").arg(way.words);
            }
        }
        QStringList reasons = told->reasons;
        if (reasons.isEmpty()) {
            reasons << (m_picture.shown.isPlanning ? PlanThreads::tr("The reasons are being looked for.")
                                                   : PlanThreads::tr("No small set of reasons was found in the time."));
        }
        box(PlanThreads::tr("These cannot all be kept"), reasons, others, ways);
    }

    void offer()
    {
        const auto& told = m_picture.shown.offer;
        if (!told) {
            return;
        }
        box(PlanThreads::tr("There is a better order"), {told->words}, {},
            {{QStringLiteral("plan/take"), PlanThreads::tr("Take the better one"), m_picture.acts.takeOffer},
             {QStringLiteral("plan/refuse"), PlanThreads::tr("Keep the plan as it is"), m_picture.acts.refuseOffer}});
    }

    const PlanPicture& m_picture;
    Scribe m_scribe;
    int m_width;
    parts::TimeAxis m_axis;
    double m_top = 0.0;
    int m_said = 0;
};

} // namespace

PlanDrawn planThreads(const PlanPicture& picture, int width) { return ThreadDrawing(picture, width).draw(); }

} // namespace mend::app
