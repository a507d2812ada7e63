#pragma once

#include "app/desk/answer.h"
#include "app/papers/tag.h"

#include "core/base/clock.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace mend::desk {

// What the console program can be asked. Each is a whole command: files in, an answer out.

/// Whether a bench file is whole: structure, chain of events, seals of rows, pictures.
Answer checkFile(const std::string& file);
/// One consistent copy, also of a file that is in use.
Answer backUp(const std::string& file, const std::string& to);
/// Puts a bench file back from a copy; refuses where one stands already.
Answer restore(const std::string& backup, const std::string& to);
/// Every card with its window and alert, in the words of the screen, at `at` or now.
Answer showBoard(const std::string& file, std::optional<Instant> at, const Clock& clock);
/// Every fault of rule files, those that ship taken along for what they name.
Answer checkRules(const std::vector<std::string>& files);
/// Plans a bench given as a plan problem: the plan, or why there is none, after `effort.seconds`
/// at most, sooner where the best is proven.
struct PlanEffort {
    double seconds = 5.0;
    std::uint64_t seed = 1;
};
Answer planProblem(const std::string& file, const PlanEffort& effort);
/// What hands are needed for next on a bench file, as it stands at `at` or now; also of a file that is in use.
/// `asProblem`: not the plan but the bench as a plan problem (bench-plan/1), to be looked at or planned elsewhere.
Answer planBenchFile(const std::string& file, const PlanEffort& effort, std::optional<Instant> at, bool asProblem,
                     const Clock& clock);
/// Whether a file is a bench file by its first bytes, and no plan problem.
bool isBenchFile(const std::string& file);
/// Makes the demo bench at `file` (empty: its usual place) and says where it is.
Answer makeDemo(const std::string& file, bool fresh, const Clock& clock);

/// Pieces and people that are like what was typed, likeliest first; also of a file that is in use.
Answer findIn(const std::string& file, const std::string& typed);
/// Everything as JSON, as tables where `to` is a folder, the promised and ready days as a calendar where it ends in
/// ".ics"; `person`, a number or a name: everything of one person.
Answer exportFile(const std::string& file, const std::string& to, const std::string& person, const Clock& clock);
/// A new bench file out of an export, or people out of a ".vcf" or ".csv" into one that is there.
Answer importFile(const std::string& file, const std::string& from);
/// Takes a person out of a file for ever and lists the backups that still hold them.
Answer erasePerson(const std::string& file, const std::string& person, const Clock& clock);

/// What papers and tags are printed on.
struct PaperSizes {
    papers::Sheet sheet = papers::Sheet::A4;
    papers::Label label = papers::Label::Middle;
};

/// Receipts, quote, record, care sheet, notice and tag of one piece as PDF files in the folder `to`; also of a
/// file that is in use.
Answer printPapers(const std::string& file, const std::string& number, const std::string& to, PaperSizes sizes,
                   const Clock& clock);

} // namespace mend::desk
