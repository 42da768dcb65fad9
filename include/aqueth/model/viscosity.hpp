// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/model/viscosity_coefficients.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <cmath>

/// Viscosity of liquid ethanol-water mixtures.
///
/// Plain numbers: mass fraction of ethanol, temperature in °C. Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::viscosity {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "E. C. Bingham and R. F. Jackson, Bulletin of the Bureau of Standards 14 (1918) 59, in C. Simmonds, "
    "Alcohol (1919); smoothed by src/fit/transport.cpp",
    "mass fraction 0 to 1; 0 to 80 °C (above 70 °C to 0.6)",
    "2.5 % of the table, 0.4 % on average; measurements of 2007 lie up to 7 % lower"};

inline constexpr double lowest_celsius = 0.0;               ///< lower end of the range, °C
inline constexpr double highest_celsius = 80.0;             ///< upper end of the range, °C
inline constexpr double highest_celsius_of_all = 70.0;      ///< to here the table has every composition, °C
inline constexpr double highest_mass_fraction_above = 0.6;  ///< and above that temperature only up to this

inline constexpr double relative_standard_uncertainty = 0.02;  ///< of a value, by other measurements

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the table reaches there
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(1) && t >= T(lowest_celsius) &&
           (t <= T(highest_celsius_of_all) ||
            (t <= T(highest_celsius) && w <= T(highest_mass_fraction_above)));
}

/// @param w mass fraction of ethanol, 0 to 1
/// @param t temperature, °C
/// @return dynamic viscosity, mPa s
template <numeric::real T>
T millipascal_seconds(T const& w, T const& t) {
    using std::exp;
    return exp(numeric::polynomial(coefficients, T(T(293.15) / (t + T(273.15)) - T(1)), T(T(2) * w - T(1))));
}

}  // namespace aqueth::inline AQUETH_ABI::model::viscosity
