// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

/// Freezing point of a mixture.
/// @param mass_fraction of ethanol, 0 to 0.68
/// @return temperature at which ice begins to form on cooling, °C; refuses a mass fraction out of range
/// @par Accuracy
/// Published tables differ by 0.4 K, and near 30 % mass by up to 1.5 K (Lange's Handbook is the highest).
/// @par Source
/// @ref source_crc_freezing
template <number T>
constexpr checked<T> freezing_celsius(T mass_fraction) {
    namespace source = correlation::freezing_point;
    status const range = within(argument::mass_fraction, mass_fraction, 0.0, source::highest_mass_fraction,
                                limit::crc_handbook);
    if (!range.ok) return no_answer<T>(range);
    return {source::celsius(mass_fraction), {}};
}

/// Lowest temperature at which OIML R 22 applies to a mixture: -20 °C, or the freezing point where that is
/// higher (below 29.5 % mass). Freezing points beyond the table's 68 % mass are far below -20 °C.
/// @param mass_fraction of ethanol, 0 to 1; not checked
/// @return that temperature, °C
template <number T>
constexpr T coldest_liquid_celsius(T mass_fraction) {
    namespace ice = correlation::freezing_point;
    T const lowest = T(correlation::oiml_r22::lowest_celsius);
    T const frozen = ice::covers(mass_fraction) ? ice::celsius(mass_fraction) : lowest;
    return frozen > lowest ? frozen : lowest;
}

/// @param mass_fraction of ethanol
/// @param celsius       temperature, °C
/// @return whether the mass fraction is one, and OIML R 22 covers the liquid mixture at this temperature:
///         from -20 °C, or the freezing point where that is higher, to 40 °C
template <number T>
constexpr status liquid_range(T mass_fraction, T celsius) {
    namespace r22 = correlation::oiml_r22;
    if (!(mass_fraction >= T(0) && mass_fraction <= T(1)))
        return refuse(argument::mass_fraction, double(mass_fraction), 0.0, 1.0);
    if (celsius >= T(0) && celsius <= T(r22::highest_celsius)) return {};
    T const coldest = coldest_liquid_celsius(mass_fraction);
    bool const cut_by_ice = coldest > T(r22::lowest_celsius);
    // a computed freezing point may be rounded
    if (cut_by_ice && celsius < coldest && celsius >= coldest - rounding<T>) return {};
    return within(argument::temperature, celsius, double(coldest), r22::highest_celsius,
                  cut_by_ice ? limit::liquid_above_freezing_point : limit::oiml_r22);
}

}  // namespace aqueth::inline AQUETH_ABI::plain
