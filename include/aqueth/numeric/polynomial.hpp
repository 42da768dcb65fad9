// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/floating_point.hpp>

#include <array>
#include <cstddef>
#include <tuple>
#include <utility>

/// Numerical helpers of the ground floor: polynomials and roots, generic in the scalar type.
///
/// Every sum is written out at compile time instead of looped over: compilers make straight lines, and only
/// straight lines, into vector instructions without being told to optimize more than -O2 does. `a * b + c` is
/// written out too, so that the compiler may contract it where the target has a fused multiply-add; std::fma
/// would call the library on targets that have none.
namespace aqueth::numeric {

/// A value and its first derivative.
/// @tparam T scalar type
template <class T>
struct value_and_slope {
    T value;  ///< the function's value
    T slope;  ///< its first derivative at the same point
};

/// The first terms of a Taylor series: f(x + h) = value + h (first + h (second + h third)) + ...
/// @tparam T scalar type
template <class T>
struct taylor_terms {
    T value;   ///< the function's value
    T first;   ///< its first derivative at the same point
    T second;  ///< half its second derivative
    T third;   ///< a sixth of its third derivative
};

namespace detail {

template <class C, std::size_t N, class T, std::size_t... K>
constexpr T one_chain(std::array<C, N> const& c, T const& x, std::index_sequence<K...>) {
    T value = T(c[N - 1]);
    ((value = value * x + T(c[N - 2 - K])), ...);
    return value;
}

// All but the first coefficient in two chains: the first one, often the largest, then costs one rounding
// only.
template <class C, std::size_t N, class T, std::size_t... Odd, std::size_t... Even>
constexpr T two_chains(std::array<C, N> const& c, T const& x, std::index_sequence<Odd...>,
                       std::index_sequence<Even...>) {
    constexpr std::size_t last_odd = (N - 2) / 2 * 2 + 1;
    constexpr std::size_t last_even = (N - 1) / 2 * 2;
    T const square = x * x;
    T odd = T(c[last_odd]);
    ((odd = odd * square + T(c[last_odd - 2 - 2 * Odd])), ...);
    T even = T(c[last_even]);
    ((even = even * square + T(c[last_even - 2 - 2 * Even])), ...);
    T const rest = even * x + odd;
    return rest * x + T(c[0]);
}

// The first turns are written out: a compiler may not drop a product with zero.
template <class C, std::size_t N, class T, std::size_t... K>
constexpr value_and_slope<T> with_slope(std::array<C, N> const& c, T const& x, std::index_sequence<K...>) {
    T slope = T(c[N - 1]);
    T value = slope * x + T(c[N - 2]);
    ((slope = slope * x + value, value = value * x + T(c[N - 3 - K])), ...);
    return {value, slope};
}

}  // namespace detail

/// Evaluates c[0] + c[1] x + ... + c[N-1] x^(N-1) by Horner's rule; from six terms on the even and the odd
/// powers apart, two sums that a processor works on at the same time.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return the polynomial's value, computed in T
template <class C, std::size_t N, class T>
constexpr T polynomial(std::array<C, N> const& c, T const& x) {
    static_assert(N > 0);
    if constexpr (N < 6) {
        return detail::one_chain(c, x, std::make_index_sequence<N - 1>{});
    } else {
        return detail::two_chains(c, x, std::make_index_sequence<(N - 2) / 2>{},
                                  std::make_index_sequence<(N - 1) / 2 - 1>{});
    }
}

/// Evaluates a polynomial in x whose coefficients are polynomials in y.
/// @param rows std::tuple or std::array with an array of coefficients for each power of x, lowest powers
///             first
/// @param x    first argument; any value (NaN in gives NaN out)
/// @param y    second argument; likewise
/// @return the polynomial's value, computed in T
template <class Rows, class T>
constexpr T polynomial(Rows const& rows, T const& x, T const& y) {
    return std::apply(
        [&](auto const&... each) {
            return polynomial(std::array<T, sizeof...(each)>{polynomial(each, y)...}, x);
        },
        rows);
}

/// One of several intervals of equal length, and the place in it.
template <class T>
struct interval {
    std::size_t index;  ///< which
    T place;            ///< -1 to 1 from end to end; beyond, outside of all intervals
};

/// @tparam Count how many intervals there are
/// @param x argument in units of an interval, 0 at the beginning of the first; NaN gives a place of NaN
/// @return the interval it lies in, or the nearest
template <std::size_t Count, class T>
constexpr interval<T> interval_of(T const& x) {
    T const begun = x > T(0) ? x : T(0);  // false for NaN
    T const held = begun < T(Count - 1) ? begun : T(Count - 1);
    int const k = static_cast<int>(held);
    return {static_cast<std::size_t>(k), T(2) * (x - T(k)) - T(1)};
}

/// Evaluates a polynomial and its derivative in one pass of Horner's rule.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return value and first derivative, computed in T
template <class C, std::size_t N, class T>
constexpr value_and_slope<T> polynomial_with_slope(std::array<C, N> const& c, T const& x) {
    static_assert(N > 1);
    return detail::with_slope(c, x, std::make_index_sequence<N - 2>{});
}

}  // namespace aqueth::numeric
