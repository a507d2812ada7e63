#include "app/program/upkeep.h"

#include <QElapsedTimer>
#include <QEventLoop>
#include <QPointer>
#include <QTimer>

namespace mend::app {

Upkeep::Upkeep(Keeping& keeping, const Clock& clock, File file, QObject* parent)
    : QObject(parent), m_keeping(keeping), m_clock(clock), m_file(std::move(file)),
      m_identity(store::identityOf(m_file.path)), m_folder(folderFor(m_file.path)), m_backups(m_folder)
{
    connect(&keeping, &Keeping::written, this, &Upkeep::changed);
}

Upkeep::~Upkeep() = default; // waits for what is being looked through

std::filesystem::path Upkeep::folderFor(const std::filesystem::path& file)
{
    return store::trueName(file).parent_path() / "backups" / file.stem();
}

/// By the days in which backups are kept, which are UTC.
bool Upkeep::hasBackupOfToday() const
{
    const auto held = m_backups.all();
    const auto day = [](Instant at) { return std::chrono::floor<std::chrono::days>(at); };
    return !held.empty() && day(held.front().made) == day(m_clock.now().utc);
}

/// Brings an answer from the store's threads to the window's. What runs there may outlive this, never the keeping.
std::function<void(std::function<void(Upkeep&)>)> Upkeep::teller()
{
    return [keeping = &m_keeping, self = QPointer<Upkeep>(this)](const std::function<void(Upkeep&)>& answer) {
        QMetaObject::invokeMethod(
            keeping,
            [self, answer] {
                if (self) {
                    answer(*self);
                }
            },
            Qt::QueuedConnection);
    };
}

void Upkeep::begin()
{
    m_begun = true;
    if (m_file.writable) {
        m_backups.sweep();
    }
    m_keeping.thread().start(std::make_unique<store::RecordCheck>([tell = teller()](const store::CheckReport& report) {
        const int findings = static_cast<int>(report.findings.size());
        tell([findings](Upkeep& upkeep) { upkeep.checked(findings); });
    }));
}

void Upkeep::checked(int findings)
{
    if (findings > 0) {
        m_damaged = true;
        Q_EMIT damaged(findings);
        return;
    }
    // After a power cut nobody came to make the last one.
    const auto held = m_backups.all();
    const bool isBehind = m_file.lastTold && (held.empty() || held.front().made < *m_file.lastTold);
    if (m_file.writable && !m_running && (isBehind || (m_changed && !hasBackupOfToday()))) {
        backUpNow();
    }
}

void Upkeep::changed()
{
    m_changed = true;
    if (m_begun && m_file.writable && !m_running && !m_damaged && !hasBackupOfToday()) {
        backUpNow();
    }
}

void Upkeep::look()
{
    const bool gone = m_file.writable && store::identityOf(m_file.path) != m_identity;
    if (gone != std::exchange(m_gone, gone)) {
        gone ? Q_EMIT fileGone() : Q_EMIT fileBack();
    }
}

void Upkeep::backUpNow()
{
    m_running = true;
    m_changed = false;
    const auto done = [tell = teller()](const Result<store::Backup>& made, const store::CheckReport& report) {
        const std::optional<Fault> fault = made.isOk() ? std::nullopt : std::optional(made.fault());
        const int findings = static_cast<int>(report.findings.size());
        tell([fault, findings](Upkeep& upkeep) { upkeep.copied(fault, findings); });
    };
    m_keeping.thread().start(std::make_unique<store::BackupJob>(m_backups, m_clock.now().utc, done));
}

void Upkeep::copied(const std::optional<Fault>& fault, int findings)
{
    m_running = false;
    m_changed = m_changed || fault;
    if (findings > 0) {
        m_damaged = true;
        Q_EMIT damaged(findings);
    }
    if (fault) {
        Q_EMIT backupFailed(*fault);
    } else {
        Q_EMIT backedUp();
    }
}

void Upkeep::finish(std::chrono::milliseconds longest)
{
    QElapsedTimer waited;
    waited.start();
    bool failed = false;
    QEventLoop loop;
    connect(this, &Upkeep::backedUp, &loop, &QEventLoop::quit);
    connect(this, &Upkeep::backupFailed, &loop, [&] {
        failed = true;
        loop.quit();
    });
    QTimer::singleShot(longest, &loop, &QEventLoop::quit);
    while (!failed && waited.elapsed() < longest.count()) {
        if (!m_running) {
            if (!m_changed || !m_file.writable || m_damaged || m_gone) {
                return;
            }
            backUpNow();
        }
        loop.exec();
    }
}

void Upkeep::lookThrough(const std::filesystem::path& backup)
{
    m_looking = std::async(std::launch::async, [this, backup] {
        BackupLooked seen{backup, {}, {}};
        if (const auto contents = m_backups.look(backup)) {
            seen.contents = contents.value();
        } else {
            seen.fault = contents.fault();
        }
        QMetaObject::invokeMethod(
            this, [this, seen] { Q_EMIT looked(seen); }, Qt::QueuedConnection);
    });
}

} // namespace mend::app
