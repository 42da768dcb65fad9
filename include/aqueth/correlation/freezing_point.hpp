// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/freezing_point_table.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <cstddef>

/// Freezing point of ethanol-water mixtures: where ice begins to form on cooling.
namespace aqueth::inline AQUETH_ABI::correlation::freezing_point {

/// Citation, range and accuracy.
inline constexpr source cited{
    "CRC Handbook of Chemistry and Physics, table Concentrative Properties of Aqueous Solutions: ethanol "
    "(primary data A. V. Wolf, Aqueous Solutions and Body Fluids, 1966)",
    "0 to 68 % mass (0 to -49.5 °C)",
    "Melinder (2010) lies within 0.4 K, Lange's Handbook up to 1.5 K higher near 30 % mass; interpolation "
    "adds less than 0.05 K"};

inline constexpr double highest_mass_fraction = 0.68;  ///< upper end of the range

/// @param w mass fraction of ethanol
/// @return whether the table reaches there
template <numeric::real T>
constexpr bool covers(T const& w) {
    return w >= T(0) && w <= T(highest_mass_fraction);
}

/// @param w mass fraction of ethanol, 0 to 0.68; not checked, NaN in gives NaN out
/// @return freezing point in °C, by straight lines between the rows of the table
template <numeric::real T>
constexpr T celsius(T const& w) {
    T const percent = T(100) * w;
    std::size_t above = 1;
    while (above + 1 < points.size() && percent > T(points[above].mass_percent)) ++above;
    point const& low = points[above - 1];
    point const& high = points[above];
    return T(low.celsius) + (percent - T(low.mass_percent)) * T(high.celsius - low.celsius) /
                                T(high.mass_percent - low.mass_percent);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::freezing_point
