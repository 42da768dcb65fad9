// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

/// @file
/// One program can hold code for several generations of a processor and choose at run time. The
/// consumer's compiler flags stay unchanged: only the functions marked here use newer instructions.

/// @def AQUETH_CHOOSES_INSTRUCTIONS
/// 1 if compiler and processor allow single functions with other
/// instructions than the rest, else 0
#if defined(__GNUC__) && defined(__x86_64__)
#define AQUETH_CHOOSES_INSTRUCTIONS 1
#else
#define AQUETH_CHOOSES_INSTRUCTIONS 0
#endif

/// @def AQUETH_PART_OF_FLATTENED
/// Marks a part of a function that `flatten` marks. clang inlines it only if told here; told so, g++ at -Os
/// would inline it into firmware, where it then takes half as many instructions again
#if defined(__clang__)
#define AQUETH_PART_OF_FLATTENED [[gnu::always_inline]]
#else
#define AQUETH_PART_OF_FLATTENED
#endif

/// @def AQUETH_WIDEST_VECTOR_BITS
/// The widest vectors that loops over arrays choose at run time: 512, or less
/// to time on a new processor what an older one executes
#if !defined(AQUETH_WIDEST_VECTOR_BITS)
#define AQUETH_WIDEST_VECTOR_BITS 512
#endif

/// @def AQUETH_VECTOR_BYTES
/// Size of a vector in code for no certain processor: 0 without vectors of double
#if !defined(__GNUC__)
#define AQUETH_VECTOR_BYTES 0
#elif defined(__AVX512F__)
#define AQUETH_VECTOR_BYTES 64
#elif defined(__AVX__)
#define AQUETH_VECTOR_BYTES 32
#elif defined(__SSE2__) || defined(__aarch64__) || defined(__wasm_simd128__)
#define AQUETH_VECTOR_BYTES 16
#else
#define AQUETH_VECTOR_BYTES 0
#endif

namespace aqueth::inline AQUETH_ABI::numeric {

/// Hides from g++ that a table is constant. It then reads a constant where it is needed, and not a copy of it
/// for each element of a vector.
/// @param table constants
/// @return the same
template <class Table>
[[gnu::always_inline]] inline Table const& as_variable(Table const& table) {
#if defined(__GNUC__) && !defined(__clang__)
    Table const* hidden = &table;
    asm("" : "+r"(hidden));
    return *hidden;
#else
    return table;  // clang would keep a variable's copies in memory, too
#endif
}

#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__FMA__)
namespace detail {

template <class F, class... T>
__attribute__((target("fma"), flatten, noinline)) auto with_fused_multiply_adds(F f, T... x) {
    return f(x...);
}

}  // namespace detail
#endif

/// Evaluates a function with fused multiply-adds if the processor has them. They halve the operations and the
/// latency of a polynomial. The call pays off from a few dozen multiply-adds on.
/// @param f callable without a state
/// @param x its arguments, plain numbers
/// @return its result; the last digit may differ with fused multiply-adds
template <class F, class... T>
[[gnu::flatten]] inline auto fused_where_possible(F f, T... x) {
#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__FMA__)
    if (__builtin_cpu_supports("fma")) [[likely]]
        return detail::with_fused_multiply_adds(f, x...);
#endif
    return f(x...);
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
