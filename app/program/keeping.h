#pragma once

#include "core/service/benchservice.h"
#include "core/store/storethread.h"

#include <QObject>
#include <memory>
#include <set>
#include <string>

namespace mend::app {

/// Stands between the bench and its file: hands acts to the store's thread, with the rules
/// that they were told under, and brings back to the window's thread what became of them.
class Keeping : public QObject {
    Q_OBJECT

public:
    /// `rulesOf` gives the whole text of the rule revisions that events use and the file lacks.
    using RulesOf = std::function<std::vector<store::RuleText>(const std::vector<bench::Event>&)>;

    Keeping(std::unique_ptr<store::Store> store, RulesOf rulesOf, QObject* parent = nullptr);

    void keep(const std::vector<bench::Event>& events);
    /// The rules of events that are written in another way.
    void keepRulesOf(const std::vector<bench::Event>& events);
    store::StoreThread& thread() { return *m_thread; }

Q_SIGNALS:
    void stored(const std::vector<mend::EventId>& events);
    void troubled(const mend::Fault& fault);
    void worksAgain();
    void refused(const mend::Fault& fault);

private:
    RulesOf m_rulesOf;
    std::unique_ptr<store::StoreThread> m_thread; // last: its thread calls the signals above
};

} // namespace mend::app
