#include "core/exchange/planreader.h"

#include <algorithm>
#include <initializer_list>
#include <map>
#include <set>

namespace mend::exchange {
namespace {

using plan::Minute;
using Kind = JsonNode::Kind;

constexpr double mostAmount = 1'000'000;

/// Reads one problem and goes on after each fault.
class ProblemReader {
public:
    ReadProblem read(std::string_view text)
    {
        ReadProblem result;
        PlacedJson json = readPlacedJson(text);
        m_faults = std::move(json.faults);
        if (json.root) {
            readAll(*json.root);
        }
        std::stable_sort(m_faults.begin(), m_faults.end(), [](const JsonFault& a, const JsonFault& b) {
            return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
        });
        if (m_faults.empty()) {
            result.problem = std::move(m_problem);
        }
        result.faults = std::move(m_faults);
        return result;
    }

private:
    /// A value and where it stands, for pointing at.
    struct At {
        const JsonNode* node = nullptr;
        std::string path;
    };
    using Keys = std::initializer_list<std::string_view>;

    void fault(const At& at, std::string text) { m_faults.push_back({at.node->place, at.path, std::move(text)}); }

    /// Whether it is an object with every key of `must` and none beside `must` and `may`.
    bool isObject(const At& at, Keys must, Keys may = {})
    {
        if (at.node->kind != Kind::Object) {
            fault(at, "an object must stand here");
            return false;
        }
        const auto in = [](Keys keys, std::string_view key) {
            return std::find(keys.begin(), keys.end(), key) != keys.end();
        };
        for (const JsonMember& member : at.node->members) {
            if (!in(must, member.key) && !in(may, member.key)) {
                m_faults.push_back(
                    {member.place, at.path + "/" + pointerStep(member.key), "\"" + member.key + "\" is no key here"});
            }
        }
        bool whole = true;
        for (const std::string_view key : must) {
            if (at.node->member(key) == nullptr) {
                fault(at, "\"" + std::string(key) + "\" is missing");
                whole = false;
            }
        }
        return whole;
    }

    static At in(const At& at, std::string_view key)
    {
        return {at.node->member(key), at.path + "/" + std::string(key)};
    }

    std::vector<At> list(const At& at)
    {
        std::vector<At> items;
        if (at.node->kind != Kind::List) {
            fault(at, "a list must stand here");
            return items;
        }
        for (std::size_t i = 0; i < at.node->items.size(); ++i) {
            items.push_back({&at.node->items[i], at.path + "/" + std::to_string(i)});
        }
        return items;
    }

    std::optional<int> whole(const At& at, double least, double most)
    {
        if (at.node->kind != Kind::Number || !at.node->whole) {
            fault(at, "a whole number must stand here");
            return std::nullopt;
        }
        if (at.node->number < least || at.node->number > most) {
            fault(at, "this must be from " + std::to_string(static_cast<long long>(least)) + " to " +
                          std::to_string(static_cast<long long>(most)));
            return std::nullopt;
        }
        return static_cast<int>(at.node->number);
    }
    std::optional<int> minute(const At& at) { return whole(at, -plan::farthest, plan::farthest); }

    std::string text(const At& at)
    {
        if (at.node->kind != Kind::Text || at.node->text.empty()) {
            fault(at, "a text must stand here");
            return {};
        }
        return at.node->text;
    }

    /// A name that no other of its kind has yet; its number is that of the list.
    std::string fresh(const At& at, std::map<std::string, int>& known)
    {
        std::string name = text(at);
        if (!name.empty() && !known.emplace(name, static_cast<int>(known.size())).second) {
            fault(at, "\"" + name + "\" is given twice");
        }
        return name;
    }

    std::optional<int> named(const At& at, const std::map<std::string, int>& known, const std::string& what)
    {
        const std::string name = text(at);
        const auto found = known.find(name);
        if (found == known.end()) {
            if (!name.empty()) {
                fault(at, "there is no " + what + " \"" + name + "\"");
            }
            return std::nullopt;
        }
        return found->second;
    }

