// SPDX-License-Identifier: BSL-1.0
// Array functions on one core and on all of them, by the clock: keep the other cores idle.
#include <aqueth/array_parallel.hpp>

#include "comparison.hpp"

#include <cstddef>
#include <execution>
#include <random>
#include <string>

namespace {

using namespace aqueth;

constexpr std::size_t size = 1000000;  // more than the second cache of a core, less than the third

bench::numbers<double> between(double low, double high, unsigned seed) {
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> any(low, high);
    bench::numbers<double> result(size);
    for (double& each : result) each = any(random);
    return result;
}

bench::numbers<double> const w = between(0.05, 0.95, 1);
bench::numbers<double> const t = between(0.0, 40.0, 2);
bench::numbers<double> const pascals = between(70e3, 105e3, 3);
bench::numbers<double> out(size);

template <class F>
void compare(std::string const& operation, std::size_t count, F f) {
    bench::by_the_clock(
        operation, "aqueth, arrays, one core", [f] { f(); }, count);
    bench::by_the_clock(
        operation, "the same, std::execution::par", [f] { f(std::execution::par); }, count);
}

void register_all() {
    compare("density, a million", size, [](auto const&... policy) { arrays::density(policy..., w, t, out); });
    compare("density at a fixed temperature, a million", size,
            [](auto const&... policy) { arrays::density(policy..., w, celsius(20.0), out); });
    compare("true strength from a reading, a million", size,
            [](auto const&... policy) { arrays::strength(policy..., alcoholometer{}, w, t, out); });
    constexpr std::size_t few = 100000;
    compare("bubble temperature, a hundred thousand", few, [](auto const&... policy) {
        arrays::bubble_temperature(policy..., std::span(w).first(few), std::span(pascals).first(few),
                                   std::span(out).first(few));
    });
}

}  // namespace

int main(int argc, char** argv) {
    register_all();
    return bench::run(argc, argv);
}
