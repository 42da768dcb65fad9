// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/instructions.hpp>
#include <aqueth/numeric/real.hpp>

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <tuple>
#include <type_traits>
#include <utility>

/// @def AQUETH_EACH_OF_BLOCK(i)
/// Begins a loop over the elements of a block. What is done for one must touch nothing that belongs to
/// another: the compiler, which could not know that of pointers, is told so.
#if defined(__clang__)
#define AQUETH_EACH_OF_BLOCK(i)                                                                              \
    _Pragma("clang loop vectorize(assume_safety)") for (std::size_t i = 0; i < numeric::block; ++i)
#elif defined(__GNUC__)
#define AQUETH_EACH_OF_BLOCK(i) _Pragma("GCC ivdep") for (std::size_t i = 0; i < numeric::block; ++i)
#else
#define AQUETH_EACH_OF_BLOCK(i) for (std::size_t i = 0; i < numeric::block; ++i)
#endif

/// One operation over many elements.
///
/// Elements are taken in blocks of 64. For a block the operation's `quick` is loops of straight arithmetic
/// without a branch, which the compiler turns into vector instructions; besides a value it says of each
/// element, in one bit, whether that value is in doubt (out of range, not converged, or merely not certain).
/// Only those elements are done again by `careful`, the scalar function with all its branches.
///
/// Where each step waits for the one before, a long loop is cut into short ones that hand on their numbers in
/// arrays of a block's length: of short loops a processor has many elements under way at a time, of a long
/// one hardly two.
namespace aqueth::numeric {

/// @param x any value
/// @return its bits, as another type of the same size: std::bit_cast, which some standard libraries lack
template <class To, class From>
constexpr To same_bits(From const& x) {
#if defined(__cpp_lib_bit_cast)
    return std::bit_cast<To>(x);
#else
    return __builtin_bit_cast(To, x);
#endif
}

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

/// Range check in integer arithmetic, which floating-point units do not have to wait for. Numbers of one sign
/// are ordered like their bits, and a NaN comes after infinity. Negative ones, whose highest bit is set, lose
/// it by at most one of the two differences.
/// @param x    any number
/// @param low  lower end of the range, 0 or more
/// @param high upper end of the range, above 0
/// @return bits whose highest is set if x is outside the range, NaN, or negative zero
template <real T>
constexpr bits<T> outside(T x, T low, T high) {
    return (bits_of(x) - bits_of(low)) | (bits_of(high) - bits_of(x));
}

/// A value, and in the highest bit of `doubt` whether it may be wrong.
template <real T>
struct doubtful {
    T value;        ///< the value
    bits<T> doubt;  ///< highest bit set: look again
};

/// Hands doubt on in the value itself.
/// @param x a value and its doubt
/// @return the value; NaN, which is outside every range, if there is doubt
template <real T>
constexpr T certain_or_nan(doubtful<T> const& x) {
    using whole = std::make_signed_t<bits<T>>;
    whole const spread = static_cast<whole>(x.doubt) >> (8 * sizeof(T) - 1);  // all ones, or none
    return same_bits<T>(bits_of(x.value) | static_cast<bits<T>>(spread));
}

inline constexpr std::size_t block = 64;  ///< elements that are taken together

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
    /// @param numbers what its numbers shall be
    [[gnu::always_inline]] void set(std::size_t i, std::array<T, N> const& numbers) {
        [&]<std::size_t... K>(std::index_sequence<K...>) { ((numbers_[K][i] = numbers[K]), ...); }
        (std::make_index_sequence<N>{});
    }

private:
    alignas(64) T numbers_[N][block];
};

/// Where the results of a block go.
template <real T>
struct results {
    T* value;        ///< of each element
    bits<T>* doubt;  ///< highest bit set: look again

    /// @param i      index of an element
    /// @param result what it has come to
    /// @return its doubt
    [[gnu::always_inline]] bits<T> set(std::size_t i, doubtful<T> const& result) const {
        value[i] = result.value;
        doubt[i] = result.doubt;
        return result.doubt;
    }
};

