#pragma once

#include "app/program/programoptions.h"
#include "core/service/openbench.h"
#include "core/service/ruleshelf.h"
#include "core/store/store.h"

#include <filesystem>
#include <memory>

namespace mend::app {

/// A bench file opened for work, with what it holds.
struct Opened {
    std::filesystem::path file;
    std::unique_ptr<store::Store> store;
    std::unique_ptr<service::RuleShelf> shelf;
    service::OpenBench bench;
    bool isNew = false; ///< made just now: nobody can have missed anything on it
};

/// The file that the options ask for: a path, the demo (made where it has to be), or the
/// person's own in their data folder. Faults are those of Store::open, and NotFound where the
/// program's own rule files are missing.
/// `looked`, where given, gets the file even where it could not be opened.
Result<Opened> openFor(const ProgramOptions& options, const Moment& now, std::filesystem::path* looked = nullptr);

/// The person's own bench file: in their data folder, or where they saved it since.
std::filesystem::path ownFile();
void rememberOwnFile(const std::filesystem::path& file);

/// Says a fault of opening to a person, with what to do about it.
QString openingWords(const Fault& fault);

} // namespace mend::app
