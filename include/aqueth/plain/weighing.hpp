// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

namespace detail {

// far above that of air, where weighing in air makes sense
template <number T>
constexpr status weighed_density_range(T kg_m3) {
    return within(argument::density, kg_m3, 10.0, 1e6);
}

}  // namespace detail

/// Indication of an ordinary balance. Balances are adjusted with weights of 8000 kg/m3 in air of 1.2 kg/m3,
/// so a liquid shows less than its mass, by about 0.11 % (water) to 0.14 % (ethanol).
/// @param mass_kg true mass of the liquid, 0 or more
/// @param kg_m3   its density, 10 to 1e6 kg/m3
/// @return the balance's indication, kg; refuses what is out of range
/// @par Source
/// @ref source_oiml_d28
template <number T>
constexpr checked<T> balance_indication_kg(T mass_kg, T kg_m3) {
    status const density = detail::weighed_density_range(kg_m3);
    if (!density.ok) return no_answer<T>(density);
    status const mass = within(argument::mass, mass_kg, 0.0, unlimited);
    if (!mass.ok) return no_answer<T>(mass);
    return {mass_kg * correlation::air_buoyancy::indication_per_mass(kg_m3), {}};
}

/// Mass of a liquid from the indication of an ordinary balance: the inverse of `balance_indication_kg`.
/// @param indication_kg indication of the balance, 0 or more
/// @param kg_m3         density of the liquid, 10 to 1e6 kg/m3
/// @return true mass, kg; refuses what is out of range
/// @par Source
/// @ref source_oiml_d28
template <number T>
constexpr checked<T> mass_from_balance_kg(T indication_kg, T kg_m3) {
    status const density = detail::weighed_density_range(kg_m3);
    if (!density.ok) return no_answer<T>(density);
    status const indication = within(argument::indication, indication_kg, 0.0, unlimited);
    if (!indication.ok) return no_answer<T>(indication);
    return {indication_kg / correlation::air_buoyancy::indication_per_mass(kg_m3), {}};
}

/// Density "in air", as in tables: the indication of a balance for one cubic metre.
/// @param kg_m3 density, 10 to 1e6 kg/m3
/// @return apparent density, kg/m3; refuses what is out of range
/// @par Source
/// @ref source_oiml_d28
template <number T>
constexpr checked<T> density_in_air_kg_m3(T kg_m3) {
    return balance_indication_kg(kg_m3, kg_m3);
}

}  // namespace aqueth::inline AQUETH_ABI::plain
