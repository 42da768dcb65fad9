// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/model/hot_density.hpp>
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

/// Highest temperature at which a mixture is liquid under one standard atmosphere, 101.325 kPa: its boiling
/// point. No function of this floor knows the pressure of the day.
/// @param mass_fraction of ethanol, 0 to 1; not checked
/// @return that temperature, °C, within 0.005 K of `bubble_point`
/// @par Source
/// @ref source_excess_gibbs
template <number T>
constexpr T hottest_liquid_celsius(T mass_fraction) {
    return model::hot_density::boiling_celsius(mass_fraction);
}

namespace detail {

/// below this temperature no mixture boils at 101.325 kPa, °C
inline constexpr double surely_below_boiling = 78.1;
/// allowance for the interpolation of boiling points, K
inline constexpr double boiling_allowance = 1e-3;

}  // namespace detail

/// @param mass_fraction of ethanol
/// @param celsius       temperature, °C
/// @return whether the mass fraction is one, and the mixture is liquid at this temperature: from -20 °C, or
///                 the
///         freezing point where that is higher, to the boiling point at 101.325 kPa
template <number T>
constexpr status liquid_range(T mass_fraction, T celsius) {
    namespace r22 = correlation::oiml_r22;
    if (!(mass_fraction >= T(0) && mass_fraction <= T(1)))
        return refuse(argument::mass_fraction, double(mass_fraction), 0.0, 1.0);
    if (celsius >= T(0) && celsius <= T(detail::surely_below_boiling)) return {};
    T const coldest = coldest_liquid_celsius(mass_fraction);
    if (celsius >= coldest && celsius <= T(0)) return {};
    T const hottest = hottest_liquid_celsius(mass_fraction);
    bool const cut_by_ice = coldest > T(r22::lowest_celsius);
    // a computed freezing point may be rounded
    if (cut_by_ice && celsius < coldest && celsius >= coldest - rounding<T>) return {};
    if (celsius > hottest && celsius <= hottest + T(detail::boiling_allowance)) return {};
    return within(argument::temperature, celsius, double(coldest), double(hottest),
                  celsius > T(0) ? limit::liquid_below_boiling_point
                  : cut_by_ice   ? limit::liquid_above_freezing_point
                                 : limit::oiml_r22);
}

/// @param celsius temperature, °C
/// @return whether some mixture is liquid there: -20 °C to the boiling point of water at 101.325 kPa
template <number T>
constexpr status liquid_temperature_range(T celsius) {
    double const hottest = double(hottest_liquid_celsius(T(0)));
    return within(argument::temperature, celsius, correlation::oiml_r22::lowest_celsius, hottest,
                  celsius > T(0) ? limit::liquid_below_boiling_point : limit::oiml_r22);
}

}  // namespace aqueth::inline AQUETH_ABI::plain
