#include "app/parts/actaccessible.h"

#include "app/parts/actview.h"

#include <QPointer>
#include <algorithm>

namespace mend::parts {

namespace {

/// One spot. It keeps only the key: what the spot is may change under it at any time.
class HitAccessible : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    HitAccessible(ActView* view, QString key) : m_view(view), m_key(std::move(key)) {}

    bool isValid() const override { return m_view && hit(); }
    QObject* object() const override { return nullptr; }
    QWindow* window() const override
    {
        const auto* parent = QAccessible::queryAccessibleInterface(m_view.data());
        return parent ? parent->window() : nullptr;
    }
    QAccessibleInterface* parent() const override { return QAccessible::queryAccessibleInterface(m_view.data()); }
    QAccessibleInterface* child(int) const override { return nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }

    QString text(QAccessible::Text kind) const override
    {
        const Hit* spot = hit();
        if (!spot) {
            return {};
        }
        if (kind == QAccessible::Name) {
            return spot->name;
        }
        return kind == QAccessible::Description ? spot->more : QString();
    }
    void setText(QAccessible::Text, const QString&) override {}

    QRect rect() const override
    {
        const Hit* spot = hit();
        return spot ? QRect(m_view->mapToGlobal(spot->rect.topLeft()), spot->rect.size()) : QRect();
    }

    QAccessible::Role role() const override
    {
        const Hit* spot = hit();
        if (!spot) {
            return QAccessible::NoRole;
        }
        switch (spot->kind) {
        case HitKind::BenchAct:
        case HitKind::Other:
            return QAccessible::PushButton;
        case HitKind::Card:
            return QAccessible::ListItem;
        case HitKind::Words:
            return QAccessible::StaticText;
        }
        return QAccessible::NoRole;
    }

    QAccessible::State state() const override
    {
        QAccessible::State state;
        const Hit* spot = hit();
        if (!spot || !m_view->isVisible()) {
            state.invisible = true;
            return state;
        }
        state.offscreen = !m_view->rect().intersects(spot->rect);
        state.readOnly = !spot->canAct();
        state.focusable = spot->canAct();
        state.focused = m_view->hasFocus() && m_view->focusKey() == m_key;
        state.selected = spot->chosen;
        return state;
    }

    void* interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }

    QStringList actionNames() const override
    {
        const Hit* spot = hit();
        return spot && spot->canAct() ? QStringList{pressAction(), setFocusAction()} : QStringList();
    }
    void doAction(const QString& name) override
    {
        if (!m_view) {
            return;
        }
        if (name == pressAction()) {
            m_view->activate(m_key);
        } else if (name == setFocusAction()) {
            m_view->setFocus(Qt::OtherFocusReason);
            m_view->setFocusKey(m_key);
        }
    }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

    const QString& key() const { return m_key; }

private:
    const Hit* hit() const { return m_view ? m_view->hit(m_key) : nullptr; }

    QPointer<ActView> m_view;
    QString m_key;
};

QAccessibleInterface* makeActAccessible(const QString&, QObject* object)
{
    auto* view = qobject_cast<ActView*>(object);
    return view ? new ActViewAccessible(view) : nullptr;
}

} // namespace

ActViewAccessible::ActViewAccessible(ActView* view) : QAccessibleWidget(view, QAccessible::List) {}

ActViewAccessible::~ActViewAccessible()
{
    for (const auto& [key, id] : m_children) {
        QAccessible::deleteAccessibleInterface(id);
    }
}

ActView& ActViewAccessible::view() const { return *static_cast<ActView*>(object()); }

// Real child widgets (a line for words) come after the spots.
int ActViewAccessible::childCount() const
{
    return static_cast<int>(view().hits().size()) + QAccessibleWidget::childCount();
}

QAccessibleInterface* ActViewAccessible::child(int index) const
{
    const auto& hits = view().hits();
    const int spots = static_cast<int>(hits.size());
    if (index < 0 || index >= spots) {
        return index < 0 ? nullptr : QAccessibleWidget::child(index - spots);
    }
    const QString& key = hits[static_cast<std::size_t>(index)].key;
    const auto known = m_children.find(key);
    if (known != m_children.end()) {
        return QAccessible::accessibleInterface(known->second);
    }
    auto* made = new HitAccessible(&view(), key);
    m_children[key] = QAccessible::registerAccessibleInterface(made);
    return made;
}

int ActViewAccessible::indexOfChild(const QAccessibleInterface* child) const
{
    const auto* spot = dynamic_cast<const HitAccessible*>(child);
    const auto& hits = view().hits();
    if (!spot) {
        const int widget = QAccessibleWidget::indexOfChild(child);
        return widget < 0 ? -1 : widget + static_cast<int>(hits.size());
    }
    const auto found = std::ranges::find(hits, spot->key(), &Hit::key);
    return found == hits.end() ? -1 : static_cast<int>(found - hits.begin());
}

QAccessibleInterface* ActViewAccessible::childAt(int x, int y) const
{
    const QPoint at = view().mapFromGlobal(QPoint(x, y));
    const auto& hits = view().hits();
    for (std::size_t i = hits.size(); i > 0; --i) {
        if (hits[i - 1].rect.contains(at)) {
            return child(static_cast<int>(i - 1));
        }
    }
    return nullptr;
}

QAccessibleInterface* ActViewAccessible::focusChild() const
{
    const auto& hits = view().hits();
    const auto found = std::ranges::find(hits, view().focusKey(), &Hit::key);
    return view().hasFocus() && found != hits.end() ? child(static_cast<int>(found - hits.begin()))
                                                    : QAccessibleWidget::focusChild();
}

void installActAccessibility()
{
    static const bool installed = [] {
        QAccessible::installFactory(makeActAccessible);
        return true;
    }();
    Q_UNUSED(installed);
}

} // namespace mend::parts
