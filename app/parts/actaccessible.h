#pragma once

#include <QAccessibleWidget>
#include <QString>
#include <map>

namespace mend::parts {

class ActView;
struct Hit;

/// What a screen reader sees of an ActView: one child for each spot of its hit map, with the
/// same name, place and act that a finger gets.
class ActViewAccessible : public QAccessibleWidget {
public:
    explicit ActViewAccessible(ActView* view);
    ~ActViewAccessible() override;

    int childCount() const override;
    QAccessibleInterface* child(int index) const override;
    int indexOfChild(const QAccessibleInterface* child) const override;
    QAccessibleInterface* childAt(int x, int y) const override;
    QAccessibleInterface* focusChild() const override;

private:
    ActView& view() const;
    mutable std::map<QString, QAccessible::Id> m_children; ///< by the key of the spot
};

/// Lets Qt ask for the children of every ActView; call once.
void installActAccessibility();

} // namespace mend::parts
