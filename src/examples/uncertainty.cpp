// SPDX-License-Identifier: BSL-1.0
// The uncertainty of a strength read in warm spirit: its budget, and a million draws beside it.
#include <aqueth/metrology/instruments.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>

#include <cstdio>
#include <vector>

int main() {
    // [body]
    using namespace aqueth;
    double const readings[] = {81.5, 81.6, 81.4, 81.6, 81.4};
    std::vector<input_quantity> const inputs{
        input_quantity::repeated("reading", "% vol", readings),
        error_of(*find_instrument_class("alcoholometer-fifths")),
        input_quantity::normal("temperature", "°C", 28.0, 0.1),
        input_quantity::expanded("correction of the thermometer", "°C", 0.2, 0.1, 2.0),  // its certificate
    };
    auto const strength = [](auto const& x) {  // once, for numbers and for differentiation
        auto const shown = (x[0] + x[1]) / 100.0, t = x[2] + x[3];
        auto const w = measurement_model::mass_fraction_from_reading(shown, t);
        return 100.0 * measurement_model::volume_fraction(w);
    };
    auto const budget = propagate(strength, inputs);
    for (auto const& line : budget.lines) {
        std::printf("%-46s %7.4f %-6s %8.4f %7.4f %5.1f %%\n", line.input.name().c_str(),
                    line.input.standard_uncertainty(), line.input.unit().c_str(), line.sensitivity,
                    line.contribution, 100.0 * line.share);
    }
    std::printf("strength %.2f %% vol, standard uncertainty %.3f %% vol, %.2f %% vol at 95 %% (k = %.2f)\n\n",
                budget.estimate, budget.standard_uncertainty, budget.expanded_uncertainty(0.95),
                budget.coverage_factor(0.95));

    auto const drawn = monte_carlo(strength, inputs, 1000000);
    auto const interval = drawn.interval(0.95);
    std::printf("a million draws: %.2f to %.2f %% vol; the budget says %.2f to %.2f\n", interval.lower,
                interval.upper, budget.estimate - budget.expanded_uncertainty(0.95),
                budget.estimate + budget.expanded_uncertainty(0.95));
    // [body]
}
