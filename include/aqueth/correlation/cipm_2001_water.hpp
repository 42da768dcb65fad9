// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

/// CIPM-2001 formula for the density of air-free water at 101.325 kPa: the second source for water.
namespace aqueth::inline AQUETH_ABI::correlation::cipm_2001_water {

/// Citation, range and accuracy.
inline constexpr source cited{
    "M. Tanaka, G. Girard, R. Davis, A. Peuto, N. Bignell, Recommended table for the density of water "
    "between 0 °C and "
    "40 °C based on recent experimental reports, Metrologia 38 (2001) 301-309, eq. 1 (adopted by the CIPM)",
    "0 to 40 °C (ITS-90), 101.325 kPa, air-free, Standard Mean Ocean Water",
    "expanded uncertainty below 0.001 kg/m3"};

inline constexpr double lowest_celsius = 0.0;    ///< lower end of the range, °C
inline constexpr double highest_celsius = 40.0;  ///< upper end of the range, °C

/// @param t temperature, °C (ITS-90)
/// @return whether the formula is defined there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_celsius) && t <= T(highest_celsius);
}

/// @param t temperature, °C (ITS-90), 0 to 40; not checked, NaN in gives NaN out
/// @return density of water, kg/m3
template <numeric::real T>
constexpr T density(T const& t) {
    T const a = t - T(3.983035);  // from the temperature of greatest density
    return T(999.974950) * (T(1) - a * a * (t + T(301.797)) / (T(522528.9) * (t + T(69.34881))));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::cipm_2001_water
