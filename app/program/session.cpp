#include "app/program/session.h"

#include "app/desktop/sleepwatch.h"
#include "app/program/alarm.h"
#include "app/program/benchlink.h"
#include "app/program/curb.h"
#include "app/program/endsignal.h"
#include "app/program/filed.h"
#include "app/program/firstpaint.h"
#include "app/program/frontdoor.h"
#include "app/program/notices.h"
#include "app/program/opening.h"
#include "app/program/piecelink.h"
#include "app/program/planlink.h"
#include "app/program/refusedwindow.h"
#include "app/program/saveelsewhere.h"
#include "app/program/sayacts.h"
#include "app/program/textboard.h"
#include "app/program/tongue.h"
#include "app/program/windowwishes.h"
#include "app/shell/ownerslink.h"
#include "core/service/clockwatch.h"
#include "core/service/datafolder.h"
#include "core/service/demobench.h"
#include "core/service/planservice.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QScreen>
#include <QTimer>
#include <cstdio>

namespace mend::app {

namespace {

std::optional<Instant> lastTold(const std::vector<bench::Event>& events)
{
    const auto last = std::ranges::max_element(events, {}, &bench::Event::recorded);
    return last == events.end() ? std::nullopt : std::optional(last->recorded);
}

/// Everything that lives as long as one bench is open, in the order in which it is built.
class Session {
public:
    Session(Opened opened, const ProgramOptions& options, bool isOwn, const Surroundings& surroundings,
            const QLocale& locale)
        : m_options(options), m_isOwn(isOwn), m_file(opened.file), m_clock(surroundings.clock),
          m_clockWatch(surroundings.watch), m_shelf(std::move(opened.shelf)),
          m_storedRules(opened.bench.storedRevisions),
          m_keeping(std::move(opened.store), [this](const auto& events) { return rulesFor(events); }),
          m_bench(m_clock, opened.bench.book, std::move(opened.bench.record),
                  [this](const auto& events) { m_keeping.keep(events); }),
          m_alerts(m_bench), m_plans(m_clock, m_bench, opened.bench.studio),
          m_heart(m_clock, m_bench, m_alerts, service::LastSeen(lastSeenOf(opened.file))), m_window(m_gate),
          m_player(sound::Player::Setup{}), m_notifier(desktop::sessionBus()),
          m_awake(desktop::sessionBus(), desktop::systemBus()),
          m_alarm({m_alerts, m_bench, m_player, m_notifier, m_awake}),
          m_link({m_bench, m_alerts, m_heart, m_clock}, m_window, mannerOf(opened.bench.studio, locale)),
          m_planLink({m_bench, m_plans, m_clock}, m_window, m_gate, m_manner),
          m_settings(QString::fromStdString((service::configFolder() / "window.ini").native()), QSettings::IniFormat),
          m_upkeep(m_keeping, m_clock, {opened.file, m_keeping.isWritable(), lastTold(m_bench.events())}),
          m_frontDoor(opened.file), m_doorLink({makeDoor(), m_bench, m_clock}, m_window, m_gate, m_manner),
          m_pieceLink({*m_door, m_bench, m_keeping, m_clock, m_settings}, m_window, m_gate, m_manner,
                      opened.bench.studio),
          m_spaces({m_bench, m_alerts, m_clock}, m_window, m_gate, m_manner),
          m_filed({m_bench, *m_shelf, m_keeping, m_upkeep, m_player, m_window, m_link, m_spaces, m_doorLink, m_clock},
                  opened.bench.studio, m_manner, m_settings),
          m_notices({m_keeping, m_upkeep, m_heart}, m_window, m_manner)
    {
        if (!m_keeping.isWritable()) {
            m_gate.curb(noWritingWords(), [](const QString& key) { return onlyLooks(key); });
        }
        m_window.setLookSettings(lookOf(options, m_settings));
        m_window.resize(sizeOf(options));
        m_window.setWindowTitle(QStringLiteral("Mendbench"));
        connectStore();
        connectDoor();
        connectPieces();
        connectSound();
        if (surroundings.playerMade) {
            surroundings.playerMade(m_player);
        }
        if (opened.isNew) {
            std::error_code neverRan;
            std::filesystem::remove(lastSeenOf(opened.file), neverRan);
        }
    }

