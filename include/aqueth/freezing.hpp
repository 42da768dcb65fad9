// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Freezing point of a mixture.
/// @param strength strength in any basis, to 68 % by mass
/// @return temperature at which ice begins to form on cooling
/// @throws refusal if the mass fraction is above 0.68
/// @par Accuracy
/// Published tables differ by 0.4 K, and near 30 % mass by up to 1.5 K (Lange's Handbook is the highest).
/// @par Source
/// @ref source_crc_freezing
template <strength_basis Strength>
constexpr units::temperature freezing_point(Strength strength) {
    double const w = to<mass_fraction>(strength).value();
    return celsius(detail::answer("freezing point", plain::freezing_celsius(w)));
}

namespace detail {

/// Raises a refusal unless OIML R 22 covers a liquid mixture at this temperature.
constexpr void require_liquid(char const* property, mass_fraction w, units::temperature t) {
    accept(property, plain::liquid_range(w.value(), t.celsius()));
}

}  // namespace detail

}  // namespace aqueth::inline AQUETH_ABI
