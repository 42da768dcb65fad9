/* SPDX-License-Identifier: BSL-1.0 */
/* Made by src/c/generate.py from src/c/c.h.in, functions.tsv and codes.tsv. Not to be edited. */
/* clang-format off */
#ifndef AQUETH_C_H
#define AQUETH_C_H

/* Physical properties of ethanol-water mixtures for C, and for every language that calls C. Link libaqueth.
 *
 * Numbers carry their unit in their name: kg, litres, celsius, kpa. Fractions run from 0 to 1. Functions keep no state
 * and may be called from any thread. Nothing is computed outside the range of its source: a function answers
 * AQUETH_REFUSED instead, its results become NaN, and `refusal`, unless it is NULL, says which argument was refused and
 * which range it has. Results must not be NULL.
 *
 * A function whose name ends in _array does the same for `count` elements. A stride is the distance from one element to
 * the next, counted in elements: 1 for neighbours, 0 for one value that serves all. An element that is refused becomes
 * NaN; `refused`, unless it is NULL, gets 1 for it and 0 for the others. An argument may be overwritten by a result of
 * the same place and stride. */

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined(_WIN32)
#define AQUETH_API
#elif defined(__GNUC__)
#define AQUETH_API __attribute__((visibility("default")))
#else
#define AQUETH_API
#endif

/* What a call came to. */
typedef enum aqueth_status {
    AQUETH_OK = 0,        /* answered */
    AQUETH_REFUSED = 1,   /* an argument is out of range, or what is asked for is impossible */
    AQUETH_BAD_CALL = 2,  /* a pointer is NULL, a size is unknown, an enumeration has no such value, or columns overlap */
    AQUETH_NO_MEMORY = 3, /* memory ran out */
    AQUETH_INTERNAL = 4   /* a fault of the library */
} aqueth_status;

/* The arguments that are refused. */
typedef enum aqueth_argument {
    AQUETH_ARGUMENT_OTHER = 0,
    AQUETH_ARGUMENT_DENSITY = 1,
    AQUETH_ARGUMENT_MASS_FRACTION = 2,
    AQUETH_ARGUMENT_TEMPERATURE = 3,
    AQUETH_ARGUMENT_ALCOHOLIC_STRENGTH_BY_VOLUME = 4,
    AQUETH_ARGUMENT_ALTITUDE = 5,
    AQUETH_ARGUMENT_AMOUNT_OF_ETHANOL = 6,
    AQUETH_ARGUMENT_AMOUNT_OF_ETHANOL_AND_WATER = 7,
    AQUETH_ARGUMENT_AMOUNT_OF_WATER = 8,
    AQUETH_ARGUMENT_APPARENT_EXTRACT = 9,
    AQUETH_ARGUMENT_CUBIC_EXPANSION_OF_THE_INSTRUMENT = 10,
    AQUETH_ARGUMENT_DENSITY_BEHIND_THE_READING = 11,
    AQUETH_ARGUMENT_DENSITY_IT_FLOATS_BY = 12,
    AQUETH_ARGUMENT_ETHANOL_BESIDE_THIS_EXTRACT = 13,
    AQUETH_ARGUMENT_EXTRACT = 14,
    AQUETH_ARGUMENT_FALL = 15,
    AQUETH_ARGUMENT_FINAL_GRAVITY = 16,
    AQUETH_ARGUMENT_INDICATION = 17,
    AQUETH_ARGUMENT_LABEL_VOLUME = 18,
    AQUETH_ARGUMENT_MASS = 19,
    AQUETH_ARGUMENT_MASS_CONCENTRATION = 20,
    AQUETH_ARGUMENT_MASS_OF_ALL_PARCELS = 21,
    AQUETH_ARGUMENT_MOLE_FRACTION = 22,
    AQUETH_ARGUMENT_NUMBER_OF_ADDITIONS = 23,
    AQUETH_ARGUMENT_NUMBER_OF_PARCELS = 24,
    AQUETH_ARGUMENT_ORIGINAL_EXTRACT = 25,
    AQUETH_ARGUMENT_PRESSURE = 26,
    AQUETH_ARGUMENT_PROOF = 27,
    AQUETH_ARGUMENT_READING = 28,
    AQUETH_ARGUMENT_REAL_EXTRACT = 29,
    AQUETH_ARGUMENT_REFERENCE_TEMPERATURE = 30,
    AQUETH_ARGUMENT_SHARE_OF_THE_STOICHIOMETRIC_YIELD = 31,
    AQUETH_ARGUMENT_SPECIFIC_ENTHALPY = 32,
    AQUETH_ARGUMENT_SPECIFIC_GRAVITY = 33,
    AQUETH_ARGUMENT_STRENGTH = 34,
    AQUETH_ARGUMENT_STRENGTH_OF_THE_DILUENT = 35,
    AQUETH_ARGUMENT_STRENGTH_OF_THE_STRONGER_SPIRIT = 36,
    AQUETH_ARGUMENT_STRENGTH_SCALE = 37,
    AQUETH_ARGUMENT_STRONGER_SPIRIT_ABOVE_THE_TARGET_BY = 38,
    AQUETH_ARGUMENT_TARGET_STRENGTH = 39,
    AQUETH_ARGUMENT_TEMPERATURE_OF_A_PART = 40,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_MIXTURE_WITHOUT_LOSS_OF_HEAT = 41,
    AQUETH_ARGUMENT_VOLUME = 42,
    AQUETH_ARGUMENT_BOILING_TEMPERATURE = 43,
    AQUETH_ARGUMENT_COLLECTED_VOLUME = 44,
    AQUETH_ARGUMENT_ELAPSED_TIME = 45,
    AQUETH_ARGUMENT_EXTRACT_OF_THE_CHARGE = 46,
    AQUETH_ARGUMENT_EXTRACT_OF_WHAT_STAYS_IN_THE_POT = 47,
    AQUETH_ARGUMENT_GREATEST_REFLUX_RATIO = 48,
    AQUETH_ARGUMENT_HEAT_CAPACITY = 49,
    AQUETH_ARGUMENT_HEAT_LOSS_COEFFICIENT = 50,
    AQUETH_ARGUMENT_HEIGHT_EQUIVALENT_TO_A_THEORETICAL_PLATE = 51,
    AQUETH_ARGUMENT_HEIGHT_OF_THE_PACKING = 52,
    AQUETH_ARGUMENT_MASS_OF_THE_CHARGE = 53,
    AQUETH_ARGUMENT_MASS_OF_THE_EXTRACT = 54,
    AQUETH_ARGUMENT_MURPHREE_EFFICIENCY = 55,
    AQUETH_ARGUMENT_NUMBER_OF_CUTS = 56,
    AQUETH_ARGUMENT_NUMBER_OF_ENDS_OF_THE_RUN = 57,
    AQUETH_ARGUMENT_NUMBER_OF_PLATES = 58,
    AQUETH_ARGUMENT_NUMBER_OF_POINTS = 59,
    AQUETH_ARGUMENT_NUMBER_OF_STAGES = 60,
    AQUETH_ARGUMENT_NUMBER_OF_STEPS = 61,
    AQUETH_ARGUMENT_POWER = 62,
    AQUETH_ARGUMENT_REFLUX_RATIO = 63,
    AQUETH_ARGUMENT_SHARE_OF_THE_VAPOUR_THAT_CONDENSES = 64,
    AQUETH_ARGUMENT_STRENGTH_IN_THE_STILL = 65,
    AQUETH_ARGUMENT_STRENGTH_OF_THE_CHARGE = 66,
    AQUETH_ARGUMENT_STRENGTH_OF_THE_DISTILLATE = 67,
    AQUETH_ARGUMENT_STRENGTH_OF_THE_DISTILLATE_TO_KEEP = 68,
    AQUETH_ARGUMENT_STRENGTH_THAT_IS_KEPT = 69,
    AQUETH_ARGUMENT_STRENGTHS_KEPT_BY_THE_REFLUX = 70,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_ROOM = 71,
    AQUETH_ARGUMENT_TEMPERATURE_WANTED = 72,
    AQUETH_ARGUMENT_TIME_TO_ELAPSE = 73,
    AQUETH_ARGUMENT_VOLUME_TO_COLLECT = 74,
    AQUETH_ARGUMENT_FLOW_OF_THE_COOLING_WATER = 75,
    AQUETH_ARGUMENT_HEAD_TEMPERATURE = 76,
    AQUETH_ARGUMENT_HOLDUP = 77,
    AQUETH_ARGUMENT_NUMBER_OF_STEPS_OF_THE_PLAN = 78,
    AQUETH_ARGUMENT_READING_AT_THE_SPOUT = 79,
    AQUETH_ARGUMENT_TAKE_OFF_RATE = 80,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_REFLUX = 81,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_SPOUT = 82,
    AQUETH_ARGUMENT_TIME_AT_TOTAL_REFLUX = 83,
    AQUETH_ARGUMENT_WARMING_OF_THE_COOLING_WATER = 84,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_CHARGE = 85,
    AQUETH_ARGUMENT_INDEX = 86,
    AQUETH_ARGUMENT_MOLE_FRACTION_OF_THE_LIQUID = 87,
    AQUETH_ARGUMENT_MASS_OF_THE_SUGAR = 88,
    AQUETH_ARGUMENT_REFRACTIVE_INDEX = 89,
    AQUETH_ARGUMENT_REFRACTOMETER_READING = 90,
    AQUETH_ARGUMENT_SHARE_LOST_IN_DISTILLATION = 91,
    AQUETH_ARGUMENT_SUGAR_CONCENTRATION = 92,
    AQUETH_ARGUMENT_SUGAR_IN_ITS_WATER = 93,
    AQUETH_ARGUMENT_VOLUME_OF_THE_DISTILLATE = 94,
    AQUETH_ARGUMENT_VOLUME_OF_THE_SAMPLE = 95,
    AQUETH_ARGUMENT_DEGREES_OF_THE_SCALE = 96,
    AQUETH_ARGUMENT_DENSITY_OF_THE_AIR = 97,
    AQUETH_ARGUMENT_INDICATION_WITH_THE_LIQUID = 98,
    AQUETH_ARGUMENT_INDICATION_WITH_WATER = 99,
    AQUETH_ARGUMENT_MARGIN_OF_TEMPERATURE = 100,
    AQUETH_ARGUMENT_MASS_OF_THE_GRAIN = 101,
    AQUETH_ARGUMENT_MASS_OF_THE_WATER = 102,
    AQUETH_ARGUMENT_MOISTURE = 103,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_GRAIN = 104,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_VESSEL = 105,
    AQUETH_ARGUMENT_TEMPERATURE_OF_THE_WATER = 106,
    AQUETH_ARGUMENT_YEARLY_LOSS_OF_ETHANOL = 107,
    AQUETH_ARGUMENT_YEARLY_LOSS_OF_WATER = 108,
    AQUETH_ARGUMENT_YEARS = 109
} aqueth_argument;

