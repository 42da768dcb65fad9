// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

/// Cubics between two nodes, given by the values and slopes there, and what keeps them monotone.
namespace aqueth::inline AQUETH_ABI::numeric {

/// Cubic over the unit interval.
/// @param a      value and slope at 0
/// @param b      value and slope at 1
/// @param within where, 0 to 1; not checked
/// @return its value and slope there; at 0 exactly those of `a`
constexpr value_and_slope<double> unit_cubic(value_and_slope<double> const& a,
                                             value_and_slope<double> const& b, double within) {
    double const rest = 1.0 - within;
    double const rise = b.value - a.value;
    double const from = a.slope - rise;
    double const to = rise - b.slope;
    double const bend = from * rest + to * within;
    return {a.value + within * (rise + rest * bend),
            rise + (rest - within) * bend + within * rest * (to - from)};
}

/// Holds the slopes at the ends of a cubic over the unit interval to three times its chord's, if they have
/// the chord's sign: then the cubic goes one way.
/// @param a value and slope at 0
/// @param b value and slope at 1
/// @par Source
/// Condition for a monotone cubic @ref source_fritsch_carlson
constexpr void hold_monotone(value_and_slope<double>& a, value_and_slope<double>& b) {
    double const chord = b.value - a.value;
    for (double* const slope : {&a.slope, &b.slope}) {
        if (*slope * chord > 3.0 * chord * chord) *slope = 3.0 * chord;
    }
}

/// A function known at some points: a cubic between each two, which goes one way where the points do.
///
/// The slope at a point is a weighted harmonic mean of the chords on both sides, 0 where they have different
/// signs. It is less than three times either chord, so `hold_monotone` has nothing left to do. At the ends it
/// is the chord's.
/// @par Source
/// Slopes by F. N. Fritsch and J. Butland @ref source_fritsch_carlson
class monotone_cubic {
public:
    /// @param x two or more places, rising; not checked
    /// @param y the values there, as many
    monotone_cubic(std::vector<double> x, std::vector<double> const& y) : x_(std::move(x)) {
        std::size_t const last = x_.size() - 1;
        auto const chord = [&](std::size_t i) { return (y[i + 1] - y[i]) / (x_[i + 1] - x_[i]); };
        points_.push_back({y[0], chord(0)});
        for (std::size_t i = 1; i < last; ++i) {
            double const before = chord(i - 1), after = chord(i);
            double const left = x_[i] - x_[i - 1], right = x_[i + 1] - x_[i];
            double const of_before = left + 2.0 * right, of_after = 2.0 * left + right;
            points_.push_back({y[i], before * after > 0.0
                                         ? (of_before + of_after) / (of_before / before + of_after / after)
                                         : 0.0});
        }
        points_.push_back({y[last], chord(last - 1)});
    }

    /// @param x from the first place to the last; not checked
    /// @return value and slope there
    value_and_slope<double> operator()(double x) const {
        auto const above = std::upper_bound(x_.begin() + 1, x_.end(), x);
        if (above == x_.end()) return points_.back();
        auto const i = static_cast<std::size_t>(above - x_.begin()) - 1;
        double const width = x_[i + 1] - x_[i];
        auto a = points_[i], b = points_[i + 1];
        a.slope *= width;
        b.slope *= width;
        auto const found = unit_cubic(a, b, (x - x_[i]) / width);
        return {found.value, found.slope / width};
    }

private:
    std::vector<double> x_;
    std::vector<value_and_slope<double>> points_;
};

}  // namespace aqueth::inline AQUETH_ABI::numeric
