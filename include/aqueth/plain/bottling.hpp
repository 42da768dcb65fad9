// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/plain/density.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI::plain {

/// Bottles that a parcel fills.
template <number T>
struct bottling {
    T count = std::numeric_limits<T>::quiet_NaN();         ///< number of full bottles, a whole number
    T fill_litres = std::numeric_limits<T>::quiet_NaN();   ///< to fill into each, at the parcel's temperature
    T fill_mass_kg = std::numeric_limits<T>::quiet_NaN();  ///< the same as mass
    parcel<T> remainder;                                   ///< what is left over
};

namespace detail {

inline constexpr double least_label_litres = 1e-9;

/// Largest number of bottles that is exact to a hundredth of a bottle.
template <number T>
inline constexpr double most_bottles = std::is_same_v<T, float> ? 5e3 : 1e12;

template <number T>
constexpr status label_range(T label_litres) {
    return within(argument::label_volume, label_litres, least_label_litres, unlimited);
}

/// Volume at the filling temperature over volume at the reference temperature.
template <number T>
constexpr checked<T> expansion(T mass_fraction, T filling_celsius, T reference_celsius) {
    auto const filled = density_kg_m3(mass_fraction, filling_celsius);
    if (!filled.status.ok) return filled;
    auto const labelled = density_kg_m3(mass_fraction, reference_celsius);
    if (!labelled.status.ok) return labelled;
    return {labelled.value / filled.value, {}};
}

/// `bottling` with the fill in m3.
template <number T>
struct bottles {
    T count = std::numeric_limits<T>::quiet_NaN();
    T fill_m3 = std::numeric_limits<T>::quiet_NaN();
    T fill_mass_kg = std::numeric_limits<T>::quiet_NaN();
    parcel<T> remainder;
};

/// Takes a checked parcel, fill and label. Checks that the bottles can be counted.
template <number T>
checked<bottles<T>> count_bottles(parcel<T> const& spirit, T label_litres, T fill_m3) {
    auto const rho = density_kg_m3(spirit.mass_fraction, spirit.celsius);
    if (!rho.status.ok) return no_answer<bottles<T>>(rho.status);
    T const filled = spirit.mass_kg / rho.value / fill_m3;
    double const least = double(label_litres) * (double(filled) / most_bottles<T>);
    status const range = within(argument::label_volume, label_litres,
                                least > least_label_litres ? least : least_label_litres, unlimited,
                                std::is_same_v<T, float> ? limit::bottles_counted_in_single_precision
                                                         : limit::bottles_counted);
    if (!range.ok) return no_answer<bottles<T>>(range);
    // A parcel that was made for n bottles must not lose one to rounding. The error is a few units of the
    // last place: less than a hundredth of a bottle in the largest number.
    T const whole = std::round(filled);
    T const slack = T(16) * std::numeric_limits<T>::epsilon() * filled;
    T const count = std::abs(filled - whole) <= slack ? whole : std::floor(filled);
    T const each = fill_m3 * rho.value;
    T const left = spirit.mass_kg - count * each;
    return {{count, fill_m3, each, {left > T(0) ? left : T(0), spirit.mass_fraction, spirit.celsius}}, {}};
}

}  // namespace detail

/// Volume to fill so that a bottle holds its label volume at the reference temperature of the label.
/// @param label_litres      volume on the label, above 0, L
/// @param mass_fraction     of ethanol, 0 to 1
/// @param filling_celsius   temperature of the spirit while it is filled, where it is liquid, from -20 °C up
/// @param reference_celsius temperature that the label is meant for, where the spirit is liquid, from -20 °C
///                          up
/// @return volume to measure out at the filling temperature, L (the bottle's own expansion is left out);
///         refuses what is out of range
/// @par Source
/// @ref source_oiml_r22; 20 °C by @ref source_76_211_eec
template <number T>
constexpr checked<T> fill_litres(T label_litres, T mass_fraction, T filling_celsius,
                                 T reference_celsius = T(20)) {
    status const label = detail::label_range(label_litres);
    if (!label.ok) return no_answer<T>(label);
    auto const expanded = detail::expansion(mass_fraction, filling_celsius, reference_celsius);
    if (!expanded.status.ok) return expanded;
    return {label_litres * expanded.value, {}};
}

/// Fills bottles from a parcel at the parcel's temperature.
/// @param spirit            the spirit to bottle
/// @param label_litres      volume on the label, above 0, L
/// @param reference_celsius temperature that the label is meant for, where the spirit is liquid, from -20 °C
///                          up
/// @return number of bottles, fill of each, remainder; refuses what is out of range, and a label volume so
///         small that it fills more than 1e12 bottles (5000 in `float`)
/// @par Source
/// as `fill_litres`
template <number T>
checked<bottling<T>> fill_bottles(parcel<T> const& spirit, T label_litres, T reference_celsius = T(20)) {
    status const range = parcel_range(spirit);
    if (!range.ok) return no_answer<bottling<T>>(range);
    status const label = detail::label_range(label_litres);
    if (!label.ok) return no_answer<bottling<T>>(label);
    auto const expanded = detail::expansion(spirit.mass_fraction, spirit.celsius, reference_celsius);
    if (!expanded.status.ok) return no_answer<bottling<T>>(expanded.status);
    auto const filled = detail::count_bottles(
        spirit, label_litres, label_litres * detail::cubic_metres_per_litre<T> * expanded.value);
    if (!filled.status.ok) return no_answer<bottling<T>>(filled.status);
    return {{filled.value.count, label_litres * expanded.value, filled.value.fill_mass_kg,
             filled.value.remainder},
            {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
