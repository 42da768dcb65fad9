// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/floating_point.hpp>

/// First floor: correlations, one file per published source; plain numbers, no units, no checks.
namespace aqueth::inline AQUETH_ABI::correlation {

/// Where a correlation comes from, as data that programs can print and the documentation lists.
struct source {
    char const* citation;  ///< author, title, year, table or equation
    char const* range;     ///< where it is valid, with units
    char const* accuracy;  ///< accuracy, and the data it is compared with
};

}  // namespace aqueth::inline AQUETH_ABI::correlation
