// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/floating_point.hpp>
#include <aqueth/numeric/polynomial.hpp>

#include <array>
#include <cstddef>
#include <cstdint>

namespace aqueth::inline AQUETH_ABI::numeric {

namespace detail {

/// 1/k!, the Taylor coefficients of exp.
inline constexpr auto inverse_factorials = [] {
    std::array<double, 14> result{1.0};
    double factorial = 1.0;
    for (std::size_t k = 1; k < result.size(); ++k) {
        factorial *= static_cast<double>(k);
        result[k] = 1.0 / factorial;
    }
    return result;
}();

}  // namespace detail

/// The exponential function without a branch or a call, for loops over arrays.
/// @param x argument, -700 to 700; for any other the result is meaningless
/// @return exp(x), within 2 ulp
[[gnu::always_inline]] inline double exponential(double x) {
    // exp(x) = 2^n exp(r), where x = n ln 2 + r. The upper part of ln 2 has 33 bits: its product with n is
    // exact.
    constexpr double per_ln_2 = 1.4426950408889634;
    constexpr double ln_2_upper = 0x1.62e42fee00000p-1, ln_2_lower = 0x1.a39ef35793c76p-33;
    auto const n = static_cast<std::int32_t>(x * per_ln_2 + 1024.5) - 1024;  // the nearest integer
    double const r = (x - n * ln_2_upper) - n * ln_2_lower;
    double const of_rest = polynomial(detail::inverse_factorials, r);
    return same_bits<double>(same_bits<std::int64_t>(of_rest) + (static_cast<std::int64_t>(n) << 52));
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
