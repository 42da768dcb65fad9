// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "table.hpp"

#include <aqueth/correlation/heat_capacity_perry.hpp>
#include <aqueth/correlation/molar_mass.hpp>

#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

/// From tables to observations of the excess Gibbs energy.
namespace aqueth::fit {

/// The quantity that a row measures. The residual of each kind is linear, or nearly so, in the coefficients.
enum class kind {
    pressure,           ///< total pressure over a liquid at x and T; residual in ln p
    boiling_point,      ///< boiling point at x and p; residual in ln p, stated in K through d ln p/dT
    vapour,             ///< mole fraction of ethanol in the vapour at x and p, the model's own T
    infinite_dilution,  ///< activity coefficient of ethanol in water; residual in its logarithm
    azeotrope,          ///< mole fraction where the relative volatility is one, at p and the model's own T
    enthalpy,           ///< excess enthalpy, J/mol
    heat_capacity       ///< excess heat capacity, J/(mol K)
};

/// One measurement.
struct observation {
    kind what;
    double x;        ///< mole fraction of ethanol in the liquid
    double kelvin;   ///< temperature, K; 0 where the model finds it
    double pascals;  ///< pressure, Pa; 0 where there is none
    double value;    ///< what was measured, in SI units
    double sigma;    ///< standard deviation given to it, in the unit of the residual
    double p1;       ///< saturation pressure of ethanol to use, Pa; 0: that of the library
    double p2;       ///< saturation pressure of water to use, Pa; 0: that of the library
};

/// The measurements of one laboratory.
struct data_set {
    std::string id;     ///< name of the table and of the part used
    std::string label;  ///< for the report
    bool fitted;        ///< or held for checking
    std::vector<observation> rows;
};

/// @param t       table of total pressures at one temperature
/// @param sigma   relative standard deviation of the pressure
/// @param own_pure whether the set's own pressures of the pure liquids replace the library's; common errors
///         (purity, manometer) then cancel
inline std::vector<observation> pressures(table const& t, double sigma, bool own_pure) {
    bool const old = t.has("pressure_mmhg");
    auto const pascals = [&](std::size_t i) {
        return old ? 133.322387 * t.number(i, "pressure_mmhg") : 1e3 * t.number(i, "pressure_kpa");
    };
    auto const x_of = [&](std::size_t i) {
        return old ? correlation::molar_mass::mole_fraction_from_mass_fraction(
                         t.number(i, "ethanol_mass_percent") / 100)
                   : t.number(i, "x_ethanol");
    };
    double p1 = 0.0;
    double p2 = 0.0;
    for (std::size_t i = 0; own_pure && i < t.rows().size(); ++i) {
        if (x_of(i) == 1.0) p1 = pascals(i);
        if (x_of(i) == 0.0) p2 = pascals(i);
    }
    std::vector<observation> result;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        double const x = x_of(i);
        if (x > 0.0 && x < 1.0)
            result.push_back({kind::pressure, x, t.kelvin(i), pascals(i), pascals(i), sigma, p1, p2});
    }
    return result;
}

/// @param t     table of boiling points
/// @param sigma standard deviation, K. It grows near pure water, where the boiling point is steep in x: an
///         error of 1 % in x counts as much as the temperature
/// @param kpa   which of several isobars; 0: all
inline std::vector<observation> boiling_points(table const& t, double sigma, double kpa = 0.0) {
    std::vector<observation> result;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        double const x = t.number(i, "x_ethanol");
        double const p = t.number(i, "pressure_kpa");
        if (x == 0.0 || x == 1.0 || (kpa > 0.0 && p != kpa)) continue;
        double const dilute = std::exp(-x / 0.06);  // K
        result.push_back(
            {kind::boiling_point, x, t.kelvin(i), 1e3 * p, t.kelvin(i), std::hypot(sigma, dilute), 0, 0});
    }
    return result;
}

/// @param t     table of vapour compositions
/// @param sigma standard deviation of y
/// @param kpa   which of several isobars; 0: all
inline std::vector<observation> vapours(table const& t, double sigma, double kpa = 0.0) {
    std::vector<observation> result;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        double const x = t.number(i, "x_ethanol");
        double const p = t.number(i, "pressure_kpa");
        if (x == 0.0 || x == 1.0 || t.empty(i, "y_ethanol") || (kpa > 0.0 && p != kpa)) continue;
        result.push_back({kind::vapour, x, t.kelvin(i), 1e3 * p, t.number(i, "y_ethanol"), sigma, 0, 0});
    }
    return result;
}

