#pragma once

#include "core/exchange/people.h"
#include "core/service/ruleshelf.h"
#include "core/store/store.h"

#include <filesystem>
#include <string>
#include <vector>

namespace mend::service {

/// What went out or came in.
struct Transferred {
    std::int64_t rows = 0;
    std::int64_t pictures = 0;
    std::vector<std::string> missingPictures; ///< hashes of pictures that could not be found
};

/// Everything in a bench file as JSON (see exchange::RowFileWriter); the pictures stand beside it in a folder
/// "NAME.pictures" under their hashes. A file that was there is replaced once the new one is whole; where the disk goes
/// away meanwhile, nothing half written stays.
Result<Transferred> exportWhole(const store::Store& store, const std::filesystem::path& to);

/// A new bench file out of such an export. Conflict: `to` is there already. BadInput with the line: nothing is made.
Result<Transferred> importWhole(const std::filesystem::path& from, const std::filesystem::path& to);

/// Everything of one person, in the same form: what they may ask for.
Result<Transferred> exportPerson(const store::Store& store, CustomerId person, const std::filesystem::path& to);

/// Tables for a spreadsheet, one file each, in a folder.
Result<Transferred> exportTables(const store::Store& store, const std::filesystem::path& folder);

/// The days that pieces in the house are promised for and may be collected from, as a calendar. No names.
Result<Transferred> exportCalendar(const store::Store& store, RuleShelf& shelf, const std::filesystem::path& to,
                                   Instant now);

/// Reads a list of people (".vcf" or ".csv") for looking at; nothing is kept.
Result<exchange::PeopleList> readPeople(const std::filesystem::path& from);

} // namespace mend::service
