// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

/// The form of an excess Gibbs energy: a Redlich-Kister series in a skewed mole fraction.
///
///     G/(R T) = x1 x2 sum_k s^k [a_k + b_k u1 + c_k u2 + d_k u3],   s = (x1 - r x2)/(x1 + r x2)
///     u1 = T0/T - 1,   u2 = 1 - T0/T - ln(T/T0),   u3 = ln(T/T0) - (T/T0 - T0/T)/2
///
/// With r = 1 it is the series of O. Redlich and A. T. Kister, Industrial and Engineering Chemistry 40 (1948)
/// 345; r < 1 gives more resolution at the end that is poor in component 1, where aqueous alcohols change
/// fastest. With these u's each letter is one property at T0, divided by R or R T0. The a's are the Gibbs
/// energy, the b's the enthalpy, the c's the heat capacity, the d's the slope of the heat capacity times T0.
/// In full
///
///     H/R  = x1 x2 sum_k s^k [b_k T0 + c_k t + d_k t^2/(2 T0)],   Cp/R = x1 x2 sum_k s^k [c_k + d_k t/T0],
///     t = T - T0
///
/// Component 1 is ethanol, component 2 water. Plain numbers: x the mole fraction of ethanol, temperature in
/// K. Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::skewed_redlich_kister {

/// The factors of the four coefficients of a term: in G/(R T), in H/(R T) and in Cp/R.
template <numeric::real T>
struct functions_of_temperature {
    std::array<T, 4> gibbs;          ///< 1, u1, u2, u3
    std::array<T, 4> enthalpy;       ///< -T times their derivatives
    std::array<T, 4> heat_capacity;  ///< the derivatives of T times the enthalpy functions
};

/// @param t  temperature, K
/// @param t0 reference temperature, K
/// @return the functions at t
template <numeric::real T>
functions_of_temperature<T> at_temperature(T const& t, double t0) {
    using std::log;
    T const up = t / T(t0), down = T(1) / up, l = log(up), zero(0), one(1), half = T(0.5);
    return {{one, down - one, one - down - l, l - half * (up - down)},
            {zero, down, one - down, half * (up + down) - one},
            {zero, zero, one, up - one}};
}

/// A molar excess property of the mixture and of its components.
template <numeric::real T>
struct excess_property {
    T molar;      ///< of one mole of mixture
    T ethanol;    ///< partial molar property of ethanol
    T water;      ///< partial molar property of water
    T curvature;  ///< second derivative of the molar property with respect to x
};

/// The sum x1 x2 sum_k q_k s^k by Horner's rule, with the partial molar properties m + x2 m' and m - x1 m'
/// arranged so that both ends of the composition are exact.
/// @param x     mole fraction of ethanol, 0 to 1
/// @param skew  r, above 0
/// @param terms how many
/// @param q     callable: k -> coefficient of s^k, k from 0 to terms - 1
/// @return the property in the unit of the coefficients
template <numeric::real T, class Q>
excess_property<T> series(T const& x, double skew, int terms, Q const& q) {
    T const x2 = T(1) - x, parts = x + T(skew) * x2, s = (x - T(skew) * x2) / parts;
    T sum(0), first(0), second(0);  // second: half the second derivative
    for (int k = terms - 1; k >= 0; --k) {
        second = second * s + first;
        first = first * s + sum;
        sum = sum * s + q(k);
    }
    T const ds = T(2 * skew) / (parts * parts), d2s = T(-2 * (1 - skew)) * ds / parts;
    second = T(2) * second * ds * ds + first * d2s;
    first = first * ds;
    return {x * x2 * sum, x2 * x2 * (sum + x * first), x * x * (sum - x2 * first),
            T(2) * ((x2 - x) * first - sum) + x * x2 * second};
}

}  // namespace aqueth::inline AQUETH_ABI::model::skewed_redlich_kister
