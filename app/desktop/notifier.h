#pragma once

#include "app/desktop/bus.h"

#include <QMap>
#include <QObject>
#include <QString>
#include <optional>

class QDBusPendingCallWatcher;

namespace mend::desktop {

/// What the desktop is asked to show, on a screen that anyone may see.
struct Notice {
    QString key;         ///< one alert: a later notice of the same key takes the place of the earlier
    QString act;         ///< what is due, in the mender's words
    QString pieceNumber; ///< digits and check character; anything else is left out, so no owner's name gets there
    QString detail;      ///< such as the time to start by
};

/// Shows an unanswered alert on the desktop as well: always beside the alert in the window
/// and its sound, never instead. Desktop Notifications Specification 1.2; urgency critical, which does not
/// go away by itself. Never waits for the desktop.
class Notifier : public QObject {
    Q_OBJECT
public:
    explicit Notifier(const QDBusConnection& bus, QObject* parent = nullptr);

    /// Unknown until the desktop has answered once.
    Offer offer() const { return m_offer; }
    void show(const Notice& notice);
    /// Takes it off the screen, also if the desktop is still putting it there.
    void withdraw(const QString& key);

Q_SIGNALS:
    void offerChanged(mend::desktop::Offer offer);
    /// A person chose the notice of this key.
    void chosen(const QString& key);

private Q_SLOTS:
    void noticeClosed(uint id, uint reason);
    void actionInvoked(uint id, const QString& action);

private:
    struct Shown {
        uint id = 0; ///< 0: the desktop has not told it yet
        bool isAsking = false;
        bool isWithdrawn = false;
        std::optional<Notice> next; ///< came while the desktop was being asked
    };

    void ask(const Notice& notice);
    void answered(const QString& key, QDBusPendingCallWatcher* call);
    void close(uint id);
    void takeOffer(Offer offer);

    QDBusConnection m_bus;
    Offer m_offer = Offer::Unknown;
    QMap<QString, Shown> m_shown;
};

} // namespace mend::desktop
