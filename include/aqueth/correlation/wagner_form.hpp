// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/numeric/root.hpp>

#include <cmath>
#include <limits>

/// The form of the saturation equations: ln(p/pc) = (Tc/T) f(th), th = 1 - T/Tc, after W. Wagner.
///
/// Plain numbers: temperature in K, pressure in Pa. Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::correlation::wagner_form {

/// @param f        callable: th -> f and its derivative, numeric::value_and_slope
/// @param critical_kelvin critical temperature, K
/// @param critical_pascal critical pressure, Pa
/// @param t        temperature, K, up to the critical one
/// @return ln p, p in Pa, and d ln p/dT, 1/K
template <numeric::real T, class F>
numeric::value_and_slope<T> ln_pressure_and_slope(F const& f, double critical_kelvin, double critical_pascal,
                                                  T const& t) {
    using std::log;
    T const ratio = T(critical_kelvin) / t;
    numeric::value_and_slope<T> const s = f(T(T(1) - t / T(critical_kelvin)));
    return {log(T(critical_pascal)) + ratio * s.value, -(s.slope + ratio * s.value) / t};
}

/// The inverse: ln p is nearly a straight line in 1/T, so that Newton's method in 1/T takes a few steps.
/// @param curve          callable: T -> ln p and d ln p/dT, numeric::value_and_slope
/// @param lowest_kelvin  lower end of the equation's range, K
/// @param highest_kelvin upper end, K
/// @param boiling_kelvin approximate normal boiling point, where the search starts, K
/// @param p              pressure, Pa, between those at the ends; beyond them the result is the nearer end
/// @return T and dT/dp, K/Pa
template <numeric::real T, class Curve>
numeric::value_and_slope<T> temperature_and_slope(Curve const& curve, double lowest_kelvin,
                                                  double highest_kelvin, double boiling_kelvin, T const& p) {
    using std::log;
    T const aim = log(p);
    T const coldest = T(1 / lowest_kelvin), hottest = T(1 / highest_kelvin);
    // 4800 K: enthalpy of vaporization over the gas constant, of water and ethanol alike
    T guess = T(1 / boiling_kelvin) - (aim - log(T(101325))) / T(4800);
    if (guess > coldest) guess = coldest;
    if (guess < hottest) guess = hottest;
    auto const miss = [&](T const& reciprocal) -> numeric::value_and_slope<T> {
        T const t = T(1) / reciprocal;
        auto const s = curve(t);
        return {s.value - aim, -t * t * s.slope};
    };
    // The terms of the logarithm are up to thirty, and so is the scale of its rounding.
    T const noise = T(32) * T(std::numeric_limits<T>::epsilon()) * (aim < T(1) ? T(1) : aim);
    T const t = T(1) / numeric::bracketed_newton(miss, hottest, coldest, guess, noise);
    return {t, T(1) / (p * curve(t).slope)};
}

/// The functions of a saturation equation of this form, which inherits them.
/// @tparam Equation its numbers lowest_kelvin, highest_kelvin (the critical point), critical_pascal and
///                  boiling_kelvin, and series: th -> f and its derivative
template <class Equation>
struct saturation {
    /// @param t temperature, K
    /// @return whether the equation is defined there
    template <numeric::real T>
    static constexpr bool covers(T const& t) {
        return t >= T(Equation::lowest_kelvin) && t <= T(Equation::highest_kelvin);
    }

    /// @param t temperature, K, in the range of the equation; not checked, NaN in gives NaN out
    /// @return natural logarithm of the saturation pressure in Pa, and its derivative d ln p/dT, 1/K
    template <numeric::real T>
    static numeric::value_and_slope<T> ln_pressure_and_slope(T const& t) {
        return wagner_form::ln_pressure_and_slope([](T const& th) { return Equation::series(th); },
                                                  Equation::highest_kelvin, Equation::critical_pascal, t);
    }

    /// @param t temperature, K, in the range of the equation; not checked, NaN in gives NaN out
    /// @return saturation pressure, Pa
    template <numeric::real T>
    static T pressure(T const& t) {
        using std::exp;
        return exp(ln_pressure_and_slope(t).value);
    }

    /// @param p pressure, Pa, between the saturation pressures at the ends of the range; not checked, NaN in
    ///         gives NaN out
    /// @return boiling temperature, K, to rounding, and its derivative dT/dp, K/Pa
    template <numeric::real T>
    static numeric::value_and_slope<T> temperature_and_slope(T const& p) {
        return wagner_form::temperature_and_slope([](T const& t) { return ln_pressure_and_slope(t); },
                                                  Equation::lowest_kelvin, Equation::highest_kelvin,
                                                  Equation::boiling_kelvin, p);
    }

    /// @param p pressure, Pa, between the saturation pressures at the ends of the range; not checked, NaN in
    ///         gives NaN out
    /// @return boiling temperature, K, to rounding
    template <numeric::real T>
    static T temperature(T const& p) {
        return temperature_and_slope(p).value;
    }
};

}  // namespace aqueth::inline AQUETH_ABI::correlation::wagner_form
