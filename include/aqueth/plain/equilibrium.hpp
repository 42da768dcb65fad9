// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI {

/// The side of the azeotrope: a temperature and a pressure alone allow one mixture on each side.
enum class azeotrope_side {
    water_rich,   ///< weaker than the azeotrope: distilling strengthens
    ethanol_rich  ///< stronger than the azeotrope
};

}  // namespace aqueth::inline AQUETH_ABI

namespace aqueth::inline AQUETH_ABI::plain {

/// A liquid and a vapour in equilibrium. Not a number where there is no answer.
/// @tparam T float or double
template <number T>
struct equilibrium {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T celsius = nan;               ///< temperature of both, °C
    T kpa = nan;                   ///< absolute pressure, kPa
    T liquid_mole_fraction = nan;  ///< ethanol in the liquid, 0 to 1
    T vapour_mole_fraction = nan;  ///< ethanol in the vapour, 0 to 1
    T relative_volatility = nan;   ///< of ethanol to water, (y/x)/((1 - y)/(1 - x)); 1 at the azeotrope
};

/// Outcome of an isothermal flash. Not a number where there is no answer, or no such phase.
/// @tparam T float or double
template <number T>
struct flash {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered, or no such phase

    T vapour_fraction = nan;       ///< moles of vapour per mole of feed: 0 all liquid, 1 all vapour
    T liquid_mole_fraction = nan;  ///< ethanol in the liquid, if there is any
    T vapour_mole_fraction = nan;  ///< ethanol in the vapour, if there is any
};

/// Activity coefficients of both components in a liquid. Not a number where there is no answer.
/// @tparam T float or double
template <number T>
struct activity_coefficients {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T ethanol = nan;  ///< activity over mole fraction, against the pure liquid at the same temperature
    T water = nan;    ///< the same of water
};

namespace detail {

namespace vle = model::vapour_liquid;

/// Between these two pressures, in kPa, every mixture boils well within the range.
inline constexpr double surely_low_kpa = 2.0, surely_high_kpa = 190.0;

template <number T>
constexpr T kelvin(T celsius) {
    return celsius + T(273.15);
}

template <number T>
constexpr T between(T value, T lower, T upper) {
    return value < lower ? lower : (upper < value ? upper : value);
}

template <number T>
constexpr status mole_fraction_range(T mole_fraction) {
    return within(argument::mole_fraction, mole_fraction, 0.0, 1.0);
}

template <number T>
constexpr status boiling_temperature_range(T celsius) {
    return within(argument::temperature, celsius, vle::lowest_celsius, vle::highest_celsius,
                  limit::vapour_liquid_equilibrium);
}

/// Checks a mole fraction, and that a pressure is one that this liquid has within the temperature range.
template <number T>
status boiling_range(T mole_fraction, T kpa) {
    status const strength = mole_fraction_range(mole_fraction);
    if (!strength.ok) return strength;
    if (kpa >= T(surely_low_kpa) && kpa <= T(surely_high_kpa)) return {};  // x matters only outside
    T const coldest = kelvin(T(vle::lowest_celsius)), hottest = kelvin(T(vle::highest_celsius));
    T const lowest = vle::bubble_at_temperature(mole_fraction, coldest).pressure;
    T const highest = vle::bubble_at_temperature(mole_fraction, hottest).pressure;
    return within(argument::pressure, kpa, double(lowest / T(1000)), double(highest / T(1000)),
                  limit::vapour_liquid_equilibrium);
}

template <number T>
equilibrium<T> in_plain_units(vle::equilibrium<T> const& e) {
    return {// rounding only: a result at an end of the range stays a valid input
            between(e.temperature - T(273.15), T(vle::lowest_celsius), T(vle::highest_celsius)),
            e.pressure / T(1000), between(e.x, T(0), T(1)), between(e.y, T(0), T(1)), std::exp(e.ln_alpha)};
}

/// Temperature in K below which there is no azeotrope: the relative volatility in pure ethanol is then 1.
template <number T>
T lowest_azeotrope() {
    T lower = T(vle::lowest_kelvin);
    T upper = T(vle::highest_kelvin);
    for (int k = 0; k < 60; ++k) {
        T const middle = T(0.5) * (lower + upper);
        if (!(lower < middle && middle < upper)) break;
        (vle::bubble_at_temperature(T(1), middle).ln_alpha < T(0) ? upper : lower) = middle;
    }
    return upper;
}

/// The azeotrope at a temperature in K; where there is none, pure ethanol, to which it tends.
template <number T>
vle::equilibrium<T> azeotrope_or_ethanol(T kelvins) {
    auto const found = vle::azeotrope_at_temperature(kelvins);
    return std::isnan(found.x) ? vle::bubble_at_temperature(T(1), kelvins) : found;
}

template <number T>
equilibrium<T> at_azeotrope(vle::equilibrium<T> const& found) {
    auto result = in_plain_units(found);
    result.vapour_mole_fraction = result.liquid_mole_fraction;
    result.relative_volatility = T(1);
    return result;
}

}  // namespace detail

/// Bubble point at a temperature: the pressure at which a liquid begins to boil, and its first vapour.
/// @param mole_fraction of ethanol in the liquid, 0 to 1
/// @param celsius       temperature, 0.01 to 120 °C
/// @return the equilibrium; refuses what is out of range
/// @par Accuracy
/// As `aqueth::bubble_point`; in `float` 2e-5 of the pressure and 1e-5 in the mole fraction more.
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> bubble_point_at_celsius(T mole_fraction, T celsius) {
    status const strength = detail::mole_fraction_range(mole_fraction);
    if (!strength.ok) return no_answer<equilibrium<T>>(strength);
    status const range = detail::boiling_temperature_range(celsius);
    if (!range.ok) return no_answer<equilibrium<T>>(range);
    auto result =
        detail::in_plain_units(detail::vle::bubble_at_temperature(mole_fraction, detail::kelvin(celsius)));
    result.celsius = celsius;
    return {result, {}};
}

/// Bubble point at a pressure: the temperature at which a liquid boils, and its first vapour.
/// @param mole_fraction of ethanol in the liquid, 0 to 1
/// @param kpa           absolute pressure at which the liquid boils between 0 and 120 °C (0.6 to 198 kPa for
///                      water, 1.6 to 428 kPa for ethanol)
/// @return the equilibrium; refuses what is out of range
/// @par Accuracy
/// As `aqueth::bubble_point`; in `float` 0.001 K and 1e-5 in the mole fraction more.
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> bubble_point_at_kpa(T mole_fraction, T kpa) {
    status const range = detail::boiling_range(mole_fraction, kpa);
    if (!range.ok) return no_answer<equilibrium<T>>(range);
    auto result = detail::in_plain_units(detail::vle::bubble_at_pressure(mole_fraction, T(1000) * kpa));
    result.kpa = kpa;
    return {result, {}};
}

/// Dew point at a temperature: the pressure at which a vapour begins to condense, and its first liquid.
/// @param mole_fraction of ethanol in the vapour, 0 to 1
/// @param celsius       temperature, 0.01 to 120 °C
/// @return the equilibrium; refuses what is out of range
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> dew_point_at_celsius(T mole_fraction, T celsius) {
    status const strength = detail::mole_fraction_range(mole_fraction);
    if (!strength.ok) return no_answer<equilibrium<T>>(strength);
    status const range = detail::boiling_temperature_range(celsius);
    if (!range.ok) return no_answer<equilibrium<T>>(range);
    auto result =
        detail::in_plain_units(detail::vle::dew_at_temperature(mole_fraction, detail::kelvin(celsius)));
    result.celsius = celsius;
    result.vapour_mole_fraction = mole_fraction;
    return {result, {}};
}

/// Dew point at a pressure: the temperature at which a vapour begins to condense, and its first liquid.
/// @param mole_fraction of ethanol in the vapour, 0 to 1
/// @param kpa           absolute pressure at which every mixture boils between 0 and 120 °C: 1.6 to 198 kPa
/// @return the equilibrium; refuses what is out of range
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> dew_point_at_kpa(T mole_fraction, T kpa) {
    status const strength = detail::mole_fraction_range(mole_fraction);
    if (!strength.ok) return no_answer<equilibrium<T>>(strength);
    for (T const pure : {T(0), T(1)}) {
        status const range = detail::boiling_range(pure, kpa);
        if (!range.ok) return no_answer<equilibrium<T>>(range);
    }
    auto result = detail::in_plain_units(detail::vle::dew_at_pressure(mole_fraction, T(1000) * kpa));
    result.kpa = kpa;
    result.vapour_mole_fraction = mole_fraction;
    return {result, {}};
}

/// Azeotrope at a temperature: the mixture whose vapour has its own composition.
/// @param celsius temperature, from about 30 °C, where the azeotrope appears, to 120 °C
/// @return the equilibrium; liquid and vapour are the same; refuses what is out of range
/// @par Accuracy
/// As `aqueth::azeotrope`; in `float` 1e-4 in the mole fraction more.
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> azeotrope_at_celsius(T celsius) {
    status const range =
        within(argument::temperature, celsius, double(detail::lowest_azeotrope<T>() - T(273.15)),
               detail::vle::highest_celsius, limit::azeotrope_exists);
    if (!range.ok) return no_answer<equilibrium<T>>(range);
    auto result = detail::at_azeotrope(detail::azeotrope_or_ethanol(detail::kelvin(celsius)));
    result.celsius = celsius;
    return {result, {}};
}

/// Azeotrope at a pressure.
/// @param kpa absolute pressure, from about 10 kPa, where the azeotrope appears, to about 430 kPa
/// @return the equilibrium; liquid and vapour are the same; refuses what is out of range
/// @par Accuracy
/// As `azeotrope_at_celsius`.
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> azeotrope_at_kpa(T kpa) {
    T const coldest = detail::lowest_azeotrope<T>();
    T const lowest = detail::azeotrope_or_ethanol(coldest).pressure;
    T const highest = detail::azeotrope_or_ethanol(T(detail::vle::highest_kelvin)).pressure;
    status const range = within(argument::pressure, kpa, double(lowest / T(1000)), double(highest / T(1000)),
                                limit::azeotrope_exists_to_120_celsius);
    if (!range.ok) return no_answer<equilibrium<T>>(range);
    auto const found = detail::vle::azeotrope_at_pressure(T(1000) * kpa);
    auto result = detail::at_azeotrope(std::isnan(found.x) ? detail::azeotrope_or_ethanol(coldest) : found);
    result.kpa = kpa;
    return {result, {}};
}

/// Liquid and vapour in equilibrium at a temperature and a pressure.
/// @param celsius temperature, 0.01 to 120 °C
/// @param kpa     absolute pressure, between those of the boiling pure liquid and of the azeotrope on that
///                side
/// @param side    which side of the azeotrope; water rich unless given
/// @return the equilibrium; refuses what is out of range
/// @par Accuracy
/// As `aqueth::coexistence`: 0.1 K is about 0.1 % mol in a weak wash and 1 % mol or more above 40 % mol. In
/// `float` 1e-4 in the mole fraction more up to 0.3 mol/mol, 0.01 beyond.
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<equilibrium<T>> coexistence(T celsius, T kpa, azeotrope_side side = azeotrope_side::water_rich) {
    status const boiling = detail::boiling_temperature_range(celsius);
    if (!boiling.ok) return no_answer<equilibrium<T>>(boiling);
    T const kelvins = detail::kelvin(celsius);
    T const top = detail::azeotrope_or_ethanol(kelvins).x;
    T const pure = side == azeotrope_side::water_rich ? T(0) : T(1);
    auto const pressure_of = [&](T x) { return detail::vle::bubble_at_temperature(x, kelvins).pressure; };
    // A computed boiling temperature is rounded; the allowance keeps conversions there and back possible at
    // the ends.
    T const rounded = std::is_same_v<T, float> ? T(1e-5) : T(1e-13);
    status const range =
        within(argument::pressure, kpa, double((T(1) - rounded) * pressure_of(pure) / T(1000)),
               double((T(1) + rounded) * pressure_of(top) / T(1000)), limit::pure_liquid_to_azeotrope);
    if (!range.ok) return no_answer<equilibrium<T>>(range);
    T const pressure = T(1000) * kpa;
    // The pressure rises monotonically from either pure liquid to the azeotrope.
    auto const residual = [&](T x) {
        auto const e = detail::vle::bubble_at_temperature(x, kelvins);
        return numeric::value_and_slope<T>{e.pressure - pressure, detail::vle::along_isotherm(e).pressure_x};
    };
    T const noise = T(8) * std::numeric_limits<T>::epsilon() * pressure;
    T const x = numeric::bracketed_newton(residual, pure < top ? pure : top, pure < top ? top : pure,
                                          T(0.5) * (pure + top), noise);
    auto result = detail::in_plain_units(detail::vle::bubble_at_temperature(x, kelvins));
    result.celsius = celsius;
    result.kpa = kpa;
    return {result, {}};
}

/// Isothermal flash: how a feed splits into liquid and vapour at a temperature and a pressure.
/// @param mole_fraction of ethanol in the feed, 0 to 1
/// @param celsius       temperature, 0.01 to 120 °C
/// @param kpa           absolute pressure, 1e-6 to 1e6 kPa (so low that all is vapour, so high that all is
///                      liquid)
/// @return amounts and compositions; a phase that is not there has the composition NaN; refuses what is out
///         of range
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<flash<T>> isothermal_flash(T mole_fraction, T celsius, T kpa) {
    constexpr T nan = flash<T>::nan;
    auto const bubble = bubble_point_at_celsius(mole_fraction, celsius);
    if (!bubble.status.ok) return no_answer<flash<T>>(bubble.status);
    status const range = within(argument::pressure, kpa, 1e-6, 1e6);
    if (!range.ok) return no_answer<flash<T>>(range);
    if (kpa >= bubble.value.kpa) return {{T(0), mole_fraction, nan}, {}};
    if (kpa <= dew_point_at_celsius(mole_fraction, celsius).value.kpa)
        return {{T(1), nan, mole_fraction}, {}};
    bool const rich = mole_fraction > detail::azeotrope_or_ethanol(detail::kelvin(celsius)).x;
    auto const both =
        coexistence(celsius, kpa, rich ? azeotrope_side::ethanol_rich : azeotrope_side::water_rich);
    if (!both.status.ok) return no_answer<flash<T>>(both.status);
    T const x = both.value.liquid_mole_fraction;
    T const y = both.value.vapour_mole_fraction;
    return {{detail::between((mole_fraction - x) / (y - x), T(0), T(1)), x, y}, {}};
}

/// Activity coefficients in a liquid.
/// @param mole_fraction of ethanol in the liquid, 0 to 1
/// @param celsius       temperature, 0.01 to 120 °C
/// @return activity coefficients (at zero strength and in pure ethanol: at infinite dilution of the other
///         component); refuses what is out of range
/// @par Accuracy
/// 2 % for ethanol at infinite dilution in water from 0 to 100 °C (against Vrbka et al.)
/// @par Source
/// @ref source_excess_gibbs
template <number T>
checked<activity_coefficients<T>> activity_coefficients_of(T mole_fraction, T celsius) {
    using coefficients = activity_coefficients<T>;
    status const strength = detail::mole_fraction_range(mole_fraction);
    if (!strength.ok) return no_answer<coefficients>(strength);
    status const range = detail::boiling_temperature_range(celsius);
    if (!range.ok) return no_answer<coefficients>(range);
    auto const g = model::excess_gibbs::reduced_gibbs(mole_fraction, detail::kelvin(celsius));
    return {{std::exp(g.ethanol), std::exp(g.water)}, {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
