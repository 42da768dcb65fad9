// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>
#include <aqueth/model/bubble_point_guess.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/modified_raoult.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/numeric/root.hpp>

#include <cmath>
#include <limits>

/// Vapour-liquid equilibrium of ethanol-water mixtures: the correlations of this folder put together.
///
/// Plain numbers: x and y the mole fractions of ethanol in liquid and vapour, temperature in K, pressure in
/// Pa. Nothing is checked, NaN in gives NaN out. Generic in the scalar; with one that carries derivatives
/// every result carries its own. The solvers end at rounding, so no result depends on a tolerance.
namespace aqueth::inline AQUETH_ABI::model::vapour_liquid {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this work: excess_gibbs, water_saturation_wagner_pruss, ethanol_saturation_poling and modified_raoult "
    "put together",
    "0.01 to 120 °C, that is 0.6 to 430 kPa",
    "total pressure 0.1 % against the best isotherms; measured boiling points at 101.3 kPa lie 0.2 to 0.35 K "
    "higher on average, up to 1.2 K below x = 0.1; most measured y lie lower, over x = 0.01 to 0.1 by 0.017 "
    "on "
    "average: vapour_deviations, docs/fit_report.txt"};

inline constexpr double lowest_kelvin = 273.16;   ///< lower end of the range, K
inline constexpr double highest_kelvin = 393.15;  ///< upper end of the range, K
inline constexpr double lowest_celsius = 0.01;    ///< lower end of the range, °C
inline constexpr double highest_celsius = 120.0;  ///< upper end of the range, °C

/// @param t temperature, K; the temperature of a result must be in range too
/// @return whether the correlations reach there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

/// Liquid and vapour in equilibrium.
template <numeric::real T>
struct equilibrium {
    T temperature;  ///< K
    T pressure;     ///< Pa
    T x;            ///< mole fraction of ethanol in the liquid
    T y;            ///< mole fraction of ethanol in the vapour
    T ln_alpha;     ///< logarithm of the relative volatility of ethanol to water, good at x = 0 and x = 1 too
};

namespace detail {

/// The variables of the polynomials for the first guess of a bubble point.
template <numeric::real T>
struct guess_variables {
    static constexpr double skew = 0.35;  ///< gives more resolution at the weak end

    T s;  ///< skewed mole fraction, -1 for water to 1 for ethanol
    T v;  ///< logarithm of the pressure in Pa, centred

    guess_variables(T const& x, T const& ln_p)
        : s((x - T(skew) * (T(1) - x)) / (x + T(skew) * (T(1) - x))), v((ln_p - T(9.7)) / T(3.3)) {}
};

/// Properties of the liquid, the pure liquids and the vapour at one x and temperature, with their derivatives
/// with respect to temperature.
template <numeric::real T>
struct state {
    excess_gibbs::excess_property<T> gibbs;  ///< over R T
    T ln_k1, ln_k2;                          ///< ln(gamma_i p_i), p_i in Pa
    T ln_k1_t, ln_k2_t;                      ///< their derivatives, 1/K
    T p1, p2, p1_t, p2_t;                    ///< saturation pressures, Pa, and their derivatives, Pa/K
    modified_raoult::vapour<T> v, v_t;       ///< the vapour and its derivative

    state(T const& x, T const& t) {
        using std::exp;
        auto const f = excess_gibbs::at_temperature(t);
        gibbs = excess_gibbs::evaluate(x, f.gibbs);
        auto const h = excess_gibbs::evaluate(x, f.enthalpy);  // over R T: -T d(gibbs)/dT
        auto const s1 = correlation::ethanol_saturation_poling::ln_pressure_and_slope(t);
        auto const s2 = correlation::water_saturation_wagner_pruss::ln_pressure_and_slope(t);
        ln_k1 = s1.value + gibbs.ethanol;
        ln_k2 = s2.value + gibbs.water;
        ln_k1_t = s1.slope - h.ethanol / t;
        ln_k2_t = s2.slope - h.water / t;
        p1 = exp(s1.value);
        p2 = exp(s2.value);
        p1_t = p1 * s1.slope;
        p2_t = p2 * s2.slope;
        v = modified_raoult::virial_vapour(t);
        v_t = modified_raoult::virial_vapour_slope(t);
    }
};

/// d ln(gamma_i p_i exp e_i)/dT at constant x, y and p, 1/K.
template <numeric::real T>
struct slopes_in_temperature {
    T ethanol;
    T water;

    slopes_in_temperature(state<T> const& s, T const& p, T const& y) {
        T const z = T(1) - y;
        ethanol = s.ln_k1_t - (s.v_t.ethanol * (p - s.p1) - s.v.ethanol * s.p1_t + p * z * z * s.v_t.cross);
        water = s.ln_k2_t - (s.v_t.water * (p - s.p2) - s.v.water * s.p2_t + p * y * y * s.v_t.cross);
    }
};

/// Derivatives of ln p and ln alpha with respect to x and temperature at the bubble point.
template <numeric::real T>
struct bubble_slopes {
    T ln_p_x, ln_p_t;
    T ln_alpha_x, ln_alpha_t;
    T k1, k2;  ///< y/x and (1 - y)/(1 - x), finite at the ends

