// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/plain/density.hpp>
#include <aqueth/plain/strength.hpp>

// [body]
namespace meter {

namespace plain = aqueth::plain;
using by_volume = plain::volume_basis<plain::at_20_celsius>;

/// Strength of a spirit from what the cell of a density meter measured.
/// @param kg_m3   density
/// @param celsius temperature of the cell
/// @return strength, % vol at 20 °C; or the refused argument with its range
template <plain::number T>
plain::checked<T> percent_vol(T kg_m3, T celsius) {
    auto const composition = plain::compact_mass_fraction_from_density(kg_m3, celsius);
    if (!composition.status.ok) return composition;
    auto const strength = plain::strength_in<by_volume>(composition.value);
    return {T(100) * strength.value, strength.status};
}

}  // namespace meter
// [body]

namespace meter {

/// The same in fewer instructions and more flash: the first guess comes from a table of 24 kB.
template <plain::number T>
plain::checked<T> percent_vol_by_table(T kg_m3, T celsius) {
    auto const composition = plain::mass_fraction_from_density(kg_m3, celsius);
    if (!composition.status.ok) return composition;
    auto const strength = plain::strength_in<by_volume>(composition.value);
    return {T(100) * strength.value, strength.status};
}

/// The one of the two that a build chose: with -DTABLE_OF_GUESSES the one with the table.
template <plain::number T>
plain::checked<T> chosen_percent_vol(T kg_m3, T celsius) {
#if defined(TABLE_OF_GUESSES)
    return percent_vol_by_table(kg_m3, celsius);
#else
    return percent_vol(kg_m3, celsius);
#endif
}

}  // namespace meter
