#include "app/program/keeping.h"

namespace mend::app {

Keeping::Keeping(std::unique_ptr<store::Store> store, RulesOf rulesOf, QObject* parent)
    : QObject(parent), m_rulesOf(std::move(rulesOf))
{
    store::StoreNews news;
    news.stored = [this](std::span<const EventId> ids) {
        const std::vector<EventId> copy(ids.begin(), ids.end());
        QMetaObject::invokeMethod(
            this, [this, copy] { Q_EMIT stored(copy); }, Qt::QueuedConnection);
    };
    news.writeFailed = [this](const Fault& fault) {
        QMetaObject::invokeMethod(
            this, [this, fault] { Q_EMIT troubled(fault); }, Qt::QueuedConnection);
    };
    news.writesAgain = [this] {
        QMetaObject::invokeMethod(
            this, [this] { Q_EMIT worksAgain(); }, Qt::QueuedConnection);
    };
    news.refused = [this](std::span<const bench::Event>, const Fault& fault) {
        QMetaObject::invokeMethod(
            this, [this, fault] { Q_EMIT refused(fault); }, Qt::QueuedConnection);
    };
    m_thread = std::make_unique<store::StoreThread>(std::move(store), std::move(news));
}

void Keeping::keep(const std::vector<bench::Event>& events)
{
    keepRulesOf(events);
    m_thread->append(events);
}

void Keeping::keepRulesOf(const std::vector<bench::Event>& events)
{
    for (const store::RuleText& rules : m_rulesOf(events)) {
        m_thread->write([rules](store::Store& store) { return store.putRules(rules); });
    }
}

} // namespace mend::app
