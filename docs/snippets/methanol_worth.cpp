// SPDX-License-Identifier: BSL-1.0
// Share of methanol that 0.0002 in the refractive index stands for.
#include <aqueth/density.hpp>
#include <aqueth/refraction.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    std::puts("% mass of ethanol   0.0002 in the index, % of the alcohol");
    for (double const percent : {5.1, 10.0, 20.0, 40.0, 60.0, 90.0}) {
        auto const found =
            find_methanol(density(by_mass(percent), celsius(20.0)), refractive_index_of(by_mass(percent)));
        std::printf("%17.1f %28.1f\n", percent, 100.0 * 0.0002 * found.share_per_index);
    }
}
