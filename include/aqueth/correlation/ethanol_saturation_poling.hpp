// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/wagner_form.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

/// Saturation of ethanol: vapour pressure against temperature, and back.
///
/// Plain numbers: temperature in K, taken as ITS-90, pressure in Pa.
namespace aqueth::correlation::ethanol_saturation_poling {

/// Citation, range and accuracy.
inline constexpr source cited{
    "B. E. Poling, J. M. Prausnitz and J. P. O'Connell, The Properties of Gases and Liquids, 5th edition, "
    "McGraw-Hill 2001, appendix A, Wagner equation",
    "159.05 to 513.92 K; compared with measurements from 273 to 400 K",
    "none stated; the best measurements on ITS-90 lie within 0.14 % from 293 to 365 K (0.04 K in boiling "
    "temperature), 0.2 to 0.3 % higher at 370 and 383 K; boils at 351.437 K under 101.325 kPa"};

inline constexpr double lowest_kelvin = 159.05;     ///< lower end of the range, K
inline constexpr double highest_kelvin = 513.92;    ///< upper end: the critical point, K
inline constexpr double critical_pascal = 6.132e6;  ///< pressure at the critical point, Pa

namespace detail {

/// Coefficients of th, th^1.5, th^2.5 and th^5.
inline constexpr std::array<double, 4> a{-8.68587, 1.17831, -4.8762, 1.588};

/// @param th one less reduced temperature
/// @return the sum of the terms and its derivative
template <numeric::real T>
numeric::value_and_slope<T> series(T const& th) {
    using std::sqrt;
    T const root = sqrt(th), th4 = th * th * th * th;
    return {th * (T(a[0]) + root * (T(a[1]) + T(a[2]) * th) + T(a[3]) * th4),
            T(a[0]) + root * (T(1.5 * a[1]) + T(2.5 * a[2]) * th) + T(5 * a[3]) * th4};
}

}  // namespace detail

/// @param t temperature, K
/// @return whether the equation is defined there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// @param t temperature, K, 159.05 to 513.92; not checked, NaN in gives NaN out
/// @return natural logarithm of the saturation pressure in Pa, and its derivative d ln p/dT, 1/K
template <numeric::real T>
numeric::value_and_slope<T> ln_pressure_and_slope(T const& t) {
    return wagner_form::ln_pressure_and_slope([](T const& th) { return detail::series(th); }, highest_kelvin,
                                              critical_pascal, t);
}

/// @param t temperature, K, 159.05 to 513.92; not checked, NaN in gives NaN out
/// @return saturation pressure, Pa
template <numeric::real T>
T pressure(T const& t) {
    using std::exp;
    return exp(ln_pressure_and_slope(t).value);
}

/// @param p pressure, Pa, between the saturation pressures at the ends of the range; not checked, NaN in
///         gives NaN out
/// @return boiling temperature, K, to rounding, and its derivative dT/dp, K/Pa
template <numeric::real T>
numeric::value_and_slope<T> temperature_and_slope(T const& p) {
    return wagner_form::temperature_and_slope([](T const& t) { return ln_pressure_and_slope(t); },
                                              lowest_kelvin, highest_kelvin, 351.437, p);
}

/// @param p pressure, Pa, between the saturation pressures at the ends of the range; not checked, NaN in
///         gives NaN out
/// @return boiling temperature, K, to rounding
template <numeric::real T>
T temperature(T const& p) {
    return temperature_and_slope(p).value;
}

}  // namespace aqueth::correlation::ethanol_saturation_poling
