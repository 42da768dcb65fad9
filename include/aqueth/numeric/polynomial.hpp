// SPDX-License-Identifier: BSL-1.0
#pragma once

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

// All but the first coefficient in two chains: the first one, often the largest, then costs one rounding only.
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

template <class C, std::size_t N, class T, std::size_t... K>
constexpr taylor_terms<T> taylor(std::array<C, N> const& c, T const& x, std::index_sequence<K...>) {
    T third = T(c[N - 1]);
    T second = third * x + T(c[N - 2]);
    T first = second * x + T(c[N - 3]);
    second = third * x + second;
    T value = first * x + T(c[N - 4]);
    first = second * x + first;
    second = third * x + second;
    ((third = third * x + second, second = second * x + first, first = first * x + value,
      value = value * x + T(c[N - 5 - K])),
     ...);
    return {value, first, second, third};
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
/// @param rows one std::array of coefficients for each power of x, lowest powers first
/// @param x    first argument; any value (NaN in gives NaN out)
/// @param y    second argument; likewise
/// @return the polynomial's value, computed in T
template <class... Rows, class T>
constexpr T polynomial(std::tuple<Rows...> const& rows, T const& x, T const& y) {
    return std::apply(
        [&](auto const&... each) {
            return polynomial(std::array<T, sizeof...(Rows)>{polynomial(each, y)...}, x);
        },
        rows);
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

/// Evaluates a polynomial and its first three derivatives in one pass of Horner's rule.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return the Taylor series at x up to the cube, computed in T
template <class C, std::size_t N, class T>
constexpr taylor_terms<T> polynomial_taylor(std::array<C, N> const& c, T const& x) {
    static_assert(N > 3);
    return detail::taylor(c, x, std::make_index_sequence<N - 4>{});
}

}  // namespace aqueth::numeric