    void readAll(const JsonNode& node)
    {
        const At root{&node, ""};
        if (!isObject(root,
                      {"format", "name", "now", "horizon", "people", "open", "resources", "pieces", "steps", "lags",
                       "waits", "incompatible"},
                      {"note"})) {
            return;
        }
        if (text(in(root, "format")) != "bench-plan/1") {
            fault(in(root, "format"), "only bench-plan/1 is known here");
            return;
        }
        m_problem.name = text(in(root, "name"));
        if (const JsonNode* note = node.member("note")) {
            m_problem.note = note->text;
        }
        m_problem.now = whole(in(root, "now"), 0, plan::farthest).value_or(0);
        m_problem.horizon = minute(in(root, "horizon")).value_or(m_problem.now + 1);
        if (m_problem.horizon <= m_problem.now) {
            fault(in(root, "horizon"), "the horizon must lie after now");
        }
        readPeople(in(root, "people"));
        readOpen(in(root, "open"));
        for (const At& at : list(in(root, "resources"))) {
            readResource(at);
        }
        readPieces(in(root, "pieces"));
        for (const At& at : list(in(root, "steps"))) {
            readStep(at);
        }
        for (std::size_t p = 0; p < m_problem.pieces.size(); ++p) {
            if (m_pieceHasStep.count(static_cast<int>(p)) == 0 && !m_problem.pieces[p].id.empty()) {
                fault({&nearestNode(node, "/pieces/" + std::to_string(p)), "/pieces/" + std::to_string(p)},
                      "\"" + m_problem.pieces[p].id + "\" has no step");
            }
        }
        for (const At& at : list(in(root, "lags"))) {
            readLag(at);
        }
        for (const At& at : list(in(root, "waits"))) {
            readWait(at);
        }
        for (const At& at : list(in(root, "incompatible"))) {
            readIncompatible(at);
        }
    }

    void readPeople(const At& at)
    {
        const std::vector<At> names = list(at);
        for (const At& name : names) {
            m_problem.people.push_back(fresh(name, m_people));
        }
        if (names.empty() && at.node->kind == Kind::List) {
            fault(at, "somebody must be there");
        }
    }

    void readOpen(const At& at)
    {
        for (const At& stretch : list(at)) {
            const std::vector<At> ends = list(stretch);
            if (ends.size() != 2) {
                fault(stretch, "two minutes must stand here: opens and closes");
                continue;
            }
            const auto from = minute(ends[0]);
            const auto to = minute(ends[1]);
            if (!from || !to) {
                continue;
            }
            if (*from >= *to) {
                fault(stretch, "the bench must close after it opens");
            } else if (!m_problem.open.empty() && *from <= m_problem.open.back().to) {
                fault(stretch, "the hours must increase and not touch");
            } else {
                m_problem.open.push_back({*from, *to});
            }
        }
    }

    void readResource(const At& at)
    {
        if (!isObject(at, {"id", "capacity"})) {
            return;
        }
        plan::Resource resource;
        resource.id = fresh(in(at, "id"), m_resources);
        resource.capacity = whole(in(at, "capacity"), 1, mostAmount).value_or(1);
        m_problem.resources.push_back(std::move(resource));
    }

    void readPieces(const At& at)
    {
        const std::vector<At> pieces = list(at);
        for (const At& one : pieces) {
            if (!isObject(one, {"id", "weight", "promised"})) {
                continue;
            }
            plan::Piece piece;
            piece.id = fresh(in(one, "id"), m_pieces);
            piece.weight = whole(in(one, "weight"), 0, mostAmount).value_or(0);
            piece.promised = minute(in(one, "promised")).value_or(0);
            m_problem.pieces.push_back(std::move(piece));
        }
        if (pieces.empty() && at.node->kind == Kind::List) {
            fault(at, "there must be a piece");
        }
    }

    std::vector<plan::Use> readUses(const At& at)
    {
        std::vector<plan::Use> uses;
        for (const At& one : list(at)) {
            if (!isObject(one, {"resource", "amount"})) {
                continue;
            }
            const auto resource = named(in(one, "resource"), m_resources, "resource");
            if (!resource) {
                continue;
            }
            if (std::any_of(uses.begin(), uses.end(), [&](const plan::Use& u) { return u.resource == *resource; })) {
                fault(one, "this resource is listed twice");
            }
            const int capacity = m_problem.resources[static_cast<std::size_t>(*resource)].capacity;
            uses.push_back({*resource, whole(in(one, "amount"), 1, capacity).value_or(1)});
        }
        return uses;
    }

    std::vector<std::string> readTags(const At& at, bool onceOnly)
    {
        std::vector<std::string> tags;
        for (const At& one : list(at)) {
            const std::string tag = text(one);
            const bool again = std::find(tags.begin(), tags.end(), tag) != tags.end();
            if (again && onceOnly && !tag.empty()) {
                fault(one, "\"" + tag + "\" is given twice");
            } else if (!again) {
                tags.push_back(tag);
            }
        }
        return tags;
    }

