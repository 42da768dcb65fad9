// SPDX-License-Identifier: BSL-1.0
#pragma once

#if !defined(__cpp_exceptions)  // std::execution of libstdc++ 12 does not compile without them either
#error "array_parallel.hpp needs exceptions: build without -fno-exceptions."
#endif

#include <aqueth/array.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <exception>
#include <execution>
#include <span>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#ifndef __cpp_lib_execution
#error "array_parallel.hpp needs a standard library with execution policies (std::execution::par)."
#endif

/// The functions of array.hpp on all cores: with an execution policy of the standard library as first
/// argument, `arrays::density(std::execution::par, w, t, rho, valid)`.
///
/// Results, flags, counts and refusals are those of the function without a policy, to the bit. Arrays are cut
/// into parts of 4096 elements, and `std::for_each` gives each part to that function. One part is not worth a
/// thread: shorter arrays stay on the calling one. If a function of the caller throws in `apply`, the
/// exception of the lowest part arrives, after the other parts are done. Flags that are not wanted are left
/// out, or are `arrays::flags{}`; only `apply` takes `{}`.
///
/// The threads are those of the standard library. That of GCC 12 takes them from TBB: install its headers and
/// link it (`find_package(TBB)`, `TBB::tbb`). Without TBB's headers every policy runs on the calling thread.
/// Other standard libraries have threads of their own. One without policies, like libc++ 14, is refused by
/// the compiler. No other header of aqueth includes this one.
namespace aqueth::inline AQUETH_ABI::arrays {

/// An execution policy of the standard library, like `std::execution::par`.
template <class P>
concept execution_policy = std::is_execution_policy_v<std::remove_cvref_t<P>>;

namespace detail {

/// Elements of a part: whole blocks, so that each element is computed as without parts; few enough for the
/// second cache, and enough work for the overhead of a task.
inline constexpr std::size_t part_size = 64 * block;

/// A part of the arrays, and what its function answered.
struct part {
    std::size_t begin;
    std::size_t size;
    std::size_t refused = 0;
    std::exception_ptr error = nullptr;
};

template <class A>
inline constexpr bool is_array = readable<std::remove_cvref_t<A>>;
template <class A>
inline constexpr bool is_flags = std::is_convertible_v<A&, flags>;

/// @return number of elements if the argument is an array, else `otherwise`
template <class A>
std::size_t elements_in(A& argument, std::size_t otherwise) {
    if constexpr (is_array<A>) {
        return static_cast<std::size_t>(argument.size());
    } else if constexpr (is_flags<A>) {
        return flags(argument).empty() ? otherwise : flags(argument).size();
    } else {
        return otherwise;
    }
}

/// @return the part of an array or of flags; any other argument as it is
template <class A>
decltype(auto) cut(A& argument, part const& at) {
    if constexpr (is_array<A>) {
        return std::span(argument.data() + at.begin, at.size);
    } else if constexpr (is_flags<A>) {
        flags const whole(argument);
        return whole.empty() ? whole : whole.subspan(at.begin, at.size);
    } else {
        return (argument);
    }
}

/// The place of the last array among arguments.
template <class... A>
inline constexpr std::size_t last_array = [] {
    std::size_t last = 0, place = 0;
    ((is_array<A> ? void(last = place++) : void(place++)), ...);
    return last;
}();

/// Calls an array function for each part of its arguments.
/// @tparam Result   the place of the results among the arguments
/// @param run       callable: the parts, and a function to call once for each, in any order and from any
///                  thread
/// @param function  callable: arguments of an array function -> count
/// @param arguments of the array function
/// @return how many elements were refused
template <std::size_t Result, class Run, class Function, class... A>
std::size_t in_parts_with_result(Run const& run, Function const& function, A&... arguments) {
    std::size_t const size = (std::max)({elements_in(arguments, 0)...});
    bool const same = ((elements_in(arguments, size) == size) && ...);
    if (!same || size <= part_size) return function(arguments...);  // which refuses different lengths
    auto const& result = std::get<Result>(std::tie(arguments...));
    auto const check = [&](auto const& argument) {  // a part would not see the next
        if constexpr (is_array<decltype(argument)>) refuse_partial_overlap(result, argument);
    };
    (check(arguments), ...);
    std::vector<part> parts;
    for (std::size_t begin = 0; begin < size; begin += part_size)
        parts.push_back({begin, (std::min)(part_size, size - begin)});
    run(parts, [&](part& each) {
        try {
            each.refused = function(cut(arguments, each)...);
        } catch (...) {  // an exception that left a thread would end the program
            each.error = std::current_exception();
        }
    });
    std::size_t refused = 0;
    for (part const& each : parts) {
        if (each.error) std::rethrow_exception(each.error);
        refused += each.refused;
    }
    return refused;
}

/// The same for a function whose results are its last array.
template <class Run, class Function, class... A>
std::size_t in_parts(Run const& run, Function const& function, A&... arguments) {
    return in_parts_with_result<last_array<A...>>(run, function, arguments...);
}

/// Runs parts as a policy of the standard library says.
template <class Policy>
auto by(Policy& policy) {
    return [&policy](std::vector<part>& parts, auto const& each) {
        std::for_each(policy, parts.begin(), parts.end(), each);
    };
}

}  // namespace detail

/// `density` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t density(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::density(part...); }, arguments...);
}

