// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <cmath>

/// Molar enthalpies of vaporization of ethanol and water after a handbook: the second source.
///
/// The library itself computes with enthalpy.hpp. Plain numbers: temperature in K, enthalpy in J/mol.
namespace aqueth::correlation::vaporization_perry {

/// Citation, range and accuracy.
inline constexpr source cited{"D. W. Green and R. H. Perry, Perry's Chemical Engineers' Handbook, 8th "
                              "edition, McGraw-Hill 2008, table 2-150 "
                              "(DIPPR equation 106)",
                              "ethanol 159.05 to 514 K, water 273.16 to 647.096 K",
                              "of the order of 1 %, as stated by the compilers; for ethanol near 350 K 0.5 "
                              "to 1 % above the calorimeters"};

inline constexpr double lowest_kelvin = 273.16;  ///< lower end of the range both share, K
inline constexpr double highest_kelvin = 514.0;  ///< upper end of the range both share, K

/// @param t temperature, K
/// @return whether both equations are defined there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// @param t temperature, K, 159.05 to 514; not checked, NaN in gives NaN out
/// @return enthalpy of vaporization of ethanol, J/mol
template <numeric::real T>
T ethanol(T const& t) {
    using std::pow;
    return T(55789) * pow(T(T(1) - t / T(514)), T(0.31245));
}

/// @param t temperature, K, 273.16 to 647.096; not checked, NaN in gives NaN out
/// @return enthalpy of vaporization of water, J/mol
template <numeric::real T>
T water(T const& t) {
    using std::pow;
    T const reduced = t / T(647.096);
    return T(52053) * pow(T(T(1) - reduced), T(T(0.3199) + reduced * (T(-0.212) + reduced * T(0.25795))));
}

}  // namespace aqueth::correlation::vaporization_perry
