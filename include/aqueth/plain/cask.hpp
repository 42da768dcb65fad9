// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/cask_loss_limits.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>
#include <limits>

namespace aqueth::inline AQUETH_ABI::plain {

/// What a cask loses in a year, as parts of the ethanol and of the water that are in it. A negative loss of
/// water is a gain, as a damp cellar may bring.
/// @tparam T float or double
template <number T>
struct cask_rates {
    T ethanol = std::numeric_limits<T>::quiet_NaN();  ///< yearly loss of ethanol, 0 to 0.5
    T water = std::numeric_limits<T>::quiet_NaN();    ///< yearly loss of water, -0.1 to 0.5
};

namespace detail {

template <number T>
constexpr status cask_range(cask_rates<T> const& rates, T years) {
    status const ethanol = within(argument::yearly_loss_of_ethanol, rates.ethanol, 0.0, 0.5);
    if (!ethanol.ok) return ethanol;
    status const water = within(argument::yearly_loss_of_water, rates.water, -0.1, 0.5);
    if (!water.ok) return water;
    return within(argument::years, years, 0.0, 100.0);
}

}  // namespace detail

/// A cask after years in store: each year takes the same part of its ethanol and the same part of its water.
/// @param filled what was filled in
/// @param rates  yearly losses
/// @param years  time in store, 0 to 100; parts of years too
/// @return what is left, at the same temperature; refuses what is out of range, and liquids that would be
///              frozen
/// @par Accuracy
/// that of the rates. Wood soaks up about 2 % of a first filling beforehand (quoted from industry, read).
/// @par Source
/// an account of two masses, no model of climate or wood; legal limits @ref source_cask_losses
template <number T>
checked<parcel<T>> cask_after(parcel<T> const& filled, cask_rates<T> const& rates, T years) {
    status const full = parcel_range(filled);
    if (!full.ok) return no_answer<parcel<T>>(full);
    status const range = detail::cask_range(rates, years);
    if (!range.ok) return no_answer<parcel<T>>(range);
    T const ethanol = filled.mass_kg * filled.mass_fraction * std::pow(T(1) - rates.ethanol, years);
    T const water = filled.mass_kg * (T(1) - filled.mass_fraction) * std::pow(T(1) - rates.water, years);
    T const mass = ethanol + water;
    parcel<T> const left{mass, mass > T(0) ? ethanol / mass : filled.mass_fraction, filled.celsius};
    status const liquid = parcel_range(left);
    if (!liquid.ok) return no_answer<parcel<T>>(liquid);
    return {left, {}};
}

/// The two rates behind two gaugings of a cask: the inverse of `cask_after`.
/// @param before first gauging
/// @param after  later gauging; no more ethanol than before
/// @param years  time between them, above 0.01 to 100
/// @return yearly losses; refuses what is out of range, and gaugings that a cask cannot give
/// @par Accuracy
/// the difference of two gaugings: 0.2 % vol in one of them is 0.5 % of the ethanol at 40 % vol
/// @par Source
/// as `cask_after`
template <number T>
checked<cask_rates<T>> cask_rates_from_gaugings(parcel<T> const& before, parcel<T> const& after, T years) {
    using answer = cask_rates<T>;
    for (parcel<T> const* each : {&before, &after}) {
        status const good = parcel_range(*each);
        if (!good.ok) return no_answer<answer>(good);
    }
    status const time = within(argument::years, years, 0.01, 100.0);
    if (!time.ok) return no_answer<answer>(time);
    auto const yearly = [&](T was, T is) {
        return was > T(0) ? T(1) - std::pow(is / was, T(1) / years) : T(0);
    };
    cask_rates<T> const found{
        yearly(before.mass_kg * before.mass_fraction, after.mass_kg * after.mass_fraction),
        yearly(before.mass_kg * (T(1) - before.mass_fraction), after.mass_kg * (T(1) - after.mass_fraction))};
    status const range = detail::cask_range(found, years);
    if (!range.ok) return no_answer<answer>(range);
    return {found, {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
