// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/plain/equilibrium.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <cmath>
#include <optional>

namespace aqueth {

/// A liquid and a vapour in equilibrium.
struct equilibrium {
    units::temperature temperature;  ///< of both
    units::pressure pressure;        ///< absolute pressure
    mole_fraction liquid;            ///< ethanol in the liquid
    mole_fraction vapour;            ///< ethanol in the vapour
    double relative_volatility;      ///< of ethanol to water, (y/x)/((1 - y)/(1 - x)); 1 at the azeotrope
};

<<<<<<< HEAD
=======
/// The side of the azeotrope: a temperature and a pressure alone allow one mixture on each side.
enum class azeotrope_side {
    water_rich,   ///< weaker than the azeotrope: distilling strengthens
    ethanol_rich  ///< stronger than the azeotrope
};

>>>>>>> main
namespace detail {

namespace vle = model::vapour_liquid;

inline constexpr char const* vle_source = name_of(limit::vapour_liquid_equilibrium);

/// The ends of the range in K, exactly as a typed temperature holds them: 0.01 + 273.15 is not 273.16.
inline constexpr double coldest_kelvin = celsius(vle::lowest_celsius).kelvin();
inline constexpr double hottest_kelvin = celsius(vle::highest_celsius).kelvin();

<<<<<<< HEAD
/// Under pressures from the one to the other, in Pa, every mixture boils well within the range.
inline constexpr double surely_low = 1000.0 * plain::detail::surely_low_kpa;
inline constexpr double surely_high = 1000.0 * plain::detail::surely_high_kpa;
=======
/// Between these two pressures, in Pa, every mixture boils well within the range.
inline constexpr double surely_low = 2e3, surely_high = 190e3;
>>>>>>> main

/// Checks that the liquid x boils within the temperature range at this pressure.
inline void require_vle_pressure(char const* property, double x, units::pressure p) {
<<<<<<< HEAD
    accept(property, plain::detail::boiling_range(x, in(p, kilopascal)));
}

inline equilibrium typed(plain::equilibrium<double> const& e) {
    return {celsius(e.celsius), e.kpa * kilopascal, mole_fraction(e.liquid_mole_fraction),
            mole_fraction(e.vapour_mole_fraction), e.relative_volatility};
}

/// An equilibrium that was asked for at a pressure, which it has to the last digit.
inline equilibrium typed(plain::equilibrium<double> const& e, units::pressure p) {
    equilibrium result = typed(e);
    result.pressure = p;
    return result;
=======
    if (p.value() >= surely_low && p.value() <= surely_high) return;  // x matters only outside
    double const lowest = vle::bubble_at_temperature(x, coldest_kelvin).pressure;
    double const highest = vle::bubble_at_temperature(x, hottest_kelvin).pressure;
    require_range(property, argument::pressure, in(p, kilopascal), "kPa", lowest / 1000.0, highest / 1000.0,
                  vle_source);
}

inline equilibrium typed(vle::equilibrium<double> const& e) {
    auto const fraction = [](double v) { return mole_fraction(std::clamp(v, 0.0, 1.0)); };  // rounding only
    auto const t = celsius(  // rounding only: a result at an end of the range stays a valid input
        std::clamp(kelvin(e.temperature).celsius(), vle::lowest_celsius, vle::highest_celsius));
    return {t, e.pressure * pascal, fraction(e.x), fraction(e.y), std::exp(e.ln_alpha)};
>>>>>>> main
}

}  // namespace detail

/// Bubble point at a temperature: the pressure at which a liquid begins to boil, and its first vapour.
/// @param liquid strength of the liquid, in any basis
/// @param t      temperature, 0.01 to 120 °C
/// @return the equilibrium
/// @throws range_error if the temperature is outside its range
/// @par Accuracy
/// Pressure 0.1 % on average against the best static measurements (Pemberton and Mash 1978). The vapour lies
/// above most measured ones, over x = 0.01 to 0.1 at 101 kPa by 0.016 mole fraction on average:
/// `vapour_uncertainty` states it, @ref equilibrium_model_vapour explains it.
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium bubble_point(Strength liquid, units::temperature t) {
    double const x = to<mole_fraction>(liquid).value();
    return detail::typed(detail::answer("bubble point", plain::bubble_point_at_celsius(x, t.celsius())));
}

/// Bubble point at a pressure: the temperature at which a liquid boils, and its first vapour.
/// @param liquid strength of the liquid, in any basis
/// @param p      absolute pressure at which the liquid boils between 0 and 120 °C (0.6 to 198 kPa for water,
///               1.6 to 428 kPa for ethanol)
/// @return the equilibrium
/// @throws range_error if the pressure is outside its range
/// @par Accuracy
/// Temperature 0.03 K against the best static measurements; ebulliometers at 101 kPa boil 0.2 to 0.35 K
/// higher on average: @ref fit_report, section 3.
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium bubble_point(Strength liquid, units::pressure p) {
    double const x = to<mole_fraction>(liquid).value();
    return detail::typed(detail::answer("bubble point", plain::bubble_point_at_kpa(x, in(p, kilopascal))), p);
}

/// Dew point at a temperature: the pressure at which a vapour begins to condense, and its first liquid.
/// @param vapour strength of the vapour, in any basis (that of its condensate)
/// @param t      temperature, 0.01 to 120 °C
/// @return the equilibrium
/// @throws range_error if the temperature is outside its range
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium dew_point(Strength vapour, units::temperature t) {
    double const y = to<mole_fraction>(vapour).value();
    return detail::typed(detail::answer("dew point", plain::dew_point_at_celsius(y, t.celsius())));
}

/// Dew point at a pressure: the temperature at which a vapour begins to condense, and its first liquid.
/// @param vapour strength of the vapour, in any basis (that of its condensate)
/// @param p      absolute pressure at which every mixture boils between 0 and 120 °C: 1.6 to 198 kPa
/// @return the equilibrium
/// @throws range_error if the pressure is outside its range
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium dew_point(Strength vapour, units::pressure p) {
    double const y = to<mole_fraction>(vapour).value();
    return detail::typed(detail::answer("dew point", plain::dew_point_at_kpa(y, in(p, kilopascal))), p);
}

<<<<<<< HEAD
/// Azeotrope at a temperature: the mixture whose vapour is no stronger than itself.
/// @param t temperature, from where there is an azeotrope (about 30 °C) to 120 °C
=======
namespace detail {

/// Temperature in K below which there is no azeotrope: the relative volatility in pure ethanol is then 1.
inline double lowest_azeotrope() {
    double lower = vle::lowest_kelvin;
    double upper = vle::highest_kelvin;
    for (int k = 0; k < 60; ++k) {
        double const middle = 0.5 * (lower + upper);
        (vle::bubble_at_temperature(1.0, middle).ln_alpha < 0.0 ? upper : lower) = middle;
    }
    return upper;
}

}  // namespace detail

namespace detail {

/// The azeotrope at a temperature in K; where there is none, pure ethanol, to which it tends.
inline vle::equilibrium<double> azeotrope_or_ethanol(double kelvins_) {
    auto const found = vle::azeotrope_at_temperature(kelvins_);
    return std::isnan(found.x) ? vle::bubble_at_temperature(1.0, kelvins_) : found;
}

}  // namespace detail

/// Azeotrope at a temperature: the mixture whose vapour has its own composition.
/// @param t temperature, from about 30 °C, where the azeotrope appears, to 120 °C
>>>>>>> main
/// @return the equilibrium; liquid and vapour are the same
/// @throws range_error if there is none, or the temperature is above 120 °C
/// @par Accuracy
/// 0.8960 mole fraction and 78.13 °C at 101.325 kPa (measured 0.891 to 0.8943, 78.15 °C). The limit of 10.4
/// kPa, below which it vanishes, rests on one isotherm.
/// @par Source
/// @ref source_excess_gibbs
inline equilibrium azeotrope(units::temperature t) {
    return detail::typed(detail::answer("azeotrope", plain::azeotrope_at_celsius(t.celsius())));
}

/// Azeotrope at a pressure.
/// @param p absolute pressure, from about 10 kPa, where the azeotrope appears, to about 430 kPa
/// @return the equilibrium; liquid and vapour are the same
/// @throws range_error if there is none, or the pressure is outside its range
/// @par Accuracy
/// as `azeotrope` at a temperature
/// @par Source
/// @ref source_excess_gibbs
inline equilibrium azeotrope(units::pressure p) {
    return detail::typed(detail::answer("azeotrope", plain::azeotrope_at_kpa(in(p, kilopascal))), p);
}

/// Liquid and vapour in equilibrium at a temperature and a pressure. This gives a strength from a
/// thermometer: `liquid` from one in a boiling liquid, `vapour` from one in the vapour that leaves it.
/// @param t    temperature, 0.01 to 120 °C
/// @param p    absolute pressure, between those of the boiling pure liquid and of the azeotrope on that side
/// @param side which side of the azeotrope; water rich unless given
/// @return the equilibrium
/// @throws range_error if nothing boils at t under p on that side; the bounds are for the pressure
/// @par Accuracy
/// 0.1 K in a temperature is about 0.1 % mol in a weak wash and 1 % mol or more above 40 % mol, where boiling
/// temperatures change little with strength: a thermometer cannot replace an alcoholometer there.
/// @par Source
/// @ref source_excess_gibbs
inline equilibrium coexistence(units::temperature t, units::pressure p,
                               azeotrope_side side = azeotrope_side::water_rich) {
    char const* const property = side == azeotrope_side::water_rich ? "coexistence, water-rich side"
                                                                    : "coexistence, ethanol-rich side";
<<<<<<< HEAD
    auto const found = plain::coexistence(t.celsius(), in(p, kilopascal), side);
    return detail::typed(detail::answer(property, found), p);
=======
    double const kelvins_ = detail::require_vle_temperature(property, t);
    double const top = detail::azeotrope_or_ethanol(kelvins_).x;
    double const pure = side == azeotrope_side::water_rich ? 0.0 : 1.0;
    auto const pressure_of = [&](double x) {
        return detail::vle::bubble_at_temperature(x, kelvins_).pressure;
    };
    // A computed boiling temperature is rounded; the allowance keeps conversions there and back possible at
    // the ends.
    double const rounded = 1e-13;
    require_range(property, argument::pressure, in(p, kilopascal), "kPa",
                  (1.0 - rounded) * pressure_of(pure) / 1000.0, (1.0 + rounded) * pressure_of(top) / 1000.0,
                  "from the pure liquid to the azeotrope at this temperature");
    // The pressure rises monotonically from either pure liquid to the azeotrope.
    auto const residual = [&](double x) {
        auto const e = detail::vle::bubble_at_temperature(x, kelvins_);
        return numeric::value_and_slope<double>{e.pressure - p.value(),
                                                detail::vle::along_isotherm(e).pressure_x};
    };
    double const noise = 8.0 * std::numeric_limits<double>::epsilon() * p.value();
    double const x = numeric::bracketed_newton(residual, (std::min)(pure, top), (std::max)(pure, top),
                                               0.5 * (pure + top), noise);
    auto result = detail::typed(detail::vle::bubble_at_temperature(x, kelvins_));
    result.temperature = t;
    result.pressure = p;
    return result;
>>>>>>> main
}

/// Outcome of an isothermal flash.
struct flash {
    double vapour_fraction;               ///< moles of vapour per mole of feed: 0 all liquid, 1 all vapour
    std::optional<mole_fraction> liquid;  ///< ethanol in the liquid, if there is any
    std::optional<mole_fraction> vapour;  ///< ethanol in the vapour, if there is any
};

/// Isothermal flash: how a feed splits into liquid and vapour at a temperature and a pressure.
/// @param feed strength of the feed, in any basis
/// @param t    temperature, 0.01 to 120 °C
/// @param p    absolute pressure, above 0 (so low that all is vapour, so high that all is liquid)
/// @return amounts and compositions; moles of ethanol balance to rounding
/// @throws range_error if the temperature is outside its range or the pressure is not a positive number
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
flash isothermal_flash(Strength feed, units::temperature t, units::pressure p) {
    double const z = to<mole_fraction>(feed).value();
    auto const split = detail::answer("flash", plain::isothermal_flash(z, t.celsius(), in(p, kilopascal)));
    auto const phase = [](double v) {
        return std::isnan(v) ? std::nullopt : std::optional<mole_fraction>(mole_fraction(v));
    };
    return {split.vapour_fraction, phase(split.liquid_mole_fraction), phase(split.vapour_mole_fraction)};
}

/// Activity coefficients of both components in a liquid.
struct activity_coefficients {
    double ethanol;  ///< activity over mole fraction, against the pure liquid at the same temperature
    double water;    ///< the same of water
};

/// @param liquid strength of the liquid, in any basis
/// @param t      temperature, 0.01 to 120 °C
/// @return activity coefficients (at zero strength and in pure ethanol: at infinite dilution of the other
///         component)
/// @throws range_error if the temperature is outside its range
/// @par Accuracy
/// 2 % for ethanol at infinite dilution in water from 0 to 100 °C (against Vrbka et al.)
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
activity_coefficients activity_coefficients_of(Strength liquid, units::temperature t) {
    double const x = to<mole_fraction>(liquid).value();
    auto const gamma = detail::answer("activity", plain::activity_coefficients_of(x, t.celsius()));
    return {gamma.ethanol, gamma.water};
}

}  // namespace aqueth
