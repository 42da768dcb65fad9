// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

/// Second virial coefficients of water and ethanol vapour, after a handbook.
///
/// Plain numbers: temperature in K, coefficient in m3/mol.
namespace aqueth::inline AQUETH_ABI::correlation::second_virial_crc {

/// Citation, range and accuracy.
inline constexpr source cited{
    "CRC Handbook of Chemistry and Physics, section 6, table Virial Coefficients of Selected Gases: "
    "B = sum of a_i (298.15 K/T - 1)^(i-1)",
    "not printed in the copy read; water is used from 273 to 393 K",
    "water: its enthalpy of vaporization follows within 0.1 %; ethanol: 30 % too negative at 298 K, see "
    "ethanol_second_virial.hpp, and kept for comparison only"};

inline constexpr double lowest_kelvin = 273.15;   ///< lower end of the range it is used in, K
inline constexpr double highest_kelvin = 393.15;  ///< upper end, K

/// @param t temperature, K
/// @return whether it is used there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// A second virial coefficient with its derivatives.
template <numeric::real T>
struct virial_coefficient {
    T value;      ///< B, m3/mol
    T slope;      ///< dB/dT, m3/(mol K)
    T curvature;  ///< d2B/dT2, m3/(mol K2)
};

namespace detail {

/// Coefficients for water, cm3/mol.
inline constexpr std::array<double, 5> water{-1158.0, -5157.0, -10301.0, -10597.0, -4415.0};
/// Coefficients for ethanol, cm3/mol.
inline constexpr std::array<double, 3> ethanol{-4475.0, -29719.0, -56716.0};

/// @param a coefficients
/// @param t temperature, K
/// @return the polynomial in 298.15 K/t - 1 and its derivatives with respect to t
template <numeric::real T, std::size_t N>
constexpr virial_coefficient<T> evaluate(std::array<double, N> const& a, T const& t) {
    T const ratio = T(298.15) / t, u = ratio - T(1);
    T value = T(a[N - 1]), first(0), second(0);  // second: half the second derivative
    for (std::size_t i = N - 1; i-- > 0;) {
        second = second * u + first;
        first = first * u + value;
        value = value * u + T(a[i]);
    }
    T const du = -ratio / t, d2u = T(2) * ratio / (t * t);
    return {T(1e-6) * value, T(1e-6) * first * du, T(1e-6) * (T(2) * second * du * du + first * d2u)};
}

}  // namespace detail

/// @param t temperature, K, 273.15 to 393.15; not checked, NaN in gives NaN out
/// @return second virial coefficient of water with its derivatives
template <numeric::real T>
constexpr virial_coefficient<T> water(T const& t) {
    return detail::evaluate(detail::water, t);
}

/// @param t temperature, K, 273.15 to 393.15; not checked, NaN in gives NaN out
/// @return second virial coefficient of ethanol with its derivatives
template <numeric::real T>
constexpr virial_coefficient<T> ethanol(T const& t) {
    return detail::evaluate(detail::ethanol, t);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::second_virial_crc
