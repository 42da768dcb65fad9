// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/floating_point.hpp>
#include <aqueth/numeric/instructions.hpp>
#include <aqueth/numeric/lanes.hpp>
#include <aqueth/numeric/real.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <tuple>
#include <type_traits>
#include <utility>

/// One operation over many elements.
///
/// The loop takes elements in blocks of 64. The operation's `quick` handles a block in loops without a
/// branch, which the compiler vectorizes. For each element it returns a value and a doubt bit. The bit is set
/// for an element that is out of range, not converged, or not certain. The scalar function `careful`, with
/// all its branches, repeats only those elements.
///
/// A latency-bound loop is split into short loops, which pass on their numbers in arrays of a block's length.
/// A processor overlaps many elements of a short loop, and fewer than two of a long one.
namespace aqueth::inline AQUETH_ABI::numeric {

/// The bits of a floating-point number, as an unsigned integer of its size.
template <real T>
using bits = std::conditional_t<sizeof(T) == 8, std::uint64_t, std::uint32_t>;

/// @param x any number
/// @return its bits
template <real T>
constexpr bits<T> bits_of(T x) {
    static_assert(std::numeric_limits<T>::is_iec559 && sizeof(bits<T>) == sizeof(T));
    return same_bits<bits<T>>(x);
}

/// Range check in integer arithmetic, in parallel with the floating-point units. Numbers of one sign are
/// ordered like their bits, and a NaN comes after infinity. A negative number has its highest bit set, and at
/// most one of the two differences clears it: both would need a magnitude above `high` and below `low`.
/// @param x    any number
/// @param low  lower end of the range, 0 or more and at most `high`
/// @param high upper end of the range, above 0
/// @return bits whose highest is set if x is outside the range, NaN, or negative zero
template <real T>
constexpr bits<T> outside(T x, T low, T high) {
    return (bits_of(x) - bits_of(low)) | (bits_of(high) - bits_of(x));
}

/// @param x bits
/// @return whether the highest one is set
template <class B>
constexpr bool highest_bit(B x) {
    return (x >> (8 * sizeof(B) - 1)) != 0;
}

/// A value and its doubt: the highest bit of `doubt` is set if the value may be wrong.
template <real T>
struct doubtful {
    T value;        ///< the value
    bits<T> doubt;  ///< highest bit set: look again
};

/// Encodes the doubt in the value itself.
/// @param x a value and its doubt
/// @return the value; NaN, which is outside every range, if there is doubt
template <real T>
constexpr T certain_or_nan(doubtful<T> const& x) {
    using whole = std::make_signed_t<bits<T>>;
    whole const spread = static_cast<whole>(x.doubt) >> (8 * sizeof(T) - 1);  // all ones, or none
    return same_bits<T>(bits_of(x.value) | static_cast<bits<T>>(spread));
}

inline constexpr std::size_t block = 64;  ///< number of elements in a block

/// Several numbers for each element of a block.
template <real T, std::size_t N>
class columns {
public:
    /// @param i index of an element
    /// @return its numbers
    [[gnu::always_inline]] std::array<T, N> operator[](std::size_t i) const {
        return [&]<std::size_t... K>(std::index_sequence<K...>) {
            return std::array<T, N>{numbers_[K][i]...};
        }
        (std::make_index_sequence<N>{});
    }
    /// @param i       index of an element
    /// @param numbers its new numbers
    [[gnu::always_inline]] void set(std::size_t i, std::array<T, N> const& numbers) {
        [&]<std::size_t... K>(std::index_sequence<K...>) { ((numbers_[K][i] = numbers[K]), ...); }
        (std::make_index_sequence<N>{});
    }

private:
    alignas(64) T numbers_[N][block];
};

/// Destination of the results of a block.
/// @tparam V numbers that are fastest to process at once: `lanes`, or a scalar
template <real V>
struct results {
    using T = scalar_of<V>;  ///< float or double

    T* value;        ///< of each element
    bits<T>* doubt;  ///< highest bit set: look again

    /// @param i index of an element
    /// @param x its doubt
    /// @return its doubt
    [[gnu::always_inline]] bits<T> set_doubt(std::size_t i, bits<T> x) const {
        doubt[i] = x;
        return x;
    }

