// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// What the library asks of floating-point arithmetic: that it is IEC 60559 (IEEE 754), and that NaN and
/// infinity are what they are. Every floor includes this header: a build that gives them up stops with one
/// message.
///
/// With -ffast-math or -ffinite-math-only a compiler may take `x != x` for false: then a NaN passes every
/// check of range, and an iteration may accept one. What else -ffast-math permits (another order of sums,
/// reciprocals instead of divisions) moves last digits only, so `-ffast-math -fno-finite-math-only` is
/// accepted; how far they move is measured (tests/builds.sh). Fused multiply-adds are harmless.
#if (defined(__FINITE_MATH_ONLY__) && __FINITE_MATH_ONLY__) || defined(_M_FP_FAST)
#error "aqueth needs NaN and infinity: add -fno-finite-math-only behind -ffast-math, -Ofast or the like"
#endif

#include <limits>

static_assert(std::numeric_limits<double>::is_iec559 && std::numeric_limits<double>::digits == 53,
              "aqueth needs IEC 60559 double precision");
