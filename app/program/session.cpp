#include "app/program/session.h"

#include "app/program/alarm.h"
#include "app/program/banners.h"
#include "app/program/benchlink.h"
#include "app/program/filed.h"
#include "app/program/firstpaint.h"
#include "app/program/keeping.h"
#include "app/program/opening.h"
#include "app/program/sayacts.h"
#include "app/program/textboard.h"
#include "core/service/datafolder.h"
#include "core/service/systemclock.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QScreen>
#include <QTimer>
#include <cstdio>

namespace mend::app {

namespace {

/// As wished on this machine, with what the command line says on top.
LookSettings lookOf(const ProgramOptions& options, const QSettings& settings)
{
    LookSettings look = lookSettings(wishedLook(settings));
    if (options.theme == QLatin1String("dark")) {
        look.theme = parts::Theme::Dark;
    } else if (options.theme == QLatin1String("contrast")) {
        look.theme = parts::Theme::HighContrast;
    }
    if (options.theme == QLatin1String("light")) {
        look.theme = parts::Theme::Light;
    }
    if (options.scale > 0) {
        look.scale = options.scale;
    }
    return look;
}

QSize sizeOf(const ProgramOptions& options)
{
    const QStringList sides = options.size.split(QLatin1Char('x'));
    const QSize asked(sides.value(0).toInt(), sides.value(1).toInt());
    if (asked.width() >= 320 && asked.height() >= 200) {
        return asked;
    }
    return {1280, 800};
}

/// Everything that lives as long as one bench is open, in the order in which it is built.
class Session {
public:
    Session(Opened opened, const ProgramOptions& options)
        : m_options(options), m_shelf(std::move(opened.shelf)), m_storedRules(opened.bench.storedRevisions),
          m_keeping(std::move(opened.store), [this](const auto& events) { return rulesFor(events); }),
          m_bench(m_clock, opened.bench.book, std::move(opened.bench.record),
                  [this](const auto& events) { m_keeping.keep(events); }),
          m_alerts(m_bench), m_heart(m_clock, m_bench, m_alerts, service::LastSeen(lastSeenOf(opened.file))),
          m_window(m_gate), m_player(sound::Player::Setup{}), m_notifier(desktop::sessionBus()),
          m_awake(desktop::sessionBus(), desktop::systemBus()),
          m_alarm({m_alerts, m_bench, m_player, m_notifier, m_awake}),
          m_link({m_bench, m_alerts, m_heart, m_clock}, m_window, mannerOf(opened.bench.studio)),
          m_settings(QString::fromStdString((service::configFolder() / "window.ini").native()), QSettings::IniFormat),
          m_upkeep(m_keeping, m_clock, opened.file), m_spaces({m_bench, m_alerts, m_clock}, m_window, m_gate, m_manner),
          m_filed({m_bench, *m_shelf, m_keeping, m_upkeep, m_player, m_window, m_link, m_spaces, m_clock},
                  opened.bench.studio, m_manner, m_settings)
    {
        m_window.setLookSettings(lookOf(options, m_settings));
        m_window.resize(sizeOf(options));
        m_window.setWindowTitle(QStringLiteral("Mendbench"));
        connectStore();
        connectSound();
        if (opened.isNew) {
            std::error_code neverRan;
            std::filesystem::remove(lastSeenOf(opened.file), neverRan);
        }
    }

    int run(QApplication& program)
    {
        m_heart.begin();
        m_link.show();
        if (m_options.print) {
            std::fputs(boardText(m_bench, m_alerts, m_manner).toUtf8().constData(), stdout);
        }
        if (!m_options.picture.isEmpty() || m_options.print) {
            return endAfterPicture();
        }
        const auto first = m_options.measureStart ? std::make_unique<FirstPaint>() : nullptr;
        m_window.show();
        m_window.bench().setFocus();
        QTimer::singleShot(2000, &m_upkeep, &Upkeep::begin); // checks never delay the first paint
        const auto told = m_options.sayActs ? std::make_unique<SayActs>(m_window) : nullptr;
        const int code = program.exec();
        return m_keeping.thread().waitUntilStored(std::chrono::seconds(5)) ? code : 1;
    }

private:
    static std::filesystem::path lastSeenOf(const std::filesystem::path& file)
    {
        return service::stateFolder() / ("last-seen-" + file.filename().native());
    }

    service::Manner mannerOf(const service::Studio& studio)
    {
        m_manner.zone = studio.timeZone();
        m_manner.locale = studio.language.empty() ? QLocale() : QLocale(service::text(studio.language));
        m_manner.fahrenheit = studio.fahrenheit;
        return m_manner;
    }

