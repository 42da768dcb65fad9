// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Shared by the programs about uncertainty: reading uncertainties, and rounding that fits them.

#include "program.hpp"

#include <string>

namespace program {

inline constexpr char const* no_law = "Guidance only: local law and its officers decide, by approved "
                                      "instruments in licensed hands.";

/// The probability wanted, '95 %' or '0.95'.
double read_confidence(given const& g);

/// A difference of strengths, '0.1 %vol', in % vol.
double read_strength_difference(given const& g, double least = 0.0);

/// A difference of temperatures, '0.5 K' or '1 F', in K.
double read_temperature_difference(given const& g);

/// A small volume, which may be nothing, in mL.
double read_millilitres(given const& g);

/// Decimals that show two significant digits of an uncertainty.
int decimals_for(double uncertainty);

/// A value as its uncertainty deserves.
std::string sized(double value, double uncertainty);

/// A probability in percent that does not become 100 by rounding.
std::string percent(double p);

}  // namespace program
