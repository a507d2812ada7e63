#include "app/sound/signal.h"

#include "core/bench/alertdesk.h"
#include "tests/sound/listen.h"

#include <cmath>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iterator>
#include <nlohmann/json.hpp>

using namespace mend;
using namespace mend::sound;
using namespace std::chrono_literals;
using testing::HasSubstr;

namespace {

/// What each tone must be, written here a second time and apart from the data file.
/// A's figures lie in the ranges that IEC 60601-1-8 gives for high priority as public
/// conforming generators repeat them (the standard's own text was not read).
struct Wanted {
    Tone tone;
    std::vector<double> onsetsMs;
    double pulseMs;
    double pitchHz;
};

const std::vector<Wanted>& wanted()
{
    static const std::vector<Wanted> table = {
        {Tone::A, {0, 200, 600, 800, 1200, 1400, 1600}, 125, 784},
        {Tone::B, {0, 375, 750}, 200, 523},
        {Tone::C, {0, 375}, 200, 392},
        {Tone::Tick, {0}, 60, 523},
        {Tone::PedalTaken, {0}, 60, 392},
        {Tone::PedalDone, {0, 120}, 60, 392},
    };
    return table;
}

std::string shippedText()
{
    std::ifstream file(MEND_SOURCE_DIR "/resources/sounds/signals.json");
    return {std::istreambuf_iterator<char>(file), {}};
}

Pcm rendered(Tone tone, int rate) { return render(signalFor(shippedSignals(), tone), rate); }

/// The steady middle of the first pulse.
Pcm plateau(const Pcm& pcm, const Wanted& what)
{
    const double length = what.pulseMs / 1000.0;
    return ear::cut(pcm, 0.2 * length, 0.8 * length);
}

class EverySampleRate : public testing::TestWithParam<int> {};

} // namespace

TEST_P(EverySampleRate, PulsesBeginAndEndWhenTheyShould)
{
    for (const Wanted& what : wanted()) {
        SCOPED_TRACE(nameOf(what.tone));
        const Pcm pcm = rendered(what.tone, GetParam());
        const auto pulses = ear::findPulses(pcm);
        ASSERT_EQ(pulses.size(), what.onsetsMs.size());
        for (std::size_t i = 0; i < pulses.size(); ++i) {
            EXPECT_NEAR(pulses[i].from * 1000.0, what.onsetsMs[i], 5.0);
            EXPECT_NEAR(pulses[i].to * 1000.0, what.onsetsMs[i] + what.pulseMs, 5.0);
        }
        EXPECT_NEAR(static_cast<double>(pcm.length().count()), what.onsetsMs.back() + what.pulseMs, 1.0);
    }
}

TEST_P(EverySampleRate, PitchIsWithinOnePerCent)
{
    for (const Wanted& what : wanted()) {
        SCOPED_TRACE(nameOf(what.tone));
        const Pcm pcm = rendered(what.tone, GetParam());
        for (const double onset : what.onsetsMs) {
            const auto spectrum = ear::spectrumOf(ear::cut(pcm, onset / 1000.0, (onset + what.pulseMs) / 1000.0));
            EXPECT_NEAR(spectrum.strongest(100, 4000), what.pitchHz, 0.01 * what.pitchHz);
        }
    }
}

TEST_P(EverySampleRate, FourHarmonicsStandWithinFifteenDecibels)
{
    for (const Wanted& what : wanted()) {
        SCOPED_TRACE(nameOf(what.tone));
        const Pcm steady = plateau(rendered(what.tone, GetParam()), what);
        const double fundamental = ear::spectrumOf(steady).between(what.pitchHz * 0.9, what.pitchHz * 1.1);
        int good = 0;
        for (int n = 2; n <= 5; ++n) {
            const double hertz = n * what.pitchHz;
            const double power =
                ear::spectrumOf(steady).between(hertz - 0.1 * what.pitchHz, hertz + 0.1 * what.pitchHz);
            const double decibels = 10.0 * std::log10(power / fundamental);
            good += hertz >= 300 && hertz <= 4000 && std::abs(decibels) <= 15.0 ? 1 : 0;
        }
        EXPECT_EQ(good, 4);
    }
}

TEST_P(EverySampleRate, TheUrgentOneLiesWhereEarsAreKeenest)
{
    const auto spectrum = ear::spectrumOf(rendered(Tone::A, GetParam()));
    EXPECT_GE(spectrum.between(500, 2500) / spectrum.between(0, GetParam() / 2.0), 0.60);
}

TEST_P(EverySampleRate, LevelsKeepTheirOrder)
{
    for (const Wanted& what : wanted()) {
        EXPECT_LE(ear::peakDbfs(rendered(what.tone, GetParam())), -1.0) << nameOf(what.tone);
    }
    const double a = ear::rmsDbfs(rendered(Tone::A, GetParam()));
    const double b = ear::rmsDbfs(rendered(Tone::B, GetParam()));
    EXPECT_GE(a, -12.0); // over the whole burst, its silences counted in
    EXPECT_GE(a, b + 3.0);
    EXPECT_GE(ear::rmsDbfs(plateau(rendered(Tone::A, GetParam()), wanted()[0])),
              ear::rmsDbfs(plateau(rendered(Tone::B, GetParam()), wanted()[1])) + 3.0);
    EXPECT_NEAR(ear::rmsDbfs(plateau(rendered(Tone::Tick, GetParam()), wanted()[3])),
                ear::rmsDbfs(plateau(rendered(Tone::B, GetParam()), wanted()[1])) - 12.0, 0.5);
}

INSTANTIATE_TEST_SUITE_P(Signal, EverySampleRate, testing::Values(16000, 22050, 44100, 48000, 96000));

