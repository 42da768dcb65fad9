// SPDX-License-Identifier: BSL-1.0
// The uncertainty of what only a typed operation gives: how warm a fresh mixture comes out.
#include <aqueth/blending.hpp>
#include <aqueth/metrology/uncertainty.hpp>

#include <cstdio>
#include <vector>

int main() {
    // [body]
    using namespace aqueth;
    std::vector<input_quantity> const inputs{
        input_quantity::normal("strength of the spirit", "% vol", 79.10, 0.2),
        input_quantity::normal("temperature of the spirit", "°C", 28.0, 0.5),
        input_quantity::normal("temperature of the water", "°C", 14.0, 0.5),
    };
    auto const warmth = [](std::span<double const> x) {
        auto const spirit = parcel::of(1.85 * litre, by_volume(x[0]), celsius(x[1]));
        return dilute(spirit, by_volume(43.0), water_at(celsius(x[2]))).product.temperature().celsius();
    };
    auto const budget = propagate_by_differences(warmth, inputs);
    for (auto const& line : budget.lines) {
        std::printf("%-26s sensitivity %7.4f, known to %.0e\n", line.input.name().c_str(), line.sensitivity,
                    line.sensitivity_error);
    }
    std::printf("the mixture warms to %.2f °C, standard uncertainty %.2f °C\n", budget.estimate,
                budget.standard_uncertainty);
    // [body]
}
