#include "app/rules/rulepages.h"

#include <QCoreApplication>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

// What a translator finds these words under.
class SharedPageWords {
    Q_DECLARE_TR_FUNCTIONS(SharedPageWords)
};

class SharedPage {
public:
    explicit SharedPage(const RulePage& page) : m_page(page) {}

    Sheet sheet(SharedRules which)
    {
        switch (which) {
        case SharedRules::Materials:
            m_sheet.title = SharedPageWords::tr("Materials");
            std::ranges::for_each(m_page.book.materials, [this](const auto& each) { material(each); });
            break;
        case SharedRules::Laws:
            m_sheet.title = SharedPageWords::tr("How warmth hastens a cure");
            std::ranges::for_each(m_page.book.laws, [this](const auto& each) { law(each); });
            break;
        case SharedRules::Hazards:
            m_sheet.title = SharedPageWords::tr("What must not meet");
            std::ranges::for_each(m_page.book.hazards, [this](const auto& each) { hazard(each); });
            break;
        case SharedRules::Cautions:
            m_sheet.title = SharedPageWords::tr("Cautions");
            for (const rules::Caution& caution : m_page.book.cautions) {
                fact(text(caution.text), {}, service::sourceWords(caution.source));
            }
            break;
        case SharedRules::Practice:
            m_sheet.title = SharedPageWords::tr("Habits of the bench");
            practice();
            break;
        }
        const bool onlyRead = which == SharedRules::Laws || which == SharedRules::Cautions;
        m_sheet.beside = onlyRead ? SharedPageWords::tr("to be read here; changed in the rule files")
                                  : SharedPageWords::tr("your own numbers stand beside the shipped ones");
        return std::move(m_sheet);
    }

private:
    void fact(const QString& label, const QString& value, const QString& below = {})
    {
        m_sheet.add(Sheet::Row{QStringLiteral("rule/shared/%1").arg(m_facts++), label, below, value});
    }
    template <class T>
    void figure(const QString& label, const rules::Figure<T>& held, const std::string& of, const std::string& path)
    {
        const rules::FigureAt at{{}, held};
        m_sheet.add(Sheet::Row{
            QStringLiteral("rule/own/") + text(of + "|" + path), label,
            service::joined({service::figureRange(at, m_page.manner), service::sourceWords(held.source)}),
            service::figureValue(at, m_page.manner),
            m_page.open ? std::function<void()>([open = m_page.open, of, path] { open(of + "|" + path); }) : nullptr});
    }
    template <class T>
    void figure(const QString& label, const std::optional<rules::Figure<T>>& held, const std::string& of,
                const std::string& path)
    {
        if (held) {
            figure(label, *held, of, path);
        }
    }
    QString degrees(Temperature at) const { return service::temperatureWords(at, m_page.manner); }

    void material(const rules::Material& material)
    {
        const std::string of = "material/" + material.key;
        m_sheet.head(text(material.name));
        if (!material.ratio.empty()) {
            fact(SharedPageWords::tr("Ratio"), text(material.ratio));
        }
        figure(SharedPageWords::tr("Pot life at %1").arg(degrees(material.potReference)), material.potLife, of,
               "/potLife");
        for (std::size_t i = 0; i < material.heatLimits.size(); ++i) {
            const rules::HeatLimit& limit = material.heatLimits[i];
            QString label = SharedPageWords::tr("No warmer than");
            if (limit.fromAge) {
                label = SharedPageWords::tr("From an age of %1 no warmer than").arg(service::spanWords(*limit.fromAge));
            } else if (limit.untilAge) {
                label =
                    SharedPageWords::tr("Up to an age of %1 no warmer than").arg(service::spanWords(*limit.untilAge));
            }
            figure(label, limit.warmest, of, "/heatLimits/" + std::to_string(i) + "/warmest");
        }
        figure(SharedPageWords::tr("Before it is handed over"), material.handOverWait, of, "/handOverWait");
        figure(
            SharedPageWords::tr("Full cure at %1").arg(degrees(material.cureReference.value_or(material.potReference))),
            material.fullCure, of, "/fullCure");
        for (const std::string& key : material.cautions) {
            if (const rules::Caution* caution = m_page.book.caution(key)) {
                m_sheet.say(text(caution->text), Sheet::Tone::Quiet);
            }
        }
    }

