// SPDX-License-Identifier: BSL-1.0
#pragma once

namespace aqueth {

/// The reason for the range of an argument: a published source or a condition, as a code. Its words are those
/// of `name_of`. Compare by name: the numbers behind the names change from version to version.
enum class limit {
    none,
    liquid_above_freezing_point,
    oiml_r22,
    oiml_r22_ethanol_to_water,
    cipm_2001,
    crc_handbook,
    vapour_liquid_equilibrium,
    azeotrope_exists,
    azeotrope_exists_to_120_celsius,
    pure_liquid_to_azeotrope,
    heat_capacities_of_the_pure_liquids,
    vapour_condenses_above,
    liquid_to_116_85_celsius
};

/// @param set_by what sets a range
/// @return its words, as messages have them; empty for `none`
constexpr char const* name_of(limit set_by) noexcept {
    switch (set_by) {
    case limit::none: break;
    case limit::liquid_above_freezing_point: return "liquid above its freezing point, OIML R 22";
    case limit::oiml_r22: return "OIML R 22";
    case limit::oiml_r22_ethanol_to_water: return "ethanol to water at this temperature, OIML R 22";
    case limit::cipm_2001: return "CIPM-2001";
    case limit::crc_handbook: return "CRC Handbook";
    case limit::vapour_liquid_equilibrium: return "vapour-liquid equilibrium, 0.01 to 120 °C";
    case limit::azeotrope_exists: return "from where there is an azeotrope";
    case limit::azeotrope_exists_to_120_celsius: return "from where there is an azeotrope to 120 °C";
    case limit::pure_liquid_to_azeotrope: return "from the pure liquid to the azeotrope at this temperature";
    case limit::heat_capacities_of_the_pure_liquids: return "heat capacities of the pure liquids";
    case limit::vapour_condenses_above: return "above it the vapour condenses";
    case limit::liquid_to_116_85_celsius: return "0 to 116.85 °C";
    }
    return "";
}

}  // namespace aqueth
