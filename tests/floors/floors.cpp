#include "tests/floors/floors.h"

#include <algorithm>
#include <fstream>
#include <optional>
#include <regex>
#include <sstream>

namespace mend::floors {

namespace {

namespace fs = std::filesystem;

// The line of the table that a path falls under: its own, else that of the nearest folder above it.
std::optional<std::string> placeOf(const std::string& path, const Table& table)
{
    for (fs::path place = path; !place.empty(); place = place.parent_path()) {
        if (table.contains(place.generic_string())) {
            return place.generic_string();
        }
    }
    return std::nullopt;
}

// The library that a header belongs to, empty for the standard library and the system.
std::string libraryOf(const std::string& header)
{
    static const std::regex sql(R"((QtSql(/.*)?|QSql[A-Z]\w*))");
    static const std::regex thread(R"((QtCore/)?(QThread|QThreadPool|QRunnable)|QtConcurrent.*)");
    static const std::regex qt(R"(Q(t[A-Z]\w*(/.*)?|[A-Z]\w*|t.*))");
    if (std::regex_match(header, sql)) {
        return "Sql";
    }
    if (std::regex_match(header, thread)) {
        return "QThread";
    }
    if (std::regex_match(header, qt)) {
        return "Qt";
    }
    for (const char* library : {"sqlite3", "pulse", "nlohmann", "libical", "qrencode", "libexif"}) {
        if (header.starts_with(library)) {
            return library;
        }
    }
    return {};
}

bool isSource(const fs::path& path) { return path.extension() == ".h" || path.extension() == ".cpp"; }

std::vector<fs::path> sourcesUnder(const fs::path& root)
{
    std::vector<fs::path> found;
    for (const char* top : {"core", "app"}) {
        if (!fs::exists(root / top)) {
            continue;
        }
        for (const auto& entry : fs::recursive_directory_iterator(root / top)) {
            if (entry.is_regular_file() && isSource(entry.path())) {
                found.push_back(entry.path());
            }
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

bool holds(const std::vector<std::string>& words, const std::string& word)
{
    return std::find(words.begin(), words.end(), word) != words.end();
}

// Why `home` may not include `header`; nothing when it may.
std::optional<std::string> refusal(const std::string& home, const std::string& header, const Table& table)
{
    const std::vector<std::string>& allowed = table.at(home);
    if (const std::string library = libraryOf(header); !library.empty()) {
        return holds(allowed, library) ? std::nullopt : std::optional(home + " may not know " + library);
    }
    if (!header.starts_with("core/") && !header.starts_with("app/")) {
        return std::nullopt;
    }
    const std::string folder = fs::path(header).parent_path().generic_string();
    const std::string own = fs::path(home).has_extension() ? fs::path(home).parent_path().generic_string() : home;
    if (folder == own || folder.starts_with(own + "/") || holds(allowed, folder)) {
        return std::nullopt;
    }
    return home + " may not include from " + folder;
}

// A statement in the words of SQL, as it would stand in a string.
bool speaksSql(const std::string& line)
{
    static const std::regex sql(R"("[^"]*\b(SELECT\s.*|INSERT\s+(OR\s+\w+\s+)?INTO|DELETE\s+FROM|UPDATE\s+\w+\s+SET|)"
                                R"(CREATE\s+(TABLE|INDEX|TRIGGER|VIEW)|DROP\s+TABLE|ALTER\s+TABLE|PRAGMA\s|)"
                                R"(BEGIN\s+(IMMEDIATE|EXCLUSIVE)|VACUUM))");
    return std::regex_search(line, sql);
}

} // namespace

Table readTable(std::istream& text)
{
    Table groups;
    Table table;
    std::string line;
    while (std::getline(text, line)) {
        std::istringstream words(line.substr(0, line.find('#')));
        std::string name;
        if (!(words >> name)) {
            continue;
        }
        std::vector<std::string>& allowed = name.starts_with('@') ? groups[name] : table[name];
        for (std::string word; words >> word;) {
            if (word.starts_with('@')) {
                const std::vector<std::string> members = groups.at(word);
                allowed.insert(allowed.end(), members.begin(), members.end());
            } else {
                allowed.push_back(word);
            }
        }
    }
    return table;
}

std::vector<Fault> faultsIn(const std::string& file, std::istream& source, const Table& table)
{
    const std::optional<std::string> home = placeOf(file, table);
    if (!home) {
        return {{file, 0, "its folder has no line in tests/floors/floors.txt"}};
    }
    static const std::regex include(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
    const bool mayNameSql = file.starts_with("core/store/");
    std::vector<Fault> faults;
    std::string line;
    for (int number = 1; std::getline(source, line); ++number) {
        std::smatch match;
        if (std::regex_search(line, match, include)) {
            if (const auto why = refusal(*home, match[1], table)) {
                faults.push_back({file, number, *why});
            }
        } else if (!mayNameSql && speaksSql(line)) {
            faults.push_back({file, number, "SQL stands in core/store and resources/schema only"});
        }
    }
    return faults;
}

std::vector<Fault> faultsUnder(const fs::path& root, const Table& table)
{
    std::vector<Fault> faults;
    for (const fs::path& path : sourcesUnder(root)) {
        std::ifstream source(path);
        const std::vector<Fault> found = faultsIn(fs::relative(path, root).generic_string(), source, table);
        faults.insert(faults.end(), found.begin(), found.end());
    }
    return faults;
}

int filesUnder(const fs::path& root) { return static_cast<int>(sourcesUnder(root).size()); }

} // namespace mend::floors
