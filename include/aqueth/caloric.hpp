// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <cmath>
#include <limits>

namespace aqueth {

namespace detail {

namespace heat = model::enthalpy;

inline double require_caloric_temperature(char const* property, units::temperature t) {
    require_range(property, argument::temperature, t.celsius(), "°C", heat::lowest_celsius,
                  heat::highest_celsius, "heat capacities of the pure liquids");
    return t.kelvin();
}

/// Specific enthalpy of a liquid in J/kg, both pure liquids zero at 0 °C; t in K, not checked.
inline double specific_enthalpy(mass_fraction w, double kelvins_) {
    double const x = to<mole_fraction>(w).value();
    return heat::liquid(x, kelvins_) / (1e-3 * correlation::molar_mass::mixture(w.value()));
}

inline double specific_heat(mass_fraction w, double kelvins_) {
    double const x = to<mole_fraction>(w).value();
    return heat::liquid_heat_capacity(x, kelvins_) / (1e-3 * correlation::molar_mass::mixture(w.value()));
}

}  // namespace detail

/// Excess enthalpy: heat that a mole of mixture takes up when it is made from the pure liquids at constant
/// temperature.
/// @param strength strength of the mixture, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return excess molar enthalpy; negative where mixing warms (cold and weak mixtures), positive at high
///         temperatures
/// @throws range_error if the temperature is outside its range
/// @par Accuracy
/// At most 24 J/mol against the points measured at 25 °C, where the curve reaches -750; against Larkin (1975)
/// from 50 °C up 9 J/mol on average and 42 at most: @ref fit_report, section 2.
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
units::molar_energy excess_enthalpy(Strength strength, units::temperature t) {
    double const kelvins_ = detail::require_caloric_temperature("excess enthalpy", t);
    return model::excess_gibbs::enthalpy(to<mole_fraction>(strength).value(), kelvins_).molar *
           joule_per_mole;
}

/// Molar heat capacity of a liquid mixture at constant pressure.
/// @param strength strength, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return molar heat capacity
/// @throws range_error if the temperature is outside its range
/// @par Accuracy
/// 1.6 J/(mol K) from 23 to 25 °C up to 60 % mass (Melinder 1.24; Perry's Handbook 1.58, at 23 °C and mole
/// fraction 0.0416), up to 4.4 J/(mol K) near 3 °C in strong mixtures
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <strength_basis Strength>
units::molar_heat_capacity molar_heat_capacity(Strength strength, units::temperature t) {
    double const kelvins_ = detail::require_caloric_temperature("heat capacity", t);
    return detail::heat::liquid_heat_capacity(to<mole_fraction>(strength).value(), kelvins_) *
           joule_per_mole_kelvin;
}

/// Heat capacity of a liquid mixture per mass.
/// @param strength strength, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return specific heat capacity
/// @throws range_error if the temperature is outside its range
/// @par Accuracy
/// as `molar_heat_capacity`: about 2 %
/// @par Source
/// as `molar_heat_capacity`
template <strength_basis Strength>
units::specific_heat_capacity specific_heat_capacity(Strength strength, units::temperature t) {
    double const kelvins_ = detail::require_caloric_temperature("heat capacity", t);
    return detail::specific_heat(to<mass_fraction>(strength), kelvins_) * joule_per_kilogram_kelvin;
}

/// Enthalpy of a liquid mixture per mass. Only differences mean anything; both pure liquids are zero at 0 °C.
/// @param strength strength, in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @return specific enthalpy, heat of mixing included
/// @throws range_error if the temperature is outside its range
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <strength_basis Strength>
units::specific_energy enthalpy_of_liquid(Strength strength, units::temperature t) {
    double const kelvins_ = detail::require_caloric_temperature("enthalpy of liquid", t);
    return detail::specific_enthalpy(to<mass_fraction>(strength), kelvins_) * joule_per_kilogram;
}

/// Enthalpy of a vapour mixture per mass, on the same zero as `enthalpy_of_liquid`.
/// @param strength strength of the vapour (of its condensate), in any basis
/// @param t        temperature, 0 to 116.85 °C
/// @param p        absolute pressure, 0 to that of the dew point
/// @return specific enthalpy
/// @throws range_error if an argument is outside its range
/// @par Accuracy
/// heat of vaporization 0.7 % for ethanol, 0.1 % for water
/// @par Source
/// Clapeyron's equation with the saturation pressures and virial coefficients of the equilibrium
template <strength_basis Strength>
units::specific_energy enthalpy_of_vapour(Strength strength, units::temperature t, units::pressure p) {
    double const kelvins_ = detail::require_caloric_temperature("enthalpy of vapour", t);
    mass_fraction const w = to<mass_fraction>(strength);
    double const y = to<mole_fraction>(w).value();
    double const saturated = model::vapour_liquid::dew_at_temperature(y, kelvins_).pressure;
    bool const forgiven =
        std::abs(p.value() - saturated) <= detail::rounding * saturated;  // a computed dew point
    require_range("enthalpy of vapour", argument::pressure, in(p, kilopascal), "kPa", 0.0,
                  forgiven ? in(p, kilopascal) : saturated / 1000.0, "above it the vapour condenses");
    return detail::heat::vapour(y, kelvins_, p.value()) /
           (1e-3 * correlation::molar_mass::mixture(w.value())) * joule_per_kilogram;
}

/// Temperature of a liquid mixture from its enthalpy: the inverse of `enthalpy_of_liquid`. Mixing without
/// loss of heat conserves the enthalpy, so this function gives the temperature of a mixture.
/// @param strength strength, in any basis
/// @param enthalpy specific enthalpy, between those at 0 and 116.85 °C
/// @return temperature
/// @throws range_error if the enthalpy is outside that range
/// @par Source
/// as `enthalpy_of_liquid`
template <strength_basis Strength>
units::temperature temperature_of_liquid(Strength strength, units::specific_energy enthalpy) {
    auto const w = to<mass_fraction>(strength);
    double const lower = detail::heat::lowest_kelvin;
    double const upper = detail::heat::highest_kelvin;
    double const h =
        require_range("temperature of liquid", argument::specific_enthalpy, enthalpy.value() / 1000.0,
                      "kJ/kg", detail::specific_enthalpy(w, lower) / 1000.0 - detail::rounding,
                      detail::specific_enthalpy(w, upper) / 1000.0 + detail::rounding,
                      "0 to 116.85 °C") *
        1000.0;  // the enthalpy of an end may have been rounded elsewhere, or by another compiler
    auto const residual = [&](double kelvins_) {
        return numeric::value_and_slope<double>{detail::specific_enthalpy(w, kelvins_) - h,
                                                detail::specific_heat(w, kelvins_)};
    };
    double const noise = 1e6 * std::numeric_limits<double>::epsilon();
    return kelvin(numeric::bracketed_newton(residual, lower, upper, 300.0, noise));
}

}  // namespace aqueth
