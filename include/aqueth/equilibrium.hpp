// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
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

/// The side of the azeotrope: a temperature and a pressure alone allow one mixture on each side.
enum class azeotrope_side {
    water_rich,   ///< weaker than the azeotrope: distilling strengthens
    ethanol_rich  ///< stronger than the azeotrope
};

namespace detail {

namespace vle = model::vapour_liquid;

inline constexpr char const* vle_source = "vapour-liquid equilibrium, 0.01 to 120 °C";

inline double require_vle_temperature(char const* property, units::temperature t) {
    require_range(property, argument::temperature, t.celsius(), "°C", vle::lowest_celsius,
                  vle::highest_celsius, vle_source);
    return t.kelvin();
}

/// The ends of the range in K, exactly as a typed temperature holds them: 0.01 + 273.15 is not 273.16.
inline constexpr double coldest_kelvin = celsius(vle::lowest_celsius).kelvin();
inline constexpr double hottest_kelvin = celsius(vle::highest_celsius).kelvin();

/// Between these two pressures, in Pa, every mixture boils well within the range.
inline constexpr double surely_low = 2e3, surely_high = 190e3;

/// Checks that the liquid x boils within the temperature range at this pressure.
inline void require_vle_pressure(char const* property, double x, units::pressure p) {
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
    double const kelvins_ = detail::require_vle_temperature("bubble point", t);
    auto result = detail::typed(detail::vle::bubble_at_temperature(x, kelvins_));
    result.temperature = t;
    return result;
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
    detail::require_vle_pressure("bubble point", x, p);
    auto result = detail::typed(detail::vle::bubble_at_pressure(x, p.value()));
    result.pressure = p;
    return result;
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
    double const kelvins_ = detail::require_vle_temperature("dew point", t);
    auto result = detail::typed(detail::vle::dew_at_temperature(y, kelvins_));
    result.temperature = t;
    result.vapour = mole_fraction(y);
    return result;
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
    detail::require_vle_pressure("dew point", 0.0, p);
    detail::require_vle_pressure("dew point", 1.0, p);
    auto result = detail::typed(detail::vle::dew_at_pressure(y, p.value()));
    result.pressure = p;
    result.vapour = mole_fraction(y);
    return result;
}

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
/// @return the equilibrium; liquid and vapour are the same
/// @throws range_error if there is none, or the temperature is above 120 °C
/// @par Accuracy
/// 0.8960 mole fraction and 78.13 °C at 101.325 kPa (measured 0.891 to 0.8943, 78.15 °C). The limit of 10.4
/// kPa, below which it vanishes, rests on one isotherm.
/// @par Source
/// @ref source_excess_gibbs
inline equilibrium azeotrope(units::temperature t) {
    double const lowest = detail::lowest_azeotrope();
    require_range("azeotrope", argument::temperature, t.celsius(), "°C", lowest - 273.15,
                  detail::vle::highest_celsius, "from where there is an azeotrope");
    auto const result = detail::typed(detail::azeotrope_or_ethanol(t.kelvin()));
    return {t, result.pressure, result.liquid, result.liquid, 1.0};
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
    double const coldest = detail::lowest_azeotrope();
    double const lowest = detail::azeotrope_or_ethanol(coldest).pressure;
    double const highest = detail::azeotrope_or_ethanol(detail::vle::highest_kelvin).pressure;
    require_range("azeotrope", argument::pressure, in(p, kilopascal), "kPa", lowest / 1000.0,
                  highest / 1000.0, "from where there is an azeotrope to 120 °C");
    auto const found = detail::vle::azeotrope_at_pressure(p.value());
    auto const result = detail::typed(std::isnan(found.x) ? detail::azeotrope_or_ethanol(coldest) : found);
    return {result.temperature, p, result.liquid, result.liquid, 1.0};
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
    double const kelvins_ = detail::require_vle_temperature("flash", t);
    require_range("flash", argument::pressure, in(p, kilopascal), "kPa", 1e-6, 1e6);
    if (p >= bubble_point(mole_fraction(z), t).pressure) return {0.0, mole_fraction(z), std::nullopt};
    if (p <= dew_point(mole_fraction(z), t).pressure) return {1.0, std::nullopt, mole_fraction(z)};
    bool const rich = z > detail::azeotrope_or_ethanol(kelvins_).x;
    auto const both = coexistence(t, p, rich ? azeotrope_side::ethanol_rich : azeotrope_side::water_rich);
    double const x = both.liquid.value();
    double const y = both.vapour.value();
    return {std::clamp((z - x) / (y - x), 0.0, 1.0), both.liquid, both.vapour};
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
    auto const g = model::excess_gibbs::reduced_gibbs(x, detail::require_vle_temperature("activity", t));
    return {std::exp(g.ethanol), std::exp(g.water)};
}

}  // namespace aqueth
