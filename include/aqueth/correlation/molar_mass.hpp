// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

/// Molar masses from standard atomic weights.
namespace aqueth::inline AQUETH_ABI::correlation::molar_mass {

/// Citation, range and accuracy.
inline constexpr source cited{
    "T. B. Coplen, Atomic weights of the elements 1995, Pure Appl. Chem. 68 (1996) 2339, table 2: H "
    "1.00794, C 12.0107, O 15.9994",
    "normal isotopic composition", "4e-5 relative, the spread of natural isotopes"};

inline constexpr double carbon = 12.0107;    ///< atomic weight of carbon, g/mol
inline constexpr double hydrogen = 1.00794;  ///< atomic weight of hydrogen, g/mol
inline constexpr double oxygen = 15.9994;    ///< atomic weight of oxygen, g/mol

inline constexpr double ethanol = 2 * carbon + 6 * hydrogen + oxygen;  ///< C2H6O, 46.06844 g/mol
inline constexpr double water = 2 * hydrogen + oxygen;                 ///< H2O, 18.01528 g/mol

/// @param w mass fraction of ethanol, 0 to 1
/// @return mole fraction of ethanol
template <numeric::real T>
constexpr T mole_fraction_from_mass_fraction(T const& w) {
    T const moles_of_ethanol = w / T(ethanol);
    return moles_of_ethanol / (moles_of_ethanol + (T(1) - w) / T(water));
}

/// @param x mole fraction of ethanol, 0 to 1
/// @return mass fraction of ethanol
template <numeric::real T>
constexpr T mass_fraction_from_mole_fraction(T const& x) {
    T const mass_of_ethanol = x * T(ethanol);
    return mass_of_ethanol / (mass_of_ethanol + (T(1) - x) * T(water));
}

/// @param w mass fraction of ethanol, 0 to 1
/// @return mean molar mass of the mixture, g/mol
template <numeric::real T>
constexpr T mixture(T const& w) {
    return T(1) / (w / T(ethanol) + (T(1) - w) / T(water));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::molar_mass