namespace detail {

/// What a block has left in doubt, element by element.
template <real T>
struct doubts {
    alignas(64) bits<T> of[block];
};

/// The elements of a block that are in doubt, done again.
/// @return how many are refused
template <real T, class Operation, std::size_t N>
[[gnu::noinline, gnu::cold]] std::size_t do_again(Operation const& operation,
                                                  std::array<T const*, N> const& in, T* out,
                                                  doubts<T> const& doubt, bool* valid) {
    std::size_t refused = 0;
    for (std::size_t i = 0; i < block; ++i) {
        if ((doubt.of[i] >> (8 * sizeof(T) - 1)) == 0) continue;
        out[i] = std::apply([&](auto... each) { return operation.careful(each[i]...); }, in);
        if (out[i] == out[i]) continue;
        if (valid != nullptr) valid[i] = false;
        ++refused;
    }
    return refused;
}

#if defined(__clang__)
#pragma clang diagnostic push
#pragma clang diagnostic ignored "-Wpass-failed"  // not every loop, nor -O1, can be made of vectors
#endif

// Does blocks until one leaves a doubt, which is for the caller: a call from this loop would cost it the
// constants it holds in registers.
// @return how many are done without a doubt; the doubts of the next are in `doubt`
template <real T, class Operation, std::size_t N, std::size_t... I>
[[gnu::always_inline]] inline std::size_t do_blocks(Operation const& shared, std::array<T const*, N> in,
                                                    T* out, doubts<T>& doubt, std::size_t blocks,
                                                    std::index_sequence<I...>) {
    Operation const operation = shared;  // our own, so that no store can change it
    for (std::size_t done = 0; done < blocks; ++done) {
        bits<T> const any = operation.quick(in[I]..., results<T>{out, doubt.of});
        if ((any >> (8 * sizeof(T) - 1)) != 0) [[unlikely]]
            return done;
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
    return do_blocks(operation, in, out, doubt, blocks, std::make_index_sequence<N>{});
}

template <real T, class Operation, std::size_t N>
__attribute__((target("avx2,fma"), flatten)) std::size_t
do_blocks_avx2(Operation const& operation, std::array<T const*, N> const& in, T* out, doubts<T>& doubt,
               std::size_t blocks) {
    return do_blocks(operation, in, out, doubt, blocks, std::make_index_sequence<N>{});
}
#endif

// A function of its own has its constants ready; inlined, GCC copies them anew at every call.
template <real T, class Operation, std::size_t N>
[[gnu::flatten, gnu::noinline]] std::size_t do_blocks_as_compiled(Operation const& operation,
                                                                  std::array<T const*, N> const& in, T* out,
                                                                  doubts<T>& doubt, std::size_t blocks) {
    return do_blocks(operation, in, out, doubt, blocks, std::make_index_sequence<N>{});
}

#if defined(__clang__)
#pragma clang diagnostic pop
#endif

template <real T, class Operation, std::size_t N>
std::size_t do_blocks_as_processor_can(Operation const& operation, std::array<T const*, N> const& in, T* out,
                                       doubts<T>& doubt, std::size_t blocks) {
#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__AVX512F__)
    if (__builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512dq") &&
        __builtin_cpu_supports("avx512vl"))
        return do_blocks_avx512(operation, in, out, doubt, blocks);
    if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"))
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

}  // namespace detail

/// Does an operation on every element.
/// @tparam T         float or double
/// @param operation  with `quick` (where a block of each input begins, N of them, and `results<T>` -> all
///                   doubts together) and `careful` (N numbers -> T, NaN if they are out of range); copied
/// @param in         where each of the N inputs begins
/// @param out        where the results go; may be one of the inputs, but must not overlap one in part
/// @param valid      where false goes for an element that is refused, true for the others; may be null
/// @param size       how many elements
/// @return how many elements were refused; their result is NaN
template <real T, class Operation, std::size_t N>
std::size_t for_each_element(Operation const& operation, std::array<T const*, N> in, T* out, bool* valid,
                             std::size_t size) {
    if (valid != nullptr) std::fill_n(valid, size, true);
    bool const in_place = std::find(in.begin(), in.end(), out) != in.end();
    std::size_t done = in_place ? 0 : size - size % block;
    std::size_t refused = detail::do_whole_blocks(operation, in, out, valid, done / block);
    // An element in doubt needs its inputs again, and the last ones make no whole block: through a copy.
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

}  // namespace aqueth::numeric
