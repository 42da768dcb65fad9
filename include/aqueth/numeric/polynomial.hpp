// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <array>
#include <cstddef>

/// Numerical helpers of the ground floor: polynomials and roots, generic in the scalar type.
namespace aqueth::numeric {

/// A value and its first derivative.
/// @tparam T scalar type
template <class T>
struct value_and_slope {
    T value;  ///< the function's value
    T slope;  ///< its first derivative at the same point
};

/// Evaluates c[0] + c[1] x + ... + c[N-1] x^(N-1) by Horner's rule.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return the polynomial's value, computed in T
/// @note `a * b + c` is written out so that the compiler may contract it where the target has a fused
///       multiply-add; std::fma would call the library on targets that have none.
template <class C, std::size_t N, class T>
constexpr T polynomial(std::array<C, N> const& c, T const& x) {
    static_assert(N > 0);
    T value = T(c[N - 1]);
    for (std::size_t k = N - 1; k-- > 0;) value = value * x + T(c[k]);
    return value;
}

/// Evaluates a polynomial and its derivative in one pass of Horner's rule.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return value and first derivative, computed in T
template <class C, std::size_t N, class T>
constexpr value_and_slope<T> polynomial_with_slope(std::array<C, N> const& c, T const& x) {
    static_assert(N > 0);
    T value = T(c[N - 1]);
    T slope(0);
    for (std::size_t k = N - 1; k-- > 0;) {
        slope = slope * x + value;
        value = value * x + T(c[k]);
    }
    return {value, slope};
}

}  // namespace aqueth::numeric