/// @param t     table of activity coefficients of ethanol at infinite dilution
/// @param sigma relative standard deviation
/// @param first first row
/// @param last  behind the last row; 0: all
inline std::vector<observation> infinite_dilution(table const& t, double sigma, std::size_t first = 0,
                                                  std::size_t last = 0) {
    std::vector<observation> result;
    for (std::size_t i = first; i < (last == 0 ? t.rows().size() : last); ++i)
        result.push_back(
            {kind::infinite_dilution, 0, t.kelvin(i), 0, t.number(i, "gamma_ethanol"), sigma, 0, 0});
    return result;
}

/// @param t     table of azeotropes
/// @param sigma standard deviation of x where the table has none
inline std::vector<observation> azeotropes(table const& t, double sigma = 0.0) {
    std::vector<observation> result;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        double const x = t.number(i, "x_ethanol");
        result.push_back({kind::azeotrope, x, 0, 1e3 * t.number(i, "pressure_kpa"), x,
                          sigma > 0.0 ? sigma : t.number(i, "x_uncertainty"), 0, 0});
    }
    return result;
}

/// @param t     table of measured excess enthalpies
/// @param sigma standard deviation, J/mol, to which
/// @param share of the table's own uncertainty is added
inline std::vector<observation> enthalpies(table const& t, double sigma, double share = 0.0) {
    std::vector<observation> result;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        double const own = share > 0.0 ? share * t.number(i, "uncertainty_j_mol") : 0.0;
        result.push_back({kind::enthalpy, t.number(i, "x_ethanol"), t.kelvin(i), 0,
                          t.number(i, "excess_enthalpy_j_mol"), std::hypot(sigma, own), 0, 0});
    }
    return result;
}

/// Larkin's equation, sampled where it agrees with other measurements.
/// @param t     its coefficients
/// @param sigma standard deviation, J/mol; three times as much below x = 0.1, where its square root of x has
///         the wrong curvature
inline std::vector<observation> larkin(table const& t, double sigma) {
    std::vector<observation> result;
    for (double const kelvin : {323.15, 343.15, 363.15, 383.15})
        for (double const x : {0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95}) {
            double sum = 0.0;
            for (std::size_t i = 0; i < t.rows().size(); ++i)
                sum += std::pow(x, t.number(i, "power")) *
                       (1e5 * t.number(i, "b") + 1e3 * t.number(i, "c") * kelvin +
                        t.number(i, "d") * kelvin * kelvin);
            result.push_back(
                {kind::enthalpy, x, kelvin, 0, x * (1.0 - x) * sum, (x < 0.1 ? 3 : 1) * sigma, 0, 0});
        }
    return result;
}

/// @param x      mole fraction of ethanol
/// @param kelvin temperature, K
/// @param per_kg heat capacity of the mixture, J/(kg K)
/// @param sigma  standard deviation, J/(mol K)
/// @return the excess over the pure liquids of Perry's Handbook
inline observation excess_heat_capacity(double x, double kelvin, double per_kg, double sigma) {
    namespace pure = correlation::heat_capacity_perry;
    double const mass =
        1e-3 * (x * correlation::molar_mass::ethanol + (1.0 - x) * correlation::molar_mass::water);
    double const ideal = x * pure::ethanol_liquid(kelvin) + (1.0 - x) * pure::water_liquid(kelvin);
    return {kind::heat_capacity, x, kelvin, 0, per_kg * mass - ideal, sigma, 0, 0};
}

/// Melinder's polynomial, sampled from 10 to 60 % mass and 5 to 35 °C.
/// @param t     its coefficients
/// @param sigma standard deviation, J/(mol K)
inline std::vector<observation> melinder(table const& t, double sigma) {
    std::vector<observation> result;
    for (double const celsius : {5.0, 15.0, 25.0, 35.0})
        for (double const percent : {10.0, 20.0, 30.0, 40.0, 50.0, 60.0}) {
            double sum = 0.0;
            for (std::size_t i = 0; i < t.rows().size(); ++i)
                if (t.text(i, "property") == "specific_heat")
                    sum += t.number(i, "coefficient") * std::pow(percent - 29.2361, t.number(i, "i")) *
                           std::pow(celsius - 8.1578, t.number(i, "j"));
            double const x = correlation::molar_mass::mole_fraction_from_mass_fraction(percent / 100);
            result.push_back(excess_heat_capacity(x, celsius + 273.15, sum, sigma));
        }
    return result;
}

/// @param t     Perry's table of heat capacities
/// @param sigma standard deviation, J/(mol K)
inline std::vector<observation> perry_heat_capacities(table const& t, double sigma) {
    std::vector<observation> result;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        double const x = t.number(i, "ethanol_mole_percent") / 100;
        if (x < 1.0)
            result.push_back(
                excess_heat_capacity(x, t.kelvin(i), 4184.0 * t.number(i, "heat_capacity_cal_g_k"), sigma));
    }
    return result;
}

}  // namespace aqueth::fit
