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
    oiml_r22_pure_ethanol,
    oiml_r22_water_liquid,
    cipm_2001,
    crc_handbook,
    icao_standard_atmosphere,
    hydrometer_liquids,
    hydrometer_scale_ends,
    hydrometer_water_to_ethanol
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
    case limit::oiml_r22_pure_ethanol: return "pure ethanol, OIML R 22";
    case limit::oiml_r22_water_liquid: return "OIML R 22, water liquid";
    case limit::crc_handbook: return "CRC Handbook";
    case limit::icao_standard_atmosphere: return "ICAO standard atmosphere, lowest layer";
    case limit::hydrometer_liquids: return "liquids a hydrometer floats in";
    case limit::hydrometer_scale_ends: return "the ends of the scale";
    case limit::hydrometer_water_to_ethanol: return "water to ethanol at the temperature of the reading";
    }
    return "";
}

}  // namespace aqueth
