// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// The formula behind a density: see `density_formulation_at`.
using plain::density_formulation;

/// @param t temperature
/// @return the formula that densities follow at that temperature: the law to 40 °C, this project's fit above
[[nodiscard]] constexpr density_formulation density_formulation_at(units::temperature t) {
    return plain::density_formulation_at(t.celsius());
}

/// Density of a mixture: up to 40 °C by the general formula of OIML R 22, above it by this project's fit.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, from -20 °C, or the freezing point where that is higher (below 29.5 % mass),
///                 to the boiling point at 101.325 kPa
/// @return density in kg/m3
/// @throws refusal if the temperature is outside that range
/// @par Accuracy
/// The legal definition. Against measurements: within 0.1 kg/m3 from 10 to 40 °C (NBS, 1913); below 0 °C only
/// a refrigeration handbook could be compared, which differs by up to 1.9 kg/m3. The formula's temperature is
/// on IPTS-68, 0.005 K above ITS-90 at 20 °C; with the temperature of a modern thermometer, as here, the
/// density is high by less than 0.01 kg/m3 (see @ref temperature_scales). Above 40 °C (ITS-90) no law defines
/// the density: expanded uncertainty (k = 2) 0.05 % at 50 °C, 0.1 % at 75 °C and 0.15 % at 100 °C (see
/// @ref above_40_celsius). At 40 °C the two agree in value and slope.
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <strength_basis Strength>
[[nodiscard]] constexpr units::mass_density density(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("density", plain::density_kg_m3(w, t.celsius())) * kilogram_per_cubic_metre;
}

/// Uncertainty of a density above 40 °C, of the formula alone, for the budget of a measurement.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, 40 °C to the boiling point at 101.325 kPa
/// @return standard uncertainty in kg/m3: 0.025 % at 50 °C, 0.05 % at 75 °C, 0.075 % at 100 °C
/// @throws refusal if the temperature is outside that range; below 40 °C the law defines the density
/// @par Source
/// @ref source_hot_density
template <strength_basis Strength>
[[nodiscard]] constexpr units::mass_density hot_density_uncertainty(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("uncertainty of a density", plain::hot_density_uncertainty_kg_m3(w, t.celsius())) *
           kilogram_per_cubic_metre;
}

/// Mass fraction of a mixture from its density: the inverse of `density`.
/// @param rho density, between those of pure ethanol and of water (or of the mixture that just freezes) at t
/// @param t   temperature, -20 °C to the boiling point at 101.325 kPa
/// @return mass fraction, to working precision
/// @throws refusal if the temperature or the density is outside its range
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
constexpr mass_fraction mass_fraction_from_density(units::mass_density rho, units::temperature t) {
    return mass_fraction(detail::answer("mass fraction from density",
                                        plain::mass_fraction_from_density(rho.value(), t.celsius())));
}

/// Cubic expansion coefficient of a mixture, -(1/rho) d rho/dt at constant composition.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, from -20 °C or the freezing point to the boiling point at 101.325 kPa
/// @return expansion coefficient in 1/K; negative in weak mixtures near their greatest density
/// @throws refusal if the temperature is outside that range
/// @par Source
/// @ref source_oiml_r22, exact derivative
template <strength_basis Strength>
[[nodiscard]] constexpr units::cubic_expansion thermal_expansion(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("thermal expansion", plain::thermal_expansion_per_kelvin(w, t.celsius())) *
           per_kelvin;
}

/// Volume of a mixture per amount of substance.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, from -20 °C or the freezing point to the boiling point at 101.325 kPa
/// @return molar volume in m3/mol
/// @throws refusal if the temperature is outside that range
/// @par Source
/// @ref source_oiml_r22; molar masses @ref source_molar_mass
template <strength_basis Strength>
[[nodiscard]] constexpr units::molar_volume molar_volume(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("molar volume", plain::molar_volume_cm3_mol(w, t.celsius())) *
           cubic_centimetre_per_mole;
}

/// Change of volume on mixing, per mole of mixture: molar volume less those of the pure liquids in it.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, 0 °C to the boiling point of ethanol (both liquids are compared with)
/// @return excess molar volume in m3/mol; negative, because ethanol and water contract
/// @throws refusal if the temperature is outside that range
/// @par Accuracy
/// A small difference of large numbers: 0.1 kg/m3 in density is 0.003 cm3/mol.
/// @par Source
/// @ref source_oiml_r22; molar masses @ref source_molar_mass
template <strength_basis Strength>
[[nodiscard]] constexpr units::molar_volume excess_molar_volume(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("excess molar volume", plain::excess_molar_volume_cm3_mol(w, t.celsius())) *
           cubic_centimetre_per_mole;
}

/// Density of water by the CIPM-2001 formula: an independent and more accurate source than R 22's own water.
/// @param t temperature, 0 to 40 °C (ITS-90)
/// @return density of air-free water at 101.325 kPa in kg/m3
/// @throws refusal if the temperature is outside that range
/// @par Accuracy
/// 0.001 kg/m3 (stated). R 22's water, as `density` gives it, lies 0.002 to 0.0075 kg/m3 lower.
/// @par Source
/// @ref source_cipm_2001
[[nodiscard]] constexpr units::mass_density water_density_cipm_2001(units::temperature t) {
    return detail::answer("density of water", plain::water_density_cipm_2001_kg_m3(t.celsius())) *
           kilogram_per_cubic_metre;
}

}  // namespace aqueth::inline AQUETH_ABI
