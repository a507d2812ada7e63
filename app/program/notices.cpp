#include "app/program/notices.h"

#include <QTimer>

namespace mend::app {

Notices::Notices(Tellers tellers, MainWindow& window, const service::Manner& manner, QObject* parent)
    : QObject(parent), m_window(window), m_manner(manner)
{
    connectFile(tellers);
    connectClock(tellers.heart);
    connect(&m_window, &MainWindow::bannerActed, this, &Notices::acted);
    if (const QString words = standingWords(tellers.keeping.standing()); !words.isEmpty()) {
        set(QStringLiteral("standing-file"), words, tr("Save it elsewhere"));
    }
}

void Notices::set(const QString& key, const QString& words, const QString& act)
{
    m_banners.set(key, words, act);
    m_window.setBanners(m_banners.all());
}

void Notices::clear(const QString& key)
{
    m_banners.clear(key);
    m_window.setBanners(m_banners.all());
}

void Notices::connectFile(Tellers& tellers)
{
    connect(&tellers.keeping, &Keeping::troubled, this, [this](const Fault& fault) {
        const bool canGo = fault.kind != FaultKind::Busy && fault.kind != FaultKind::Locked;
        set(QStringLiteral("store"), troubleWords(fault), canGo ? tr("Save it elsewhere") : QString());
    });
    connect(&tellers.keeping, &Keeping::worksAgain, this, [this] { clear(QStringLiteral("store")); });
    connect(&tellers.keeping, &Keeping::refused, this,
            [this](const Fault&) { set(QStringLiteral("refused"), refusedWords(), tr("Understood")); });
    connect(&tellers.upkeep, &Upkeep::fileGone, this, [this] {
        set(QStringLiteral("store"), troubleWords({FaultKind::NotFound, {}}), tr("Save it elsewhere"));
    });
    connect(&tellers.upkeep, &Upkeep::fileBack, this, [this] { clear(QStringLiteral("store")); });
    connect(&tellers.upkeep, &Upkeep::damaged, this,
            [this](int findings) { set(QStringLiteral("damage"), damageWords(findings), tr("See the backups")); });
    connect(&tellers.upkeep, &Upkeep::backupFailed, this,
            [this](const Fault& fault) { set(QStringLiteral("backup"), backupFailedWords(fault), tr("Understood")); });
    connect(&tellers.upkeep, &Upkeep::backedUp, this, [this] { clear(QStringLiteral("backup")); });
}

void Notices::connectClock(service::Heartbeat& heart)
{
    connect(&heart, &service::Heartbeat::clockBehind, this, [this](Instant last, Instant now) {
        set(QStringLiteral("behind"), clockBehindWords(last, now, m_manner), tr("Understood"));
    });
    connect(&heart, &service::Heartbeat::clockStepped, this,
            [this](Span amount) { set(QStringLiteral("clock"), clockStepWords(amount), tr("Understood")); });
}

/// What can be done about it goes on standing until it is done.
void Notices::acted(const QString& key)
{
    if (key == QLatin1String("store") || key == QLatin1String("standing-file")) {
        Q_EMIT saveElsewhereWanted();
    } else if (key == QLatin1String("damage")) {
        Q_EMIT backupsWanted();
    } else {
        clear(key);
    }
}

} // namespace mend::app
