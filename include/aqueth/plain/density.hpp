// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/cipm_2001_water.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

/// The formula behind a density.
enum class density_formulation {
    oiml_r22,    ///< the law, to 40 °C
    hot_density  ///< this project's fit above 40 °C, which joins the law with equal value and slope
};

/// @param celsius temperature, °C
/// @return the formula that the densities of this library follow at that temperature
template <number T>
constexpr density_formulation density_formulation_at(T celsius) {
    return celsius > T(correlation::oiml_r22::highest_celsius) ? density_formulation::hot_density
                                                               : density_formulation::oiml_r22;
}

/// Density of a mixture: up to 40 °C by the general formula of OIML R 22, above it by this project's fit.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, from -20 °C, or the freezing point where that is higher (below 29.5 %
///                      mass), to the boiling point at 101.325 kPa
/// @return density, kg/m3; refuses what is out of range
/// @par Accuracy
/// As `aqueth::density`; in `float` 2e-4 kg/m3 more.
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <number T>
constexpr checked<T> density_kg_m3(T mass_fraction, T celsius) {
    status const range = liquid_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    return {model::hot_density::liquid_density(mass_fraction, celsius), {}};
}

/// Uncertainty of a density, of the formula alone.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, above 40 °C to the boiling point at 101.325 kPa
/// @return standard uncertainty, kg/m3: 0.005 % at 40 °C, 0.025 % at 50, 0.05 % at 75, 0.075 % at 100;
///                  refuses
///         what is out of range, and temperatures where the law defines the density
/// @par Source
/// @ref source_hot_density
template <number T>
constexpr checked<T> hot_density_uncertainty_kg_m3(T mass_fraction, T celsius) {
    auto const rho = density_kg_m3(mass_fraction, celsius);
    if (!rho.status.ok) return rho;
    status const hot = within(argument::temperature, celsius, correlation::oiml_r22::highest_celsius,
                              double(hottest_liquid_celsius(mass_fraction)) + detail::boiling_allowance,
                              limit::liquid_below_boiling_point);
    if (!hot.ok) return no_answer<T>(hot);
    return {rho.value * model::hot_density::relative_standard_uncertainty(celsius), {}};
}

namespace detail {

/// Mass fraction from a density above 40 °C, without a check of the temperature; out of line, as it searches.
template <number T>
[[gnu::cold, gnu::noinline]] constexpr checked<T> mass_fraction_from_hot_density(T kg_m3, T celsius) {
    namespace hot = model::hot_density;
    T const ethanol = hot::density(T(1), celsius), water = hot::density(T(0), celsius);
    status const ends = within(argument::density, kg_m3, double(ethanol - rounding<T>),
                               double(water + rounding<T>), limit::ethanol_to_water_at_this_temperature);
    if (!ends.ok) return no_answer<T>(ends);
    T const found = kg_m3 >= water     ? T(0)
                    : kg_m3 <= ethanol ? T(1)
                                       : hot::mass_fraction_from_density(kg_m3, celsius, rounding<T>);
    status const liquid = liquid_range(found, celsius);
    if (!liquid.ok) return no_answer<T>(liquid);
    return {found, {}};
}

}  // namespace detail

/// Mass fraction of a mixture from its density: the inverse of `density_kg_m3`.
/// @param kg_m3   density, between those of pure ethanol and of water (or of the mixture that just freezes)
/// @param celsius temperature, -20 °C to the boiling point at 101.325 kPa
/// @return mass fraction, to working precision; refuses what is out of range
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <number T>
constexpr checked<T> mass_fraction_from_density(T kg_m3, T celsius) {
    namespace r22 = correlation::oiml_r22;
    status const formula = liquid_temperature_range(celsius);
    if (!formula.ok) return no_answer<T>(formula);
    if (celsius > T(r22::highest_celsius)) return detail::mass_fraction_from_hot_density(kg_m3, celsius);
    // Outside these bounds no temperature has a liquid of that density: refused without a search.
    bool const conceivable = T(770) < kg_m3 && kg_m3 < T(1001);
    T const found = conceivable ? r22::mass_fraction_from_density(kg_m3, celsius) : T(0);
    if (!(found > T(0) && found < T(1))) {  // an end, which is also the answer to what lies beyond
        r22::isotherm<T> const at_t(celsius);
        status const ends =
            within(argument::density, kg_m3, double(at_t.density(T(1)) - rounding<T>),
                   double(at_t.density(T(0)) + rounding<T>), limit::oiml_r22_ethanol_to_water);
        if (!ends.ok) return no_answer<T>(ends);
    }
    status const liquid = liquid_range(found, celsius);
    if (!liquid.ok) return no_answer<T>(liquid);
    return {found, {}};
}

