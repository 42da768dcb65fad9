// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/plain/weighing.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Indication of an ordinary balance. Balances are adjusted with weights of 8000 kg/m3 in air of 1.2 kg/m3,
/// so a liquid shows less than its mass, by about 0.11 % (water) to 0.14 % (ethanol).
/// @param mass true mass of the liquid, 0 or more
/// @param rho  its density, above 10 kg/m3
/// @return the balance's indication
/// @throws refusal if the density is below 10 kg/m3, the mass is negative, or either is no finite number
/// @par Source
/// @ref source_oiml_d28
[[nodiscard]] constexpr units::mass balance_indication(units::mass mass, units::mass_density rho) {
    return detail::answer("weighing in air", plain::balance_indication_kg(in(mass, kilogram), rho.value())) *
           kilogram;
}

/// Mass of a liquid from the indication of an ordinary balance: the inverse of `balance_indication`.
/// @param indication indication of the balance, 0 or more
/// @param rho        density of the liquid, above 10 kg/m3
/// @return true mass
/// @throws refusal if the density is below 10 kg/m3, the mass is negative, or either is no finite number
/// @par Source
/// @ref source_oiml_d28
[[nodiscard]] constexpr units::mass mass_from_balance(units::mass indication, units::mass_density rho) {
    return detail::answer("weighing in air",
                          plain::mass_from_balance_kg(in(indication, kilogram), rho.value())) *
           kilogram;
}

/// Density "in air", as in tables: the indication of a balance for one cubic metre.
/// @param rho density, above 10 kg/m3
/// @return apparent density in kg/m3
/// @throws refusal if the density is below 10 kg/m3 or not a number
/// @par Source
/// @ref source_oiml_d28
[[nodiscard]] constexpr units::mass_density density_in_air(units::mass_density rho) {
    return detail::answer("weighing in air", plain::density_in_air_kg_m3(rho.value())) *
           kilogram_per_cubic_metre;
}

}  // namespace aqueth::inline AQUETH_ABI
