#pragma once

#include "core/store/findrows.h"

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace mend::store {

/// A piece that was looked for, with its owner.
struct FoundPiece {
    record::Piece piece;
    record::Customer owner;
    bool inHand = false;
    int apart = 0; ///< 0: every word typed stands there; the more, the less alike
};

/// A person who was looked for.
struct FoundPerson {
    record::Customer person;
    int apart = 0;
};

/// What one field answers, likeliest first: pieces in the house before others that are as alike, newer before older.
struct Found {
    std::vector<FoundPiece> pieces;
    std::vector<FoundPerson> people;
};

/// Looks for what is typed into the one field: a piece number, digits of a phone, or any words of a name and of
/// what a piece looks like, in any order, without accents, half typed, with one slip of the finger in a word.
/// Everything typed is taken as text, whatever signs are in it. Throws SqlError.
class FindQuery {
public:
    using Value = std::variant<std::int64_t, std::string>;
    /// Told every sentence asked, with its values; for measuring.
    using Watch = std::function<void(std::string_view sql, const std::vector<Value>& values)>;

    explicit FindQuery(Prepared& prepared, Watch watch = {}) : m_ready(prepared), m_watch(std::move(watch)) {}

    Found find(std::string_view typed);
    /// People only, for the name that is being typed at the intake.
    std::vector<FoundPerson> findPeople(std::string_view typed);

private:
    /// The known words that one typed word may mean, best first.
    struct Meant {
        std::vector<std::int64_t> words;
        std::int64_t uses = 0;
    };
    struct Candidate {
        std::int64_t entry = 0;
        int apart = 0;
        bool inHand = false;
    };

    Statement& ask(std::string_view sql, const std::vector<Value>& values);
    std::vector<Candidate> byWords(std::string_view typed);
    std::vector<Candidate> byDigits(std::string_view typed);
    std::vector<std::int64_t> byNumber(const std::string& number);
    std::vector<std::int64_t> byMistypedNumber(const std::string& number);
    std::vector<std::int64_t> peopleByPhone(std::string_view typed);
    Meant meaning(const std::string& word, bool isLast);
    Meant slipOf(const std::string& word, bool isLast);
    void addWords(Statement& rows, const std::string& typed, int most, Meant& meant, std::vector<int>& apart);
    std::vector<std::int64_t> holdingAll(std::vector<Meant> meanings);
    std::vector<std::int64_t> holdingMost(std::vector<Meant> meanings);
    std::vector<Candidate> judged(const std::vector<std::int64_t>& entries, const std::vector<std::string>& typed);
    void addPiecesOf(std::vector<Candidate>& candidates);
    std::vector<std::int64_t> piecesOf(std::int64_t person);
    bool isInHand(std::int64_t entry);
    Found rowsOf(std::vector<Candidate> candidates);

    Prepared& m_ready;
    Watch m_watch;
    bool m_peopleOnly = false;
};

} // namespace mend::store
