// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/second_virial_crc.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

/// Second virial coefficient of ethanol vapour that agrees with its measured enthalpies of vaporization:
/// B = -1.29e-3 m3/mol (351.44 K/T)^6.
///
/// Published polynomials differ by half their value at 298 K (-2.8e-3 to -4.5e-3 m3/mol). Clapeyron's
/// equation, dh = T (dp/dT) (R T/p + B - v), with the saturation pressure and calorimetric values decides
/// between them; two rounded constants are enough. Enthalpies, pressures and virial coefficients then agree
/// by construction. Plain numbers: temperature in K, coefficient in m3/mol.
namespace aqueth::inline AQUETH_ABI::model::ethanol_second_virial {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this work, from calorimetric enthalpies of vaporization: V. Majer and V. Svoboda 1985; J. F. Counsell, "
    "J. O. "
    "Fenwick and E. B. Lees 1970; J. Q. Dong and others 1988; M. D. Vine and C. J. Wormald 1989",
    "298 to 393 K; extrapolated to 273 K, where the pressure is too low for it to matter",
    "reproduces these enthalpies within 0.7 %, most within 0.3 %, which is some 10 % of B"};

inline constexpr double lowest_kelvin = 273.15;   ///< lower end of the range, K
inline constexpr double highest_kelvin = 393.15;  ///< upper end of the range, K

/// @param t temperature, K
/// @return whether it is used there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// @param t temperature, K, 273.15 to 393.15; not checked, NaN in gives NaN out
/// @return second virial coefficient with its derivatives
template <numeric::real T>
constexpr correlation::second_virial_crc::virial_coefficient<T> coefficient(T const& t) {
    T const ratio = T(351.44) / t, cube = ratio * ratio * ratio;
    T const value = T(-1.29e-3) * cube * cube;
    return {value, T(-6) * value / t, T(42) * value / (t * t)};
}

}  // namespace aqueth::inline AQUETH_ABI::model::ethanol_second_virial
