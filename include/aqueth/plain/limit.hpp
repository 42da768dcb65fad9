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
    heats_of_mixing,
    oiml_r22_and_heats_of_mixing,
    no_stronger_than_the_spirit,
    water_only_weakens,
    diluent_only_weakens,
    no_weaker_than_the_parcel,
    from_the_parcel_to_the_stronger_spirit,
    no_amount_reaches_the_stronger_spirit,
    from_the_diluent_to_the_stock,
    reach_of_the_lots,
    reach_of_the_lots_at_this_volume,
    bottles_counted,
    bottles_counted_in_single_precision
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
    case limit::heats_of_mixing:
        return "where heats of mixing are known; else give the temperature of the mixture";
    case limit::oiml_r22_and_heats_of_mixing:
        return "OIML R 22, heats of mixing; give the temperature at which it will be measured";
    case limit::no_stronger_than_the_spirit: return "no higher than that of the spirit";
    case limit::water_only_weakens: return "water only weakens: no higher than the spirit itself";
    case limit::diluent_only_weakens: return "above the diluent, no higher than the spirit itself";
    case limit::no_weaker_than_the_parcel: return "no lower than that of the parcel";
    case limit::from_the_parcel_to_the_stronger_spirit:
        return "between the parcel's own strength and that of the stronger spirit";
    case limit::no_amount_reaches_the_stronger_spirit: return "no finite amount reaches its own strength";
    case limit::from_the_diluent_to_the_stock:
        return "no lower than the diluent, no higher than the stock itself";
    case limit::reach_of_the_lots: return "what the lots can reach within their limits";
    case limit::reach_of_the_lots_at_this_volume:
        return "what the lots can reach within their limits at this volume";
    case limit::bottles_counted: return "no more than 1e12 bottles, which are counted exactly";
    case limit::bottles_counted_in_single_precision:
        return "no more than 5000 bottles, which single precision counts exactly";
    }
    return "";
}

}  // namespace aqueth
