// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <cmath>
#include <limits>

namespace aqueth::inline AQUETH_ABI::numeric {

/// A number and its derivative: forward automatic differentiation, first order, in one direction.
///
/// As the scalar of a kernel of `correlation/`, or of a model made of kernels, it carries the exact
/// derivative (to rounding). The derivative is with respect to the input whose derivative was set to 1.
/// Comparisons use only the value. It has + - * /, the comparisons, exp, log, sqrt, sin, cos, sinh, cosh, abs
/// and pow, by the rules of differentiation, found by argument-dependent lookup as the kernels call them. The
/// library needs only the first order. Boost.Math has such a type for any order, but it costs 1.5 s of
/// compile time in every file that includes it.
struct dual {
    double value;       ///< the number
    double derivative;  ///< its derivative

    constexpr dual() : dual(0.0) {}
    /// @param v the number, a constant unless a derivative is given
    /// @param d its derivative
    constexpr dual(double v, double d = 0.0) : value(v), derivative(d) {}  // implicit: constants in formulas

    /// @cond
    // arithmetic
    friend constexpr dual operator+(dual a) { return a; }
    friend constexpr dual operator-(dual a) { return {-a.value, -a.derivative}; }
    friend constexpr dual operator+(dual a, dual b) {
        return {a.value + b.value, a.derivative + b.derivative};
    }
    friend constexpr dual operator-(dual a, dual b) {
        return {a.value - b.value, a.derivative - b.derivative};
    }
    friend constexpr dual operator*(dual a, dual b) {
        return {a.value * b.value, a.derivative * b.value + a.value * b.derivative};
    }
    friend constexpr dual operator/(dual a, dual b) {
        double const quotient = a.value / b.value;
        return {quotient, (a.derivative - quotient * b.derivative) / b.value};
    }
    constexpr dual& operator+=(dual b) { return *this = *this + b; }
    constexpr dual& operator-=(dual b) { return *this = *this - b; }
    constexpr dual& operator*=(dual b) { return *this = *this * b; }
    constexpr dual& operator/=(dual b) { return *this = *this / b; }

    // comparison, of the values
    friend constexpr bool operator==(dual a, dual b) { return a.value == b.value; }
    friend constexpr bool operator!=(dual a, dual b) { return a.value != b.value; }
    friend constexpr bool operator<(dual a, dual b) { return a.value < b.value; }
    friend constexpr bool operator>(dual a, dual b) { return a.value > b.value; }
    friend constexpr bool operator<=(dual a, dual b) { return a.value <= b.value; }
    friend constexpr bool operator>=(dual a, dual b) { return a.value >= b.value; }

    // functions
    friend dual exp(dual x) {
        double const e = std::exp(x.value);
        return {e, e * x.derivative};
    }
    friend dual log(dual x) { return {std::log(x.value), x.derivative / x.value}; }
    friend dual sqrt(dual x) {
        double const root = std::sqrt(x.value);
        return {root, x.derivative / (2.0 * root)};
    }
    friend dual sin(dual x) { return {std::sin(x.value), std::cos(x.value) * x.derivative}; }
    friend dual cos(dual x) { return {std::cos(x.value), -std::sin(x.value) * x.derivative}; }
    friend dual sinh(dual x) { return {std::sinh(x.value), std::cosh(x.value) * x.derivative}; }
    friend dual cosh(dual x) { return {std::cosh(x.value), std::sinh(x.value) * x.derivative}; }
    friend dual abs(dual x) { return x.value < 0.0 ? -x : x; }
    friend dual pow(dual x, double p) {
        return {std::pow(x.value, p), p * std::pow(x.value, p - 1.0) * x.derivative};
    }
    friend dual pow(dual x, dual p) {
        double const power = std::pow(x.value, p.value);
        double const by_exponent = p.derivative != 0.0 ? power * std::log(x.value) * p.derivative
                                                       : 0.0;  // log(0) of a constant power
        return {power, p.value * std::pow(x.value, p.value - 1.0) * x.derivative + by_exponent};
    }
    /// @endcond
};

}  // namespace aqueth::inline AQUETH_ABI::numeric

/// Rounding and range are those of the value.
template <>
class std::numeric_limits<aqueth::numeric::dual> : public std::numeric_limits<double> {};
