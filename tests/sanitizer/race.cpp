#include <thread>

// A true data race, planted: two threads count in one variable with nothing between them. The thread
// sanitizer must end this program with a failure, or its silence on the other tests means nothing.
int main()
{
    int taps = 0;
    const auto count = [&taps] {
        for (int i = 0; i < 100'000; ++i) {
            ++taps;
        }
    };
    std::thread first(count);
    std::thread second(count);
    first.join();
    second.join();
    return taps < 0 ? 1 : 0;
}
