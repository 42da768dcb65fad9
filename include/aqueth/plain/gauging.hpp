// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/plain/density.hpp>
#include <aqueth/plain/strength.hpp>
#include <aqueth/plain/weighing.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

inline constexpr double kg_per_pound = 0.45359237;          ///< avoirdupois pound, exact
inline constexpr double m3_per_us_gallon = 0.003785411784;  ///< 231 cubic inches, exact

/// @name Gauging by the United States rules
/// Volumes are wine gallons (US gallons) at 60 °F, weights are found in air, strengths are degrees of proof.
/// `aqueth/gauging.hpp` has the accuracy. Tax due is settled with the Gauging Manual itself and by whoever is
/// licensed to gauge.
/// @{

/// Weight in air of spirit, per volume at 60 °F.
/// @param us_proof degrees of proof, 0 to 200
/// @return apparent density, kg/m3; refuses a proof out of range
/// @par Source
/// @ref source_oiml_r22, air buoyancy @ref source_oiml_d28; compare 27 CFR 30.65, table 5
template <number T>
constexpr checked<T> weight_per_volume_kg_m3(T us_proof) {
    auto const w = mass_fraction_from<proof_basis>(us_proof);
    if (!w.status.ok) return w;
    return density_in_air_kg_m3(reference_isotherm<at_60_fahrenheit, T>.density(w.value));
}

/// Wine gallons at 60 °F in a pound weighed in air.
/// @param us_proof degrees of proof, 0 to 200
/// @return US gallons per pound; refuses a proof out of range
/// @par Source
/// as `weight_per_volume_kg_m3`; compare 27 CFR 30.64, table 4
template <number T>
constexpr checked<T> wine_gallons_per_pound(T us_proof) {
    auto const weight = weight_per_volume_kg_m3(us_proof);
    if (!weight.status.ok) return weight;
    return {T(kg_per_pound) / weight.value / T(m3_per_us_gallon), {}};
}

/// Proof gallons in a pound weighed in air.
/// @param us_proof degrees of proof, 0 to 200
/// @return proof gallons per pound; refuses a proof out of range
/// @par Source
/// as `weight_per_volume_kg_m3`; compare 27 CFR 30.64, table 4
template <number T>
constexpr checked<T> proof_gallons_per_pound(T us_proof) {
    auto const gallons = wine_gallons_per_pound(us_proof);
    if (!gallons.status.ok) return gallons;
    return {gallons.value * us_proof / T(100), {}};
}

/// Factor that turns a volume measured at a temperature into the volume at 60 °F.
/// @param us_proof degrees of proof, 0 to 200
/// @param celsius  temperature of the measurement, where the spirit is liquid, from -20 °C up
/// @return volume at 60 °F over volume at that temperature; refuses what is out of range
/// @par Source
/// @ref source_oiml_r22; compare 27 CFR 30.67, table 7
template <number T>
constexpr checked<T> volume_factor_to_60_fahrenheit(T us_proof, T celsius) {
    auto const w = mass_fraction_from<proof_basis>(us_proof);
    if (!w.status.ok) return w;
    auto const here = density_kg_m3(w.value, celsius);
    if (!here.status.ok) return here;
    return {here.value / reference_isotherm<at_60_fahrenheit, T>.density(w.value), {}};
}
/// @}

}  // namespace aqueth::inline AQUETH_ABI::plain
