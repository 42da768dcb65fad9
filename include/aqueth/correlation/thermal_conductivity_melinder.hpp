// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>

/// Thermal conductivity of liquid ethanol-water mixtures.
namespace aqueth::inline AQUETH_ABI::correlation::thermal_conductivity_melinder {

/// Citation, range and accuracy.
inline constexpr source cited{
    "A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, 2nd edition, International "
    "Institute of Refrigeration, 2010: ethyl alcohol, conductivity",
    "11 to 60 % mass; from freezing to 20 °C",
    "the author's own table within 0.5 %; no measurements at hand, another handbook (from memory) is 7 % "
    "higher at 40 % mass"};

inline constexpr double lowest_mass_fraction = 0.11;  ///< lower end of the range
inline constexpr double highest_mass_fraction = 0.6;  ///< upper end of the range
inline constexpr double highest_celsius = 20.0;       ///< upper end of the range, °C

inline constexpr double relative_standard_uncertainty = 0.04;  ///< of a value, by another handbook

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the table reaches there, for a liquid
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(lowest_mass_fraction) && w <= T(highest_mass_fraction) && t <= T(highest_celsius);
}

// clang-format off
/// Coefficients: row i has the factors of (x - 29.2361)^i (t - 8.1578)^j, x in % mass, t in °C.
inline constexpr std::array<std::array<double, 4>, 6> coefficients{{
    { 0.4067,     0.0006775,  3.105e-07, -2e-08    },
    {-0.005008,  -2.377e-05, -3.216e-08,  8.362e-11},
    { 2.801e-05,  2.669e-07, -3.606e-09,  1.552e-11},
    {-2.009e-08, -6.813e-09,  1.429e-10,  0.0      },
    {-1.506e-09,  1.167e-10,  0.0,        0.0      },
    {-1.653e-11,  0.0,        0.0,        0.0      },
}};
// clang-format on

/// @param w mass fraction of ethanol; not checked, NaN in gives NaN out
/// @param t temperature, °C
/// @return thermal conductivity, W/(m K)
template <numeric::real T>
constexpr T watts_per_metre_kelvin(T const& w, T const& t) {
    return numeric::polynomial(coefficients, T(T(100) * w - T(29.2361)), T(t - T(8.1578)));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::thermal_conductivity_melinder
