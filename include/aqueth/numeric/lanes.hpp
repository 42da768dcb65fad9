// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/real.hpp>

#include <bit>
#include <cstddef>
#include <type_traits>

/// Several numbers side by side that a formula takes for one: the scalar of loops over arrays.
///
/// A processor works on a vector of numbers at once. A multiply-add takes four cycles and two can begin in
/// each, so a chain of dependent multiply-adds keeps seven other vectors waiting. `lanes` is several vectors
/// side by side: the operations of one fill the waiting time of the others, and each constant is loaded once
/// for all of them.
///
/// The vectors are those of g++ and clang. Every function is inlined always: a call would pass the vectors
/// through memory.
namespace aqueth::inline AQUETH_ABI::numeric {

#if defined(__GNUC__)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wpsabi"  // no vector is passed in a call, because every function is inlined

namespace detail {

// Literals in formulas are int, which double holds exactly. Wider integers would round silently.
template <class Number>
concept number_for_lanes = std::is_floating_point_v<Number> || std::is_same_v<Number, int>;

/// Numbers side by side. Operators work on each of them.
/// @tparam T       float or double
/// @tparam Bytes   size of a vector
/// @tparam Vectors how many vectors, a power of two
template <real T, std::size_t Bytes, std::size_t Vectors>
class lanes {
    static_assert(std::has_single_bit(Vectors), "the number of vectors must be a power of two");
    using half = lanes<T, Bytes, Vectors / 2>;

public:
    static constexpr std::size_t count = 2 * half::count;  ///< how many numbers

    /// @param x the number for every lane
    template <class Number>
        requires number_for_lanes<Number>
    [[gnu::always_inline]] explicit lanes(Number x) : a_(x), b_(x) {}
    // An object with a copy constructor is passed in the same way between functions for different processors.
    [[gnu::always_inline]] lanes(lanes const& other) : a_(other.a_), b_(other.b_) {}
    [[gnu::always_inline]] lanes& operator=(lanes const& other) {
        a_ = other.a_;
        b_ = other.b_;
        return *this;
    }

    /// @param from first of `count` numbers in memory
    /// @return these numbers
    [[gnu::always_inline]] static lanes load(T const* from) {
        return lanes(half::load(from), half::load(from + half::count));
    }
    /// @param to destination of the numbers
    [[gnu::always_inline]] void store(T* to) const {
        a_.store(to);
        b_.store(to + half::count);
    }

    [[gnu::always_inline]] friend lanes operator+(lanes const& x, lanes const& y) {
        return lanes(x.a_ + y.a_, x.b_ + y.b_);
    }
    [[gnu::always_inline]] friend lanes operator-(lanes const& x, lanes const& y) {
        return lanes(x.a_ - y.a_, x.b_ - y.b_);
    }
    [[gnu::always_inline]] friend lanes operator*(lanes const& x, lanes const& y) {
        return lanes(x.a_ * y.a_, x.b_ * y.b_);
    }
    [[gnu::always_inline]] friend lanes operator/(lanes const& x, lanes const& y) {
        return lanes(x.a_ / y.a_, x.b_ / y.b_);
    }
    [[gnu::always_inline]] friend lanes multiply_add(lanes const& x, lanes const& y, lanes const& z) {
        return lanes(multiply_add(x.a_, y.a_, z.a_), multiply_add(x.b_, y.b_, z.b_));
    }

private:
    [[gnu::always_inline]] lanes(half const& a, half const& b) : a_(a), b_(b) {}

    half a_, b_;
};

/// One vector.
template <real T, std::size_t Bytes>
class lanes<T, Bytes, 1> {
    typedef T vector __attribute__((vector_size(Bytes)));
    typedef T vector_in_memory __attribute__((vector_size(Bytes), aligned(sizeof(T)), may_alias));

public:
    static constexpr std::size_t count = Bytes / sizeof(T);

