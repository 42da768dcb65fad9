// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Shared by the programs about uncertainty: reading uncertainties, and rounding that fits them.

#include "program.hpp"

#include <optional>
#include <string>
#include <string_view>

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

/// A unit of a budget as the answer words it, and how many of it make one of the budget's.
struct shown_unit {
    char const* name;
    double factor;
};
shown_unit unit_to_show(wording const& words, std::string_view unit);

/// A result in the unit of the answer. Proof is referred to 60 °F, so it is not exactly twice the % vol at 20
/// °C.
double shown_value(wording const& words, std::string_view unit, double value);

/// What to tell of the coverage interval of a budget.
struct doubt {
    bool tells_nothing = false;  ///< it covers every possible value
    std::string sentence;        ///< empty if the interval can be taken as it is
};

/// Compares the interval of a budget with what is possible and with random draws. The draws count as
/// different if an end differs by more than a tenth of the expanded uncertainty and by more than half a unit
/// of the first digit of the standard uncertainty (JCGM 101:2008, 8).
/// @param unit     of the budget: "% vol", which is from 0 to 100, or that of an amount, which is from 0
/// @param half     expanded uncertainty
/// @param drawn    interval of the draws, if any were made
doubt doubt_of(wording const& words, std::string_view unit, uncertainty_budget const& budget, double half,
               std::optional<coverage_interval> const& drawn);

/// The standard uncertainty of draws as the answer shows it; a dash if single draws near what is impossible
/// decide it.
std::string drawn_in_words(double drawn, double budgeted, double factor);

/// A probability in percent that does not become 100 by rounding.
std::string percent(double p);

}  // namespace program
