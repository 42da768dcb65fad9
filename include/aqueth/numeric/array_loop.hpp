// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/instructions.hpp>

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <tuple>
#include <type_traits>
#include <utility>

// A loop over a block has no dependence between its elements, which the compiler could not know of pointers.
#if defined(__clang__)
#define AQUETH_INDEPENDENT_ELEMENTS _Pragma("clang loop vectorize(assume_safety)")
#elif defined(__GNUC__)
#define AQUETH_INDEPENDENT_ELEMENTS _Pragma("GCC ivdep")
#else
#define AQUETH_INDEPENDENT_ELEMENTS
#endif

/// One operation over many elements.
///
/// Elements are taken in blocks of 64. For a block the operation's `quick` is a straight line of arithmetic
/// without a branch, which the compiler turns into vector instructions; besides its value it says, in one
/// bit, whether that value is in doubt (out of range, not converged, or merely not certain). Only those
/// elements are done again by `careful`, the scalar function with all its branches.
///
/// Where that line is long, each step waiting for the one before, an operation has `prepare` besides: it
/// works out a number for every element of the block in a loop of its own, and gets it as one more
/// argument. Of short loops a processor has several elements under way at a time, of a long one not even
/// one.
namespace aqueth::numeric {

/// The bits of a floating-point number, as an unsigned integer of its size.
template <class T>
using bits = std::conditional_t<sizeof(T) == 8, std::uint64_t, std::uint32_t>;

/// @param x any number
/// @return its bits
template <class T>
constexpr bits<T> bits_of(T x) {
    static_assert(std::numeric_limits<T>::is_iec559 && sizeof(bits<T>) == sizeof(T));
    return std::bit_cast<bits<T>>(x);
}

/// Range check in integer arithmetic, which floating-point units do not have to wait for. Numbers of one sign
/// are ordered like their bits, and a NaN comes after infinity.
/// @param x    any number
/// @param low  lower end of the range, 0 or more
/// @param high upper end of the range, above 0
/// @return bits whose highest is set if x is outside the range, NaN, or negative zero
template <class T>
constexpr bits<T> outside(T x, T low, T high) {
    return bits_of(x) | (bits_of(x) - bits_of(low)) | (bits_of(high) - bits_of(x));
}

/// A value, and in the highest bit of `doubt` whether it may be wrong.
template <class T>
struct doubtful {
    T value;        ///< the value
    bits<T> doubt;  ///< highest bit set: look again
};

/// Hands doubt on in the value itself.
/// @param x a value and its doubt
/// @return the value; NaN, which is outside every range, if there is doubt
template <class T>
constexpr T certain_or_nan(doubtful<T> const& x) {
    using whole = std::make_signed_t<bits<T>>;
    whole const spread = static_cast<whole>(x.doubt) >> (8 * sizeof(T) - 1);  // all ones, or none
    return std::bit_cast<T>(bits_of(x.value) | static_cast<bits<T>>(spread));
}

namespace detail {

inline constexpr std::size_t block = 64;

/// The elements of a block that are in doubt, done again.
/// @return how many are refused
template <std::size_t Given, class T, class Operation, std::size_t N>
[[gnu::noinline, gnu::cold]] std::size_t do_again(Operation const& operation,
                                                  std::array<T const*, N> const& in, T* out,
                                                  bits<T> const* doubt, bool* valid) {
    std::array<T const*, Given> given{};
    std::copy_n(in.begin(), Given, given.begin());
    std::size_t refused = 0;
    for (std::size_t i = 0; i < block; ++i) {
        if ((doubt[i] >> (8 * sizeof(T) - 1)) == 0) continue;
        out[i] = std::apply([&](auto... each) { return operation.careful(each[i]...); }, given);
        if (out[i] == out[i]) continue;
        if (valid != nullptr) valid[i] = false;
        ++refused;
    }
    return refused;
}

#if defined(__clang__)
#pragma clang diagnostic push
#pragma clang diagnostic ignored "-Wpass-failed"  // not every operation, nor -O1, can make vectors of it
#endif
// Of the N inputs the operation was given the first; the others are prepared.
template <std::size_t Given, class T, class Operation, std::size_t N, std::size_t... I>
[[gnu::flatten]] inline std::size_t do_block(Operation const& operation, std::array<T const*, N> const& in,
                                             T* out, bool* valid, std::index_sequence<I...>) {
    if constexpr (requires { operation.quick(*std::get<I>(in)...); }) {
        bits<T> doubt[block];
        bits<T> any = 0;
        AQUETH_INDEPENDENT_ELEMENTS
        for (std::size_t i = 0; i < block; ++i) {
            doubtful<T> const result = operation.quick(std::get<I>(in)[i]...);
            out[i] = result.value;
            doubt[i] = result.doubt;
            any |= result.doubt;
        }
        if ((any >> (8 * sizeof(T) - 1)) == 0) return 0;
        return do_again<Given>(operation, in, out, doubt, valid);
    } else {
        T prepared[block];
        AQUETH_INDEPENDENT_ELEMENTS
        for (std::size_t i = 0; i < block; ++i) prepared[i] = operation.prepare(std::get<I>(in)[i]...);
        std::array<T const*, N + 1> const more{std::get<I>(in)..., prepared};
        return do_block<Given>(operation, more, out, valid, std::make_index_sequence<N + 1>{});
    }
}

template <class T, class Operation, std::size_t N>
[[gnu::flatten]] inline std::size_t do_blocks(Operation const& shared, std::array<T const*, N> in, T* out,
                                              bool* valid, std::size_t size) {
    Operation const operation = shared;  // our own, so that no store can change it
    constexpr auto each = std::make_index_sequence<N>{};
    std::size_t refused = 0;
    for (; size >= block; size -= block) {
        refused += do_block<N>(operation, in, out, valid, each);
        for (T const*& start : in) start += block;
        out += block;
        if (valid != nullptr) valid += block;
    }
    return refused;
}

#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__AVX512F__)
template <class T, class Operation, std::size_t N>
__attribute__((target("avx512f,avx512dq,avx512vl,avx2,fma"), flatten)) std::size_t
do_blocks_avx512(Operation const& operation, std::array<T const*, N> const& in, T* out, bool* valid,
                 std::size_t size) {
    return do_blocks(operation, in, out, valid, size);
}

template <class T, class Operation, std::size_t N>
__attribute__((target("avx2,fma"), flatten)) std::size_t
do_blocks_avx2(Operation const& operation, std::array<T const*, N> const& in, T* out, bool* valid,
               std::size_t size) {
    return do_blocks(operation, in, out, valid, size);
}
#endif

template <class T, class Operation, std::size_t N>
[[gnu::flatten]] std::size_t do_blocks_as_compiled(Operation const& operation,
                                                   std::array<T const*, N> const& in, T* out, bool* valid,
                                                   std::size_t size) {
    return do_blocks(operation, in, out, valid, size);
}

// A function of its own has its constants ready; inlined, GCC copies them anew at every call.
template <class T, class Operation, std::size_t N>
[[gnu::flatten, gnu::noinline]] std::size_t do_blocks_apart(Operation const& operation,
                                                            std::array<T const*, N> const& in, T* out,
                                                            bool* valid, std::size_t size) {
    return do_blocks(operation, in, out, valid, size);
}

#if defined(__clang__)
#pragma clang diagnostic pop
#endif

template <class T, class Operation, std::size_t N>
std::size_t do_whole_blocks(Operation const& operation, std::array<T const*, N> const& in, T* out,
                            bool* valid, std::size_t size) {
#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__AVX512F__)
    if (__builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512dq") &&
        __builtin_cpu_supports("avx512vl"))
        return do_blocks_avx512(operation, in, out, valid, size);
    if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"))
        return do_blocks_avx2(operation, in, out, valid, size);
#endif
    constexpr bool has_own_numbers = sizeof(Operation) > sizeof(T);
    if constexpr (has_own_numbers) {
        return do_blocks_as_compiled(operation, in, out, valid, size);
    } else {
        return do_blocks_apart(operation, in, out, valid, size);
    }
}

}  // namespace detail

/// Does an operation on every element.
/// @tparam T         float or double
/// @param operation  with `quick` (N numbers, and what `prepare` made of them -> doubtful<T>, no branch) and
///                   `careful` (N numbers -> T, NaN if the arguments are out of range); copied
/// @param in         where each of the N inputs begins
/// @param out        where the results go; may be one of the inputs, but must not overlap one in part
/// @param valid      where false goes for an element that is refused, true for the others; may be null
/// @param size       how many elements
/// @return how many elements were refused; their result is NaN
template <class T, class Operation, std::size_t N>
std::size_t for_each_element(Operation const& operation, std::array<T const*, N> in, T* out, bool* valid,
                             std::size_t size) {
    if (valid != nullptr) std::fill_n(valid, size, true);
    bool const in_place = std::find(in.begin(), in.end(), out) != in.end();
    std::size_t done = in_place ? 0 : size - size % detail::block;
    std::size_t refused = detail::do_whole_blocks(operation, in, out, valid, done);
    // An element in doubt needs its inputs again, and the last ones make no whole block: through a copy.
    while (done < size) {
        std::size_t const count = (std::min)(detail::block, size - done);
        T copies[N][detail::block], results[detail::block];
        bool flags[detail::block];
        std::array<T const*, N> from{};
        for (std::size_t k = 0; k < N; ++k) {
            std::copy_n(in[k] + done, count, copies[k]);
            std::fill(copies[k] + count, copies[k] + detail::block, copies[k][0]);
            from[k] = copies[k];
        }
        std::fill_n(flags, detail::block, true);
        detail::do_whole_blocks(operation, from, results, flags, detail::block);
        for (std::size_t i = 0; i < count; ++i) {
            out[done + i] = results[i];
            if (valid != nullptr) valid[done + i] = flags[i];
            if (!flags[i]) ++refused;
        }
        done += count;
    }
    return refused;
}

}  // namespace aqueth::numeric

#undef AQUETH_INDEPENDENT_ELEMENTS