    explicit bubble_slopes(equilibrium<T> const& e) {
        using std::exp;
        state<T> const s(e.x, e.temperature);
        T const p = e.pressure, y = e.y, z = T(1) - y, x2 = T(1) - e.x, alpha = exp(e.ln_alpha);
        auto const ex = modified_raoult::at(s.v, p, y, s.p1, s.p2);
        slopes_in_temperature<T> const l(s, p, y);
        k2 = T(1) / (x2 + alpha * e.x);
        k1 = alpha * k2;
        // from ln p = ln(q1 + q2), q_i = x_i gamma_i p_i exp e_i: p in the exponents gives the divisor
        T const stiff = T(1) - p * (y * ex.ethanol_p + z * ex.water_p);
        ln_p_x = (k1 - k2 + s.gibbs.curvature * (y * x2 - z * e.x)) / stiff;
        ln_p_t = (y * l.ethanol + z * l.water) / stiff;
        // from ln alpha = ln(gamma1 p1/(gamma2 p2)) + e1 - e2, where d(e1 - e2)/dy = 2 p cross
        T const in_p = p * (ex.ethanol_p - ex.water_p), in_y = T(2) * p * s.v.cross;
        T const loose = T(1) - in_y * y * z;
        ln_alpha_x = (s.gibbs.curvature + in_p * ln_p_x + in_y * k1 * k2) / loose;
        ln_alpha_t = (l.ethanol - l.water + in_p * ln_p_t) / loose;
    }
};

}  // namespace detail

/// Slopes of the equilibrium along an isobar.
template <numeric::real T>
struct isobar_slopes {
    T temperature_x;  ///< dT/dx, K
    T y_x;            ///< dy/dx
    T ln_alpha_x;     ///< d ln alpha/dx
};

/// @param e an equilibrium
/// @return how it changes with x at constant pressure
template <numeric::real T>
isobar_slopes<T> along_isobar(equilibrium<T> const& e) {
    detail::bubble_slopes<T> const s(e);
    T const t_x = -s.ln_p_x / s.ln_p_t, a_x = s.ln_alpha_x + s.ln_alpha_t * t_x;
    return {t_x, s.k1 * s.k2 + e.y * (T(1) - e.y) * a_x, a_x};
}

/// Slopes of the equilibrium along an isotherm.
template <numeric::real T>
struct isotherm_slopes {
    T pressure_x;  ///< dp/dx, Pa
    T y_x;         ///< dy/dx
    T ln_alpha_x;  ///< d ln alpha/dx
};

/// @param e an equilibrium
/// @return how it changes with x at constant temperature
template <numeric::real T>
isotherm_slopes<T> along_isotherm(equilibrium<T> const& e) {
    detail::bubble_slopes<T> const s(e);
    return {e.pressure * s.ln_p_x, s.k1 * s.k2 + e.y * (T(1) - e.y) * s.ln_alpha_x, s.ln_alpha_x};
}

/// @param x mole fraction of ethanol in the liquid, 0 to 1
/// @param t temperature, K, 273.16 to 393.15
/// @return the liquid at its bubble point, with the vapour over it
template <numeric::real T>
equilibrium<T> bubble_at_temperature(T const& x, T const& t) {
    auto const g = excess_gibbs::reduced_gibbs(x, t);
    auto const b = modified_raoult::bubble(
        x, g.ethanol, g.water, correlation::ethanol_saturation_poling::pressure(t),
        correlation::water_saturation_wagner_pruss::pressure(t), modified_raoult::virial_vapour(t));
    return {t, b.pressure, x, b.y, b.ln_alpha};
}

