#pragma once

#include "core/bench/hazardcheck.h"

#include "tests/support/rulefiles.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <chrono>
#include <ostream>
#include <string>
#include <vector>

namespace mend::bench {

/// Read in a failed test: the row and how much it weighs.
inline void PrintTo(const HazardFinding& finding, std::ostream* out)
{
    *out << (finding.hazard ? finding.hazard->key : "none") << " verdict " << static_cast<int>(finding.verdict)
         << " state " << finding.state << " pieces";
    for (const PieceId piece : finding.pieces) {
        *out << ' ' << piece.value();
    }
}

} // namespace mend::bench

namespace mend::test {

using namespace std::chrono_literals;

/// The shipped rules, read once, with small procedures beside them that bring what no shipped
/// procedure does (aluminium, plaster, dry sanding), so that every row can be met.
const rules::RuleBook& hazardBook();

/// A bench that is told things at minutes after 2027-03-01 09:00 UTC, for asking what stands
/// against a start. The bench is at 23 degrees and 45 per cent unless a test reads otherwise.
class HazardBench {
public:
    explicit HazardBench(const rules::RuleBook& book = hazardBook());

    static constexpr PlaceId table{1};
    static constexpr PlaceId shelf{2};
    static constexpr PlaceId cabinet{3};
    static constexpr PlaceId humidBox{4};
    static constexpr PlaceId tray{5};
    static constexpr PlaceId otherTray{6};
    static constexpr PlaceId yard{7};

    static Instant at(double minute);

    /// A piece of its own owner unless one is named.
    PieceId add(const std::string& procedure, double minute = 0, CustomerId owner = {});
    record::Piece& piece(PieceId id);
    EventId tell(bench::Event event);
    void read(PlaceId place, double celsius, std::optional<double> percent, double minute);
    void done(PieceId piece, const std::string& stage, double minute, int repetition = 1);
    void begun(PieceId piece, const std::string& stage, double minute, int repetition = 1);
    void put(PieceId piece, PlaceId place, double minute);
    void begin(const std::string& state, double minute, PieceId piece = {});
    void end(const std::string& state, double minute, PieceId piece = {});
    void answer(PieceId piece, const std::string& stage, const std::string& word, double minute, int repetition = 1);
    MixId mix(const std::string& material, double minute);
    bench::Event event(bench::What what, double minute) const;

    bench::BenchFold fold() const;
    std::vector<bench::HazardFinding> starting(PieceId piece, const std::string& stage, double minute,
                                               PlaceId place = table, int repetition = 1) const;
    std::vector<bench::HazardFinding> asked(const bench::Start& start, double minute, const bench::BenchDay& day = {},
                                            const bench::AssemblyFacts* assembly = nullptr) const;
    std::vector<bench::HazardFinding> telling(const std::string& state, double minute, PieceId piece = {}) const;
    std::vector<bench::HazardFinding> standing(double minute, const bench::BenchDay& day = {}) const;
    std::vector<std::string> states(double minute) const;

    const rules::RuleBook& book() const { return m_book; }
    bench::Roster& roster() { return m_roster; }

private:
    const rules::RuleBook& m_book;
    bench::Roster m_roster;
    std::vector<bench::Event> m_events;
};

/// The finding of one row, the worst where there are two; one without a row where it is not met.
const bench::HazardFinding* findingOf(const std::vector<bench::HazardFinding>& found, const std::string& key);

MATCHER_P(Meets, key, "") { return findingOf(arg, key)->hazard != nullptr; }
MATCHER_P(Blocks, key, "")
{
    const auto* finding = findingOf(arg, key);
    return finding->hazard && finding->verdict == rules::Verdict::Block;
}
MATCHER_P(Warns, key, "")
{
    const auto* finding = findingOf(arg, key);
    return finding->hazard && finding->verdict == rules::Verdict::Warn;
}
MATCHER_P(Reminds, key, "")
{
    const auto* finding = findingOf(arg, key);
    return finding->hazard && finding->verdict == rules::Verdict::Remind;
}

} // namespace mend::test