    std::vector<store::RuleText> rulesFor(const std::vector<bench::Event>& events)
    {
        auto revisions = service::revisionsOf(events, m_bench.book(), m_storedRules);
        for (const store::RuleText& revision : revisions) {
            m_storedRules.insert(revision.hash);
        }
        return revisions;
    }

    void connectStore()
    {
        QObject::connect(&m_keeping, &Keeping::stored, &m_bench, &service::BenchService::stored);
        QObject::connect(&m_keeping, &Keeping::troubled, &m_window, [this](const Fault& fault) {
            m_banners.set(QStringLiteral("store"), troubleWords(fault));
            m_window.setBanners(m_banners.all());
        });
        QObject::connect(&m_keeping, &Keeping::worksAgain, &m_window, [this] {
            m_banners.clear(QStringLiteral("store"));
            m_window.setBanners(m_banners.all());
        });
        QObject::connect(&m_heart, &service::Heartbeat::sleptThrough, &m_spaces, &SpacesLink::nobodyLooked);
        QObject::connect(&m_upkeep, &Upkeep::damaged, &m_window, [this](int findings) {
            m_banners.set(QStringLiteral("damage"), damageWords(findings));
            m_window.setBanners(m_banners.all());
        });
        QObject::connect(&m_heart, &service::Heartbeat::clockBehind, &m_window, [this](Instant last, Instant now) {
            m_banners.set(QStringLiteral("behind"), clockBehindWords(last, now, m_manner), QObject::tr("Understood"));
            m_window.setBanners(m_banners.all());
        });
        QObject::connect(&m_heart, &service::Heartbeat::clockStepped, &m_window, [this](Span amount) {
            m_banners.set(QStringLiteral("clock"), clockStepWords(amount), QObject::tr("Understood"));
            m_window.setBanners(m_banners.all());
        });
        QObject::connect(&m_window, &MainWindow::bannerActed, &m_window, [this](const QString& key) {
            m_banners.clear(key);
            m_window.setBanners(m_banners.all());
        });
    }

    void connectSound()
    {
        const auto setLevel = [this](int percent) { m_alarm.setLevel({-6.0 - (100 - percent) / 5.0}); };
        setLevel(m_settings.value(QStringLiteral("sound/level"), 70).toInt());
        QObject::connect(&m_filed, &Filed::levelChosen, &m_alarm, setLevel);
        m_player.useDevice(m_settings.value(QStringLiteral("sound/device")).toString());
        if (const int key = m_settings.value(QStringLiteral("pedal/key")).toInt()) {
            m_window.bench().pedal().setKey(key);
        }
        m_player.listDevices();
        QObject::connect(&m_alarm, &Alarm::soundWorks, &m_link, [this](bool works) {
            m_link.setSoundWorks(works);
            if (works) {
                m_banners.clear(QStringLiteral("sound"));
            } else {
                m_banners.set(QStringLiteral("sound"), QObject::tr("No sound on this device: watch the screen."));
            }
            m_window.setBanners(m_banners.all());
        });
        QObject::connect(&m_window.bench().pedal(), &Pedal::shortPress, &m_alarm,
                         [this] { m_alarm.soundPedal(false); });
        QObject::connect(&m_window.bench().pedal(), &Pedal::longPress, &m_alarm, [this] { m_alarm.soundPedal(true); });
    }

    int endAfterPicture()
    {
        if (m_options.picture.isEmpty()) {
            return 0;
        }
        m_window.show();
        QCoreApplication::processEvents();
        if (!m_window.grab().save(m_options.picture)) {
            std::fprintf(stderr, "The picture could not be written to %s.\n", qPrintable(m_options.picture));
            return 1;
        }
        return 0;
    }

    ProgramOptions m_options;
    service::SystemClock m_clock;
    std::unique_ptr<service::RuleShelf> m_shelf;
    std::set<std::string> m_storedRules;
    service::Manner m_manner;
    Banners m_banners;
    Keeping m_keeping;
    service::BenchService m_bench;
    service::AlertService m_alerts;
    service::Heartbeat m_heart;
    parts::TapGate m_gate;
    MainWindow m_window;
    sound::Player m_player;
    desktop::Notifier m_notifier;
    desktop::KeepAwake m_awake;
    Alarm m_alarm;
    BenchLink m_link;
    QSettings m_settings;
    Upkeep m_upkeep;
    SpacesLink m_spaces;
    Filed m_filed;
};

} // namespace

int runSession(QApplication& program, const ProgramOptions& options)
{
    Result<Opened> opened = openFor(options);
    if (!opened) {
        const QString words = openingWords(opened.fault());
        std::fprintf(stderr, "%s\n", qPrintable(words));
        return opened.fault().kind == FaultKind::Locked ? 0 : 2;
    }
    Session session(opened.takeValue(), options);
    return session.run(program);
}

} // namespace mend::app
