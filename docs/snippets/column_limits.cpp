// SPDX-License-Identifier: BSL-1.0
// What a separation asks of a column.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    // [limits]
    boiling_curve const curve(standard_atmosphere);
    auto const pot = by_volume(11.0), wanted = by_volume(92.0);
    double const least = minimum_reflux(curve, pot, wanted);  // a column without end
    std::printf("least reflux ratio   %.2f\n", least);
    std::printf("least stages         %.2f, at total reflux\n", minimum_stages(curve, pot, wanted));
    std::printf("stages at reflux %.1f %.1f\n", 1.5 * least, stages_needed(curve, pot, wanted, 1.5 * least));
    // [limits]
}
