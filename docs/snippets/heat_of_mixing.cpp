// SPDX-License-Identifier: BSL-1.0
// How much heat mixing sets free or takes up, and how warm strong spirit and water become.
#include <aqueth/blending.hpp>
#include <aqueth/caloric.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    std::printf("excess enthalpy, J/mol         5 °C    20 °C    40 °C    78 °C   100 °C\n");
    for (double const moles : {5.0, 10.0, 15.0, 20.0, 30.0, 50.0, 70.0, 90.0}) {
        std::printf("%4.0f %% mol (%4.1f %% mass)     ", moles, to<mass_fraction>(by_moles(moles)).percent());
        for (double const t : {5.0, 20.0, 40.0, 78.0, 100.0})
            std::printf("%7.0f  ", in(excess_enthalpy(by_moles(moles), celsius(t)), joule_per_mole));
        std::printf("\n");
    }

    std::printf("\nspirit and water, both at 20 °C; temperature of the fresh mixture, °C\n");
    std::printf("%% vol of the spirit    diluted to 60       50       40       30       20       10\n");
    for (double const from : {96.0, 90.0, 80.0, 70.0}) {
        std::printf("%19.0f         ", from);
        for (double const target : {60.0, 50.0, 40.0, 30.0, 20.0, 10.0}) {
            auto const spirit = parcel::of(1.0 * litre, by_volume(from), celsius(20.0));
            auto const fresh = dilute(spirit, by_volume(target), water_at(celsius(20.0))).product;
            std::printf("%7.1f  ", fresh.temperature().celsius());
        }
        std::printf("\n");
    }
    // [body]
}
