#include "core/rules/validation.h"

#include "core/rules/procedurecheck.h"
#include "core/rules/vocabulary.h"

#include <algorithm>
#include <string_view>

namespace mend::rules {
namespace {

template <class Row> void lookAtRows(const std::vector<Row>& rows, const std::string& path, Faults& faults)
{
    checkKeys(rows, path, faults);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        FigureCheck::look(rows[i], path + "/" + std::to_string(i), faults);
    }
}

struct LawCheck {
    std::string path;
    Faults& faults;

    void operator()(const cure::ClockOnly&) const {}
    void operator()(const cure::Arrhenius& law) const
    {
        if (!(law.noCreditBelow < law.noExtraAbove)) {
            faults.add(path + "/noExtraAbove", "no extra credit begins above where credit begins");
        }
        if (law.bend && !(law.noCreditBelow < *law.bend && *law.bend < law.noExtraAbove)) {
            faults.add(path + "/bend", "the bend lies between both limits");
        }
    }
    void operator()(const cure::HumidBand& law) const
    {
        if (!(law.coldest < law.warmest)) {
            faults.add(path + "/warmest", "the band is upside down");
        }
        if (!(law.driest < law.dampest)) {
            faults.add(path + "/dampest", "the band is upside down");
        }
    }
};

void checkMaterialRow(const Material& material, const RuleBook& book, const std::string& path, Faults& faults)
{
    if (book.law(material.law) == nullptr) {
        faults.add(path + "/law", "there is no law \"" + material.law + "\"");
    }
    if (!isOneOf(material.family, knownFamilies())) {
        faults.add(path + "/family", "\"" + material.family + "\" is no family: " + listed(knownFamilies()));
    }
    if (!material.tile.empty() && !material.potLife) {
        faults.add(path + "/tile", "what is mixed has a pot life");
    }
    for (std::size_t i = 0; i < material.heatLimits.size(); ++i) {
        const HeatLimit& limit = material.heatLimits[i];
        if (limit.untilAge && !(limit.fromAge.value_or(Span{0}) < *limit.untilAge)) {
            faults.add(path + "/heatLimits/" + std::to_string(i) + "/untilAge", "it ends before it begins");
        }
    }
    checkCautions(material.cautions, book, path, faults);
}

bool isAnyStage(const RuleBook& book, std::string_view key)
{
    return std::any_of(book.procedures.begin(), book.procedures.end(),
                       [&](const Procedure& procedure) { return procedure.find(key) != nullptr; });
}

/// Whether a name of a hazard's side means anything; see Hazard for what it may be.
bool isKnownName(std::string_view name, const RuleBook& book)
{
    constexpr std::string_view uncured = "uncured:";
    if (name.starts_with(uncured)) {
        name.remove_prefix(uncured.size());
        return book.material(name) != nullptr || isOneOf(name, knownFamilies());
    }
    return book.state(name) != nullptr || book.material(name) != nullptr || isOneOf(name, knownFamilies()) ||
           isOneOf(name, knownConditions()) || isOneOf(name, knownResources()) || isOneOf(name, knownPlaces()) ||
           isAnyStage(book, name);
}

void checkSide(const Hazard& hazard, const std::vector<std::string>& side, const RuleBook& book,
               const std::string& path, Faults& faults)
{
    for (std::size_t i = 0; i < side.size(); ++i) {
        const bool known = hazard.meeting == Meeting::Assembly ? side[i] == "lockOut" || side[i] == "ringClosure"
                                                               : isKnownName(side[i], book);
        if (!known) {
            faults.add(path + "/" + std::to_string(i),
                       "\"" + side[i] + "\" is no state, material, family, condition, resource, place or stage");
        }
    }
}

void checkHazardRow(const Hazard& hazard, const RuleBook& book, const std::string& path, Faults& faults)
{
    checkSide(hazard, hazard.one, book, path + "/one", faults);
    checkSide(hazard, hazard.other, book, path + "/other", faults);
    for (std::size_t i = 0; i < hazard.answers.size(); ++i) {
        const Answer& answer = hazard.answers[i];
        if (!answer.ends.empty() && book.state(answer.ends) == nullptr) {
            faults.add(path + "/answers/" + std::to_string(i) + "/ends", "there is no state \"" + answer.ends + "\"");
        }
    }
    for (std::size_t i = 0; i < hazard.exceptStages.size(); ++i) {
        if (!isAnyStage(book, hazard.exceptStages[i])) {
            faults.add(path + "/exceptStages/" + std::to_string(i),
                       "no procedure has a stage \"" + hazard.exceptStages[i] + "\"");
        }
    }
    if (hazard.meeting == Meeting::Overlap && (hazard.one.empty() || hazard.other.empty())) {
        faults.add(path, "two things overlap: name both sides");
    }
    if (hazard.meeting == Meeting::Climate && !hazard.temperature && !hazard.margin && !hazard.humidity) {
        faults.add(path, "say which air is wrong: temperature, margin or humidity");
    }
    if (hazard.verdict == Verdict::Block && hazard.answers.empty()) {
        faults.add(path + "/answers", "a start that is stopped needs answers that let it go on");
    }
}

} // namespace

std::vector<RuleFault> validate(const Procedure& procedure, const RuleBook& book)
{
    return procedureFaults(procedure, book);
}

std::vector<RuleFault> validate(const RuleBook& book)
{
    Faults faults;
    lookAtRows(book.laws, "/laws", faults);
    lookAtRows(book.materials, "/materials", faults);
    lookAtRows(book.states, "/states", faults);
    lookAtRows(book.hazards, "/hazards", faults);
    lookAtRows(book.cautions, "/cautions", faults);
    FigureCheck::look(book.practice, "/practice", faults);
    for (std::size_t i = 0; i < book.laws.size(); ++i) {
        std::visit(LawCheck{"/laws/" + std::to_string(i), faults}, book.laws[i].law);
    }
    for (std::size_t i = 0; i < book.materials.size(); ++i) {
        checkMaterialRow(book.materials[i], book, "/materials/" + std::to_string(i), faults);
    }
    for (std::size_t i = 0; i < book.hazards.size(); ++i) {
        checkHazardRow(book.hazards[i], book, "/hazards/" + std::to_string(i), faults);
    }
    return faults.take();
}

} // namespace mend::rules
