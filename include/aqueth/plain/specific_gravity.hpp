// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Whether the two weighings behind a specific gravity are corrected to vacuum.
enum class medium {
    vacuum,  ///< ratio of true densities
    air      ///< ratio of weights found in air of 1.2 kg/m3, the same volume of liquid and of water
};

namespace plain {

/// The reference of a specific gravity t1/t2.
template <number T>
struct gravity_reference {
    T liquid_celsius = T(20);            ///< t1, temperature of the liquid, °C
    T water_celsius = T(20);             ///< t2, temperature of the water it is compared with, °C
    medium weighed_in = medium::vacuum;  ///< vacuum or air
};

/// @param specific_gravity the ratio
/// @return whether it is one that a liquid can have, 0.5 to 2
template <number T>
constexpr status specific_gravity_range(T specific_gravity) {
    return within(argument::specific_gravity, specific_gravity, 0.5, 2.0);
}

namespace detail {

template <number T>
constexpr T air_density(medium weighed_in) {
    return weighed_in == medium::air ? T(correlation::air_buoyancy::air) : T(0);
}

}  // namespace detail

/// Density of any liquid from its specific gravity.
/// @param specific_gravity t1/t2, 0.5 to 2
/// @param reference        temperatures of liquid and water, vacuum or air
/// @return density at t1, kg/m3; refuses the specific gravity, or water that is not liquid
/// @par Source
/// @ref source_oiml_r22, its own water; buoyancy @ref source_oiml_d28
template <number T>
constexpr checked<T> density_from_specific_gravity_kg_m3(T specific_gravity,
                                                         gravity_reference<T> const& reference) {
    status const range = specific_gravity_range(specific_gravity);
    if (!range.ok) return no_answer<T>(range);
    auto const water = density_kg_m3(T(0), reference.water_celsius);
    if (!water.status.ok) return water;
    T const air = detail::air_density<T>(reference.weighed_in);
    return {air + specific_gravity * (water.value - air), {}};
}

/// Specific gravity of any liquid from its density: the inverse of `density_from_specific_gravity_kg_m3`.
/// @param kg_m3     density at t1
/// @param reference temperatures of liquid and water, vacuum or air
/// @return specific gravity t1/t2; refuses water that is not liquid, and a specific gravity
///         outside 0.5 to 2
/// @par Source
/// as `density_from_specific_gravity_kg_m3`
template <number T>
constexpr checked<T> specific_gravity_from_density(T kg_m3, gravity_reference<T> const& reference) {
    auto const water = density_kg_m3(T(0), reference.water_celsius);
    if (!water.status.ok) return water;
    T const air = detail::air_density<T>(reference.weighed_in);
    T const specific_gravity = (kg_m3 - air) / (water.value - air);
    status const range = specific_gravity_range(specific_gravity);
    if (!range.ok) return no_answer<T>(range);
    return {specific_gravity, {}};
}

/// Specific gravity of a mixture.
/// @param mass_fraction of ethanol, 0 to 1
/// @param reference     temperatures of liquid and water (each where it is liquid), vacuum or
///                      air
/// @return specific gravity t1/t2; refuses what is out of range
/// @par Source
/// as `density_from_specific_gravity_kg_m3`
template <number T>
constexpr checked<T> specific_gravity_of(T mass_fraction, gravity_reference<T> const& reference) {
    auto const liquid = density_kg_m3(mass_fraction, reference.liquid_celsius);
    if (!liquid.status.ok) return liquid;
    return specific_gravity_from_density(liquid.value, reference);
}

/// Mass fraction of a mixture from its specific gravity: the inverse of `specific_gravity_of`.
/// @param specific_gravity t1/t2, between those of pure ethanol and of water at t1
/// @param reference        temperatures of liquid and water, vacuum or air
/// @return mass fraction; refuses what is out of range, a specific gravity of no mixture by its density
/// @par Source
/// as `density_from_specific_gravity_kg_m3`
template <number T>
constexpr checked<T> mass_fraction_from_specific_gravity(T specific_gravity,
                                                         gravity_reference<T> const& reference) {
    auto const liquid = density_from_specific_gravity_kg_m3(specific_gravity, reference);
    if (!liquid.status.ok) return liquid;
    return mass_fraction_from_density(liquid.value, reference.liquid_celsius);
}

}  // namespace plain

}  // namespace aqueth::inline AQUETH_ABI
