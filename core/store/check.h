#pragma once

#include "core/store/eventrows.h"
#include "core/store/store.h"
#include "core/store/storethread.h"

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace mend::store {

/// One thing that is not as it was written.
struct Finding {
    enum class Part {
        Structure, ///< the pages and tables themselves
        Chain,     ///< what happened: a row changed, missing or put in
        Rows,      ///< owners, pieces, places, people, settings, rules, notes
        House,     ///< the list of pieces in the house does not follow from the events
        Links,     ///< a row names a row that is not there
        Photos,
    };
    Part part = Part::Structure;
    std::string detail;
};

struct CheckReport {
    std::vector<Finding> findings;
    std::int64_t events = 0;
    std::int64_t rows = 0;
    std::int64_t photos = 0;
    bool isGood() const { return findings.empty(); }
};

/// Looks through a bench file for anything that is not as it was written, a little at a time.
class Check {
public:
    /// Record: what happened and the rows beside it, each by its hash; cheap enough for every
    /// opening. Whole: also structure, links and pictures, the first in one go, so for a copy or a small file.
    enum class Depth { Record, Whole };

    Check(const Database& database, Depth depth);
    /// Works until about `until`; true at the end.
    bool slice(std::chrono::steady_clock::time_point until);
    const CheckReport& report() const { return m_report; }

private:
    /// Does a little; true when its part is over. May throw SqlError, which is a finding.
    using Step = std::function<bool()>;

    void add(Finding::Part part, Step step) { m_steps.push_back({part, std::move(step)}); }
    void addRows(Finding::Part part, std::function<CheckedRows(std::int64_t)> look);
    bool checkLinks();
    bool checkHouse();
    bool checkOnePhoto();
    void checkStructure(const char* sql, Finding::Part part);
    void find(Finding::Part part, std::string detail);

    const Database& m_database;
    CheckReport m_report;
    std::vector<std::pair<Finding::Part, Step>> m_steps;
    std::size_t m_at = 0;
    ChainEnd m_chain;
    std::optional<EventsOfPieces> m_ofPieces;
    std::int64_t m_piece = 0;
    std::string m_photo;
};

/// The whole check in one go.
CheckReport checkWhole(const Store& store);

/// The check after an opening, between the taps. `done` is called on the store's thread.
class RecordCheck : public LongJob {
public:
    explicit RecordCheck(std::function<void(const CheckReport&)> done) : m_done(std::move(done)) {}
    bool slice(Store& store, std::chrono::steady_clock::time_point until) override;

private:
    std::function<void(const CheckReport&)> m_done;
    std::optional<Check> m_check;
};

} // namespace mend::store
