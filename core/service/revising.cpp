#include "core/service/revising.h"

#include "core/exchange/rulereader.h"
#include "core/rules/figurelist.h"

#include <fstream>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

/// Whole or not at all: half a rule file would be refused, and the studio's own number with it.
bool writeRevision(const fs::path& file, const std::string& text)
{
    const fs::path half = file.string() + ".new";
    {
        std::ofstream stream(half, std::ios::binary | std::ios::trunc);
        stream << text;
        if (!stream.flush()) {
            return false;
        }
    }
    std::error_code failed;
    fs::rename(half, file, failed);
    return !failed;
}

/// Writes the studio's own numbers anew; where the rules refuse them, what stood there before.
Result<std::vector<rules::RuleFault>> writeOwn(RuleShelf& shelf, const fs::path& own,
                                               const std::vector<rules::OwnFigure>& figures)
{
    std::error_code failed;
    fs::create_directories(own, failed);
    const fs::path file = own / "own-figures.json";
    std::string before;
    for (const exchange::RuleText& text : ruleTextsIn(own)) {
        before = fs::path(text.file) == file ? text.text : before;
    }
    if (failed || !writeRevision(file, exchange::ownFiguresText(figures))) {
        return Fault{FaultKind::Unwritable, file.string()};
    }
    shelf.look();
    std::vector<rules::RuleFault> faults = shelf.faults();
    if (!faults.empty()) {
        const bool isBack = before.empty() ? fs::remove(file, failed) : writeRevision(file, before);
        if (!isBack) {
            return Fault{FaultKind::Unwritable, file.string()};
        }
        shelf.look();
    }
    return faults;
}

std::vector<rules::OwnFigure> without(std::vector<rules::OwnFigure> figures, const std::string& of,
                                      const std::string& path)
{
    std::erase_if(figures, [&](const rules::OwnFigure& each) { return each.of == of && each.path == path; });
    return figures;
}

} // namespace

Result<std::vector<rules::RuleFault>> keepOwnFigure(RuleShelf& shelf, const fs::path& own,
                                                    const rules::OwnFigure& figure)
{
    auto figures = without(shelf.ownFigures(), figure.of, figure.path);
    figures.push_back(figure);
    return writeOwn(shelf, own, figures);
}

Result<std::vector<rules::RuleFault>> dropOwnFigure(RuleShelf& shelf, const fs::path& own, const std::string& of,
                                                    const std::string& path)
{
    return writeOwn(shelf, own, without(shelf.ownFigures(), of, path));
}

Result<Revised> keepRevision(RuleShelf& shelf, const fs::path& own, const rules::Procedure& edited)
{
    const rules::Procedure next = rules::nextRevision(edited, shelf.book());
    Revised revised;
    revised.faults = rules::validate(next, shelf.book());
    if (!revised.faults.empty()) {
        return revised;
    }
    std::error_code failed;
    fs::create_directories(own, failed);
    const fs::path file = own / (next.key + "-" + std::to_string(next.revision) + ".json");
    if (failed || fs::exists(file, failed) || !writeRevision(file, exchange::fileText(next))) {
        return Fault{FaultKind::Unwritable, file.string()};
    }
    shelf.look();
    const rules::RevisionHash hash = exchange::revisionHash(next);
    if (shelf.book().revision(hash) == nullptr) {
        revised.faults = shelf.faults();
        fs::remove(file, failed);
        shelf.look();
        return revised;
    }
    revised.hash = hash;
    return revised;
}

} // namespace mend::service