/* What sets the range of an argument. */
typedef enum aqueth_limit {
    AQUETH_LIMIT_NONE = 0,
    AQUETH_LIMIT_CIPM_2001 = 1,
    AQUETH_LIMIT_CRC_HANDBOOK = 2,
    AQUETH_LIMIT_LIQUID_ABOVE_FREEZING_POINT = 3,
    AQUETH_LIMIT_OIML_R22 = 4,
    AQUETH_LIMIT_OIML_R22_ETHANOL_TO_WATER = 5,
    AQUETH_LIMIT_ALL_FERMENTED_TO_NONE = 6,
    AQUETH_LIMIT_ALL_FERMENTED_TO_NONE_AT_THAT_TEMPERATURE = 7,
    AQUETH_LIMIT_AZEOTROPE_EXISTS = 8,
    AQUETH_LIMIT_AZEOTROPE_EXISTS_TO_120_CELSIUS = 9,
    AQUETH_LIMIT_BALLING = 10,
    AQUETH_LIMIT_BALLING_PRINTED_TABLE = 11,
    AQUETH_LIMIT_BEGINS_ABOVE_30_PLATO = 12,
    AQUETH_LIMIT_BOTTLES_COUNTED = 13,
    AQUETH_LIMIT_BOTTLES_COUNTED_IN_SINGLE_PRECISION = 14,
    AQUETH_LIMIT_DILUENT_ONLY_WEAKENS = 15,
    AQUETH_LIMIT_EXCISE_NOTICE_226 = 16,
    AQUETH_LIMIT_FROM_THE_DILUENT_TO_THE_STOCK = 17,
    AQUETH_LIMIT_FROM_THE_PARCEL_TO_THE_STRONGER_SPIRIT = 18,
    AQUETH_LIMIT_HEAT_CAPACITIES_OF_THE_PURE_LIQUIDS = 19,
    AQUETH_LIMIT_HEATS_OF_MIXING = 20,
    AQUETH_LIMIT_HYDROMETER_LIQUIDS = 21,
    AQUETH_LIMIT_HYDROMETER_SCALE_ENDS = 22,
    AQUETH_LIMIT_HYDROMETER_WATER_TO_ETHANOL = 23,
    AQUETH_LIMIT_ICAO_STANDARD_ATMOSPHERE = 24,
    AQUETH_LIMIT_LIQUID_TO_116_85_CELSIUS = 25,
    AQUETH_LIMIT_NO_AMOUNT_REACHES_THE_STRONGER_SPIRIT = 26,
    AQUETH_LIMIT_NO_EXTRACT_TO_70_PLATO = 27,
    AQUETH_LIMIT_NO_STRONGER_THAN_THE_SPIRIT = 28,
    AQUETH_LIMIT_NO_WEAKER_THAN_THE_PARCEL = 29,
    AQUETH_LIMIT_NOTHING_FERMENTED = 30,
    AQUETH_LIMIT_NOTHING_LEFT_TO_NOTHING_FERMENTED = 31,
    AQUETH_LIMIT_OIML_R22_AND_HEATS_OF_MIXING = 32,
    AQUETH_LIMIT_OIML_R22_PURE_ETHANOL = 33,
    AQUETH_LIMIT_OIML_R22_WATER_LIQUID = 34,
    AQUETH_LIMIT_PLATO_SCALE = 35,
    AQUETH_LIMIT_PURE_LIQUID_TO_AZEOTROPE = 36,
    AQUETH_LIMIT_ROOM_BESIDE_EXTRACT = 37,
    AQUETH_LIMIT_VAPOUR_CONDENSES_ABOVE = 38,
    AQUETH_LIMIT_VAPOUR_LIQUID_EQUILIBRIUM = 39,
    AQUETH_LIMIT_WATER_ONLY_WEAKENS = 40,
    AQUETH_LIMIT_YEAST_COMMON_PRACTICE = 41,
    AQUETH_LIMIT_ETHANOL_TO_WATER_AT_THIS_TEMPERATURE = 42,
    AQUETH_LIMIT_LIQUID_BELOW_BOILING_POINT = 43,
    AQUETH_LIMIT_WATER_LIQUID_AND_SUGAR_SOLUTIONS = 44,
    AQUETH_LIMIT_ALCOHOL_OF_THE_SAMPLE = 45,
    AQUETH_LIMIT_ALL_FERMENTED_TO_NONE_AT_20_CELSIUS = 46,
    AQUETH_LIMIT_BRIX_SCALE = 47,
    AQUETH_LIMIT_DISSOLVED_BY_ITS_WATER = 48,
    AQUETH_LIMIT_ETHANOL_AND_SUGAR_OF_THIS_DENSITY = 49,
    AQUETH_LIMIT_ETHANOL_TO_METHANOL_AT_THIS_DENSITY = 50,
    AQUETH_LIMIT_REACH_OF_THIS_SPIRIT_WITH_SUGAR = 51,
    AQUETH_LIMIT_REFRACTION_TABLES = 52,
    AQUETH_LIMIT_TABARIE = 53,
    AQUETH_LIMIT_WITH_THIS_STRENGTH = 54,
    AQUETH_LIMIT_WITH_THIS_SUGAR = 55,
    AQUETH_LIMIT_ABOVE_THE_PRESSURE_OF_BOILING = 56,
    AQUETH_LIMIT_BINGHAM_JACKSON = 57,
    AQUETH_LIMIT_BOILING_WATER_IS_TOO_COLD = 58,
    AQUETH_LIMIT_FLASH_POINTS_COMPARED = 59,
    AQUETH_LIMIT_HEAVIER_THAN_THE_EMPTY_FLASK = 60,
    AQUETH_LIMIT_MALT_TABLE = 61,
    AQUETH_LIMIT_MEASURED_SPEEDS_OF_SOUND = 62,
    AQUETH_LIMIT_MELINDER = 63
} aqueth_limit;

/* The scale of a strength. */
typedef enum aqueth_strength_scale {
    AQUETH_STRENGTH_SCALE_MASS_FRACTION = 0,
    AQUETH_STRENGTH_SCALE_MOLE_FRACTION = 1,
    AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_20_CELSIUS = 2,
    AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_15_CELSIUS = 3,
    AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_15_56_CELSIUS = 4,
    AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_60_FAHRENHEIT = 5,
    AQUETH_STRENGTH_SCALE_US_PROOF = 6,
    AQUETH_STRENGTH_SCALE_GRAMS_PER_100_ML_AT_20_CELSIUS = 7,
    AQUETH_STRENGTH_SCALE_GRAMS_PER_100_ML_AT_15_CELSIUS = 8,
    AQUETH_STRENGTH_SCALE_GRAMS_PER_100_ML_AT_15_56_CELSIUS = 9,
    AQUETH_STRENGTH_SCALE_GRAMS_PER_100_ML_AT_60_FAHRENHEIT = 10
} aqueth_strength_scale;

/* Whether weighings are corrected to vacuum. */
typedef enum aqueth_medium {
    AQUETH_MEDIUM_VACUUM = 0,
    AQUETH_MEDIUM_AIR = 1
} aqueth_medium;

/* The side of the azeotrope. */
typedef enum aqueth_azeotrope_side {
    AQUETH_AZEOTROPE_SIDE_WATER_RICH = 0,
    AQUETH_AZEOTROPE_SIDE_ETHANOL_RICH = 1
} aqueth_azeotrope_side;

/* Kinds of sugar. */
typedef enum aqueth_sugar {
    AQUETH_SUGAR_SUCROSE = 0,
    AQUETH_SUGAR_HEXOSE = 1,
    AQUETH_SUGAR_GLUCOSE_MONOHYDRATE = 2
} aqueth_sugar;

/* Sugars of sweetened spirit. */
typedef enum aqueth_sweetener {
    AQUETH_SWEETENER_SUCROSE = 0,
    AQUETH_SWEETENER_GLUCOSE = 1,
    AQUETH_SWEETENER_FRUCTOSE = 2,
    AQUETH_SWEETENER_INVERT_SUGAR = 3
} aqueth_sweetener;



/* Why a question was refused. Set `size` to sizeof(aqueth_refusal) before the call. */
typedef struct aqueth_refusal {
    size_t size;  /* of this structure, as the caller knows it */
    int argument; /* a value of aqueth_argument */
    int limit;    /* a value of aqueth_limit: what sets the range */
    double value; /* the refused value */
    double lower; /* least accepted value */
    double upper; /* greatest accepted value; infinity where there is none */
} aqueth_refusal;

/* Version of the library that is linked: 10000 times the major number, 100 times the minor, and the patch. */
AQUETH_API int aqueth_version(void);

/* Words for a code, in English: "temperature", "OIML R 22"; NULL for a number that is no code. */
AQUETH_API const char* aqueth_argument_name(int argument);
AQUETH_API const char* aqueth_limit_name(int limit);

/* Writes what was refused as one sentence with a closing zero, cut to `room` characters.
 * Returns the characters that the whole sentence has, without the zero. */
