#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/program/banners.h"
#include "app/program/keeping.h"
#include "app/program/upkeep.h"
#include "app/shell/mainwindow.h"
#include "core/service/heartbeat.h"

namespace mend::app {

/// Says across the window what is wrong with the file or the clock and what can be done about it, until it
/// is over.
class Notices : public QObject {
    Q_OBJECT

public:
    struct Tellers {
        Keeping& keeping;
        Upkeep& upkeep;
        service::Heartbeat& heart;
    };
    Notices(Tellers tellers, MainWindow& window, const service::Manner& manner, QObject* parent = nullptr);

    void set(const QString& key, const QString& words, const QString& act = {});
    void clear(const QString& key);

Q_SIGNALS:
    /// The file has to go elsewhere.
    void saveElsewhereWanted();
    /// The file is damaged: a backup has to be chosen.
    void backupsWanted();

private:
    void connectFile(Tellers& tellers);
    void connectClock(service::Heartbeat& heart);
    void acted(const QString& key);

    MainWindow& m_window;
    const service::Manner& m_manner;
    Banners m_banners;
};

} // namespace mend::app
