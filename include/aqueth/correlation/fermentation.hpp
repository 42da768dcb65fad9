// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/source.hpp>

/// The stoichiometric yield of fermentation: yeast turns all the sugar into ethanol and carbon dioxide.
namespace aqueth::inline AQUETH_ABI::correlation::fermentation {

/// Citation, range and accuracy.
inline constexpr source cited{"J. L. Gay-Lussac (1815): C6H12O6 = 2 C2H5OH + 2 CO2, with the molar masses of "
                              "the library; practical yield "
                              "after Balling (1865), 1 g of alcohol from 2.0665 g of extract",
                              "fermentable sugar",
                              "exact as a bound; Pasteur (1860) found 5 to 7 % of the sugar in other "
                              "products, rum distilleries report 55 to "
                              "90 % of what he reached (D. Kervegant, Rhums et eaux-de-vie de canne, 1946)"};

/// C6H12O6: glucose, fructose; g/mol
inline constexpr double hexose = 6 * molar_mass::carbon + 12 * molar_mass::hydrogen + 6 * molar_mass::oxygen;
/// C6H12O6 H2O: glucose with its water of crystallization; g/mol
inline constexpr double glucose_monohydrate = hexose + molar_mass::water;
/// C12H22O11: sucrose, maltose; g/mol
inline constexpr double disaccharide =
    12 * molar_mass::carbon + 22 * molar_mass::hydrogen + 11 * molar_mass::oxygen;
/// CO2; g/mol
inline constexpr double carbon_dioxide = molar_mass::carbon + 2 * molar_mass::oxygen;

inline constexpr double ethanol_per_hexose = 2 * molar_mass::ethanol / hexose;              ///< g/g, 0.5114
inline constexpr double ethanol_per_disaccharide = 4 * molar_mass::ethanol / disaccharide;  ///< g/g, 0.5384
inline constexpr double carbon_dioxide_per_ethanol = carbon_dioxide / molar_mass::ethanol;  ///< g/g, 0.9553

/// Balling's yield as a share of the stoichiometric yield of sucrose, 0.90.
inline constexpr double practical_share = 1.0 / balling::extract_per_alcohol / ethanol_per_disaccharide;

}  // namespace aqueth::inline AQUETH_ABI::correlation::fermentation
