// SPDX-License-Identifier: BSL-1.0
// What an equilibrium costs: from the model, which solves for it, and from a curve, which looks it up. An
// integration of a run asks for thousands; these figures say when a curve pays for its making.
#include <aqueth/equilibrium.hpp>
#include <aqueth/equilibrium_curve.hpp>

#include <benchmark/benchmark.h>

#include <cstddef>
#include <vector>

namespace {

using namespace aqueth;

struct question {
    mole_fraction strength;
    units::temperature temperature = celsius(85.0);
    units::pressure pressure = standard_atmosphere;
};

// Times f over questions in turn. The compiler must take it that each round may have changed them: otherwise
// all that depends on the temperature alone is taken out of the loop.
template <class F>
void time_over(benchmark::State& timing, std::vector<question> questions, F const& f) {
    std::size_t i = 0;
    for (auto _ : timing) {
        benchmark::DoNotOptimize(questions.data());
        benchmark::ClobberMemory();
        benchmark::DoNotOptimize(f(questions[i]));
        i = i + 1 == questions.size() ? 0 : i + 1;
    }
}

// Weak to strong, so that no branch and no start of a solver suits all of them.
std::vector<question> weak_to_strong() {
    std::vector<question> result;
    for (double const x : {0.01, 0.04, 0.09, 0.17, 0.3, 0.5, 0.7, 0.85}) result.push_back({mole_fraction(x)});
    return result;
}

void make_curve(benchmark::State& timing) {
    for (auto _ : timing) benchmark::DoNotOptimize(equilibrium_curve(standard_atmosphere));
}
BENCHMARK(make_curve);

void curve_vapour(benchmark::State& timing) {
    equilibrium_curve const curve(standard_atmosphere);
    time_over(timing, weak_to_strong(), [&](question const& q) { return curve.vapour(q.strength); });
}
BENCHMARK(curve_vapour);

void bubble_point_at_pressure(benchmark::State& timing) {
    time_over(timing, weak_to_strong(),
              [](question const& q) { return bubble_point(q.strength, q.pressure); });
}
BENCHMARK(bubble_point_at_pressure);

void bubble_point_at_temperature(benchmark::State& timing) {
    time_over(timing, weak_to_strong(),
              [](question const& q) { return bubble_point(q.strength, q.temperature); });
}
BENCHMARK(bubble_point_at_temperature);

void dew_point_at_pressure(benchmark::State& timing) {
    time_over(timing, weak_to_strong(), [](question const& q) { return dew_point(q.strength, q.pressure); });
}
BENCHMARK(dew_point_at_pressure);

// At 85 °C and one atmosphere a feed between 0.124 and 0.474 splits; both limits and the tie line are found.
void flash_that_splits(benchmark::State& timing) {
    time_over(timing, {{mole_fraction(0.2)}, {mole_fraction(0.3)}, {mole_fraction(0.4)}},
              [](question const& q) { return isothermal_flash(q.strength, q.temperature, q.pressure); });
}
BENCHMARK(flash_that_splits);

}  // namespace
