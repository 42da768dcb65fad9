/* SPDX-License-Identifier: BSL-1.0 */
/* Made by src/c/generate.py from src/c/c.h.in, functions.tsv and codes.tsv. Not to be edited. */
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
    AQUETH_BAD_CALL = 2,  /* a pointer is NULL, a size is unknown, or an enumeration has no such value */
    AQUETH_NO_MEMORY = 3, /* memory ran out */
    AQUETH_INTERNAL = 4   /* a fault of the library */
} aqueth_status;

/* The arguments that are refused. */
typedef enum aqueth_argument {
    AQUETH_ARGUMENT_OTHER = 0,
    AQUETH_ARGUMENT_DENSITY = 1,
    AQUETH_ARGUMENT_MASS_FRACTION = 2,
    AQUETH_ARGUMENT_TEMPERATURE = 3
} aqueth_argument;

/* What sets the range of an argument. */
typedef enum aqueth_limit {
    AQUETH_LIMIT_NONE = 0,
    AQUETH_LIMIT_CIPM_2001 = 1,
    AQUETH_LIMIT_CRC_HANDBOOK = 2,
    AQUETH_LIMIT_LIQUID_ABOVE_FREEZING_POINT = 3,
    AQUETH_LIMIT_OIML_R22 = 4,
    AQUETH_LIMIT_OIML_R22_ETHANOL_TO_WATER = 5
} aqueth_limit;



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

/* Density of a mixture, OIML R 22.
 * mass_fraction  0 to 1
 * celsius        -20 to 40 °C */
AQUETH_API aqueth_status aqueth_density_kg_m3(double mass_fraction, double celsius,
                                              double* kg_m3_result, aqueth_refusal* refusal);
AQUETH_API aqueth_status aqueth_density_kg_m3_array(size_t count, const double* mass_fraction,
                                                    ptrdiff_t mass_fraction_stride,
                                                    const double* celsius, ptrdiff_t celsius_stride,
                                                    double* kg_m3_result,
                                                    ptrdiff_t kg_m3_stride_of_result,
                                                    unsigned char* refused);

/* Mass fraction of ethanol from the density at a temperature, OIML R 22.
 * kg_m3    770 to 1000 kg/m3
 * celsius  -20 to 40 °C */
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

/* Cubic expansion coefficient of a mixture, OIML R 22.
 * mass_fraction  0 to 1
 * celsius        -20 to 40 °C */
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

/* Molar volume of a mixture, OIML R 22.
 * mass_fraction  0 to 1
 * celsius        -20 to 40 °C */
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

/* Change of volume on mixing one mole of mixture, OIML R 22.
 * mass_fraction  0 to 1
 * celsius        0 to 40 °C */
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

#ifdef __cplusplus
}
#endif

#endif
