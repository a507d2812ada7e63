#include "core/bench/chain.h"

#include <algorithm>
#include <span>

namespace mend::bench {

namespace {

bool takesPartInChains(const Window& window, Instant now)
{
    return window.closes && *window.closes > now && !window.begunAt && !window.counted &&
           window.miss != rules::Miss::Nothing && window.handsOn > Span{0};
}

/// One order in which one pair of hands serves windows, each off before it closes and before the next has to start.
class Serving {
public:
    explicit Serving(std::vector<Window*> order) : m_order(std::move(order)), m_starts(m_order.size())
    {
        for (std::size_t at = m_order.size(); at-- > 0;) {
            const Window& window = *m_order[at];
            m_starts[at] = (isPressed(at) ? m_starts[at + 1] : *window.closes) - window.handsOn;
            if (window.opens) {
                m_tooEarly += std::max(Span{0}, *window.opens - m_starts[at]);
            }
        }
    }

    /// By how much, all in all, hands would have to begin before there is anything for them to do.
    Span tooEarly() const { return m_tooEarly; }

    /// Whatever would have to begin before it opens is served after others that are open by then, where that helps.
    Serving improved() const
    {
        Serving best = *this;
        Span before = Span::max();
        while (best.tooEarly() > Span{0} && best.tooEarly() < before) {
            before = best.tooEarly();
            for (std::size_t at = 0; at < m_order.size() && best.tooEarly() > Span{0}; ++at) {
                best = best.withLater(m_order[at]);
            }
        }
        return best;
    }

    void tell() const
    {
        std::size_t first = 0;
        for (std::size_t at = 0; at < m_order.size(); ++at) {
            m_order[at]->latestStart = m_starts[at];
            if (!isPressed(at)) {
                nameChain(std::span(m_order).subspan(first, at + 1 - first));
                first = at + 1;
            }
        }
    }

private:
    /// The next has to start before this one closes.
    bool isPressed(std::size_t at) const { return at + 1 < m_order.size() && m_starts[at + 1] < *m_order[at]->closes; }

    /// The best of the orders in which one window comes later.
    Serving withLater(const Window* window) const
    {
        Serving best = *this;
        std::vector<Window*> order = m_order;
        auto at = static_cast<std::size_t>(std::ranges::find(order, window) - order.begin());
        for (; at + 1 < order.size() && isPressed(at); ++at) {
            std::swap(order[at], order[at + 1]);
            Serving other(order);
            if (other.tooEarly() < best.tooEarly()) {
                best = std::move(other);
            }
        }
        return best;
    }

    /// Each is called at the start of all, with the order named.
    static void nameChain(std::span<Window* const> links)
    {
        if (links.size() < 2) {
            return;
        }
        const Instant start = *links.front()->latestStart;
        std::vector<StageInstance> order;
        std::vector<PieceId> pieces;
        for (const Window* link : links) {
            order.push_back(link->stage);
            pieces.push_back(link->piece);
        }
        for (Window* link : links) {
            link->latestStart = start;
            link->chain = order;
            link->chainPieces = pieces;
        }
    }

    std::vector<Window*> m_order;
    std::vector<Instant> m_starts;
    Span m_tooEarly{0};
};

} // namespace

void chainThroughOnePairOfHands(std::vector<Window>& windows, Instant now)
{
    std::vector<Window*> closing;
    for (Window& window : windows) {
        if (takesPartInChains(window, now)) {
            closing.push_back(&window);
        }
    }
    std::ranges::stable_sort(closing, {}, [](const Window* window) { return *window->closes; });
    Serving(std::move(closing)).improved().tell();
}

} // namespace mend::bench
