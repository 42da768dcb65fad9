// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>

/// Cubic expansion of the glass that hydrometers are made of.
namespace aqueth::inline AQUETH_ABI::correlation::glass_expansion {

/// Citation, range and accuracy.
inline constexpr source cited{
    "ISO 1768:1975, Glass hydrometers - Conventional value for the thermal cubic expansion coefficient, "
    "clause 3",
    "soda-lime glass hydrometers, for measurement tables",
    "a convention; 5e-6 /K more or less moves a reading by 0.02 to 0.05 % vol for each 10 K"};

inline constexpr double soda_lime = 25e-6;     ///< 1/K, ISO 1768
inline constexpr double borosilicate = 10e-6;  ///< 1/K, from memory of glass makers' data

}  // namespace aqueth::inline AQUETH_ABI::correlation::glass_expansion
