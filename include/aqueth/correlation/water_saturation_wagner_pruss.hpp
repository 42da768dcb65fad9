// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/wagner_form.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

/// Saturation of water: vapour pressure against temperature, and back.
///
/// Plain numbers: temperature in K on ITS-90, pressure in Pa.
namespace aqueth::correlation::water_saturation_wagner_pruss {

/// Citation, range and accuracy.
inline constexpr source cited{
    "W. Wagner and A. Pruss, Journal of Physical and Chemical Reference Data 22 (1993) 783, eq. 1 (= IAPWS "
    "SR1-86, 1992)",
    "273.16 to 647.096 K (ITS-90)",
    "about 0.02 % of the pressure below 393 K; IAPWS-IF97, another equation, lies within 0.004 % at 300 K"};

inline constexpr double lowest_kelvin = 273.16;      ///< lower end of the range: the triple point, K
inline constexpr double highest_kelvin = 647.096;    ///< upper end: the critical point, K
inline constexpr double critical_pascal = 22.064e6;  ///< pressure at the critical point, Pa

namespace detail {

/// Coefficients of th, th^1.5, th^3, th^3.5, th^4 and th^7.5.
inline constexpr std::array<double, 6> a{-7.85951783, 1.84408259,  -11.7866497,
                                         22.6807411,  -15.9618719, 1.80122502};

/// @param th one less reduced temperature
/// @return the sum of the terms and its derivative
template <numeric::real T>
numeric::value_and_slope<T> series(T const& th) {
    using std::sqrt;
    T const root = sqrt(th), th2 = th * th, th3 = th2 * th, th6 = th3 * th3;
    return {th * (T(a[0]) + T(a[1]) * root + th2 * (T(a[2]) + T(a[3]) * root + T(a[4]) * th) +
                  T(a[5]) * th6 * root),
            T(a[0]) + T(1.5 * a[1]) * root + th2 * (T(3 * a[2]) + T(3.5 * a[3]) * root + T(4 * a[4]) * th) +
                T(7.5 * a[5]) * th6 * root};
}

}  // namespace detail

/// @param t temperature, K
/// @return whether the equation is defined there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// @param t temperature, K, 273.16 to 647.096; not checked, NaN in gives NaN out
/// @return natural logarithm of the saturation pressure in Pa, and its derivative d ln p/dT, 1/K
template <numeric::real T>
numeric::value_and_slope<T> ln_pressure_and_slope(T const& t) {
    return wagner_form::ln_pressure_and_slope([](T const& th) { return detail::series(th); }, highest_kelvin,
                                              critical_pascal, t);
}

/// @param t temperature, K, 273.16 to 647.096; not checked, NaN in gives NaN out
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
                                              lowest_kelvin, highest_kelvin, 373.1243, p);
}

/// @param p pressure, Pa, between the saturation pressures at the ends of the range; not checked, NaN in
///         gives NaN out
/// @return boiling temperature, K, to rounding
template <numeric::real T>
T temperature(T const& p) {
    return temperature_and_slope(p).value;
}

}  // namespace aqueth::correlation::water_saturation_wagner_pruss
