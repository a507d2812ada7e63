#include "app/shell/ownerslink.h"

#include "core/service/transfer.h"
#include "core/service/wording.h"

#include <QFileInfo>

#include <algorithm>

namespace mend::app {

using service::text;

namespace {

QString waysTo(const record::Customer& person)
{
    QStringList contacts;
    for (const record::ContactWay& way : record::contactsOf(person)) {
        contacts += text(way.text).simplified();
    }
    return contacts.join(QStringLiteral(" · "));
}

QString because(record::SamePerson::Because why)
{
    switch (why) {
    case record::SamePerson::Because::SameContact:
        return OwnersLink::tr("May be %1, who is here: the contact is the same.");
    case record::SamePerson::Because::SameName:
        return OwnersLink::tr("May be %1, who is here: the name is the same.");
    case record::SamePerson::Because::NearlySameName:
        return OwnersLink::tr("May be %1, who is here: the name is nearly the same.");
    }
    return {};
}

OwnerLine lineOf(const service::Newcomer& each, const std::vector<record::Customer>& known)
{
    const exchange::ListedPerson& listed = each.listed;
    OwnerLine line;
    line.name = listed.person.name.empty() ? OwnersLink::tr("no name") : text(listed.person.name);
    line.contacts = waysTo(listed.person);
    for (const std::string& note : listed.notes) {
        line.notes += text(note);
    }
    line.unclear = !each.isPlainlyNew();
    if (!each.known.empty()) {
        const auto one = std::ranges::find(known, each.known.front().id, &record::Customer::id);
        line.alike = because(each.known.front().because)
                         .arg(one == known.end() ? QString() : service::isolated(text(one->name)));
    } else if (each.alikeLine) {
        line.alike = OwnersLink::tr("May be the one in line %1 of the same list.").arg(*each.alikeLine);
    }
    return line;
}

} // namespace

OwnersLink::OwnersLink(service::Door& door, SettingsSpace& space, QObject* parent)
    : QObject(parent), m_door(door), m_space(space)
{
    connect(&space, &SettingsSpace::ownerListChosen, this, &OwnersLink::read);
    connect(&space, &SettingsSpace::ownersTold, this, &OwnersLink::keep);
    connect(&space, &SettingsSpace::ownerListLeft, this, &OwnersLink::leave);
}

OwnerListNow OwnersLink::listOf(const QString& file)
{
    OwnerListNow list;
    list.file = QFileInfo(file).fileName();
    return list;
}

void OwnersLink::read(const QString& file)
{
    const int mine = ++m_newest;
    m_newcomers.clear();
    m_now = listOf(file);
    m_now.reading = true;
    m_space.setOwnerList(m_now);
    if (!m_aside) {
        m_aside = std::make_unique<parts::Aside>();
    }
    m_door.allPeople([this, mine, file](const Result<std::vector<record::Customer>>& known) {
        if (mine != m_newest) {
            return;
        }
        if (!known) {
            refuse(file, tr("Those who are here cannot be read now. Try again."));
            return;
        }
        m_aside->run([this, mine, file, known = known.value()]() -> parts::Aside::Then {
            const auto list = service::readPeople(file.toStdString());
            if (!list) {
                return [this, mine, file] {
                    if (mine == m_newest) {
                        refuse(file, tr("This file cannot be read. Is it still there?"));
                    }
                };
            }
            return
                [this, mine, file, known, list = list.value(), newcomers = service::compareList(list.value(), known)] {
                    if (mine == m_newest) {
                        show(file, list, newcomers, known);
                    }
                };
        });
    });
}

void OwnersLink::show(const QString& file, const exchange::PeopleList& list, std::vector<service::Newcomer> newcomers,
                      const std::vector<record::Customer>& known)
{
    m_newcomers = std::move(newcomers);
    m_now = listOf(file);
    for (const exchange::ListFault& fault : list.faults) {
        m_now.faults += tr("Line %1: %2").arg(fault.line).arg(text(fault.text));
    }
    std::ranges::transform(m_newcomers, std::back_inserter(m_now.lines),
                           [&](const service::Newcomer& each) { return lineOf(each, known); });
    m_space.setOwnerList(m_now);
}

void OwnersLink::refuse(const QString& file, const QString& why)
{
    m_now = listOf(file);
    m_now.fault = why;
    m_space.setOwnerList(m_now);
}

void OwnersLink::keep(const std::vector<int>& lines)
{
    std::vector<record::Customer> people;
    for (const int line : lines) {
        if (line >= 0 && static_cast<std::size_t>(line) < m_newcomers.size()) {
            people.push_back(m_newcomers[static_cast<std::size_t>(line)].listed.person);
        }
    }
    if (people.empty() || m_now.reading || m_now.kept) {
        return;
    }
    m_now.reading = true; // a second tap keeps nobody twice
    m_space.setOwnerList(m_now);
    const int count = static_cast<int>(people.size());
    m_door.takePeople(std::move(people), [this, count](const Outcome& kept) {
        m_now.reading = false;
        if (kept) {
            m_now.kept = count;
        } else {
            m_now.fault = tr("Nobody of the list is kept: the bench file does not take it.");
        }
        m_space.setOwnerList(m_now);
    });
}

void OwnersLink::leave()
{
    ++m_newest;
    m_now = {};
    m_newcomers.clear();
}

} // namespace mend::app
