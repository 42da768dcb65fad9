// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/flammability.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>

namespace aqueth::inline AQUETH_ABI {

/// Whether the vapour that a liquid gives to the air above it can be lit. None of the answers means safe.
enum class vapour_hazard {
    below_lower_limit,  ///< too lean to burn, by the margin; warming, mist and spills change that
    near_lower_limit,   ///< too lean, but not by the margin: treat it as flammable
    above_lower_limit   ///< flammable, or so rich that it burns where it meets more air
};

}  // namespace aqueth::inline AQUETH_ABI

namespace aqueth::inline AQUETH_ABI::plain {

namespace detail {

inline constexpr double lowest_flammability_celsius = 0.01;    ///< water must be liquid
inline constexpr double highest_flammability_celsius = 100.0;  ///< far above every flash point of the range
inline constexpr double weakest_with_flash_point = 0.039;      ///< mass fraction, 4.9 % vol

/// Partial pressure of ethanol over a liquid, Pa: x gamma p.
template <number T>
T ethanol_partial_pressure(T mole_fraction, T kelvins) {
    auto const g = model::excess_gibbs::reduced_gibbs(mole_fraction, kelvins);
    return mole_fraction * std::exp(g.ethanol) * correlation::ethanol_saturation_poling::pressure(kelvins);
}

template <number T>
T water_partial_pressure(T mole_fraction, T kelvins) {
    auto const g = model::excess_gibbs::reduced_gibbs(mole_fraction, kelvins);
    return (T(1) - mole_fraction) * std::exp(g.water) *
           correlation::water_saturation_wagner_pruss::pressure(kelvins);
}

/// Temperature at which the partial pressure of ethanol has a value, °C; NaN if it has it nowhere in range.
template <number T>
T celsius_of_partial_pressure(T mole_fraction, T pascals) {
    auto const miss = [&](T celsius) {
        return std::log(ethanol_partial_pressure(mole_fraction, celsius + T(273.15)) / pascals);
    };
    return numeric::bracketed_root(miss, T(lowest_flammability_celsius), T(highest_flammability_celsius),
                                   T(1e-9));
}

}  // namespace detail

/// Flash point of a mixture, by Liaw's relation: the temperature at which the mixture has the partial
/// pressure of ethanol that pure ethanol has at its own flash point.
/// @param mass_fraction of ethanol, 0.039 (4.9 % vol) to 1
/// @return closed-cup flash point at 101.325 kPa, °C; refuses what is out of range
/// @par Accuracy
/// As `aqueth::flash_point`.
/// @par Source
/// @ref source_flammability, @ref source_excess_gibbs
template <number T>
checked<T> flash_point_celsius(T mass_fraction) {
    status const strength = within(argument::mass_fraction, mass_fraction, detail::weakest_with_flash_point,
                                   1.0, limit::flash_points_compared);
    if (!strength.ok) return no_answer<T>(strength);
    T const pure = T(correlation::flammability::ethanol_flash_point_celsius);
    T const wanted = detail::ethanol_partial_pressure(T(1), pure + T(273.15));
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    return {detail::celsius_of_partial_pressure(x, wanted), {}};
}

/// Ethanol in air that has stood over a liquid until it took up no more: the richest air over a still liquid.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature of liquid and air, 0.01 to 100 °C, below the boiling point
/// @param kpa           absolute pressure, above that at which the liquid boils, to 200 kPa
/// @return volume fraction of ethanol vapour; refuses what is out of range
/// @par Accuracy
/// 2 % of the value: activity coefficients and saturation pressure
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<T> saturated_vapour_fraction(T mass_fraction, T celsius, T kpa) {
    status const strength = within(argument::mass_fraction, mass_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    status const temperature = within(argument::temperature, celsius, detail::lowest_flammability_celsius,
                                      detail::highest_flammability_celsius);
    if (!temperature.ok) return no_answer<T>(temperature);
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    T const ethanol = detail::ethanol_partial_pressure(x, celsius + T(273.15));
    T const boiling = (ethanol + detail::water_partial_pressure(x, celsius + T(273.15))) / T(1000);
    status const pressure =
        within(argument::pressure, kpa, double(boiling), 200.0, limit::above_the_pressure_of_boiling);
    if (!pressure.ok) return no_answer<T>(pressure);
    return {ethanol / (T(1000) * kpa), {}};
}

/// Temperature at which the air over a liquid reaches the lower flammable limit. It lies a little below the
/// flash point, where a test flame first runs across the liquid.
/// @param mass_fraction of ethanol, 0.039 (4.9 % vol) to 1
/// @param kpa           absolute pressure, 60 to 200 kPa
/// @return temperature, °C; refuses what is out of range
/// @par Accuracy
/// As `aqueth::flash_point`.
/// @par Source
/// @ref source_flammability, @ref source_excess_gibbs
template <number T>
checked<T> lower_limit_celsius(T mass_fraction, T kpa) {
    status const strength = within(argument::mass_fraction, mass_fraction, detail::weakest_with_flash_point,
                                   1.0, limit::flash_points_compared);
    if (!strength.ok) return no_answer<T>(strength);
    status const pressure = within(argument::pressure, kpa, 60.0, 200.0);
    if (!pressure.ok) return no_answer<T>(pressure);
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    T const wanted = T(1000 * correlation::flammability::lower_limit) * kpa;
    return {detail::celsius_of_partial_pressure(x, wanted), {}};
}

/// Whether the air over a liquid can be lit.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature of the liquid, 0.01 to 100 °C
/// @param kpa           absolute pressure, 60 to 200 kPa
/// @param margin        how many kelvins below the lower limit still count as near it, 0 to 50
/// @return the hazard; a liquid at its boiling point or above is above the limit; refuses what is out of
///             range
/// @par Accuracy
/// The model's own error is within the usual margin of 15 K (common practice for mixtures).
/// @par Source
/// @ref source_flammability, @ref source_excess_gibbs
template <number T>
checked<vapour_hazard> vapour_hazard_of(T mass_fraction, T celsius, T kpa, T margin = T(15)) {
    constexpr auto unknown = vapour_hazard::above_lower_limit;  // beside a refusal: the cautious answer
    status const strength = within(argument::mass_fraction, mass_fraction, 0.0, 1.0);
    if (!strength.ok) return {unknown, strength};
    status const temperature = within(argument::temperature, celsius, detail::lowest_flammability_celsius,
                                      detail::highest_flammability_celsius);
    if (!temperature.ok) return {unknown, temperature};
    status const pressure = within(argument::pressure, kpa, 60.0, 200.0);
    if (!pressure.ok) return {unknown, pressure};
    status const allowance = within(argument::margin_of_temperature, margin, 0.0, 50.0);
    if (!allowance.ok) return {unknown, allowance};
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(mass_fraction);
    T const limit = T(1000 * correlation::flammability::lower_limit) * kpa;
    auto const reached = [&](T at) {
        T const hottest = T(120);  // where the model ends
        return detail::ethanol_partial_pressure(x, (at < hottest ? at : hottest) + T(273.15)) >= limit;
    };
    if (reached(celsius)) return {vapour_hazard::above_lower_limit, {}};
    return {reached(celsius + margin) ? vapour_hazard::near_lower_limit : vapour_hazard::below_lower_limit,
            {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