    /// @param i      index of an element
    /// @param result its value and doubt
    /// @return its doubt
    [[gnu::always_inline]] bits<T> set(std::size_t i, doubtful<T> const& result) const {
        value[i] = result.value;
        return set_doubt(i, result.doubt);
    }
};

namespace detail {

/// The doubt of each element of a block.
template <real T>
struct doubts {
    alignas(64) bits<T> of[block];
};

/// Repeats the doubtful elements of a block. Not `cold`: g++ would optimize it for size, and in hot or cold
/// mixtures it repeats every element.
/// @return how many are refused
template <real T, class Operation, std::size_t N>
[[gnu::noinline]] std::size_t do_again(Operation const& operation, std::array<T const*, N> const& in, T* out,
                                       doubts<T> const& doubt, bool* valid) {
    std::size_t refused = 0;
    for (std::size_t i = 0; i < block; ++i) {
        if (!highest_bit(doubt.of[i])) continue;
        out[i] = std::apply([&](auto... each) { return operation.careful(each[i]...); }, in);
        if (out[i] == out[i]) continue;
        if (valid != nullptr) valid[i] = false;
        ++refused;
    }
    return refused;
}

// Four vectors side by side are fastest with the 16 registers of AVX2. With more registers the number matters
// less.
template <real T, std::size_t Bytes>
#if AQUETH_VECTOR_BYTES > 0
using side_by_side = lanes<T, Bytes, 4>;
#else
using side_by_side = T;
#endif

#if defined(__clang__)
#pragma clang diagnostic push
#pragma clang diagnostic ignored "-Wpass-failed"  // some loops, and all at -O1, are not vectorized
#endif

// Processes blocks up to the first one with a doubtful element, which the caller repeats. A call from this
// loop would spill the constants from their registers.
// @tparam V numbers that are processed at once
// @return number of blocks without a doubt; `doubt` holds the doubts of the next block
template <class V, real T, class Operation, std::size_t N, std::size_t... I>
[[gnu::always_inline]] inline std::size_t do_blocks(Operation const& shared, std::array<T const*, N> in,
                                                    T* out, doubts<T>& doubt, std::size_t blocks,
                                                    std::index_sequence<I...>) {
    static_assert(block % lanes_of<V> == 0, "a block must be a whole number of vectors side by side");
    Operation operation = shared;  // a local copy, which no store can alias
    // Likewise. It also aligns the stack, without which clang would spill vectors across cache lines.
    doubts<T> local;
    for (std::size_t done = 0; done < blocks; ++done) {
        bits<T> const any = operation.quick(in[I]..., results<V>{out, local.of});
        if (highest_bit(any)) [[unlikely]] {
            doubt = local;
            return done;
        }
        for (T const*& start : in) start += block;
        out += block;
    }
    return blocks;
}

#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__AVX512F__)
template <real T, class Operation, std::size_t N>
__attribute__((target("avx512f,avx512dq,avx512vl,avx2,fma"), flatten)) std::size_t
do_blocks_avx512(Operation const& operation, std::array<T const*, N> const& in, T* out, doubts<T>& doubt,
                 std::size_t blocks) {
    return do_blocks<side_by_side<T, 64>>(operation, in, out, doubt, blocks, std::make_index_sequence<N>{});
}

template <real T, class Operation, std::size_t N>
__attribute__((target("avx2,fma"), flatten)) std::size_t
do_blocks_avx2(Operation const& operation, std::array<T const*, N> const& in, T* out, doubts<T>& doubt,
               std::size_t blocks) {
    return do_blocks<side_by_side<T, 32>>(operation, in, out, doubt, blocks, std::make_index_sequence<N>{});
}
#endif

// Not inlined: GCC would otherwise copy the constants again at every call.
template <real T, class Operation, std::size_t N>
[[gnu::flatten, gnu::noinline]] std::size_t do_blocks_as_compiled(Operation const& operation,
                                                                  std::array<T const*, N> const& in, T* out,
                                                                  doubts<T>& doubt, std::size_t blocks) {
    return do_blocks<side_by_side<T, AQUETH_VECTOR_BYTES>>(operation, in, out, doubt, blocks,
                                                           std::make_index_sequence<N>{});
}

template <real T, class Operation, std::size_t N>
std::size_t do_blocks_as_processor_can(Operation const& operation, std::array<T const*, N> const& in, T* out,
                                       doubts<T>& doubt, std::size_t blocks) {
#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__AVX512F__)
    if (AQUETH_WIDEST_VECTOR_BITS >= 512 && __builtin_cpu_supports("avx512f") &&
        __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512vl"))
        return do_blocks_avx512(operation, in, out, doubt, blocks);
    if (AQUETH_WIDEST_VECTOR_BITS >= 256 && __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"))
        return do_blocks_avx2(operation, in, out, doubt, blocks);
#endif
    return do_blocks_as_compiled(operation, in, out, doubt, blocks);
}

template <real T, class Operation, std::size_t N>
std::size_t do_whole_blocks(Operation const& operation, std::array<T const*, N> in, T* out, bool* valid,
                            std::size_t blocks) {
    doubts<T> doubt;
    std::size_t refused = 0;
    while (blocks > 0) {
        std::size_t const certain = do_blocks_as_processor_can(operation, in, out, doubt, blocks);
        if (certain == blocks) break;
        auto const advance = [&](std::size_t by) {
            for (T const*& start : in) start += by * block;
            out += by * block;
            if (valid != nullptr) valid += by * block;
            blocks -= by;
        };
        advance(certain);
        refused += do_again(operation, in, out, doubt, valid);
        advance(1);
    }
    return refused;
}

#if defined(__clang__)
#pragma clang diagnostic pop
#endif

}  // namespace detail

/// Applies an operation to every element.
/// @tparam T         float or double
/// @param operation  with `quick`, a template over V, which is T or `lanes` of T (pointers to the block of
///                   each of the N inputs, and `results<V>` -> all doubts combined by OR), and `careful`
///                   (N numbers -> T, NaN if they are out of range). It is copied, and `quick` may change the
///                   copy, which begins anew after each block with a doubt; no result may depend on that.
/// @param in         first element of each of the N inputs
/// @param out        destination of the results; may be one of the inputs, but must not overlap one partly
/// @param valid      destination of the flags: false for a refused element, true for the others; may be null
/// @param size       how many elements
/// @return how many elements were refused; their result is NaN
template <real T, class Operation, std::size_t N>
std::size_t for_each_element(Operation const& operation, std::array<T const*, N> in, T* out, bool* valid,
                             std::size_t size) {
    if (valid != nullptr) std::fill_n(valid, size, true);
    bool const in_place = std::find(in.begin(), in.end(), out) != in.end();
    std::size_t done = in_place ? 0 : size - size % block;
    std::size_t refused = detail::do_whole_blocks(operation, in, out, valid, done / block);
    // In place, `careful` would find its inputs overwritten; and the last elements are no whole block. Both
    // go through a copy.
    while (done < size) {
        std::size_t const count = (std::min)(block, size - done);
        T copies[N][block], results[block];
        bool flags[block];
        std::array<T const*, N> from{};
        for (std::size_t k = 0; k < N; ++k) {
            std::copy_n(in[k] + done, count, copies[k]);
            std::fill(copies[k] + count, copies[k] + block, copies[k][0]);
            from[k] = copies[k];
        }
        std::fill_n(flags, block, true);
        detail::do_whole_blocks(operation, from, results, flags, 1);
        for (std::size_t i = 0; i < count; ++i) {
            out[done + i] = results[i];
            if (valid != nullptr) valid[done + i] = flags[i];
            if (!flags[i]) ++refused;
        }
        done += count;
    }
    return refused;
}

/// Applies a function to every element, one after the other: where no loop is faster.
/// @tparam T        float or double
/// @param function  callable: N numbers -> T, NaN if they are out of range
/// @param in        first element of each of the N inputs
/// @param out       destination of the results; may be one of the inputs, but must not overlap one partly
/// @param valid     destination of the flags: false for a refused element, true for the others; may be null
/// @param size      how many elements
/// @return how many elements were refused; their result is NaN
template <real T, class Function, std::size_t N>
std::size_t one_by_one(Function const& function, std::array<T const*, N> const& in, T* out, bool* valid,
                       std::size_t size) {
    std::size_t refused = 0;
    for (std::size_t i = 0; i < size; ++i) {
        T const result = std::apply([&](auto... each) { return function(each[i]...); }, in);
        bool const accepted = result == result;
        out[i] = result;
        if (valid != nullptr) valid[i] = accepted;
        if (!accepted) ++refused;
    }
    return refused;
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
