#include "app/rules/rulepages.h"

#include <QCoreApplication>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

// What a translator finds these words under.
class StagePageWords {
    Q_DECLARE_TR_FUNCTIONS(StagePageWords)
};

QString stretch(const QString& what, const rules::Condition& when)
{
    return service::joined({what, service::conditionWords(when)});
}

class StagePage {
public:
    StagePage(const rules::Procedure& procedure, std::size_t index, const RulePage& page)
        : m_procedure(procedure), m_stage(procedure.stages[index]), m_page(page),
          m_path("/stages/" + std::to_string(index))
    {
    }

    Sheet sheet()
    {
        m_sheet.title = text(m_stage.act);
        m_sheet.beside =
            service::joined({StagePageWords::tr("row %1").arg(text(m_stage.row)), service::repeatWords(m_stage.repeat),
                             m_stage.optional ? StagePageWords::tr("only where agreed") : QString(),
                             m_stage.byItself ? StagePageWords::tr("by itself, no hands") : QString()});
        hands();
        waits();
        opens();
        closes();
        counted();
        warmth();
        leavesBehind();
        cautions();
        return std::move(m_sheet);
    }

private:
    template <class T> void figure(const QString& label, const std::string& path, const rules::Figure<T>& held)
    {
        const rules::FigureAt at{m_path + path, held};
        Sheet::Row row;
        row.key = figureKey(at.path);
        row.label = label;
        row.value = service::figureValue(at, m_page.manner);
        row.below = service::joined({StagePageWords::tr("may be %1").arg(service::figureRange(at, m_page.manner)),
                                     service::sourceWords(held.source)});
        if (m_page.open) {
            row.act = [open = m_page.open, whole = at.path] { open(whole); };
        }
        m_sheet.add(std::move(row));
        for (const rules::RuleFault& fault : rules::faultsAt(m_page.faults, at.path)) {
            m_sheet.say(text(fault.text), Sheet::Tone::Grave);
        }
    }
    template <class T>
    void figure(const QString& label, const std::string& path, const std::optional<rules::Figure<T>>& held)
    {
        if (held) {
            figure(label, path, *held);
        }
    }
    void fact(const QString& label, const QString& value)
    {
        if (!value.isEmpty()) {
            m_sheet.add(Sheet::Row{QStringLiteral("rule/fact/%1").arg(m_facts++), label, {}, value});
        }
    }

    void hands()
    {
        m_sheet.head(StagePageWords::tr("Hands"));
        figure(StagePageWords::tr("Each time"), "/handsOn/fixed", m_stage.handsOn.fixed);
        figure(StagePageWords::tr("And for each fragment"), "/handsOn/perFragment", m_stage.handsOn.perFragment);
        figure(StagePageWords::tr("And for each join"), "/handsOn/perJoin", m_stage.handsOn.perJoin);
        figure(StagePageWords::tr("And for each cm of seam"), "/handsOn/perCmSeam", m_stage.handsOn.perCmSeam);
        figure(StagePageWords::tr("And for each cm of chip"), "/handsOn/perCmChip", m_stage.handsOn.perCmChip);
    }

    void waits()
    {
        if (m_stage.waits.empty()) {
            return;
        }
        m_sheet.head(StagePageWords::tr("Then it waits"));
        const QString what = m_stage.waiting.empty() ? StagePageWords::tr("After it") : text(m_stage.waiting);
        for (std::size_t i = 0; i < m_stage.waits.size(); ++i) {
            const rules::Wait& wait = m_stage.waits[i];
            const std::string path = "/waits/" + std::to_string(i);
            figure(stretch(what, wait.when), path + "/span", wait.span);
            figure(stretch(StagePageWords::tr("%1, at the longest").arg(what), wait.when), path + "/longest",
                   wait.longest);
        }
    }

    void lags(const std::vector<rules::Lag>& lags, const std::string& name)
    {
        for (std::size_t i = 0; i < lags.size(); ++i) {
            const rules::Lag& lag = lags[i];
            const std::string path = "/" + name + "/" + std::to_string(i);
            const QString from = stretch(service::originWords(lag.from, m_procedure), lag.when);
            if (lag.waitOfStage) {
                fact(from, StagePageWords::tr("its own wait"));
            } else {
                figure(lag.soft ? StagePageWords::tr("%1 (past it the work is harder, not lost)").arg(from) : from,
                       path + "/span", lag.span);
            }
            figure(StagePageWords::tr("%1, lost at the latest").arg(from), path + "/lost", lag.lost);
        }
    }

