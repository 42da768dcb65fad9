// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/instructions.hpp>

#include <cstddef>

/// The speed limit: the time for independent multiply-adds in the widest vectors of the machine, or of the
/// older one whose path is timed (AQUETH_WIDEST_VECTOR_BITS). A formula with this number of multiply-adds
/// cannot be faster.
namespace aqueth::bench {

#if defined(__GNUC__) && defined(__x86_64__)

namespace detail {

template <std::size_t Bytes>
struct vector {
    typedef double type __attribute__((vector_size(Bytes)));
    static constexpr std::size_t lanes = Bytes / sizeof(double);
};

// Twelve accumulators: enough to hide the latency of a multiply-add, fewer than the registers.
#define AQUETH_BENCH_MULTIPLY_ADDS(type)                                                                     \
    type a0{}, a1{}, a2{}, a3{}, a4{}, a5{}, a6{}, a7{}, a8{}, a9{}, a10{}, a11{};                           \
    type const x = type{} + 0.999, c = type{} + 0.001;                                                       \
    for (std::size_t i = 0; i < rounds; ++i) {                                                               \
        a0 = a0 * x + c, a1 = a1 * x + c, a2 = a2 * x + c, a3 = a3 * x + c, a4 = a4 * x + c;                 \
        a5 = a5 * x + c, a6 = a6 * x + c, a7 = a7 * x + c, a8 = a8 * x + c, a9 = a9 * x + c;                 \
        a10 = a10 * x + c, a11 = a11 * x + c;                                                                \
        asm volatile("" : "+v"(a0), "+v"(a1), "+v"(a2), "+v"(a3), "+v"(a4), "+v"(a5));                       \
        asm volatile("" : "+v"(a6), "+v"(a7), "+v"(a8), "+v"(a9), "+v"(a10), "+v"(a11));                     \
    }                                                                                                        \
    type const sum = a0 + a1 + a2 + a3 + a4 + a5 + a6 + a7 + a8 + a9 + a10 + a11;                            \
    return sum[0];

__attribute__((target("avx512f,fma"))) inline double multiply_add_512(std::size_t rounds) {
    AQUETH_BENCH_MULTIPLY_ADDS(vector<64>::type)
}
__attribute__((target("avx2,fma"))) inline double multiply_add_256(std::size_t rounds) {
    AQUETH_BENCH_MULTIPLY_ADDS(vector<32>::type)
}
inline double multiply_add_128(std::size_t rounds) { AQUETH_BENCH_MULTIPLY_ADDS(vector<16>::type) }

#undef AQUETH_BENCH_MULTIPLY_ADDS

}  // namespace detail

/// Does at least `each` multiply-adds on each of `count` elements.
/// @param each     multiply-adds for one element
/// @param count how many
/// @return a value that depends on all results, so that the compiler keeps the work
inline double multiply_adds(std::size_t each, std::size_t count) {
    std::size_t const all = each * count;
    if (AQUETH_WIDEST_VECTOR_BITS >= 512 && __builtin_cpu_supports("avx512f"))
        return detail::multiply_add_512(all / (12 * detail::vector<64>::lanes));
    if (AQUETH_WIDEST_VECTOR_BITS >= 256 && __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"))
        return detail::multiply_add_256(all / (12 * detail::vector<32>::lanes));
    return detail::multiply_add_128(all / (12 * detail::vector<16>::lanes));
}

#else

inline double multiply_adds(std::size_t each, std::size_t count) {
    double a[16] = {};
    for (std::size_t i = 0; i < each * count / 16; ++i)
        for (double& one : a) one = one * 0.999 + 0.001;
    double sum = 0.0;
    for (double const one : a) sum += one;
    return sum;
}

#endif

}  // namespace aqueth::bench
