// SPDX-License-Identifier: BSL-1.0
// Made by generate.py from functions.tsv and codes.tsv. Not to be edited.
// clang-format off
#include "interface.hpp"

namespace aqueth::c {

bool is_strength_scale(int code) noexcept {
    return code >= 0 && code < 11;
}

strength_scale strength_scale_of(int code) noexcept {
    switch (code) {
    case 0: return strength_scale::mass_fraction;
    case 1: return strength_scale::mole_fraction;
    case 2: return strength_scale::volume_fraction_at_20_celsius;
    case 3: return strength_scale::volume_fraction_at_15_celsius;
    case 4: return strength_scale::volume_fraction_at_15_56_celsius;
    case 5: return strength_scale::volume_fraction_at_60_fahrenheit;
    case 6: return strength_scale::us_proof;
    case 7: return strength_scale::grams_per_100_ml_at_20_celsius;
    case 8: return strength_scale::grams_per_100_ml_at_15_celsius;
    case 9: return strength_scale::grams_per_100_ml_at_15_56_celsius;
    case 10: return strength_scale::grams_per_100_ml_at_60_fahrenheit;
    default: return {};
    }
}

bool is_medium(int code) noexcept {
    return code >= 0 && code < 2;
}

medium medium_of(int code) noexcept {
    switch (code) {
    case 0: return medium::vacuum;
    case 1: return medium::air;
    default: return {};
    }
}

bool is_azeotrope_side(int code) noexcept {
    return code >= 0 && code < 2;
}

azeotrope_side azeotrope_side_of(int code) noexcept {
    switch (code) {
    case 0: return azeotrope_side::water_rich;
    case 1: return azeotrope_side::ethanol_rich;
    default: return {};
    }
}

bool is_sugar(int code) noexcept {
    return code >= 0 && code < 3;
}

sugar sugar_of(int code) noexcept {
    switch (code) {
    case 0: return sugar::sucrose;
    case 1: return sugar::hexose;
    case 2: return sugar::glucose_monohydrate;
    default: return {};
    }
}

bool is_sweetener(int code) noexcept {
    return code >= 0 && code < 4;
}

sweetener sweetener_of(int code) noexcept {
    switch (code) {
    case 0: return sweetener::sucrose;
    case 1: return sweetener::glucose;
    case 2: return sweetener::fructose;
    case 3: return sweetener::invert_sugar;
    default: return {};
    }
}

int code_of(aqueth::argument code) noexcept {
    switch (code) {
    case aqueth::argument::other: return 0;
    case aqueth::argument::density: return 1;
    case aqueth::argument::mass_fraction: return 2;
    case aqueth::argument::temperature: return 3;
    case aqueth::argument::alcoholic_strength_by_volume: return 4;
    case aqueth::argument::altitude: return 5;
    case aqueth::argument::amount_of_ethanol: return 6;
    case aqueth::argument::amount_of_ethanol_and_water: return 7;
    case aqueth::argument::amount_of_water: return 8;
    case aqueth::argument::apparent_extract: return 9;
    case aqueth::argument::cubic_expansion_of_the_instrument: return 10;
    case aqueth::argument::density_behind_the_reading: return 11;
    case aqueth::argument::density_it_floats_by: return 12;
    case aqueth::argument::ethanol_beside_this_extract: return 13;
    case aqueth::argument::extract: return 14;
    case aqueth::argument::fall: return 15;
    case aqueth::argument::final_gravity: return 16;
    case aqueth::argument::indication: return 17;
    case aqueth::argument::label_volume: return 18;
    case aqueth::argument::mass: return 19;
    case aqueth::argument::mass_concentration: return 20;
    case aqueth::argument::mass_of_all_parcels: return 21;
    case aqueth::argument::mole_fraction: return 22;
    case aqueth::argument::number_of_additions: return 23;
    case aqueth::argument::number_of_parcels: return 24;
    case aqueth::argument::original_extract: return 25;
    case aqueth::argument::pressure: return 26;
    case aqueth::argument::proof: return 27;
    case aqueth::argument::reading: return 28;
    case aqueth::argument::real_extract: return 29;
    case aqueth::argument::reference_temperature: return 30;
    case aqueth::argument::share_of_the_stoichiometric_yield: return 31;
    case aqueth::argument::specific_enthalpy: return 32;
    case aqueth::argument::specific_gravity: return 33;
    case aqueth::argument::strength: return 34;
    case aqueth::argument::strength_of_the_diluent: return 35;
    case aqueth::argument::strength_of_the_stronger_spirit: return 36;
    case aqueth::argument::strength_scale: return 37;
    case aqueth::argument::stronger_spirit_above_the_target_by: return 38;
    case aqueth::argument::target_strength: return 39;
    case aqueth::argument::temperature_of_a_part: return 40;
    case aqueth::argument::temperature_of_the_mixture_without_loss_of_heat: return 41;
    case aqueth::argument::volume: return 42;
    case aqueth::argument::boiling_temperature: return 43;
    case aqueth::argument::collected_volume: return 44;
    case aqueth::argument::elapsed_time: return 45;
    case aqueth::argument::extract_of_the_charge: return 46;
    case aqueth::argument::extract_of_what_stays_in_the_pot: return 47;
    case aqueth::argument::greatest_reflux_ratio: return 48;
    case aqueth::argument::heat_capacity: return 49;
    case aqueth::argument::heat_loss_coefficient: return 50;
    case aqueth::argument::height_equivalent_to_a_theoretical_plate: return 51;
    case aqueth::argument::height_of_the_packing: return 52;
    case aqueth::argument::mass_of_the_charge: return 53;
    case aqueth::argument::mass_of_the_extract: return 54;
    case aqueth::argument::murphree_efficiency: return 55;
    case aqueth::argument::number_of_cuts: return 56;
    case aqueth::argument::number_of_ends_of_the_run: return 57;
    case aqueth::argument::number_of_plates: return 58;
    case aqueth::argument::number_of_points: return 59;
    case aqueth::argument::number_of_stages: return 60;
    case aqueth::argument::number_of_steps: return 61;
    case aqueth::argument::power: return 62;
    case aqueth::argument::reflux_ratio: return 63;
    case aqueth::argument::share_of_the_vapour_that_condenses: return 64;
    case aqueth::argument::strength_in_the_still: return 65;
    case aqueth::argument::strength_of_the_charge: return 66;
    case aqueth::argument::strength_of_the_distillate: return 67;
    case aqueth::argument::strength_of_the_distillate_to_keep: return 68;
    case aqueth::argument::strength_that_is_kept: return 69;
    case aqueth::argument::strengths_kept_by_the_reflux: return 70;
    case aqueth::argument::temperature_of_the_room: return 71;
    case aqueth::argument::temperature_wanted: return 72;
    case aqueth::argument::time_to_elapse: return 73;
    case aqueth::argument::volume_to_collect: return 74;
    case aqueth::argument::flow_of_the_cooling_water: return 75;
    case aqueth::argument::head_temperature: return 76;
    case aqueth::argument::holdup: return 77;
    case aqueth::argument::number_of_steps_of_the_plan: return 78;
    case aqueth::argument::reading_at_the_spout: return 79;
    case aqueth::argument::take_off_rate: return 80;
    case aqueth::argument::temperature_of_the_reflux: return 81;
    case aqueth::argument::temperature_of_the_spout: return 82;
    case aqueth::argument::time_at_total_reflux: return 83;
    case aqueth::argument::warming_of_the_cooling_water: return 84;
    case aqueth::argument::temperature_of_the_charge: return 85;
    case aqueth::argument::index: return 86;
    case aqueth::argument::mole_fraction_of_the_liquid: return 87;
    case aqueth::argument::mass_of_the_sugar: return 88;
    case aqueth::argument::refractive_index: return 89;
    case aqueth::argument::refractometer_reading: return 90;
    case aqueth::argument::share_lost_in_distillation: return 91;
    case aqueth::argument::sugar_concentration: return 92;
    case aqueth::argument::sugar_in_its_water: return 93;
    case aqueth::argument::volume_of_the_distillate: return 94;
    case aqueth::argument::volume_of_the_sample: return 95;
    case aqueth::argument::degrees_of_the_scale: return 96;
    case aqueth::argument::density_of_the_air: return 97;
    case aqueth::argument::indication_with_the_liquid: return 98;
    case aqueth::argument::indication_with_water: return 99;
    case aqueth::argument::margin_of_temperature: return 100;
    case aqueth::argument::mass_of_the_grain: return 101;
    case aqueth::argument::mass_of_the_water: return 102;
    case aqueth::argument::moisture: return 103;
    case aqueth::argument::temperature_of_the_grain: return 104;
    case aqueth::argument::temperature_of_the_vessel: return 105;
    case aqueth::argument::temperature_of_the_water: return 106;
    case aqueth::argument::yearly_loss_of_ethanol: return 107;
    case aqueth::argument::yearly_loss_of_water: return 108;
    case aqueth::argument::years: return 109;
    default: return 0;
    }
}

char const* argument_name(int code) noexcept {
    switch (code) {
    case 0: return name_of(aqueth::argument::other);
    case 1: return name_of(aqueth::argument::density);
    case 2: return name_of(aqueth::argument::mass_fraction);
    case 3: return name_of(aqueth::argument::temperature);
    case 4: return name_of(aqueth::argument::alcoholic_strength_by_volume);
    case 5: return name_of(aqueth::argument::altitude);
    case 6: return name_of(aqueth::argument::amount_of_ethanol);
    case 7: return name_of(aqueth::argument::amount_of_ethanol_and_water);
    case 8: return name_of(aqueth::argument::amount_of_water);
    case 9: return name_of(aqueth::argument::apparent_extract);
    case 10: return name_of(aqueth::argument::cubic_expansion_of_the_instrument);
    case 11: return name_of(aqueth::argument::density_behind_the_reading);
    case 12: return name_of(aqueth::argument::density_it_floats_by);
    case 13: return name_of(aqueth::argument::ethanol_beside_this_extract);
    case 14: return name_of(aqueth::argument::extract);
    case 15: return name_of(aqueth::argument::fall);
    case 16: return name_of(aqueth::argument::final_gravity);
    case 17: return name_of(aqueth::argument::indication);
    case 18: return name_of(aqueth::argument::label_volume);
    case 19: return name_of(aqueth::argument::mass);
    case 20: return name_of(aqueth::argument::mass_concentration);
    case 21: return name_of(aqueth::argument::mass_of_all_parcels);
    case 22: return name_of(aqueth::argument::mole_fraction);
    case 23: return name_of(aqueth::argument::number_of_additions);
    case 24: return name_of(aqueth::argument::number_of_parcels);
    case 25: return name_of(aqueth::argument::original_extract);
    case 26: return name_of(aqueth::argument::pressure);
    case 27: return name_of(aqueth::argument::proof);
    case 28: return name_of(aqueth::argument::reading);
    case 29: return name_of(aqueth::argument::real_extract);
    case 30: return name_of(aqueth::argument::reference_temperature);
    case 31: return name_of(aqueth::argument::share_of_the_stoichiometric_yield);
    case 32: return name_of(aqueth::argument::specific_enthalpy);
    case 33: return name_of(aqueth::argument::specific_gravity);
    case 34: return name_of(aqueth::argument::strength);
    case 35: return name_of(aqueth::argument::strength_of_the_diluent);
    case 36: return name_of(aqueth::argument::strength_of_the_stronger_spirit);
    case 37: return name_of(aqueth::argument::strength_scale);
    case 38: return name_of(aqueth::argument::stronger_spirit_above_the_target_by);
    case 39: return name_of(aqueth::argument::target_strength);
    case 40: return name_of(aqueth::argument::temperature_of_a_part);
    case 41: return name_of(aqueth::argument::temperature_of_the_mixture_without_loss_of_heat);
    case 42: return name_of(aqueth::argument::volume);
    case 43: return name_of(aqueth::argument::boiling_temperature);
    case 44: return name_of(aqueth::argument::collected_volume);
    case 45: return name_of(aqueth::argument::elapsed_time);
    case 46: return name_of(aqueth::argument::extract_of_the_charge);
    case 47: return name_of(aqueth::argument::extract_of_what_stays_in_the_pot);
    case 48: return name_of(aqueth::argument::greatest_reflux_ratio);
    case 49: return name_of(aqueth::argument::heat_capacity);
    case 50: return name_of(aqueth::argument::heat_loss_coefficient);
    case 51: return name_of(aqueth::argument::height_equivalent_to_a_theoretical_plate);
    case 52: return name_of(aqueth::argument::height_of_the_packing);
    case 53: return name_of(aqueth::argument::mass_of_the_charge);
    case 54: return name_of(aqueth::argument::mass_of_the_extract);
    case 55: return name_of(aqueth::argument::murphree_efficiency);
    case 56: return name_of(aqueth::argument::number_of_cuts);
    case 57: return name_of(aqueth::argument::number_of_ends_of_the_run);
    case 58: return name_of(aqueth::argument::number_of_plates);
    case 59: return name_of(aqueth::argument::number_of_points);
    case 60: return name_of(aqueth::argument::number_of_stages);
    case 61: return name_of(aqueth::argument::number_of_steps);
    case 62: return name_of(aqueth::argument::power);
    case 63: return name_of(aqueth::argument::reflux_ratio);
    case 64: return name_of(aqueth::argument::share_of_the_vapour_that_condenses);
    case 65: return name_of(aqueth::argument::strength_in_the_still);
    case 66: return name_of(aqueth::argument::strength_of_the_charge);
    case 67: return name_of(aqueth::argument::strength_of_the_distillate);
    case 68: return name_of(aqueth::argument::strength_of_the_distillate_to_keep);
    case 69: return name_of(aqueth::argument::strength_that_is_kept);
    case 70: return name_of(aqueth::argument::strengths_kept_by_the_reflux);
    case 71: return name_of(aqueth::argument::temperature_of_the_room);
    case 72: return name_of(aqueth::argument::temperature_wanted);
    case 73: return name_of(aqueth::argument::time_to_elapse);
    case 74: return name_of(aqueth::argument::volume_to_collect);
    case 75: return name_of(aqueth::argument::flow_of_the_cooling_water);
    case 76: return name_of(aqueth::argument::head_temperature);
    case 77: return name_of(aqueth::argument::holdup);
    case 78: return name_of(aqueth::argument::number_of_steps_of_the_plan);
    case 79: return name_of(aqueth::argument::reading_at_the_spout);
    case 80: return name_of(aqueth::argument::take_off_rate);
    case 81: return name_of(aqueth::argument::temperature_of_the_reflux);
    case 82: return name_of(aqueth::argument::temperature_of_the_spout);
    case 83: return name_of(aqueth::argument::time_at_total_reflux);
    case 84: return name_of(aqueth::argument::warming_of_the_cooling_water);
    case 85: return name_of(aqueth::argument::temperature_of_the_charge);
    case 86: return name_of(aqueth::argument::index);
    case 87: return name_of(aqueth::argument::mole_fraction_of_the_liquid);
    case 88: return name_of(aqueth::argument::mass_of_the_sugar);
    case 89: return name_of(aqueth::argument::refractive_index);
    case 90: return name_of(aqueth::argument::refractometer_reading);
    case 91: return name_of(aqueth::argument::share_lost_in_distillation);
    case 92: return name_of(aqueth::argument::sugar_concentration);
    case 93: return name_of(aqueth::argument::sugar_in_its_water);
    case 94: return name_of(aqueth::argument::volume_of_the_distillate);
    case 95: return name_of(aqueth::argument::volume_of_the_sample);
    case 96: return name_of(aqueth::argument::degrees_of_the_scale);
    case 97: return name_of(aqueth::argument::density_of_the_air);
    case 98: return name_of(aqueth::argument::indication_with_the_liquid);
    case 99: return name_of(aqueth::argument::indication_with_water);
    case 100: return name_of(aqueth::argument::margin_of_temperature);
    case 101: return name_of(aqueth::argument::mass_of_the_grain);
    case 102: return name_of(aqueth::argument::mass_of_the_water);
    case 103: return name_of(aqueth::argument::moisture);
    case 104: return name_of(aqueth::argument::temperature_of_the_grain);
    case 105: return name_of(aqueth::argument::temperature_of_the_vessel);
    case 106: return name_of(aqueth::argument::temperature_of_the_water);
    case 107: return name_of(aqueth::argument::yearly_loss_of_ethanol);
    case 108: return name_of(aqueth::argument::yearly_loss_of_water);
    case 109: return name_of(aqueth::argument::years);
    default: return nullptr;
    }
}

int code_of(aqueth::limit code) noexcept {
    switch (code) {
    case aqueth::limit::none: return 0;
    case aqueth::limit::cipm_2001: return 1;
    case aqueth::limit::crc_handbook: return 2;
    case aqueth::limit::liquid_above_freezing_point: return 3;
    case aqueth::limit::oiml_r22: return 4;
    case aqueth::limit::oiml_r22_ethanol_to_water: return 5;
    case aqueth::limit::all_fermented_to_none: return 6;
    case aqueth::limit::all_fermented_to_none_at_that_temperature: return 7;
    case aqueth::limit::azeotrope_exists: return 8;
    case aqueth::limit::azeotrope_exists_to_120_celsius: return 9;
    case aqueth::limit::balling: return 10;
    case aqueth::limit::balling_printed_table: return 11;
    case aqueth::limit::begins_above_30_plato: return 12;
    case aqueth::limit::bottles_counted: return 13;
    case aqueth::limit::bottles_counted_in_single_precision: return 14;
    case aqueth::limit::diluent_only_weakens: return 15;
    case aqueth::limit::excise_notice_226: return 16;
    case aqueth::limit::from_the_diluent_to_the_stock: return 17;
    case aqueth::limit::from_the_parcel_to_the_stronger_spirit: return 18;
    case aqueth::limit::heat_capacities_of_the_pure_liquids: return 19;
    case aqueth::limit::heats_of_mixing: return 20;
    case aqueth::limit::hydrometer_liquids: return 21;
    case aqueth::limit::hydrometer_scale_ends: return 22;
    case aqueth::limit::hydrometer_water_to_ethanol: return 23;
    case aqueth::limit::icao_standard_atmosphere: return 24;
    case aqueth::limit::liquid_to_116_85_celsius: return 25;
    case aqueth::limit::no_amount_reaches_the_stronger_spirit: return 26;
    case aqueth::limit::no_extract_to_70_plato: return 27;
    case aqueth::limit::no_stronger_than_the_spirit: return 28;
    case aqueth::limit::no_weaker_than_the_parcel: return 29;
    case aqueth::limit::nothing_fermented: return 30;
    case aqueth::limit::nothing_left_to_nothing_fermented: return 31;
    case aqueth::limit::oiml_r22_and_heats_of_mixing: return 32;
    case aqueth::limit::oiml_r22_pure_ethanol: return 33;
    case aqueth::limit::oiml_r22_water_liquid: return 34;
    case aqueth::limit::plato_scale: return 35;
    case aqueth::limit::pure_liquid_to_azeotrope: return 36;
    case aqueth::limit::room_beside_extract: return 37;
    case aqueth::limit::vapour_condenses_above: return 38;
    case aqueth::limit::vapour_liquid_equilibrium: return 39;
    case aqueth::limit::water_only_weakens: return 40;
    case aqueth::limit::yeast_common_practice: return 41;
    case aqueth::limit::ethanol_to_water_at_this_temperature: return 42;
    case aqueth::limit::liquid_below_boiling_point: return 43;
    case aqueth::limit::water_liquid_and_sugar_solutions: return 44;
    case aqueth::limit::alcohol_of_the_sample: return 45;
    case aqueth::limit::all_fermented_to_none_at_20_celsius: return 46;
    case aqueth::limit::brix_scale: return 47;
    case aqueth::limit::dissolved_by_its_water: return 48;
    case aqueth::limit::ethanol_and_sugar_of_this_density: return 49;
    case aqueth::limit::ethanol_to_methanol_at_this_density: return 50;
    case aqueth::limit::reach_of_this_spirit_with_sugar: return 51;
    case aqueth::limit::refraction_tables: return 52;
    case aqueth::limit::tabarie: return 53;
    case aqueth::limit::with_this_strength: return 54;
    case aqueth::limit::with_this_sugar: return 55;
    case aqueth::limit::above_the_pressure_of_boiling: return 56;
    case aqueth::limit::bingham_jackson: return 57;
    case aqueth::limit::boiling_water_is_too_cold: return 58;
    case aqueth::limit::flash_points_compared: return 59;
    case aqueth::limit::heavier_than_the_empty_flask: return 60;
    case aqueth::limit::malt_table: return 61;
    case aqueth::limit::measured_speeds_of_sound: return 62;
    case aqueth::limit::melinder: return 63;
    default: return 0;
    }
}

char const* limit_name(int code) noexcept {
    switch (code) {
    case 0: return name_of(aqueth::limit::none);
    case 1: return name_of(aqueth::limit::cipm_2001);
    case 2: return name_of(aqueth::limit::crc_handbook);
    case 3: return name_of(aqueth::limit::liquid_above_freezing_point);
    case 4: return name_of(aqueth::limit::oiml_r22);
    case 5: return name_of(aqueth::limit::oiml_r22_ethanol_to_water);
    case 6: return name_of(aqueth::limit::all_fermented_to_none);
    case 7: return name_of(aqueth::limit::all_fermented_to_none_at_that_temperature);
    case 8: return name_of(aqueth::limit::azeotrope_exists);
    case 9: return name_of(aqueth::limit::azeotrope_exists_to_120_celsius);
    case 10: return name_of(aqueth::limit::balling);
    case 11: return name_of(aqueth::limit::balling_printed_table);
    case 12: return name_of(aqueth::limit::begins_above_30_plato);
    case 13: return name_of(aqueth::limit::bottles_counted);
    case 14: return name_of(aqueth::limit::bottles_counted_in_single_precision);
    case 15: return name_of(aqueth::limit::diluent_only_weakens);
    case 16: return name_of(aqueth::limit::excise_notice_226);
    case 17: return name_of(aqueth::limit::from_the_diluent_to_the_stock);
    case 18: return name_of(aqueth::limit::from_the_parcel_to_the_stronger_spirit);
    case 19: return name_of(aqueth::limit::heat_capacities_of_the_pure_liquids);
    case 20: return name_of(aqueth::limit::heats_of_mixing);
    case 21: return name_of(aqueth::limit::hydrometer_liquids);
    case 22: return name_of(aqueth::limit::hydrometer_scale_ends);
    case 23: return name_of(aqueth::limit::hydrometer_water_to_ethanol);
    case 24: return name_of(aqueth::limit::icao_standard_atmosphere);
    case 25: return name_of(aqueth::limit::liquid_to_116_85_celsius);
    case 26: return name_of(aqueth::limit::no_amount_reaches_the_stronger_spirit);
    case 27: return name_of(aqueth::limit::no_extract_to_70_plato);
    case 28: return name_of(aqueth::limit::no_stronger_than_the_spirit);
    case 29: return name_of(aqueth::limit::no_weaker_than_the_parcel);
    case 30: return name_of(aqueth::limit::nothing_fermented);
    case 31: return name_of(aqueth::limit::nothing_left_to_nothing_fermented);
    case 32: return name_of(aqueth::limit::oiml_r22_and_heats_of_mixing);
    case 33: return name_of(aqueth::limit::oiml_r22_pure_ethanol);
    case 34: return name_of(aqueth::limit::oiml_r22_water_liquid);
    case 35: return name_of(aqueth::limit::plato_scale);
    case 36: return name_of(aqueth::limit::pure_liquid_to_azeotrope);
    case 37: return name_of(aqueth::limit::room_beside_extract);
    case 38: return name_of(aqueth::limit::vapour_condenses_above);
    case 39: return name_of(aqueth::limit::vapour_liquid_equilibrium);
    case 40: return name_of(aqueth::limit::water_only_weakens);
    case 41: return name_of(aqueth::limit::yeast_common_practice);
    case 42: return name_of(aqueth::limit::ethanol_to_water_at_this_temperature);
    case 43: return name_of(aqueth::limit::liquid_below_boiling_point);
    case 44: return name_of(aqueth::limit::water_liquid_and_sugar_solutions);
    case 45: return name_of(aqueth::limit::alcohol_of_the_sample);
    case 46: return name_of(aqueth::limit::all_fermented_to_none_at_20_celsius);
    case 47: return name_of(aqueth::limit::brix_scale);
    case 48: return name_of(aqueth::limit::dissolved_by_its_water);
    case 49: return name_of(aqueth::limit::ethanol_and_sugar_of_this_density);
    case 50: return name_of(aqueth::limit::ethanol_to_methanol_at_this_density);
    case 51: return name_of(aqueth::limit::reach_of_this_spirit_with_sugar);
    case 52: return name_of(aqueth::limit::refraction_tables);
    case 53: return name_of(aqueth::limit::tabarie);
    case 54: return name_of(aqueth::limit::with_this_strength);
    case 55: return name_of(aqueth::limit::with_this_sugar);
    case 56: return name_of(aqueth::limit::above_the_pressure_of_boiling);
    case 57: return name_of(aqueth::limit::bingham_jackson);
    case 58: return name_of(aqueth::limit::boiling_water_is_too_cold);
    case 59: return name_of(aqueth::limit::flash_points_compared);
    case 60: return name_of(aqueth::limit::heavier_than_the_empty_flask);
    case 61: return name_of(aqueth::limit::malt_table);
    case 62: return name_of(aqueth::limit::measured_speeds_of_sound);
    case 63: return name_of(aqueth::limit::melinder);
    default: return nullptr;
    }
}

}  // namespace aqueth::c