    void opens()
    {
        if (m_stage.opens.empty() && !m_stage.test && !m_stage.recommended) {
            return;
        }
        m_sheet.head(StagePageWords::tr("It opens"));
        lags(m_stage.opens, "opens");
        figure(StagePageWords::tr("Best done after"), "/recommended", m_stage.recommended);
        if (m_stage.test) {
            fact(StagePageWords::tr("When the fingers say"), text(m_stage.test->passed));
            m_sheet.say(text(m_stage.test->how));
            figure(StagePageWords::tr("After “Not yet” it is asked again"), "/test/askAgain", m_stage.test->askAgain);
        }
    }

    void closes()
    {
        if (m_stage.closes.empty() && !m_stage.closesAtEndOfDay) {
            return;
        }
        m_sheet.head(StagePageWords::tr("It closes: hands are off by then"));
        lags(m_stage.closes, "closes");
        if (m_stage.closesAtEndOfDay) {
            m_sheet.say(StagePageWords::tr("Not to be left open at the end of the day."));
        }
        m_sheet.say(service::joined({service::missWords(m_stage.miss), text(m_stage.missText)}));
    }

    void counted()
    {
        if (!m_stage.counted) {
            return;
        }
        m_sheet.head(StagePageWords::tr("Counted in seconds, not alarmed"));
        figure(StagePageWords::tr("Done by"), "/counted/goal", m_stage.counted->goal);
        figure(StagePageWords::tr("At the end"), "/counted/red", m_stage.counted->red);
        figure(StagePageWords::tr("Said before mixing where heat leaves less than"), "/counted/hotBelow",
               m_stage.counted->hotBelow);
        m_sheet.say(text(m_stage.counted->hotAdvice), Sheet::Tone::Quiet);
    }

    void warmth()
    {
        m_sheet.head(StagePageWords::tr("Warmth"));
        fact(StagePageWords::tr("Every time here is true at"),
             service::temperatureWords(m_stage.reference, m_page.manner));
        figure(StagePageWords::tr("Warned below"), "/warnBelow", m_stage.warnBelow);
        figure(StagePageWords::tr("No forecast below"), "/noForecastBelow", m_stage.noForecastBelow);
        for (std::size_t i = 0; i < m_stage.warmCures.size(); ++i) {
            const std::string path = "/warmCures/" + std::to_string(i);
            figure(StagePageWords::tr("In the warm cabinet at"), path + "/temperature",
                   m_stage.warmCures[i].temperature);
            figure(StagePageWords::tr("For so long instead"), path + "/span", m_stage.warmCures[i].span);
        }
        figure(StagePageWords::tr("The pot lags the cabinet's air by"), "/warmThrough", m_stage.warmThrough);
    }

    void leavesBehind()
    {
        if (m_stage.leaves.empty()) {
            return;
        }
        m_sheet.head(StagePageWords::tr("It leaves behind"));
        for (std::size_t i = 0; i < m_stage.leaves.size(); ++i) {
            const rules::BenchState* state = m_page.book.state(m_stage.leaves[i].state);
            const QString name = text(state ? state->text : m_stage.leaves[i].state);
            if (m_stage.leaves[i].lasts) {
                figure(name, "/leaves/" + std::to_string(i) + "/lasts", m_stage.leaves[i].lasts);
            } else {
                m_sheet.say(name);
            }
        }
    }

    void cautions()
    {
        if (m_stage.cautions.empty()) {
            return;
        }
        m_sheet.head(StagePageWords::tr("Cautions"));
        for (const std::string& key : m_stage.cautions) {
            if (const rules::Caution* caution = m_page.book.caution(key)) {
                m_sheet.say(text(caution->text));
            }
        }
        m_sheet.say(
            StagePageWords::tr("The product's safety data sheet and local rules come before any line on this screen."),
            Sheet::Tone::Quiet);
    }

    const rules::Procedure& m_procedure;
    const rules::Stage& m_stage;
    const RulePage& m_page;
    std::string m_path;
    Sheet m_sheet;
    int m_facts = 0;
};

} // namespace

QString figureKey(const std::string& path) { return QStringLiteral("rule") + text(path); }

parts::Sheet stagePage(const rules::Procedure& procedure, std::size_t stage, const RulePage& page)
{
    return StagePage(procedure, stage, page).sheet();
}

QString figureTitle(const rules::Procedure& procedure, const std::string& path)
{
    const std::vector<rules::RuleFault> none;
    const rules::RuleBook empty;
    const service::Manner manner;
    for (std::size_t i = 0; i < procedure.stages.size(); ++i) {
        if (!path.starts_with("/stages/" + std::to_string(i) + "/")) {
            continue;
        }
        for (const auto& block : stagePage(procedure, i, {empty, manner, none, {}}).blocks) {
            const auto* row = std::get_if<Sheet::Row>(&block);
            if (row && row->key == figureKey(path)) {
                return StagePageWords::tr("%1: %2").arg(text(procedure.stages[i].act), row->label);
            }
        }
    }
    return text(path);
}

} // namespace mend::app
