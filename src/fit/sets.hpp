// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "observations.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace aqueth::fit {

/// Every set, with the standard deviation we give it and whether the fit uses it.
///
/// Standard deviations are our judgement of each set's consistency with the others, not the authors' claims:
/// they are the weights of the fit. Units are those of the residuals: ln p, K, y, ln gamma, x, J/mol,
/// J/(mol K).
/// @param folder where the tables are
inline std::vector<data_set> published_sets(std::string const& folder) {
    auto const read = [&](std::string const& name) { return read_table(folder + "/" + name + ".csv"); };
    auto const voutsas = read("voutsas_2011");
    auto const beebe = read("beebe_1942");
    auto const held = read("infinite_dilution_held");
    bool const fitted = true;
    return {
        {"mash_30", "P  Pemberton & Mash 30 °C", fitted,
         pressures(read("pemberton_mash_1978_30c"), 6e-4, true)},
        {"landolt_50", "P  Landolt-Boernstein 50 °C", fitted,
         pressures(read("landolt_boernstein_2007_50c"), 5e-3, true)},
        {"mash_90", "P  Pemberton & Mash 90 °C", fitted,
         pressures(read("pemberton_mash_1978_90c"), 4e-4, true)},
        {"landolt_90", "P  Landolt-Boernstein 90 °C", fitted,
         pressures(read("landolt_boernstein_2007_90c"), 1.5e-3, true)},
        {"voutsas_13", "T  Voutsas 13.15 kPa", fitted, boiling_points(voutsas, 0.15, 13.15)},
        {"voutsas_20", "T  Voutsas 19.71 kPa", fitted, boiling_points(voutsas, 0.15, 19.71)},
        {"voutsas_33", "T  Voutsas 32.86 kPa", fitted, boiling_points(voutsas, 0.15, 32.86)},
        {"carey", "T  Carey & Lewis 101.3 kPa", fitted, boiling_points(read("carey_lewis_1932"), 0.2)},
        {"rieder", "T  Rieder & Thompson 101.3 kPa", fitted,
         boiling_points(read("rieder_thompson_1949"), 0.3)},
        {"lai", "T  Lai 101.3 kPa", fitted, boiling_points(read("lai_2014"), 0.15)},
        {"vrbka", "g  Vrbka 0 to 99 °C", fitted,
         infinite_dilution(read("vrbka_2005_infinite_dilution"), 0.008)},
        {"azeotropes", "z  azeotropes", fitted, azeotropes(read("azeotropes"))},
        // most of the uncertainty of the dilute points is common to one end: their scatter is far smaller
        {"dilute", "H  both dilute ends 25 °C", fitted,
         enthalpies(read("excess_enthalpy_dilute_2007"), 0.0, 0.3)},
        {"point", "H  x = 0.102, 25 °C", fitted, enthalpies(read("excess_enthalpy_2017"), 3.0, 1.0)},
        {"calvet", "H  Nagamachi 25 and 50 °C", fitted, enthalpies(read("excess_enthalpy_2006"), 15.0)},
        {"larkin", "H  Larkin 50 to 110 °C", fitted, larkin(read("larkin_1975"), 10.0)},
        {"melinder", "C  Melinder 5 to 35 °C", fitted, melinder(read("melinder_2010_coefficients"), 1.0)},
        {"perry", "C  Perry 3 to 41 °C", fitted, perry_heat_capacities(read("perry_heat_capacity"), 2.0)},
        {"yang", "P  Yang 25 °C", false, pressures(read("yang_1979"), 1e-2, false)},
        {"cristino", "P  Cristino 90 and 108 °C", false, pressures(read("cristino_2013"), 1e-2, false)},
        {"carey_y", "y  Carey & Lewis 101.3 kPa", false, vapours(read("carey_lewis_1932"), 0.006)},
        {"rieder_y", "y  Rieder & Thompson 101.3 kPa", false, vapours(read("rieder_thompson_1949"), 0.008)},
        {"lai_y", "y  Lai 101.3 kPa", false, vapours(read("lai_2014"), 0.006)},
        {"voutsas_y", "y  Voutsas 32.86 kPa", false, vapours(voutsas, 0.008)},
        {"beebe_95_y", "y  Beebe 12.67 kPa", false, vapours(beebe, 0.01, 12.666)},
        {"beebe_190_y", "y  Beebe 25.33 kPa", false, vapours(beebe, 0.01, 25.331)},
        {"beebe_380_y", "y  Beebe 50.66 kPa", false, vapours(beebe, 0.01, 50.662)},
        {"cristino_y", "y  Cristino 90 and 108 °C", false, vapours(read("cristino_2013"), 0.01)},
        {"chromatography", "g  chromatography 25 °C", false, infinite_dilution(held, 0.02, 0, 1)},
        {"dilutor", "g  dilutor 30 to 70 °C", false, infinite_dilution(held, 0.1, 1)},
        {"azeotropes_memory", "z  azeotropes (memory)", false,
         azeotropes(read("azeotropes_from_memory"), 0.005)},
        {"enthalpy_memory", "H  25 °C (memory)", false,
         enthalpies(read("excess_enthalpy_from_memory"), 20.0)},
    };
}

/// @param sets all of them
/// @param id   of one
/// @return its place
inline std::size_t place(std::vector<data_set> const& sets, std::string const& id) {
    auto const found = std::find_if(sets.begin(), sets.end(), [&](data_set const& s) { return s.id == id; });
    if (found == sets.end()) throw std::logic_error("no set " + id);
    return static_cast<std::size_t>(found - sets.begin());
}

}  // namespace aqueth::fit
