#pragma once

#include "core/bench/event.h"
#include "core/exchange/rulereader.h"
#include "core/store/wordrows.h"

#include <filesystem>
#include <set>
#include <span>
#include <string>
#include <vector>

namespace mend::service {

/// The rule files of a folder and of those in it, in the order of their names. `name` stands before each
/// file's name in faults; empty: the whole path does. A folder that is not there holds none.
std::vector<exchange::RuleText> ruleTextsIn(const std::filesystem::path& folder, const std::string& name = {});

/// Where the rules of a bench come from: those that ship, the studio's own beside them, and the
/// revisions that its pieces follow, out of its file.
///
/// A file of the studio's own with a fault is refused, its faults are listed, and what it last said
/// without one stays in force, over restarts too: good files are copied to `lastGood`.
class RuleShelf {
public:
    struct Folders {
        std::filesystem::path shipped;
        std::filesystem::path own;
        std::filesystem::path lastGood; ///< empty: nothing is kept over a restart
    };
    /// `shipped` from the program's data folder, the others from the person's own.
    static Folders usualFolders();

    explicit RuleShelf(Folders folders);

    const rules::RuleBook& book() const { return m_book; }
    /// What is wrong with the files as they stand; where not empty, what was good before is in force.
    const std::vector<rules::RuleFault>& faults() const { return m_faults; }
    /// The numbers that the studio has put in the place of shipped ones, as they are in force.
    const std::vector<rules::OwnFigure>& ownFigures() const { return m_own; }
    /// Whether there is anything to work by at all; false where not even the shipped files hold.
    bool isUsable() const { return !m_book.procedures.empty(); }

    /// Reads the files again. No revision that was on the shelf is lost by it.
    void look();
    /// Puts the revisions on it that a bench file keeps. The number of those that could not be read.
    int add(std::span<const store::RuleText> stored);

private:
    struct Found {
        std::vector<exchange::RuleText> texts;
        std::size_t shipped = 0; ///< the first so many are not the studio's own
    };
    Found find() const;
    std::vector<exchange::RuleText> withLastGood(const Found& found, const std::vector<rules::RuleFault>& faults) const;
    void keep(const Found& found) const;
    std::filesystem::path keptName(const std::string& file) const;

    Folders m_folders;
    rules::RuleBook m_book;
    std::vector<rules::RuleFault> m_faults;
    std::vector<rules::OwnFigure> m_own;
};

/// What has to be in the bench file before these events: every revision that they are told under, whole,
/// which is not among `stored` yet.
std::vector<store::RuleText> revisionsOf(std::span<const bench::Event> events, const rules::RuleBook& book,
                                         const std::set<std::string>& stored);

} // namespace mend::service
