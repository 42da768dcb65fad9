// SPDX-License-Identifier: BSL-1.0
// What one density costs, and what the types and checks of the public interface add to the formula.
#include <aqueth/density.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/strength.hpp>

#include <benchmark/benchmark.h>

#include <random>
#include <vector>

namespace {

using namespace aqueth;
namespace r22 = aqueth::correlation::oiml_r22;

// A mixture and a temperature, over the whole range where every mixture is liquid; the same every time.
struct state {
    double w;
    double t;
    double density;
    double q;  // volume fraction at 20 °C
};

std::vector<state> const& states() {
    static std::vector<state> const all = [] {
        std::mt19937_64 random(22);
        std::uniform_real_distribution<double> fraction(0.0, 1.0);
        std::uniform_real_distribution<double> celsius_degrees(0.0, 40.0);
        std::vector<state> result(4096);
        for (state& s : result) {
            s.w = fraction(random);
            s.t = celsius_degrees(random);
            s.density = r22::density(s.w, s.t);
            s.q = r22::volume_fraction_from_mass_fraction(s.w, 20.0);
        }
        return result;
    }();
    return all;
}

// Times one call of f on each state in turn; the time printed is that of one call.
template <class F>
void each_state(benchmark::State& timing, F f) {
    std::vector<state> const& all = states();
    state const* const first = all.data();
    std::size_t const last = all.size() - 1;  // a power of two less one
    std::size_t i = 0;
    for (auto _ : timing) {
        benchmark::DoNotOptimize(f(first[i]));
        i = (i + 1) & last;
    }
}

void density_formula(benchmark::State& timing) {
    each_state(timing, [](state const& s) { return r22::density(s.w, s.t); });
}
BENCHMARK(density_formula);

void density_typed_and_checked(benchmark::State& timing) {
    each_state(timing, [](state const& s) { return density(mass_fraction(s.w), celsius(s.t)).value(); });
}
BENCHMARK(density_typed_and_checked);

void density_with_derivatives(benchmark::State& timing) {
    each_state(timing, [](state const& s) { return r22::density_with_derivatives(s.w, s.t); });
}
BENCHMARK(density_with_derivatives);

void density_at_one_temperature(benchmark::State& timing) {
    r22::isotherm<double> const at_20(20.0);
    each_state(timing, [&](state const& s) { return at_20.density(s.w); });
}
BENCHMARK(density_at_one_temperature);

void mass_fraction_from_density_formula(benchmark::State& timing) {
    each_state(timing, [](state const& s) { return r22::mass_fraction_from_density(s.density, s.t); });
}
BENCHMARK(mass_fraction_from_density_formula);

void mass_fraction_from_volume_fraction(benchmark::State& timing) {
    each_state(timing, [](state const& s) { return to<mass_fraction>(volume_fraction(s.q)).value(); });
}
BENCHMARK(mass_fraction_from_volume_fraction);

void alcoholmeter_to_true_strength(benchmark::State& timing) {
    // Readings that belong to strengths from 20 to 80 % vol, so that none leaves the scale.
    alcoholmeter const meter;
    std::vector<double> readings;
    for (state const& s : states())
        readings.push_back(
            meter.reading(to<mass_fraction>(by_volume(20.0 + 60.0 * s.q)), celsius(s.t)).percent());
    std::size_t i = 0;
    for (auto _ : timing) {
        benchmark::DoNotOptimize(meter.strength(by_volume(readings[i]), celsius(states()[i].t)).value());
        i = (i + 1) & (readings.size() - 1);
    }
}
BENCHMARK(alcoholmeter_to_true_strength);

}  // namespace
