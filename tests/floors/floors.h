#pragma once

#include <filesystem>
#include <iosfwd>
#include <map>
#include <string>
#include <vector>

namespace mend::floors {

// One line of source that reaches for something its floor may not know.
struct Fault {
    std::string file; // from the root of the tree
    int line = 0;
    std::string says;

    bool operator==(const Fault&) const = default;
};

// Which folder may include from which, as floors.txt says it: folder or file to the words it may use.
using Table = std::map<std::string, std::vector<std::string>>;

// Reads floors.txt. Groups (@word) are spelled out; a group must stand before the line that uses it.
Table readTable(std::istream& text);

// What is wrong in one file, `file` being its path from the root.
std::vector<Fault> faultsIn(const std::string& file, std::istream& source, const Table& table);

// What is wrong in every .h and .cpp under core/ and app/ of the tree at `root`.
std::vector<Fault> faultsUnder(const std::filesystem::path& root, const Table& table);

// How many such files there are: a check that read none has proved nothing.
int filesUnder(const std::filesystem::path& root);

} // namespace mend::floors
