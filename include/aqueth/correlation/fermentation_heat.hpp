// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>

/// Heat of fermentation, by the difference of heats of combustion.
namespace aqueth::inline AQUETH_ABI::correlation::fermentation_heat {

/// Citation, range and accuracy.
inline constexpr source cited{
    "J. Nielsen, J. Villadsen, G. Liden, Bioreaction Engineering Principles, 2nd edition, 2003, table 4.3: "
    "heats of combustion",
    "25 °C, solid sugar to liquid ethanol and gaseous carbon dioxide",
    "1 kJ/mol of each heat is 1.5 % (hexose) or 0.6 % (sucrose) of the difference"};

inline constexpr double glucose = 2803.0;  ///< heat of combustion, kJ/mol
inline constexpr double sucrose = 5644.0;  ///< heat of combustion, kJ/mol
inline constexpr double ethanol = 1367.0;  ///< heat of combustion, kJ/mol

/// Heat given off per mole of ethanol, kJ/mol: C6H12O6 = 2 C2H5OH + 2 CO2.
inline constexpr double hexose_per_ethanol = (glucose - 2.0 * ethanol) / 2.0;
/// The same of sucrose and other disaccharides: C12H22O11 + H2O = 4 C2H5OH + 4 CO2.
inline constexpr double disaccharide_per_ethanol = (sucrose - 4.0 * ethanol) / 4.0;

}  // namespace aqueth::inline AQUETH_ABI::correlation::fermentation_heat
