// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

/// Heat of malt: its specific heat, and the warming when it meets water.
namespace aqueth::inline AQUETH_ABI::correlation::malt_heat {

/// Citation, range and accuracy.
inline constexpr source cited{
    "Pauls and Whites Brewing Room Book 1984/85, initial mash temperature (read in a quotation)",
    "malt of 0 to 8 % moisture", "rounded figures: a mash within about 1 K (common practice)"};

inline constexpr double highest_moisture = 0.08;  ///< upper end of the range, mass fraction of water

/// One row of the table.
struct row {
    double moisture_percent;  ///< water, % mass
    double specific_heat;     ///< relative to that of water
    double slaking_rise;      ///< warming of the mash by slaking, K
};

/// The table.
inline constexpr std::array<row, 7> rows{{{0, 0.38, 3.0},
                                          {1, 0.38, 2.8},
                                          {2, 0.39, 2.3},
                                          {3, 0.40, 2.3},
                                          {4, 0.40, 1.5},
                                          {6, 0.41, 1.3},
                                          {8, 0.42, 1.0}}};

/// @param moisture mass fraction of water in the malt, 0 to 0.08; not checked
/// @return the row for it, by straight lines
template <numeric::real T>
constexpr std::array<T, 2> specific_heat_and_rise(T const& moisture) {
    T const percent = T(100) * moisture;
    std::size_t above = 1;
    while (above + 1 < rows.size() && percent > T(rows[above].moisture_percent)) ++above;
    row const &low = rows[above - 1], &high = rows[above];
    T const part = (percent - T(low.moisture_percent)) / T(high.moisture_percent - low.moisture_percent);
    return {T(low.specific_heat) + part * T(high.specific_heat - low.specific_heat),
            T(low.slaking_rise) + part * T(high.slaking_rise - low.slaking_rise)};
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::malt_heat
