// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

namespace aqueth::inline AQUETH_ABI {

/// The reason for the range of an argument: a published source or a condition, as a code. Its words are those
/// of `name_of`. Compare by name: the numbers behind the names change from version to version.
enum class limit {
    none,
    liquid_above_freezing_point,
    liquid_below_boiling_point,
    ethanol_to_water_at_this_temperature,
    water_liquid_and_sugar_solutions,
    oiml_r22,
    oiml_r22_ethanol_to_water,
    oiml_r22_pure_ethanol,
    oiml_r22_water_liquid,
    cipm_2001,
    crc_handbook,
    icao_standard_atmosphere,
    hydrometer_liquids,
    hydrometer_scale_ends,
    hydrometer_water_to_ethanol,
    vapour_liquid_equilibrium,
    azeotrope_exists,
    azeotrope_exists_to_120_celsius,
    pure_liquid_to_azeotrope,
    heat_capacities_of_the_pure_liquids,
    vapour_condenses_above,
    liquid_to_116_85_celsius,
    room_beside_extract,
    plato_scale,
    no_extract_to_70_plato,
    nothing_left_to_nothing_fermented,
    nothing_fermented,
    balling,
    balling_printed_table,
    excise_notice_226,
    all_fermented_to_none,
    all_fermented_to_none_at_that_temperature,
    yeast_common_practice,
    begins_above_30_plato,
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
    dissolved_by_its_water,
    with_this_sugar,
    with_this_strength,
    reach_of_this_spirit_with_sugar,
    tabarie,
    alcohol_of_the_sample,
    refraction_tables,
    brix_scale,
    ethanol_and_sugar_of_this_density,
    ethanol_to_methanol_at_this_density,
    all_fermented_to_none_at_20_celsius,
    bottles_counted,
    bottles_counted_in_single_precision,
    bingham_jackson,
    measured_speeds_of_sound,
    melinder,
    flash_points_compared,
    above_the_pressure_of_boiling,
    heavier_than_the_empty_flask,
    malt_table,
    boiling_water_is_too_cold
};

/// @param set_by what sets a range
/// @return its words, as messages have them; empty for `none`
constexpr char const* name_of(limit set_by) noexcept {
    switch (set_by) {
    case limit::none: break;
    case limit::liquid_above_freezing_point: return "liquid above its freezing point, OIML R 22";
    case limit::liquid_below_boiling_point: return "liquid, up to its boiling point at 101.325 kPa";
    case limit::ethanol_to_water_at_this_temperature: return "ethanol to water at this temperature";
    case limit::water_liquid_and_sugar_solutions: return "water liquid, ICUMSA (1990) for sugar";
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
    case limit::vapour_liquid_equilibrium: return "vapour-liquid equilibrium, 0.01 to 120 °C";
    case limit::azeotrope_exists: return "from where there is an azeotrope";
    case limit::azeotrope_exists_to_120_celsius: return "from where there is an azeotrope to 120 °C";
    case limit::pure_liquid_to_azeotrope: return "from the pure liquid to the azeotrope at this temperature";
    case limit::heat_capacities_of_the_pure_liquids: return "heat capacities of the pure liquids";
    case limit::vapour_condenses_above: return "above it the vapour condenses";
    case limit::liquid_to_116_85_celsius: return "0 to 116.85 °C";
    case limit::room_beside_extract: return "the rest of the mass beside the extract";
    case limit::plato_scale: return "-10 to 70 °P";
    case limit::no_extract_to_70_plato: return "no extract to 70 °P at this temperature";
    case limit::nothing_left_to_nothing_fermented: return "from no real extract left to nothing fermented";
    case limit::nothing_fermented: return "up to the original extract, nothing fermented";
    case limit::balling: return "Balling";
    case limit::balling_printed_table: return "the printed table";
    case limit::excise_notice_226: return "Excise Notice 226";
    case limit::all_fermented_to_none: return "from all extract fermented to none";
    case limit::all_fermented_to_none_at_that_temperature:
        return "at that temperature, from all extract fermented to none";
    case limit::yeast_common_practice:
        return "up to the highest strength that yeast survives, common practice";
    case limit::begins_above_30_plato: return "more would begin above 30 °P";
    case limit::heats_of_mixing:
        return "where heats of mixing are known; else give the temperature of the mixture";
    case limit::oiml_r22_and_heats_of_mixing:
        return "the mixture must be liquid at 101.325 kPa; give the temperature at which it will be measured";
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
    case limit::dissolved_by_its_water: return "the table of the sugar in water";
    case limit::with_this_sugar: return "water to the strongest spirit with this much sugar";
    case limit::with_this_strength: return "no sugar to the most that this strength leaves room for";
    case limit::reach_of_this_spirit_with_sugar: return "what this spirit reaches with this much sugar";
    case limit::tabarie: return "Tabarie's relation, to 18 % mass of ethanol";
    case limit::alcohol_of_the_sample: return "at most 95 % vol in the sample";
    case limit::refraction_tables: return "the tables of refractive indices";
    case limit::brix_scale: return "0 to 70 °Bx";
    case limit::ethanol_and_sugar_of_this_density: return "what ethanol and sugar of this density can show";
    case limit::ethanol_to_methanol_at_this_density: return "ethanol to methanol at this density";
    case limit::all_fermented_to_none_at_20_celsius: return "from all extract fermented to none, 20 °C";
    case limit::bottles_counted: return "no more than 1e12 bottles, which are counted exactly";
    case limit::bottles_counted_in_single_precision:
        return "no more than 5000 bottles, which single precision counts exactly";
    case limit::bingham_jackson: return "Bingham and Jackson; above 70 °C to 60 % mass";
    case limit::measured_speeds_of_sound: return "measured speeds of sound";
    case limit::melinder: return "Melinder, liquid mixtures";
    case limit::flash_points_compared: return "strengths with published flash points";
    case limit::heavier_than_the_empty_flask: return "heavier than the empty flask";
    case limit::malt_table: return "malt of the table";
    case limit::boiling_water_is_too_cold: return "boiling water brings it no higher; take more water";
    case limit::above_the_pressure_of_boiling: return "below it the liquid boils";
    }
    return "";
}

}  // namespace aqueth::inline AQUETH_ABI
