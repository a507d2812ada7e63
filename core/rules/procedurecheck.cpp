#include "core/rules/procedurecheck.h"

#include "core/rules/stagecheck.h"
#include "core/rules/vocabulary.h"

#include <algorithm>
#include <set>

namespace mend::rules {
namespace {

/// The warmest a material may get at that age, if it has a limit then.
std::optional<Temperature> warmestAt(const Material& material, Span age)
{
    for (const HeatLimit& limit : material.heatLimits) {
        if (limit.fromAge.value_or(Span{0}) <= age && (!limit.untilAge || age < *limit.untilAge)) {
            return limit.warmest.value;
        }
    }
    return std::nullopt;
}

class ProcedureCheck {
public:
    ProcedureCheck(const Procedure& procedure, const RuleBook& book) : m_procedure(procedure), m_book(book) {}

    std::vector<RuleFault> all()
    {
        FigureCheck::look(m_procedure, "", m_faults);
        checkHead();
        checkKeys(m_procedure.stages, "/stages", m_faults);
        StageCheck stage(m_procedure, m_book, m_faults);
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            stage.look(m_procedure.stages[i], "/stages/" + std::to_string(i));
        }
        checkRings();
        checkHeat();
        checkKeepsApart();
        return m_faults.take();
    }

private:
    void checkHead()
    {
        checkKey(m_procedure.key, "/key", m_faults);
        if (m_procedure.revision < 1) {
            m_faults.add("/revision", "revisions count from 1");
        }
        checkCautions(m_procedure.cautions, m_book, "", m_faults);
        for (std::size_t i = 0; i < m_procedure.materials.size(); ++i) {
            checkMaterial(m_procedure.materials[i], m_book, "/materials/" + std::to_string(i), m_faults);
        }
    }

    /// Follows what each stage hangs on; the repetition before is always over, so it makes no ring.
    void checkRings()
    {
        std::vector<int> state(m_procedure.stages.size(), 0);
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            visit(i, state);
        }
    }

    void visit(std::size_t index, std::vector<int>& state)
    {
        if (state[index] != 0) {
            return;
        }
        state[index] = 1;
        const Stage& stage = m_procedure.stages[index];
        follow(stage.opens, "/stages/" + std::to_string(index) + "/opens/", index, state);
        follow(stage.closes, "/stages/" + std::to_string(index) + "/closes/", index, state);
        state[index] = 2;
    }

    void follow(const std::vector<Lag>& lags, const std::string& path, std::size_t self, std::vector<int>& state)
    {
        for (std::size_t i = 0; i < lags.size(); ++i) {
            const auto next = m_procedure.indexOf(lags[i].from.stage);
            if (!next || *next == self || lags[i].from.which == Which::Previous) {
                continue;
            }
            if (state[*next] == 1) {
                m_faults.add(path + std::to_string(i) + "/from/stage",
                             "a ring: \"" + lags[i].from.stage + "\" waits for this stage too");
            } else {
                visit(*next, state);
            }
        }
    }

    /// A figure that practice gives for the cabinet against the lowest limit of everything
    /// that has gone into the piece by then.
    void checkHeat()
    {
        std::set<std::string> inside;
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            const Stage& stage = m_procedure.stages[i];
            if (!stage.optional) { // what an option puts in is looked at on the bench, once it is chosen
                inside.insert(stage.uses.begin(), stage.uses.end());
            }
            for (std::size_t k = 0; k < stage.warmCures.size(); ++k) {
                checkWarmCure(stage.warmCures[k], inside,
                              "/stages/" + std::to_string(i) + "/warmCures/" + std::to_string(k));
            }
        }
    }

    void checkWarmCure(const WarmCure& cure, const std::set<std::string>& inside, const std::string& path)
    {
        for (const std::string& key : inside) {
            const Material* material = m_book.material(key);
            const auto limit =
                material == nullptr ? std::nullopt : warmestAt(*material, cure.fromAge.value_or(Span{0}));
            if (limit && cure.temperature.value > *limit) {
                m_faults.add(path + "/temperature",
                             "warmer than " + material->name + " may get at that age: the limit rules");
            }
        }
    }

    /// A stage that follows another sooner than a blocking hazard lets the two meet.
    void checkKeepsApart()
    {
        for (std::size_t i = 0; i < m_procedure.stages.size(); ++i) {
            const Stage& stage = m_procedure.stages[i];
            for (std::size_t k = 0; k < stage.opens.size(); ++k) {
                const Lag& lag = stage.opens[k];
                const Stage* before = m_procedure.find(lag.from.stage);
                if (before == nullptr || lag.waitOfStage) {
                    continue;
                }
                for (const Hazard& hazard : m_book.hazards) {
                    if (hazard.verdict == Verdict::Block && hazard.meeting == Meeting::Overlap && hazard.span &&
                        lag.span.value < hazard.span->value && leavesOneOf(*before, hazard.one) &&
                        bringsOneOf(stage, hazard.other)) {
                        m_faults.add("/stages/" + std::to_string(i) + "/opens/" + std::to_string(k) + "/span",
                                     "sooner than " + hazard.key + " allows: the hazard rules");
                    }
                }
            }
        }
    }

    static bool leavesOneOf(const Stage& stage, const std::vector<std::string>& states)
    {
        return std::any_of(stage.leaves.begin(), stage.leaves.end(),
                           [&](const Leaves& left) { return isIn(states, left.state); });
    }

    /// What starting a stage brings: its states, its resources, its usual place, its own key.
    static bool bringsOneOf(const Stage& stage, const std::vector<std::string>& names)
    {
        const auto named = [&](const std::string& name) { return isIn(names, name); };
        return std::any_of(stage.during.begin(), stage.during.end(), named) ||
               std::any_of(stage.resources.begin(), stage.resources.end(), named) ||
               (!stage.places.empty() && named(stage.places.front())) || named(stage.key);
    }

    static bool isIn(const std::vector<std::string>& words, std::string_view word)
    {
        return std::find(words.begin(), words.end(), word) != words.end();
    }

    const Procedure& m_procedure;
    const RuleBook& m_book;
    Faults m_faults;
};

} // namespace

std::vector<RuleFault> procedureFaults(const Procedure& procedure, const RuleBook& book)
{
    return ProcedureCheck(procedure, book).all();
}

} // namespace mend::rules
