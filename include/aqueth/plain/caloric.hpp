// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>
#include <limits>

namespace aqueth::inline AQUETH_ABI::plain {

namespace detail {

namespace heat = model::enthalpy;

/// A mixture as the enthalpies need it.
template <number T>
struct amounts {
    T mole_fraction;  ///< of ethanol
    T kg_per_mole;    ///< mean molar mass

    explicit constexpr amounts(T mass_fraction)
        : mole_fraction(correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction)),
          kg_per_mole(T(1e-3) * correlation::molar_mass::mixture(mass_fraction)) {}

    T enthalpy_j_kg(T kelvins) const { return heat::liquid(mole_fraction, kelvins) / kg_per_mole; }
    T heat_capacity_j_kg_k(T kelvins) const {
        return heat::liquid_heat_capacity(mole_fraction, kelvins) / kg_per_mole;
    }
};

template <number T>
constexpr status caloric_range(T mass_fraction, T celsius) {
    status const strength = within(argument::mass_fraction, mass_fraction, 0.0, 1.0);
    if (!strength.ok) return strength;
    return within(argument::temperature, celsius, heat::lowest_celsius, heat::highest_celsius,
                  limit::heat_capacities_of_the_pure_liquids);
}

}  // namespace detail

/// Excess enthalpy: heat taken up when a mole of mixture is made from the pure liquids at constant
/// temperature.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, 0 to 116.85 °C
/// @return excess molar enthalpy, J/mol; negative where mixing warms (cold and weak), positive in the heat;
///         refuses what is out of range
/// @par Accuracy
/// As `aqueth::excess_enthalpy`; in `float` 0.05 J/mol more.
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<T> excess_enthalpy_j_mol(T mass_fraction, T celsius) {
    status const range = detail::caloric_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    return {model::excess_gibbs::enthalpy(x, celsius + T(273.15)).molar, {}};
}

/// Molar heat capacity of a liquid mixture at constant pressure.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, 0 to 116.85 °C
/// @return molar heat capacity, J/(mol K); refuses what is out of range
/// @par Accuracy
/// As `aqueth::molar_heat_capacity`: about 2 %; in `float` 0.001 J/(mol K) more.
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <number T>
checked<T> molar_heat_capacity_j_mol_k(T mass_fraction, T celsius) {
    status const range = detail::caloric_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    return {model::enthalpy::liquid_heat_capacity(x, celsius + T(273.15)), {}};
}

/// Heat capacity of a liquid mixture per mass.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, 0 to 116.85 °C
/// @return specific heat capacity, J/(kg K); refuses what is out of range
/// @par Accuracy
/// As `molar_heat_capacity_j_mol_k`: about 2 %.
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <number T>
checked<T> specific_heat_capacity_j_kg_k(T mass_fraction, T celsius) {
    status const range = detail::caloric_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    return {detail::amounts<T>(mass_fraction).heat_capacity_j_kg_k(celsius + T(273.15)), {}};
}

/// Enthalpy of a liquid mixture per mass. Only differences mean anything; both pure liquids are zero at 0 °C.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, 0 to 116.85 °C
/// @return specific enthalpy, J/kg, heat of mixing included; refuses what is out of range
/// @par Source
/// @ref source_excess_gibbs, @ref source_perry_heat_capacity
template <number T>
checked<T> enthalpy_of_liquid_j_kg(T mass_fraction, T celsius) {
    status const range = detail::caloric_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    return {detail::amounts<T>(mass_fraction).enthalpy_j_kg(celsius + T(273.15)), {}};
}

/// Enthalpy of a vapour mixture per mass, on the same zero as `enthalpy_of_liquid_j_kg`.
/// @param mass_fraction of ethanol in the vapour (in its condensate), 0 to 1
/// @param celsius       temperature, 0 to 116.85 °C
/// @param kpa           absolute pressure, 0 to that of the dew point
/// @return specific enthalpy, J/kg; refuses what is out of range
/// @par Accuracy
/// heat of vaporization 0.7 % for ethanol, 0.1 % for water
/// @par Source
/// Clapeyron's equation with the saturation pressures and virial coefficients of the equilibrium
template <number T>
checked<T> enthalpy_of_vapour_j_kg(T mass_fraction, T celsius, T kpa) {
    status const range = detail::caloric_range(mass_fraction, celsius);
    if (!range.ok) return no_answer<T>(range);
    detail::amounts<T> const vapour(mass_fraction);
    T const kelvins = celsius + T(273.15);
    T const saturated = model::vapour_liquid::dew_at_temperature(vapour.mole_fraction, kelvins).pressure;
    T const pressure = T(1000) * kpa;
    // a dew point that was itself computed may be rounded
    if (!(std::abs(pressure - saturated) <= rounding<T> * saturated)) {
        status const uncondensed =
            within(argument::pressure, kpa, 0.0, double(saturated / T(1000)), limit::vapour_condenses_above);
        if (!uncondensed.ok) return no_answer<T>(uncondensed);
    }
    return {model::enthalpy::vapour(vapour.mole_fraction, kelvins, pressure) / vapour.kg_per_mole, {}};
}

/// Temperature of a liquid mixture from its enthalpy: the inverse of `enthalpy_of_liquid_j_kg`. Mixing
/// without loss of heat keeps the enthalpy, so this is how warm a mixture becomes.
/// @param mass_fraction of ethanol, 0 to 1
/// @param j_kg          specific enthalpy, between those at 0 and 116.85 °C
/// @return temperature, °C; refuses what is out of range
/// @par Accuracy
/// to working precision: 1e-10 K, in `float` 0.001 K
/// @par Source
/// as `enthalpy_of_liquid_j_kg`
template <number T>
checked<T> liquid_celsius_from_enthalpy(T mass_fraction, T j_kg) {
    status const strength = within(argument::mass_fraction, mass_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    detail::amounts<T> const liquid(mass_fraction);
    T const lower = T(detail::heat::lowest_kelvin);
    T const upper = T(detail::heat::highest_kelvin);
    // The enthalpy of an end was perhaps rounded elsewhere, or by another compiler.
    T const rounded = T(1000) * rounding<T>;
    status const range =
        within(argument::specific_enthalpy, j_kg, double(liquid.enthalpy_j_kg(lower) - rounded),
               double(liquid.enthalpy_j_kg(upper) + rounded), limit::liquid_to_116_85_celsius);
    if (!range.ok) return no_answer<T>(range);
    auto const residual = [&](T kelvins) {
        return numeric::value_and_slope<T>{liquid.enthalpy_j_kg(kelvins) - j_kg,
                                           liquid.heat_capacity_j_kg_k(kelvins)};
    };
    T const noise = T(1e6) * std::numeric_limits<T>::epsilon();
    T const found = numeric::bracketed_newton(residual, lower, upper, T(300), noise) - T(273.15);
    T const highest = T(detail::heat::highest_celsius);
    return {found < highest ? found : highest, {}};  // rounding only: it can be asked for again
}

}  // namespace aqueth::inline AQUETH_ABI::plain
