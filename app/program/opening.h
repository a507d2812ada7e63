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
Result<Opened> openFor(const ProgramOptions& options);

/// Says a fault of opening to a person, with what to do about it.
QString openingWords(const Fault& fault);

} // namespace mend::app
