// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <numbers>

namespace aqueth::inline AQUETH_ABI::numeric {

/// Finds where a function with one valley is least, by golden section: one value of the function for each
/// division of the range by 1.618.
/// @param f     callable: double -> double
/// @param lower lower end
/// @param upper upper end
/// @param width how narrow the range becomes before the search ends, above 0. Near a smooth valley values of
///              f differ only by rounding within about 1e-8 of the range
/// @return the middle of that last range; near an end if f rises or falls all the way
/// @par Source
/// J. Kiefer, Proceedings of the American Mathematical Society 4 (1953) 502 (from memory)
template <class F>
constexpr double minimum(F const& f, double lower, double upper, double width) {
    constexpr double golden = std::numbers::phi - 1.0;
    double a = upper - golden * (upper - lower), fa = f(a);
    double b = lower + golden * (upper - lower), fb = f(b);
    for (int i = 0; i < 100 && upper - lower > width; ++i) {
        if (fa < fb) {
            upper = b;
            b = a;
            fb = fa;
            a = upper - golden * (upper - lower);
            fa = f(a);
        } else {
            lower = a;
            a = b;
            fa = fb;
            b = lower + golden * (upper - lower);
            fb = f(b);
        }
    }
    return 0.5 * (lower + upper);
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
