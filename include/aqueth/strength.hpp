// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/strength.hpp>

#include <type_traits>

namespace aqueth::inline AQUETH_ABI {

namespace detail {

/// @return the number that stands for a strength on the floor of plain numbers
template <strength_basis Basis>
constexpr double plain_number(Basis strength) {
    if constexpr (requires { strength.value(); }) {
        return strength.value();  // a fraction, 0 to 1
    } else {
        return strength.number();
    }
}

}  // namespace detail

/// Converts a strength from any basis to any other: `to<mass_fraction>(by_volume(40.0))`.
/// @tparam Target the basis wanted: mass_fraction, mole_fraction, basic_volume_fraction<...>,
///                basic_mass_concentration<...> or us_proof
/// @param strength the strength to convert
/// @return the same mixture in the wanted basis
/// @throws refusal if a mass concentration is above that of pure ethanol
/// @par Accuracy
/// There and back closes within a few units of the last place. Against measurements as `density`: 0.1 kg/m3
/// is 0.02 to 0.09 % vol at 20 °C, up to 0.14 at 0 °C and 0.24 at -10 °C.
/// @par Source
/// Definition of alcoholic strength, @ref source_oiml_r22; mole fractions with @ref source_molar_mass;
/// US proof 27 CFR 30.11, @ref source_us_gauging
template <strength_basis Target, strength_basis Source>
constexpr Target to(Source strength) {
    if constexpr (std::is_same_v<Target, Source>) {
        return strength;
    } else {
        using from = typename Source::plain_basis;
        using to = typename Target::plain_basis;
        return Target(detail::answer("strength", plain::convert<from, to>(detail::plain_number(strength))));
    }
}

}  // namespace aqueth::inline AQUETH_ABI
