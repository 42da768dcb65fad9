// SPDX-License-Identifier: BSL-1.0
// Made by generate.py from functions.tsv and codes.tsv. Not to be edited.
// clang-format off
#include "interface.hpp"

namespace aqueth::c {

int code_of(aqueth::argument code) noexcept {
    switch (code) {
    case aqueth::argument::other: return 0;
    case aqueth::argument::density: return 1;
    case aqueth::argument::mass_fraction: return 2;
    case aqueth::argument::temperature: return 3;
    default: return 0;
    }
}

char const* argument_name(int code) noexcept {
    switch (code) {
    case 0: return name_of(aqueth::argument::other);
    case 1: return name_of(aqueth::argument::density);
    case 2: return name_of(aqueth::argument::mass_fraction);
    case 3: return name_of(aqueth::argument::temperature);
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
    return c::many(count, refused, [](double mass_fraction, double celsius) { return plain::thermal_expansion_per_kelvin(mass_fraction, celsius); }, [](auto const& value) { return std::array{value}; },
        std::array{c::output{per_kelvin_result, per_kelvin_stride_of_result}}, c::input{mass_fraction, mass_fraction_stride}, c::input{celsius, celsius_stride});
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
