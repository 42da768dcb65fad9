// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

/// Density of a sucrose solution less that of water.
namespace aqueth::inline AQUETH_ABI::correlation::sucrose_density {

/// Citation, range and accuracy.
inline constexpr source cited{
    "Z. Bubnik, P. Kadlec, D. Urban, M. Bruhns, Sugar Technologists Manual, 8th edition, Bartens, Berlin "
    "1995, "
    "p. 164: density of sucrose solutions adopted by ICUMSA (1990)",
    "mass fraction of sucrose 0 to 0.7; 0 to 80 °C",
    "within 0.10 kg/m3 of the CRC Handbook's table to 40 % mass, 0.28 kg/m3 to 70 % (20 °C)"};

inline constexpr double highest_mass_fraction = 0.7;  ///< upper end of the range
inline constexpr double lowest_celsius = 0.0;         ///< lower end of the temperature range, °C
inline constexpr double highest_celsius = 80.0;       ///< upper end of the temperature range, °C

/// @param w mass fraction of sucrose
/// @param t temperature, °C
/// @return whether the equation is used there
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(highest_mass_fraction) && t >= T(lowest_celsius) && t <= T(highest_celsius);
}

// clang-format off
/// Coefficients, kg/m3: rows are powers of (t - 20 °C)/(100 °C), columns powers of w from the first. The
/// printed page was not seen; two independent typed copies agree except for the fourth number: -3.9643 in
/// one, -3.9646 in the other. The difference is 0.00001 kg/m3 at 40 % mass.
inline constexpr std::array<std::array<double, 6>, 5> coefficients{{
    { 385.1761, 135.3705, 40.9299,  -3.9643, 13.4853, -17.2890},
    { -46.2720,  -7.1720,  1.1597,   5.1126, 17.5254,   0.0   },
    {  59.7712,   7.2491, 12.3630, -35.4791,  0.0,      0.0   },
    { -47.2207, -21.6977, 27.6301,   0.0,     0.0,      0.0   },
    {  18.3184,  12.3081,  0.0,      0.0,     0.0,      0.0   },
}};
// clang-format on

/// @param w mass fraction of sucrose; not checked, NaN in gives NaN out. Below zero the equation continues
///          smoothly, which gives an apparent extract below zero its meaning.
/// @param t temperature, °C
/// @return density of the solution less that of water at the same temperature, kg/m3, and its derivative
///         with respect to w
template <numeric::real T>
constexpr numeric::value_and_slope<T> excess(T const& w, T const& t) {
    T const tau = (t - T(20)) / T(100);
    std::array<T, 7> in_w{};
    T power(1);
    for (auto const& row : coefficients) {
        for (std::size_t k = 0; k < row.size(); ++k) in_w[k + 1] = in_w[k + 1] + power * T(row[k]);
        power = power * tau;
    }
    return numeric::polynomial_with_slope(in_w, w);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::sucrose_density
