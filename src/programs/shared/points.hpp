// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Points of equilibrium from files: the published tables of this project, or measurements of the user.

#include "wording.hpp"

#include <aqueth/equilibrium_points.hpp>

#include <cstddef>
#include <string>
#include <vector>

namespace program {

inline constexpr char const* points_format =
    "A FILE of points is a CSV table. Its first line names the columns, in any order and case:\n"
    "  x or x_ethanol (liquid), y or y_ethanol (vapour): mole fractions 0 to 1 of ethanol;\n"
    "    or in percent: x_percent_mol, x_percent_mass, x_percent_vol (at 20 °C), and the same with y;\n"
    "  t_c, t_k or t_f (temperature_c ...), t alone in °C; p_kpa, p_mbar, p_mmhg, p_psi ... (pressure_kpa "
    "...).\n"
    "Without such a line, each line has x, y and, if known, the temperature in °C. Commas, semicolons or "
    "tabs\n"
    "separate the cells; with the last two, numbers may have a decimal comma. Lines that begin with #\n"
    "are comments. Points at another pressure (by more than 0.5 %) are left out and "
    "counted.\n"
    "aqueth equilibrium_table --csv writes such a file.";

/// The contents of a file of at most 1 MiB.
/// @param what what it should hold, for the error of a longer one: "a table of points"
std::string read_file(given const& file, char const* what);

/// Points of a file at one pressure, or without a pressure, and counts of the lines left out.
struct points_at_pressure {
    std::vector<equilibrium_point> points;
    std::size_t left_out = 0;     ///< points of other pressures
    std::size_t empty_lines = 0;  ///< lines with neither vapour nor temperature
    std::vector<std::string> ignored_columns;

    /// The lines and columns left out, for text: "; 3 at another pressure left out"; empty if all was.
    std::string in_words() const;
    /// The same for JSON.
    json to_json() const;
};

points_at_pressure read_points(given const& file, units::pressure p);

}  // namespace program