/// The same in little code, for small machines: without the table of first guesses of 24 kB, and with a fixed
/// number of operations (two steps of Newton's method).
/// @param kg_m3   density, between those of pure ethanol and of water (or of the mixture that just freezes)
/// @param celsius temperature, -20 to 40 °C
/// @return mass fraction; refuses what is out of range
/// @par Accuracy
/// In `double` within 3e-10 of `mass_fraction_from_density`, from 10 °C up within 1e-12. In `float` within
/// 1e-6 (0.0001 % mass), as the other: the rounding of the density.
/// @par Source
/// @ref source_oiml_r22
template <number T>
constexpr checked<T> compact_mass_fraction_from_density(T kg_m3, T celsius) {
    namespace r22 = correlation::oiml_r22;
    status const formula =
        within(argument::temperature, celsius, r22::lowest_celsius, r22::highest_celsius, limit::oiml_r22);
    if (!formula.ok) return no_answer<T>(formula);
    r22::isotherm<T> const at_t(celsius);
    status const ends = within(argument::density, kg_m3, double(at_t.density(T(1)) - rounding<T>),
                               double(at_t.density(T(0)) + rounding<T>), limit::oiml_r22_ethanol_to_water);
    if (!ends.ok) return no_answer<T>(ends);
    T found = r22::compact_mass_fraction_from_density(kg_m3, celsius);
    // The first guess is for liquids. A density that only ice could have may lead anywhere: that is refused
    // as water is at this temperature.
    T const miss = at_t.density(found) - kg_m3;
    if (!(miss >= T(-1e-3) && miss <= T(1e-3))) found = T(0);
    status const liquid = liquid_range(found, celsius);
    if (!liquid.ok) return no_answer<T>(liquid);
    return {found, {}};
}

/// Cubic expansion coefficient of a mixture, -(1/rho) d rho/dt at constant composition.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, from the freezing point or -20 °C to the boiling point at 101.325 kPa
/// @return expansion coefficient, 1/K; negative in weak mixtures near their greatest density; refuses what is
///         out of range
/// @par Source
/// @ref source_oiml_r22, exact derivative; above 40 °C @ref source_hot_density
template <number T>
constexpr checked<T> thermal_expansion_per_kelvin(T mass_fraction, T celsius) {
    status const range = liquid_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    if (celsius > T(correlation::oiml_r22::highest_celsius)) {
        auto const volume = model::hot_density::specific_volume(mass_fraction, celsius);
        return {volume.slope / volume.value, {}};
    }
    auto const rho = correlation::oiml_r22::density_with_derivatives(mass_fraction, celsius);
    return {-rho.d_temperature / rho.value, {}};
}

/// Volume of a mixture per amount of substance.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, from the freezing point or -20 °C to the boiling point at 101.325 kPa
/// @return molar volume, cm3/mol; refuses what is out of range
/// @par Source
/// @ref source_oiml_r22; molar masses @ref source_molar_mass
template <number T>
constexpr checked<T> molar_volume_cm3_mol(T mass_fraction, T celsius) {
    auto const rho = density_kg_m3(mass_fraction, celsius);
    if (!rho.status.ok) return rho;
    return {T(1000) * correlation::molar_mass::mixture(mass_fraction) / rho.value, {}};
}

/// Change of volume on mixing, per mole of mixture: molar volume less those of the pure liquids in it.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, 0 °C to the boiling point of ethanol (both liquids are compared with)
/// @return excess molar volume, cm3/mol; negative, because ethanol and water contract; refuses what is out
///         of range
/// @par Accuracy
/// A small difference of large numbers: 0.1 kg/m3 in density is 0.003 cm3/mol.
/// @par Source
/// @ref source_oiml_r22; molar masses @ref source_molar_mass
template <number T>
constexpr checked<T> excess_molar_volume_cm3_mol(T mass_fraction, T celsius) {
    auto const water = molar_volume_cm3_mol(T(0), celsius);
    if (!water.status.ok) return water;
    auto const mixture = molar_volume_cm3_mol(mass_fraction, celsius);
    if (!mixture.status.ok) return mixture;
    auto const ethanol = molar_volume_cm3_mol(T(1), celsius);
    if (!ethanol.status.ok) return ethanol;
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    return {mixture.value - x * ethanol.value - (T(1) - x) * water.value, {}};
}

/// Density of water by the CIPM-2001 formula: an independent and more accurate source than R 22's own water.
/// @param celsius temperature, 0 to 40 °C (ITS-90)
/// @return density of air-free water at 101.325 kPa, kg/m3; refuses what is out of range
/// @par Accuracy
/// 0.001 kg/m3 (stated). R 22's water lies 0.002 to 0.0075 kg/m3 lower.
/// @par Source
/// @ref source_cipm_2001
template <number T>
constexpr checked<T> water_density_cipm_2001_kg_m3(T celsius) {
    namespace cipm = correlation::cipm_2001_water;
    status const range =
        within(argument::temperature, celsius, cipm::lowest_celsius, cipm::highest_celsius, limit::cipm_2001);
    if (!range.ok) return no_answer<T>(range);
    return {cipm::density(celsius), {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
