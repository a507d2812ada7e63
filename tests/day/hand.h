#pragma once

#include "core/base/time.h"
#include "tests/trial/program.h"
#include "tests/trial/screen.h"

#include <QElapsedTimer>
#include <functional>
#include <map>

namespace mend::test {

/// A mender's hand and watch: lets the day pass, and taps what stands still under the words it looks for.
class Hand {
public:
    Hand(const Screen& screen, Program& program) : m_screen(screen), m_program(program) {}

    /// Lets the clock of the day run on; false where it did not come to its end.
    bool passUntil(Instant from, Instant to);
    /// A real click on the spot whose name begins so, once it has stood still for as long as a tap needs.
    bool tap(const QString& words);
    /// The same on the spot with that key, or with the first that begins with it where it ends in "/".
    bool tapKey(const QString& key);
    /// The pieces that call for hands on the screen now.
    QStringList calling();
    /// Taps that did something.
    int clicks() const { return m_clicks; }
    /// Taps that came too soon after what they were on had changed.
    int refused() const { return m_refused; }

    /// When a sound was heard to its end, and when one was not, by the clock of the day.
    const std::vector<Instant>& heard() const { return m_heard; }
    const std::vector<Instant>& unheard() const { return m_unheard; }

private:
    enum class Felt { Nothing, Tap, Refusal };
    struct Stood {
        QRect rect;
        QElapsedTimer since;
    };
    bool tapWhere(const std::function<bool(const Spot&)>& isIt);
    bool mayBeTapped(const Spot& spot);
    bool watchUntil(const std::function<bool()>& holds, int milliseconds);
    void look();
    void listen();

    const Screen& m_screen;
    Program& m_program;
    std::map<QString, Stood> m_stood;
    std::vector<Instant> m_heard;
    std::vector<Instant> m_unheard;
    std::optional<Instant> m_now;
    QString m_lastKey; ///< of the spot that was tapped last
    QElapsedTimer m_lastTap;
    int m_clicks = 0;
    int m_refused = 0;
    Felt m_felt = Felt::Nothing; ///< of the tap that was made last
};

} // namespace mend::test
