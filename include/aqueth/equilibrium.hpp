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

namespace aqueth::inline AQUETH_ABI {

/// A liquid and a vapour in equilibrium.
struct [[nodiscard]] equilibrium {
    units::temperature temperature;  ///< of both
    units::pressure pressure;        ///< absolute pressure
    mole_fraction liquid;            ///< ethanol in the liquid
    mole_fraction vapour;            ///< ethanol in the vapour
    double relative_volatility;      ///< of ethanol to water, (y/x)/((1 - y)/(1 - x)); 1 at the azeotrope
};

namespace detail {

namespace vle = model::vapour_liquid;

inline constexpr char const* vle_source = name_of(limit::vapour_liquid_equilibrium);

/// The ends of the range in K, exactly as a typed temperature holds them: 0.01 + 273.15 is not 273.16.
inline constexpr double coldest_kelvin = celsius(vle::lowest_celsius).kelvin();
inline constexpr double hottest_kelvin = celsius(vle::highest_celsius).kelvin();

/// Between these two pressures, in Pa, every mixture boils well within the range.
inline constexpr double surely_low = 1000.0 * plain::detail::surely_low_kpa;
inline constexpr double surely_high = 1000.0 * plain::detail::surely_high_kpa;

/// Checks that the liquid x boils within the temperature range at this pressure.
inline void require_vle_pressure(char const* property, double x, units::pressure p) {
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
}

}  // namespace detail

/// Bubble point at a temperature: the pressure at which a liquid begins to boil, and its first vapour.
/// @param liquid strength of the liquid, in any basis
/// @param t      temperature, 0.01 to 120 °C
/// @return the equilibrium
/// @throws refusal if the temperature is outside its range
/// @par Accuracy
/// Pressure 0.1 % on average against the best static measurements (Pemberton and Mash 1978). The vapour lies
/// above most measured ones, over x = 0.01 to 0.1 at 101 kPa by 0.016 mole fraction on average:
/// `vapour_uncertainty` states it, @ref equilibrium_model_vapour explains it.
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium bubble_point(Strength liquid, units::temperature t) {
    double const x = to<mole_fraction>(liquid).value();
    detail::accept("bubble point", plain::detail::boiling_temperature_range(t.celsius()));
    auto const found = plain::detail::vle::bubble_at_temperature(x, t.kelvin());
    auto result = detail::typed(plain::detail::in_plain_units(found));
    result.temperature = t;
    return result;
}

/// Bubble point at a pressure: the temperature at which a liquid boils, and its first vapour.
/// @param liquid strength of the liquid, in any basis
/// @param p      absolute pressure at which the liquid boils between 0 and 120 °C (0.6 to 198 kPa for water,
///               1.6 to 428 kPa for ethanol)
/// @return the equilibrium
/// @throws refusal if the pressure is outside its range
/// @par Accuracy
/// Temperature 0.03 K against the best static measurements; ebulliometers at 101 kPa boil 0.2 to 0.35 K
/// higher on average: @ref fit_report, section 3.
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium bubble_point(Strength liquid, units::pressure p) {
    double const x = to<mole_fraction>(liquid).value();
    detail::require_vle_pressure("bubble point", x, p);
    return detail::typed(plain::detail::in_plain_units(plain::detail::vle::bubble_at_pressure(x, p.value())),
                         p);
}

/// Dew point at a temperature: the pressure at which a vapour begins to condense, and its first liquid.
/// @param vapour strength of the vapour, in any basis (that of its condensate)
/// @param t      temperature, 0.01 to 120 °C
/// @return the equilibrium
/// @throws refusal if the temperature is outside its range
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
/// @throws refusal if the pressure is outside its range
/// @par Source
/// @ref source_excess_gibbs
template <strength_basis Strength>
equilibrium dew_point(Strength vapour, units::pressure p) {
    double const y = to<mole_fraction>(vapour).value();
    return detail::typed(detail::answer("dew point", plain::dew_point_at_kpa(y, in(p, kilopascal))), p);
}

/// Azeotrope at a temperature: the mixture whose vapour has its own composition.
/// @param t temperature, from about 30 °C, where the azeotrope appears, to 120 °C
/// @return the equilibrium; liquid and vapour are the same
/// @throws refusal if there is none, or the temperature is above 120 °C
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
/// @throws refusal if there is none, or the pressure is outside its range
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
/// @throws refusal if nothing boils at t under p on that side; the bounds are for the pressure
/// @par Accuracy
/// 0.1 K in a temperature is about 0.1 % mol in a weak wash and 1 % mol or more above 40 % mol, where boiling
/// temperatures change little with strength: a thermometer cannot replace an alcoholometer there.
/// @par Source
/// @ref source_excess_gibbs
inline equilibrium coexistence(units::temperature t, units::pressure p,
                               azeotrope_side side = azeotrope_side::water_rich) {
    char const* const property = side == azeotrope_side::water_rich ? "coexistence, water-rich side"
                                                                    : "coexistence, ethanol-rich side";
    auto const found = plain::coexistence(t.celsius(), in(p, kilopascal), side);
    return detail::typed(detail::answer(property, found), p);
}

/// Outcome of an isothermal flash.
struct [[nodiscard]] flash {
    double vapour_fraction;               ///< moles of vapour per mole of feed: 0 all liquid, 1 all vapour
    std::optional<mole_fraction> liquid;  ///< ethanol in the liquid, if there is any
    std::optional<mole_fraction> vapour;  ///< ethanol in the vapour, if there is any
};

/// Isothermal flash: how a feed splits into liquid and vapour at a temperature and a pressure.
/// @param feed strength of the feed, in any basis
/// @param t    temperature, 0.01 to 120 °C
/// @param p    absolute pressure, above 0 (so low that all is vapour, so high that all is liquid)
/// @return amounts and compositions; moles of ethanol balance to rounding
/// @throws refusal if the temperature is outside its range or the pressure is not a positive number
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
struct [[nodiscard]] activity_coefficients {
    double ethanol;  ///< activity over mole fraction, against the pure liquid at the same temperature
    double water;    ///< the same of water
};

/// @param liquid strength of the liquid, in any basis
/// @param t      temperature, 0.01 to 120 °C
/// @return activity coefficients (at zero strength and in pure ethanol: at infinite dilution of the other
///         component)
/// @throws refusal if the temperature is outside its range
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

}  // namespace aqueth::inline AQUETH_ABI