AQUETH_API size_t aqueth_refusal_text(const aqueth_refusal* refusal, char* text, size_t room);

/* Density of a mixture, OIML R 22 to 40 °C, above it to the boiling point.
 * mass_fraction  0 to 1
 * celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_density_kg_m3(double mass_fraction, double celsius,
                                              double* kg_m3_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_density_kg_m3_array(size_t count, const double* mass_fraction,
                                                    ptrdiff_t mass_fraction_stride,
                                                    const double* celsius, ptrdiff_t celsius_stride,
                                                    double* kg_m3_result,
                                                    ptrdiff_t kg_m3_stride_of_result,
                                                    unsigned char* refused);

/* Mass fraction of ethanol from the density at a temperature, OIML R 22 to 40 °C.
 * kg_m3    770 to 1000 kg/m3
 * celsius  -20 to 100 °C */
AQUETH_API aqueth_status aqueth_mass_fraction_from_density(double kg_m3, double celsius,
                                                           double* mass_fraction_result,
                                                           aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_mass_fraction_from_density_array(size_t count, const double* kg_m3,
                                                                 ptrdiff_t kg_m3_stride,
                                                                 const double* celsius,
                                                                 ptrdiff_t celsius_stride,
                                                                 double* mass_fraction_result,
                                                                 ptrdiff_t mass_fraction_stride_of_result,
                                                                 unsigned char* refused);

/* Cubic expansion coefficient of a mixture, OIML R 22 to 40 °C.
 * mass_fraction  0 to 1
 * celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_thermal_expansion_per_kelvin(double mass_fraction, double celsius,
                                                             double* per_kelvin_result,
                                                             aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_thermal_expansion_per_kelvin_array(size_t count,
                                                                   const double* mass_fraction,
                                                                   ptrdiff_t mass_fraction_stride,
                                                                   const double* celsius,
                                                                   ptrdiff_t celsius_stride,
                                                                   double* per_kelvin_result,
                                                                   ptrdiff_t per_kelvin_stride_of_result,
                                                                   unsigned char* refused);

/* Molar volume of a mixture, OIML R 22 to 40 °C.
 * mass_fraction  0 to 1
 * celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_molar_volume_cm3_mol(double mass_fraction, double celsius,
                                                     double* cm3_mol_result,
                                                     aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_molar_volume_cm3_mol_array(size_t count,
                                                           const double* mass_fraction,
                                                           ptrdiff_t mass_fraction_stride,
                                                           const double* celsius,
                                                           ptrdiff_t celsius_stride,
                                                           double* cm3_mol_result,
                                                           ptrdiff_t cm3_mol_stride_of_result,
                                                           unsigned char* refused);

/* Change of volume on mixing one mole of mixture, OIML R 22 to 40 °C.
 * mass_fraction  0 to 1
 * celsius        0 to 78 °C */
AQUETH_API aqueth_status aqueth_excess_molar_volume_cm3_mol(double mass_fraction, double celsius,
                                                            double* cm3_mol_result,
                                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_excess_molar_volume_cm3_mol_array(size_t count,
                                                                  const double* mass_fraction,
                                                                  ptrdiff_t mass_fraction_stride,
                                                                  const double* celsius,
                                                                  ptrdiff_t celsius_stride,
                                                                  double* cm3_mol_result,
                                                                  ptrdiff_t cm3_mol_stride_of_result,
                                                                  unsigned char* refused);

/* Density of water, CIPM-2001.
 * celsius  0 to 40 °C */
AQUETH_API aqueth_status aqueth_water_density_cipm_2001_kg_m3(double celsius, double* kg_m3_result,
                                                              aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_water_density_cipm_2001_kg_m3_array(size_t count,
                                                                    const double* celsius,
                                                                    ptrdiff_t celsius_stride,
                                                                    double* kg_m3_result,
                                                                    ptrdiff_t kg_m3_stride_of_result,
                                                                    unsigned char* refused);

/* Freezing point of a mixture, CRC Handbook.
 * mass_fraction  0 to 0.68 */
AQUETH_API aqueth_status aqueth_freezing_celsius(double mass_fraction, double* celsius_result,
                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_freezing_celsius_array(size_t count, const double* mass_fraction,
                                                       ptrdiff_t mass_fraction_stride,
                                                       double* celsius_result,
                                                       ptrdiff_t celsius_stride_of_result,
                                                       unsigned char* refused);

/* A strength on another scale: by mass, by moles, by volume at a reference temperature, proof, concentration.
 * strength  0 to 1 of the scale
 * from      a value of aqueth_strength_scale
 * to        a value of aqueth_strength_scale */
AQUETH_API aqueth_status aqueth_convert_strength(double strength, int from, int to,
                                                 double* strength_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_convert_strength_array(size_t count, const double* strength,
                                                       ptrdiff_t strength_stride, int from, int to,
                                                       double* strength_result,
                                                       ptrdiff_t strength_stride_of_result,
                                                       unsigned char* refused);

/* Specific gravity t1/t2 of a mixture, in vacuo or as weighed in air.
 * mass_fraction   0 to 1
 * liquid_celsius  -20 to 100 °C
 * water_celsius   0 to 100 °C
 * weighed_in      a value of aqueth_medium */
AQUETH_API aqueth_status aqueth_specific_gravity_of(double mass_fraction, double liquid_celsius,
                                                    double water_celsius, int weighed_in,
                                                    double* specific_gravity_result,
                                                    aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_specific_gravity_of_array(size_t count, const double* mass_fraction,
                                                          ptrdiff_t mass_fraction_stride,
                                                          const double* liquid_celsius,
                                                          ptrdiff_t liquid_celsius_stride,
                                                          const double* water_celsius,
                                                          ptrdiff_t water_celsius_stride,
                                                          int weighed_in,
                                                          double* specific_gravity_result,
                                                          ptrdiff_t specific_gravity_stride_of_result,
                                                          unsigned char* refused);

/* Mass fraction from the specific gravity t1/t2.
 * specific_gravity  0.79 to 1
 * liquid_celsius    -20 to 100 °C
 * water_celsius     0 to 100 °C
 * weighed_in        a value of aqueth_medium */
AQUETH_API aqueth_status aqueth_mass_fraction_from_specific_gravity(double specific_gravity,
                                                                    double liquid_celsius,
                                                                    double water_celsius,
                                                                    int weighed_in,
                                                                    double* mass_fraction_result,
                                                                    aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_mass_fraction_from_specific_gravity_array(size_t count,
                                                                          const double* specific_gravity,
                                                                          ptrdiff_t specific_gravity_stride,
                                                                          const double* liquid_celsius,
                                                                          ptrdiff_t liquid_celsius_stride,
                                                                          const double* water_celsius,
                                                                          ptrdiff_t water_celsius_stride,
                                                                          int weighed_in,
                                                                          double* mass_fraction_result,
                                                                          ptrdiff_t mass_fraction_stride_of_result,
                                                                          unsigned char* refused);

/* What an ordinary balance shows for a mass in air, OIML D 28.
 * mass_kg  0 or more, kg
 * kg_m3    10 to 1000000 kg/m3 */
AQUETH_API aqueth_status aqueth_balance_indication_kg(double mass_kg, double kg_m3,
                                                      double* kg_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_balance_indication_kg_array(size_t count, const double* mass_kg,
                                                            ptrdiff_t mass_kg_stride,
                                                            const double* kg_m3,
                                                            ptrdiff_t kg_m3_stride,
                                                            double* kg_result,
                                                            ptrdiff_t kg_stride_of_result,
                                                            unsigned char* refused);

/* Mass from the indication of an ordinary balance, OIML D 28.
 * indication_kg  0 or more, kg
 * kg_m3          10 to 1000000 kg/m3 */
AQUETH_API aqueth_status aqueth_mass_from_balance_kg(double indication_kg, double kg_m3,
                                                     double* kg_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_mass_from_balance_kg_array(size_t count,
                                                           const double* indication_kg,
                                                           ptrdiff_t indication_kg_stride,
                                                           const double* kg_m3,
                                                           ptrdiff_t kg_m3_stride,
                                                           double* kg_result,
                                                           ptrdiff_t kg_stride_of_result,
                                                           unsigned char* refused);

/* Apparent density, mass per volume as weighed in air, OIML D 28.
 * kg_m3  10 to 1000000 kg/m3 */
AQUETH_API aqueth_status aqueth_density_in_air_kg_m3(double kg_m3, double* kg_m3_result,
                                                     aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_density_in_air_kg_m3_array(size_t count, const double* kg_m3,
                                                           ptrdiff_t kg_m3_stride,
                                                           double* kg_m3_result,
                                                           ptrdiff_t kg_m3_stride_of_result,
                                                           unsigned char* refused);

/* True strength, on the scale of the instrument, from what a hydrometer for spirit shows at a temperature.
 * reading           0 to 1 of the scale
 * celsius           -20 to 100 °C
 * scale             a value of aqueth_strength_scale
 * glass_per_kelvin  0 to 0.0003 1/K */
AQUETH_API aqueth_status aqueth_strength_from_reading(double reading, double celsius, int scale,
                                                      double glass_per_kelvin,
                                                      double* strength_result,
                                                      aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_strength_from_reading_array(size_t count, const double* reading,
                                                            ptrdiff_t reading_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride, int scale,
                                                            const double* glass_per_kelvin,
                                                            ptrdiff_t glass_per_kelvin_stride,
                                                            double* strength_result,
                                                            ptrdiff_t strength_stride_of_result,
                                                            unsigned char* refused);

/* What a hydrometer for spirit shows in a mixture at a temperature.
 * mass_fraction     0 to 1
 * celsius           -20 to 100 °C
 * scale             a value of aqueth_strength_scale
 * glass_per_kelvin  0 to 0.0003 1/K */
AQUETH_API aqueth_status aqueth_reading_of_strength(double mass_fraction, double celsius, int scale,
                                                    double glass_per_kelvin, double* reading_result,
                                                    aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_reading_of_strength_array(size_t count, const double* mass_fraction,
                                                          ptrdiff_t mass_fraction_stride,
                                                          const double* celsius,
                                                          ptrdiff_t celsius_stride, int scale,
                                                          const double* glass_per_kelvin,
                                                          ptrdiff_t glass_per_kelvin_stride,
                                                          double* reading_result,
                                                          ptrdiff_t reading_stride_of_result,
                                                          unsigned char* refused);

/* Density from what a density hydrometer shows at a temperature.
 * reading_kg_m3      500 to 1500 kg/m3
 * celsius            -20 to 100 °C
 * reference_celsius  0 to 40 °C
 * glass_per_kelvin   0 to 0.0003 1/K */
AQUETH_API aqueth_status aqueth_density_from_reading_kg_m3(double reading_kg_m3, double celsius,
                                                           double reference_celsius,
                                                           double glass_per_kelvin,
                                                           double* kg_m3_result,
                                                           aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_density_from_reading_kg_m3_array(size_t count,
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
                                                                 unsigned char* refused);

/* Mass of a volume of a mixture.
 * litres         0 or more, L
 * mass_fraction  0 to 1
 * celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_mass_of_volume_kg(double litres, double mass_fraction,
                                                  double celsius, double* kg_result,
                                                  aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_mass_of_volume_kg_array(size_t count, const double* litres,
                                                        ptrdiff_t litres_stride,
                                                        const double* mass_fraction,
                                                        ptrdiff_t mass_fraction_stride,
                                                        const double* celsius,
                                                        ptrdiff_t celsius_stride, double* kg_result,
                                                        ptrdiff_t kg_stride_of_result,
                                                        unsigned char* refused);

/* Volume of a mass of a mixture at a temperature.
 * mass_kg        0 or more, kg
 * mass_fraction  0 to 1
 * celsius        -20 to 100 °C
 * at_celsius     -20 to 100 °C */
AQUETH_API aqueth_status aqueth_volume_litres(double mass_kg, double mass_fraction, double celsius,
                                              double at_celsius, double* litres_result,
                                              aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_volume_litres_array(size_t count, const double* mass_kg,
                                                    ptrdiff_t mass_kg_stride,
                                                    const double* mass_fraction,
                                                    ptrdiff_t mass_fraction_stride,
                                                    const double* celsius, ptrdiff_t celsius_stride,
                                                    const double* at_celsius,
                                                    ptrdiff_t at_celsius_stride,
                                                    double* litres_result,
                                                    ptrdiff_t litres_stride_of_result,
                                                    unsigned char* refused);

/* Volume that the ethanol of a mixture has on its own at a reference temperature.
 * mass_kg            0 or more, kg
 * mass_fraction      0 to 1
 * celsius            -20 to 100 °C
 * reference_celsius  0 to 40 °C */
AQUETH_API aqueth_status aqueth_pure_alcohol_litres(double mass_kg, double mass_fraction,
                                                    double celsius, double reference_celsius,
                                                    double* litres_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_pure_alcohol_litres_array(size_t count, const double* mass_kg,
                                                          ptrdiff_t mass_kg_stride,
                                                          const double* mass_fraction,
                                                          ptrdiff_t mass_fraction_stride,
                                                          const double* celsius,
                                                          ptrdiff_t celsius_stride,
                                                          const double* reference_celsius,
                                                          ptrdiff_t reference_celsius_stride,
                                                          double* litres_result,
                                                          ptrdiff_t litres_stride_of_result,
                                                          unsigned char* refused);

/* Two liquids mixed without loss of heat.
 * a_kg             0 or more, kg
 * a_mass_fraction  0 to 1
 * a_celsius        0 to 100 °C
 * b_kg             0 or more, kg
 * b_mass_fraction  0 to 1
 * b_celsius        0 to 100 °C */
AQUETH_API aqueth_status aqueth_mix(double a_kg, double a_mass_fraction, double a_celsius,
                                    double b_kg, double b_mass_fraction, double b_celsius,
                                    double* product_kg_result, double* product_mass_fraction_result,
                                    double* product_celsius_result,
                                    double* contraction_litres_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_mix_array(size_t count, const double* a_kg, ptrdiff_t a_kg_stride,
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
                                          unsigned char* refused);

/* Water or weaker spirit to add to a spirit for a strength.
 * spirit_kg              0 or more, kg
 * spirit_mass_fraction   0 to 1
 * spirit_celsius         -20 to 100 °C
 * target_mass_fraction   0 to 1
 * diluent_mass_fraction  0 to 1
 * diluent_celsius        -20 to 100 °C
 * product_celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_dilute(double spirit_kg, double spirit_mass_fraction,
                                       double spirit_celsius, double target_mass_fraction,
                                       double diluent_mass_fraction, double diluent_celsius,
                                       double product_celsius, double* added_kg_result,
                                       double* product_kg_result,
                                       double* product_mass_fraction_result,
                                       double* product_celsius_result,
                                       double* contraction_litres_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_dilute_array(size_t count, const double* spirit_kg,
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
                                             unsigned char* refused);

/* Stronger spirit to add to a spirit for a strength.
 * weak_kg               0 or more, kg
 * weak_mass_fraction    0 to 1
 * weak_celsius          -20 to 100 °C
 * target_mass_fraction  0 to 1
 * stock_mass_fraction   0 to 1
 * stock_celsius         -20 to 100 °C
 * product_celsius       -20 to 100 °C */
AQUETH_API aqueth_status aqueth_fortify(double weak_kg, double weak_mass_fraction,
                                        double weak_celsius, double target_mass_fraction,
                                        double stock_mass_fraction, double stock_celsius,
                                        double product_celsius, double* added_kg_result,
                                        double* product_kg_result,
                                        double* product_mass_fraction_result,
                                        double* product_celsius_result,
                                        double* contraction_litres_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_fortify_array(size_t count, const double* weak_kg,
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
                                              unsigned char* refused);

/* Stock and water for a volume of a strength.
 * litres                 0 or more, L
 * product_celsius        -20 to 100 °C
 * target_mass_fraction   0 to 1
 * stock_mass_fraction    0 to 1
 * stock_celsius          -20 to 100 °C
 * diluent_mass_fraction  0 to 1
 * diluent_celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_make_up_by_volume(double litres, double product_celsius,
                                                  double target_mass_fraction,
                                                  double stock_mass_fraction, double stock_celsius,
                                                  double diluent_mass_fraction,
                                                  double diluent_celsius, double* spirit_kg_result,
                                                  double* diluent_kg_result,
                                                  aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_make_up_by_volume_array(size_t count, const double* litres,
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
                                                        unsigned char* refused);

/* Stock and water for a mass of a strength.
 * mass_kg                0 or more, kg
 * product_celsius        -20 to 100 °C
 * target_mass_fraction   0 to 1
 * stock_mass_fraction    0 to 1
 * stock_celsius          -20 to 100 °C
 * diluent_mass_fraction  0 to 1
 * diluent_celsius        -20 to 100 °C */
AQUETH_API aqueth_status aqueth_make_up_by_mass(double mass_kg, double product_celsius,
                                                double target_mass_fraction,
                                                double stock_mass_fraction, double stock_celsius,
                                                double diluent_mass_fraction,
                                                double diluent_celsius, double* spirit_kg_result,
                                                double* diluent_kg_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_make_up_by_mass_array(size_t count, const double* mass_kg,
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
                                                      unsigned char* refused);

/* Volume to fill at a temperature so that a bottle holds its label volume at the reference temperature.
 * label_litres       0.000000001 or more, L
 * mass_fraction      0 to 1
 * filling_celsius    -20 to 100 °C
 * reference_celsius  0 to 40 °C */
AQUETH_API aqueth_status aqueth_fill_litres(double label_litres, double mass_fraction,
                                            double filling_celsius, double reference_celsius,
                                            double* litres_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_fill_litres_array(size_t count, const double* label_litres,
                                                  ptrdiff_t label_litres_stride,
                                                  const double* mass_fraction,
                                                  ptrdiff_t mass_fraction_stride,
                                                  const double* filling_celsius,
                                                  ptrdiff_t filling_celsius_stride,
                                                  const double* reference_celsius,
                                                  ptrdiff_t reference_celsius_stride,
                                                  double* litres_result,
                                                  ptrdiff_t litres_stride_of_result,
                                                  unsigned char* refused);

/* Bottles that a spirit fills, and what is left.
 * mass_kg            0 or more, kg
 * mass_fraction      0 to 1
 * celsius            -20 to 100 °C
 * label_litres       0.000000001 or more, L
 * reference_celsius  0 to 40 °C */
AQUETH_API aqueth_status aqueth_fill_bottles(double mass_kg, double mass_fraction, double celsius,
                                             double label_litres, double reference_celsius,
                                             double* count_result, double* fill_litres_result,
                                             double* fill_mass_kg_result,
                                             double* remainder_kg_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_fill_bottles_array(size_t count, const double* mass_kg,
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
                                                   unsigned char* refused);

/* Boiling liquid and its vapour at a temperature.
 * mole_fraction  0 to 1
 * celsius        0.01 to 120 °C */
AQUETH_API aqueth_status aqueth_bubble_point_at_celsius(double mole_fraction, double celsius,
                                                        double* celsius_result, double* kpa_result,
                                                        double* liquid_mole_fraction_result,
                                                        double* vapour_mole_fraction_result,
                                                        double* relative_volatility_result,
                                                        aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_bubble_point_at_celsius_array(size_t count,
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
                                                              unsigned char* refused);

/* Boiling liquid and its vapour at a pressure.
 * mole_fraction  0 to 1
 * kpa            1.7 to 190 kPa */
AQUETH_API aqueth_status aqueth_bubble_point_at_kpa(double mole_fraction, double kpa,
                                                    double* celsius_result, double* kpa_result,
                                                    double* liquid_mole_fraction_result,
                                                    double* vapour_mole_fraction_result,
                                                    double* relative_volatility_result,
                                                    aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_bubble_point_at_kpa_array(size_t count, const double* mole_fraction,
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
                                                          unsigned char* refused);

/* Vapour and the first liquid to condense from it at a temperature.
 * mole_fraction  0 to 1
 * celsius        0.01 to 120 °C */
AQUETH_API aqueth_status aqueth_dew_point_at_celsius(double mole_fraction, double celsius,
                                                     double* celsius_result, double* kpa_result,
                                                     double* liquid_mole_fraction_result,
                                                     double* vapour_mole_fraction_result,
                                                     double* relative_volatility_result,
                                                     aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_dew_point_at_celsius_array(size_t count,
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
                                                           unsigned char* refused);

/* Vapour and the first liquid to condense from it at a pressure.
 * mole_fraction  0 to 1
 * kpa            1.7 to 190 kPa */
AQUETH_API aqueth_status aqueth_dew_point_at_kpa(double mole_fraction, double kpa,
                                                 double* celsius_result, double* kpa_result,
                                                 double* liquid_mole_fraction_result,
                                                 double* vapour_mole_fraction_result,
                                                 double* relative_volatility_result,
                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_dew_point_at_kpa_array(size_t count, const double* mole_fraction,
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
                                                       unsigned char* refused);

/* Azeotrope at a temperature.
 * celsius  29 to 120 °C */
AQUETH_API aqueth_status aqueth_azeotrope_at_celsius(double celsius, double* celsius_result,
                                                     double* kpa_result,
                                                     double* liquid_mole_fraction_result,
                                                     double* vapour_mole_fraction_result,
                                                     double* relative_volatility_result,
                                                     aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_azeotrope_at_celsius_array(size_t count, const double* celsius,
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
                                                           unsigned char* refused);

/* Azeotrope at a pressure.
 * kpa  11 to 400 kPa */
AQUETH_API aqueth_status aqueth_azeotrope_at_kpa(double kpa, double* celsius_result,
                                                 double* kpa_result,
                                                 double* liquid_mole_fraction_result,
                                                 double* vapour_mole_fraction_result,
                                                 double* relative_volatility_result,
                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_azeotrope_at_kpa_array(size_t count, const double* kpa,
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
                                                       unsigned char* refused);

/* Liquid and vapour that coexist at a temperature and a pressure, on one side of the azeotrope.
 * celsius  0.01 to 120 °C
 * kpa      0.7 to 400 kPa
 * side     a value of aqueth_azeotrope_side */
AQUETH_API aqueth_status aqueth_coexistence(double celsius, double kpa, int side,
                                            double* celsius_result, double* kpa_result,
                                            double* liquid_mole_fraction_result,
                                            double* vapour_mole_fraction_result,
                                            double* relative_volatility_result,
                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_coexistence_array(size_t count, const double* celsius,
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
                                                  unsigned char* refused);

/* How a mixture parts into liquid and vapour; a mole fraction is not a number where there is none.
 * mole_fraction  0 to 1
 * celsius        0.01 to 120 °C
 * kpa            0.000001 to 1000000 kPa */
AQUETH_API aqueth_status aqueth_isothermal_flash(double mole_fraction, double celsius, double kpa,
                                                 double* vapour_fraction_result,
                                                 double* liquid_mole_fraction_result,
                                                 double* vapour_mole_fraction_result,
                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_isothermal_flash_array(size_t count, const double* mole_fraction,
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
                                                       unsigned char* refused);

/* Activity coefficients in the liquid.
 * mole_fraction  0 to 1
 * celsius        0.01 to 120 °C */
AQUETH_API aqueth_status aqueth_activity_coefficients_of(double mole_fraction, double celsius,
                                                         double* ethanol_result,
                                                         double* water_result,
                                                         aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_activity_coefficients_of_array(size_t count,
                                                               const double* mole_fraction,
                                                               ptrdiff_t mole_fraction_stride,
                                                               const double* celsius,
                                                               ptrdiff_t celsius_stride,
                                                               double* ethanol_result,
                                                               ptrdiff_t ethanol_stride_of_result,
                                                               double* water_result,
                                                               ptrdiff_t water_stride_of_result,
                                                               unsigned char* refused);

/* Heat of mixing, excess enthalpy.
 * mass_fraction  0 to 1
 * celsius        0 to 116.85 °C */
AQUETH_API aqueth_status aqueth_excess_enthalpy_j_mol(double mass_fraction, double celsius,
                                                      double* j_mol_result,
                                                      aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_excess_enthalpy_j_mol_array(size_t count,
                                                            const double* mass_fraction,
                                                            ptrdiff_t mass_fraction_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride,
                                                            double* j_mol_result,
                                                            ptrdiff_t j_mol_stride_of_result,
                                                            unsigned char* refused);

/* Specific heat capacity of a liquid mixture.
 * mass_fraction  0 to 1
 * celsius        0 to 116.85 °C */
AQUETH_API aqueth_status aqueth_specific_heat_capacity_j_kg_k(double mass_fraction, double celsius,
                                                              double* j_kg_k_result,
                                                              aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_specific_heat_capacity_j_kg_k_array(size_t count,
                                                                    const double* mass_fraction,
                                                                    ptrdiff_t mass_fraction_stride,
                                                                    const double* celsius,
                                                                    ptrdiff_t celsius_stride,
                                                                    double* j_kg_k_result,
                                                                    ptrdiff_t j_kg_k_stride_of_result,
                                                                    unsigned char* refused);

/* Specific enthalpy of a liquid mixture, pure liquids zero at 0 °C.
 * mass_fraction  0 to 1
 * celsius        0 to 116.85 °C */
AQUETH_API aqueth_status aqueth_enthalpy_of_liquid_j_kg(double mass_fraction, double celsius,
                                                        double* j_kg_result,
                                                        aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_enthalpy_of_liquid_j_kg_array(size_t count,
                                                              const double* mass_fraction,
                                                              ptrdiff_t mass_fraction_stride,
                                                              const double* celsius,
                                                              ptrdiff_t celsius_stride,
                                                              double* j_kg_result,
                                                              ptrdiff_t j_kg_stride_of_result,
                                                              unsigned char* refused);

/* Specific enthalpy of a vapour, pure liquids zero at 0 °C.
 * mass_fraction  0 to 1
 * celsius        0 to 116.85 °C
 * kpa            0 to 170 kPa */
AQUETH_API aqueth_status aqueth_enthalpy_of_vapour_j_kg(double mass_fraction, double celsius,
                                                        double kpa, double* j_kg_result,
                                                        aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_enthalpy_of_vapour_j_kg_array(size_t count,
                                                              const double* mass_fraction,
                                                              ptrdiff_t mass_fraction_stride,
                                                              const double* celsius,
                                                              ptrdiff_t celsius_stride,
                                                              const double* kpa,
                                                              ptrdiff_t kpa_stride,
                                                              double* j_kg_result,
                                                              ptrdiff_t j_kg_stride_of_result,
                                                              unsigned char* refused);

/* Temperature of a liquid mixture from its specific enthalpy.
 * mass_fraction  0 to 1
 * j_kg           0 to 500000 J/kg */
AQUETH_API aqueth_status aqueth_liquid_celsius_from_enthalpy(double mass_fraction, double j_kg,
                                                             double* celsius_result,
                                                             aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_liquid_celsius_from_enthalpy_array(size_t count,
                                                                   const double* mass_fraction,
                                                                   ptrdiff_t mass_fraction_stride,
                                                                   const double* j_kg,
                                                                   ptrdiff_t j_kg_stride,
                                                                   double* celsius_result,
                                                                   ptrdiff_t celsius_stride_of_result,
                                                                   unsigned char* refused);

/* Weight per volume in air at 60 °F.
 * us_proof  0 to 200 US proof */
AQUETH_API aqueth_status aqueth_weight_per_volume_kg_m3(double us_proof, double* kg_m3_result,
                                                        aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_weight_per_volume_kg_m3_array(size_t count, const double* us_proof,
                                                              ptrdiff_t us_proof_stride,
                                                              double* kg_m3_result,
                                                              ptrdiff_t kg_m3_stride_of_result,
                                                              unsigned char* refused);

/* US gallons at 60 °F in a pound weighed in air.
 * us_proof  0 to 200 US proof */
AQUETH_API aqueth_status aqueth_wine_gallons_per_pound(double us_proof, double* gallons_result,
                                                       aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_wine_gallons_per_pound_array(size_t count, const double* us_proof,
                                                             ptrdiff_t us_proof_stride,
                                                             double* gallons_result,
                                                             ptrdiff_t gallons_stride_of_result,
                                                             unsigned char* refused);

/* Proof gallons in a pound weighed in air.
 * us_proof  0 to 200 US proof */
AQUETH_API aqueth_status aqueth_proof_gallons_per_pound(double us_proof, double* gallons_result,
                                                        aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_proof_gallons_per_pound_array(size_t count, const double* us_proof,
                                                              ptrdiff_t us_proof_stride,
                                                              double* gallons_result,
                                                              ptrdiff_t gallons_stride_of_result,
                                                              unsigned char* refused);

/* Factor from a volume at a temperature to the volume at 60 °F.
 * us_proof  0 to 200 US proof
 * celsius   -20 to 100 °C */
AQUETH_API aqueth_status aqueth_volume_factor_to_60_fahrenheit(double us_proof, double celsius,
                                                               double* factor_result,
                                                               aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_volume_factor_to_60_fahrenheit_array(size_t count,
                                                                     const double* us_proof,
                                                                     ptrdiff_t us_proof_stride,
                                                                     const double* celsius,
                                                                     ptrdiff_t celsius_stride,
                                                                     double* factor_result,
                                                                     ptrdiff_t factor_stride_of_result,
                                                                     unsigned char* refused);

/* Air pressure at an altitude, ICAO standard atmosphere.
 * altitude_metres  -500 to 5000 m */
AQUETH_API aqueth_status aqueth_air_pressure_kpa(double altitude_metres, double* kpa_result,
                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_air_pressure_kpa_array(size_t count, const double* altitude_metres,
                                                       ptrdiff_t altitude_metres_stride,
                                                       double* kpa_result,
                                                       ptrdiff_t kpa_stride_of_result,
                                                       unsigned char* refused);

/* Density of a sugar solution.
 * plato    0 to 70 °P
 * celsius  0 to 80 °C */
AQUETH_API aqueth_status aqueth_sucrose_density_kg_m3(double plato, double celsius,
                                                      double* kg_m3_result,
                                                      aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_sucrose_density_kg_m3_array(size_t count, const double* plato,
                                                            ptrdiff_t plato_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride,
                                                            double* kg_m3_result,
                                                            ptrdiff_t kg_m3_stride_of_result,
                                                            unsigned char* refused);

/* Specific gravity 20/20 °C of an extract.
 * plato  -10 to 70 °P */
AQUETH_API aqueth_status aqueth_specific_gravity_from_plato(double plato,
                                                            double* specific_gravity_result,
                                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_specific_gravity_from_plato_array(size_t count, const double* plato,
                                                                  ptrdiff_t plato_stride,
                                                                  double* specific_gravity_result,
                                                                  ptrdiff_t specific_gravity_stride_of_result,
                                                                  unsigned char* refused);

/* Extract from the specific gravity 20/20 °C.
 * specific_gravity  0.97 to 1.34 */
AQUETH_API aqueth_status aqueth_plato_from_specific_gravity(double specific_gravity,
                                                            double* plato_result,
                                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_plato_from_specific_gravity_array(size_t count,
                                                                  const double* specific_gravity,
                                                                  ptrdiff_t specific_gravity_stride,
                                                                  double* plato_result,
                                                                  ptrdiff_t plato_stride_of_result,
                                                                  unsigned char* refused);

/* Density of a wash of ethanol, water and extract.
 * ethanol_mass_fraction  0 to 1
 * plato                  0 to 70 °P
 * celsius                0 to 80 °C */
AQUETH_API aqueth_status aqueth_wash_density_kg_m3(double ethanol_mass_fraction, double plato,
                                                   double celsius, double* kg_m3_result,
                                                   aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_wash_density_kg_m3_array(size_t count,
                                                         const double* ethanol_mass_fraction,
                                                         ptrdiff_t ethanol_mass_fraction_stride,
                                                         const double* plato,
                                                         ptrdiff_t plato_stride,
                                                         const double* celsius,
                                                         ptrdiff_t celsius_stride,
                                                         double* kg_m3_result,
                                                         ptrdiff_t kg_m3_stride_of_result,
                                                         unsigned char* refused);

/* Real extract from original and apparent extract, Balling.
 * original_plato  0 to 70 °P
 * apparent_plato  -10 to 70 °P */
AQUETH_API aqueth_status aqueth_real_extract_plato(double original_plato, double apparent_plato,
                                                   double* plato_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_real_extract_plato_array(size_t count, const double* original_plato,
                                                         ptrdiff_t original_plato_stride,
                                                         const double* apparent_plato,
                                                         ptrdiff_t apparent_plato_stride,
                                                         double* plato_result,
                                                         ptrdiff_t plato_stride_of_result,
                                                         unsigned char* refused);

/* Apparent attenuation.
 * original_plato  0.01 to 70 °P
 * now_plato       -10 to 70 °P */
AQUETH_API aqueth_status aqueth_apparent_attenuation(double original_plato, double now_plato,
                                                     double* attenuation_result,
                                                     aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_apparent_attenuation_array(size_t count,
                                                           const double* original_plato,
                                                           ptrdiff_t original_plato_stride,
                                                           const double* now_plato,
                                                           ptrdiff_t now_plato_stride,
                                                           double* attenuation_result,
                                                           ptrdiff_t attenuation_stride_of_result,
                                                           unsigned char* refused);

/* Alcohol by mass of a fermented wash, Balling.
 * original_plato  0 to 70 °P
 * real_plato      0 to 70 °P */
AQUETH_API aqueth_status aqueth_mass_fraction_by_balling(double original_plato, double real_plato,
                                                         double* mass_fraction_result,
                                                         aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_mass_fraction_by_balling_array(size_t count,
                                                               const double* original_plato,
                                                               ptrdiff_t original_plato_stride,
                                                               const double* real_plato,
                                                               ptrdiff_t real_plato_stride,
                                                               double* mass_fraction_result,
                                                               ptrdiff_t mass_fraction_stride_of_result,
                                                               unsigned char* refused);

/* Alcohol by volume from the fall of the gravity.
 * original_gravity  1 to 1.15
 * final_gravity     0.98 to 1.15 */
AQUETH_API aqueth_status aqueth_volume_fraction_by_gravity_fall(double original_gravity,
                                                                double final_gravity,
                                                                double* volume_fraction_result,
                                                                aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_volume_fraction_by_gravity_fall_array(size_t count,
                                                                      const double* original_gravity,
                                                                      ptrdiff_t original_gravity_stride,
                                                                      const double* final_gravity,
                                                                      ptrdiff_t final_gravity_stride,
                                                                      double* volume_fraction_result,
                                                                      ptrdiff_t volume_fraction_stride_of_result,
                                                                      unsigned char* refused);

/* Strength and extract of a wash from its gravities.
 * original_gravity  1 to 1.15
 * final_gravity     0.98 to 1.15 */
AQUETH_API aqueth_status aqueth_fermented_wash_from_gravity(double original_gravity,
                                                            double final_gravity,
                                                            double* volume_fraction_result,
                                                            double* ethanol_mass_fraction_result,
                                                            double* plato_result,
                                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_fermented_wash_from_gravity_array(size_t count,
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
                                                                  unsigned char* refused);

/* Sugar and water for a wash of a wanted strength and volume.
 * litres           0 or more, L
 * volume_fraction  0 to 0.2
 * kind             a value of aqueth_sugar
 * yield            0.5 to 1 */
AQUETH_API aqueth_status aqueth_sugar_needed(double litres, double volume_fraction, int kind,
                                             double yield, double* least_kg_result,
                                             double* practical_kg_result,
                                             double* carbon_dioxide_kg_result,
                                             double* original_plato_result,
                                             double* specific_gravity_result,
                                             double* water_kg_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_sugar_needed_array(size_t count, const double* litres,
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
                                                   unsigned char* refused);

/* Density of ethanol, water and sugar by added volumes; checked by analyses of wines (to 14 % vol, 22 g/L) and beers (5 % vol, 66 g/L) only.
 * ethanol_mass_fraction  0 to 0.5
 * sugar_mass_fraction    0 to 0.4
 * kind                   a value of aqueth_sweetener
 * celsius                0 to 40 °C */
AQUETH_API aqueth_status aqueth_sweet_density_kg_m3(double ethanol_mass_fraction,
                                                    double sugar_mass_fraction, int kind,
                                                    double celsius, double* kg_m3_result,
                                                    aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_sweet_density_kg_m3_array(size_t count,
                                                          const double* ethanol_mass_fraction,
                                                          ptrdiff_t ethanol_mass_fraction_stride,
                                                          const double* sugar_mass_fraction,
                                                          ptrdiff_t sugar_mass_fraction_stride,
                                                          int kind, const double* celsius,
                                                          ptrdiff_t celsius_stride,
                                                          double* kg_m3_result,
                                                          ptrdiff_t kg_m3_stride_of_result,
                                                          unsigned char* refused);

/* Mass fractions of ethanol and sugar in a sweetened spirit of a strength.
 * volume_fraction  0 to 0.6
 * g_per_litre      0 to 500 g/L
 * kind             a value of aqueth_sweetener */
AQUETH_API aqueth_status aqueth_sweet_composition_from_strength(double volume_fraction,
                                                                double g_per_litre, int kind,
                                                                double* ethanol_mass_fraction_result,
                                                                double* sugar_mass_fraction_result,
                                                                aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_sweet_composition_from_strength_array(size_t count,
                                                                      const double* volume_fraction,
                                                                      ptrdiff_t volume_fraction_stride,
                                                                      const double* g_per_litre,
                                                                      ptrdiff_t g_per_litre_stride,
                                                                      int kind,
                                                                      double* ethanol_mass_fraction_result,
                                                                      ptrdiff_t ethanol_mass_fraction_stride_of_result,
                                                                      double* sugar_mass_fraction_result,
                                                                      ptrdiff_t sugar_mass_fraction_stride_of_result,
                                                                      unsigned char* refused);

/* Strength of a sweetened spirit from its density and its sugar.
 * kg_m3        900 to 1150 kg/m3
 * celsius      0 to 40 °C
 * g_per_litre  0 to 400 g/L
 * kind         a value of aqueth_sweetener */
AQUETH_API aqueth_status aqueth_strength_behind_sugar(double kg_m3, double celsius,
                                                      double g_per_litre, int kind,
                                                      double* volume_fraction_result,
                                                      aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_strength_behind_sugar_array(size_t count, const double* kg_m3,
                                                            ptrdiff_t kg_m3_stride,
                                                            const double* celsius,
                                                            ptrdiff_t celsius_stride,
                                                            const double* g_per_litre,
                                                            ptrdiff_t g_per_litre_stride, int kind,
                                                            double* volume_fraction_result,
                                                            ptrdiff_t volume_fraction_stride_of_result,
                                                            unsigned char* refused);

/* Sugar of a sweetened spirit from its density at 20 °C and its strength.
 * kg_m3            900 to 1150 kg/m3
 * volume_fraction  0 to 0.6
 * kind             a value of aqueth_sweetener */
AQUETH_API aqueth_status aqueth_sugar_behind_density_g_per_litre(double kg_m3,
                                                                 double volume_fraction, int kind,
                                                                 double* g_per_litre_result,
                                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_sugar_behind_density_g_per_litre_array(size_t count,
                                                                       const double* kg_m3,
                                                                       ptrdiff_t kg_m3_stride,
                                                                       const double* volume_fraction,
                                                                       ptrdiff_t volume_fraction_stride,
                                                                       int kind,
                                                                       double* g_per_litre_result,
                                                                       ptrdiff_t g_per_litre_stride_of_result,
                                                                       unsigned char* refused);

/* Doubt of a strength read from a density, for 1 % in the volume of the sugar.
 * volume_fraction  0 to 0.6
 * g_per_litre      0 to 400 g/L
 * kind             a value of aqueth_sweetener
 * celsius          0 to 40 °C */
AQUETH_API aqueth_status aqueth_strength_doubt_from_sugar(double volume_fraction,
                                                          double g_per_litre, int kind,
                                                          double celsius,
                                                          double* volume_fraction_result,
                                                          aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_strength_doubt_from_sugar_array(size_t count,
                                                                const double* volume_fraction,
                                                                ptrdiff_t volume_fraction_stride,
                                                                const double* g_per_litre,
                                                                ptrdiff_t g_per_litre_stride,
                                                                int kind, const double* celsius,
                                                                ptrdiff_t celsius_stride,
                                                                double* volume_fraction_result,
                                                                ptrdiff_t volume_fraction_stride_of_result,
                                                                unsigned char* refused);

/* Dry extract by the relation of Tabarie, from density at 20 °C and strength.
 * kg_m3            970 to 1100 kg/m3
 * volume_fraction  0 to 0.22 */
AQUETH_API aqueth_status aqueth_tabarie_extract_g_per_litre(double kg_m3, double volume_fraction,
                                                            double* g_per_litre_result,
                                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_tabarie_extract_g_per_litre_array(size_t count, const double* kg_m3,
                                                                  ptrdiff_t kg_m3_stride,
                                                                  const double* volume_fraction,
                                                                  ptrdiff_t volume_fraction_stride,
                                                                  double* g_per_litre_result,
                                                                  ptrdiff_t g_per_litre_stride_of_result,
                                                                  unsigned char* refused);

/* Water and sugar for a liqueur of a strength and a sugar concentration at 20 °C.
 * spirit_kg             0 or more, kg
 * spirit_mass_fraction  0.2 to 1
 * spirit_celsius        0 to 40 °C
 * volume_fraction       0 to 0.5
 * g_per_litre           0 to 400 g/L
 * kind                  a value of aqueth_sweetener */
AQUETH_API aqueth_status aqueth_sweeten(double spirit_kg, double spirit_mass_fraction,
                                        double spirit_celsius, double volume_fraction,
                                        double g_per_litre, int kind, double* water_kg_result,
                                        double* sugar_kg_result, double* litres_result,
                                        double* contraction_litres_result,
                                        double* sugar_litres_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_sweeten_array(size_t count, const double* spirit_kg,
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
                                              unsigned char* refused);

/* Strength from a sample that was distilled and made up with water.
 * sample_litres       0.01 to 1 L
 * sample_celsius      0 to 40 °C
 * distillate_litres   0.01 to 1 L
 * mass_fraction       0 to 1
 * distillate_celsius  0 to 40 °C
 * lost                0 to 0.1 */
AQUETH_API aqueth_status aqueth_strength_of_distilled_sample(double sample_litres,
                                                             double sample_celsius,
                                                             double distillate_litres,
                                                             double mass_fraction,
                                                             double distillate_celsius, double lost,
                                                             double* volume_fraction_result,
                                                             aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_strength_of_distilled_sample_array(size_t count,
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
                                                                   unsigned char* refused);

/* Refractive index at which a refractometer shows degrees Brix, 20 °C, 589 nm.
 * brix  0 to 70 °Bx */
AQUETH_API aqueth_status aqueth_refractive_index_from_brix(double brix,
                                                           double* refractive_index_result,
                                                           aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_refractive_index_from_brix_array(size_t count, const double* brix,
                                                                 ptrdiff_t brix_stride,
                                                                 double* refractive_index_result,
                                                                 ptrdiff_t refractive_index_stride_of_result,
                                                                 unsigned char* refused);

/* Degrees Brix that a refractometer shows.
 * refractive_index  1.333 to 1.465 */
AQUETH_API aqueth_status aqueth_brix_from_refractive_index(double refractive_index,
                                                           double* brix_result,
                                                           aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_brix_from_refractive_index_array(size_t count,
                                                                 const double* refractive_index,
                                                                 ptrdiff_t refractive_index_stride,
                                                                 double* brix_result,
                                                                 ptrdiff_t brix_stride_of_result,
                                                                 unsigned char* refused);

/* Refractive index of ethanol, water and sugar at 20 °C, 589 nm.
 * ethanol_mass_fraction  0 to 0.98
 * sugar_mass_fraction    0 to 0.4
 * kind                   a value of aqueth_sweetener */
AQUETH_API aqueth_status aqueth_refractive_index(double ethanol_mass_fraction,
                                                 double sugar_mass_fraction, int kind,
                                                 double* refractive_index_result,
                                                 aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_refractive_index_array(size_t count,
                                                       const double* ethanol_mass_fraction,
                                                       ptrdiff_t ethanol_mass_fraction_stride,
                                                       const double* sugar_mass_fraction,
                                                       ptrdiff_t sugar_mass_fraction_stride,
                                                       int kind, double* refractive_index_result,
                                                       ptrdiff_t refractive_index_stride_of_result,
                                                       unsigned char* refused);

/* Alcohol and extract of a wash from density and refractive index at 20 °C.
 * kg_m3             960 to 1080 kg/m3
 * refractive_index  1.333 to 1.38 */
AQUETH_API aqueth_status aqueth_wash_from_density_and_index(double kg_m3, double refractive_index,
                                                            double* volume_fraction_result,
                                                            double* ethanol_mass_fraction_result,
                                                            double* plato_result,
                                                            aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_wash_from_density_and_index_array(size_t count, const double* kg_m3,
                                                                  ptrdiff_t kg_m3_stride,
                                                                  const double* refractive_index,
                                                                  ptrdiff_t refractive_index_stride,
                                                                  double* volume_fraction_result,
                                                                  ptrdiff_t volume_fraction_stride_of_result,
                                                                  double* ethanol_mass_fraction_result,
                                                                  ptrdiff_t ethanol_mass_fraction_stride_of_result,
                                                                  double* plato_result,
                                                                  ptrdiff_t plato_stride_of_result,
                                                                  unsigned char* refused);

/* Alcohol and extract of a wash from its original gravity and a refractometer.
 * original_gravity  1 to 1.13
 * brix              0 to 30 °Bx */
AQUETH_API aqueth_status aqueth_wash_from_original_gravity_and_brix(double original_gravity,
                                                                    double brix,
                                                                    double* volume_fraction_result,
                                                                    double* ethanol_mass_fraction_result,
                                                                    double* plato_result,
                                                                    aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_wash_from_original_gravity_and_brix_array(size_t count,
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
                                                                          unsigned char* refused);

/* Methanol put in place of ethanol in an unsweetened spirit; finds substitution, not legal limits.
 * kg_m3             795 to 989 kg/m3
 * refractive_index  1.33 to 1.37 */
AQUETH_API aqueth_status aqueth_methanol_from_density_and_index(double kg_m3,
                                                                double refractive_index,
                                                                double* share_result,
                                                                double* alcohol_mass_fraction_result,
                                                                double* share_per_index_result,
                                                                aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_methanol_from_density_and_index_array(size_t count,
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
                                                                      unsigned char* refused);

/* Parcels mixed without loss of heat.
 * count          parcels, 1 or more; each array has so many elements, one after the other
 * kg             masses of the parcels, 0 or more, one of them above 0
 * mass_fraction  their mass fractions of ethanol, 0 to 1
 * celsius        their temperatures, 0 to 40 °C */
AQUETH_API aqueth_status aqueth_mix_parcels(size_t count, const double* kg, const double* mass_fraction,
                                            const double* celsius, double* product_kg_result,
                                            double* product_mass_fraction_result,
                                            double* product_celsius_result,
                                            double* contraction_litres_result, aqueth_refusal* refusal);

/* Runs of a still. Fill in options, compute the run with aqueth_run_new, read its results, give it back with
 * aqueth_run_free. A run does not change: any thread may read it.
 * Every structure begins with its size: set `size` to its sizeof. Of an array, set that of the first element. */

/* What ends a fraction or the run. The unit of the value is in brackets. */
typedef enum aqueth_watched {
    AQUETH_WATCHED_STILL_STRENGTH = 0,      /* strength of the liquid in the pot, falling [on the scale given] */
    AQUETH_WATCHED_BOILING_TEMPERATURE = 1, /* of the liquid in the pot, rising [°C] */
    AQUETH_WATCHED_DISTILLATE_STRENGTH = 2, /* at the moment, falling [on the scale given] */
    AQUETH_WATCHED_KEPT_STRENGTH = 3,       /* the greatest reflux no longer keeps the strength [no value] */
    AQUETH_WATCHED_COLLECTED_VOLUME = 4,    /* distillate at 20 °C since the start of fraction or run [L] */
    AQUETH_WATCHED_ELAPSED_TIME = 5,        /* since the start of fraction or boiling [min] */
    AQUETH_WATCHED_HEAD_TEMPERATURE = 6,    /* of the vapour at the head, rising [°C] */
    AQUETH_WATCHED_READING_AT_SPOUT = 7     /* of an alcoholometer at spout_celsius, falling [volume fraction] */
} aqueth_watched;

/* The reflux from a total condenser. */
typedef enum aqueth_reflux {
    AQUETH_REFLUX_CONSTANT_RATIO = 0,    /* at reflux_ratio; 0 is none */
    AQUETH_REFLUX_CONSTANT_STRENGTH = 1, /* rises to keep kept_strength, up to reflux_ratio */
    AQUETH_REFLUX_TAKE_OFF = 2,          /* all that condenses beyond take_off_litres_per_minute */
    AQUETH_REFLUX_AS_BEFORE = 3          /* of a step of the plan: it does not change the reflux */
} aqueth_reflux;

/* What the head of a still does with the vapour. */
typedef enum aqueth_head {
    AQUETH_HEAD_TOTAL_CONDENSER = 0,           /* condenses all, and returns a reflux */
    AQUETH_HEAD_PARTIAL_CONDENSER = 1,         /* condenses head_share, which runs back; takes the rest */
    AQUETH_HEAD_PARTIAL_CONDENSER_BY_WATER = 2 /* the same, by the heat that its cooling water takes up */
} aqueth_head;

/* How the flows inside a column are found. */
typedef enum aqueth_flow_model {
    AQUETH_FLOW_MODEL_CONSTANT_MOLAR_OVERFLOW = 0, /* equal flows on all stages */
    AQUETH_FLOW_MODEL_ENTHALPY_BALANCE = 1         /* from the enthalpies, stage by stage */
} aqueth_flow_model;

/* An end of a fraction, or of the run. */
typedef struct aqueth_condition {
    size_t size;
    int watched;  /* a value of aqueth_watched */
    int scale;    /* of a strength: a value of aqueth_strength_scale */
    double value; /* the value at which it is met */
    int discard;  /* of a fraction: 1 if it is discarded, 0 if it is kept */
} aqueth_condition;

/* A change while a run goes on. */
typedef struct aqueth_plan_step {
    size_t size;
    const aqueth_condition* when;       /* volume and time count from the start of the boiling; nothing is discarded */
    double power_watts;                 /* heat given to the pot from then on; 0: as before */
    int reflux;                         /* from then on: a value of aqueth_reflux */
    int kept_scale;                     /* scale of kept_strength: a value of aqueth_strength_scale */
    double reflux_ratio;                /* as in aqueth_run_options, and the following */
    double kept_strength;
    double take_off_litres_per_minute;
} aqueth_plan_step;

/* Charge, still and plan of a run. */
typedef struct aqueth_run_options {
    size_t size;
    double charge_kg;                    /* mass of the charge with its extract */
    double charge_ethanol_mass_fraction; /* of ethanol in the charge with its extract; weaker than the azeotrope */
    double charge_plato;                 /* extract of the charge, 0 to 50 °P */
    double charge_celsius;               /* temperature of the charge, 20 °C unless set */
    double power_watts;                  /* heat given to the pot, 0.001 W or more */
    double heat_capacity_j_k;            /* of the empty pot, J/K */
    double heat_loss_w_k;                /* of the pot for each kelvin above the room, W/K */
    double room_celsius;                 /* temperature of the room, 20 °C unless set */
    double stages;                       /* above the boiler, 0 to 100: theoretical stages, or plates */
    double murphree_efficiency;          /* of plates, 0.01 to below 1; 1 for theoretical stages, unless set */
    double neck_share;                   /* share of the vapour that condenses in the neck, 0 to 0.9 */
    int flow_model;                      /* a value of aqueth_flow_model */
    int reflux;                          /* a value of aqueth_reflux */
    double reflux_ratio;                 /* liquid returned per distillate taken, 0 to 1000 */
    double kept_strength;                /* strength of the distillate to keep */
    int kept_scale;                      /* its scale: a value of aqueth_strength_scale */
    int points;                          /* states to record, evenly over the moles distilled: 0, or 2 to 100000 */
    double kpa;                          /* absolute pressure, 5 to 170 kPa; 101.325 kPa unless set */
    double product_celsius;              /* final temperature of fractions and residue, 20 °C unless set */
    const aqueth_condition* cuts;        /* ends of fractions in their order; may be NULL if there are none */
    size_t cut_count;                    /* 0 to 1000 */
    const aqueth_condition* ends;        /* the run ends with the first of these that is met */
    size_t end_count;                    /* 1 to 20 */
    /* since the apparatus has a head */
    double neck_loss_w_k;                /* of the neck for each kelvin above the room, W/K; 0 with a neck_share */
    double holdup_litres;                /* liquid on each plate or stage, at 20 °C */
    double head_holdup_litres;           /* liquid in condenser and reflux line, at 20 °C */
    double head_share;                   /* share of the vapour that a partial condenser condenses, 0 to 0.99 */
    double water_litres_per_minute;      /* cooling water of a partial condenser */
    double water_in_celsius;             /* where the water enters, 0 to 99 °C */
    double water_out_celsius;            /* where the water leaves, warmer */
    double reflux_celsius;               /* temperature of the reflux, 0 to 100 °C; NaN unless set: it boils */
    double take_off_litres_per_minute;   /* distillate taken, at 20 °C */
    double start_minutes;                /* time at total reflux before anything is taken */
    double spout_celsius;                /* where an alcoholometer is read, -20 to 40 °C; 20 °C unless set */
    int head;                            /* a value of aqueth_head */
    int reserved;                        /* 0 */
    const aqueth_plan_step* steps;       /* changes while it runs, in their order; may be NULL if there are none */
    size_t step_count;                   /* 0 to 1000 */
} aqueth_run_options;

/* A computed run. */
typedef struct aqueth_run aqueth_run;

/* The state of a run at a moment. */
typedef struct aqueth_run_point {
    size_t size;
    double seconds;                  /* since it began to boil */
    double collected_litres;         /* all distillate so far, at 20 °C */
    double pure_alcohol_litres;      /* in it, at 20 °C */
    double distilled_moles;          /* ethanol and water in it */
    double left_moles;               /* ethanol and water left in the still */
    double still_mole_fraction;      /* of ethanol in the boiling liquid, without extract */
    double distillate_mole_fraction; /* of ethanol in the distillate */
    double boiling_celsius;          /* temperature in the pot */
    double vapour_celsius;           /* temperature of the vapour at the head */
    double reflux_ratio;             /* liquid that the condenser returns per distillate taken */
    double condenser_watts;          /* heat that the condenser takes out */
    double neck_watts;               /* heat that the neck takes out */
    double partial_condenser_watts;  /* heat that a partial condenser takes out */
    double vapour_moles_per_second;  /* vapour at the top of the column or pot */
    double take_off_litres_per_minute; /* distillate taken, at 20 °C */
} aqueth_run_point;

/* A fraction of a run. The last one begins at the last cut and is kept. */
typedef struct aqueth_run_fraction {
    size_t size;
    double kg;                   /* mass */
    double mass_fraction;        /* of ethanol */
    double celsius;              /* temperature: product_celsius */
    double litres;               /* volume at that temperature */
    double volume_fraction;      /* of ethanol, at 20 °C */
    double pure_alcohol_litres;  /* at 20 °C */
    int kept;                    /* 1, or 0 if it is discarded */
} aqueth_run_fraction;

/* Content of the pot at the end. */
typedef struct aqueth_run_residue {
    size_t size;
    double kg;                    /* mass with extract */
    double ethanol_mass_fraction; /* of ethanol in it */
    double plato;                 /* its extract, °P */
    double celsius;               /* temperature: product_celsius */
} aqueth_run_residue;

/* Times, heats and yield of a run. Heats are in joules. */
typedef struct aqueth_run_totals {
    size_t size;
    double warming_seconds;         /* from the charge's temperature to boiling */
    double warming_joules;          /* supplied in that time */
    double boiling_seconds;         /* from boiling to the end */
    double supplied_joules;         /* by the heater while it boiled */
    double lost_by_pot_joules;      /* to the room while it boiled */
    double neck_joules;             /* taken out by the neck */
    double condenser_joules;        /* taken out by the condenser */
    double with_distillate_joules;  /* carried over, from liquids at 0 °C */
    double gained_by_still_joules;  /* heat content of the pot at the end less that at the start */
    double kept_alcohol_litres;     /* pure alcohol at 20 °C in the fractions that are kept */
    double recovery;                /* share of the charge's ethanol in the fractions that are kept */
    double strength_lost_seconds;   /* when the greatest reflux no longer kept the strength; NaN if it never did */
    double partial_condenser_joules; /* taken out by a partial condenser */
} aqueth_run_totals;

/* Sets every option but `size` to its value unless set: 0, NULL, or as the comments on the fields say. */
AQUETH_API aqueth_status aqueth_run_options_init(aqueth_run_options* options);

/* Computes a run; it takes milliseconds, or seconds with many points or plates. *run becomes the run, or NULL where the
 * status is not AQUETH_OK. Strengths in a refusal are fractions, those of proof and concentration on their scales. */
AQUETH_API aqueth_status aqueth_run_new(const aqueth_run_options* options, aqueth_run** run, aqueth_refusal* refusal);

/* Frees a run; does nothing with NULL. */
AQUETH_API void aqueth_run_free(aqueth_run* run);

/* How many fractions and recorded points a run has; 0 for NULL. */
AQUETH_API size_t aqueth_run_fraction_count(const aqueth_run* run);
AQUETH_API size_t aqueth_run_point_count(const aqueth_run* run);

/* Copy `count` elements, from element `first` on. AQUETH_BAD_CALL and nothing written where there are not so many. */
AQUETH_API aqueth_status aqueth_run_get_fractions(const aqueth_run* run, size_t first, size_t count,
                                                  aqueth_run_fraction* fractions);
AQUETH_API aqueth_status aqueth_run_get_points(const aqueth_run* run, size_t first, size_t count,
                                               aqueth_run_point* points);

/* The states in which a fraction began and ended. */
AQUETH_API aqueth_status aqueth_run_get_fraction_ends(const aqueth_run* run, size_t fraction,
                                                      aqueth_run_point* begin, aqueth_run_point* end);

AQUETH_API aqueth_status aqueth_run_get_residue(const aqueth_run* run, aqueth_run_residue* residue);
AQUETH_API aqueth_status aqueth_run_get_totals(const aqueth_run* run, aqueth_run_totals* totals);

#ifdef __cplusplus
}
#endif

#endif
