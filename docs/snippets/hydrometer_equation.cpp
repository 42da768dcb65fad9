// SPDX-License-Identifier: BSL-1.0
// The equation of the glass hydrometer, by hand, for a reading of 81.5 % vol at 28 °C.
#include <aqueth/hydrometer.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const mark = by_volume(81.5);
    double const R = density(mark, celsius(20.0)).value();                // what the mark stands for
    double const growth = 1.0 + soda_lime_glass.value() * (28.0 - 20.0);  // of the glass
    double const rho = R / growth;                                        // density of the liquid at 28 °C
    auto const w = mass_fraction_from_density(rho * kilogram_per_cubic_metre, celsius(28.0));

    std::printf("R                    %.3f kg/m3\n", R);
    std::printf("1 + alpha (t - T0)   %.6f\n", growth);
    std::printf("rho at 28 °C         %.3f kg/m3\n", rho);
    std::printf("mass fraction        %.3f %%\n", w.percent());
    std::printf("strength             %.3f %% vol at 20 °C\n", to<volume_fraction>(w).percent());
    std::printf("hydrometer class     %.3f\n", alcoholometer{}.strength(mark, celsius(28.0)).percent());
    // [body]
}
