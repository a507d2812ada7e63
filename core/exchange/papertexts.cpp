#include "core/exchange/papertexts.h"

namespace mend::exchange {

namespace {

class TextsReader {
public:
    explicit TextsReader(ReadPaperTexts& read) : m_read(read) {}

    void readAll(const JsonNode& root)
    {
        const JsonNode* format = root.member("format");
        if (format == nullptr || format->text != "mendbench paper texts") {
            fault(root, "", "this is no file of paper texts: \"format\" should say \"mendbench paper texts\"");
            return;
        }
        const JsonNode* texts = root.member("texts");
        if (texts == nullptr || texts->kind != JsonNode::Kind::List) {
            fault(root, "/texts", "the list \"texts\" is missing");
            return;
        }
        for (std::size_t at = 0; at < texts->items.size(); ++at) {
            readOne(texts->items[at], "/texts/" + std::to_string(at));
        }
    }

private:
    void readOne(const JsonNode& node, const std::string& path)
    {
        const std::string key = textAt(node, "key", path);
        PaperText text{textAt(node, "says", path), {}};
        const JsonNode* lines = node.member("lines");
        if (lines == nullptr || lines->items.empty()) {
            fault(node, path + "/lines", "a text has at least one line");
            return;
        }
        for (std::size_t at = 0; at < lines->items.size(); ++at) {
            if (lines->items[at].kind != JsonNode::Kind::Text || lines->items[at].text.empty()) {
                fault(lines->items[at], path + "/lines/" + std::to_string(at), "a line is a text with words in it");
            }
            text.lines.push_back(lines->items[at].text);
        }
        if (!m_read.texts.emplace(key, std::move(text)).second) {
            fault(node, path + "/key", "\"" + key + "\" is given twice");
        }
    }

    std::string textAt(const JsonNode& node, std::string_view name, const std::string& path)
    {
        const JsonNode* member = node.member(name);
        if (member == nullptr || member->kind != JsonNode::Kind::Text || member->text.empty()) {
            fault(node, path + "/" + std::string(name), "\"" + std::string(name) + "\" is missing");
            return {};
        }
        return member->text;
    }

    void fault(const JsonNode& node, std::string path, std::string text)
    {
        m_read.faults.push_back({node.place, std::move(path), std::move(text)});
    }

    ReadPaperTexts& m_read;
};

} // namespace

ReadPaperTexts readPaperTexts(std::string_view json)
{
    ReadPaperTexts read;
    PlacedJson placed = readPlacedJson(json);
    read.faults = std::move(placed.faults);
    if (placed.root) {
        TextsReader(read).readAll(*placed.root);
    }
    return read;
}

} // namespace mend::exchange
