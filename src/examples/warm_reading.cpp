// SPDX-License-Identifier: BSL-1.0
// A reading in warm spirit: the true strength, how sure it is, and what else it could have shown.
#include <aqueth/hydrometer.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const meter = alcoholometer{};  // % vol at 20 °C, soda-lime glass
    auto const true_strength = [&](double shown, double degrees) {
        return meter.strength(by_volume(shown), celsius(degrees)).percent();
    };
    std::printf("shows 81.5 at 28 °C: the spirit has %.2f %% vol at 20 °C\n\n", true_strength(81.5, 28.0));
    std::printf("thermometer 0.5 K off:   %.2f to %.2f\n", true_strength(81.5, 28.5),
                true_strength(81.5, 27.5));
    std::printf("reading 0.2 %% vol off:   %.2f to %.2f\n\n", true_strength(81.3, 28.0),
                true_strength(81.7, 28.0));

    mass_fraction const w = meter.composition(by_volume(81.5), celsius(28.0));
    for (double const t : {10.0, 15.0, 20.0, 25.0, 28.0}) {
        std::printf("at %2.0f °C it shows %.1f\n", t, meter.reading(w, celsius(t)).percent());
    }
    // [body]
}
