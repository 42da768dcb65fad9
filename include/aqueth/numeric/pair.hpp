// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>

#include <array>
#include <cstddef>
#include <type_traits>
#include <utility>

/// Polynomials by halves: the even and the odd powers are two polynomials in the square, of which a processor
/// can work on both at once. That halves the time of one evaluation; over arrays, where the elements already
/// fill the vectors, the same formulas serve with plain scalars.
namespace aqueth::numeric {

/// Two numbers to which the same is done.
/// @tparam T scalar type
template <class T>
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
/// Two doubles in one register. Not for constant expressions, which clang 14 cannot do with vectors.
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
template <class T>
using quick_pair = std::conditional_t<std::is_same_v<T, double>, register_pair, pair<T>>;
#else
/// The quickest pair there is at run time.
template <class T>
using quick_pair = pair<T>;
#endif

namespace detail {

template <class Pair, class C, std::size_t N, std::size_t... K>
constexpr Pair one_chain_of_pairs(std::array<pair<C>, N> const& c, Pair const& x, std::index_sequence<K...>) {
    Pair value(c[N - 1].first(), c[N - 1].second());
    ((value = multiply_add(value, x, Pair(c[N - 2 - K].first(), c[N - 2 - K].second()))), ...);
    return value;
}

template <class Pair, std::size_t N, std::size_t... K>
constexpr Pair all_but_the_first(std::array<Pair, N> const& c, Pair const& u, std::index_sequence<K...>) {
    Pair value = c[N - 1];
    ((value = multiply_add(value, u, c[N - 2 - K])), ...);
    return value;
}

// Value and derivatives of both halves; the first turns are written out, because a compiler may not drop a
// product with zero.
template <class Pair, std::size_t N, std::size_t... K>
constexpr taylor_terms<Pair> taylor(std::array<Pair, N> const& c, Pair const& u, std::index_sequence<K...>) {
    Pair third = c[N - 1];
    Pair second = multiply_add(third, u, c[N - 2]);
    Pair first = multiply_add(second, u, c[N - 3]);
    second = multiply_add(third, u, second);
    Pair value = multiply_add(first, u, c[N - 4]);
    first = multiply_add(second, u, first);
    second = multiply_add(third, u, second);
    ((third = multiply_add(third, u, second), second = multiply_add(second, u, first),
      first = multiply_add(first, u, value), value = multiply_add(value, u, c[N - 5 - K])),
     ...);
    return {value, first, second, third};
}

}  // namespace detail

/// Two polynomials of the same argument, by Horner's rule.
/// @param c coefficients of both, lowest power first
/// @param x the argument, twice
/// @return both values
template <class Pair, class C, std::size_t N>
constexpr Pair pair_polynomial(std::array<pair<C>, N> const& c, Pair const& x) {
    return detail::one_chain_of_pairs(c, x, std::make_index_sequence<N - 1>{});
}

/// Two polynomials of fifth degree of the same argument, even and odd powers apart.
/// @param c coefficients of both, lowest power first
/// @param x the argument
/// @return both values
template <class Pair, class C, class T>
constexpr Pair pair_quintic(std::array<pair<C>, 6> const& c, T const& x) {
    auto const at = [&](std::size_t k) { return Pair(T(c[k].first()), T(c[k].second())); };
    T const square = x * x;
    Pair const u(square, square);
    Pair const even = multiply_add(multiply_add(at(4), u, at(2)), u, at(0));
    Pair const odd = multiply_add(multiply_add(at(5), u, at(3)), u, at(1));
    return multiply_add(odd, Pair(x, x), even);
}

/// A polynomial from its halves.
/// @param c coefficients of the powers 2 k and 2 k + 1 at k, lowest first; at least two pairs
/// @param x argument; any value (NaN in gives NaN out)
/// @return the polynomial's value
template <class Pair, std::size_t N, class T>
constexpr T halved_polynomial(std::array<Pair, N> const& c, T const& x) {
    static_assert(N >= 2);
    T const u = x * x;
    Pair const upper = detail::all_but_the_first(c, Pair(u, u), std::make_index_sequence<N - 2>{});
    // The first coefficient, often the largest, comes last: then it costs one rounding only.
    T const odd = upper.second() * u + c[0].second();
    return (odd * x + upper.first() * u) + c[0].first();
}

/// A polynomial from its halves, with its first three derivatives.
/// @param c coefficients of the powers 2 k and 2 k + 1 at k, lowest first; at least four pairs
/// @param x argument; any value (NaN in gives NaN out)
/// @return the Taylor series at x up to the cube
template <class Pair, std::size_t N, class T>
constexpr taylor_terms<T> halved_polynomial_taylor(std::array<Pair, N> const& c, T const& x) {
    static_assert(N >= 4);
    T const u = x * x;
    auto const half = detail::taylor(c, Pair(u, u), std::make_index_sequence<N - 4>{});
    // even(v) + (x + h) odd(v) at v = (x + h)^2 = u + 2 x h + h^2, by powers of h
    T const x2 = T(2) * x, u4 = T(4) * u;
    T const e0 = half.value.first(), o0 = half.value.second(), e1 = half.first.first(),
            o1 = half.first.second(), e2 = half.second.first(), o2 = half.second.second(),
            e3 = half.third.first(), o3 = half.third.second();
    return {x * o0 + e0, x2 * e1 + (T(2) * u * o1 + o0), x * (T(3) * o1 + u4 * o2) + (u4 * e2 + e1),
            x2 * (T(2) * e2 + u4 * e3) + (T(2) * u4 * (o2 + u * o3) + o1)};
}

}  // namespace aqueth::numeric
