// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>

#include <array>
#include <cstddef>
#include <vector>

namespace aqueth::numeric {

/// Tabulated functions of a fraction from 0 to 1, for inner loops: cubic Hermite interpolation of values and
/// slopes. The grid is uniform in x (1 + s)/(x + s), s = 1/10. It is finer at the weak end, where aqueous
/// alcohol changes fastest.
/// @tparam Columns number of functions
template <std::size_t Columns>
class cubic_table {
public:
    /// values and slopes of the functions at one node
    using row = std::array<value_and_slope<double>, Columns>;

    /// @param f callable: x -> row, called at 513 increasing values of x from 0 to 1
    template <class F>
    explicit cubic_table(F const& f) {
        nodes_.reserve(intervals + 1);
        for (std::size_t i = 0; i <= intervals; ++i) {
            double const place = static_cast<double>(i) / intervals;
            double const rest = 1.0 + skew - place;
            double const step = skew * (1.0 + skew) / (rest * rest) / intervals;  // change of x per interval
            row node = f(skew * place / rest);
            for (auto& each : node) each.slope *= step;
            nodes_.push_back(node);
        }
    }

    /// Limits the slopes of a function to three times the chords' wherever its nodes are monotone. The cubics
    /// are then monotone too: the condition of F. N. Fritsch and R. E. Carlson (1980).
    /// @param column which
    void hold_monotone(std::size_t column) {
        for (std::size_t i = 0; i < intervals; ++i) {
            auto& a = nodes_[i][column];
            auto& b = nodes_[i + 1][column];
            double const chord = b.value - a.value;
            for (double* const slope : {&a.slope, &b.slope}) {
                if (*slope * chord > 3.0 * chord * chord) *slope = 3.0 * chord;
            }
        }
    }

    /// @param x      0 to 1; not checked
    /// @param column which function
    /// @return its value
    double value(double x, std::size_t column) const {
        position const at(x);
        auto const& a = nodes_[at.left][column];
        auto const& b = nodes_[at.left + 1][column];
        double const rise = b.value - a.value;
        double const from = a.slope - rise;
        double const to = rise - b.slope;
        double const u = at.within;
        return a.value + u * (rise + (1.0 - u) * (from * (1.0 - u) + to * u));
    }

    /// @param x      0 to 1; not checked
    /// @param column which function
    /// @return its value, and its derivative with respect to x
    value_and_slope<double> value_and_slope_at(double x, std::size_t column) const {
        position const at(x);
        auto const& a = nodes_[at.left][column];
        auto const& b = nodes_[at.left + 1][column];
        double const rise = b.value - a.value;
        double const from = a.slope - rise;
        double const to = rise - b.slope;
        double const u = at.within;
        double const v = 1.0 - u;
        double const bend = from * v + to * u;
        double const slope = rise + (v - u) * bend + u * v * (to - from);
        double const sum = x + skew;
        return {a.value + u * (rise + v * bend), slope * (skew * (1.0 + skew) * intervals / (sum * sum))};
    }

private:
    static constexpr std::size_t intervals = 512;
    static constexpr double skew = 0.1;

    struct position {
        std::size_t left;
        double within;

        explicit position(double x) {
            double const p = x * (1.0 + skew) / (x + skew) * static_cast<double>(intervals);
            auto const i = static_cast<std::size_t>(p);
            left = i < intervals ? i : intervals - 1;
            within = p - static_cast<double>(left);
        }
    };

    std::vector<row> nodes_;
};

}  // namespace aqueth::numeric
