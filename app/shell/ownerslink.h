#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/parts/aside.h"
#include "app/settings/settingsspace.h"
#include "core/service/door.h"
#include "core/service/peoplelist.h"

#include <memory>

namespace mend::app {

/// Owners out of a list: the file that was chosen in Settings is read aside, everybody in it is shown beside the
/// people who are here, and those a person says are kept, all or none.
class OwnersLink : public QObject {
    Q_OBJECT

public:
    OwnersLink(service::Door& door, SettingsSpace& space, QObject* parent = nullptr);

private:
    void read(const QString& file);
    /// What is known of a list that was chosen just now.
    static OwnerListNow listOf(const QString& file);
    void show(const QString& file, const exchange::PeopleList& list, std::vector<service::Newcomer> newcomers,
              const std::vector<record::Customer>& known);
    void refuse(const QString& file, const QString& why);
    void keep(const std::vector<int>& lines);
    void leave();

    service::Door& m_door;
    SettingsSpace& m_space;
    OwnerListNow m_now;
    std::vector<service::Newcomer> m_newcomers; ///< by line of the list that is shown
    int m_newest = 0;                           ///< of the files that were chosen; what an earlier one gives is left
    std::unique_ptr<parts::Aside> m_aside;      ///< seldom wanted: not made before
};

} // namespace mend::app
