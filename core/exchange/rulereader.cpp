#include "core/exchange/rulereader.h"

#include "core/base/sha256.h"
#include "core/exchange/formreader.h"
#include "core/exchange/formwriter.h"

#include <algorithm>
#include <charconv>
#include <tuple>

namespace mend::exchange {
namespace {

constexpr int rulesVersion = 1;
constexpr std::string_view procedureFormat = "mendbench procedure";
constexpr std::string_view ownFormat = "mendbench own figures";

/// Where one row of the book came from.
struct Home {
    std::size_t file = 0;
    std::string path; ///< in that file
};

/// What one file gave, and where its rows stand in the whole.
struct OneFile {
    const RuleText* source = nullptr;
    std::optional<JsonNode> root;
    std::vector<rules::RuleFault> faults;
};

class BookReader {
public:
    explicit BookReader(std::span<const RuleText> files)
    {
        for (const RuleText& file : files) {
            readFile(file);
        }
    }

    ReadRules take()
    {
        splitRevisions();
        const bool allJson =
            std::all_of(m_files.begin(), m_files.end(), [](const OneFile& file) { return file.root.has_value(); });
        if (allJson) {
            addMeaning();
        }
        ReadRules result;
        result.book = std::move(m_book);
        result.own = std::move(m_own);
        for (OneFile& file : m_files) {
            std::stable_sort(file.faults.begin(), file.faults.end(), [](const auto& a, const auto& b) {
                return std::tie(a.line, a.column) < std::tie(b.line, b.column);
            });
            result.faults.insert(result.faults.end(), file.faults.begin(), file.faults.end());
        }
        result.faults.insert(result.faults.end(), m_homeless.begin(), m_homeless.end());
        return result;
    }

private:
    void readFile(const RuleText& source)
    {
        OneFile& file = m_files.emplace_back();
        file.source = &source;
        PlacedJson json = readPlacedJson(source.text);
        FaultList faults(source.file);
        for (const JsonFault& fault : json.faults) {
            faults.add(fault.place, fault.path, fault.text);
        }
        file.root = std::move(json.root);
        if (file.root) {
            readRoot(*file.root, faults);
        }
        file.faults = faults.take();
    }

    void readRoot(const JsonNode& root, FaultList& faults)
    {
        FormReader reader(root, "", faults);
        std::string format;
        int version = rulesVersion;
        reader.text("format", format, rules::Need::Must);
        reader.number("version", version);
        if (version != rulesVersion) {
            const JsonNode& node = nearestNode(root, "/version");
            faults.add(node.place, "/version", "only version 1 of the rule format is known here");
            return;
        }
        if (format == procedureFormat) {
            rules::Procedure& procedure = m_procedures.emplace_back();
            m_procedureHomes.push_back(m_files.size() - 1);
            rules::fields(reader, procedure);
        } else if (format == "mendbench laws") {
            readRows(reader, "laws", m_book.laws);
        } else if (format == "mendbench materials") {
            readRows(reader, "materials", m_book.materials);
        } else if (format == "mendbench hazards") {
            readRows(reader, "states", m_book.states);
            readRows(reader, "hazards", m_book.hazards);
        } else if (format == "mendbench cautions") {
            readRows(reader, "cautions", m_book.cautions);
        } else if (format == ownFormat) {
            readRows(reader, "figures", m_own);
        } else if (format == "mendbench practice") {
            readPractice(reader, root, faults);
        } else if (!format.empty()) {
            faults.add(
                nearestNode(root, "/format").place, "/format",
                "\"" + format +
                    "\" is no rule format: laws, materials, hazards, cautions, practice, procedure, own figures");
            return;
        }
        if (!format.empty()) {
            reader.refuseUnknown();
        }
    }

    void readPractice(FormReader& reader, const JsonNode& root, FaultList& faults)
    {
        if (m_practiceHome) {
            faults.add(root.place, "",
                       "the practice figures are given already in " + m_files[*m_practiceHome].source->file);
        }
        m_practiceHome = m_files.size() - 1;
        rules::fields(reader, m_book.practice);
    }

    template <class Row> void readRows(FormReader& reader, const std::string& name, std::vector<Row>& rows)
    {
        std::vector<Row> read;
        reader.list(name, read, rules::Need::Must);
        for (std::size_t i = 0; i < read.size(); ++i) {
            m_rowHomes.push_back({"/" + name + "/" + std::to_string(rows.size()),
                                  {m_files.size() - 1, "/" + name + "/" + std::to_string(i)}});
            rows.push_back(std::move(read[i]));
        }
    }

    /// The highest revision of each procedure is for new pieces, the rest stay findable.
    void splitRevisions()
    {
        for (std::size_t i = 0; i < m_procedures.size(); ++i) {
            const rules::Procedure& one = m_procedures[i];
            bool newest = true;
            for (std::size_t k = 0; k < m_procedures.size(); ++k) {
                const rules::Procedure& other = m_procedures[k];
                if (k == i || other.key != one.key || one.key.empty()) {
                    continue;
                }
                newest = newest && (other.revision < one.revision || (other.revision == one.revision && k > i));
                if (other.revision == one.revision && k < i) {
                    addFault(m_procedureHomes[i], "/revision",
                             "revision " + std::to_string(one.revision) + " of " + one.key + " is given already in " +
                                 m_files[m_procedureHomes[k]].source->file + ": raise it");
                }
            }
            rules::Procedure sealed = one;
            sealed.hash = revisionHash(one);
            (newest ? m_book.procedures : m_book.formerRevisions).push_back(std::move(sealed));
        }
    }