    SessionEnd run(QApplication& program)
    {
        m_heart.begin();
        m_link.show();
        if (!m_options.said.isEmpty()) {
            m_notices.set(QStringLiteral("said"), m_options.said, QObject::tr("Understood"));
        }
        if (m_options.atLanguage) {
            m_window.showSpace(QStringLiteral("settings"));
            m_spaces.settings().openSettings(SettingsPage::Language);
        }
        if (m_options.print) {
            std::fputs(boardText(m_bench, m_alerts, m_manner).toUtf8().constData(), stdout);
        }
        if (!m_options.picture.isEmpty() || m_options.print) {
            return {endAfterPicture(), {}};
        }
        const auto first = m_options.measureStart ? std::make_unique<FirstPaint>() : nullptr;
        m_window.show();
        m_window.bench().setFocus();
        QTimer::singleShot(2000, &m_upkeep, &Upkeep::begin); // checks never delay the first paint
        QTimer::singleShot(200, &m_plans, &service::PlanService::begin);
        const auto told = m_options.sayActs ? std::make_unique<SayActs>(m_window) : nullptr;
        const EndSignal asked;
        QObject::connect(&asked, &EndSignal::came, &m_window, &QWidget::close);
        return putAway(program.exec());
    }

    desktop::KnockAnswer answer(const desktop::Knock& knock) { return m_frontDoor.answer(knock); }

private:
    static std::filesystem::path lastSeenOf(const std::filesystem::path& file)
    {
        return service::stateFolder() / ("last-seen-" + file.filename().native());
    }

    service::Manner mannerOf(const service::Studio& studio, const QLocale& locale)
    {
        m_manner.zone = studio.timeZone();
        m_manner.locale = locale;
        m_manner.fahrenheit = studio.fahrenheit;
        m_manner.inches = studio.inches;
        return m_manner;
    }

    service::Door& makeDoor()
    {
        m_door = std::make_unique<service::Door>(m_clock, m_bench, m_keeping.thread(),
                                                 [this](const auto& events) { m_keeping.keepRulesOf(events); });
        return *m_door;
    }

    std::vector<store::RuleText> rulesFor(const std::vector<bench::Event>& events)
    {
        auto revisions = service::revisionsOf(events, m_bench.book(), m_storedRules);
        for (const store::RuleText& revision : revisions) {
            m_storedRules.insert(revision.hash);
        }
        return revisions;
    }

    /// The window is gone; what was told is seen into the file and into a backup.
    SessionEnd putAway(int code)
    {
        m_window.hide();
        m_plans.end();
        if (!m_next) {
            m_frontDoor.leave();
        }
        const bool stored = m_keeping.thread().waitUntilStored(std::chrono::seconds(5));
        if (!m_next && stored && !m_options.measureStart) {
            m_upkeep.finish(std::chrono::minutes(1));
        }
        return {stored ? code : 1, m_next};
    }

    /// Goes over to another file, but never while something told would be lost by it.
    void goOver(Next next)
    {
        if (!m_keeping.thread().waitUntilStored(std::chrono::seconds(2))) {
            m_notices.set(QStringLiteral("waits"),
                          QObject::tr("Not now: something you told is not stored yet. Save this bench first."),
                          QObject::tr("Understood"));
            return;
        }
        m_next = std::move(next);
        m_window.close();
    }

