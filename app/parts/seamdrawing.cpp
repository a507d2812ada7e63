#include "app/parts/seamdrawing.h"

#include <QDateTime>

#include <algorithm>

namespace mend::parts {

namespace {

using namespace std::chrono;

std::optional<Instant> lastOf(const bench::Seam& seam)
{
    std::optional<Instant> last;
    for (const auto& each : {seam.opens, seam.opensAtLatest, seam.closes, seam.lost, seam.ends, seam.latestStart}) {
        if (each && (!last || *each > *last)) {
            last = each;
        }
    }
    return last;
}

// Where nothing is known of the beginning: the least of these that holds the end.
Span niceSpan(Span needed)
{
    for (const Span step : {Span(minutes{20}), Span(hours{1}), Span(hours{3}), Span(hours{8}), Span(hours{24}),
                            Span(hours{72}), Span(hours{24 * 7}), Span(hours{24 * 21})}) {
        if (needed <= step) {
            return step;
        }
    }
    return needed;
}

// The body of the seam: breadth at each x, drawn as one closed shape.
struct Body {
    QPainterPath path;
    std::vector<QPointF> upper;
    double middle = 0.0;

    void at(double x, double breadth) { upper.emplace_back(x, breadth / 2.0); }
    void close()
    {
        if (upper.size() < 2) {
            return;
        }
        path.moveTo(upper.front().x(), middle - upper.front().y());
        for (const QPointF& each : upper) {
            path.lineTo(each.x(), middle - each.y());
        }
        for (auto each = upper.rbegin(); each != upper.rend(); ++each) {
            path.lineTo(each->x(), middle + each->y());
        }
        path.closeSubpath();
    }
};

class SeamPen {
public:
    SeamPen(Scribe& scribe, const bench::Seam& seam, const TimeAxis& axis, double middle, double breadth,
            const SeamInk& ink)
        : m_scribe(scribe), m_seam(seam), m_axis(axis), m_middle(middle), m_breadth(breadth), m_ink(ink)
    {
    }

    void stalled()
    {
        m_scribe.line({m_axis.left, m_middle}, {m_axis.right(), m_middle}, m_ink.hair, m_scribe.px(1.6), m_ink.ground,
                      Qt::DotLine);
    }

    void wait()
    {
        const double end = cut(m_axis.x(*m_seam.ends));
        hairline(m_axis.left, end);
        if (m_seam.opensAtLatest && *m_seam.opensAtLatest > *m_seam.ends) {
            m_scribe.line({end, m_middle}, {cut(m_axis.x(*m_seam.opensAtLatest)), m_middle}, m_ink.hair, m_scribe.px(5),
                          m_ink.ground);
        }
        if (m_axis.x(*m_seam.ends) <= m_axis.right()) {
            ring(end); // one that ends beyond the axis only runs out of it
        }
    }

    void window(SeamDetail detail)
    {
        const double opens = m_seam.opens ? m_axis.x(*m_seam.opens) : m_axis.left;
        if (opens > m_axis.left) {
            hairline(m_axis.left, std::min(opens, m_axis.right()));
        }
        const double closes = m_seam.closes ? m_axis.x(*m_seam.closes) : m_axis.right();
        if (closes > m_axis.left) {
            body(opens, closes);
        }
        if (m_seam.closes && (detail == SeamDetail::Card || m_seam.lost)) {
            dots(std::max(closes, m_axis.left));
        }
        if (m_seam.latestStart) {
            tick(m_axis.x(*m_seam.latestStart));
        }
    }

    void now()
    {
        const double half = m_breadth / 2.0 + m_scribe.px(6);
        m_scribe.line({m_axis.left, m_middle - half}, {m_axis.left, m_middle + half}, m_ink.mark, m_scribe.px(2),
                      m_ink.ground);
    }

private:
    double cut(double x) const { return std::clamp(x, m_axis.left, m_axis.right()); }

    void hairline(double from, double to)
    {
        m_scribe.line({from, m_middle}, {to, m_middle}, m_ink.hair, m_scribe.px(1.4), m_ink.ground);
    }

    void ring(double x)
    {
        const double r = m_scribe.px(4.5);
        QPainterPath circle;
        circle.addEllipse(QPointF(std::min(x, m_axis.right() - r), m_middle), r, r);
        m_scribe.path(circle, m_ink.ground, m_ink.ground);
        m_scribe.stroke(circle, m_ink.hair, m_scribe.px(2), m_ink.ground);
    }

    void tick(double x)
    {
        if (x < m_axis.left || x > m_axis.right()) {
            return;
        }
        const double half = m_breadth / 2.0 + m_scribe.px(4);
        m_scribe.line({x, m_middle - half}, {x, m_middle + half}, m_ink.mark, m_scribe.px(2), m_ink.ground);
    }