    void addMeaning()
    {
        if (!m_practiceHome) {
            m_homeless.push_back({"", "", 0, 0, "no file gives the practice figures"});
        }
        putOwnIn();
        for (const rules::RuleFault& fault : rules::validate(m_book)) {
            addBookFault(fault);
        }
        for (std::size_t i = 0; i < m_procedures.size(); ++i) {
            for (const rules::RuleFault& fault : rules::validate(m_procedures[i], m_book)) {
                addFault(m_procedureHomes[i], fault.path, fault.text);
            }
        }
    }

    /// A studio's own numbers, once every file is read, in the order of the files.
    void putOwnIn()
    {
        for (std::size_t i = 0; i < m_own.size(); ++i) {
            if (const Outcome put = rules::putOwn(m_book, m_own[i]); !put) {
                addBookFault({"", "/figures/" + std::to_string(i), 0, 0, put.fault().detail});
            }
        }
    }

    void addBookFault(const rules::RuleFault& fault)
    {
        if (fault.path.starts_with("/practice/") && m_practiceHome) {
            addFault(*m_practiceHome, fault.path.substr(std::string_view("/practice").size()), fault.text);
            return;
        }
        for (const auto& [inBook, home] : m_rowHomes) {
            if (fault.path == inBook || fault.path.starts_with(inBook + "/")) {
                addFault(home.file, home.path + fault.path.substr(inBook.size()), fault.text);
                return;
            }
        }
        if (!fault.path.starts_with("/practice")) {
            m_homeless.push_back(fault);
        }
    }

    /// Adds a fault of meaning, unless the form is already at fault there: one mistake is
    /// told once.
    void addFault(std::size_t index, const std::string& path, const std::string& text)
    {
        OneFile& file = m_files[index];
        const auto same = [&path](const rules::RuleFault& told) {
            return path == told.path || path.starts_with(told.path + "/") || told.path.starts_with(path + "/");
        };
        // A fault at the root ("key" is missing) must not hide the rest.
        for (const rules::RuleFault& told : file.faults) {
            if (!told.path.empty() && same(told)) {
                return;
            }
        }
        const TextPlace place = file.root ? nearestNode(*file.root, path).place : TextPlace{};
        file.faults.push_back({file.source->file, path, place.line, place.column, text});
    }

    rules::RuleBook m_book;
    std::vector<OneFile> m_files;
    std::vector<rules::OwnFigure> m_own;
    std::vector<rules::Procedure> m_procedures;
    std::vector<std::size_t> m_procedureHomes;
    std::optional<std::size_t> m_practiceHome;
    std::vector<std::pair<std::string, Home>> m_rowHomes;
    std::vector<rules::RuleFault> m_homeless;
};

nlohmann::json procedureJson(const rules::Procedure& procedure)
{
    nlohmann::json json = FormWriter::write(procedure);
    json["format"] = std::string(procedureFormat);
    json["version"] = rulesVersion;
    return json;
}

} // namespace

ReadRules readRules(std::span<const RuleText> files) { return BookReader(files).take(); }

std::string canonicalText(const rules::Procedure& procedure)
{
    return procedureJson(procedure).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::string fileText(const rules::Procedure& procedure)
{
    return procedureJson(procedure).dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

std::string ownFiguresText(const std::vector<rules::OwnFigure>& own)
{
    nlohmann::json json;
    json["format"] = std::string(ownFormat);
    json["version"] = rulesVersion;
    json["figures"] = nlohmann::json::array();
    for (const rules::OwnFigure& each : own) {
        json["figures"].push_back(FormWriter::write(each));
    }
    return json.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

rules::RevisionHash revisionHash(const rules::Procedure& procedure) { return sha256(canonicalText(procedure)); }

ReadProcedure readProcedure(const RuleText& file)
{
    ReadProcedure result;
    FaultList faults(file.file);
    const PlacedJson json = readPlacedJson(file.text);
    for (const JsonFault& fault : json.faults) {
        faults.add(fault.place, fault.path, fault.text);
    }
    rules::Procedure procedure;
    if (json.root) {
        FormReader reader(*json.root, "", faults);
        std::string format;
        int version = 0;
        reader.text("format", format, rules::Need::Must);
        reader.number("version", version);
        rules::fields(reader, procedure);
        reader.refuseUnknown();
        if (format != procedureFormat || version != rulesVersion) {
            faults.add(json.root->place, "/format", "this is no procedure in version 1 of the rule format");
        }
    }
    result.faults = faults.take();
    if (result.faults.empty()) {
        procedure.hash = revisionHash(procedure);
        result.procedure = std::move(procedure);
    }
    return result;
}

} // namespace mend::exchange
