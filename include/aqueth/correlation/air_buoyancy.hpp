// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

/// Weighing in air: the conventional densities of air and of the weights, and the buoyancy correction.
namespace aqueth::inline AQUETH_ABI::correlation::air_buoyancy {

/// Citation, range and accuracy.
inline constexpr source cited{"OIML D 28, Conventional value of the result of weighing in air, 2004: 20 °C, "
                              "air 1.2 kg/m3, weights 8000 kg/m3",
                              "ordinary air near sea level",
                              "a convention; air of 1.1 to 1.25 kg/m3 moves a mass of spirit by 0.01 %"};

inline constexpr double air = 1.2;         ///< conventional density of air, kg/m3
inline constexpr double weights = 8000.0;  ///< conventional density of the weights, kg/m3

/// Indication of a balance for one unit of true mass, in conventional air. The balance is adjusted with
/// weights of 8000 kg/m3.
/// @param rho density of the weighed object, kg/m3, well above that of air
/// @return indication divided by mass, a little below 1 (0.9989 for water)
template <numeric::real T>
constexpr T indication_per_mass(T const& rho) {
    return (T(1) - T(air) / rho) / (T(1) - T(air / weights));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::air_buoyancy
