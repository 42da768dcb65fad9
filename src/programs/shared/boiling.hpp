// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Shared by the programs about boiling: temperatures of the still, mixtures in words, sources, cautions.

#include "program.hpp"

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/source.hpp>

#include <optional>
#include <string>
#include <vector>

namespace program {

std::vector<correlation::source> boiling_sources();

inline constexpr char const* still_caution =
    "Caution: never close a heated vessel, keep the condenser's water running, heat no spirit over a flame.";

/// A strength in % vol at 20 °C.
double percent_vol(mole_fraction x);
json to_json(mole_fraction x);

/// The azeotrope, if there is one.
std::optional<equilibrium> azeotrope_at(units::pressure p);

/// The pressure at the still, and how well it is known.
std::string air_in_words(wording const& words, surroundings const& air, units::pressure p);

/// The rise of the boiling point by the dissolved solids of an ordinary wash.
char const* what_a_wash_adds(wording const& words);

/// The range of pressures with measured vapours, where the uncertainty of the model is known.
char const* measured_pressures(wording const& words);

/// The change of a vapour, or of the liquid under it, by one standard uncertainty of the model.
struct model_doubt {
    mole_fraction lower, upper;
    double uncertainty;          ///< of the mole fraction
    double relative_volatility;  ///< relative, of the relative volatility
};
/// @return nothing where no vapours were measured: below 25 and above 300 kPa
std::optional<model_doubt> doubt_about_vapour(equilibrium const& e);
std::optional<model_doubt> doubt_about_liquid(equilibrium const& e);
/// In brackets behind a figure, or nothing.
std::string in_brackets(wording const& words, std::optional<model_doubt> const& doubt);
/// A row with the uncertainty of the model.
void say_doubt(page& text, wording const& words, std::optional<model_doubt> const& doubt);
json to_json(std::optional<model_doubt> const& doubt);

void say_azeotrope(page& text, wording const& words, units::pressure p);
json azeotrope_to_json(units::pressure p);

}  // namespace program
