// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/model/excess_gibbs_coefficients.hpp>
#include <aqueth/model/skewed_redlich_kister.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>

/// Excess Gibbs energy of liquid ethanol-water mixtures. One function also gives the activity coefficients,
/// the excess enthalpy and the excess heat capacity, so that they agree with each other.
///
/// Form: skewed_redlich_kister.hpp. Plain numbers: x the mole fraction of ethanol, temperature in K, J/mol
/// and J/(mol K). Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::excess_gibbs {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this work: src/fit/excess_gibbs.cpp fits tables/ (total pressures, boiling points, infinite dilution, "
    "azeotropes, excess enthalpies and heat capacities together) and writes docs/fit_report.txt",
    "0 to 120 °C, mole fraction 0 to 1",
    "total pressure 0.1 % against the best isotherms; activity coefficient of ethanol at infinite dilution "
    "2 %; excess enthalpy 25 J/mol (45 J/mol at x = 0.05 and 50 °C); excess heat capacity 1.6 J/(mol K) from "
    "23 to 25 °C, up to 4.4 near 3 °C in rich mixtures"};

inline constexpr double lowest_kelvin = 273.15;   ///< lower end of the range, K
inline constexpr double highest_kelvin = 393.15;  ///< upper end of the range, K

/// @param x mole fraction of ethanol
/// @param t temperature, K
/// @return whether the fit reaches there
template <numeric::real T>
constexpr bool covers(T const& x, T const& t) {
    return x >= T(0) && x <= T(1) && t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// A molar excess property with its partial molar properties (ethanol, water) and its curvature in x.
template <numeric::real T>
using excess_property = skewed_redlich_kister::excess_property<T>;

/// @param t temperature, K
/// @return the functions of temperature that `evaluate` takes
template <numeric::real T>
skewed_redlich_kister::functions_of_temperature<T> at_temperature(T const& t) {
    return skewed_redlich_kister::at_temperature(t, reference_kelvin);
}

/// The series with the fitted coefficients, for several properties at one temperature.
/// @param x mole fraction of ethanol, 0 to 1
/// @param f one set of the functions of temperature
/// @return the property divided by R T (gibbs, enthalpy) or R (heat_capacity)
template <numeric::real T>
excess_property<T> evaluate(T const& x, std::array<T, 4> const& f) {
    return skewed_redlich_kister::series(x, skew, static_cast<int>(coefficients.size()), [&](int k) -> T {
        auto const& c = coefficients[static_cast<std::size_t>(k)];
        return T(c[0]) * f[0] + T(c[1]) * f[1] + T(c[2]) * f[2] + T(c[3]) * f[3];
    });
}

/// @param x mole fraction of ethanol, 0 to 1
/// @param t temperature, K, 273.15 to 393.15
/// @return excess Gibbs energy over R T; its partial molar properties are the logarithms of the activity
///         coefficients of ethanol and water
template <numeric::real T>
excess_property<T> reduced_gibbs(T const& x, T const& t) {
    return evaluate(x, at_temperature(t).gibbs);
}

/// @param x mole fraction of ethanol, 0 to 1
/// @param t temperature, K, 273.15 to 393.15
/// @return excess enthalpy (heat of mixing), J/mol
template <numeric::real T>
excess_property<T> enthalpy(T const& x, T const& t) {
    auto const h = evaluate(x, at_temperature(t).enthalpy);
    T const rt = T(correlation::gas_constant::molar) * t;
    return {rt * h.molar, rt * h.ethanol, rt * h.water, rt * h.curvature};
}

/// @param x mole fraction of ethanol, 0 to 1
/// @param t temperature, K, 273.15 to 393.15
/// @return excess heat capacity at constant pressure, J/(mol K)
template <numeric::real T>
excess_property<T> heat_capacity(T const& x, T const& t) {
    auto const c = evaluate(x, at_temperature(t).heat_capacity);
    T const r = T(correlation::gas_constant::molar);
    return {r * c.molar, r * c.ethanol, r * c.water, r * c.curvature};
}

}  // namespace aqueth::inline AQUETH_ABI::model::excess_gibbs
