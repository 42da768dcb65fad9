// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>

/// Degrees Brix from specific gravity, the classical table in one cubic: the second source for sugar.
namespace aqueth::correlation::nbs_1942_brix {

/// Citation, range and accuracy.
inline constexpr source cited{
    "F. J. Bates and associates, Polarimetry, Saccharimetry and the Sugars, National Bureau of Standards "
    "Circular C440, 1942, table of degrees Brix and specific gravity, as a published cubic fit (read second "
    "hand)",
    "apparent specific gravity 20/20 °C in air, 1.00000 to 1.17874 (0 to 40 degrees Brix)",
    "0.0009 degrees Brix against that table (stated); at 1.00000 it gives -0.005"};

inline constexpr double lowest_gravity = 1.0;       ///< lower end of the range
inline constexpr double highest_gravity = 1.17874;  ///< upper end of the range

/// @param gravity specific gravity 20/20 °C
/// @return whether the cubic holds there
template <numeric::real T>
constexpr bool covers(T const& gravity) {
    return gravity >= T(lowest_gravity) && gravity <= T(highest_gravity);
}

/// Coefficients as printed, lowest power first.
inline constexpr std::array<double, 4> coefficients{-669.56218, 1262.7794, -775.68212, 182.46007};

/// @param gravity apparent specific gravity 20/20 °C; not checked, NaN in gives NaN out
/// @return degrees Brix, grams of sucrose in 100 g of solution
template <numeric::real T>
constexpr T brix(T const& gravity) {
    return numeric::polynomial(coefficients, gravity);
}

}  // namespace aqueth::correlation::nbs_1942_brix
