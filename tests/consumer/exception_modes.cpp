// SPDX-License-Identifier: BSL-1.0
// Two sources in one program, one compiled with exceptions and one (exception_modes_off.cpp) without, which
// is linked first: each keeps its own way to raise an error.
#include <aqueth/aqueth.hpp>

#include <cstdio>

double density_without_exceptions(double mass_percent);

int main() {
    using namespace aqueth;
    std::printf("%.1f kg/m3\n", density_without_exceptions(40.0));
    try {
        std::printf("%.1f kg/m3\n", density(by_mass(40.0), celsius(99.0)).value());
    } catch (refusal const& error) {
        std::printf("caught: %s\n", error.what());
        return 0;
    }
    return 1;
}