    void connectStore()
    {
        QObject::connect(&m_keeping, &Keeping::stored, &m_bench, &service::BenchService::stored);
        QObject::connect(&m_clockWatch, &service::ClockWatch::clockSet, &m_heart, &service::Heartbeat::lookNow);
        QObject::connect(&m_sleepWatch, &desktop::SleepWatch::woke, &m_heart, &service::Heartbeat::lookNow);
        QObject::connect(&m_heart, &service::Heartbeat::sleptThrough, &m_spaces, &SpacesLink::nobodyLooked);
        QObject::connect(&m_heart, &service::Heartbeat::ticked, &m_upkeep, &Upkeep::look);
        QObject::connect(&m_heart, &service::Heartbeat::ticked, &m_planLink, &PlanLink::look);
        QObject::connect(&m_spaces.settings(), &SettingsSpace::studioTold, &m_planLink, &PlanLink::useStudio);
        QObject::connect(&m_filed, &Filed::goingBackWanted, &m_window, [this](const std::filesystem::path& backup) {
            goOver({m_file, backup, false, {}});
        });
        QObject::connect(&m_filed, &Filed::languageChosen, &m_window, [this] {
            goOver({m_file, {}, false, {}, true}); // every word is written anew
        });
        QObject::connect(&m_notices, &Notices::backupsWanted, &m_window, [this] {
            m_window.showSpace(QStringLiteral("settings"));
            m_spaces.settings().openSettings(SettingsPage::Backup);
        });
        QObject::connect(&m_notices, &Notices::saveElsewhereWanted, &m_window, [this] { askWhere(); });
        QObject::connect(&m_keeping, &Keeping::moved, &m_window, [this] {
            if (m_isOwn) {
                rememberOwnFile(m_movingTo);
            }
            goOver({m_movingTo,
                    {},
                    false,
                    QObject::tr("The bench goes on in %1.").arg(QString::fromStdString(m_movingTo.native()))});
        });
        QObject::connect(&m_keeping, &Keeping::moveFailed, &m_window,
                         [this](const Fault& fault) { m_saveElsewhere->showRefused(moveFailedWords(fault)); });
    }

    void askWhere()
    {
        const QString key = QStringLiteral("saveas");
        if (!m_saveElsewhere) { // seldom wanted: not made before
            m_saveElsewhere = new SaveElsewhere(m_gate);
            m_window.addSpace(key, {}, m_saveElsewhere);
            QObject::connect(m_saveElsewhere, &SaveElsewhere::left, &m_window,
                             [this] { m_window.showSpace(QStringLiteral("bench")); });
            QObject::connect(m_saveElsewhere, &SaveElsewhere::placeTold, &m_window, [this](const QString& path) {
                m_movingTo = path.toStdString();
                m_keeping.moveTo(m_movingTo);
            });
            QObject::connect(&m_window, &MainWindow::lookChanged, m_saveElsewhere,
                             [this] { m_saveElsewhere->setLook(m_window.look()); });
            m_saveElsewhere->setLook(m_window.look());
        }
        m_saveElsewhere->ask(SaveElsewhere::freeName(service::benchFolder(), m_file));
        m_window.showSpace(key);
    }

    void connectDoor()
    {
        m_frontDoor.setBusy([this] {
            return std::ranges::any_of(m_bench.board().cards, [](const bench::Card& card) {
                return card.counts == bench::CountKind::StartBy || card.counts == bench::CountKind::Counted;
            });
        });
        QObject::connect(&m_frontDoor, &FrontDoor::raiseWanted, &m_window,
                         [this](const QString& token) { bringToFront(m_window, token); });
        QObject::connect(&m_frontDoor, &FrontDoor::keptFile, &m_window, [this](const QString& wanted) {
            m_notices.set(
                QStringLiteral("knock"),
                QObject::tr("%1 was asked for. Something here is running out, so this bench stays open.").arg(wanted),
                QObject::tr("Understood"));
        });
        QObject::connect(
            &m_frontDoor, &FrontDoor::fileWanted, &m_window,
            [this](const QString& file) {
                goOver({std::filesystem::path(file.toStdString()), {}, false, {}});
            },
            Qt::QueuedConnection); // its answer goes first
    }

