// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/heat_capacity_perry.hpp>
#include <aqueth/correlation/second_virial_crc.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>
#include <aqueth/model/ethanol_second_virial.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/modified_raoult.hpp>
#include <aqueth/numeric/real.hpp>

/// Enthalpies and heat capacities of liquid and vapour mixtures of ethanol and water; each pure liquid has
/// the enthalpy zero at 273.15 K.
///
///     h(liquid) = sum x_i int. cp_i dT + H^E(x, T)
///     h(vapour) = sum y_i [int. cp_i dT + dh_i + (B_ii - T B_ii')(p - p_i)] + y1 y2 p (delta - T delta')
///     dh_i      = T (dp_i/dT)(R T/p_i + B_ii - v_i)      (Clapeyron)
///
/// so that heats, saturation pressures and virial coefficients agree with each other. The effect of pressure
/// on the liquid (about 6 J/mol at 0.1 MPa) is neglected. Plain numbers: x and y mole fractions of ethanol,
/// temperature in K, pressure in Pa, J/mol and J/(mol K). Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::enthalpy {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this work: heat_capacity_perry, excess_gibbs and Clapeyron's equation with "
    "the saturation pressures and virial "
    "coefficients of the equilibrium",
    "0 to 116.85 °C",
    "enthalpy of vaporization of ethanol 0.7 % against calorimeters, of water 0.1 "
    "%; enthalpies of mixtures some 0.5 %; "
    "heat capacity of liquids 1 %, of vapours 3 %"};

inline constexpr double zero_kelvin = 273.15;  ///< where the enthalpy of each pure liquid is zero, K
/// Lower end of the range, K. The sources of the pure liquids begin 0.01 K higher, at water's triple point;
/// the zero of the enthalpy is included for calculations with ice water.
inline constexpr double lowest_kelvin = zero_kelvin;
inline constexpr double highest_kelvin =
    390.0;                                     ///< upper end: that of the heat capacity of liquid ethanol, K
inline constexpr double lowest_celsius = 0.0;  ///< lower end of the range, °C
inline constexpr double highest_celsius = 116.85;  ///< upper end of the range, °C

/// @param t temperature, K
/// @return whether the correlations reach there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

namespace detail {

/// Clapeyron's equation.
template <numeric::real T>
T vaporization(T const& t, numeric::value_and_slope<T> const& ln_p, T const& b, double liquid_volume) {
    using std::exp;
    return t * ln_p.slope *
           (T(correlation::gas_constant::molar) * t + exp(ln_p.value) * (b - T(liquid_volume)));
}

}  // namespace detail

/// @param t temperature, K, 273.16 to 390
/// @return enthalpy of vaporization of pure ethanol at saturation, J/mol
template <numeric::real T>
T ethanol_vaporization(T const& t) {
    return detail::vaporization(t, correlation::ethanol_saturation_poling::ln_pressure_and_slope(t),
                                ethanol_second_virial::coefficient(t).value, modified_raoult::ethanol_volume);
}

/// @param t temperature, K, 273.16 to 390
/// @return enthalpy of vaporization of pure water at saturation, J/mol
template <numeric::real T>
T water_vaporization(T const& t) {
    return detail::vaporization(t, correlation::water_saturation_wagner_pruss::ln_pressure_and_slope(t),
                                correlation::second_virial_crc::water(t).value,
                                modified_raoult::water_volume);
}

/// @param t temperature, K, 273.16 to 390
/// @return enthalpy of pure liquid ethanol, J/mol
template <numeric::real T>
constexpr T ethanol_liquid(T const& t) {
    return correlation::heat_capacity_perry::ethanol_liquid_enthalpy(t);
}

/// @param t temperature, K, 273.16 to 390
/// @return enthalpy of pure liquid water, J/mol
template <numeric::real T>
constexpr T water_liquid(T const& t) {
    return correlation::heat_capacity_perry::water_liquid_enthalpy(t);
}

/// @param x mole fraction of ethanol in the liquid, 0 to 1
/// @param t temperature, K, 273.16 to 390
/// @return enthalpy of the liquid, J/mol
template <numeric::real T>
T liquid(T const& x, T const& t) {
    return x * ethanol_liquid(t) + (T(1) - x) * water_liquid(t) + excess_gibbs::enthalpy(x, t).molar;
}

/// @param x mole fraction of ethanol in the liquid, 0 to 1
/// @param t temperature, K, 273.16 to 390
/// @return heat capacity of the liquid, J/(mol K): the derivative of its enthalpy
template <numeric::real T>
T liquid_heat_capacity(T const& x, T const& t) {
    return x * correlation::heat_capacity_perry::ethanol_liquid(t) +
           (T(1) - x) * correlation::heat_capacity_perry::water_liquid(t) +
           excess_gibbs::heat_capacity(x, t).molar;
}

/// @param y mole fraction of ethanol in the vapour, 0 to 1
/// @param t temperature, K, 273.16 to 390
/// @param p pressure, Pa, up to that of the dew point
/// @return enthalpy of the vapour, J/mol
template <numeric::real T>
T vapour(T const& y, T const& t, T const& p) {
    auto const b1 = ethanol_second_virial::coefficient(t);
    auto const b2 = correlation::second_virial_crc::water(t);
    T const d1 = b1.value - t * b1.slope, d2 = b2.value - t * b2.slope, z = T(1) - y;
    T const h1 = ethanol_liquid(t) + ethanol_vaporization(t) +
                 d1 * (p - correlation::ethanol_saturation_poling::pressure(t));
    T const h2 = water_liquid(t) + water_vaporization(t) +
                 d2 * (p - correlation::water_saturation_wagner_pruss::pressure(t));
    return y * h1 + z * h2 + y * z * p * T(modified_raoult::cross_ratio - 1) * (d1 + d2);
}

/// Heat capacity of the vapour at constant pressure: ideal gases and -T p d2B/dT2.
///
/// This function is not the slope of `vapour`. That slope follows from three other sources, is a small
/// difference of large numbers, and is therefore less accurate. For ethanol it agrees within 4 % up to 345 K,
/// and is 7 % larger at 355 K and 25 % at 385 K; for water it agrees within 4 %. Use differences of `vapour`
/// for heat balances, and this function for the heat capacity itself.
/// @param y mole fraction of ethanol in the vapour, 0 to 1
/// @param t temperature, K, 273.16 to 390
/// @param p pressure, Pa, up to that of the dew point
/// @return heat capacity, J/(mol K)
template <numeric::real T>
T vapour_heat_capacity(T const& y, T const& t, T const& p) {
    T const c1 = ethanol_second_virial::coefficient(t).curvature,
            c2 = correlation::second_virial_crc::water(t).curvature;
    T const z = T(1) - y;
    T const curvature = y * c1 + z * c2 + y * z * T(modified_raoult::cross_ratio - 1) * (c1 + c2);
    return y * correlation::heat_capacity_perry::ethanol_ideal_gas(t) +
           z * correlation::heat_capacity_perry::water_ideal_gas(t) - t * p * curvature;
}

}  // namespace aqueth::inline AQUETH_ABI::model::enthalpy
