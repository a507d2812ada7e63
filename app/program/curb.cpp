#include "app/program/curb.h"

#include <QStringList>
#include <algorithm>

namespace mend::app {

bool onlyLooks(const QString& key)
{
    // What leads on, what only this machine remembers, and what has to be possible just then.
    static const QStringList whole{
        QStringLiteral("rail"),         QStringLiteral("panel/close"),   QStringLiteral("page/back"),
        QStringLiteral("sound"),        QStringLiteral("person"),        QStringLiteral("person/hide"),
        QStringLiteral("more/why"),     QStringLiteral("more/piece"),    QStringLiteral("person/wipe"),
        QStringLiteral("log/earlier"),  QStringLiteral("log/later"),     QStringLiteral("log/leave"),
        QStringLiteral("log/wall"),     QStringLiteral("figure/leave"),  QStringLiteral("away/bench"),
        QStringLiteral("intake/bench"), QStringLiteral("backup/now"),    QStringLiteral("backup/leave"),
        QStringLiteral("plan/today"),   QStringLiteral("plan/week"),     QStringLiteral("plan/inorder"),
        QStringLiteral("plan/byplace"), QStringLiteral("plan/byperson"), QStringLiteral("plan/take"),
        QStringLiteral("plan/refuse")};
    static const QStringList begins{QStringLiteral("rail/"),         QStringLiteral("banner/"),
                                    QStringLiteral("step/"),         QStringLiteral("strip/"),
                                    QStringLiteral("sound/"),        QStringLiteral("settings/"),
                                    QStringLiteral("saveas/"),       QStringLiteral("look/"),
                                    QStringLiteral("screen/"),       QStringLiteral("hands/"),
                                    QStringLiteral("log/fact/"),     QStringLiteral("rules/"),
                                    QStringLiteral("rule/"),         QStringLiteral("procedure/stage/"),
                                    QStringLiteral("find/"),         QStringLiteral("backup/bench-"),
                                    QStringLiteral("letter/"),       QStringLiteral("home/see/"),
                                    QStringLiteral("handover/see/"), QStringLiteral("plan/do/")};
    static const QStringList writes{QStringLiteral("rules/keep"), QStringLiteral("rules/adopt")};
    if (writes.contains(key)) {
        return false;
    }
    const bool ofAPiece = key.startsWith(QLatin1String("piece/")) &&
                          (key.endsWith(QLatin1String("/why")) || key.endsWith(QLatin1String("/more")));
    return ofAPiece || whole.contains(key) ||
           std::ranges::any_of(begins, [&](const QString& begin) { return key.startsWith(begin); });
}

} // namespace mend::app
