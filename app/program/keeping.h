#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "core/service/benchservice.h"
#include "core/store/storethread.h"

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

    /// A file that may only be read keeps nothing: what the bench tells of itself is passed over.
    Keeping(std::unique_ptr<store::Store> store, RulesOf rulesOf, QObject* parent = nullptr);

    void keep(const std::vector<bench::Event>& events);
    /// The rules of events that are written in another way.
    void keepRulesOf(const std::vector<bench::Event>& events);
    /// Any other write, in order with the acts. `done` is called on the store's thread.
    void write(std::function<Outcome(store::Store&)> act, std::function<void(const Outcome&)> done = {});
    /// Goes on in a new file; `moved` or `moveFailed` follows.
    void moveTo(const std::filesystem::path& to);
    store::Standing standing() const { return m_standing; }
    bool isWritable() const { return m_standing == store::Standing::Writable; }
    store::StoreThread& thread() { return *m_thread; }

Q_SIGNALS:
    void stored(const std::vector<mend::EventId>& events);
    void troubled(const mend::Fault& fault);
    void worksAgain();
    void refused(const mend::Fault& fault);
    /// The file has changed.
    void written();
    void moved();
    void moveFailed(const mend::Fault& fault);

private:
    store::Standing m_standing;
    RulesOf m_rulesOf;
    std::unique_ptr<store::StoreThread> m_thread; // last: its thread calls the signals above
};

} // namespace mend::app
