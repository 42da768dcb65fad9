// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Where one program can hold code for several generations of a processor and choose when it runs. A
/// consumer's flags stay what they are: only what is marked here is compiled for more than those flags allow.

/// @def AQUETH_CHOOSES_INSTRUCTIONS
/// 1 where compiler and processor let a function be compiled for other instructions than the rest, else 0
#if defined(__GNUC__) && defined(__x86_64__)
#define AQUETH_CHOOSES_INSTRUCTIONS 1
#else
#define AQUETH_CHOOSES_INSTRUCTIONS 0
#endif

namespace aqueth::numeric {

#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__FMA__)
namespace detail {

template <class F, class... T>
__attribute__((target("fma"), flatten, noinline)) auto with_fused_multiply_adds(F f, T... x) {
    return f(x...);
}

}  // namespace detail
#endif

/// Evaluates a function with fused multiply-adds if the processor has them: they halve the operations of a
/// polynomial, and what they wait for each other. Worth the call for some dozens of them.
/// @param f callable without a state
/// @param x its arguments, plain numbers
/// @return what it returns; fused, the last digit may be another
template <class F, class... T>
[[gnu::flatten]] inline auto fused_where_possible(F f, T... x) {
#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__FMA__)
    if (__builtin_cpu_supports("fma")) [[likely]]
        return detail::with_fused_multiply_adds(f, x...);
#endif
    return f(x...);
}

}  // namespace aqueth::numeric
