#include "app/sound/lines.h"

#include <gtest/gtest.h>

using namespace mend::sound;

TEST(Lines, EveryCommandReadsBackAsItself)
{
    for (const Command& command :
         {Command(Play{7, Tone::A, {-6.5}, "Wipe. Heron bowl. Six minutes."}),
          Command(Play{1, Tone::PedalDone, {}, ""}), Command(Say{8, {-6.5}, "And 4 more."}), Command(Stop{}),
          Command(Probe{}), Command(ListDevices{}), Command(UseDevice{"alsa output.1"}), Command(UseDevice{}),
          Command(UseVoice{"de"}), Command(Quit{})}) {
        EXPECT_EQ(commandFrom(toLine(command)), command) << toLine(command);
    }
}

TEST(Lines, EveryReplyReadsBackAsItself)
{
    for (const Reply& reply :
         {Reply(FirstSample{3, std::chrono::microseconds(123456789012)}), Reply(Heard{3}),
          Reply(NotHeard{4, Unheard::Stalled}), Reply(Spoken{5}), Reply(NotSpoken{6, Unheard::LateEngine}),
          Reply(StateNow{DeviceState::Ready, "bench sink"}), Reply(StateNow{DeviceState::NoDevice, ""}),
          Reply(Device{"a b", "The small speaker"}), Reply(DevicesEnd{})}) {
        EXPECT_EQ(replyFrom(toLine(reply)), reply) << toLine(reply);
    }
}

TEST(Lines, WordsCannotSmuggleASecondLine)
{
    const std::string line = toLine(Command(Play{1, Tone::B, {}, "one\nquit"}));
    EXPECT_EQ(line.find('\n'), std::string::npos);
    EXPECT_EQ(commandFrom(line), Command(Play{1, Tone::B, {}, "one quit"}));
}

TEST(Lines, WhatIsNotOursIsRefused)
{
    for (const char* line : {"", "play", "play 1", "play 1 D 0", "play x A 0", "play 1 A 6", "play 1 A nan",
                             "play 1 A loud", "play 1 A -6x", "stop now", "louder"}) {
        EXPECT_EQ(commandFrom(line), std::nullopt) << line;
    }
    for (const char* line :
         {"", "heard", "heard x", "unheard 1", "unheard 1 because", "state", "state fine", "first-sample 1"}) {
        EXPECT_EQ(replyFrom(line), std::nullopt) << line;
    }
}