/// Newton's method in temperature and y together. The variables are ln p and 1/T, whose relation is nearly
/// linear. The first guess is good to 0.02 K, so that two rounds, sometimes three, are enough.
/// @param x mole fraction of ethanol in the liquid, 0 to 1
/// @param p pressure, Pa, such that the liquid boils between 273.16 and 393.15 K
/// @return the liquid at its bubble point, with the vapour over it
template <numeric::real T>
equilibrium<T> bubble_at_pressure(T const& x, T const& p) {
    using std::exp;
    using std::log;
    T const ln_p = log(p);
    detail::guess_variables<T> const at(x, ln_p);
    T t = T(300) / numeric::polynomial(bubble_point_guess::inverse_temperature, at.s, at.v), size(0);
    T ln_alpha = numeric::polynomial(bubble_point_guess::ln_alpha, at.s, at.v);
    T const alpha = exp(ln_alpha);
    T y = alpha * x / (T(1) + (alpha - T(1)) * x);
    modified_raoult::arrival<T> arrived;
    do {
        detail::state<T> const s(x, t);
        detail::slopes_in_temperature<T> const l(s, p, y);
        auto const e = modified_raoult::at(s.v, p, y, s.p1, s.p2);
        T const q1 = x * exp(s.ln_k1 + e.ethanol), q = q1 + (T(1) - x) * exp(s.ln_k2 + e.water), yq = q1 / q;
        T const slope = yq * l.ethanol + (T(1) - yq) * l.water, in_y = T(2) * p * s.v.cross;
        T const next = t / (T(1) + (log(q) - ln_p) / (t * slope)), dt = next - t;
        T const dy =
            (yq - y + yq * (T(1) - yq) * (l.ethanol - l.water) * dt) / (T(1) - in_y * y * (T(1) - y));
        ln_alpha = s.ln_k1 - s.ln_k2 + e.ethanol - e.water + (l.ethanol - l.water) * dt + in_y * dy;
        t = next;
        y += dy;
        size = dt * dt / (t * t) + modified_raoult::relative_square(dy, y);
    } while (!arrived(size));
    return {t, p, x, y, ln_alpha};
}

namespace detail {

/// The liquid whose vapour has the composition y. The vapour always grows richer with the liquid, because the
/// liquid is stable, so there is one answer.
template <numeric::real T, class Bubble, class Slope>
equilibrium<T> dew(T const& y, Bubble const& bubble, Slope const& y_slope) {
    // Exponentials of about ten cause errors of tens of units in the last place of the vapour; a smaller
    // tolerance would be noise.
    T const z = T(1) - y, guess = y / (T(1) + T(11) * z * z),
            noise = T(32) * T(std::numeric_limits<T>::epsilon()) * y;
    auto const miss = [&](T const& x) -> numeric::value_and_slope<T> {
        auto const e = bubble(x);
        return {e.y - y, y_slope(e)};
    };
    auto e = bubble(numeric::bracketed_newton(miss, T(0), T(1), guess, noise));
    e.y = y;
    return e;
}

/// The composition at which the relative volatility falls through one; NaN if there is none.
template <numeric::real T, class Bubble, class Slope>
equilibrium<T> azeotrope(Bubble const& bubble, Slope const& ln_alpha_slope) {
    T const lower = T(0.5), upper = T(1), noise = T(4) * T(std::numeric_limits<T>::epsilon());
    T const at_lower = bubble(lower).ln_alpha, at_upper = bubble(upper).ln_alpha;
    if (!(at_lower > T(0) && at_upper <= T(0))) {
        T const nan = T(std::numeric_limits<T>::quiet_NaN());
        return {nan, nan, nan, nan, nan};
    }
    auto const miss = [&](T const& x) -> numeric::value_and_slope<T> {
        auto const e = bubble(x);
        return {e.ln_alpha, ln_alpha_slope(e)};
    };
    T const guess = lower + (upper - lower) * at_lower / (at_lower - at_upper);
    return bubble(numeric::bracketed_newton(miss, lower, upper, guess, noise));
}

}  // namespace detail

/// @param y mole fraction of ethanol in the vapour, 0 to 1
/// @param t temperature, K, 273.16 to 393.15
/// @return the vapour at its dew point, with the liquid that condenses from it
template <numeric::real T>
equilibrium<T> dew_at_temperature(T const& y, T const& t) {
    return detail::dew(
        y, [&](T const& x) { return bubble_at_temperature(x, t); },
        [](equilibrium<T> const& e) { return along_isotherm(e).y_x; });
}

/// @param y mole fraction of ethanol in the vapour, 0 to 1
/// @param p pressure, Pa, as for `bubble_at_pressure`
/// @return the vapour at its dew point, with the liquid that condenses from it
template <numeric::real T>
equilibrium<T> dew_at_pressure(T const& y, T const& p) {
    return detail::dew(
        y, [&](T const& x) { return bubble_at_pressure(x, p); },
        [](equilibrium<T> const& e) { return along_isobar(e).y_x; });
}

/// @param t temperature, K, 273.16 to 393.15
/// @return the azeotrope at that temperature; NaN where there is none, below about 30 °C
template <numeric::real T>
equilibrium<T> azeotrope_at_temperature(T const& t) {
    return detail::azeotrope<T>([&](T const& x) { return bubble_at_temperature(x, t); },
                                [](equilibrium<T> const& e) { return along_isotherm(e).ln_alpha_x; });
}

/// @param p pressure, Pa, up to about 430 kPa
/// @return the azeotrope under that pressure; NaN where there is none, below about 10 kPa
template <numeric::real T>
equilibrium<T> azeotrope_at_pressure(T const& p) {
    return detail::azeotrope<T>([&](T const& x) { return bubble_at_pressure(x, p); },
                                [](equilibrium<T> const& e) { return along_isobar(e).ln_alpha_x; });
}

}  // namespace aqueth::inline AQUETH_ABI::model::vapour_liquid
