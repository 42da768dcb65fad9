// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <cmath>

/// Molar enthalpies of vaporization of ethanol and water, with which those of model/enthalpy.hpp are
/// compared: D. W. Green and R. H. Perry, Perry's Chemical Engineers' Handbook, 8th edition, McGraw-Hill
/// 2008, table 2-150 (DIPPR equation 106). They are not part of the library.
///
/// Plain numbers: temperature in K, enthalpy in J/mol. Accuracy: of the order of 1 %, as stated by the
/// compilers; for ethanol near 350 K 0.5 to 1 % above the calorimeters.
namespace aqueth::published::vaporization_perry {

/// @param t temperature, K, 159.05 to 514
/// @return enthalpy of vaporization of ethanol, J/mol
inline double ethanol(double t) { return 55789.0 * std::pow(1.0 - t / 514.0, 0.31245); }

/// @param t temperature, K, 273.16 to 647.096
/// @return enthalpy of vaporization of water, J/mol
inline double water(double t) {
    double const reduced = t / 647.096;
    return 52053.0 * std::pow(1.0 - reduced, 0.3199 + reduced * (-0.212 + reduced * 0.25795));
}

}  // namespace aqueth::published::vaporization_perry