    void law(const rules::NamedLaw& named)
    {
        m_sheet.head(text(named.key));
        const QString source = service::sourceWords(named.source);
        if (const auto* heat = std::get_if<cure::Arrhenius>(&named.law)) {
            const auto kilojoules = [](ActivationEnergy energy) { return inJoulesPerMole(energy) / 1000.0; };
            fact(SharedPageWords::tr("Activation energy"),
                 SharedPageWords::tr("%1 (%2 to %3) kJ/mol")
                     .arg(kilojoules(heat->energy.typical))
                     .arg(kilojoules(heat->energy.low))
                     .arg(kilojoules(heat->energy.high)),
                 source);
            fact(SharedPageWords::tr("No credit below"), degrees(heat->noCreditBelow));
            fact(SharedPageWords::tr("No more credit above"), degrees(heat->noExtraAbove));
        } else if (const auto* band = std::get_if<cure::HumidBand>(&named.law)) {
            fact(SharedPageWords::tr("Goes on only between"),
                 SharedPageWords::tr("%1 and %2, %3 and %4")
                     .arg(degrees(band->coldest), degrees(band->warmest),
                          service::humidityWords(band->driest, m_page.manner),
                          service::humidityWords(band->dampest, m_page.manner)),
                 source);
        } else {
            fact(SharedPageWords::tr("By the clock alone"), {}, source);
        }
    }

    void hazard(const rules::Hazard& hazard)
    {
        const QString verdict = hazard.verdict == rules::Verdict::Block  ? SharedPageWords::tr("stops the start")
                                : hazard.verdict == rules::Verdict::Warn ? SharedPageWords::tr("warns")
                                                                         : SharedPageWords::tr("reminds");
        fact(text(hazard.title), verdict, service::joined({text(hazard.why), service::sourceWords(hazard.source)}));
        figure(SharedPageWords::tr("Temperature"), hazard.temperature, "hazard/" + hazard.key, "/temperature");
        figure(SharedPageWords::tr("As close in time as"), hazard.span, "hazard/" + hazard.key, "/span");
        if (hazard.humidity) {
            fact(SharedPageWords::tr("Humidity"), service::humidityWords(hazard.humidity->value, m_page.manner),
                 service::sourceWords(hazard.humidity->source));
        }
    }

    void practice()
    {
        const rules::Practice& habits = m_page.book.practice;
        figure(SharedPageWords::tr("A reading at the bench holds for"), habits.benchReadingAge, "practice",
               "/benchReadingAge");
        figure(SharedPageWords::tr("A reading in cabinet or humid box holds for"), habits.cabinetReadingAge, "practice",
               "/cabinetReadingAge");
        figure(SharedPageWords::tr("Begun and done are two taps from"), habits.twoTapsFrom, "practice", "/twoTapsFrom");
        fact(SharedPageWords::tr("Chip that one run takes"),
             SharedPageWords::tr("%1 cm").arg(inCentimetres(habits.runChip.value)),
             service::sourceWords(habits.runChip.source));
        fact(SharedPageWords::tr("Seam that one run takes"),
             SharedPageWords::tr("%1 cm").arg(inCentimetres(habits.runSeam.value)),
             service::sourceWords(habits.runSeam.source));
    }

    const RulePage& m_page;
    Sheet m_sheet;
    int m_facts = 0;
};

} // namespace

parts::Sheet sharedPage(SharedRules which, const RulePage& page) { return SharedPage(page).sheet(which); }

} // namespace mend::app
