#include "tests/day/hand.h"

#include <QTest>
#include <algorithm>

namespace mend::test {

namespace {

/// Longer than the 500 ms that a spot which has just changed waits before it takes a tap. They count from the change
/// and these from when it is told of, which is never earlier.
constexpr int stillMs = 530;
/// Longer than the 250 ms in which a second tap on one spot counts as the echo of the first.
constexpr int echoMs = 300;
/// What moves between the look and the tap takes none, as it should: a person taps again.
constexpr int mostTries = 3;
constexpr int patienceMs = 10'000;
/// A whole quiet hour of the day takes some seconds, each sound as long as it is.
constexpr int longestPassMs = 120'000;
const QString calls = QStringLiteral("Hands on it, ");

} // namespace

bool Hand::passUntil(Instant from, Instant to)
{
    listen();
    m_now.reset();
    m_program.tell("pass " + QByteArray::number(static_cast<qlonglong>((to - from).count())));
    return watchUntil([&] { return m_now == to; }, longestPassMs);
}

/// Looks and listens until that holds; false where it never does.
bool Hand::watchUntil(const std::function<bool()>& holds, int milliseconds)
{
    bool good = false;
    static_cast<void>(QTest::qWaitFor(
        [&] {
            look();
            listen();
            good = holds();
            return good || !m_program.isRunning();
        },
        milliseconds));
    return good;
}

void Hand::listen()
{
    for (const QString& line : m_program.takeSaid()) {
        const auto at = fromRfc3339(line.section(QLatin1Char(' '), 1).toStdString());
        const QString what = line.section(QLatin1Char(' '), 0, 0);
        if (!at) {
            continue;
        }
        if (what == QLatin1String("now")) {
            m_now = at;
        } else if (what == QLatin1String("heard")) {
            m_heard.push_back(*at);
        } else if (what == QLatin1String("unheard")) {
            m_unheard.push_back(*at);
        } else if (what == QLatin1String("tapped")) {
            m_felt = Felt::Tap;
        } else if (what == QLatin1String("refused")) {
            m_felt = Felt::Refusal;
        }
    }
}

/// Notes since when each spot has been where it is.
void Hand::look()
{
    std::map<QString, Stood> now;
    for (const Spot& spot : m_program.spots()) {
        Stood stood{spot.rect, {}};
        const auto before = m_stood.find(spot.key);
        if (before != m_stood.end() && before->second.rect == spot.rect) {
            stood.since = before->second.since;
        } else {
            stood.since.start();
        }
        now.insert_or_assign(spot.key, stood);
    }
    m_stood = std::move(now);
}

bool Hand::tapWhere(const std::function<bool(const Spot&)>& isIt)
{
    for (int tries = 0; tries < mostTries; ++tries) {
        std::optional<Spot> found;
        const bool stands = watchUntil(
            [&] {
                const auto& spots = m_program.spots();
                const auto spot = std::ranges::find_if(spots, isIt);
                found = spot == spots.end() ? std::nullopt : std::optional(*spot);
                return found && mayBeTapped(*found);
            },
            patienceMs);
        m_felt = Felt::Nothing;
        if (!stands || !m_screen.click(found->rect.center()) ||
            !watchUntil([this] { return m_felt != Felt::Nothing; }, patienceMs)) {
            return false;
        }
        if (m_felt == Felt::Tap) {
            ++m_clicks;
            m_lastKey = found->key;
            m_lastTap.start();
            return true;
        }
        ++m_refused;
    }
    return false;
}

/// Whether that spot has stood as long as a tap needs, and is not the one that was tapped just now.
bool Hand::mayBeTapped(const Spot& spot)
{
    const QElapsedTimer since = m_stood[spot.key].since;
    const bool isEcho = spot.key == m_lastKey && m_lastTap.elapsed() < echoMs;
    return since.isValid() && since.elapsed() >= stillMs && !isEcho;
}

bool Hand::tap(const QString& words)
{
    // The rail names spaces, which is never what a word on a card or a panel means.
    return tapWhere([&](const Spot& spot) {
        return spot.acts && spot.name.startsWith(words) && !spot.key.startsWith(QLatin1String("rail/"));
    });
}

bool Hand::tapKey(const QString& key)
{
    const bool begins = key.endsWith(QLatin1Char('/'));
    return tapWhere(
        [&](const Spot& spot) { return spot.acts && (begins ? spot.key.startsWith(key) : spot.key == key); });
}

QStringList Hand::calling()
{
    QStringList pieces;
    for (const Spot& spot : m_program.spots()) {
        if (spot.acts && spot.name.startsWith(calls)) {
            pieces << spot.name.mid(calls.size());
        }
    }
    return pieces;
}

} // namespace mend::test