/// `thermal_expansion` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t thermal_expansion(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::thermal_expansion(part...); }, arguments...);
}

/// `mass_fraction_from_density` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t mass_fraction_from_density(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::mass_fraction_from_density(part...); },
        arguments...);
}

/// `to` on all cores: `arrays::to<mass_fraction, volume_fraction>(std::execution::par, q, w)`.
/// @tparam Target the basis wanted
/// @tparam Source the basis of the input
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <strength_basis Target, strength_basis Source, execution_policy P, class... A>
std::size_t to(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::to<Target, Source>(part...); }, arguments...);
}

/// `strength` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t strength(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::strength(part...); }, arguments...);
}

/// `vapour` on all cores, from a curve or by the model.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t vapour(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::vapour(part...); }, arguments...);
}

/// `bubble_temperature` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t bubble_temperature(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::bubble_temperature(part...); }, arguments...);
}

/// `viscosity` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t viscosity(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::viscosity(part...); }, arguments...);
}

/// `speed_of_sound` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t speed_of_sound(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::speed_of_sound(part...); }, arguments...);
}

/// `thermal_conductivity` on all cores.
/// @param policy    of the standard library, like `std::execution::par`
/// @param arguments as without a policy
/// @return how many elements were out of range
/// @throws refusal as without a policy
/// @par Source
/// as without a policy
template <execution_policy P, class... A>
std::size_t thermal_conductivity(P&& policy, A&&... arguments) {
    return detail::in_parts(
        detail::by(policy), [](auto&&... part) { return arrays::thermal_conductivity(part...); },
        arguments...);
}

/// `apply` on all cores: the function is called by several threads at once. With `std::execution::par_unseq`
/// it must take no locks and must not throw.
/// @param policy   of the standard library, like `std::execution::par`
/// @param function callable: one number of each input -> `plain::checked` number
/// @param result   what it answers; NaN where it refuses. May be one of the inputs
/// @param valid    flags, or nothing: `{}`
/// @param first    arguments
/// @param rest     further arguments
/// @return how many elements were refused
/// @throws refusal if the arrays differ in length or the result overlaps an input partly; an exception of the
///         function passes
template <execution_policy P, class Function, writable R, readable First, readable... Rest>
std::size_t apply(P&& policy, Function const& function, R&& result, flags valid, First const& first,
                  Rest const&... rest) {
    return detail::in_parts_with_result<1>(
        detail::by(policy), [](auto&&... part) { return arrays::apply(part...); }, function, result, valid,
        first, rest...);
}

}  // namespace aqueth::inline AQUETH_ABI::arrays
