// SPDX-License-Identifier: BSL-1.0
// What the rule "a warm sample reads high by about 0.3 % vol for each kelvin" is really worth.
#include <aqueth/hydrometer.hpp>

#include <cmath>
#include <cstdio>

namespace {

// [body]
using namespace aqueth;

// how much an alcoholometer for 20 °C reads high that shows `reading` in a sample `warmer` kelvins above 20
// °C
double reads_high_by(double reading, double warmer) {
    return reading - alcoholometer{}.strength(by_volume(reading), celsius(20.0 + warmer)).percent();
}
// [body]

double const kelvins_warmer[] = {-10.0, -5.0, 1.0, 5.0, 10.0, 15.0, 20.0};

/// so that a trifle below zero does not print as -0.0
double rounded(double value, int decimals) {
    double const scale = std::pow(10.0, decimals);
    return std::round(value * scale) / scale + 0.0;
}

template <class F>
void table(char const* title, int decimals, F const& value) {
    std::printf("%s\n\nreading \\ K warmer", title);
    for (double const k : kelvins_warmer) std::printf("%+8.0f", k);
    std::printf("\n");
    for (double const q : {10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0,
                           60.0, 65.0, 70.0, 75.0, 80.0, 85.0, 90.0, 92.0, 94.0, 96.0}) {
        std::printf("%9.0f         ", q);
        for (double const k : kelvins_warmer) std::printf("%8.*f", decimals, rounded(value(q, k), decimals));
        std::printf("\n");
    }
}

}  // namespace

int main() {
    table("reads high by % vol for each kelvin (the rule: 0.30 everywhere)", 2,
          [](double q, double k) { return reads_high_by(q, k) / k; });
    std::printf("\n");
    table("strength by the rule less true strength, % vol", 1,
          [](double q, double k) { return reads_high_by(q, k) - 0.3 * k; });
}
