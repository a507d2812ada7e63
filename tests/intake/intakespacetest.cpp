#include "app/intake/intakespace.h"

#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

/// Answers as a bench would on which one thing stands against every page.
class SomeAnswers : public IntakeAnswers {
public:
    std::vector<record::IntakeFault> faultsOf(const record::Intake&,
                                              const std::vector<record::Customer>&) const override
    {
        return {record::IntakeFault::NoContact, record::IntakeFault::NoProcedure, record::IntakeFault::NotSigned};
    }
    std::vector<std::string> alikeNames(const record::Intake&) const override { return {"Heron cup"}; }
    QString promiseWords(const record::Intake& page) const override
    {
        return page.promised ? QStringLiteral("That is 3 days too early: its lacquer waits until Friday") : QString();
    }
};

IntakeNow offered()
{
    IntakeNow now;
    now.procedures = {{QStringLiteral("goldLacquerSeam"),
                       QStringLiteral("Gold-dusted lacquer seam"),
                       {},
                       {{QStringLiteral("clean"), QStringLiteral("Clean the breaks and let them dry")},
                        {QStringLiteral("oldGlue"), QStringLiteral("Take the old glue off both faces")}}},
                      {QStringLiteral("invisibleMend"), QStringLiteral("Plain invisible mend"), {}},
                      {QStringLiteral("urushiSeam"), QStringLiteral("Tree lacquer seam, gold laid on it"), {}}};
    now.oldMaterials = {{QStringLiteral("oldMend"), QStringLiteral("An old mend, of what is unknown")},
                        {QStringLiteral("plaster"), QStringLiteral("Plaster")},
                        {QStringLiteral("waxOrTape"), QStringLiteral("Wax or tape")}};
    now.currency = "EUR";
    now.today = *dayFrom("2026-11-28");
    return now;
}

class IntakeWalk : public SpaceWalk {};

TEST_P(IntakeWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    const SomeAnswers answers;
    IntakeSpace space(clock.gate);
    space.setAnswers(&answers);
    way.dress(space);
    space.setNow(offered());
    space.show();
    for (int step = 0; step < 3; ++step) {
        if (step == 1) {
            type(space.form(), QStringLiteral("owner/name"), QStringLiteral("Ines Varga"));
            space.setKnown({{CustomerId(1), "Ines Varga", "020 7946 0142"}, {CustomerId(2), "Inês Vargas", "post"}});
            type(space.form(), QStringLiteral("piece/benchName"), QStringLiteral("Heron bowl"));
            click(space.form(), QStringLiteral("intake/fragments/6"));
            click(space.form(), QStringLiteral("intake/promise/3"));
            click(space.form(), QStringLiteral("intake/procedure/goldLacquerSeam"));
        } else if (step == 2) {
            click(space.form(), QStringLiteral("intake/more"));
            click(space.slip().isVisible() ? space.slip() : space.form(), QStringLiteral("intake/takein"));
        }
        const Walk found = walkSheets({&space.form(), &space.slip()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << "step " << step;
        EXPECT_GE(found.acts, 20);
        EXPECT_EQ(found.benchActs, 2);
        keepPicture(space, way.picture(QStringLiteral("intake-%1").arg(step)));
        space.form().scrollTo(space.form().height() - way.look().measure.px(80));
        keepPicture(space, way.picture(QStringLiteral("intake-%1-lower").arg(step)));
        space.form().scrollTo(space.form().contentHeight());
        keepPicture(space, way.picture(QStringLiteral("intake-%1-end").arg(step)));
    }
}

INSTANTIATE_TEST_SUITE_P(Everywhere, IntakeWalk, testing::ValuesIn(spokenWays()));

TEST(Intake, IsToldOnceHoweverOftenItIsTapped)
{
    class Nothing : public IntakeAnswers {
        std::vector<record::IntakeFault> faultsOf(const record::Intake&,
                                                  const std::vector<record::Customer>&) const override
        {
            return {};
        }
        std::vector<std::string> alikeNames(const record::Intake&) const override { return {}; }
        QString promiseWords(const record::Intake&) const override { return {}; }
    };
    GateClock clock;
    const Nothing against;
    IntakeSpace space(clock.gate);
    space.setAnswers(&against);
    space.resize(1148, 704);
    space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
    space.setNow(offered());
    space.show();
    int told = 0;
    QObject::connect(&space, &IntakeSpace::takeInTold, &space, [to = &told] { ++*to; });
    click(space.slip(), QStringLiteral("intake/takein"));
    click(space.slip(), QStringLiteral("intake/takein"));
    EXPECT_EQ(told, 1);
    space.showRefused(QStringLiteral("The file cannot be written."));
    EXPECT_TRUE(says(space.slip(), QStringLiteral("cannot be written")));
    click(space.slip(), QStringLiteral("intake/takein"));
    EXPECT_EQ(told, 2) << "what was refused may be tried again";
}

} // namespace
} // namespace mend::app
