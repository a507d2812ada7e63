#include <cstdio>
#include <cstdlib>
#include <vector>

// A read past the end, planted: the address sanitizer must end this program with a failure, or its silence
// on the other tests means nothing.
int main(int argc, char**)
{
    const std::vector<int> fragments(3, argc);
    const int* past = fragments.data() + fragments.size();
    std::printf("%d\n", *past);
    return EXIT_SUCCESS;
}
