// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

namespace aqueth::inline AQUETH_ABI {

/// The quantity that an error is about: a code for programs that word the message themselves or ask for
/// another value. Each code is named like its words (`name_of`). Compare by name: the numbers behind the
/// names change from version to version. `other` is for quantities that the library does not know.
enum class argument {
    other,
    alcoholic_strength_by_volume,
    altitude,
    amount_of_ethanol,
    amount_of_ethanol_and_water,
    amount_of_water,
    apparent_extract,
    average_of_the_jars,
    bend_of_the_model_within_one_standard_uncertainty,
    boiling_temperature,
    coefficient,
    coefficients_of_one_pair,
    collected_volume,
    confidence,
    correlation_coefficient,
    coverage_factor,
    cubic_expansion_of_the_instrument,
    degrees_of_freedom,
    degrees_of_the_scale,
    density,
    density_behind_the_reading,
    density_it_floats_by,
    diameter_of_the_column,
    density_of_the_air,
    depth_of_the_liquid,
    discarded_volume,
    distance_between_the_liquids_of_two_points,
    effective_degrees_of_freedom,
    efficiency_of_the_heating,
    elapsed_time,
    error_of_the_derivatives_in_the_uncertainty,
    estimate,
    ethanol_beside_this_extract,
    extract,
    extract_of_the_charge,
    extract_of_what_stays_in_the_pot,
    fall,
    final_gravity,
    flow_of_the_cooling_water,
    greatest_reflux_ratio,
    head_temperature,
    heat,
    heat_capacity,
    heat_loss_coefficient,
    heating_value_of_the_fuel,
    height_equivalent_to_a_theoretical_plate,
    height_of_the_packing,
    holdup,
    index,
    indication,
    indication_with_the_liquid,
    indication_with_water,
    label_volume,
    least_mass_of_a_lot,
    least_pivot_of_the_matrix,
    length_of_an_input,
    length_of_the_flags,
    length_of_the_results,
    lines_of_the_second_budget,
    liquid_under_a_mixed_vapour,
    load_in_scale_intervals,
    margin_of_temperature,
    mass,
    mass_concentration,
    mass_fraction,
    mass_of_all_lots,
    mass_of_all_parcels,
    mass_of_the_charge,
    mass_of_the_extract,
    mass_of_the_sugar,
    mass_of_the_grain,
    mass_of_the_water,
    measured_strength,
    measured_value,
    moisture,
    mole_fraction,
    mole_fraction_in_the_still,
    mole_fraction_of_the_distillate,
    mole_fraction_of_the_liquid,
    murphree_efficiency,
    number_of_additions,
    number_of_cuts,
    number_of_cycles,
    number_of_destinations,
    number_of_ends_of_the_run,
    number_of_hearts,
    number_of_input_quantities,
    number_of_jars,
    number_of_lots,
    number_of_measured_temperatures,
    number_of_mixed_points,
    number_of_parcels,
    number_of_past_runs,
    number_of_plates,
    number_of_points,
    number_of_readings,
    number_of_results_covered,
    number_of_runs,
    number_of_second_readings,
    number_of_stages,
    number_of_stages_above,
    number_of_standard_uncertainties,
    number_of_steps,
    number_of_steps_of_the_plan,
    strengths_kept_by_the_reflux,
    number_of_the_first_jar,
    number_of_trials,
    number_of_trials_that_settle_the_result,
    original_extract,
    overlap_of_the_results,
    power,
    pressure,
    price,
    probability,
    product_of_the_uncertainties,
    proof,
    quantities_in_a_pair,
    reading,
    reading_at_the_spout,
    readings,
    refractive_index,
    refractometer_reading,
    real_extract,
    reference_temperature,
    reflux_ratio,
    relative_volatility,
    share_of_the_stoichiometric_yield,
    share_of_the_vapour_that_condenses,
    share_that_is_lost,
    share_lost_in_distillation,
    significant_digits,
    smallest_step_read,
    specific_enthalpy,
    specific_gravity,
    spread_of_the_readings,
    standard_deviation_of_a_reading,
    standard_uncertainty,
    strength,
    strength_in_the_still,
    strength_of_the_charge,
    strength_of_the_diluent,
    strength_of_the_distillate,
    strength_of_the_distillate_to_keep,
    strength_of_the_stronger_spirit,
    strength_scale,
    strength_that_is_kept,
    sugar_concentration,
    sugar_in_its_water,
    stronger_spirit_above_the_target_by,
    strongest_charge,
    systematic_uncertainty,
    take_off_rate,
    target_strength,
    temperature,
    temperature_of_a_part,
    temperature_of_a_point,
    temperature_of_the_charge,
    temperature_of_the_grain,
    temperature_of_the_mixture_without_loss_of_heat,
    temperature_of_the_receiver,
    temperature_of_the_reflux,
    temperature_of_the_room,
    temperature_of_the_spout,
    temperature_of_the_water_in,
    temperature_of_the_water_out,
    temperature_of_the_vessel,
    temperature_of_the_water,
    temperature_wanted,
    time_at_total_reflux,
    time_between_runs,
    time_to_elapse,
    uncertainty_of_the_strength,
    uncertainty_over_the_standard_deviation_of_the_process,
    upper_limit_of_the_tolerance,
    value_of_the_model,
    vapour_over_a_mixture,
    verification_scale_interval,
    volume,
    volume_of_a_jar,
    volume_of_the_charge,
    volume_of_the_distillate,
    volume_of_the_sample,
    volume_to_collect,
    volume_wanted,
    wanted_uncertainty,
    warming_of_the_cooling_water,
    yearly_loss_of_ethanol,
    yearly_loss_of_water,
    years
};

/// @param a which quantity
/// @return its words, as messages have them; "argument" for `other`
constexpr char const* name_of(argument a) noexcept {
    switch (a) {
    case argument::other: break;
    case argument::alcoholic_strength_by_volume: return "alcoholic strength by volume";
    case argument::altitude: return "altitude";
    case argument::amount_of_ethanol: return "amount of ethanol";
    case argument::amount_of_ethanol_and_water: return "amount of ethanol and water";
    case argument::amount_of_water: return "amount of water";
    case argument::apparent_extract: return "apparent extract";
    case argument::average_of_the_jars: return "average of the jars";
    case argument::bend_of_the_model_within_one_standard_uncertainty:
        return "bend of the model within one standard uncertainty";
    case argument::boiling_temperature: return "boiling temperature";
    case argument::coefficient: return "coefficient";
    case argument::coefficients_of_one_pair: return "coefficients of one pair";
    case argument::collected_volume: return "collected volume";
    case argument::confidence: return "confidence";
    case argument::correlation_coefficient: return "correlation coefficient";
    case argument::coverage_factor: return "coverage factor";
    case argument::cubic_expansion_of_the_instrument: return "cubic expansion of the instrument";
    case argument::degrees_of_freedom: return "degrees of freedom";
    case argument::degrees_of_the_scale: return "degrees of the scale";
    case argument::density: return "density";
    case argument::density_behind_the_reading: return "density behind the reading";
    case argument::density_it_floats_by: return "density it floats by";
    case argument::diameter_of_the_column: return "diameter of the column";
    case argument::density_of_the_air: return "density of the air";
    case argument::depth_of_the_liquid: return "depth of the liquid";
    case argument::discarded_volume: return "discarded volume";
    case argument::distance_between_the_liquids_of_two_points:
        return "distance between the liquids of two points";
    case argument::effective_degrees_of_freedom: return "effective degrees of freedom";
    case argument::efficiency_of_the_heating: return "efficiency of the heating";
    case argument::elapsed_time: return "elapsed time";
    case argument::error_of_the_derivatives_in_the_uncertainty:
        return "error of the derivatives, in the uncertainty";
    case argument::estimate: return "estimate";
    case argument::ethanol_beside_this_extract: return "ethanol beside this extract";
    case argument::extract: return "extract";
    case argument::extract_of_the_charge: return "extract of the charge";
    case argument::extract_of_what_stays_in_the_pot: return "extract of what stays in the pot";
    case argument::fall: return "fall";
    case argument::final_gravity: return "final gravity";
    case argument::flow_of_the_cooling_water: return "flow of the cooling water";
    case argument::greatest_reflux_ratio: return "greatest reflux ratio";
    case argument::head_temperature: return "head temperature";
    case argument::heat: return "heat";
    case argument::heat_capacity: return "heat capacity";
    case argument::heat_loss_coefficient: return "heat loss coefficient";
    case argument::heating_value_of_the_fuel: return "heating value of the fuel";
    case argument::height_equivalent_to_a_theoretical_plate:
        return "height equivalent to a theoretical plate";
    case argument::height_of_the_packing: return "height of the packing";
    case argument::holdup: return "holdup";
    case argument::index: return "index";
    case argument::indication: return "indication";
    case argument::indication_with_the_liquid: return "indication with the liquid";
    case argument::indication_with_water: return "indication with water";
    case argument::label_volume: return "label volume";
    case argument::least_mass_of_a_lot: return "least mass of a lot";
    case argument::least_pivot_of_the_matrix: return "least pivot of the matrix";
    case argument::length_of_an_input: return "length of an input";
    case argument::length_of_the_flags: return "length of the flags";
    case argument::length_of_the_results: return "length of the results";
    case argument::lines_of_the_second_budget: return "lines of the second budget";
    case argument::liquid_under_a_mixed_vapour: return "liquid under a mixed vapour";
    case argument::load_in_scale_intervals: return "load in scale intervals";
    case argument::margin_of_temperature: return "margin of temperature";
    case argument::mass: return "mass";
    case argument::mass_concentration: return "mass concentration";
    case argument::mass_fraction: return "mass fraction";
    case argument::mass_of_all_lots: return "mass of all lots";
    case argument::mass_of_all_parcels: return "mass of all parcels";
    case argument::mass_of_the_charge: return "mass of the charge";
    case argument::mass_of_the_extract: return "mass of the extract";
    case argument::mass_of_the_sugar: return "mass of the sugar";
    case argument::mass_of_the_grain: return "mass of the grain";
    case argument::mass_of_the_water: return "mass of the water";
    case argument::measured_strength: return "measured strength";
    case argument::measured_value: return "measured value";
    case argument::moisture: return "moisture";
    case argument::mole_fraction: return "mole fraction";
    case argument::mole_fraction_in_the_still: return "mole fraction in the still";
    case argument::mole_fraction_of_the_distillate: return "mole fraction of the distillate";
    case argument::mole_fraction_of_the_liquid: return "mole fraction of the liquid";
    case argument::murphree_efficiency: return "Murphree efficiency";
    case argument::number_of_additions: return "number of additions";
    case argument::number_of_cuts: return "number of cuts";
    case argument::number_of_cycles: return "number of cycles";
    case argument::number_of_destinations: return "number of destinations";
    case argument::number_of_ends_of_the_run: return "number of ends of the run";
    case argument::number_of_hearts: return "number of hearts";
    case argument::number_of_input_quantities: return "number of input quantities";
    case argument::number_of_jars: return "number of jars";
    case argument::number_of_lots: return "number of lots";
    case argument::number_of_measured_temperatures: return "number of measured temperatures";
    case argument::number_of_mixed_points: return "number of mixed points";
    case argument::number_of_parcels: return "number of parcels";
    case argument::number_of_past_runs: return "number of past runs";
    case argument::number_of_plates: return "number of plates";
    case argument::number_of_points: return "number of points";
    case argument::number_of_readings: return "number of readings";
    case argument::number_of_results_covered: return "number of results covered";
    case argument::number_of_runs: return "number of runs";
    case argument::number_of_second_readings: return "number of second readings";
    case argument::number_of_stages: return "number of stages";
    case argument::number_of_stages_above: return "number of stages above";
    case argument::number_of_standard_uncertainties: return "number of standard uncertainties";
    case argument::number_of_steps: return "number of steps";
    case argument::number_of_steps_of_the_plan: return "number of steps of the plan";
    case argument::strengths_kept_by_the_reflux: return "strengths kept by the reflux";
    case argument::number_of_the_first_jar: return "number of the first jar";
    case argument::number_of_trials: return "number of trials";
    case argument::number_of_trials_that_settle_the_result: return "number of trials that settle the result";
    case argument::original_extract: return "original extract";
    case argument::overlap_of_the_results: return "overlap of the results";
    case argument::power: return "power";
    case argument::pressure: return "pressure";
    case argument::price: return "price";
    case argument::probability: return "probability";
    case argument::product_of_the_uncertainties: return "product of the uncertainties";
    case argument::proof: return "proof";
    case argument::quantities_in_a_pair: return "quantities in a pair";
    case argument::reading: return "reading";
    case argument::reading_at_the_spout: return "reading at the spout";
    case argument::readings: return "readings";
    case argument::refractive_index: return "refractive index";
    case argument::refractometer_reading: return "refractometer reading";
    case argument::real_extract: return "real extract";
    case argument::reference_temperature: return "reference temperature";
    case argument::reflux_ratio: return "reflux ratio";
    case argument::relative_volatility: return "relative volatility";
    case argument::share_of_the_stoichiometric_yield: return "share of the stoichiometric yield";
    case argument::share_of_the_vapour_that_condenses: return "share of the vapour that condenses";
    case argument::share_that_is_lost: return "share that is lost";
    case argument::share_lost_in_distillation: return "share lost in distillation";
    case argument::significant_digits: return "significant digits";
    case argument::smallest_step_read: return "smallest step read";
    case argument::specific_enthalpy: return "specific enthalpy";
    case argument::specific_gravity: return "specific gravity";
    case argument::spread_of_the_readings: return "spread of the readings";
    case argument::standard_deviation_of_a_reading: return "standard deviation of a reading";
    case argument::standard_uncertainty: return "standard uncertainty";
    case argument::strength: return "strength";
    case argument::strength_in_the_still: return "strength in the still";
    case argument::strength_of_the_charge: return "strength of the charge";
    case argument::strength_of_the_diluent: return "strength of the diluent";
    case argument::strength_of_the_distillate: return "strength of the distillate";
    case argument::strength_of_the_distillate_to_keep: return "strength of the distillate to keep";
    case argument::strength_of_the_stronger_spirit: return "strength of the stronger spirit";
    case argument::strength_scale: return "strength scale";
    case argument::strength_that_is_kept: return "strength that is kept";
    case argument::sugar_concentration: return "sugar concentration";
    case argument::sugar_in_its_water: return "sugar in its water";
    case argument::stronger_spirit_above_the_target_by: return "stronger spirit, above the target by";
    case argument::strongest_charge: return "strongest charge";
    case argument::systematic_uncertainty: return "systematic uncertainty";
    case argument::take_off_rate: return "take-off rate";
    case argument::target_strength: return "target strength";
    case argument::temperature: return "temperature";
    case argument::temperature_of_a_part: return "temperature of a part";
    case argument::temperature_of_a_point: return "temperature of a point";
    case argument::temperature_of_the_charge: return "temperature of the charge";
    case argument::temperature_of_the_grain: return "temperature of the grain";
    case argument::temperature_of_the_mixture_without_loss_of_heat:
        return "temperature of the mixture without loss of heat";
    case argument::temperature_of_the_receiver: return "temperature of the receiver";
    case argument::temperature_of_the_reflux: return "temperature of the reflux";
    case argument::temperature_of_the_room: return "temperature of the room";
    case argument::temperature_of_the_spout: return "temperature of the spout";
    case argument::temperature_of_the_water_in: return "temperature of the water in";
    case argument::temperature_of_the_water_out: return "temperature of the water out";
    case argument::temperature_of_the_vessel: return "temperature of the vessel";
    case argument::temperature_of_the_water: return "temperature of the water";
    case argument::temperature_wanted: return "temperature wanted";
    case argument::time_at_total_reflux: return "time at total reflux";
    case argument::time_between_runs: return "time between runs";
    case argument::time_to_elapse: return "time to elapse";
    case argument::uncertainty_of_the_strength: return "uncertainty of the strength";
    case argument::uncertainty_over_the_standard_deviation_of_the_process:
        return "uncertainty over the standard deviation of the process";
    case argument::upper_limit_of_the_tolerance: return "upper limit of the tolerance";
    case argument::value_of_the_model: return "value of the model";
    case argument::vapour_over_a_mixture: return "vapour over a mixture";
    case argument::verification_scale_interval: return "verification scale interval";
    case argument::volume: return "volume";
    case argument::volume_of_a_jar: return "volume of a jar";
    case argument::volume_of_the_charge: return "volume of the charge";
    case argument::volume_of_the_distillate: return "volume of the distillate";
    case argument::volume_of_the_sample: return "volume of the sample";
    case argument::volume_to_collect: return "volume to collect";
    case argument::volume_wanted: return "volume wanted";
    case argument::wanted_uncertainty: return "wanted uncertainty";
    case argument::warming_of_the_cooling_water: return "warming of the cooling water";
    case argument::yearly_loss_of_ethanol: return "yearly loss of ethanol";
    case argument::yearly_loss_of_water: return "yearly loss of water";
    case argument::years: return "years";
    }
    return "argument";
}

}  // namespace aqueth::inline AQUETH_ABI
