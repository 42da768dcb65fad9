// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/gauging.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// @name Gauging by the United States rules
/// Volumes are wine gallons (US gallons) at 60 °F, weights are weights in air, strengths are degrees of
/// proof. The Gauging Manual has its own measurements; OIML R 22 agrees with the figures in 27 CFR part 30
/// within a few units of their fifth digit. Only a licensed gauger, with the manual itself, can determine the
/// tax due.
/// @{

/// Weight in air of spirit, per volume at 60 °F: `in(weight_per_volume(proof(190)), pound / us_gallon)`.
/// @param strength degrees of proof
/// @return apparent density, mass per volume
/// @par Source
/// @ref source_oiml_r22, air buoyancy @ref source_oiml_d28; compare 27 CFR 30.65, table 5
[[nodiscard]] constexpr units::mass_density weight_per_volume(us_proof strength) {
    return detail::answer("weight per volume", plain::weight_per_volume_kg_m3(strength.degrees())) *
           kilogram_per_cubic_metre;
}

/// Wine gallons at 60 °F in a pound weighed in air.
/// @param strength degrees of proof
/// @return US gallons per pound
/// @par Source
/// as `weight_per_volume`; compare 27 CFR 30.64, table 4
[[nodiscard]] constexpr double wine_gallons_per_pound(us_proof strength) {
    return detail::answer("volume per weight", plain::wine_gallons_per_pound(strength.degrees()));
}

/// Proof gallons in a pound weighed in air.
/// @param strength degrees of proof
/// @return proof gallons per pound
/// @par Source
/// as `weight_per_volume`; compare 27 CFR 30.64, table 4
[[nodiscard]] constexpr double proof_gallons_per_pound(us_proof strength) {
    return detail::answer("volume per weight", plain::proof_gallons_per_pound(strength.degrees()));
}

/// Factor from a volume measured at a temperature to the volume at 60 °F.
/// @param strength degrees of proof
/// @param t        temperature of the measurement, where the spirit is liquid, from -20 °C up
/// @return volume at 60 °F over volume at t
/// @throws refusal if the temperature is outside its range
/// @par Source
/// @ref source_oiml_r22; compare 27 CFR 30.67, table 7
[[nodiscard]] constexpr double volume_factor_to_60_fahrenheit(us_proof strength, units::temperature t) {
    return detail::answer("density", plain::volume_factor_to_60_fahrenheit(strength.degrees(), t.celsius()));
}
/// @}

}  // namespace aqueth::inline AQUETH_ABI