    void dots(double from)
    {
        const double start = from + m_scribe.px(8);
        const double end = m_seam.lost ? cut(m_axis.x(*m_seam.lost)) : m_axis.right();
        if (end > start) {
            m_scribe.line({start, m_middle}, {end, m_middle}, m_ink.hair, m_scribe.px(2.2), m_ink.ground, Qt::DotLine);
        }
    }

    void body(double opens, double closes)
    {
        const double taper = m_seam.latestStart ? std::max(m_axis.x(*m_seam.latestStart), opens) : closes;
        const double point = std::min(closes, m_axis.right());
        const double swell = std::min(m_scribe.px(28), std::max(0, static_cast<int>(opens - m_axis.left)));
        const auto breadthAt = [&](double x) {
            if (x < opens) {
                return swell > 0.0 ? m_breadth * std::max(0.0, (x - (opens - swell)) / swell) : 0.0;
            }
            if (!m_seam.closes || x <= taper || closes <= taper) {
                return m_breadth;
            }
            return m_breadth * std::max(0.0, (closes - x) / (closes - taper));
        };
        Body shape;
        shape.middle = m_middle;
        for (const double x : {std::max(m_axis.left, opens - swell), opens, taper, point}) {
            if (x >= m_axis.left && x <= m_axis.right() + 0.5) {
                shape.at(x, breadthAt(x));
            } else if (x < m_axis.left && (shape.upper.empty() || shape.upper.back().x() < m_axis.left)) {
                continue;
            }
        }
        if (shape.upper.empty() || shape.upper.front().x() > m_axis.left + 0.5) {
            if (opens - swell < m_axis.left) {
                shape.upper.insert(shape.upper.begin(), QPointF(m_axis.left, breadthAt(m_axis.left) / 2.0));
            }
        }
        if (shape.upper.empty() || shape.upper.back().x() < point) {
            shape.at(point, breadthAt(point));
        }
        shape.close();
        m_scribe.path(shape.path, m_ink.open, m_ink.ground);
    }

    Scribe& m_scribe;
    const bench::Seam& m_seam;
    const TimeAxis& m_axis;
    double m_middle;
    double m_breadth;
    const SeamInk& m_ink;
};

} // namespace

double TimeAxis::x(Instant at) const { return left + width * (duration<double>(at - now) / duration<double>(shown)); }

std::vector<Instant> wallTicks(const TimeAxis& axis, Span step, const QTimeZone& zone)
{
    const auto offset =
        milliseconds(zone.offsetFromUtc(QDateTime::fromMSecsSinceEpoch(axis.now.time_since_epoch().count())) * 1000LL);
    const auto local = axis.now + offset;
    std::vector<Instant> ticks;
    for (Instant at = Instant(local.time_since_epoch() / step * step + step) - offset; at < axis.now + axis.shown;
         at += step) {
        ticks.push_back(at);
    }
    return ticks;
}

TimeAxis axisOf(const bench::Card& card, Instant now, double left, double width)
{
    const auto last = lastOf(card.seam);
    Span shown = niceSpan(last ? std::max(Span(minutes{1}), *last - now) : Span(hours{1}));
    if (last && card.window && !card.window->why.empty()) {
        const auto& why = card.window->why;
        const Instant origin = std::ranges::min_element(why, {}, &bench::Reckoning::origin)->origin;
        if (origin < *last && origin <= now) {
            shown = std::max({*last - origin, *last - now, Span(minutes{1})});
        }
    }
    // A little air behind the point, for the dots that say it is past.
    return {now, shown + shown / 12, left, width};
}

bool isEmpty(const bench::Seam& seam) { return !seam.stalled && !seam.closes && !seam.opens && !seam.ends; }

SeamInk seamInk(const Tokens& tokens, bool onBlock)
{
    return onBlock ? SeamInk{tokens.goldOnBlock, tokens.onBlock2, tokens.onBlock, tokens.block}
                   : SeamInk{tokens.gold, tokens.hair, tokens.ink, tokens.card};
}

void drawSeam(Scribe& scribe, const bench::Seam& seam, const TimeAxis& axis, double middle, double breadth,
              const SeamInk& ink, SeamDetail detail)
{
    const AlongTime straight(scribe, axis.left, axis.right());
    SeamPen pen(scribe, seam, axis, middle, breadth, ink);
    if (seam.stalled) {
        pen.stalled();
    } else if (seam.closes || seam.opens) {
        pen.window(detail);
    } else if (seam.ends) {
        pen.wait();
    }
    if (detail == SeamDetail::Card && !isEmpty(seam)) {
        pen.now();
    }
}

} // namespace mend::parts
