// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

namespace aqueth {

/// Freezing point of a mixture.
/// @param w mass fraction of ethanol, 0 to 0.68
/// @return temperature at which ice begins to form on cooling
/// @throws range_error if the mass fraction is above 0.68
/// @par Accuracy
/// Published tables differ by 0.4 K, and near 30 % mass by up to 1.5 K (Lange's Handbook is the highest).
/// @par Source
/// @ref source_crc_freezing
constexpr units::temperature freezing_point(mass_fraction w) {
    namespace source = correlation::freezing_point;
    require_range("freezing point", argument::mass_fraction, w.percent(), mass_fraction::unit, 0.0,
                  100.0 * source::highest_mass_fraction, "CRC Handbook");
    return celsius(source::celsius(w.value()));
}

namespace detail {

/// Lowest temperature at which OIML R 22 applies to a mixture: -20 °C, or the freezing point where that is
/// higher (below 29.5 % mass). Freezing points beyond the table's 68 % mass are far below -20 °C.
constexpr units::temperature coldest_liquid(mass_fraction w) {
    namespace ice = correlation::freezing_point;
    double const lowest = correlation::oiml_r22::lowest_celsius;
    double const frozen = ice::covers(w.value()) ? ice::celsius(w.value()) : lowest;
    return celsius(frozen > lowest ? frozen : lowest);
}

/// Raises a range_error unless OIML R 22 covers a liquid mixture at this temperature.
constexpr void require_liquid(char const* property, mass_fraction w, units::temperature t) {
    if (t.celsius() >= 0.0 && t.celsius() <= correlation::oiml_r22::highest_celsius) return;
    double const coldest = coldest_liquid(w).celsius();
    bool const cut_by_ice = coldest > correlation::oiml_r22::lowest_celsius;
    bool const forgiven = cut_by_ice && t.celsius() < coldest && t.celsius() >= coldest - rounding;
    require_range(property, argument::temperature, t.celsius(), "°C", forgiven ? t.celsius() : coldest,
                  correlation::oiml_r22::highest_celsius,
                  cut_by_ice ? "liquid above its freezing point, OIML R 22" : "OIML R 22");
}

}  // namespace detail

}  // namespace aqueth