TEST(Signal, RiseAndFallTakeFifteenPerCentOfAPulse)
{
    // 18.75 ms of 125 ms: half height is reached at half of the slope (a raised cosine).
    const Pcm pcm = rendered(Tone::A, 96000);
    const double full = ear::rmsDbfs(ear::cut(pcm, 0.050, 0.070));
    EXPECT_NEAR(ear::rmsDbfs(ear::cut(pcm, 0.0081, 0.01065)), full - 6.0, 1.0);
    EXPECT_NEAR(ear::rmsDbfs(ear::cut(pcm, 0.01875, 0.0213)), full, 0.5);
    EXPECT_NEAR(ear::rmsDbfs(ear::cut(pcm, 0.11435, 0.1169)), full - 6.0, 1.0);
}

TEST(Signal, UrgenciesAreToldApartByRhythmAlone)
{
    // All at one pitch: the spacing of onsets still names each one.
    std::vector<std::vector<int>> rhythms;
    for (const Tone tone : {Tone::A, Tone::B, Tone::C}) {
        Signal signal = signalFor(shippedSignals(), tone);
        signal.pitchHz = 523;
        std::vector<int> steps;
        for (const auto& pulse : ear::findPulses(render(signal, 44100))) {
            steps.push_back(static_cast<int>(std::lround(pulse.from * 1000.0 / 25.0)));
        }
        rhythms.push_back(steps);
    }
    EXPECT_NE(rhythms[0], rhythms[1]);
    EXPECT_NE(rhythms[0], rhythms[2]);
    EXPECT_NE(rhythms[1], rhythms[2]);
}

TEST(Signal, UrgenciesAreToldApartByPitchAlone)
{
    // All in one rhythm: at least three semitones (a factor of 1.19) lie between any two.
    std::vector<double> pitches;
    for (const Tone tone : {Tone::A, Tone::B, Tone::C}) {
        Signal signal = signalFor(shippedSignals(), tone);
        signal.groups = {1};
        signal.pulse = 200ms;
        pitches.push_back(ear::spectrumOf(render(signal, 44100)).strongest(100, 4000));
    }
    EXPECT_GT(pitches[0] / pitches[1], 1.19);
    EXPECT_GT(pitches[1] / pitches[2], 1.19);
}

TEST(Signal, RepeatsAsItsUrgencyAsks)
{
    const auto gap = [](Tone tone, Span since) { return gapAfter(signalFor(shippedSignals(), tone), since); };
    EXPECT_EQ(gap(Tone::A, 0s), 8s);
    EXPECT_EQ(gap(Tone::A, 24h), 8s);
    EXPECT_EQ(gap(Tone::B, 0s), 25s);
    EXPECT_EQ(gap(Tone::B, 119s), 25s);
    EXPECT_EQ(gap(Tone::B, 120s), 120s);
    EXPECT_EQ(gap(Tone::C, 0s), std::nullopt);
    EXPECT_EQ(gap(Tone::Tick, 0s), std::nullopt);
    // The desk reckons repeats and who may cut off whom with the same lengths.
    using Sounded = std::pair<Tone, bench::Signal>;
    for (const auto& [tone, signal] : {Sounded{Tone::A, bench::Signal::A}, Sounded{Tone::B, bench::Signal::B},
                                       Sounded{Tone::C, bench::Signal::C}, Sounded{Tone::Tick, bench::Signal::Tick}}) {
        EXPECT_EQ(Span(lengthOf(signalFor(shippedSignals(), tone))), bench::burstLength(signal)) << nameOf(tone);
    }
    EXPECT_EQ(lengthOf(signalFor(shippedSignals(), Tone::A)), 1725ms);
    EXPECT_EQ(lengthOf(signalFor(shippedSignals(), Tone::B)), 950ms);
}

TEST(Signal, GainSoftensEverySample)
{
    const Signal& signal = signalFor(shippedSignals(), Tone::A);
    EXPECT_NEAR(ear::rmsDbfs(render(signal, 48000)) - ear::rmsDbfs(render(signal, 48000, {-6})), 6.0, 0.05);
}

TEST(SignalFile, ShippedIsGood)
{
    const auto parsed = parseSignals(shippedText());
    ASSERT_TRUE(parsed.isOk()) << parsed.fault().detail;
    EXPECT_EQ(parsed.value().size(), static_cast<std::size_t>(toneCount));
}

TEST(SignalFile, EveryFaultIsToldWithItsPlace)
{
    auto json = nlohmann::json::parse(shippedText());
    json["signals"][0]["peak_dbfs"] = 0; // would clip
    json["signals"][0]["groups"] = nlohmann::json::array();
    json["signals"][1]["pitch_hz"] = "high";
    json["signals"][2]["name"] = "D";
    const auto parsed = parseSignals(json.dump());
    ASSERT_FALSE(parsed.isOk());
    EXPECT_EQ(parsed.fault().kind, FaultKind::BadInput);
    for (const char* place : {"signals/0/peak_dbfs", "signals/0/groups", "signals/1/pitch_hz", "signals/2/name",
                              "C exactly once", "A exactly once"}) {
        EXPECT_THAT(parsed.fault().detail, HasSubstr(place));
    }
}

TEST(SignalFile, NoiseIsRefusedWithoutAThrow)
{
    for (const char* text : {"", "{", "[]", "null", "7", R"({"format":"mendbench-signals"})",
                             R"({"format":"mendbench-signals","version":1,"signals":7})",
                             R"({"format":"mendbench-signals","version":1,"signals":[3,null,"A"]})"}) {
        EXPECT_FALSE(parseSignals(text).isOk()) << text;
    }
    EXPECT_EQ(parseSignals(R"({"format":"mendbench-signals","version":2})").fault().kind, FaultKind::Newer);
}
