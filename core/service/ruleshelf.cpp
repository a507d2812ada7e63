#include "core/service/ruleshelf.h"

#include "core/rules/keep.h"
#include "core/service/datafolder.h"

#include <algorithm>
#include <fstream>
#include <sstream>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

std::string textOf(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

/// Whole or not at all: a half-written copy would pass for what was last good.
void writeWhole(const fs::path& file, const std::string& text)
{
    const fs::path half = file.string() + ".new";
    {
        std::ofstream stream(half, std::ios::binary | std::ios::trunc);
        stream << text;
        if (!stream.flush()) {
            return;
        }
    }
    std::error_code ignored;
    fs::rename(half, file, ignored);
}

} // namespace

std::vector<exchange::RuleText> ruleTextsIn(const fs::path& folder, const std::string& name)
{
    std::vector<exchange::RuleText> texts;
    std::error_code failed;
    for (auto entry = fs::recursive_directory_iterator(folder, failed);
         !failed && entry != fs::recursive_directory_iterator(); entry.increment(failed)) {
        if (entry->path().extension() == ".json" && entry->is_regular_file(failed)) {
            const fs::path inside = entry->path().lexically_relative(folder);
            texts.push_back(
                {name.empty() ? entry->path().string() : (fs::path(name) / inside).string(), textOf(entry->path())});
        }
    }
    std::ranges::sort(texts, {}, &exchange::RuleText::file);
    return texts;
}

RuleShelf::Folders RuleShelf::usualFolders()
{
    const auto data = dataFolder();
    return {data ? *data / "rules" : fs::path(), configFolder() / "rules", stateFolder() / "lastgoodrules"};
}

RuleShelf::RuleShelf(Folders folders) : m_folders(std::move(folders)) { look(); }

RuleShelf::Found RuleShelf::find() const
{
    Found found;
    if (!m_folders.shipped.empty()) {
        found.texts = ruleTextsIn(m_folders.shipped, "shipped");
    }
    found.shipped = found.texts.size();
    if (!m_folders.own.empty()) {
        const auto own = ruleTextsIn(m_folders.own);
        found.texts.insert(found.texts.end(), own.begin(), own.end());
    }
    return found;
}

fs::path RuleShelf::keptName(const std::string& file) const
{
    return m_folders.lastGood / fs::path(file).lexically_relative(m_folders.own);
}

void RuleShelf::keep(const Found& found) const
{
    if (m_folders.lastGood.empty()) {
        return;
    }
    std::error_code failed;
    for (std::size_t at = found.shipped; at < found.texts.size(); ++at) {
        const fs::path kept = keptName(found.texts[at].file);
        if (textOf(kept) != found.texts[at].text) {
            fs::create_directories(kept.parent_path(), failed);
            writeWhole(kept, found.texts[at].text);
        }
    }
}

/// The same files, but of each of the studio's own that has a fault what was last good, or nothing.
std::vector<exchange::RuleText> RuleShelf::withLastGood(const Found& found,
                                                        const std::vector<rules::RuleFault>& faults) const
{
    const auto isFaulty = [&](const std::string& file) {
        return std::ranges::any_of(faults, [&](const rules::RuleFault& fault) { return fault.file == file; });
    };
    const auto shippedEnd = found.texts.begin() + static_cast<std::ptrdiff_t>(found.shipped);
    // A file of the studio's own can also spoil a shipped one, by what it says of a shared material.
    const bool spoilsShipped = std::any_of(found.texts.begin(), shippedEnd,
                                           [&](const exchange::RuleText& text) { return isFaulty(text.file); });
    std::vector<exchange::RuleText> texts(found.texts.begin(), shippedEnd);
    for (auto own = shippedEnd; own != found.texts.end(); ++own) {
        if (!spoilsShipped && !isFaulty(own->file)) {
            texts.push_back(*own);
        } else if (!m_folders.lastGood.empty()) {
            if (std::string kept = textOf(keptName(own->file)); !kept.empty()) {
                texts.push_back({own->file, std::move(kept)});
            }
        }
    }
    return texts;
}

void RuleShelf::look()
{
    const Found found = find();
    exchange::ReadRules read = exchange::readRules(found.texts);
    m_faults = read.faults;
    if (read.isGood()) {
        keep(found);
    } else if (!m_book.procedures.empty()) {
        return; // what is in force stays so, whole
    } else {
        read = exchange::readRules(withLastGood(found, m_faults));
        if (!read.isGood()) {
            read = exchange::readRules(std::span(found.texts).first(found.shipped));
        }
        if (!read.isGood()) {
            return;
        }
    }
    m_own = std::move(read.own);
    m_book = rules::keepOrRefuse(std::move(m_book), std::move(read.book), {}).inForce;
}

int RuleShelf::add(std::span<const store::RuleText> stored)
{
    int unread = 0;
    for (const store::RuleText& text : stored) {
        if (m_book.revision(text.hash)) {
            continue;
        }
        auto read = exchange::readProcedure({text.hash, text.text});
        if (!read.procedure || !read.faults.empty()) {
            ++unread;
            continue;
        }
        read.procedure->hash = text.hash;
        m_book.formerRevisions.push_back(std::move(*read.procedure));
    }
    return unread;
}

std::vector<store::RuleText> revisionsOf(std::span<const bench::Event> events, const rules::RuleBook& book,
                                         const std::set<std::string>& stored)
{
    std::set<std::string> asked;
    std::vector<store::RuleText> texts;
    for (const bench::Event& event : events) {
        if (event.rules.empty() || stored.contains(event.rules) || !asked.insert(event.rules).second) {
            continue;
        }
        if (const rules::Procedure* procedure = book.revision(event.rules)) {
            texts.push_back({event.rules, exchange::canonicalText(*procedure)});
        }
    }
    return texts;
}

} // namespace mend::service
