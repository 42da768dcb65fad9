// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/floating_point.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>
#include <limits>
#include <tuple>
#include <type_traits>
#include <utility>

/// Numerical helpers of the ground floor: polynomials and roots, generic in the scalar type.
///
/// Every sum is unrolled at compile time, because at -O2 compilers vectorize only straight-line code. The
/// code writes `a * b + c`, which the compiler may contract to a fused multiply-add where the target has one.
/// std::fma would call the C library on other targets.
namespace aqueth::inline AQUETH_ABI::numeric {

/// A value and its first derivative.
/// @tparam T scalar type
template <real T>
struct value_and_slope {
    T value;  ///< the function's value
    T slope;  ///< its first derivative at the same point
};

/// The first terms of a Taylor series: f(x + h) = terms[0] + h (terms[1] + h (terms[2] + ...)).
/// @tparam T     scalar type
/// @tparam Terms how many
template <real T, std::size_t Terms>
using taylor_terms = std::array<T, Terms>;

/// @param a a factor
/// @param b a factor
/// @param c the addend
/// @return a b + c, written so that the compiler may fuse it
template <real T>
[[gnu::always_inline]] constexpr T multiply_add(T const& a, T const& b, T const& c) {
    return a * b + c;
}

namespace detail {

template <class C, std::size_t N, real T, std::size_t... K>
[[gnu::always_inline]] constexpr T one_chain(std::array<C, N> const& c, T const& x,
                                             std::index_sequence<K...>) {
    T value = T(c[N - 1]);
    ((value = multiply_add(value, x, T(c[N - 2 - K]))), ...);
    return value;
}

// All but the first coefficient in two chains. The first one, often the largest, then adds only one rounding.
template <class C, std::size_t N, real T, std::size_t... Odd, std::size_t... Even>
[[gnu::always_inline]] constexpr T two_chains(std::array<C, N> const& c, T const& x,
                                              std::index_sequence<Odd...>, std::index_sequence<Even...>) {
    constexpr std::size_t last_odd = (N - 2) / 2 * 2 + 1;
    constexpr std::size_t last_even = (N - 1) / 2 * 2;
    T const square = x * x;
    T odd = T(c[last_odd]);
    ((odd = multiply_add(odd, square, T(c[last_odd - 2 - 2 * Odd]))), ...);
    T even = T(c[last_even]);
    ((even = multiply_add(even, square, T(c[last_even - 2 - 2 * Even]))), ...);
    return multiply_add(multiply_add(even, x, odd), x, T(c[0]));
}

// The first turns are written out: a compiler may not drop a product with zero.
template <class C, std::size_t N, real T, std::size_t... K>
constexpr value_and_slope<T> with_slope(std::array<C, N> const& c, T const& x, std::index_sequence<K...>) {
    T slope = T(c[N - 1]);
    T value = slope * x + T(c[N - 2]);
    ((slope = slope * x + value, value = value * x + T(c[N - 3 - K])), ...);
    return {value, slope};
}

// Turn number K of Horner's rule: from the highest derivative down, each adds the one below it. The first
// derivative begins in turn 0, the second in turn 1.
template <std::size_t K, real T, std::size_t Terms, std::size_t... J>
constexpr void taylor_turn(taylor_terms<T, Terms>& f, T const& x, T const& c, std::index_sequence<J...>) {
    auto const take_up = [&]<std::size_t I>(std::integral_constant<std::size_t, I>) {
        if constexpr (I <= K) f[I] = multiply_add(f[I], x, f[I - 1]);
        if constexpr (I == K + 1) f[I] = f[I - 1];
    };
    (take_up(std::integral_constant<std::size_t, Terms - 1 - J>{}), ...);
    f[0] = multiply_add(f[0], x, c);
}

// Inlined always: in a large source file g++ 12 would call it, and the loops around it could not be
// vectorized.
template <std::size_t Terms, real T, std::size_t N, std::size_t... K>
[[gnu::always_inline]] constexpr taylor_terms<T, Terms> taylor(std::array<T, N> const& c, T const& x,
                                                               std::index_sequence<K...>) {
    taylor_terms<T, Terms> f{};
    f[0] = c[N - 1];
    (taylor_turn<K>(f, x, c[N - 2 - K], std::make_index_sequence<Terms - 1>{}), ...);
    return f;
}

}  // namespace detail

/// Evaluates c[0] + c[1] x + ... + c[N-1] x^(N-1) by Horner's rule. From eight terms on, the even and the odd
/// powers are two sums, which a processor evaluates in parallel.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return the polynomial's value, computed in T
template <class C, std::size_t N, real T>
[[gnu::always_inline]] constexpr T polynomial(std::array<C, N> const& c, T const& x) {
    static_assert(N > 0);
    if constexpr (N < 8) {
        return detail::one_chain(c, x, std::make_index_sequence<N - 1>{});
    } else {
        return detail::two_chains(c, x, std::make_index_sequence<(N - 2) / 2>{},
                                  std::make_index_sequence<(N - 1) / 2 - 1>{});
    }
}

/// The same by Horner's rule alone: one operation fewer. For loops over arrays, where a processor overlaps
/// elements.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return the polynomial's value, computed in T
template <class C, std::size_t N, real T>
[[gnu::always_inline]] constexpr T polynomial_in_one_chain(std::array<C, N> const& c, T const& x) {
    return detail::one_chain(c, x, std::make_index_sequence<N - 1>{});
}

namespace detail {

template <class Rows, real T, std::size_t... I>
[[gnu::always_inline]] constexpr T by_rows(Rows const& rows, T const& x, T const& y,
                                           std::index_sequence<I...>) {
    return polynomial(std::array<T, sizeof...(I)>{polynomial(std::get<I>(rows), y)...}, x);
}

template <class Rows, real T, std::size_t... I>
[[gnu::always_inline]] constexpr T rows_in_one_chain(Rows const& rows, T const& x, T const& y,
                                                     std::index_sequence<I...>) {
    constexpr std::size_t last = sizeof...(I);
    T value = polynomial_in_one_chain(std::get<last>(rows), y);
    ((value = multiply_add(value, x, polynomial_in_one_chain(std::get<last - 1 - I>(rows), y))), ...);
    return value;
}

// As `with_slope`, but `lanes` stay in registers. For one number it is up to half slower there (g++ 12).
template <class C, std::size_t N, real T, std::size_t... K>
[[gnu::always_inline]] constexpr void row_with_slope(std::array<C, N> const& c, T const& y, T& value,
                                                     T& slope, std::index_sequence<K...>) {
    slope = T(c[N - 1]);
    value = multiply_add(slope, y, T(c[N - 2]));
    ((slope = multiply_add(slope, y, value), value = multiply_add(value, y, T(c[N - 3 - K]))), ...);
}

template <class Rows, real T, std::size_t... I>
[[gnu::always_inline]] constexpr void rows_with_slope(Rows const& rows, T const& x, T const& y, T& value,
                                                      T& slope, std::index_sequence<I...>) {
    auto const row = [&](auto const& c, T& its_value, T& its_slope) __attribute__((always_inline)) {
        constexpr std::size_t size = std::tuple_size_v<std::remove_cvref_t<decltype(c)>>;
        static_assert(size >= 2, "a row needs two coefficients");
        row_with_slope(c, y, its_value, its_slope, std::make_index_sequence<size - 2>{});
    };
    constexpr std::size_t last = sizeof...(I);
    row(std::get<last>(rows), value, slope);
    T of_row(0), slope_of_row(0);
    ((row(std::get<last - 1 - I>(rows), of_row, slope_of_row), value = multiply_add(value, x, of_row),
      slope = multiply_add(slope, x, slope_of_row)),
     ...);
}

}  // namespace detail

/// Evaluates a polynomial in x whose coefficients are polynomials in y.
/// @param rows std::tuple or std::array with an array of coefficients for each power of x, lowest powers
///             first
/// @param x    first argument; any value (NaN in gives NaN out)
/// @param y    second argument; likewise
/// @return the polynomial's value, computed in T
template <class Rows, real T>
[[gnu::always_inline]] constexpr T polynomial(Rows const& rows, T const& x, T const& y) {
    return detail::by_rows(rows, x, y, std::make_index_sequence<std::tuple_size_v<Rows>>{});
}

/// The same by Horner's rule alone. A coefficient is used as soon as it is known and takes no register
/// afterwards. For loops over arrays.
/// @param rows std::tuple or std::array with an array of coefficients for each power of x, lowest powers
///             first
/// @param x    first argument; any value (NaN in gives NaN out)
/// @param y    second argument; likewise
/// @return the polynomial's value, computed in T
template <class Rows, real T>
[[gnu::always_inline]] constexpr T polynomial_in_one_chain(Rows const& rows, T const& x, T const& y) {
    return detail::rows_in_one_chain(rows, x, y, std::make_index_sequence<std::tuple_size_v<Rows> - 1>{});
}

/// `polynomial_in_one_chain`, with the derivative with respect to y.
/// @param rows  as there, each with at least two coefficients
/// @param x     first argument
/// @param y     second argument
/// @param value destination of the polynomial's value
/// @param slope destination of its derivative with respect to y
template <class Rows, real T>
[[gnu::always_inline]] constexpr void polynomial_with_slope_in_one_chain(Rows const& rows, T const& x,
                                                                         T const& y, T& value, T& slope) {
    detail::rows_with_slope(rows, x, y, value, slope,
                            std::make_index_sequence<std::tuple_size_v<Rows> - 1>{});
}

namespace detail {

/// 0, 1, 2 to Count - 1.
template <std::size_t Count, real T>
inline constexpr auto whole_numbers = [] {
    std::array<T, Count> result{};
    for (std::size_t i = 0; i < Count; ++i) result[i] = static_cast<T>(i);
    return result;
}();

/// An index as a number. x86 processors convert into the lower half of a register and so wait for what was in
/// the upper one, which clang may leave to be the result before: there the numbers come from a table.
/// @tparam Count the index is less than this
template <std::size_t Count, real T>
constexpr T whole_number(int index) {
#if defined(__SSE2__)
    if constexpr (std::is_floating_point_v<T>)
        return whole_numbers<Count, T>[static_cast<std::size_t>(index)];
#endif
    return T(index);
}

}  // namespace detail

/// One of several intervals of equal length, and the position in it.
template <real T>
struct interval {
    std::size_t index;  ///< which
    T place;            ///< 0 to 1 from end to end; NaN outside of all intervals
};

/// @tparam Count how many intervals there are
/// @param x argument in units of an interval, 0 at the beginning of the first; any value
/// @return the interval that contains x, and the position in it
template <std::size_t Count, real T>
constexpr interval<T> interval_of(T const& x) {
    if (!(x >= T(0) && x <= T(Count))) [[unlikely]]
        return {0, std::numeric_limits<T>::quiet_NaN()};
    int const begun = static_cast<int>(x), last = static_cast<int>(Count) - 1;
    int const index = begun < last ? begun : last;  // the end belongs to the last
    return {static_cast<std::size_t>(index), x - detail::whole_number<Count, T>(index)};
}

/// The same without a branch, for first guesses.
/// @tparam Count how many intervals there are
/// @param x argument in units of an interval, 0 at the beginning of the first; any value
/// @return the nearest interval (for NaN the first), and the position from its beginning; outside of 0 to 1
///         (or NaN) if no interval contains x
template <std::size_t Count, real T>
constexpr interval<T> nearest_interval_of(T const& x) {
    T const from_first = x > T(0) ? x : T(0);  // NaN is not
    T const within = from_first < T(Count - 1) ? from_first : T(Count - 1);
    int const index = static_cast<int>(within);
    return {static_cast<std::size_t>(index), x - detail::whole_number<Count, T>(index)};
}

/// Evaluates a polynomial and its derivative in one pass of Horner's rule.
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return value and first derivative, computed in T
template <class C, std::size_t N, real T>
constexpr value_and_slope<T> polynomial_with_slope(std::array<C, N> const& c, T const& x) {
    static_assert(N > 1);
    return detail::with_slope(c, x, std::make_index_sequence<N - 2>{});
}

/// Evaluates a polynomial and its first derivatives in one pass of Horner's rule.
/// @tparam Terms how many terms of the series; at most as many as there are coefficients
/// @param c coefficients, lowest power first
/// @param x argument; any value (NaN in gives NaN out)
/// @return the Taylor series at x
template <std::size_t Terms, real T, std::size_t N>
[[gnu::always_inline]] constexpr taylor_terms<T, Terms> polynomial_taylor(std::array<T, N> const& c,
                                                                          T const& x) {
    static_assert(1 < Terms && Terms <= N);
    return detail::taylor<Terms>(c, x, std::make_index_sequence<N - 1>{});
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
