# SPDX-License-Identifier: BSL-1.0
"""The enumerations of aqueth. Made by src/python/generate.py from src/c/functions.tsv and codes.tsv. Not to be edited."""
import enum


class StrengthScale(enum.IntEnum):
    """The scale of a strength."""

    mass_fraction = 0
    mole_fraction = 1
    volume_fraction_at_20_celsius = 2
    volume_fraction_at_15_celsius = 3
    volume_fraction_at_15_56_celsius = 4
    volume_fraction_at_60_fahrenheit = 5
    us_proof = 6
    grams_per_100_ml_at_20_celsius = 7
    grams_per_100_ml_at_15_celsius = 8
    grams_per_100_ml_at_15_56_celsius = 9
    grams_per_100_ml_at_60_fahrenheit = 10


class Medium(enum.IntEnum):
    """Whether weighings are corrected to vacuum."""

    vacuum = 0
    air = 1


class AzeotropeSide(enum.IntEnum):
    """The side of the azeotrope."""

    water_rich = 0
    ethanol_rich = 1


class Sugar(enum.IntEnum):
    """Kinds of sugar."""

    sucrose = 0
    hexose = 1
    glucose_monohydrate = 2


class Sweetener(enum.IntEnum):
    """Sugars of sweetened spirit."""

    sucrose = 0
    glucose = 1
    fructose = 2
    invert_sugar = 3


class Argument(enum.IntEnum):
    """The arguments that are refused."""

    other = 0
    density = 1
    mass_fraction = 2
    temperature = 3
    alcoholic_strength_by_volume = 4
    altitude = 5
    amount_of_ethanol = 6
    amount_of_ethanol_and_water = 7
    amount_of_water = 8
    apparent_extract = 9
    cubic_expansion_of_the_instrument = 10
    density_behind_the_reading = 11
    density_it_floats_by = 12
    ethanol_beside_this_extract = 13
    extract = 14
    fall = 15
    final_gravity = 16
    indication = 17
    label_volume = 18
    mass = 19
    mass_concentration = 20
    mass_of_all_parcels = 21
    mole_fraction = 22
    number_of_additions = 23
    number_of_parcels = 24
    original_extract = 25
    pressure = 26
    proof = 27
    reading = 28
    real_extract = 29
    reference_temperature = 30
    share_of_the_stoichiometric_yield = 31
    specific_enthalpy = 32
    specific_gravity = 33
    strength = 34
    strength_of_the_diluent = 35
    strength_of_the_stronger_spirit = 36
    strength_scale = 37
    stronger_spirit_above_the_target_by = 38
    target_strength = 39
    temperature_of_a_part = 40
    temperature_of_the_mixture_without_loss_of_heat = 41
    volume = 42
    boiling_temperature = 43
    collected_volume = 44
    elapsed_time = 45
    extract_of_the_charge = 46
    extract_of_what_stays_in_the_pot = 47
    greatest_reflux_ratio = 48
    heat_capacity = 49
    heat_loss_coefficient = 50
    height_equivalent_to_a_theoretical_plate = 51
    height_of_the_packing = 52
    mass_of_the_charge = 53
    mass_of_the_extract = 54
    murphree_efficiency = 55
    number_of_cuts = 56
    number_of_ends_of_the_run = 57
    number_of_plates = 58
    number_of_points = 59
    number_of_stages = 60
    number_of_steps = 61
    power = 62
    reflux_ratio = 63
    share_of_the_vapour_that_condenses = 64
    strength_in_the_still = 65
    strength_of_the_charge = 66
    strength_of_the_distillate = 67
    strength_of_the_distillate_to_keep = 68
    strength_that_is_kept = 69
    strengths_kept_by_the_reflux = 70
    temperature_of_the_room = 71
    temperature_wanted = 72
    time_to_elapse = 73
    volume_to_collect = 74
    flow_of_the_cooling_water = 75
    head_temperature = 76
    holdup = 77
    number_of_steps_of_the_plan = 78
    reading_at_the_spout = 79
    take_off_rate = 80
    temperature_of_the_reflux = 81
    temperature_of_the_spout = 82
    time_at_total_reflux = 83
    warming_of_the_cooling_water = 84
    temperature_of_the_charge = 85
    index = 86
    mole_fraction_of_the_liquid = 87
    mass_of_the_sugar = 88
    refractive_index = 89
    refractometer_reading = 90
    share_lost_in_distillation = 91
    sugar_concentration = 92
    sugar_in_its_water = 93
    volume_of_the_distillate = 94
    volume_of_the_sample = 95
    degrees_of_the_scale = 96
    density_of_the_air = 97
    indication_with_the_liquid = 98
    indication_with_water = 99
    margin_of_temperature = 100
    mass_of_the_grain = 101
    mass_of_the_water = 102
    moisture = 103
    temperature_of_the_grain = 104
    temperature_of_the_vessel = 105
    temperature_of_the_water = 106
    yearly_loss_of_ethanol = 107
    yearly_loss_of_water = 108
    years = 109


class Limit(enum.IntEnum):
    """What sets the range of an argument."""

    none = 0
    cipm_2001 = 1
    crc_handbook = 2
    liquid_above_freezing_point = 3
    oiml_r22 = 4
    oiml_r22_ethanol_to_water = 5
    all_fermented_to_none = 6
    all_fermented_to_none_at_that_temperature = 7
    azeotrope_exists = 8
    azeotrope_exists_to_120_celsius = 9
    balling = 10
    balling_printed_table = 11
    begins_above_30_plato = 12
    bottles_counted = 13
    bottles_counted_in_single_precision = 14
    diluent_only_weakens = 15
    excise_notice_226 = 16
    from_the_diluent_to_the_stock = 17
    from_the_parcel_to_the_stronger_spirit = 18
    heat_capacities_of_the_pure_liquids = 19
    heats_of_mixing = 20
    hydrometer_liquids = 21
    hydrometer_scale_ends = 22
    hydrometer_water_to_ethanol = 23
    icao_standard_atmosphere = 24
    liquid_to_116_85_celsius = 25
    no_amount_reaches_the_stronger_spirit = 26
    no_extract_to_70_plato = 27
    no_stronger_than_the_spirit = 28
    no_weaker_than_the_parcel = 29
    nothing_fermented = 30
    nothing_left_to_nothing_fermented = 31
    oiml_r22_and_heats_of_mixing = 32
    oiml_r22_pure_ethanol = 33
    oiml_r22_water_liquid = 34
    plato_scale = 35
    pure_liquid_to_azeotrope = 36
    room_beside_extract = 37
    vapour_condenses_above = 38
    vapour_liquid_equilibrium = 39
    water_only_weakens = 40
    yeast_common_practice = 41
    ethanol_to_water_at_this_temperature = 42
    liquid_below_boiling_point = 43
    water_liquid_and_sugar_solutions = 44
    alcohol_of_the_sample = 45
    all_fermented_to_none_at_20_celsius = 46
    brix_scale = 47
    dissolved_by_its_water = 48
    ethanol_and_sugar_of_this_density = 49
    ethanol_to_methanol_at_this_density = 50
    reach_of_this_spirit_with_sugar = 51
    refraction_tables = 52
    tabarie = 53
    with_this_strength = 54
    with_this_sugar = 55
    above_the_pressure_of_boiling = 56
    bingham_jackson = 57
    boiling_water_is_too_cold = 58
    flash_points_compared = 59
    heavier_than_the_empty_flask = 60
    malt_table = 61
    measured_speeds_of_sound = 62
    melinder = 63