    template <class Number>
        requires number_for_lanes<Number>
    [[gnu::always_inline]] explicit lanes(Number x) : v_(vector{} + static_cast<T>(x)) {}
    [[gnu::always_inline]] lanes(lanes const& other) : v_(other.v_) {}
    [[gnu::always_inline]] lanes& operator=(lanes const& other) {
        v_ = other.v_;
        return *this;
    }

    [[gnu::always_inline]] static lanes load(T const* from) {
        vector const v = *reinterpret_cast<vector_in_memory const*>(from);
        return lanes(v, whole{});
    }
    [[gnu::always_inline]] void store(T* to) const { *reinterpret_cast<vector_in_memory*>(to) = v_; }

    [[gnu::always_inline]] friend lanes operator+(lanes const& x, lanes const& y) {
        return lanes(x.v_ + y.v_, whole{});
    }
    [[gnu::always_inline]] friend lanes operator-(lanes const& x, lanes const& y) {
        return lanes(x.v_ - y.v_, whole{});
    }
    [[gnu::always_inline]] friend lanes operator*(lanes const& x, lanes const& y) {
        return lanes(x.v_ * y.v_, whole{});
    }
    [[gnu::always_inline]] friend lanes operator/(lanes const& x, lanes const& y) {
        return lanes(x.v_ / y.v_, whole{});
    }
    // In one expression, so that clang may fuse it.
    [[gnu::always_inline]] friend lanes multiply_add(lanes const& x, lanes const& y, lanes const& z) {
        return lanes(x.v_ * y.v_ + z.v_, whole{});
    }

private:
    struct whole {};  // tells a vector from a number
    [[gnu::always_inline]] lanes(vector const& v, whole) : v_(v) {}

    vector v_;
};

}  // namespace detail

/// Numbers side by side. The usual operators, and `multiply_add`, work on each of them.
/// @tparam T       float or double
/// @tparam Bytes   size of a vector
/// @tparam Vectors how many vectors, a power of two
template <real T, std::size_t Bytes, std::size_t Vectors>
using lanes = detail::lanes<T, Bytes, Vectors>;

#pragma GCC diagnostic pop
#endif

namespace detail {

template <class V>
struct lanes_traits {
    using scalar = V;
    static constexpr std::size_t count = 1;
};
#if defined(__GNUC__)
template <real T, std::size_t Bytes, std::size_t Vectors>
struct lanes_traits<lanes<T, Bytes, Vectors>> {
    using scalar = T;
    static constexpr std::size_t count = lanes<T, Bytes, Vectors>::count;
};
#endif

template <class V>
struct half_of_lanes {
    using type = V;
};
#if defined(__GNUC__)
template <real T, std::size_t Bytes, std::size_t Vectors>
    requires(Vectors > 1)
struct half_of_lanes<lanes<T, Bytes, Vectors>> {
    using type = lanes<T, Bytes, Vectors / 2>;
};
#endif

}  // namespace detail

/// The scalar in `lanes`; of any other number the number itself.
template <class V>
using scalar_of = typename detail::lanes_traits<V>::scalar;

/// How many scalars a number has: 1, or those of `lanes`.
template <class V>
inline constexpr std::size_t lanes_of = detail::lanes_traits<V>::count;

/// Half as many vectors side by side, for formulas that keep twice as many numbers in registers.
template <class V>
using half_of = typename detail::half_of_lanes<V>::type;

/// @tparam V a scalar or `lanes`
/// @param from first number in memory
/// @return as many numbers as V has
template <class V>
[[gnu::always_inline]] inline V load(scalar_of<V> const* from) {
    if constexpr (lanes_of<V> == 1) {
        return *from;
    } else {
        return V::load(from);
    }
}

/// @param x  a scalar or `lanes`
/// @param to destination of its numbers
template <class V>
[[gnu::always_inline]] inline void store(V const& x, scalar_of<V>* to) {
    if constexpr (lanes_of<V> == 1) {
        *to = x;
    } else {
        x.store(to);
    }
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
