// SPDX-License-Identifier: BSL-1.0
// What an altitude does to boiling.
#include <aqueth/atmosphere.hpp>
#include <aqueth/equilibrium.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    std::printf("altitude   air      water     8 %% vol   its vapour   azeotrope\n");
    for (double const metres : {0.0, 250.0, 500.0, 1000.0, 1500.0, 2000.0, 3000.0}) {
        auto const p = pressure_at_altitude(metres * metre);
        auto const wash = bubble_point(by_volume(8.0), p);
        std::printf("%5.0f m  %6.1f hPa  %6.2f °C  %6.2f °C  %5.1f %% vol  %6.2f °C\n", metres,
                    in(p, hectopascal), bubble_point(by_volume(0.0), p).temperature.celsius(),
                    wash.temperature.celsius(), to<volume_fraction>(wash.vapour).percent(),
                    azeotrope(p).temperature.celsius());
    }
    // [body]
}
