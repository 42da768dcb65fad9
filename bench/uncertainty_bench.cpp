// SPDX-License-Identifier: BSL-1.0
// A million draws of a dilution (JCGM 101): as the library made them before, one by one, and in blocks.
#include <aqueth/metrology/monte_carlo.hpp>

#include "comparison.hpp"
#include "measured_dilution.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <random>
#include <span>
#include <string>
#include <vector>

namespace {

using namespace aqueth;

constexpr std::size_t trials = 1000000;
std::vector<input_quantity> const inputs = test::dilution::inputs();

// The draws of the version before: every number by a call, normal ones by the polar method, results sorted by
// std::sort.
double as_before() {
    std::mt19937_64 bits(1);
    auto const uniform = [&] { return (static_cast<double>(bits() >> 11) + 0.5) * 0x1p-53; };
    auto const standardized = [&](input_quantity const& input) {
        if (input.distribution() == distribution::rectangular)
            return std::numbers::sqrt3 * (2.0 * uniform() - 1.0);
        for (;;) {
            double const u = 2.0 * uniform() - 1.0, v = 2.0 * uniform() - 1.0, w = u * u + v * v;
            if (w <= 1.0) return u * std::sqrt(-2.0 * std::log(w) / w);
        }
    };
    std::vector<double> results, x(inputs.size());
    results.reserve(trials);
    for (std::size_t k = 0; k < trials; ++k) {
        for (std::size_t i = 0; i < inputs.size(); ++i)
            x[i] = inputs[i].estimate() + inputs[i].standard_uncertainty() * standardized(inputs[i]);
        results.push_back(test::strength_of_product(std::span<double const>(x)));
    }
    std::sort(results.begin(), results.end());
    detail::spread const of(results);
    return of.squares;
}

void register_all() {
    std::string const million = "a million draws of a dilution, twelve inputs";
    bench::all_at_once(
        million, "one by one, std::mt19937_64, polar method, std::sort",
        [] { benchmark::DoNotOptimize(as_before()); }, trials);
    bench::all_at_once(
        million, "aqueth, one by one",
        [] { benchmark::DoNotOptimize(monte_carlo(test::strength_of_product, inputs, trials)); }, trials);
    bench::all_at_once(
        million, "aqueth, arrays: in_blocks",
        [] { benchmark::DoNotOptimize(monte_carlo(in_blocks(test::strength_of_product), inputs, trials)); },
        trials);
}

}  // namespace

int main(int argc, char** argv) {
    register_all();
    return bench::run(argc, argv);
}
