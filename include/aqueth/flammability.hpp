// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/flammability.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// The margin below the lower flammable limit that plants keep for mixtures (common practice, from memory).
inline constexpr auto usual_flammability_margin = 15.0 * kelvins;

/// Flash point of a mixture, by Liaw's relation: the temperature at which the mixture has the partial
/// pressure of ethanol that pure ethanol has at its own flash point. Spirit burns above it, and can be lit
/// below it: by a wick, a mist, a hot surface.
/// @param strength strength in any basis, from 4.9 % vol
/// @return closed-cup flash point at 101.325 kPa
/// @throws refusal if the strength is below its range
/// @par Accuracy
/// Within 2 K of a published list of ten flash points from 10 to 96 % vol, on average 1.0 K. Below 10 % vol
/// no figure was read. Standard uncertainty 2 K (`correlation::flammability::standard_uncertainty_kelvins`).
/// @par Source
/// @ref source_flammability, @ref source_excess_gibbs
template <strength_basis Strength>
[[nodiscard]] units::temperature flash_point(Strength strength) {
    double const w = to<mass_fraction>(strength).value();
    return celsius(detail::answer("flash point", plain::flash_point_celsius(w)));
}

/// Ethanol in air that has stood over a liquid until it took up no more.
/// @param strength strength in any basis
/// @param t        temperature of liquid and air, 0.01 to 100 °C, below the boiling point
/// @param p        absolute pressure, above that at which the liquid boils, to 200 kPa
/// @return volume fraction of ethanol vapour; it burns from 0.031 to 0.19
/// @throws refusal if the temperature or the pressure is outside its range
/// @par Accuracy
/// 2 % of the value
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
[[nodiscard]] double saturated_vapour_fraction(Strength strength, units::temperature t, units::pressure p) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("vapour in air",
                          plain::saturated_vapour_fraction(w, t.celsius(), in(p, kilopascal)));
}

/// Temperature at which the air over a liquid reaches the lower flammable limit.
/// @param strength strength in any basis, from 4.9 % vol
/// @param p        absolute pressure, 60 to 200 kPa
/// @return temperature, a little below the flash point
/// @throws refusal if the strength or the pressure is outside its range
/// @par Accuracy
/// as `flash_point`
/// @par Source
/// @ref source_flammability, @ref source_excess_gibbs
template <strength_basis Strength>
[[nodiscard]] units::temperature lower_flammable_temperature(Strength strength, units::pressure p) {
    double const w = to<mass_fraction>(strength).value();
    return celsius(detail::answer("lower flammable limit", plain::lower_limit_celsius(w, in(p, kilopascal))));
}

/// Whether the air over a liquid can be lit. None of the answers means safe: a spill, a mist or a warm
/// surface changes everything, and local codes decide.
/// @param strength strength in any basis
/// @param t        temperature of the liquid, 0.01 to 100 °C
/// @param p        absolute pressure, 60 to 200 kPa
/// @param margin   how far below the lower limit still counts as near it, 0 to 50 K
/// @return the hazard
/// @throws refusal if the temperature, the pressure or the margin is outside its range
/// @par Accuracy
/// as `flash_point`
/// @par Source
/// @ref source_flammability, @ref source_excess_gibbs
template <strength_basis Strength>
[[nodiscard]] vapour_hazard
vapour_hazard_over(Strength strength, units::temperature t, units::pressure p,
                   units::temperature_difference margin = usual_flammability_margin) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("vapour in air",
                          plain::vapour_hazard_of(w, t.celsius(), in(p, kilopascal), margin.value()));
}

}  // namespace aqueth::inline AQUETH_ABI
