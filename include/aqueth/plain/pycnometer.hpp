// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

/// A flask or a pycnometer, weighed three times on the same balance: empty and dry, filled to its mark with
/// water, filled to the same mark with the liquid.
/// @tparam T float or double
template <number T>
struct pycnometer {
    T empty_kg;        ///< indication of the balance with the empty flask, kg
    T with_water_kg;   ///< indication with water, kg
    T water_celsius;   ///< temperature of the water, 0 to 40 °C
    T with_liquid_kg;  ///< indication with the liquid, kg
    T liquid_celsius;  ///< temperature of the liquid, -20 to 40 °C
    T cubic_expansion = T(correlation::glass_expansion::soda_lime);  ///< of the flask, 1/K, 0 to 3e-4
    T air_kg_m3 = T(correlation::air_buoyancy::air);                 ///< density of the air, 0.5 to 1.5 kg/m3
};

namespace detail {

/// Volume of the flask at the temperature of the water, m3. The buoyancy of the flask itself cancels.
template <class T>
constexpr T pycnometer_volume(T const& empty, T const& with_water, T const& water_celsius, T const& air) {
    T const reduced = T(1) - air / T(correlation::air_buoyancy::weights);
    return (with_water - empty) * reduced / (correlation::oiml_r22::density(T(0), water_celsius) - air);
}

/// Density of the liquid at its own temperature, kg/m3.
template <class T>
constexpr T pycnometer_density(T const& empty, T const& with_water, T const& water_celsius,
                               T const& with_liquid, T const& liquid_celsius, T const& cubic_expansion,
                               T const& air) {
    T const reduced = T(1) - air / T(correlation::air_buoyancy::weights);
    T const volume = pycnometer_volume(empty, with_water, water_celsius, air) *
                     (T(1) + cubic_expansion * (liquid_celsius - water_celsius));
    return air + (with_liquid - empty) * reduced / volume;
}

template <number T>
constexpr status pycnometer_range(pycnometer<T> const& p) {
    status const empty = within(argument::indication, p.empty_kg, 0.0, unlimited);
    if (!empty.ok) return empty;
    status const water =
        within(argument::temperature_of_the_water, p.water_celsius, 0.0, 40.0, limit::oiml_r22_water_liquid);
    if (!water.ok) return water;
    // the formula of law, whose errors a budget knows
    status const liquid =
        within(argument::temperature, p.liquid_celsius, correlation::oiml_r22::lowest_celsius,
               correlation::oiml_r22::highest_celsius, limit::oiml_r22);
    if (!liquid.ok) return liquid;
    status const glass = within(argument::cubic_expansion_of_the_instrument, p.cubic_expansion, 0.0, 3e-4);
    if (!glass.ok) return glass;
    status const air = within(argument::density_of_the_air, p.air_kg_m3, 0.5, 1.5);
    if (!air.ok) return air;
    // The contents must weigh something: a flask whose contents are less than a thousandth of it tells
    // nothing.
    double const least = double(p.empty_kg) * 1.001;
    status const filled = within(argument::indication_with_water, p.with_water_kg, least, unlimited,
                                 limit::heavier_than_the_empty_flask);
    if (!filled.ok) return filled;
    if (!(p.with_water_kg > p.empty_kg))
        return refuse(argument::indication_with_water, double(p.with_water_kg), least, unlimited,
                      limit::heavier_than_the_empty_flask);
    return within(argument::indication_with_the_liquid, p.with_liquid_kg, double(p.empty_kg), unlimited,
                  limit::heavier_than_the_empty_flask);
}

}  // namespace detail

/// Density of dry air, as an ideal gas of the molar mass of the standard atmosphere.
/// @param kpa     absolute pressure, 50 to 110 kPa
/// @param celsius temperature, -20 to 40 °C
/// @return density, kg/m3; refuses what is out of range
/// @par Accuracy
/// 1 % in rooms: moist air is up to 1 % lighter
/// @par Source
/// @ref source_icao_atmosphere
template <number T>
constexpr checked<T> air_density_kg_m3(T kpa, T celsius) {
    status const pressure = within(argument::pressure, kpa, 50.0, 110.0);
    if (!pressure.ok) return no_answer<T>(pressure);
    status const temperature = within(argument::temperature, celsius, -20.0, 40.0);
    if (!temperature.ok) return no_answer<T>(temperature);
    constexpr double specific_gas_constant = 8314.32 / 28.9644;  // ISO 2533, J/(kg K)
    return {T(1000) * kpa / (T(specific_gas_constant) * (celsius + T(273.15))), {}};
}

/// Volume of a flask to its mark, from its weighing with water.
/// @param p the three weighings; those with the liquid count only for their range
/// @return volume at the temperature of the water, mL; refuses what is out of range
/// @par Source
/// @ref source_oiml_r22 (water), @ref source_oiml_d28 (weights)
template <number T>
constexpr checked<T> pycnometer_volume_ml(pycnometer<T> const& p) {
    status const range = detail::pycnometer_range(p);
    if (!range.ok) return no_answer<T>(range);
    return {T(1e6) * detail::pycnometer_volume(p.empty_kg, p.with_water_kg, p.water_celsius, p.air_kg_m3),
            {}};
}

/// Density of a liquid from its weighing in a flask whose volume water tells. The balance cancels but for its
/// non-linearity, because the same one weighs all three.
/// @param p the three weighings
/// @return density at the temperature of the liquid, kg/m3; refuses what is out of range
/// @par Accuracy
/// exact arithmetic. The water is R 22's own, so that water weighed as a liquid has the strength 0; the best
/// water (CIPM-2001) is 0.002 to 0.0075 kg/m3 denser.
/// @par Source
/// @ref source_oiml_r22 (water), @ref source_oiml_d28 (weights)
template <number T>
constexpr checked<T> density_by_pycnometer_kg_m3(pycnometer<T> const& p) {
    status const range = detail::pycnometer_range(p);
    if (!range.ok) return no_answer<T>(range);
    T const rho = detail::pycnometer_density(p.empty_kg, p.with_water_kg, p.water_celsius, p.with_liquid_kg,
                                             p.liquid_celsius, p.cubic_expansion, p.air_kg_m3);
    status const liquid = within(argument::density, rho, 0.0, 3e4);  // mercury has 13 600
    if (!liquid.ok) return no_answer<T>(liquid);
    return {rho, {}};
}

/// Strength of a spirit from its weighing in a flask.
/// @param p the three weighings; the liquid holds ethanol and water only
/// @return mass fraction of ethanol; refuses what is out of range, and densities that no mixture has
/// @par Accuracy
/// as its density: 0.1 kg/m3 is 0.02 to 0.09 % vol
/// @par Source
/// @ref source_oiml_r22, @ref source_oiml_d28
template <number T>
constexpr checked<T> mass_fraction_by_pycnometer(pycnometer<T> const& p) {
    auto const density = density_by_pycnometer_kg_m3(p);
    if (!density.status.ok) return density;
    return mass_fraction_from_density(density.value, p.liquid_celsius);
}

}  // namespace aqueth::inline AQUETH_ABI::plain
