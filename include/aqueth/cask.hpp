// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/cask.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// What a cask loses in a year, as parts of the ethanol and of the water that are in it. The strength rises
/// if the water's part is larger, and falls if the ethanol's is: where the two are equal, it turns. (Dry
/// stores raise the strength, damp ones lower it: common practice.)
using cask_rates = plain::cask_rates<double>;

/// a year of 365.25 days
inline constexpr auto julian_year = units::time::from_value(365.25 * 86400.0);

/// A cask after years in store: each year takes the same part of its ethanol and the same part of its water.
/// @param filled what was filled in
/// @param rates  yearly losses: ethanol 0 to 0.5, water -0.1 (a gain) to 0.5
/// @param time   time in store, 0 to 100 years
/// @return what is left, at the same temperature
/// @throws refusal if an argument is outside its range, or the liquid would be frozen
/// @par Accuracy
/// that of the rates; wood soaks up about 2 % of a first filling beforehand
/// @par Source
/// an account of two masses, no model of climate or wood; legal limits @ref source_cask_losses
[[nodiscard]] inline parcel cask_after(parcel const& filled, cask_rates const& rates, units::time time) {
    auto const& numbers = static_cast<plain::parcel<double> const&>(filled);
    return parcel::of(detail::answer("cask", plain::cask_after(numbers, rates, in(time, julian_year))));
}

/// The two rates behind two gaugings of a cask: the inverse of `cask_after`.
/// @param before first gauging
/// @param after  later gauging; no more ethanol than before
/// @param time   time between them, 0.01 to 100 years
/// @return yearly losses
/// @throws refusal if an argument is outside its range, or no cask gives such gaugings
/// @par Accuracy
/// the difference of two gaugings: 0.2 % vol in one of them is 0.5 % of the ethanol at 40 % vol
/// @par Source
/// as `cask_after`
[[nodiscard]] inline cask_rates cask_rates_from_gaugings(parcel const& before, parcel const& after,
                                                         units::time time) {
    return detail::answer("cask",
                          plain::cask_rates_from_gaugings(static_cast<plain::parcel<double> const&>(before),
                                                          static_cast<plain::parcel<double> const&>(after),
                                                          in(time, julian_year)));
}

}  // namespace aqueth::inline AQUETH_ABI
