// SPDX-License-Identifier: BSL-1.0
// The whole library in a build without exceptions and run-time types: it answers, and refuses by ending
// the program.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    std::printf("%.1f kg/m3\n", density(by_mass(40.0), celsius(20.0)).value());
    std::fflush(stdout);
    static_cast<void>(density(by_mass(40.0), celsius(95.0)));
    std::puts("not refused");
}