    void connectPieces()
    {
        QObject::connect(&m_doorLink, &DoorLink::pieceWanted, &m_pieceLink, &PieceLink::openPiece);
        QObject::connect(&m_doorLink.find(), &FindSpace::handOverWanted, &m_pieceLink, &PieceLink::handOver);
        m_doorLink.find().offerHandOver(true);
        QObject::connect(&m_planLink, &PlanLink::pieceWanted, &m_pieceLink, &PieceLink::openPiece);
        m_pieceLink.connectPapers(m_spaces);
    }

    void connectSound()
    {
        const auto setLevel = [this](int percent) { m_alarm.setLevel({-6.0 - (100 - percent) / 5.0}); };
        setLevel(m_settings.value(QStringLiteral("sound/level"), 70).toInt());
        QObject::connect(&m_filed, &Filed::levelChosen, &m_alarm, setLevel);
        m_alerts.setSoundOff(m_settings.value(QStringLiteral("sound/off")).toBool());
        QObject::connect(&m_filed, &Filed::soundOffChosen, &m_heart, [this](bool off) {
            m_alerts.setSoundOff(off);
            m_heart.lookNow();
        });
        m_player.useDevice(m_settings.value(QStringLiteral("sound/device")).toString());
        if (const int key = m_settings.value(QStringLiteral("pedal/key")).toInt(); key && m_keeping.isWritable()) {
            m_window.bench().pedal().setKey(key);
        }
        m_player.listDevices();
        QObject::connect(&m_alarm, &Alarm::soundWorks, &m_link, [this](bool works) {
            m_link.setSoundWorks(works);
            if (works) {
                m_notices.clear(QStringLiteral("sound"));
            } else {
                m_notices.set(QStringLiteral("sound"), QObject::tr("No sound on this device: watch the screen."));
            }
        });
        QObject::connect(&m_window.bench().pedal(), &Pedal::shortPress, &m_alarm,
                         [this] { m_alarm.soundPedal(false); });
        QObject::connect(&m_window.bench().pedal(), &Pedal::longPress, &m_alarm, [this] { m_alarm.soundPedal(true); });
    }

    /// A picture shows what a person would see a moment later.
    void awaitPlan()
    {
        constexpr int longest = 3000;
        QElapsedTimer waited;
        waited.start();
        m_plans.begin();
        do {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 50);
        } while (m_plans.isPlanning() && waited.elapsed() < longest);
    }

    int endAfterPicture()
    {
        if (m_options.picture.isEmpty()) {
            return 0;
        }
        m_window.show();
        awaitPlan();
        if (!m_window.grab().save(m_options.picture)) {
            std::fprintf(stderr, "The picture could not be written to %s.\n", qPrintable(m_options.picture));
            return 1;
        }
        return 0;
    }

    ProgramOptions m_options;
    bool m_isOwn; ///< the person's own file, which a plain start opens
    std::filesystem::path m_file;
    std::filesystem::path m_movingTo;
    std::optional<Next> m_next;
    const Clock& m_clock;
    service::ClockWatch& m_clockWatch;
    std::unique_ptr<service::RuleShelf> m_shelf;
    std::set<std::string> m_storedRules;
    service::Manner m_manner;
    std::unique_ptr<service::Door> m_door; ///< outlives the file's thread, which answers to it
    Keeping m_keeping;
    service::BenchService m_bench;
    service::AlertService m_alerts;
    service::PlanService m_plans;
    service::Heartbeat m_heart;
    desktop::SleepWatch m_sleepWatch{desktop::systemBus()};
    parts::TapGate m_gate;
    MainWindow m_window;
    sound::Player m_player;
    desktop::Notifier m_notifier;
    desktop::KeepAwake m_awake;
    Alarm m_alarm;
    BenchLink m_link;
    PlanLink m_planLink;
    QSettings m_settings;
    Upkeep m_upkeep;
    FrontDoor m_frontDoor;
    DoorLink m_doorLink;
    PieceLink m_pieceLink;
    SpacesLink m_spaces;
    Filed m_filed;
    OwnersLink m_owners{*m_door, m_spaces.settings()};
    Notices m_notices;
    SaveElsewhere* m_saveElsewhere = nullptr; ///< the window's
};

} // namespace

