// SPDX-License-Identifier: BSL-1.0
// Density and specific gravity of one spirit, in vacuo and in air, and the way back.
#include <aqueth/density.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/weighing.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const w = to<mass_fraction>(by_volume(40.0));
    auto const at_20_20 = gravity_reference{celsius(20.0), celsius(20.0)};
    auto const at_20_4 = gravity_reference{celsius(20.0), celsius(4.0)};
    auto const at_60_60 = gravity_reference{fahrenheit(60.0), fahrenheit(60.0)};
    auto const at_60_60_in_air = gravity_reference{fahrenheit(60.0), fahrenheit(60.0), medium::air};

    std::printf("density at 20 °C       %.3f kg/m3\n", density(w, celsius(20.0)).value());
    std::printf("  in air               %.3f kg/m3\n", density_in_air(density(w, celsius(20.0))).value());
    std::printf("20/20 °C in vacuo      %.5f\n", specific_gravity_of(w, at_20_20).value());
    std::printf("20/4 °C in vacuo       %.5f\n", specific_gravity_of(w, at_20_4).value());
    std::printf("60/60 °F in vacuo      %.5f\n", specific_gravity_of(w, at_60_60).value());
    std::printf("60/60 °F in air        %.5f\n", specific_gravity_of(w, at_60_60_in_air).value());

    auto const strength = [](double gravity, gravity_reference const& reference) {
        return to<volume_fraction>(mass_fraction_from_specific_gravity(specific_gravity(gravity), reference))
            .percent();
    };
    std::printf("0.95 at 20/20          %.2f %% vol at 20 °C\n", strength(0.95, at_20_20));
    std::printf("0.95 at 60/60          %.2f %% vol at 20 °C\n", strength(0.95, at_60_60));
    std::printf("0.95 at 60/60 in air   %.2f %% vol at 20 °C\n", strength(0.95, at_60_60_in_air));
    // [body]
}
