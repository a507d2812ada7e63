// The program with a day of its own: it is built as app/main.cpp builds it, but its clock stands still until a
// line on standard input lets time pass. So a whole day at the bench takes minutes, and every tap has the second
// that the script of the day gives it.
//
//   MEND_DAY_BEGINS=2026-03-02T13:00:00Z dayprogram ...     everything else as for mendbench
//
// takes     pass MILLISECONDS
// says      now TIME      once that has passed and nothing sounds any more
//           heard TIME    a sound was heard to its end, as the sound process says
//           unheard TIME  it was not
//           tapped TIME   a finger went up and did something; the window has told what stands in it since
//           refused TIME  a finger went up and did nothing: what it was on had just changed
#include "app/parts/actview.h"
#include "app/program/programoptions.h"
#include "app/program/session.h"
#include "app/sound/player.h"
#include "core/service/clockwatch.h"
#include "tests/support/fakeclock.h"

#include <QApplication>
#include <QEvent>
#include <QPointer>
#include <QSocketNotifier>
#include <QTimer>
#include <cstdio>
#include <unistd.h>
#include <utility>

namespace mend::test {

namespace {

/// No alert may come later than it would by this: a call is at most so late on the clock of the day.
constexpr Span longestHop = std::chrono::seconds(5);
constexpr std::chrono::milliseconds untilAskedAgain(5);
/// The window says 20 times a second where everything stands: by then it has said so of what is now.
constexpr std::chrono::milliseconds untilSaid(75);

/// Lets the day pass in hops, and stands still while an alert sounds: one second of sound is one second long.
class Day : public QObject {
public:
    Day(FakeClock& clock, service::ClockWatch& watch)
        : m_clock(clock), m_watch(watch), m_asked(STDIN_FILENO, QSocketNotifier::Read)
    {
        QObject::connect(&m_asked, &QSocketNotifier::activated, this, [this] { take(); });
        m_next.setSingleShot(true);
        QObject::connect(&m_next, &QTimer::timeout, this, [this] { goOn(); });
    }

    void listenTo(sound::Player& player)
    {
        m_player = &player;
        QObject::connect(&player, &sound::Player::heard, this, [this] { say("heard"); });
        QObject::connect(&player, &sound::Player::unheard, this, [this] { say("unheard"); });
    }

    /// Notes what every finger that comes down and goes up has done.
    bool eventFilter(QObject* object, QEvent* event) override
    {
        if (event->type() == QEvent::MouseButtonPress) {
            if (auto* view = qobject_cast<parts::ActView*>(object)) {
                m_acted = false;
                connect(view, &parts::ActView::acted, this, &Day::noteActed, Qt::UniqueConnection);
            }
        } else if (event->type() == QEvent::MouseButtonRelease && object->isWindowType()) {
            QTimer::singleShot(untilSaid, this, [this] { say(m_acted ? "tapped" : "refused"); });
        }
        return QObject::eventFilter(object, event);
    }

private:
    void noteActed() { m_acted = true; }

    void take()
    {
        char read[256];
        const auto length = ::read(STDIN_FILENO, read, sizeof(read));
        if (length <= 0) {
            m_asked.setEnabled(false); // whoever told the time is gone: it stands still
            return;
        }
        m_pending.append(read, length);
        for (auto end = m_pending.indexOf('\n'); end >= 0; end = m_pending.indexOf('\n')) {
            const QByteArray line = m_pending.left(end);
            m_pending.remove(0, end + 1);
            if (line.startsWith("pass ")) {
                m_left += Span(line.mid(5).toLongLong());
                m_isSaid = false;
                m_next.start(0);
            }
        }
    }

    void goOn()
    {
        if (m_player && m_player->isSounding()) {
            m_next.start(untilAskedAgain);
            return;
        }
        if (m_left <= Span{0}) {
            if (std::exchange(m_isSaid, true)) {
                say("now");
            } else {
                m_next.start(untilSaid);
            }
            return;
        }
        m_isSaid = false;
        const Span hop = std::min(m_left, longestHop);
        m_left -= hop;
        m_clock.pass(hop);
        Q_EMIT m_watch.clockSet();
        m_next.start(0);
    }

    void say(const char* what) const
    {
        std::printf("%s %s\n", what, toRfc3339(m_clock.now().utc).c_str());
        std::fflush(stdout);
    }

    FakeClock& m_clock;
    service::ClockWatch& m_watch;
    QSocketNotifier m_asked;
    QTimer m_next;
    QByteArray m_pending;
    Span m_left{0};
    bool m_isSaid = false;
    bool m_acted = false; ///< the finger that came down last
    QPointer<sound::Player> m_player;
};

} // namespace

} // namespace mend::test

int main(int argc, char** argv)
{
    using namespace mend;
    QApplication program(argc, argv);
    QCoreApplication::setApplicationName(QStringLiteral("mendbench"));
    const auto begins = fromRfc3339(qEnvironmentVariable("MEND_DAY_BEGINS").toStdString());
    const app::ReadOptions read = app::readOptions(QCoreApplication::arguments());
    if (!begins || read.end) {
        std::fputs("MEND_DAY_BEGINS says when the day begins; everything else is as for mendbench\n", stderr);
        return 2;
    }
    // Each start is a boot of its own, as after a power cut.
    test::FakeClock clock(*begins, "day-" + std::to_string(QCoreApplication::applicationPid()));
    service::ClockWatch watch(-1); // no hand but the day's sets this clock
    test::Day day(clock, watch);
    program.installEventFilter(&day);
    return app::runSession(program, read.options,
                           {clock, watch, [&day](sound::Player& player) { day.listenTo(player); }});
}