namespace {

/// The bench was not opened: a window says so and may have a way on.
SessionEnd refuse(const Fault& fault, const std::filesystem::path& file, const ProgramOptions& options,
                  desktop::OneProgram& one, Instant now, const QLocale& locale)
{
    std::fprintf(stderr, "%s\n", qPrintable(openingWords(fault)));
    if (!options.hasWindow()) {
        return {fault.kind == FaultKind::Locked ? 0 : 2, {}};
    }
    parts::TapGate gate;
    const service::Manner manner{QTimeZone::systemTimeZone(), locale, false};
    RefusedWindow window(gate, file, fault, now, manner);
    const QSettings settings(QString::fromStdString((service::configFolder() / "window.ini").native()),
                             QSettings::IniFormat);
    const LookSettings look = lookOf(options, settings);
    window.resize(sizeOf(options));
    window.show();
    window.setLook(parts::lookOf(look.theme, parts::Measure::ofScreen(window.screen(), look.scale)));
    one.setDoor([&window](const desktop::Knock& knock) {
        bringToFront(window, knock.activationToken);
        return desktop::KnockAnswer::Raised;
    });
    const auto told = options.sayActs ? std::make_unique<SayActs>(window) : nullptr;
    QApplication::exec();
    return {2, window.next()};
}

/// What has to be done before the next bench is opened.
ProgramOptions optionsFor(const Next& next, ProgramOptions options, Instant now)
{
    options.file = QString::fromStdString(next.file.native());
    options.demo = options.fresh = false;
    options.takeOver = next.takeOver;
    options.atLanguage = next.atLanguage;
    if (next.atLanguage) {
        options.language.clear(); // what is chosen in Settings counts from then on
    }
    options.said = next.said;
    if (next.backup) {
        const auto restored = store::Backups(Upkeep::folderFor(next.file)).restore(*next.backup, next.file, now);
        options.said = restored ? restoredWords(restored.value()) : notRestoredWords(restored.fault());
    }
    return options;
}

desktop::Knock knockOf(const ProgramOptions& options)
{
    desktop::Knock knock;
    if (options.demo) {
        knock.file = QString::fromStdString(service::demoFile().native());
    } else if (!options.file.isEmpty()) {
        knock.file = QString::fromStdString(store::trueName(options.file.toStdString()).native());
    }
    knock.reason = options.because;
    knock.activationToken = qEnvironmentVariable("XDG_ACTIVATION_TOKEN");
    return knock;
}

} // namespace

int runSession(QApplication& program, ProgramOptions options, const Surroundings& surroundings)
{
    const QString folder = desktop::OneProgram::runtimeFolder();
    desktop::OneProgram one(folder);
    if (options.hasWindow()) {
        if (const auto second = enter(one, folder, knockOf(options))) {
            std::fprintf(second->code == 0 ? stdout : stderr, "%s\n", qPrintable(second->words));
            return second->code;
        }
    }
    const bool isOwn = options.file.isEmpty() && !options.demo;
    Tongue tongue;
    for (;;) {
        std::filesystem::path file;
        Result<Opened> opened = openFor(options, surroundings.clock.now(), &file);
        SessionEnd end;
        const std::string told = opened ? opened.value().bench.studio.language : std::string();
        if (!tongue.speak(options.language.isEmpty() ? service::text(told) : options.language)) {
            std::fprintf(stderr, "There are no words in %s: the program speaks English.\n",
                         qPrintable(options.language));
        }
        if (opened) {
            Session session(opened.takeValue(), options, isOwn, surroundings, tongue.locale());
            one.setDoor([&session](const desktop::Knock& knock) { return session.answer(knock); });
            end = session.run(program);
        } else {
            end = refuse(opened.fault(), file, options, one, surroundings.clock.now().utc, tongue.locale());
        }
        one.setDoor([](const desktop::Knock&) { return desktop::KnockAnswer::Leaving; });
        if (!end.next) {
            return end.code;
        }
        options = optionsFor(*end.next, options, surroundings.clock.now().utc);
    }
}

} // namespace mend::app
