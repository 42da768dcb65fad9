// SPDX-License-Identifier: BSL-1.0
// True strength by reading and temperature.
#include <aqueth/hydrometer.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    double const temperatures[] = {10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 24.0, 26.0, 28.0, 30.0};
    alcoholmeter const meter;

    std::printf("%% vol at 20 °C, from the reading of an alcoholmeter for 20 °C\n\nreading \\ °C");
    for (double const t : temperatures) std::printf("%6.0f", t);
    std::printf("\n");
    for (double q = 40.0; q <= 95.0; q += 5.0) {
        std::printf("%7.0f     ", q);
        for (double const t : temperatures)
            std::printf("%6.1f", meter.strength(by_volume(q), celsius(t)).percent());
        std::printf("\n");
    }
}
