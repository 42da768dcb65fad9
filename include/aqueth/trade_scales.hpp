// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/trade_scales.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>

namespace aqueth::inline AQUETH_ABI {

using plain::trade_scale;

/// Degrees of British proof (Sikes), by the Act of 1818. 100 is proof spirit, 57.1 % vol at 60 °F; pure
/// ethanol is 175. ("Proof" of the United States is `us_proof`, another scale. Tralles counts % vol at 60 °F,
/// Gay-Lussac % vol at 15 °C: `basic_volume_fraction` with these references.)
/// @param strength strength in any basis
/// @return degrees; less 100 they are "over proof", 100 less them "under proof"
/// @par Accuracy
/// 0.05 degrees of the printed figure for ethanol
/// @par Source
/// @ref source_uk_proof; densities @ref source_oiml_r22
template <strength_basis Strength>
[[nodiscard]] constexpr double uk_proof_degrees(Strength strength) {
    return detail::answer("British proof", plain::uk_proof_degrees(to<mass_fraction>(strength).value()));
}

/// Strength from degrees of British proof: the inverse of `uk_proof_degrees`.
/// @param degrees 0 to those of pure ethanol, 175.2
/// @return mass fraction
/// @throws refusal if the degrees are outside that range
/// @par Source
/// as `uk_proof_degrees`
[[nodiscard]] constexpr mass_fraction by_uk_proof(double degrees) {
    return mass_fraction(detail::answer("British proof", plain::mass_fraction_from_uk_proof(degrees)));
}

/// Degrees of a scale of the trade from a specific gravity.
/// @param scale   the scale
/// @param gravity in vacuo at the scale's temperatures: 60/60 °F for Baumé, 20/20 °C for Oechsle and KMW
/// @return degrees
/// @throws refusal if the gravity is outside the scale
/// @par Source
/// @ref source_trade_scales
[[nodiscard]] inline double degrees_on(trade_scale scale, specific_gravity gravity) {
    return detail::answer("degrees of a scale", plain::degrees_from_gravity(scale, gravity.value()));
}

/// Specific gravity from degrees of a scale of the trade: the inverse of `degrees_on`.
/// @param scale   the scale
/// @param degrees degrees
/// @return specific gravity in vacuo at the scale's temperatures
/// @throws refusal if the degrees are outside the scale
/// @par Source
/// as `degrees_on`
[[nodiscard]] constexpr specific_gravity gravity_on(trade_scale scale, double degrees) {
    return specific_gravity(
        detail::answer("degrees of a scale", plain::gravity_from_degrees(scale, degrees)));
}

}  // namespace aqueth::inline AQUETH_ABI
