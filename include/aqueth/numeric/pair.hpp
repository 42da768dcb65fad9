// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>
#include <type_traits>
#include <utility>

/// Polynomials by halves: the even and the odd powers are two polynomials in the square, which a processor
/// evaluates in parallel. That halves the latency of one evaluation. Over arrays the elements already fill
/// the vectors, and `polynomial_in_one_chain` needs fewer operations.
namespace aqueth::inline AQUETH_ABI::numeric {

/// Two numbers that take part in the same operations.
/// @tparam T scalar type
template <real T>
class pair {
public:
    pair() = default;
    /// @param a the first
    /// @param b the second
    constexpr pair(T const& a, T const& b) : first_(a), second_(b) {}
    constexpr T const& first() const { return first_; }    ///< @return the first
    constexpr T const& second() const { return second_; }  ///< @return the second
    /// @return products of the firsts and of the seconds
    friend constexpr pair operator*(pair const& a, pair const& b) {
        return {T(a.first_ * b.first_), T(a.second_ * b.second_)};
    }
    /// @return sums of the firsts and of the seconds
    friend constexpr pair operator+(pair const& a, pair const& b) {
        return {T(a.first_ + b.first_), T(a.second_ + b.second_)};
    }
    /// @return a b + c, written so that the compiler may fuse it
    friend constexpr pair multiply_add(pair const& a, pair const& b, pair const& c) {
        return {T(a.first_ * b.first_ + c.first_), T(a.second_ * b.second_ + c.second_)};
    }

private:
    T first_{};
    T second_{};
};

#if defined(__GNUC__)
/// Two doubles in one register. Not for constant expressions, where clang 14 has no vectors.
class register_pair {
    typedef double vector __attribute__((vector_size(16)));

public:
    register_pair() = default;
    /// @param a the first
    /// @param b the second
    register_pair(double a, double b) : value_{a, b} {}
    double first() const { return value_[0]; }   ///< @return the first
    double second() const { return value_[1]; }  ///< @return the second
    /// @return products of the firsts and of the seconds
    friend register_pair operator*(register_pair a, register_pair b) {
        return register_pair(a.value_ * b.value_);
    }
    /// @return sums of the firsts and of the seconds
    friend register_pair operator+(register_pair a, register_pair b) {
        return register_pair(a.value_ + b.value_);
    }
    /// @return a b + c, written so that the compiler may fuse it
    friend register_pair multiply_add(register_pair a, register_pair b, register_pair c) {
        return register_pair(a.value_ * b.value_ + c.value_);
    }

private:
    explicit register_pair(vector value) : value_(value) {}
    vector value_{};
};

/// The quickest pair there is at run time.
template <real T>
using quick_pair = std::conditional_t<std::is_same_v<T, double>, register_pair, pair<T>>;
#else
/// The quickest pair there is at run time.
template <real T>
using quick_pair = pair<T>;
#endif

namespace detail {

template <class Pair, class From, std::size_t N, std::size_t... K>
constexpr std::array<Pair, N> pairs_from(std::array<From, N> const& c, std::index_sequence<K...>) {
    using T = std::remove_cvref_t<decltype(Pair().first())>;
    return {Pair(T(c[K].first()), T(c[K].second()))...};
}

template <class Pair, std::size_t N, std::size_t... K>
constexpr Pair one_chain_of_pairs(std::array<Pair, N> const& c, Pair const& x, std::index_sequence<K...>) {
    Pair value = c[N - 1];
    ((value = multiply_add(value, x, c[N - 2 - K])), ...);
    return value;
}

}  // namespace detail

/// @tparam Pair type of two numbers in parallel
/// @param c pairs from a table
/// @return the same in that form
template <class Pair, class From, std::size_t N>
constexpr std::array<Pair, N> pairs_from(std::array<From, N> const& c) {
    return detail::pairs_from<Pair>(c, std::make_index_sequence<N>{});
}

/// Two polynomials of the same argument, by Horner's rule.
/// @param c coefficients of both, lowest power first
/// @param x the argument, twice
/// @return both values
template <class Pair, std::size_t N>
constexpr Pair pair_polynomial(std::array<Pair, N> const& c, Pair const& x) {
    return detail::one_chain_of_pairs(c, x, std::make_index_sequence<N - 1>{});
}

/// A polynomial from its halves.
/// @param c coefficients of the powers 2 k and 2 k + 1 at k, lowest first; at least two pairs
/// @param x argument; any value (NaN in gives NaN out)
/// @return the polynomial's value
template <class Pair, std::size_t N, real T>
constexpr T halved_polynomial(std::array<Pair, N> const& c, T const& x) {
    static_assert(N >= 2);
    T const u = x * x;
    Pair const upper = detail::one_chain_of_pairs(c, Pair(u, u), std::make_index_sequence<N - 2>{});
    // The first coefficient, often the largest, is added last: it then adds only one rounding.
    T const odd = upper.second() * u + c[0].second();
    return (odd * x + upper.first() * u) + c[0].first();
}

/// A polynomial from its halves, with its first two derivatives.
/// @param c coefficients of the powers 2 k and 2 k + 1 at k, lowest first; at least three pairs
/// @param x argument; any value (NaN in gives NaN out)
/// @return the Taylor series at x up to the square
template <class Pair, std::size_t N, real T>
constexpr taylor_terms<T, 3> halved_polynomial_taylor(std::array<Pair, N> const& c, T const& x) {
    T const u = x * x;
    auto const half = polynomial_taylor<3>(c, Pair(u, u));
    // even(v) + (x + h) odd(v) at v = (x + h)^2 = u + 2 x h + h^2, by powers of h
    T const e0 = half[0].first(), o0 = half[0].second(), e1 = half[1].first(), o1 = half[1].second(),
            e2 = half[2].first(), o2 = half[2].second();
    T const u4 = T(4) * u;
    return {x * o0 + e0, T(2) * x * e1 + (T(2) * u * o1 + o0), x * (T(3) * o1 + u4 * o2) + (u4 * e2 + e1)};
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
