// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

namespace aqueth::inline AQUETH_ABI::numeric {

/// Integral by Simpson's rule: exact for a cubic; the error falls with the fourth power of the intervals.
/// @param f         callable: double -> double
/// @param lower     lower end
/// @param upper     upper end
/// @param intervals even number, 2 or more, into which the range is divided; not checked
/// @return the integral
/// @par Source
/// M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 25.4.6 (from memory)
template <class F>
constexpr double simpson(F const& f, double lower, double upper, int intervals) {
    double sum = 0.0;
    for (int i = 0; i <= intervals; ++i) {
        double const weight = i == 0 || i == intervals ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
        sum += weight * f(lower + (upper - lower) * i / intervals);
    }
    return sum * (upper - lower) / (3.0 * intervals);
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
