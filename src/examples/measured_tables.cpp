// SPDX-License-Identifier: BSL-1.0
// An equilibrium table that somebody measured: can it be trusted, and what does it say between its points?
#include <aqueth/measured_equilibrium.hpp>

#include <cstdio>

// [tables]
// x, y and the boiling temperature in °C, as a file would hold them; the figures are invented
char const* const good_run = R"(# Quillbeck stillhouse, glass ebulliometer, 101.3 kPa
x,y,t
0.020,0.185,95.1
0.055,0.340,90.2
0.110,0.455,86.0
0.190,0.523,83.5
0.300,0.574,81.8
0.420,0.619,80.5
0.550,0.674,79.5
0.690,0.747,78.7
0.820,0.836,78.3
0.930,0.927,78.2
)";

// the same still without its lagging: vapour condenses on the way up and runs back, and what comes over is
// too strong
char const* const bad_run = R"(x,y,t
0.020,0.270,95.1
0.055,0.455,90.2
0.110,0.565,86.0
0.190,0.625,83.5
0.300,0.665,81.8
0.420,0.703,80.5
0.550,0.745,79.5
0.690,0.800,78.7
0.820,0.868,78.3
0.930,0.938,78.2
)";
// [tables]

// [body]
using namespace aqueth;

void show(char const* name, char const* csv) {
    measured_equilibrium const table(parse_measured_points(csv), 101.3 * kilopascal);
    consistency const check = table.check();
    std::printf("%s: %zu points\n", name, table.points().size());
    std::printf("  area test          %.1f %%\n", check.area_percent);
    std::printf("  off the model, y   %.4f on average, %.4f at most\n", check.mean_vapour_deviation,
                check.largest_vapour_deviation);
    std::printf("  off the model, K   %.2f on average, %.2f at most\n", check.mean_temperature_deviation,
                check.largest_temperature_deviation);
    std::printf("  %s\n", check.trusted ? "to be trusted" : "not to be trusted");
    mole_fraction const x(0.15);
    std::printf("  over x = 0.15      y = %.4f at %.2f °C\n", table.vapour(x).value(),
                table.temperature(x).celsius());
}

int main() {
    show("lagged still", good_run);
    show("bare still", bad_run);
    auto const model = bubble_point(mole_fraction(0.15), 101.3 * kilopascal);
    std::printf("the model over x = 0.15: y = %.4f at %.2f °C\n", model.vapour.value(),
                model.temperature.celsius());
}
// [body]
