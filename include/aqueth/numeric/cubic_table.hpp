// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/monotone_cubic.hpp>
#include <aqueth/numeric/polynomial.hpp>

#include <array>
#include <cstddef>
#include <vector>

namespace aqueth::inline AQUETH_ABI::numeric {

/// Tabulated functions of a fraction from 0 to 1, for inner loops: cubic Hermite interpolation of values and
/// slopes. The grid is uniform in x (1 + s)/(x + s), s = 1/10. It is finer at the weak end, where aqueous
/// alcohol changes fastest.
/// @tparam Columns number of functions
template <std::size_t Columns>
class cubic_table {
    static constexpr std::size_t intervals = 512;
    static constexpr double skew = 0.1;

public:
    /// values and slopes of the functions at one node
    using row = std::array<value_and_slope<double>, Columns>;

    /// A place in the table.
    struct position {
        int left;       ///< index of the node before it
        double within;  ///< how far it is to the next node, 0 to 1

        /// @param x 0 to 1; not checked
        explicit position(double x) {
            double const p = x * (1.0 + skew) / (x + skew) * static_cast<double>(intervals);
            constexpr int last = static_cast<int>(intervals) - 1;
            int const i = static_cast<int>(p);
            left = i < last ? i : last;
            within = p - static_cast<double>(left);
        }
    };

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

    /// Makes the cubics of a column go one way wherever it goes one way from node to node.
    /// @param column which
    void hold_monotone(std::size_t column) {
        for (std::size_t i = 0; i < intervals; ++i) {
            numeric::hold_monotone(nodes_[i][column], nodes_[i + 1][column]);
        }
    }

    /// @param i      index of a node, 0 to 512; not checked
    /// @param column which function
    /// @return its value there, and its slope per interval
    value_and_slope<double> const& node(int i, std::size_t column) const {
        return nodes_[static_cast<std::size_t>(i)][column];
    }

    /// @param x      0 to 1; not checked
    /// @param column which function
    /// @return its value
    double value(double x, std::size_t column) const {
        position const at(x);
        return unit_cubic(node(at.left, column), node(at.left + 1, column), at.within).value;
    }

    /// @param x      0 to 1; not checked
    /// @param column which function
    /// @return its value, and its derivative with respect to x
    value_and_slope<double> value_and_slope_at(double x, std::size_t column) const {
        position const at(x);
        auto const found = unit_cubic(node(at.left, column), node(at.left + 1, column), at.within);
        double const sum = x + skew;
        return {found.value, found.slope * (skew * (1.0 + skew) * intervals / (sum * sum))};
    }

private:
    std::vector<row> nodes_;
};

}  // namespace aqueth::inline AQUETH_ABI::numeric
