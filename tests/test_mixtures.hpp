// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

/// Boiling mixtures whose answers are known, for tests of columns and runs.
namespace aqueth::test {

/// Constant relative volatility, boiling from 100 to 80 °C, heats of vaporization of 40 kJ/mol.
struct ideal_mixture {
    double alpha;

    double vapour(double x) const { return alpha * x / (1.0 + (alpha - 1.0) * x); }
    numeric::value_and_slope<double> vapour_with_slope(double x) const {
        double const scale = 1.0 + (alpha - 1.0) * x;
        return {alpha * x / scale, alpha / (scale * scale)};
    }
    double temperature(double x) const { return 373.15 - 20.0 * x; }
    numeric::value_and_slope<double> liquid_enthalpy(double) const { return {0.0, 0.0}; }
    double vapour_enthalpy(double) const { return 40000.0; }
};

/// Straight lines between the rows of a table of x and y from (0, 0) to (1, 1), heats as above.
class table_mixture {
public:
    explicit table_mixture(std::vector<std::pair<double, double>> rows) : rows_(std::move(rows)) {
        rows_.insert(rows_.begin(), {0.0, 0.0});
        rows_.push_back({1.0, 1.0});
    }
    double vapour(double x) const { return vapour_with_slope(x).value; }
    numeric::value_and_slope<double> vapour_with_slope(double x) const {
        auto above = std::upper_bound(rows_.begin() + 1, rows_.end() - 1, x,
                                      [](double v, auto const& row) { return v < row.first; });
        auto const below = above - 1;
        double const slope = (above->second - below->second) / (above->first - below->first);
        return {below->second + slope * (x - below->first), slope};
    }
    double temperature(double x) const { return 373.15 - 20.0 * x; }
    numeric::value_and_slope<double> liquid_enthalpy(double) const { return {0.0, 0.0}; }
    double vapour_enthalpy(double) const { return 40000.0; }

private:
    std::vector<std::pair<double, double>> rows_;
};

}  // namespace aqueth::test
