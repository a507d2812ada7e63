#include "core/rules/figurecheck.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::rules;

namespace {

template <class T> std::vector<std::string> pathsOf(const Figure<T>& figure)
{
    Faults faults;
    FigureCheck::look(figure, "/f", faults);
    std::vector<std::string> paths;
    for (const RuleFault& fault : faults.take()) {
        paths.push_back(fault.path);
    }
    return paths;
}

const Source someSource = {"common practice, no source", Mark::Practice};

SpanFigure span(int value, int least, int most)
{
    return {std::chrono::minutes(value), std::chrono::minutes(least), std::chrono::minutes(most), someSource};
}

} // namespace

TEST(FigureCheck, TakesBothEndsOfTheRange)
{
    EXPECT_TRUE(pathsOf(span(15, 15, 40)).empty());
    EXPECT_TRUE(pathsOf(span(40, 15, 40)).empty());
    EXPECT_EQ(pathsOf(span(14, 15, 40)), std::vector<std::string>{"/f"});
    EXPECT_EQ(pathsOf(span(41, 15, 40)), std::vector<std::string>{"/f"});
    EXPECT_EQ(pathsOf(span(20, 40, 15)), std::vector<std::string>{"/f/most"});
}

TEST(FigureCheck, KnowsWhatEachUnitCanSensiblyBe)
{
    const auto celsius = [](double value, double least, double most) {
        return TemperatureFigure{Temperature::fromCelsius(value), Temperature::fromCelsius(least),
                                 Temperature::fromCelsius(most), someSource};
    };
    EXPECT_TRUE(pathsOf(celsius(24, 13, 200)).empty());
    EXPECT_EQ(pathsOf(celsius(24, 13, 201)), std::vector<std::string>{"/f/most"});
    EXPECT_EQ(pathsOf(celsius(-21, -21, 30)), std::vector<std::string>{"/f/least"});
    const Figure<Humidity> tooDamp = {percentHumidity(70), percentHumidity(0), percentHumidity(101), someSource};
    EXPECT_EQ(pathsOf(tooDamp), std::vector<std::string>{"/f/most"});
    const Figure<Length> negative = {centimetres(1), centimetres(-1), centimetres(10), someSource};
    EXPECT_EQ(pathsOf(negative), std::vector<std::string>{"/f/least"});
    EXPECT_EQ(pathsOf(span(1, 0, 60 * 24 * 401)), std::vector<std::string>{"/f/most"});
}

TEST(FigureCheck, WantsToKnowWhereANumberIsFrom)
{
    SpanFigure figure = span(20, 15, 40);
    figure.source.text.clear();
    EXPECT_EQ(pathsOf(figure), std::vector<std::string>{"/f/source"});
}
