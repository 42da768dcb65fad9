// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/plain/caloric.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

namespace detail {

namespace heat = model::enthalpy;

/// Specific enthalpy of a liquid in J/kg, both pure liquids zero at 0 °C; t in K, not checked.
inline double specific_enthalpy(mass_fraction w, double kelvins_) {
    return plain::detail::amounts<double>(w.value()).enthalpy_j_kg(kelvins_);
}

inline double specific_heat(mass_fraction w, double kelvins_) {
    return plain::detail::amounts<double>(w.value()).heat_capacity_j_kg_k(kelvins_);
}

}  // namespace detail

/// Excess enthalpy: heat that a mole of mixture takes up when it is made from the pure liquids at constant
/// temperature.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return excess molar enthalpy; negative where mixing warms (cold and weak mixtures), positive at high
///         temperatures
/// @throws refusal if the temperature is outside its range
/// @par Accuracy
/// At most 24 J/mol against the points measured at 25 °C, where the curve reaches -750; against Larkin (1975)
/// from 50 °C up 9 J/mol on average and 42 at most: @ref fit_report, section 2.
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
[[nodiscard]] units::molar_energy excess_enthalpy(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("excess enthalpy", plain::excess_enthalpy_j_mol(w, t.celsius())) * joule_per_mole;
}

/// Molar heat capacity of a liquid mixture at constant pressure.
/// @param strength strength, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return molar heat capacity
/// @throws refusal if the temperature is outside its range
/// @par Accuracy
/// 1.6 J/(mol K) from 23 to 25 °C up to 60 % mass (Melinder 1.24; Perry's Handbook 1.58, at 23 °C and mole
/// fraction 0.0416), up to 4.4 J/(mol K) near 3 °C in strong mixtures
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <strength_basis Strength>
[[nodiscard]] units::molar_heat_capacity molar_heat_capacity(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("heat capacity", plain::molar_heat_capacity_j_mol_k(w, t.celsius())) *
           joule_per_mole_kelvin;
}

/// Heat capacity of a liquid mixture per mass.
/// @param strength strength, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return specific heat capacity
/// @throws refusal if the temperature is outside its range
/// @par Accuracy
/// as `molar_heat_capacity`: about 2 %
/// @par Source
/// as `molar_heat_capacity`
template <strength_basis Strength>
[[nodiscard]] units::specific_heat_capacity specific_heat_capacity(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("heat capacity", plain::specific_heat_capacity_j_kg_k(w, t.celsius())) *
           joule_per_kilogram_kelvin;
}

/// Enthalpy of a liquid mixture per mass. Only differences mean anything; both pure liquids are zero at 0 °C.
/// @param strength strength, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return specific enthalpy, heat of mixing included
/// @throws refusal if the temperature is outside its range
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <strength_basis Strength>
[[nodiscard]] units::specific_energy enthalpy_of_liquid(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("enthalpy of liquid", plain::enthalpy_of_liquid_j_kg(w, t.celsius())) *
           joule_per_kilogram;
}

/// Enthalpy of a vapour mixture per mass, on the same zero as `enthalpy_of_liquid`.
/// @param strength strength of the vapour (of its condensate), in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @param p        absolute pressure, 0 to that of the dew point
/// @return specific enthalpy
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// heat of vaporization 0.7 % for ethanol, 0.1 % for water
/// @par Source
/// Clapeyron's equation with the saturation pressures and virial coefficients of the equilibrium
template <strength_basis Strength>
[[nodiscard]] units::specific_energy enthalpy_of_vapour(Strength strength, units::temperature t,
                                                        units::pressure p) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("enthalpy of vapour",
                          plain::enthalpy_of_vapour_j_kg(w, t.celsius(), in(p, kilopascal))) *
           joule_per_kilogram;
}

/// Temperature of a liquid mixture from its enthalpy: the inverse of `enthalpy_of_liquid`. Mixing without
/// loss of heat conserves the enthalpy, so this function gives the temperature of a mixture.
/// @param strength strength, in any basis
/// @param enthalpy specific enthalpy, between those at 0 and 116.85 °C
/// @return temperature
/// @throws refusal if the enthalpy is outside that range
/// @par Source
/// as `enthalpy_of_liquid`
template <strength_basis Strength>
units::temperature temperature_of_liquid(Strength strength, units::specific_energy enthalpy) {
    double const w = to<mass_fraction>(strength).value();
    return celsius(
        detail::answer("temperature of liquid", plain::liquid_celsius_from_enthalpy(w, enthalpy.value())));
}

}  // namespace aqueth::inline AQUETH_ABI
