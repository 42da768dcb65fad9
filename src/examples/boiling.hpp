// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// What the programs about boiling share: temperatures of the still, mixtures in words, sources and cautions.

#include "program.hpp"

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/excess_gibbs.hpp>
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/modified_raoult.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/vapour_liquid.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>

#include <fmt/format.h>

#include <optional>
#include <string>
#include <vector>

namespace program {

std::vector<correlation::source> boiling_sources();

inline constexpr char const* still_caution =
    "Caution: never close a heated vessel, keep the condenser's water running, heat no spirit over a flame.";

json to_json(mole_fraction x);

/// The azeotrope, if there is one.
std::optional<equilibrium> azeotrope_at(units::pressure p);

/// The pressure at the still, and how well it is known.
std::string air_in_words(wording const& words, surroundings const& air, units::pressure p);

void say_azeotrope(page& text, wording const& words, units::pressure p);
json azeotrope_to_json(units::pressure p);

}  // namespace program
