// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/floating_point.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/plain/argument.hpp>
#include <aqueth/plain/limit.hpp>

#include <limits>
#include <type_traits>

/// Checked functions over plain numbers, units in the names: no Boost, exceptions, strings or heap.
///
/// Each returns a `checked` value: the value and a status. The status holds the refused argument, its value
/// and its valid range. The typed functions of the floor above call these, add units to the value and throw
/// from the status, so every range is checked in one place. Fractions run from 0 to 1. Functions are for
/// `float` and `double`.
namespace aqueth::inline AQUETH_ABI::plain {

/// The scalars of this floor.
template <class T>
concept number = std::is_same_v<T, float> || std::is_same_v<T, double>;

/// Whether a function has a result; if not, the refused argument and its range. Bounds have the unit of the
/// argument. NaN and infinity are outside every range.
struct status {
    bool ok = true;                                       ///< whether there is an answer
    aqueth::argument argument = aqueth::argument::other;  ///< which argument was refused
    aqueth::limit limit = aqueth::limit::none;            ///< what sets its range
    double value = 0.0;                                   ///< its value
    double lower = 0.0;                                   ///< least accepted value
    double upper = 0.0;  ///< greatest accepted value; infinity if there is none
};

/// A value with its status: NaN if an argument was refused.
/// @tparam T the value: a number, or a structure of numbers
template <class T>
struct [[nodiscard]] checked {
    T value;               ///< the answer, if `status.ok`
    plain::status status;  ///< whether there is a value, and if not, the reason
};

/// No bound above: any finite value is accepted.
inline constexpr double unlimited = std::numeric_limits<double>::infinity();

/// @param refused which argument
/// @param value   its value
/// @param lower   least accepted value
/// @param upper   greatest accepted value
/// @param set_by  what sets the range
/// @return the status of a refusal
constexpr status refuse(argument refused, double value, double lower, double upper,
                        limit set_by = limit::none) {
    return {false, refused, set_by, value, lower, upper};
}

/// @param which  the argument
/// @param value  its value
/// @param lower  least accepted value
/// @param upper  greatest accepted value; `unlimited` accepts any finite value from `lower` up
/// @param set_by what sets the range
/// @return whether the value lies in the range
template <number T>
constexpr status within(argument which, T value, double lower, double upper, limit set_by = limit::none) {
    T const highest = (std::numeric_limits<T>::max)();
    if (T(lower) <= value && value <= (upper < double(highest) ? T(upper) : highest)) return {};
    return refuse(which, double(value), lower, upper, set_by);
}

/// Allowance for rounding: a computed temperature may be this much below a freezing point, and a computed
/// density this much outside the pure liquids'. It is far below anything measurable, and lets conversions
/// there and back work at the ends of a range.
template <number T>
inline constexpr T rounding = std::is_same_v<T, float> ? T(2e-4) : T(1e-9);

/// @tparam T the type of the answer: a number, or a structure whose numbers are NaN unless given
/// @param why what was refused
/// @return the answer of a function that refuses
template <class T>
constexpr checked<T> no_answer(status const& why) {
    if constexpr (number<T>) {
        return {std::numeric_limits<T>::quiet_NaN(), why};
    } else {
        return {T{}, why};
    }
}

}  // namespace aqueth::inline AQUETH_ABI::plain
