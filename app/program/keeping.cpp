#include "app/program/keeping.h"

#include <algorithm>
#include <iterator>

namespace mend::app {

Keeping::Keeping(std::unique_ptr<store::Store> store, RulesOf rulesOf, QObject* parent)
    : QObject(parent), m_standing(store->standing()), m_rulesOf(std::move(rulesOf))
{
    store::StoreNews news;
    news.stored = [this](std::span<const EventId> ids) {
        const std::vector<EventId> copy(ids.begin(), ids.end());
        QMetaObject::invokeMethod(
            this,
            [this, copy] {
                Q_EMIT stored(copy);
                Q_EMIT written();
            },
            Qt::QueuedConnection);
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
    if (!isWritable()) {
        std::vector<EventId> ids;
        std::ranges::transform(events, std::back_inserter(ids), &bench::Event::id);
        QMetaObject::invokeMethod(
            this, [this, ids] { Q_EMIT stored(ids); }, Qt::QueuedConnection);
        return;
    }
    keepRulesOf(events);
    m_thread->append(events);
}

void Keeping::write(std::function<Outcome(store::Store&)> act, std::function<void(const Outcome&)> done)
{
    m_thread->write(std::move(act), [this, done = std::move(done)](const Outcome& outcome) {
        if (outcome) {
            QMetaObject::invokeMethod(
                this, [this] { Q_EMIT written(); }, Qt::QueuedConnection);
        }
        if (done) {
            done(outcome);
        }
    });
}

void Keeping::moveTo(const std::filesystem::path& to)
{
    m_thread->moveTo(to, [this](const Outcome& outcome) {
        QMetaObject::invokeMethod(
            this, [this, outcome] { outcome ? Q_EMIT moved() : Q_EMIT moveFailed(outcome.fault()); },
            Qt::QueuedConnection);
    });
}

void Keeping::keepRulesOf(const std::vector<bench::Event>& events)
{
    for (const store::RuleText& rules : m_rulesOf(events)) {
        m_thread->write([rules](store::Store& store) { return store.putRules(rules); });
    }
}

} // namespace mend::app
