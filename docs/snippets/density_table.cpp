// SPDX-License-Identifier: BSL-1.0
// Density by strength and temperature.
#include <aqueth/density.hpp>
#include <aqueth/strength.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    double const temperatures[] = {0.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0};

    std::printf("density, kg/m3\n\n%% vol \\ °C");
    for (double const t : temperatures) std::printf("%9.0f", t);
    std::printf("\n");
    for (double q = 0.0; q <= 100.0; q += 10.0) {
        std::printf("%5.0f     ", q);
        for (double const t : temperatures) {
            std::printf("%9.2f", density(by_volume(q), celsius(t)).value());
        }
        std::printf("\n");
    }
    // [body]
}
