// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <limits>

namespace aqueth::inline AQUETH_ABI::numeric {

/// A scalar for formulas: any number type except the integers, in which 0.8 is 0.
///
/// Every function of `numeric/` and `correlation/` that is generic in its scalar demands it, so that
/// `density(1, 25)` does not compile: 1 and 25 would make all coefficients integers. Write 1.0 and 25.0.
/// float, double, long double, multiprecision, intervals and numbers with derivatives are real; so is every
/// type that `std::numeric_limits` does not call an integer.
template <class T>
concept real = !std::numeric_limits<T>::is_integer;

/// std::isnan for every real scalar, in constant expressions too, where C++20 has none.
/// @param x any value
/// @return whether it is not a number
template <real T>
constexpr bool is_nan(T const& x) {
    return !(x == x);
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
