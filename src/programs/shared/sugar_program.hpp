// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Shared by the programs about sugar, sweetened spirit and refractometers.

#include "program.hpp"

#include <aqueth/aqueth.hpp>

#include <string>
#include <variant>

namespace program {

/// Of crystals of sucrose, for the buoyancy of air: 1.587 g/cm3 (from memory). Those of glucose and fructose,
/// 1.54 to 1.69, change what a balance shows by less than 0.01 %.
inline constexpr units::mass_density crystals = 1587.0 * kilogram_per_cubic_metre;

/// Reads '300 g/L' or '30 g/100 mL'; its range is not checked.
units::mass_density read_sugar_concentration(given const& g);

/// Reads sucrose, glucose, fructose or 'invert sugar'.
sweetener read_sweetener(given const& g);

/// The reading of a refractometer: '7.6 brix', or the refractive index, '1.3450'.
using refraction = std::variant<brix, refractive_index>;
refraction read_refraction(given const& g);
refractive_index index_of(refraction const& shown);

/// Whether a text is a refractometer's, in degrees Brix.
bool is_brix(given const& g);

/// A density at 20 °C: '992.1 kg/m3', '0.9921 g/cm3', '0.994 sg', or '-1.5 plato' of a saccharometer.
units::mass_density read_density_at_20(given const& g);

/// A gravity before fermentation: as a density at 20 °C, or '20 brix' of a refractometer, which then shows
/// the sugar.
specific_gravity read_original_gravity(given const& g);

/// A concentration of sugar in words: '250.0 g/L', in US units with its ounces for each gallon.
std::string in_words(wording const& words, units::mass_density sugar);

/// The factor that turns % vol at 20 °C of a wash into those at the temperature to which the answer refers
/// volumes.
double to_reference(wording const& words, wash const& w);

/// Says what checks the density of a sweetened spirit, and what the doubt of the sugar's volume is worth.
void say_sugar_doubt(page& text, wording const& words, sweetened const& liqueur);

inline constexpr char const* additive_volumes = "Volumes of sugar and spirit are added. Only analyses check "
                                                "that: wines to 14 % vol, at most 22 g/L, and\n"
                                                "beers of about 5 % vol, to 66 g/L of malt extract.";

}  // namespace program