    void readStep(const At& at)
    {
        if (!isObject(at, {"id", "piece", "kind", "duration", "hands", "uses", "tags", "state"},
                      {"earliest", "latest_end", "start", "person"})) {
            return;
        }
        plan::Step step;
        step.id = fresh(in(at, "id"), m_steps);
        const auto piece = named(in(at, "piece"), m_pieces, "piece");
        step.piece = piece.value_or(0);
        if (piece) {
            m_pieceHasStep.insert(*piece);
        }
        const At kind = in(at, "kind");
        step.kind = kind.node->text;
        step.duration = whole(in(at, "duration"), 1, plan::farthest).value_or(1);
        step.hands = whole(in(at, "hands"), 0, 1).value_or(1) == 1;
        step.uses = readUses(in(at, "uses"));
        step.tags = readTags(in(at, "tags"), true);
        const auto optionalMinute = [&](std::string_view key) {
            return at.node->member(key) != nullptr ? minute(in(at, key)) : std::nullopt;
        };
        step.earliest = optionalMinute("earliest");
        step.latestEnd = optionalMinute("latest_end");
        const std::string state = text(in(at, "state"));
        if (state == "started") {
            readStarted(at, step);
        } else if (state == "todo") {
            if (at.node->member("start") != nullptr || at.node->member("person") != nullptr) {
                fault(at, "a step that is still to do has no start and no person");
            }
        } else if (!state.empty()) {
            fault(in(at, "state"), "\"" + state + "\" is neither todo nor started");
        }
        m_problem.steps.push_back(std::move(step));
    }

    void readStarted(const At& at, plan::Step& step)
    {
        if (step.earliest || step.latestEnd) {
            fault(at, "a started step has no earliest and no latest_end");
        }
        if (at.node->member("start") == nullptr) {
            fault(at, "a started step needs its start");
        } else {
            step.started = whole(in(at, "start"), -plan::farthest, m_problem.now);
        }
        const JsonNode* person = at.node->member("person");
        if (step.hands) {
            if (person == nullptr) {
                fault(at, "a started step with hands needs its person");
            } else {
                step.person = named(in(at, "person"), m_people, "person");
            }
        } else if (person != nullptr && person->kind != Kind::Null) {
            fault(in(at, "person"), "a step without hands has no person");
        }
    }

    void readLag(const At& at)
    {
        if (!isObject(at, {"from", "to", "min", "max"})) {
            return;
        }
        const auto from = named(in(at, "from"), m_steps, "step");
        const auto to = named(in(at, "to"), m_steps, "step");
        const auto least = minute(in(at, "min"));
        const At max = in(at, "max");
        const std::optional<Minute> most = max.node->kind == Kind::Null ? std::nullopt : minute(max);
        if (!from || !to || !least) {
            return;
        }
        if (*from == *to) {
            fault(at, "a lag leads from one step to another");
        } else if (!m_lags.emplace(std::pair(*from, *to), *least).second) {
            fault(at, "there is a lag between these two already");
        } else {
            m_problem.lags.push_back({*from, *to, *least, most});
        }
    }

    void readWait(const At& at)
    {
        if (!isObject(at, {"id", "from", "to", "uses", "tags"})) {
            return;
        }
        plan::Wait wait;
        wait.id = fresh(in(at, "id"), m_waits);
        if (m_steps.count(wait.id) != 0) {
            fault(in(at, "id"), "a step has the name \"" + wait.id + "\"");
        }
        const auto from = named(in(at, "from"), m_steps, "step");
        const auto to = named(in(at, "to"), m_steps, "step");
        wait.uses = readUses(in(at, "uses"));
        wait.tags = readTags(in(at, "tags"), false);
        if (!from || !to) {
            return;
        }
        wait.from = *from;
        wait.to = *to;
        const auto lag = m_lags.find({*from, *to});
        if (lag == m_lags.end() || lag->second < 1) {
            fault(at, "a wait needs a lag between its steps, of 1 minute or more");
        }
        m_problem.waits.push_back(std::move(wait));
    }

    void readIncompatible(const At& at)
    {
        const std::vector<At> both = list(at);
        if (both.size() != 2) {
            fault(at, "two tags must stand here");
            return;
        }
        const std::string one = text(both[0]);
        const std::string other = text(both[1]);
        if (one == other && !one.empty()) {
            fault(at, "a tag cannot be kept from itself");
        } else if (!m_pairs.insert(std::minmax(one, other)).second) {
            fault(at, "this pair is given already");
        } else {
            m_problem.incompatible.emplace_back(one, other);
        }
    }

    plan::Problem m_problem;
    std::vector<JsonFault> m_faults;
    std::map<std::string, int> m_people;
    std::map<std::string, int> m_resources;
    std::map<std::string, int> m_pieces;
    std::map<std::string, int> m_steps;
    std::map<std::string, int> m_waits;
    std::set<int> m_pieceHasStep;
    std::map<std::pair<int, int>, Minute> m_lags;
    std::set<std::pair<std::string, std::string>> m_pairs;
};

} // namespace

ReadProblem readPlanProblem(std::string_view text) { return ProblemReader().read(text); }

} // namespace mend::exchange
