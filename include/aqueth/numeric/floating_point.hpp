// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The library requires floating-point arithmetic of IEC 60559 (IEEE 754), with NaN and infinity. Every
/// floor includes this header, so that a build without them stops with one message.
///
/// With -ffast-math or -ffinite-math-only a compiler may take `x != x` for false: then a NaN passes every
/// check of range, and an iteration may accept one. The other liberties of -ffast-math (another order of
/// sums, reciprocals instead of divisions) change only last digits. Therefore `-ffast-math
/// -fno-finite-math-only` is accepted; tests/builds.sh measures the change. Fused multiply-adds are harmless.
#if (defined(__FINITE_MATH_ONLY__) && __FINITE_MATH_ONLY__) || defined(_M_FP_FAST)
#error "aqueth needs NaN and infinity: add -fno-finite-math-only behind -ffast-math, -Ofast or the like"
#endif

#include <aqueth/version.hpp>

#include <bit>
#include <limits>

static_assert(std::numeric_limits<double>::is_iec559 && std::numeric_limits<double>::digits == 53,
              "aqueth needs IEC 60559 double precision");

namespace aqueth::inline AQUETH_ABI::numeric {

/// @param x any value
/// @return its bits, as another type of the same size: std::bit_cast, which some standard libraries lack
template <class To, class From>
[[gnu::always_inline]] constexpr To same_bits(From const& x) {
#if defined(__cpp_lib_bit_cast)
    return std::bit_cast<To>(x);
#else
    return __builtin_bit_cast(To, x);
#endif
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