using namespace aqueth;

extern "C" aqueth_status aqueth_density_kg_m3(double mass_fraction, double celsius,
                                              double* kg_m3_result, aqueth_refusal* refusal) {
    return c::one(plain::density_kg_m3(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_density_kg_m3_array(size_t count, const double* mass_fraction,
                                                    ptrdiff_t mass_fraction_stride,
                                                    const double* celsius, ptrdiff_t celsius_stride,
                                                    double* kg_m3_result,
                                                    ptrdiff_t kg_m3_stride_of_result,
                                                    unsigned char* refused) {
    return c::many_by_array(count, refused, [](auto const& mass_fraction, auto const& celsius, auto& result, arrays::flags valid) { arrays::density(mass_fraction, celsius, result, valid); }, c::output{kg_m3_result, kg_m3_stride_of_result}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_mass_fraction_from_density(double kg_m3, double celsius,
                                                           double* mass_fraction_result,
                                                           aqueth_refusal* refusal) {
    return c::one(plain::mass_fraction_from_density(kg_m3, celsius), refusal, [](auto const& value) { return std::array{value}; }, mass_fraction_result);
}

extern "C" aqueth_status aqueth_mass_fraction_from_density_array(size_t count, const double* kg_m3,
                                                                 ptrdiff_t kg_m3_stride,
                                                                 const double* celsius,
                                                                 ptrdiff_t celsius_stride,
                                                                 double* mass_fraction_result,
                                                                 ptrdiff_t mass_fraction_stride_of_result,
                                                                 unsigned char* refused) {
    return c::many_by_array(count, refused, [](auto const& kg_m3, auto const& celsius, auto& result, arrays::flags valid) { arrays::mass_fraction_from_density(kg_m3, celsius, result, valid); }, c::output{mass_fraction_result, mass_fraction_stride_of_result}, c::input{kg_m3, kg_m3_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_thermal_expansion_per_kelvin(double mass_fraction, double celsius,
                                                             double* per_kelvin_result,
                                                             aqueth_refusal* refusal) {
    return c::one(plain::thermal_expansion_per_kelvin(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, per_kelvin_result);
}

extern "C" aqueth_status aqueth_thermal_expansion_per_kelvin_array(size_t count,
                                                                   const double* mass_fraction,
                                                                   ptrdiff_t mass_fraction_stride,
                                                                   const double* celsius,
                                                                   ptrdiff_t celsius_stride,
                                                                   double* per_kelvin_result,
                                                                   ptrdiff_t per_kelvin_stride_of_result,
                                                                   unsigned char* refused) {
    return c::many_by_array(count, refused, [](auto const& mass_fraction, auto const& celsius, auto& result, arrays::flags valid) { arrays::thermal_expansion(mass_fraction, celsius, result, valid); }, c::output{per_kelvin_result, per_kelvin_stride_of_result}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_molar_volume_cm3_mol(double mass_fraction, double celsius,
                                                     double* cm3_mol_result,
                                                     aqueth_refusal* refusal) {
    return c::one(plain::molar_volume_cm3_mol(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, cm3_mol_result);
}

extern "C" aqueth_status aqueth_molar_volume_cm3_mol_array(size_t count,
                                                           const double* mass_fraction,
                                                           ptrdiff_t mass_fraction_stride,
                                                           const double* celsius,
                                                           ptrdiff_t celsius_stride,
                                                           double* cm3_mol_result,
                                                           ptrdiff_t cm3_mol_stride_of_result,
                                                           unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double celsius) { return plain::molar_volume_cm3_mol(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{cm3_mol_result, cm3_mol_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_excess_molar_volume_cm3_mol(double mass_fraction, double celsius,
                                                            double* cm3_mol_result,
                                                            aqueth_refusal* refusal) {
    return c::one(plain::excess_molar_volume_cm3_mol(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, cm3_mol_result);
}

extern "C" aqueth_status aqueth_excess_molar_volume_cm3_mol_array(size_t count,
                                                                  const double* mass_fraction,
                                                                  ptrdiff_t mass_fraction_stride,
                                                                  const double* celsius,
                                                                  ptrdiff_t celsius_stride,
                                                                  double* cm3_mol_result,
                                                                  ptrdiff_t cm3_mol_stride_of_result,
                                                                  unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double celsius) { return plain::excess_molar_volume_cm3_mol(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{cm3_mol_result, cm3_mol_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_water_density_cipm_2001_kg_m3(double celsius, double* kg_m3_result,
                                                              aqueth_refusal* refusal) {
    return c::one(plain::water_density_cipm_2001_kg_m3(celsius), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_water_density_cipm_2001_kg_m3_array(size_t count,
                                                                    const double* celsius,
                                                                    ptrdiff_t celsius_stride,
                                                                    double* kg_m3_result,
                                                                    ptrdiff_t kg_m3_stride_of_result,
                                                                    unsigned char* refused) {
    return c::many(count, refused, [](double celsius) { return plain::water_density_cipm_2001_kg_m3(celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_freezing_celsius(double mass_fraction, double* celsius_result,
                                                 aqueth_refusal* refusal) {
    return c::one(plain::freezing_celsius(mass_fraction), refusal, [](auto const& value) { return std::array{value}; }, celsius_result);
}

extern "C" aqueth_status aqueth_freezing_celsius_array(size_t count, const double* mass_fraction,
                                                       ptrdiff_t mass_fraction_stride,
                                                       double* celsius_result,
                                                       ptrdiff_t celsius_stride_of_result,
                                                       unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction) { return plain::freezing_celsius(mass_fraction); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride});
}

extern "C" aqueth_status aqueth_convert_strength(double strength, int from, int to,
                                                 double* strength_result, aqueth_refusal* refusal) {
    if (!c::is_strength_scale(from)) return AQUETH_BAD_CALL;
    if (!c::is_strength_scale(to)) return AQUETH_BAD_CALL;
    return c::one(plain::convert(strength, c::strength_scale_of(from), c::strength_scale_of(to)), refusal, [](auto const& value) { return std::array{value}; }, strength_result);
}

extern "C" aqueth_status aqueth_convert_strength_array(size_t count, const double* strength,
                                                       ptrdiff_t strength_stride, int from, int to,
                                                       double* strength_result,
                                                       ptrdiff_t strength_stride_of_result,
                                                       unsigned char* refused) {
    if (!c::is_strength_scale(from)) return AQUETH_BAD_CALL;
    if (!c::is_strength_scale(to)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [from, to](double strength) { return plain::convert(strength, c::strength_scale_of(from), c::strength_scale_of(to)); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{strength_result, strength_stride_of_result}}, c::input{strength, strength_stride});
}

extern "C" aqueth_status aqueth_specific_gravity_of(double mass_fraction, double liquid_celsius,
                                                    double water_celsius, int weighed_in,
                                                    double* specific_gravity_result,
                                                    aqueth_refusal* refusal) {
    if (!c::is_medium(weighed_in)) return AQUETH_BAD_CALL;
    return c::one(plain::specific_gravity_of(mass_fraction, plain::gravity_reference<double>{liquid_celsius, water_celsius, c::medium_of(weighed_in)}), refusal, [](auto const& value) { return std::array{value}; }, specific_gravity_result);
}

extern "C" aqueth_status aqueth_specific_gravity_of_array(size_t count, const double* mass_fraction,
                                                          ptrdiff_t mass_fraction_stride,
                                                          const double* liquid_celsius,
                                                          ptrdiff_t liquid_celsius_stride,
                                                          const double* water_celsius,
                                                          ptrdiff_t water_celsius_stride,
                                                          int weighed_in,
                                                          double* specific_gravity_result,
                                                          ptrdiff_t specific_gravity_stride_of_result,
                                                          unsigned char* refused) {
    if (!c::is_medium(weighed_in)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [weighed_in](double mass_fraction, double liquid_celsius, double water_celsius) { return plain::specific_gravity_of(mass_fraction, plain::gravity_reference<double>{liquid_celsius, water_celsius, c::medium_of(weighed_in)}); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{specific_gravity_result, specific_gravity_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{liquid_celsius, liquid_celsius_stride}, c::input{water_celsius, water_celsius_stride});
}

extern "C" aqueth_status aqueth_mass_fraction_from_specific_gravity(double specific_gravity,
                                                                    double liquid_celsius,
                                                                    double water_celsius,
                                                                    int weighed_in,
                                                                    double* mass_fraction_result,
                                                                    aqueth_refusal* refusal) {
    if (!c::is_medium(weighed_in)) return AQUETH_BAD_CALL;
    return c::one(plain::mass_fraction_from_specific_gravity(specific_gravity, plain::gravity_reference<double>{liquid_celsius, water_celsius, c::medium_of(weighed_in)}), refusal, [](auto const& value) { return std::array{value}; }, mass_fraction_result);
}

extern "C" aqueth_status aqueth_mass_fraction_from_specific_gravity_array(size_t count,
                                                                          const double* specific_gravity,
                                                                          ptrdiff_t specific_gravity_stride,
                                                                          const double* liquid_celsius,
                                                                          ptrdiff_t liquid_celsius_stride,
                                                                          const double* water_celsius,
                                                                          ptrdiff_t water_celsius_stride,
                                                                          int weighed_in,
                                                                          double* mass_fraction_result,
                                                                          ptrdiff_t mass_fraction_stride_of_result,
                                                                          unsigned char* refused) {
    if (!c::is_medium(weighed_in)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [weighed_in](double specific_gravity, double liquid_celsius, double water_celsius) { return plain::mass_fraction_from_specific_gravity(specific_gravity, plain::gravity_reference<double>{liquid_celsius, water_celsius, c::medium_of(weighed_in)}); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{mass_fraction_result, mass_fraction_stride_of_result}}, c::input{specific_gravity, specific_gravity_stride}, c::input{liquid_celsius, liquid_celsius_stride}, c::input{water_celsius, water_celsius_stride});
}

extern "C" aqueth_status aqueth_balance_indication_kg(double mass_kg, double kg_m3,
                                                      double* kg_result, aqueth_refusal* refusal) {
    return c::one(plain::balance_indication_kg(mass_kg, kg_m3), refusal, [](auto const& value) { return std::array{value}; }, kg_result);
}

extern "C" aqueth_status aqueth_balance_indication_kg_array(size_t count, const double* mass_kg,
                                                            ptrdiff_t mass_kg_stride,
                                                            const double* kg_m3,
                                                            ptrdiff_t kg_m3_stride,
                                                            double* kg_result,
                                                            ptrdiff_t kg_stride_of_result,
                                                            unsigned char* refused) {
    return c::many(count, refused, [](double mass_kg, double kg_m3) { return plain::balance_indication_kg(mass_kg, kg_m3); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_result, kg_stride_of_result}}, c::input{mass_kg, mass_kg_stride}, c::input{kg_m3, kg_m3_stride});
}

extern "C" aqueth_status aqueth_mass_from_balance_kg(double indication_kg, double kg_m3,
                                                     double* kg_result, aqueth_refusal* refusal) {
    return c::one(plain::mass_from_balance_kg(indication_kg, kg_m3), refusal, [](auto const& value) { return std::array{value}; }, kg_result);
}

extern "C" aqueth_status aqueth_mass_from_balance_kg_array(size_t count,
                                                           const double* indication_kg,
                                                           ptrdiff_t indication_kg_stride,
                                                           const double* kg_m3,
                                                           ptrdiff_t kg_m3_stride,
                                                           double* kg_result,
                                                           ptrdiff_t kg_stride_of_result,
                                                           unsigned char* refused) {
    return c::many(count, refused, [](double indication_kg, double kg_m3) { return plain::mass_from_balance_kg(indication_kg, kg_m3); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_result, kg_stride_of_result}}, c::input{indication_kg, indication_kg_stride}, c::input{kg_m3, kg_m3_stride});
}

extern "C" aqueth_status aqueth_density_in_air_kg_m3(double kg_m3, double* kg_m3_result,
                                                     aqueth_refusal* refusal) {
    return c::one(plain::density_in_air_kg_m3(kg_m3), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_density_in_air_kg_m3_array(size_t count, const double* kg_m3,
                                                           ptrdiff_t kg_m3_stride,
                                                           double* kg_m3_result,
                                                           ptrdiff_t kg_m3_stride_of_result,
                                                           unsigned char* refused) {
    return c::many(count, refused, [](double kg_m3) { return plain::density_in_air_kg_m3(kg_m3); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{kg_m3, kg_m3_stride});
}

extern "C" aqueth_status aqueth_strength_from_reading(double reading, double celsius, int scale,
                                                      double glass_per_kelvin,
                                                      double* strength_result,
                                                      aqueth_refusal* refusal) {
    if (!c::is_strength_scale(scale)) return AQUETH_BAD_CALL;
    return c::one(c::strength_from_reading(reading, celsius, c::strength_scale_of(scale), glass_per_kelvin), refusal, [](auto const& value) { return std::array{value}; }, strength_result);
}

extern "C" aqueth_status aqueth_strength_from_reading_array(size_t count, const double* reading,
                                                            ptrdiff_t reading_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride, int scale,
                                                            const double* glass_per_kelvin,
                                                            ptrdiff_t glass_per_kelvin_stride,
                                                            double* strength_result,
                                                            ptrdiff_t strength_stride_of_result,
                                                            unsigned char* refused) {
    if (!c::is_strength_scale(scale)) return AQUETH_BAD_CALL;
    return c::many_by_array(count, refused, [scale](auto const& reading, auto const& celsius, auto const& glass_per_kelvin, auto& result, arrays::flags valid) { c::strengths_from_readings(c::strength_scale_of(scale), reading, celsius, glass_per_kelvin, result, valid); }, c::output{strength_result, strength_stride_of_result}, c::input{reading, reading_stride}, c::input{celsius, celsius_stride}, c::input{glass_per_kelvin, glass_per_kelvin_stride});
}

extern "C" aqueth_status aqueth_reading_of_strength(double mass_fraction, double celsius, int scale,
                                                    double glass_per_kelvin, double* reading_result,
                                                    aqueth_refusal* refusal) {
    if (!c::is_strength_scale(scale)) return AQUETH_BAD_CALL;
    return c::one(plain::hydrometer(plain::chosen_strength_graduation<double>{c::strength_scale_of(scale)}, glass_per_kelvin).reading(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, reading_result);
}

extern "C" aqueth_status aqueth_reading_of_strength_array(size_t count, const double* mass_fraction,
                                                          ptrdiff_t mass_fraction_stride,
                                                          const double* celsius,
                                                          ptrdiff_t celsius_stride, int scale,
                                                          const double* glass_per_kelvin,
                                                          ptrdiff_t glass_per_kelvin_stride,
                                                          double* reading_result,
                                                          ptrdiff_t reading_stride_of_result,
                                                          unsigned char* refused) {
    if (!c::is_strength_scale(scale)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [scale](double mass_fraction, double celsius, double glass_per_kelvin) { return plain::hydrometer(plain::chosen_strength_graduation<double>{c::strength_scale_of(scale)}, glass_per_kelvin).reading(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{reading_result, reading_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride}, c::input{glass_per_kelvin, glass_per_kelvin_stride});
}

extern "C" aqueth_status aqueth_density_from_reading_kg_m3(double reading_kg_m3, double celsius,
                                                           double reference_celsius,
                                                           double glass_per_kelvin,
                                                           double* kg_m3_result,
                                                           aqueth_refusal* refusal) {
    return c::one(plain::hydrometer(plain::density_graduation<double>{reference_celsius}, glass_per_kelvin).density_kg_m3(reading_kg_m3, celsius), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_density_from_reading_kg_m3_array(size_t count,
                                                                 const double* reading_kg_m3,
                                                                 ptrdiff_t reading_kg_m3_stride,
                                                                 const double* celsius,
                                                                 ptrdiff_t celsius_stride,
                                                                 const double* reference_celsius,
                                                                 ptrdiff_t reference_celsius_stride,
                                                                 const double* glass_per_kelvin,
                                                                 ptrdiff_t glass_per_kelvin_stride,
                                                                 double* kg_m3_result,
                                                                 ptrdiff_t kg_m3_stride_of_result,
                                                                 unsigned char* refused) {
    return c::many(count, refused, [](double reading_kg_m3, double celsius, double reference_celsius, double glass_per_kelvin) { return plain::hydrometer(plain::density_graduation<double>{reference_celsius}, glass_per_kelvin).density_kg_m3(reading_kg_m3, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{reading_kg_m3, reading_kg_m3_stride}, c::input{celsius, celsius_stride}, c::input{reference_celsius, reference_celsius_stride}, c::input{glass_per_kelvin, glass_per_kelvin_stride});
}

extern "C" aqueth_status aqueth_mass_of_volume_kg(double litres, double mass_fraction,
                                                  double celsius, double* kg_result,
                                                  aqueth_refusal* refusal) {
    return c::one(plain::parcel_by_volume(litres, mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value.mass_kg}; }, kg_result);
}

extern "C" aqueth_status aqueth_mass_of_volume_kg_array(size_t count, const double* litres,
                                                        ptrdiff_t litres_stride,
                                                        const double* mass_fraction,
                                                        ptrdiff_t mass_fraction_stride,
                                                        const double* celsius,
                                                        ptrdiff_t celsius_stride, double* kg_result,
                                                        ptrdiff_t kg_stride_of_result,
                                                        unsigned char* refused) {
    return c::many(count, refused, [](double litres, double mass_fraction, double celsius) { return plain::parcel_by_volume(litres, mass_fraction, celsius); }, [](auto const& value) { return std::array{value.mass_kg}; },
        std::array{c::output{kg_result, kg_stride_of_result}}, c::input{litres, litres_stride}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_volume_litres(double mass_kg, double mass_fraction, double celsius,
                                              double at_celsius, double* litres_result,
                                              aqueth_refusal* refusal) {
    return c::one(plain::volume_litres(plain::parcel<double>{mass_kg, mass_fraction, celsius}, at_celsius), refusal, [](auto const& value) { return std::array{value}; }, litres_result);
}

extern "C" aqueth_status aqueth_volume_litres_array(size_t count, const double* mass_kg,
                                                    ptrdiff_t mass_kg_stride,
                                                    const double* mass_fraction,
                                                    ptrdiff_t mass_fraction_stride,
                                                    const double* celsius, ptrdiff_t celsius_stride,
                                                    const double* at_celsius,
                                                    ptrdiff_t at_celsius_stride,
                                                    double* litres_result,
                                                    ptrdiff_t litres_stride_of_result,
                                                    unsigned char* refused) {
    return c::many(count, refused, [](double mass_kg, double mass_fraction, double celsius, double at_celsius) { return plain::volume_litres(plain::parcel<double>{mass_kg, mass_fraction, celsius}, at_celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{litres_result, litres_stride_of_result}}, c::input{mass_kg, mass_kg_stride}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride}, c::input{at_celsius, at_celsius_stride});
}

extern "C" aqueth_status aqueth_pure_alcohol_litres(double mass_kg, double mass_fraction,
                                                    double celsius, double reference_celsius,
                                                    double* litres_result,
                                                    aqueth_refusal* refusal) {
    return c::one(plain::pure_alcohol_litres(plain::parcel<double>{mass_kg, mass_fraction, celsius}, reference_celsius), refusal, [](auto const& value) { return std::array{value}; }, litres_result);
}

extern "C" aqueth_status aqueth_pure_alcohol_litres_array(size_t count, const double* mass_kg,
                                                          ptrdiff_t mass_kg_stride,
                                                          const double* mass_fraction,
                                                          ptrdiff_t mass_fraction_stride,
                                                          const double* celsius,
                                                          ptrdiff_t celsius_stride,
                                                          const double* reference_celsius,
                                                          ptrdiff_t reference_celsius_stride,
                                                          double* litres_result,
                                                          ptrdiff_t litres_stride_of_result,
                                                          unsigned char* refused) {
    return c::many(count, refused, [](double mass_kg, double mass_fraction, double celsius, double reference_celsius) { return plain::pure_alcohol_litres(plain::parcel<double>{mass_kg, mass_fraction, celsius}, reference_celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{litres_result, litres_stride_of_result}}, c::input{mass_kg, mass_kg_stride}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride}, c::input{reference_celsius, reference_celsius_stride});
}

extern "C" aqueth_status aqueth_mix(double a_kg, double a_mass_fraction, double a_celsius,
                                    double b_kg, double b_mass_fraction, double b_celsius,
                                    double* product_kg_result, double* product_mass_fraction_result,
                                    double* product_celsius_result,
                                    double* contraction_litres_result, aqueth_refusal* refusal) {
    return c::one(plain::mix(plain::parcel<double>{a_kg, a_mass_fraction, a_celsius}, plain::parcel<double>{b_kg, b_mass_fraction, b_celsius}), refusal, [](auto const& value) { return std::array{value.product.mass_kg, value.product.mass_fraction, value.product.celsius, value.contraction_litres}; }, product_kg_result, product_mass_fraction_result, product_celsius_result, contraction_litres_result);
}

extern "C" aqueth_status aqueth_mix_array(size_t count, const double* a_kg, ptrdiff_t a_kg_stride,
                                          const double* a_mass_fraction,
                                          ptrdiff_t a_mass_fraction_stride, const double* a_celsius,
                                          ptrdiff_t a_celsius_stride, const double* b_kg,
                                          ptrdiff_t b_kg_stride, const double* b_mass_fraction,
                                          ptrdiff_t b_mass_fraction_stride, const double* b_celsius,
                                          ptrdiff_t b_celsius_stride, double* product_kg_result,
                                          ptrdiff_t product_kg_stride_of_result,
                                          double* product_mass_fraction_result,
                                          ptrdiff_t product_mass_fraction_stride_of_result,
                                          double* product_celsius_result,
                                          ptrdiff_t product_celsius_stride_of_result,
                                          double* contraction_litres_result,
                                          ptrdiff_t contraction_litres_stride_of_result,
                                          unsigned char* refused) {
    return c::many(count, refused, [](double a_kg, double a_mass_fraction, double a_celsius, double b_kg, double b_mass_fraction, double b_celsius) { return plain::mix(plain::parcel<double>{a_kg, a_mass_fraction, a_celsius}, plain::parcel<double>{b_kg, b_mass_fraction, b_celsius}); }, [](auto const& value) { return std::array{value.product.mass_kg, value.product.mass_fraction, value.product.celsius, value.contraction_litres}; },
        std::array{c::output{product_kg_result, product_kg_stride_of_result}, c::output{product_mass_fraction_result, product_mass_fraction_stride_of_result}, c::output{product_celsius_result, product_celsius_stride_of_result}, c::output{contraction_litres_result, contraction_litres_stride_of_result}}, c::input{a_kg, a_kg_stride}, c::input{a_mass_fraction, a_mass_fraction_stride}, c::input{a_celsius, a_celsius_stride}, c::input{b_kg, b_kg_stride}, c::input{b_mass_fraction, b_mass_fraction_stride}, c::input{b_celsius, b_celsius_stride});
}

extern "C" aqueth_status aqueth_dilute(double spirit_kg, double spirit_mass_fraction,
                                       double spirit_celsius, double target_mass_fraction,
                                       double diluent_mass_fraction, double diluent_celsius,
                                       double product_celsius, double* added_kg_result,
                                       double* product_kg_result,
                                       double* product_mass_fraction_result,
                                       double* product_celsius_result,
                                       double* contraction_litres_result, aqueth_refusal* refusal) {
    return c::one(plain::dilute(plain::parcel<double>{spirit_kg, spirit_mass_fraction, spirit_celsius}, target_mass_fraction, plain::liquid<double>{diluent_mass_fraction, diluent_celsius}, product_celsius), refusal, [](auto const& value) { return std::array{value.addition.mass_kg, value.product.mass_kg, value.product.mass_fraction, value.product.celsius, value.contraction_litres}; }, added_kg_result, product_kg_result, product_mass_fraction_result, product_celsius_result, contraction_litres_result);
}

extern "C" aqueth_status aqueth_dilute_array(size_t count, const double* spirit_kg,
                                             ptrdiff_t spirit_kg_stride,
                                             const double* spirit_mass_fraction,
                                             ptrdiff_t spirit_mass_fraction_stride,
                                             const double* spirit_celsius,
                                             ptrdiff_t spirit_celsius_stride,
                                             const double* target_mass_fraction,
                                             ptrdiff_t target_mass_fraction_stride,
                                             const double* diluent_mass_fraction,
                                             ptrdiff_t diluent_mass_fraction_stride,
                                             const double* diluent_celsius,
                                             ptrdiff_t diluent_celsius_stride,
                                             const double* product_celsius,
                                             ptrdiff_t product_celsius_stride,
                                             double* added_kg_result,
                                             ptrdiff_t added_kg_stride_of_result,
                                             double* product_kg_result,
                                             ptrdiff_t product_kg_stride_of_result,
                                             double* product_mass_fraction_result,
                                             ptrdiff_t product_mass_fraction_stride_of_result,
                                             double* product_celsius_result,
                                             ptrdiff_t product_celsius_stride_of_result,
                                             double* contraction_litres_result,
                                             ptrdiff_t contraction_litres_stride_of_result,
                                             unsigned char* refused) {
    return c::many(count, refused, [](double spirit_kg, double spirit_mass_fraction, double spirit_celsius, double target_mass_fraction, double diluent_mass_fraction, double diluent_celsius, double product_celsius) { return plain::dilute(plain::parcel<double>{spirit_kg, spirit_mass_fraction, spirit_celsius}, target_mass_fraction, plain::liquid<double>{diluent_mass_fraction, diluent_celsius}, product_celsius); }, [](auto const& value) { return std::array{value.addition.mass_kg, value.product.mass_kg, value.product.mass_fraction, value.product.celsius, value.contraction_litres}; },
        std::array{c::output{added_kg_result, added_kg_stride_of_result}, c::output{product_kg_result, product_kg_stride_of_result}, c::output{product_mass_fraction_result, product_mass_fraction_stride_of_result}, c::output{product_celsius_result, product_celsius_stride_of_result}, c::output{contraction_litres_result, contraction_litres_stride_of_result}}, c::input{spirit_kg, spirit_kg_stride}, c::input{spirit_mass_fraction, spirit_mass_fraction_stride}, c::input{spirit_celsius, spirit_celsius_stride}, c::input{target_mass_fraction, target_mass_fraction_stride}, c::input{diluent_mass_fraction, diluent_mass_fraction_stride}, c::input{diluent_celsius, diluent_celsius_stride}, c::input{product_celsius, product_celsius_stride});
}

extern "C" aqueth_status aqueth_fortify(double weak_kg, double weak_mass_fraction,
                                        double weak_celsius, double target_mass_fraction,
                                        double stock_mass_fraction, double stock_celsius,
                                        double product_celsius, double* added_kg_result,
                                        double* product_kg_result,
                                        double* product_mass_fraction_result,
                                        double* product_celsius_result,
                                        double* contraction_litres_result,
                                        aqueth_refusal* refusal) {
    return c::one(plain::fortify(plain::parcel<double>{weak_kg, weak_mass_fraction, weak_celsius}, target_mass_fraction, plain::liquid<double>{stock_mass_fraction, stock_celsius}, product_celsius), refusal, [](auto const& value) { return std::array{value.addition.mass_kg, value.product.mass_kg, value.product.mass_fraction, value.product.celsius, value.contraction_litres}; }, added_kg_result, product_kg_result, product_mass_fraction_result, product_celsius_result, contraction_litres_result);
}

extern "C" aqueth_status aqueth_fortify_array(size_t count, const double* weak_kg,
                                              ptrdiff_t weak_kg_stride,
                                              const double* weak_mass_fraction,
                                              ptrdiff_t weak_mass_fraction_stride,
                                              const double* weak_celsius,
                                              ptrdiff_t weak_celsius_stride,
                                              const double* target_mass_fraction,
                                              ptrdiff_t target_mass_fraction_stride,
                                              const double* stock_mass_fraction,
                                              ptrdiff_t stock_mass_fraction_stride,
                                              const double* stock_celsius,
                                              ptrdiff_t stock_celsius_stride,
                                              const double* product_celsius,
                                              ptrdiff_t product_celsius_stride,
                                              double* added_kg_result,
                                              ptrdiff_t added_kg_stride_of_result,
                                              double* product_kg_result,
                                              ptrdiff_t product_kg_stride_of_result,
                                              double* product_mass_fraction_result,
                                              ptrdiff_t product_mass_fraction_stride_of_result,
                                              double* product_celsius_result,
                                              ptrdiff_t product_celsius_stride_of_result,
                                              double* contraction_litres_result,
                                              ptrdiff_t contraction_litres_stride_of_result,
                                              unsigned char* refused) {
    return c::many(count, refused, [](double weak_kg, double weak_mass_fraction, double weak_celsius, double target_mass_fraction, double stock_mass_fraction, double stock_celsius, double product_celsius) { return plain::fortify(plain::parcel<double>{weak_kg, weak_mass_fraction, weak_celsius}, target_mass_fraction, plain::liquid<double>{stock_mass_fraction, stock_celsius}, product_celsius); }, [](auto const& value) { return std::array{value.addition.mass_kg, value.product.mass_kg, value.product.mass_fraction, value.product.celsius, value.contraction_litres}; },
        std::array{c::output{added_kg_result, added_kg_stride_of_result}, c::output{product_kg_result, product_kg_stride_of_result}, c::output{product_mass_fraction_result, product_mass_fraction_stride_of_result}, c::output{product_celsius_result, product_celsius_stride_of_result}, c::output{contraction_litres_result, contraction_litres_stride_of_result}}, c::input{weak_kg, weak_kg_stride}, c::input{weak_mass_fraction, weak_mass_fraction_stride}, c::input{weak_celsius, weak_celsius_stride}, c::input{target_mass_fraction, target_mass_fraction_stride}, c::input{stock_mass_fraction, stock_mass_fraction_stride}, c::input{stock_celsius, stock_celsius_stride}, c::input{product_celsius, product_celsius_stride});
}

extern "C" aqueth_status aqueth_make_up_by_volume(double litres, double product_celsius,
                                                  double target_mass_fraction,
                                                  double stock_mass_fraction, double stock_celsius,
                                                  double diluent_mass_fraction,
                                                  double diluent_celsius, double* spirit_kg_result,
                                                  double* diluent_kg_result,
                                                  aqueth_refusal* refusal) {
    return c::one(plain::make_up_by_volume(litres, product_celsius, target_mass_fraction, plain::liquid<double>{stock_mass_fraction, stock_celsius}, plain::liquid<double>{diluent_mass_fraction, diluent_celsius}), refusal, [](auto const& value) { return std::array{value.spirit.mass_kg, value.diluent.mass_kg}; }, spirit_kg_result, diluent_kg_result);
}

extern "C" aqueth_status aqueth_make_up_by_volume_array(size_t count, const double* litres,
                                                        ptrdiff_t litres_stride,
                                                        const double* product_celsius,
                                                        ptrdiff_t product_celsius_stride,
                                                        const double* target_mass_fraction,
                                                        ptrdiff_t target_mass_fraction_stride,
                                                        const double* stock_mass_fraction,
                                                        ptrdiff_t stock_mass_fraction_stride,
                                                        const double* stock_celsius,
                                                        ptrdiff_t stock_celsius_stride,
                                                        const double* diluent_mass_fraction,
                                                        ptrdiff_t diluent_mass_fraction_stride,
                                                        const double* diluent_celsius,
                                                        ptrdiff_t diluent_celsius_stride,
                                                        double* spirit_kg_result,
                                                        ptrdiff_t spirit_kg_stride_of_result,
                                                        double* diluent_kg_result,
                                                        ptrdiff_t diluent_kg_stride_of_result,
                                                        unsigned char* refused) {
    return c::many(count, refused, [](double litres, double product_celsius, double target_mass_fraction, double stock_mass_fraction, double stock_celsius, double diluent_mass_fraction, double diluent_celsius) { return plain::make_up_by_volume(litres, product_celsius, target_mass_fraction, plain::liquid<double>{stock_mass_fraction, stock_celsius}, plain::liquid<double>{diluent_mass_fraction, diluent_celsius}); }, [](auto const& value) { return std::array{value.spirit.mass_kg, value.diluent.mass_kg}; },
        std::array{c::output{spirit_kg_result, spirit_kg_stride_of_result}, c::output{diluent_kg_result, diluent_kg_stride_of_result}}, c::input{litres, litres_stride}, c::input{product_celsius, product_celsius_stride}, c::input{target_mass_fraction, target_mass_fraction_stride}, c::input{stock_mass_fraction, stock_mass_fraction_stride}, c::input{stock_celsius, stock_celsius_stride}, c::input{diluent_mass_fraction, diluent_mass_fraction_stride}, c::input{diluent_celsius, diluent_celsius_stride});
}

extern "C" aqueth_status aqueth_make_up_by_mass(double mass_kg, double product_celsius,
                                                double target_mass_fraction,
                                                double stock_mass_fraction, double stock_celsius,
                                                double diluent_mass_fraction,
                                                double diluent_celsius, double* spirit_kg_result,
                                                double* diluent_kg_result,
                                                aqueth_refusal* refusal) {
    return c::one(plain::make_up_by_mass(mass_kg, target_mass_fraction, plain::liquid<double>{stock_mass_fraction, stock_celsius}, plain::liquid<double>{diluent_mass_fraction, diluent_celsius}, product_celsius), refusal, [](auto const& value) { return std::array{value.spirit.mass_kg, value.diluent.mass_kg}; }, spirit_kg_result, diluent_kg_result);
}

extern "C" aqueth_status aqueth_make_up_by_mass_array(size_t count, const double* mass_kg,
                                                      ptrdiff_t mass_kg_stride,
                                                      const double* product_celsius,
                                                      ptrdiff_t product_celsius_stride,
                                                      const double* target_mass_fraction,
                                                      ptrdiff_t target_mass_fraction_stride,
                                                      const double* stock_mass_fraction,
                                                      ptrdiff_t stock_mass_fraction_stride,
                                                      const double* stock_celsius,
                                                      ptrdiff_t stock_celsius_stride,
                                                      const double* diluent_mass_fraction,
                                                      ptrdiff_t diluent_mass_fraction_stride,
                                                      const double* diluent_celsius,
                                                      ptrdiff_t diluent_celsius_stride,
                                                      double* spirit_kg_result,
                                                      ptrdiff_t spirit_kg_stride_of_result,
                                                      double* diluent_kg_result,
                                                      ptrdiff_t diluent_kg_stride_of_result,
                                                      unsigned char* refused) {
    return c::many(count, refused, [](double mass_kg, double product_celsius, double target_mass_fraction, double stock_mass_fraction, double stock_celsius, double diluent_mass_fraction, double diluent_celsius) { return plain::make_up_by_mass(mass_kg, target_mass_fraction, plain::liquid<double>{stock_mass_fraction, stock_celsius}, plain::liquid<double>{diluent_mass_fraction, diluent_celsius}, product_celsius); }, [](auto const& value) { return std::array{value.spirit.mass_kg, value.diluent.mass_kg}; },
        std::array{c::output{spirit_kg_result, spirit_kg_stride_of_result}, c::output{diluent_kg_result, diluent_kg_stride_of_result}}, c::input{mass_kg, mass_kg_stride}, c::input{product_celsius, product_celsius_stride}, c::input{target_mass_fraction, target_mass_fraction_stride}, c::input{stock_mass_fraction, stock_mass_fraction_stride}, c::input{stock_celsius, stock_celsius_stride}, c::input{diluent_mass_fraction, diluent_mass_fraction_stride}, c::input{diluent_celsius, diluent_celsius_stride});
}

extern "C" aqueth_status aqueth_fill_litres(double label_litres, double mass_fraction,
                                            double filling_celsius, double reference_celsius,
                                            double* litres_result, aqueth_refusal* refusal) {
    return c::one(plain::fill_litres(label_litres, mass_fraction, filling_celsius, reference_celsius), refusal, [](auto const& value) { return std::array{value}; }, litres_result);
}

extern "C" aqueth_status aqueth_fill_litres_array(size_t count, const double* label_litres,
                                                  ptrdiff_t label_litres_stride,
                                                  const double* mass_fraction,
                                                  ptrdiff_t mass_fraction_stride,
                                                  const double* filling_celsius,
                                                  ptrdiff_t filling_celsius_stride,
                                                  const double* reference_celsius,
                                                  ptrdiff_t reference_celsius_stride,
                                                  double* litres_result,
                                                  ptrdiff_t litres_stride_of_result,
                                                  unsigned char* refused) {
    return c::many(count, refused, [](double label_litres, double mass_fraction, double filling_celsius, double reference_celsius) { return plain::fill_litres(label_litres, mass_fraction, filling_celsius, reference_celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{litres_result, litres_stride_of_result}}, c::input{label_litres, label_litres_stride}, c::input{mass_fraction, mass_fraction_stride}, c::input{filling_celsius, filling_celsius_stride}, c::input{reference_celsius, reference_celsius_stride});
}

extern "C" aqueth_status aqueth_fill_bottles(double mass_kg, double mass_fraction, double celsius,
                                             double label_litres, double reference_celsius,
                                             double* count_result, double* fill_litres_result,
                                             double* fill_mass_kg_result,
                                             double* remainder_kg_result, aqueth_refusal* refusal) {
    return c::one(plain::fill_bottles(plain::parcel<double>{mass_kg, mass_fraction, celsius}, label_litres, reference_celsius), refusal, [](auto const& value) { return std::array{value.count, value.fill_litres, value.fill_mass_kg, value.remainder.mass_kg}; }, count_result, fill_litres_result, fill_mass_kg_result, remainder_kg_result);
}

extern "C" aqueth_status aqueth_fill_bottles_array(size_t count, const double* mass_kg,
                                                   ptrdiff_t mass_kg_stride,
                                                   const double* mass_fraction,
                                                   ptrdiff_t mass_fraction_stride,
                                                   const double* celsius, ptrdiff_t celsius_stride,
                                                   const double* label_litres,
                                                   ptrdiff_t label_litres_stride,
                                                   const double* reference_celsius,
                                                   ptrdiff_t reference_celsius_stride,
                                                   double* count_result,
                                                   ptrdiff_t count_stride_of_result,
                                                   double* fill_litres_result,
                                                   ptrdiff_t fill_litres_stride_of_result,
                                                   double* fill_mass_kg_result,
                                                   ptrdiff_t fill_mass_kg_stride_of_result,
                                                   double* remainder_kg_result,
                                                   ptrdiff_t remainder_kg_stride_of_result,
                                                   unsigned char* refused) {
    return c::many(count, refused, [](double mass_kg, double mass_fraction, double celsius, double label_litres, double reference_celsius) { return plain::fill_bottles(plain::parcel<double>{mass_kg, mass_fraction, celsius}, label_litres, reference_celsius); }, [](auto const& value) { return std::array{value.count, value.fill_litres, value.fill_mass_kg, value.remainder.mass_kg}; },
        std::array{c::output{count_result, count_stride_of_result}, c::output{fill_litres_result, fill_litres_stride_of_result}, c::output{fill_mass_kg_result, fill_mass_kg_stride_of_result}, c::output{remainder_kg_result, remainder_kg_stride_of_result}}, c::input{mass_kg, mass_kg_stride}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride}, c::input{label_litres, label_litres_stride}, c::input{reference_celsius, reference_celsius_stride});
}

extern "C" aqueth_status aqueth_bubble_point_at_celsius(double mole_fraction, double celsius,
                                                        double* celsius_result, double* kpa_result,
                                                        double* liquid_mole_fraction_result,
                                                        double* vapour_mole_fraction_result,
                                                        double* relative_volatility_result,
                                                        aqueth_refusal* refusal) {
    return c::one(plain::bubble_point_at_celsius(mole_fraction, celsius), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_bubble_point_at_celsius_array(size_t count,
                                                              const double* mole_fraction,
                                                              ptrdiff_t mole_fraction_stride,
                                                              const double* celsius,
                                                              ptrdiff_t celsius_stride,
                                                              double* celsius_result,
                                                              ptrdiff_t celsius_stride_of_result,
                                                              double* kpa_result,
                                                              ptrdiff_t kpa_stride_of_result,
                                                              double* liquid_mole_fraction_result,
                                                              ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                              double* vapour_mole_fraction_result,
                                                              ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                              double* relative_volatility_result,
                                                              ptrdiff_t relative_volatility_stride_of_result,
                                                              unsigned char* refused) {
    return c::many(count, refused, [](double mole_fraction, double celsius) { return plain::bubble_point_at_celsius(mole_fraction, celsius); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{mole_fraction, mole_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_bubble_point_at_kpa(double mole_fraction, double kpa,
                                                    double* celsius_result, double* kpa_result,
                                                    double* liquid_mole_fraction_result,
                                                    double* vapour_mole_fraction_result,
                                                    double* relative_volatility_result,
                                                    aqueth_refusal* refusal) {
    return c::one(plain::bubble_point_at_kpa(mole_fraction, kpa), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_bubble_point_at_kpa_array(size_t count, const double* mole_fraction,
                                                          ptrdiff_t mole_fraction_stride,
                                                          const double* kpa, ptrdiff_t kpa_stride,
                                                          double* celsius_result,
                                                          ptrdiff_t celsius_stride_of_result,
                                                          double* kpa_result,
                                                          ptrdiff_t kpa_stride_of_result,
                                                          double* liquid_mole_fraction_result,
                                                          ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                          double* vapour_mole_fraction_result,
                                                          ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                          double* relative_volatility_result,
                                                          ptrdiff_t relative_volatility_stride_of_result,
                                                          unsigned char* refused) {
    return c::many(count, refused, [](double mole_fraction, double kpa) { return plain::bubble_point_at_kpa(mole_fraction, kpa); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{mole_fraction, mole_fraction_stride}, c::input{kpa, kpa_stride});
}

extern "C" aqueth_status aqueth_dew_point_at_celsius(double mole_fraction, double celsius,
                                                     double* celsius_result, double* kpa_result,
                                                     double* liquid_mole_fraction_result,
                                                     double* vapour_mole_fraction_result,
                                                     double* relative_volatility_result,
                                                     aqueth_refusal* refusal) {
    return c::one(plain::dew_point_at_celsius(mole_fraction, celsius), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_dew_point_at_celsius_array(size_t count,
                                                           const double* mole_fraction,
                                                           ptrdiff_t mole_fraction_stride,
                                                           const double* celsius,
                                                           ptrdiff_t celsius_stride,
                                                           double* celsius_result,
                                                           ptrdiff_t celsius_stride_of_result,
                                                           double* kpa_result,
                                                           ptrdiff_t kpa_stride_of_result,
                                                           double* liquid_mole_fraction_result,
                                                           ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                           double* vapour_mole_fraction_result,
                                                           ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                           double* relative_volatility_result,
                                                           ptrdiff_t relative_volatility_stride_of_result,
                                                           unsigned char* refused) {
    return c::many(count, refused, [](double mole_fraction, double celsius) { return plain::dew_point_at_celsius(mole_fraction, celsius); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{mole_fraction, mole_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_dew_point_at_kpa(double mole_fraction, double kpa,
                                                 double* celsius_result, double* kpa_result,
                                                 double* liquid_mole_fraction_result,
                                                 double* vapour_mole_fraction_result,
                                                 double* relative_volatility_result,
                                                 aqueth_refusal* refusal) {
    return c::one(plain::dew_point_at_kpa(mole_fraction, kpa), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_dew_point_at_kpa_array(size_t count, const double* mole_fraction,
                                                       ptrdiff_t mole_fraction_stride,
                                                       const double* kpa, ptrdiff_t kpa_stride,
                                                       double* celsius_result,
                                                       ptrdiff_t celsius_stride_of_result,
                                                       double* kpa_result,
                                                       ptrdiff_t kpa_stride_of_result,
                                                       double* liquid_mole_fraction_result,
                                                       ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                       double* vapour_mole_fraction_result,
                                                       ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                       double* relative_volatility_result,
                                                       ptrdiff_t relative_volatility_stride_of_result,
                                                       unsigned char* refused) {
    return c::many(count, refused, [](double mole_fraction, double kpa) { return plain::dew_point_at_kpa(mole_fraction, kpa); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{mole_fraction, mole_fraction_stride}, c::input{kpa, kpa_stride});
}

extern "C" aqueth_status aqueth_azeotrope_at_celsius(double celsius, double* celsius_result,
                                                     double* kpa_result,
                                                     double* liquid_mole_fraction_result,
                                                     double* vapour_mole_fraction_result,
                                                     double* relative_volatility_result,
                                                     aqueth_refusal* refusal) {
    return c::one(plain::azeotrope_at_celsius(celsius), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_azeotrope_at_celsius_array(size_t count, const double* celsius,
                                                           ptrdiff_t celsius_stride,
                                                           double* celsius_result,
                                                           ptrdiff_t celsius_stride_of_result,
                                                           double* kpa_result,
                                                           ptrdiff_t kpa_stride_of_result,
                                                           double* liquid_mole_fraction_result,
                                                           ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                           double* vapour_mole_fraction_result,
                                                           ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                           double* relative_volatility_result,
                                                           ptrdiff_t relative_volatility_stride_of_result,
                                                           unsigned char* refused) {
    return c::many(count, refused, [](double celsius) { return plain::azeotrope_at_celsius(celsius); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_azeotrope_at_kpa(double kpa, double* celsius_result,
                                                 double* kpa_result,
                                                 double* liquid_mole_fraction_result,
                                                 double* vapour_mole_fraction_result,
                                                 double* relative_volatility_result,
                                                 aqueth_refusal* refusal) {
    return c::one(plain::azeotrope_at_kpa(kpa), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_azeotrope_at_kpa_array(size_t count, const double* kpa,
                                                       ptrdiff_t kpa_stride, double* celsius_result,
                                                       ptrdiff_t celsius_stride_of_result,
                                                       double* kpa_result,
                                                       ptrdiff_t kpa_stride_of_result,
                                                       double* liquid_mole_fraction_result,
                                                       ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                       double* vapour_mole_fraction_result,
                                                       ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                       double* relative_volatility_result,
                                                       ptrdiff_t relative_volatility_stride_of_result,
                                                       unsigned char* refused) {
    return c::many(count, refused, [](double kpa) { return plain::azeotrope_at_kpa(kpa); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{kpa, kpa_stride});
}

extern "C" aqueth_status aqueth_coexistence(double celsius, double kpa, int side,
                                            double* celsius_result, double* kpa_result,
                                            double* liquid_mole_fraction_result,
                                            double* vapour_mole_fraction_result,
                                            double* relative_volatility_result,
                                            aqueth_refusal* refusal) {
    if (!c::is_azeotrope_side(side)) return AQUETH_BAD_CALL;
    return c::one(plain::coexistence(celsius, kpa, c::azeotrope_side_of(side)), refusal, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; }, celsius_result, kpa_result, liquid_mole_fraction_result, vapour_mole_fraction_result, relative_volatility_result);
}

extern "C" aqueth_status aqueth_coexistence_array(size_t count, const double* celsius,
                                                  ptrdiff_t celsius_stride, const double* kpa,
                                                  ptrdiff_t kpa_stride, int side,
                                                  double* celsius_result,
                                                  ptrdiff_t celsius_stride_of_result,
                                                  double* kpa_result,
                                                  ptrdiff_t kpa_stride_of_result,
                                                  double* liquid_mole_fraction_result,
                                                  ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                  double* vapour_mole_fraction_result,
                                                  ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                  double* relative_volatility_result,
                                                  ptrdiff_t relative_volatility_stride_of_result,
                                                  unsigned char* refused) {
    if (!c::is_azeotrope_side(side)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [side](double celsius, double kpa) { return plain::coexistence(celsius, kpa, c::azeotrope_side_of(side)); }, [](auto const& value) { return std::array{value.celsius, value.kpa, value.liquid_mole_fraction, value.vapour_mole_fraction, value.relative_volatility}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}, c::output{kpa_result, kpa_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}, c::output{relative_volatility_result, relative_volatility_stride_of_result}}, c::input{celsius, celsius_stride}, c::input{kpa, kpa_stride});
}

extern "C" aqueth_status aqueth_isothermal_flash(double mole_fraction, double celsius, double kpa,
                                                 double* vapour_fraction_result,
                                                 double* liquid_mole_fraction_result,
                                                 double* vapour_mole_fraction_result,
                                                 aqueth_refusal* refusal) {
    return c::one(plain::isothermal_flash(mole_fraction, celsius, kpa), refusal, [](auto const& value) { return std::array{value.vapour_fraction, value.liquid_mole_fraction, value.vapour_mole_fraction}; }, vapour_fraction_result, liquid_mole_fraction_result, vapour_mole_fraction_result);
}

extern "C" aqueth_status aqueth_isothermal_flash_array(size_t count, const double* mole_fraction,
                                                       ptrdiff_t mole_fraction_stride,
                                                       const double* celsius,
                                                       ptrdiff_t celsius_stride, const double* kpa,
                                                       ptrdiff_t kpa_stride,
                                                       double* vapour_fraction_result,
                                                       ptrdiff_t vapour_fraction_stride_of_result,
                                                       double* liquid_mole_fraction_result,
                                                       ptrdiff_t liquid_mole_fraction_stride_of_result,
                                                       double* vapour_mole_fraction_result,
                                                       ptrdiff_t vapour_mole_fraction_stride_of_result,
                                                       unsigned char* refused) {
    return c::many(count, refused, [](double mole_fraction, double celsius, double kpa) { return plain::isothermal_flash(mole_fraction, celsius, kpa); }, [](auto const& value) { return std::array{value.vapour_fraction, value.liquid_mole_fraction, value.vapour_mole_fraction}; },
        std::array{c::output{vapour_fraction_result, vapour_fraction_stride_of_result}, c::output{liquid_mole_fraction_result, liquid_mole_fraction_stride_of_result}, c::output{vapour_mole_fraction_result, vapour_mole_fraction_stride_of_result}}, c::input{mole_fraction, mole_fraction_stride}, c::input{celsius, celsius_stride}, c::input{kpa, kpa_stride});
}

extern "C" aqueth_status aqueth_activity_coefficients_of(double mole_fraction, double celsius,
                                                         double* ethanol_result,
                                                         double* water_result,
                                                         aqueth_refusal* refusal) {
    return c::one(plain::activity_coefficients_of(mole_fraction, celsius), refusal, [](auto const& value) { return std::array{value.ethanol, value.water}; }, ethanol_result, water_result);
}

extern "C" aqueth_status aqueth_activity_coefficients_of_array(size_t count,
                                                               const double* mole_fraction,
                                                               ptrdiff_t mole_fraction_stride,
                                                               const double* celsius,
                                                               ptrdiff_t celsius_stride,
                                                               double* ethanol_result,
                                                               ptrdiff_t ethanol_stride_of_result,
                                                               double* water_result,
                                                               ptrdiff_t water_stride_of_result,
                                                               unsigned char* refused) {
    return c::many(count, refused, [](double mole_fraction, double celsius) { return plain::activity_coefficients_of(mole_fraction, celsius); }, [](auto const& value) { return std::array{value.ethanol, value.water}; },
        std::array{c::output{ethanol_result, ethanol_stride_of_result}, c::output{water_result, water_stride_of_result}}, c::input{mole_fraction, mole_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_excess_enthalpy_j_mol(double mass_fraction, double celsius,
                                                      double* j_mol_result,
                                                      aqueth_refusal* refusal) {
    return c::one(plain::excess_enthalpy_j_mol(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, j_mol_result);
}

extern "C" aqueth_status aqueth_excess_enthalpy_j_mol_array(size_t count,
                                                            const double* mass_fraction,
                                                            ptrdiff_t mass_fraction_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride,
                                                            double* j_mol_result,
                                                            ptrdiff_t j_mol_stride_of_result,
                                                            unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double celsius) { return plain::excess_enthalpy_j_mol(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{j_mol_result, j_mol_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_specific_heat_capacity_j_kg_k(double mass_fraction, double celsius,
                                                              double* j_kg_k_result,
                                                              aqueth_refusal* refusal) {
    return c::one(plain::specific_heat_capacity_j_kg_k(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, j_kg_k_result);
}

extern "C" aqueth_status aqueth_specific_heat_capacity_j_kg_k_array(size_t count,
                                                                    const double* mass_fraction,
                                                                    ptrdiff_t mass_fraction_stride,
                                                                    const double* celsius,
                                                                    ptrdiff_t celsius_stride,
                                                                    double* j_kg_k_result,
                                                                    ptrdiff_t j_kg_k_stride_of_result,
                                                                    unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double celsius) { return plain::specific_heat_capacity_j_kg_k(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{j_kg_k_result, j_kg_k_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_enthalpy_of_liquid_j_kg(double mass_fraction, double celsius,
                                                        double* j_kg_result,
                                                        aqueth_refusal* refusal) {
    return c::one(plain::enthalpy_of_liquid_j_kg(mass_fraction, celsius), refusal, [](auto const& value) { return std::array{value}; }, j_kg_result);
}

extern "C" aqueth_status aqueth_enthalpy_of_liquid_j_kg_array(size_t count,
                                                              const double* mass_fraction,
                                                              ptrdiff_t mass_fraction_stride,
                                                              const double* celsius,
                                                              ptrdiff_t celsius_stride,
                                                              double* j_kg_result,
                                                              ptrdiff_t j_kg_stride_of_result,
                                                              unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double celsius) { return plain::enthalpy_of_liquid_j_kg(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{j_kg_result, j_kg_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_enthalpy_of_vapour_j_kg(double mass_fraction, double celsius,
                                                        double kpa, double* j_kg_result,
                                                        aqueth_refusal* refusal) {
    return c::one(plain::enthalpy_of_vapour_j_kg(mass_fraction, celsius, kpa), refusal, [](auto const& value) { return std::array{value}; }, j_kg_result);
}

extern "C" aqueth_status aqueth_enthalpy_of_vapour_j_kg_array(size_t count,
                                                              const double* mass_fraction,
                                                              ptrdiff_t mass_fraction_stride,
                                                              const double* celsius,
                                                              ptrdiff_t celsius_stride,
                                                              const double* kpa,
                                                              ptrdiff_t kpa_stride,
                                                              double* j_kg_result,
                                                              ptrdiff_t j_kg_stride_of_result,
                                                              unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double celsius, double kpa) { return plain::enthalpy_of_vapour_j_kg(mass_fraction, celsius, kpa); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{j_kg_result, j_kg_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride}, c::input{kpa, kpa_stride});
}

extern "C" aqueth_status aqueth_liquid_celsius_from_enthalpy(double mass_fraction, double j_kg,
                                                             double* celsius_result,
                                                             aqueth_refusal* refusal) {
    return c::one(plain::liquid_celsius_from_enthalpy(mass_fraction, j_kg), refusal, [](auto const& value) { return std::array{value}; }, celsius_result);
}

extern "C" aqueth_status aqueth_liquid_celsius_from_enthalpy_array(size_t count,
                                                                   const double* mass_fraction,
                                                                   ptrdiff_t mass_fraction_stride,
                                                                   const double* j_kg,
                                                                   ptrdiff_t j_kg_stride,
                                                                   double* celsius_result,
                                                                   ptrdiff_t celsius_stride_of_result,
                                                                   unsigned char* refused) {
    return c::many(count, refused, [](double mass_fraction, double j_kg) { return plain::liquid_celsius_from_enthalpy(mass_fraction, j_kg); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{celsius_result, celsius_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{j_kg, j_kg_stride});
}

extern "C" aqueth_status aqueth_weight_per_volume_kg_m3(double us_proof, double* kg_m3_result,
                                                        aqueth_refusal* refusal) {
    return c::one(plain::weight_per_volume_kg_m3(us_proof), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_weight_per_volume_kg_m3_array(size_t count, const double* us_proof,
                                                              ptrdiff_t us_proof_stride,
                                                              double* kg_m3_result,
                                                              ptrdiff_t kg_m3_stride_of_result,
                                                              unsigned char* refused) {
    return c::many(count, refused, [](double us_proof) { return plain::weight_per_volume_kg_m3(us_proof); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{us_proof, us_proof_stride});
}

extern "C" aqueth_status aqueth_wine_gallons_per_pound(double us_proof, double* gallons_result,
                                                       aqueth_refusal* refusal) {
    return c::one(plain::wine_gallons_per_pound(us_proof), refusal, [](auto const& value) { return std::array{value}; }, gallons_result);
}

extern "C" aqueth_status aqueth_wine_gallons_per_pound_array(size_t count, const double* us_proof,
                                                             ptrdiff_t us_proof_stride,
                                                             double* gallons_result,
                                                             ptrdiff_t gallons_stride_of_result,
                                                             unsigned char* refused) {
    return c::many(count, refused, [](double us_proof) { return plain::wine_gallons_per_pound(us_proof); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{gallons_result, gallons_stride_of_result}}, c::input{us_proof, us_proof_stride});
}

extern "C" aqueth_status aqueth_proof_gallons_per_pound(double us_proof, double* gallons_result,
                                                        aqueth_refusal* refusal) {
    return c::one(plain::proof_gallons_per_pound(us_proof), refusal, [](auto const& value) { return std::array{value}; }, gallons_result);
}

extern "C" aqueth_status aqueth_proof_gallons_per_pound_array(size_t count, const double* us_proof,
                                                              ptrdiff_t us_proof_stride,
                                                              double* gallons_result,
                                                              ptrdiff_t gallons_stride_of_result,
                                                              unsigned char* refused) {
    return c::many(count, refused, [](double us_proof) { return plain::proof_gallons_per_pound(us_proof); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{gallons_result, gallons_stride_of_result}}, c::input{us_proof, us_proof_stride});
}

extern "C" aqueth_status aqueth_volume_factor_to_60_fahrenheit(double us_proof, double celsius,
                                                               double* factor_result,
                                                               aqueth_refusal* refusal) {
    return c::one(plain::volume_factor_to_60_fahrenheit(us_proof, celsius), refusal, [](auto const& value) { return std::array{value}; }, factor_result);
}

extern "C" aqueth_status aqueth_volume_factor_to_60_fahrenheit_array(size_t count,
                                                                     const double* us_proof,
                                                                     ptrdiff_t us_proof_stride,
                                                                     const double* celsius,
                                                                     ptrdiff_t celsius_stride,
                                                                     double* factor_result,
                                                                     ptrdiff_t factor_stride_of_result,
                                                                     unsigned char* refused) {
    return c::many(count, refused, [](double us_proof, double celsius) { return plain::volume_factor_to_60_fahrenheit(us_proof, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{factor_result, factor_stride_of_result}}, c::input{us_proof, us_proof_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_air_pressure_kpa(double altitude_metres, double* kpa_result,
                                                 aqueth_refusal* refusal) {
    return c::one(plain::air_pressure_kpa(altitude_metres), refusal, [](auto const& value) { return std::array{value}; }, kpa_result);
}

extern "C" aqueth_status aqueth_air_pressure_kpa_array(size_t count, const double* altitude_metres,
                                                       ptrdiff_t altitude_metres_stride,
                                                       double* kpa_result,
                                                       ptrdiff_t kpa_stride_of_result,
                                                       unsigned char* refused) {
    return c::many(count, refused, [](double altitude_metres) { return plain::air_pressure_kpa(altitude_metres); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kpa_result, kpa_stride_of_result}}, c::input{altitude_metres, altitude_metres_stride});
}

extern "C" aqueth_status aqueth_sucrose_density_kg_m3(double plato, double celsius,
                                                      double* kg_m3_result,
                                                      aqueth_refusal* refusal) {
    return c::one(plain::sucrose_density_kg_m3(plato, celsius), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_sucrose_density_kg_m3_array(size_t count, const double* plato,
                                                            ptrdiff_t plato_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride,
                                                            double* kg_m3_result,
                                                            ptrdiff_t kg_m3_stride_of_result,
                                                            unsigned char* refused) {
    return c::many(count, refused, [](double plato, double celsius) { return plain::sucrose_density_kg_m3(plato, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{plato, plato_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_specific_gravity_from_plato(double plato,
                                                            double* specific_gravity_result,
                                                            aqueth_refusal* refusal) {
    return c::one(plain::specific_gravity_from_plato(plato), refusal, [](auto const& value) { return std::array{value}; }, specific_gravity_result);
}

extern "C" aqueth_status aqueth_specific_gravity_from_plato_array(size_t count, const double* plato,
                                                                  ptrdiff_t plato_stride,
                                                                  double* specific_gravity_result,
                                                                  ptrdiff_t specific_gravity_stride_of_result,
                                                                  unsigned char* refused) {
    return c::many(count, refused, [](double plato) { return plain::specific_gravity_from_plato(plato); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{specific_gravity_result, specific_gravity_stride_of_result}}, c::input{plato, plato_stride});
}

extern "C" aqueth_status aqueth_plato_from_specific_gravity(double specific_gravity,
                                                            double* plato_result,
                                                            aqueth_refusal* refusal) {
    return c::one(plain::plato_from_specific_gravity(specific_gravity), refusal, [](auto const& value) { return std::array{value}; }, plato_result);
}

extern "C" aqueth_status aqueth_plato_from_specific_gravity_array(size_t count,
                                                                  const double* specific_gravity,
                                                                  ptrdiff_t specific_gravity_stride,
                                                                  double* plato_result,
                                                                  ptrdiff_t plato_stride_of_result,
                                                                  unsigned char* refused) {
    return c::many(count, refused, [](double specific_gravity) { return plain::plato_from_specific_gravity(specific_gravity); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{plato_result, plato_stride_of_result}}, c::input{specific_gravity, specific_gravity_stride});
}

extern "C" aqueth_status aqueth_wash_density_kg_m3(double ethanol_mass_fraction, double plato,
                                                   double celsius, double* kg_m3_result,
                                                   aqueth_refusal* refusal) {
    return c::one(plain::wash_density_kg_m3(ethanol_mass_fraction, plato, celsius), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_wash_density_kg_m3_array(size_t count,
                                                         const double* ethanol_mass_fraction,
                                                         ptrdiff_t ethanol_mass_fraction_stride,
                                                         const double* plato,
                                                         ptrdiff_t plato_stride,
                                                         const double* celsius,
                                                         ptrdiff_t celsius_stride,
                                                         double* kg_m3_result,
                                                         ptrdiff_t kg_m3_stride_of_result,
                                                         unsigned char* refused) {
    return c::many(count, refused, [](double ethanol_mass_fraction, double plato, double celsius) { return plain::wash_density_kg_m3(ethanol_mass_fraction, plato, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{ethanol_mass_fraction, ethanol_mass_fraction_stride}, c::input{plato, plato_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_real_extract_plato(double original_plato, double apparent_plato,
                                                   double* plato_result, aqueth_refusal* refusal) {
    return c::one(plain::real_extract_plato(original_plato, apparent_plato), refusal, [](auto const& value) { return std::array{value}; }, plato_result);
}

extern "C" aqueth_status aqueth_real_extract_plato_array(size_t count, const double* original_plato,
                                                         ptrdiff_t original_plato_stride,
                                                         const double* apparent_plato,
                                                         ptrdiff_t apparent_plato_stride,
                                                         double* plato_result,
                                                         ptrdiff_t plato_stride_of_result,
                                                         unsigned char* refused) {
    return c::many(count, refused, [](double original_plato, double apparent_plato) { return plain::real_extract_plato(original_plato, apparent_plato); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{plato_result, plato_stride_of_result}}, c::input{original_plato, original_plato_stride}, c::input{apparent_plato, apparent_plato_stride});
}

extern "C" aqueth_status aqueth_apparent_attenuation(double original_plato, double now_plato,
                                                     double* attenuation_result,
                                                     aqueth_refusal* refusal) {
    return c::one(plain::apparent_attenuation(original_plato, now_plato), refusal, [](auto const& value) { return std::array{value}; }, attenuation_result);
}

extern "C" aqueth_status aqueth_apparent_attenuation_array(size_t count,
                                                           const double* original_plato,
                                                           ptrdiff_t original_plato_stride,
                                                           const double* now_plato,
                                                           ptrdiff_t now_plato_stride,
                                                           double* attenuation_result,
                                                           ptrdiff_t attenuation_stride_of_result,
                                                           unsigned char* refused) {
    return c::many(count, refused, [](double original_plato, double now_plato) { return plain::apparent_attenuation(original_plato, now_plato); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{attenuation_result, attenuation_stride_of_result}}, c::input{original_plato, original_plato_stride}, c::input{now_plato, now_plato_stride});
}

extern "C" aqueth_status aqueth_mass_fraction_by_balling(double original_plato, double real_plato,
                                                         double* mass_fraction_result,
                                                         aqueth_refusal* refusal) {
    return c::one(plain::mass_fraction_by_balling(original_plato, real_plato), refusal, [](auto const& value) { return std::array{value}; }, mass_fraction_result);
}

extern "C" aqueth_status aqueth_mass_fraction_by_balling_array(size_t count,
                                                               const double* original_plato,
                                                               ptrdiff_t original_plato_stride,
                                                               const double* real_plato,
                                                               ptrdiff_t real_plato_stride,
                                                               double* mass_fraction_result,
                                                               ptrdiff_t mass_fraction_stride_of_result,
                                                               unsigned char* refused) {
    return c::many(count, refused, [](double original_plato, double real_plato) { return plain::mass_fraction_by_balling(original_plato, real_plato); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{mass_fraction_result, mass_fraction_stride_of_result}}, c::input{original_plato, original_plato_stride}, c::input{real_plato, real_plato_stride});
}

extern "C" aqueth_status aqueth_volume_fraction_by_gravity_fall(double original_gravity,
                                                                double final_gravity,
                                                                double* volume_fraction_result,
                                                                aqueth_refusal* refusal) {
    return c::one(plain::volume_fraction_by_gravity_fall(original_gravity, final_gravity), refusal, [](auto const& value) { return std::array{value}; }, volume_fraction_result);
}

extern "C" aqueth_status aqueth_volume_fraction_by_gravity_fall_array(size_t count,
                                                                      const double* original_gravity,
                                                                      ptrdiff_t original_gravity_stride,
                                                                      const double* final_gravity,
                                                                      ptrdiff_t final_gravity_stride,
                                                                      double* volume_fraction_result,
                                                                      ptrdiff_t volume_fraction_stride_of_result,
                                                                      unsigned char* refused) {
    return c::many(count, refused, [](double original_gravity, double final_gravity) { return plain::volume_fraction_by_gravity_fall(original_gravity, final_gravity); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}}, c::input{original_gravity, original_gravity_stride}, c::input{final_gravity, final_gravity_stride});
}

extern "C" aqueth_status aqueth_fermented_wash_from_gravity(double original_gravity,
                                                            double final_gravity,
                                                            double* volume_fraction_result,
                                                            double* ethanol_mass_fraction_result,
                                                            double* plato_result,
                                                            aqueth_refusal* refusal) {
    return c::one(plain::fermented_wash_from_gravity(original_gravity, final_gravity), refusal, [](auto const& value) { return std::array{value.volume_fraction, value.ethanol_mass_fraction, value.plato}; }, volume_fraction_result, ethanol_mass_fraction_result, plato_result);
}

extern "C" aqueth_status aqueth_fermented_wash_from_gravity_array(size_t count,
                                                                  const double* original_gravity,
                                                                  ptrdiff_t original_gravity_stride,
                                                                  const double* final_gravity,
                                                                  ptrdiff_t final_gravity_stride,
                                                                  double* volume_fraction_result,
                                                                  ptrdiff_t volume_fraction_stride_of_result,
                                                                  double* ethanol_mass_fraction_result,
                                                                  ptrdiff_t ethanol_mass_fraction_stride_of_result,
                                                                  double* plato_result,
                                                                  ptrdiff_t plato_stride_of_result,
                                                                  unsigned char* refused) {
    return c::many(count, refused, [](double original_gravity, double final_gravity) { return plain::fermented_wash_from_gravity(original_gravity, final_gravity); }, [](auto const& value) { return std::array{value.volume_fraction, value.ethanol_mass_fraction, value.plato}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}, c::output{ethanol_mass_fraction_result, ethanol_mass_fraction_stride_of_result}, c::output{plato_result, plato_stride_of_result}}, c::input{original_gravity, original_gravity_stride}, c::input{final_gravity, final_gravity_stride});
}

extern "C" aqueth_status aqueth_sugar_needed(double litres, double volume_fraction, int kind,
                                             double yield, double* least_kg_result,
                                             double* practical_kg_result,
                                             double* carbon_dioxide_kg_result,
                                             double* original_plato_result,
                                             double* specific_gravity_result,
                                             double* water_kg_result, aqueth_refusal* refusal) {
    if (!c::is_sugar(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::sugar_needed(litres, volume_fraction, c::sugar_of(kind), yield), refusal, [](auto const& value) { return std::array{value.least_kg, value.practical_kg, value.carbon_dioxide_kg, value.original_plato, value.specific_gravity, value.water_kg}; }, least_kg_result, practical_kg_result, carbon_dioxide_kg_result, original_plato_result, specific_gravity_result, water_kg_result);
}

extern "C" aqueth_status aqueth_sugar_needed_array(size_t count, const double* litres,
                                                   ptrdiff_t litres_stride,
                                                   const double* volume_fraction,
                                                   ptrdiff_t volume_fraction_stride, int kind,
                                                   const double* yield, ptrdiff_t yield_stride,
                                                   double* least_kg_result,
                                                   ptrdiff_t least_kg_stride_of_result,
                                                   double* practical_kg_result,
                                                   ptrdiff_t practical_kg_stride_of_result,
                                                   double* carbon_dioxide_kg_result,
                                                   ptrdiff_t carbon_dioxide_kg_stride_of_result,
                                                   double* original_plato_result,
                                                   ptrdiff_t original_plato_stride_of_result,
                                                   double* specific_gravity_result,
                                                   ptrdiff_t specific_gravity_stride_of_result,
                                                   double* water_kg_result,
                                                   ptrdiff_t water_kg_stride_of_result,
                                                   unsigned char* refused) {
    if (!c::is_sugar(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double litres, double volume_fraction, double yield) { return plain::sugar_needed(litres, volume_fraction, c::sugar_of(kind), yield); }, [](auto const& value) { return std::array{value.least_kg, value.practical_kg, value.carbon_dioxide_kg, value.original_plato, value.specific_gravity, value.water_kg}; },
        std::array{c::output{least_kg_result, least_kg_stride_of_result}, c::output{practical_kg_result, practical_kg_stride_of_result}, c::output{carbon_dioxide_kg_result, carbon_dioxide_kg_stride_of_result}, c::output{original_plato_result, original_plato_stride_of_result}, c::output{specific_gravity_result, specific_gravity_stride_of_result}, c::output{water_kg_result, water_kg_stride_of_result}}, c::input{litres, litres_stride}, c::input{volume_fraction, volume_fraction_stride}, c::input{yield, yield_stride});
}

extern "C" aqueth_status aqueth_sweet_density_kg_m3(double ethanol_mass_fraction,
                                                    double sugar_mass_fraction, int kind,
                                                    double celsius, double* kg_m3_result,
                                                    aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::sweet_density_kg_m3(plain::sweet_composition<double>{ethanol_mass_fraction, sugar_mass_fraction}, c::sweetener_of(kind), celsius), refusal, [](auto const& value) { return std::array{value}; }, kg_m3_result);
}

extern "C" aqueth_status aqueth_sweet_density_kg_m3_array(size_t count,
                                                          const double* ethanol_mass_fraction,
                                                          ptrdiff_t ethanol_mass_fraction_stride,
                                                          const double* sugar_mass_fraction,
                                                          ptrdiff_t sugar_mass_fraction_stride,
                                                          int kind, const double* celsius,
                                                          ptrdiff_t celsius_stride,
                                                          double* kg_m3_result,
                                                          ptrdiff_t kg_m3_stride_of_result,
                                                          unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double ethanol_mass_fraction, double sugar_mass_fraction, double celsius) { return plain::sweet_density_kg_m3(plain::sweet_composition<double>{ethanol_mass_fraction, sugar_mass_fraction}, c::sweetener_of(kind), celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{kg_m3_result, kg_m3_stride_of_result}}, c::input{ethanol_mass_fraction, ethanol_mass_fraction_stride}, c::input{sugar_mass_fraction, sugar_mass_fraction_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_sweet_composition_from_strength(double volume_fraction,
                                                                double g_per_litre, int kind,
                                                                double* ethanol_mass_fraction_result,
                                                                double* sugar_mass_fraction_result,
                                                                aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::sweet_composition_from_strength(volume_fraction, g_per_litre, c::sweetener_of(kind)), refusal, [](auto const& value) { return std::array{value.ethanol, value.sugar}; }, ethanol_mass_fraction_result, sugar_mass_fraction_result);
}

extern "C" aqueth_status aqueth_sweet_composition_from_strength_array(size_t count,
                                                                      const double* volume_fraction,
                                                                      ptrdiff_t volume_fraction_stride,
                                                                      const double* g_per_litre,
                                                                      ptrdiff_t g_per_litre_stride,
                                                                      int kind,
                                                                      double* ethanol_mass_fraction_result,
                                                                      ptrdiff_t ethanol_mass_fraction_stride_of_result,
                                                                      double* sugar_mass_fraction_result,
                                                                      ptrdiff_t sugar_mass_fraction_stride_of_result,
                                                                      unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double volume_fraction, double g_per_litre) { return plain::sweet_composition_from_strength(volume_fraction, g_per_litre, c::sweetener_of(kind)); }, [](auto const& value) { return std::array{value.ethanol, value.sugar}; },
        std::array{c::output{ethanol_mass_fraction_result, ethanol_mass_fraction_stride_of_result}, c::output{sugar_mass_fraction_result, sugar_mass_fraction_stride_of_result}}, c::input{volume_fraction, volume_fraction_stride}, c::input{g_per_litre, g_per_litre_stride});
}

extern "C" aqueth_status aqueth_strength_behind_sugar(double kg_m3, double celsius,
                                                      double g_per_litre, int kind,
                                                      double* volume_fraction_result,
                                                      aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::strength_behind_sugar(kg_m3, celsius, g_per_litre, c::sweetener_of(kind)), refusal, [](auto const& value) { return std::array{value}; }, volume_fraction_result);
}

extern "C" aqueth_status aqueth_strength_behind_sugar_array(size_t count, const double* kg_m3,
                                                            ptrdiff_t kg_m3_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride,
                                                            const double* g_per_litre,
                                                            ptrdiff_t g_per_litre_stride, int kind,
                                                            double* volume_fraction_result,
                                                            ptrdiff_t volume_fraction_stride_of_result,
                                                            unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double kg_m3, double celsius, double g_per_litre) { return plain::strength_behind_sugar(kg_m3, celsius, g_per_litre, c::sweetener_of(kind)); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}}, c::input{kg_m3, kg_m3_stride}, c::input{celsius, celsius_stride}, c::input{g_per_litre, g_per_litre_stride});
}

extern "C" aqueth_status aqueth_sugar_behind_density_g_per_litre(double kg_m3,
                                                                 double volume_fraction, int kind,
                                                                 double* g_per_litre_result,
                                                                 aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::sugar_behind_density_g_per_litre(kg_m3, volume_fraction, c::sweetener_of(kind)), refusal, [](auto const& value) { return std::array{value}; }, g_per_litre_result);
}

extern "C" aqueth_status aqueth_sugar_behind_density_g_per_litre_array(size_t count,
                                                                       const double* kg_m3,
                                                                       ptrdiff_t kg_m3_stride,
                                                                       const double* volume_fraction,
                                                                       ptrdiff_t volume_fraction_stride,
                                                                       int kind,
                                                                       double* g_per_litre_result,
                                                                       ptrdiff_t g_per_litre_stride_of_result,
                                                                       unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double kg_m3, double volume_fraction) { return plain::sugar_behind_density_g_per_litre(kg_m3, volume_fraction, c::sweetener_of(kind)); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{g_per_litre_result, g_per_litre_stride_of_result}}, c::input{kg_m3, kg_m3_stride}, c::input{volume_fraction, volume_fraction_stride});
}

extern "C" aqueth_status aqueth_strength_doubt_from_sugar(double volume_fraction,
                                                          double g_per_litre, int kind,
                                                          double celsius,
                                                          double* volume_fraction_result,
                                                          aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::strength_doubt_from_sugar(volume_fraction, g_per_litre, c::sweetener_of(kind), celsius), refusal, [](auto const& value) { return std::array{value}; }, volume_fraction_result);
}

extern "C" aqueth_status aqueth_strength_doubt_from_sugar_array(size_t count,
                                                                const double* volume_fraction,
                                                                ptrdiff_t volume_fraction_stride,
                                                                const double* g_per_litre,
                                                                ptrdiff_t g_per_litre_stride,
                                                                int kind, const double* celsius,
                                                                ptrdiff_t celsius_stride,
                                                                double* volume_fraction_result,
                                                                ptrdiff_t volume_fraction_stride_of_result,
                                                                unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double volume_fraction, double g_per_litre, double celsius) { return plain::strength_doubt_from_sugar(volume_fraction, g_per_litre, c::sweetener_of(kind), celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}}, c::input{volume_fraction, volume_fraction_stride}, c::input{g_per_litre, g_per_litre_stride}, c::input{celsius, celsius_stride});
}

extern "C" aqueth_status aqueth_tabarie_extract_g_per_litre(double kg_m3, double volume_fraction,
                                                            double* g_per_litre_result,
                                                            aqueth_refusal* refusal) {
    return c::one(plain::tabarie_extract_g_per_litre(kg_m3, volume_fraction), refusal, [](auto const& value) { return std::array{value}; }, g_per_litre_result);
}

extern "C" aqueth_status aqueth_tabarie_extract_g_per_litre_array(size_t count, const double* kg_m3,
                                                                  ptrdiff_t kg_m3_stride,
                                                                  const double* volume_fraction,
                                                                  ptrdiff_t volume_fraction_stride,
                                                                  double* g_per_litre_result,
                                                                  ptrdiff_t g_per_litre_stride_of_result,
                                                                  unsigned char* refused) {
    return c::many(count, refused, [](double kg_m3, double volume_fraction) { return plain::tabarie_extract_g_per_litre(kg_m3, volume_fraction); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{g_per_litre_result, g_per_litre_stride_of_result}}, c::input{kg_m3, kg_m3_stride}, c::input{volume_fraction, volume_fraction_stride});
}

extern "C" aqueth_status aqueth_sweeten(double spirit_kg, double spirit_mass_fraction,
                                        double spirit_celsius, double volume_fraction,
                                        double g_per_litre, int kind, double* water_kg_result,
                                        double* sugar_kg_result, double* litres_result,
                                        double* contraction_litres_result,
                                        double* sugar_litres_result, aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::sweeten(plain::parcel<double>{spirit_kg, spirit_mass_fraction, spirit_celsius}, volume_fraction, g_per_litre, c::sweetener_of(kind)), refusal, [](auto const& value) { return std::array{value.water_kg, value.sugar_kg, value.litres, value.contraction_litres, value.sugar_litres}; }, water_kg_result, sugar_kg_result, litres_result, contraction_litres_result, sugar_litres_result);
}

extern "C" aqueth_status aqueth_sweeten_array(size_t count, const double* spirit_kg,
                                              ptrdiff_t spirit_kg_stride,
                                              const double* spirit_mass_fraction,
                                              ptrdiff_t spirit_mass_fraction_stride,
                                              const double* spirit_celsius,
                                              ptrdiff_t spirit_celsius_stride,
                                              const double* volume_fraction,
                                              ptrdiff_t volume_fraction_stride,
                                              const double* g_per_litre,
                                              ptrdiff_t g_per_litre_stride, int kind,
                                              double* water_kg_result,
                                              ptrdiff_t water_kg_stride_of_result,
                                              double* sugar_kg_result,
                                              ptrdiff_t sugar_kg_stride_of_result,
                                              double* litres_result,
                                              ptrdiff_t litres_stride_of_result,
                                              double* contraction_litres_result,
                                              ptrdiff_t contraction_litres_stride_of_result,
                                              double* sugar_litres_result,
                                              ptrdiff_t sugar_litres_stride_of_result,
                                              unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double spirit_kg, double spirit_mass_fraction, double spirit_celsius, double volume_fraction, double g_per_litre) { return plain::sweeten(plain::parcel<double>{spirit_kg, spirit_mass_fraction, spirit_celsius}, volume_fraction, g_per_litre, c::sweetener_of(kind)); }, [](auto const& value) { return std::array{value.water_kg, value.sugar_kg, value.litres, value.contraction_litres, value.sugar_litres}; },
        std::array{c::output{water_kg_result, water_kg_stride_of_result}, c::output{sugar_kg_result, sugar_kg_stride_of_result}, c::output{litres_result, litres_stride_of_result}, c::output{contraction_litres_result, contraction_litres_stride_of_result}, c::output{sugar_litres_result, sugar_litres_stride_of_result}}, c::input{spirit_kg, spirit_kg_stride}, c::input{spirit_mass_fraction, spirit_mass_fraction_stride}, c::input{spirit_celsius, spirit_celsius_stride}, c::input{volume_fraction, volume_fraction_stride}, c::input{g_per_litre, g_per_litre_stride});
}

extern "C" aqueth_status aqueth_strength_of_distilled_sample(double sample_litres,
                                                             double sample_celsius,
                                                             double distillate_litres,
                                                             double mass_fraction,
                                                             double distillate_celsius, double lost,
                                                             double* volume_fraction_result,
                                                             aqueth_refusal* refusal) {
    return c::one(plain::strength_of_distilled_sample(sample_litres, sample_celsius, distillate_litres, mass_fraction, distillate_celsius, lost), refusal, [](auto const& value) { return std::array{value}; }, volume_fraction_result);
}

extern "C" aqueth_status aqueth_strength_of_distilled_sample_array(size_t count,
                                                                   const double* sample_litres,
                                                                   ptrdiff_t sample_litres_stride,
                                                                   const double* sample_celsius,
                                                                   ptrdiff_t sample_celsius_stride,
                                                                   const double* distillate_litres,
                                                                   ptrdiff_t distillate_litres_stride,
                                                                   const double* mass_fraction,
                                                                   ptrdiff_t mass_fraction_stride,
                                                                   const double* distillate_celsius,
                                                                   ptrdiff_t distillate_celsius_stride,
                                                                   const double* lost,
                                                                   ptrdiff_t lost_stride,
                                                                   double* volume_fraction_result,
                                                                   ptrdiff_t volume_fraction_stride_of_result,
                                                                   unsigned char* refused) {
    return c::many(count, refused, [](double sample_litres, double sample_celsius, double distillate_litres, double mass_fraction, double distillate_celsius, double lost) { return plain::strength_of_distilled_sample(sample_litres, sample_celsius, distillate_litres, mass_fraction, distillate_celsius, lost); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}}, c::input{sample_litres, sample_litres_stride}, c::input{sample_celsius, sample_celsius_stride}, c::input{distillate_litres, distillate_litres_stride}, c::input{mass_fraction, mass_fraction_stride}, c::input{distillate_celsius, distillate_celsius_stride}, c::input{lost, lost_stride});
}

extern "C" aqueth_status aqueth_refractive_index_from_brix(double brix,
                                                           double* refractive_index_result,
                                                           aqueth_refusal* refusal) {
    return c::one(plain::refractive_index_from_brix(brix), refusal, [](auto const& value) { return std::array{value}; }, refractive_index_result);
}

extern "C" aqueth_status aqueth_refractive_index_from_brix_array(size_t count, const double* brix,
                                                                 ptrdiff_t brix_stride,
                                                                 double* refractive_index_result,
                                                                 ptrdiff_t refractive_index_stride_of_result,
                                                                 unsigned char* refused) {
    return c::many(count, refused, [](double brix) { return plain::refractive_index_from_brix(brix); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{refractive_index_result, refractive_index_stride_of_result}}, c::input{brix, brix_stride});
}

extern "C" aqueth_status aqueth_brix_from_refractive_index(double refractive_index,
                                                           double* brix_result,
                                                           aqueth_refusal* refusal) {
    return c::one(plain::brix_from_refractive_index(refractive_index), refusal, [](auto const& value) { return std::array{value}; }, brix_result);
}

extern "C" aqueth_status aqueth_brix_from_refractive_index_array(size_t count,
                                                                 const double* refractive_index,
                                                                 ptrdiff_t refractive_index_stride,
                                                                 double* brix_result,
                                                                 ptrdiff_t brix_stride_of_result,
                                                                 unsigned char* refused) {
    return c::many(count, refused, [](double refractive_index) { return plain::brix_from_refractive_index(refractive_index); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{brix_result, brix_stride_of_result}}, c::input{refractive_index, refractive_index_stride});
}

extern "C" aqueth_status aqueth_refractive_index(double ethanol_mass_fraction,
                                                 double sugar_mass_fraction, int kind,
                                                 double* refractive_index_result,
                                                 aqueth_refusal* refusal) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::one(plain::refractive_index(plain::sweet_composition<double>{ethanol_mass_fraction, sugar_mass_fraction}, c::sweetener_of(kind)), refusal, [](auto const& value) { return std::array{value}; }, refractive_index_result);
}

extern "C" aqueth_status aqueth_refractive_index_array(size_t count,
                                                       const double* ethanol_mass_fraction,
                                                       ptrdiff_t ethanol_mass_fraction_stride,
                                                       const double* sugar_mass_fraction,
                                                       ptrdiff_t sugar_mass_fraction_stride,
                                                       int kind, double* refractive_index_result,
                                                       ptrdiff_t refractive_index_stride_of_result,
                                                       unsigned char* refused) {
    if (!c::is_sweetener(kind)) return AQUETH_BAD_CALL;
    return c::many(count, refused, [kind](double ethanol_mass_fraction, double sugar_mass_fraction) { return plain::refractive_index(plain::sweet_composition<double>{ethanol_mass_fraction, sugar_mass_fraction}, c::sweetener_of(kind)); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{refractive_index_result, refractive_index_stride_of_result}}, c::input{ethanol_mass_fraction, ethanol_mass_fraction_stride}, c::input{sugar_mass_fraction, sugar_mass_fraction_stride});
}

extern "C" aqueth_status aqueth_wash_from_density_and_index(double kg_m3, double refractive_index,
                                                            double* volume_fraction_result,
                                                            double* ethanol_mass_fraction_result,
                                                            double* plato_result,
                                                            aqueth_refusal* refusal) {
    return c::one(plain::wash_from_density_and_index(kg_m3, refractive_index), refusal, [](auto const& value) { return std::array{value.volume_fraction, value.ethanol_mass_fraction, value.plato}; }, volume_fraction_result, ethanol_mass_fraction_result, plato_result);
}

extern "C" aqueth_status aqueth_wash_from_density_and_index_array(size_t count, const double* kg_m3,
                                                                  ptrdiff_t kg_m3_stride,
                                                                  const double* refractive_index,
                                                                  ptrdiff_t refractive_index_stride,
                                                                  double* volume_fraction_result,
                                                                  ptrdiff_t volume_fraction_stride_of_result,
                                                                  double* ethanol_mass_fraction_result,
                                                                  ptrdiff_t ethanol_mass_fraction_stride_of_result,
                                                                  double* plato_result,
                                                                  ptrdiff_t plato_stride_of_result,
                                                                  unsigned char* refused) {
    return c::many(count, refused, [](double kg_m3, double refractive_index) { return plain::wash_from_density_and_index(kg_m3, refractive_index); }, [](auto const& value) { return std::array{value.volume_fraction, value.ethanol_mass_fraction, value.plato}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}, c::output{ethanol_mass_fraction_result, ethanol_mass_fraction_stride_of_result}, c::output{plato_result, plato_stride_of_result}}, c::input{kg_m3, kg_m3_stride}, c::input{refractive_index, refractive_index_stride});
}

extern "C" aqueth_status aqueth_wash_from_original_gravity_and_brix(double original_gravity,
                                                                    double brix,
                                                                    double* volume_fraction_result,
                                                                    double* ethanol_mass_fraction_result,
                                                                    double* plato_result,
                                                                    aqueth_refusal* refusal) {
    return c::one(plain::wash_from_original_gravity_and_brix(original_gravity, brix), refusal, [](auto const& value) { return std::array{value.volume_fraction, value.ethanol_mass_fraction, value.plato}; }, volume_fraction_result, ethanol_mass_fraction_result, plato_result);
}

extern "C" aqueth_status aqueth_wash_from_original_gravity_and_brix_array(size_t count,
                                                                          const double* original_gravity,
                                                                          ptrdiff_t original_gravity_stride,
                                                                          const double* brix,
                                                                          ptrdiff_t brix_stride,
                                                                          double* volume_fraction_result,
                                                                          ptrdiff_t volume_fraction_stride_of_result,
                                                                          double* ethanol_mass_fraction_result,
                                                                          ptrdiff_t ethanol_mass_fraction_stride_of_result,
                                                                          double* plato_result,
                                                                          ptrdiff_t plato_stride_of_result,
                                                                          unsigned char* refused) {
    return c::many(count, refused, [](double original_gravity, double brix) { return plain::wash_from_original_gravity_and_brix(original_gravity, brix); }, [](auto const& value) { return std::array{value.volume_fraction, value.ethanol_mass_fraction, value.plato}; },
        std::array{c::output{volume_fraction_result, volume_fraction_stride_of_result}, c::output{ethanol_mass_fraction_result, ethanol_mass_fraction_stride_of_result}, c::output{plato_result, plato_stride_of_result}}, c::input{original_gravity, original_gravity_stride}, c::input{brix, brix_stride});
}

extern "C" aqueth_status aqueth_methanol_from_density_and_index(double kg_m3,
                                                                double refractive_index,
                                                                double* share_result,
                                                                double* alcohol_mass_fraction_result,
                                                                double* share_per_index_result,
                                                                aqueth_refusal* refusal) {
    return c::one(plain::methanol_from_density_and_index(kg_m3, refractive_index), refusal, [](auto const& value) { return std::array{value.share, value.alcohol, value.share_per_index}; }, share_result, alcohol_mass_fraction_result, share_per_index_result);
}

extern "C" aqueth_status aqueth_methanol_from_density_and_index_array(size_t count,
                                                                      const double* kg_m3,
                                                                      ptrdiff_t kg_m3_stride,
                                                                      const double* refractive_index,
                                                                      ptrdiff_t refractive_index_stride,
                                                                      double* share_result,
                                                                      ptrdiff_t share_stride_of_result,
                                                                      double* alcohol_mass_fraction_result,
                                                                      ptrdiff_t alcohol_mass_fraction_stride_of_result,
                                                                      double* share_per_index_result,
                                                                      ptrdiff_t share_per_index_stride_of_result,
                                                                      unsigned char* refused) {
    return c::many(count, refused, [](double kg_m3, double refractive_index) { return plain::methanol_from_density_and_index(kg_m3, refractive_index); }, [](auto const& value) { return std::array{value.share, value.alcohol, value.share_per_index}; },
        std::array{c::output{share_result, share_stride_of_result}, c::output{alcohol_mass_fraction_result, alcohol_mass_fraction_stride_of_result}, c::output{share_per_index_result, share_per_index_stride_of_result}}, c::input{kg_m3, kg_m3_stride}, c::input{refractive_index, refractive_index_stride});
}
