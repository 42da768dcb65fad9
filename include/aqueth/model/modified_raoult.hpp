// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/second_virial_crc.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/model/ethanol_second_virial.hpp>
#include <aqueth/numeric/real.hpp>

#include <cmath>
#include <limits>
#include <type_traits>

/// Raoult's law with activity coefficients, for a vapour with second virial coefficients:
///
///     y_i p = x_i gamma_i p_i exp(e_i),   e_i = -[(B_ii - v_i)(p - p_i) + p y_j^2 delta]/(R T),
///     delta = 2 B12 - B11 - B22
///
/// with the saturation pressures p_i and the molar volumes v_i of the pure liquids. Component 1 is ethanol, 2
/// water. Plain numbers: x and y the mole fractions of ethanol in liquid and vapour, temperature in K,
/// pressure in Pa. Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::modified_raoult {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "H. C. Van Ness and M. M. Abbott, Classical Thermodynamics of Nonelectrolyte Solutions, McGraw-Hill 1982 "
    "(cited from memory); B12 is this work",
    "0 to 120 °C, up to about 0.5 MPa",
    "B12 is an effective number that the left-out errors of the fit chose, see docs/fit_report.txt; at "
    "0.1 MPa the vapour's non-ideality as a whole lowers y by 0.007 near x = 0.04, by 0.003 at x = 0.4"};

inline constexpr double cross_ratio = 0.8;       ///< B12 over the mean of B11 and B22
inline constexpr double ethanol_volume = 61e-6;  ///< molar volume of liquid ethanol, near 50 °C, m3/mol
inline constexpr double water_volume = 18.3e-6;  ///< molar volume of liquid water, near 50 °C, m3/mol

/// The non-ideality of the vapour at one temperature.
template <numeric::real T>
struct vapour {
    T ethanol;  ///< (B11 - v1)/(R T), 1/Pa
    T water;    ///< (B22 - v2)/(R T), 1/Pa
    T cross;    ///< delta/(R T), 1/Pa
};

/// @param b1 second virial coefficient of ethanol, m3/mol
/// @param b2 second virial coefficient of water, m3/mol
/// @param ratio B12 over the mean of the two
/// @param t  temperature, K
/// @return the vapour with these coefficients
template <numeric::real T>
vapour<T> virial_vapour(T const& b1, T const& b2, double ratio, T const& t) {
    T const rt = T(correlation::gas_constant::molar) * t;
    return {(b1 - T(ethanol_volume)) / rt, (b2 - T(water_volume)) / rt, T(ratio - 1) * (b1 + b2) / rt};
}

/// @param t temperature, K, 273.15 to 393.15
/// @return the vapour of ethanol and water
template <numeric::real T>
vapour<T> virial_vapour(T const& t) {
    return virial_vapour(ethanol_second_virial::coefficient(t).value,
                         correlation::second_virial_crc::water(t).value, cross_ratio, t);
}

/// @param t temperature, K, 273.15 to 393.15
/// @return derivative of the vapour with respect to temperature, 1/(Pa K)
template <numeric::real T>
vapour<T> virial_vapour_slope(T const& t) {
    T const b1 = ethanol_second_virial::coefficient(t).slope,
            b2 = correlation::second_virial_crc::water(t).slope;
    T const rt = T(correlation::gas_constant::molar) * t;
    vapour<T> const v = virial_vapour(t);
    return {b1 / rt - v.ethanol / t, b2 / rt - v.water / t,
            T(cross_ratio - 1) * (b1 + b2) / rt - v.cross / t};
}

/// The exponents e of the two components and their derivatives with respect to pressure. With respect to y
/// they are 2 p cross (1 - y) and -2 p cross y, so that y e1' + (1 - y) e2' = 0.
template <numeric::real T>
struct exponents {
    T ethanol;    ///< e1
    T water;      ///< e2
    T ethanol_p;  ///< de1/dp, 1/Pa
    T water_p;    ///< de2/dp, 1/Pa
};

/// @param v  the vapour
/// @param p  pressure, Pa
/// @param y  mole fraction of ethanol in the vapour
/// @param p1 saturation pressure of ethanol, Pa
/// @param p2 saturation pressure of water, Pa
/// @return the exponents there
template <numeric::real T>
exponents<T> at(vapour<T> const& v, T const& p, T const& y, T const& p1, T const& p2) {
    T const c1 = (T(1) - y) * (T(1) - y) * v.cross, c2 = y * y * v.cross;
    return {-(v.ethanol * (p - p1) + p * c1), -(v.water * (p - p2) + p * c2), -(v.ethanol + c1),
            -(v.water + c2)};
}

/// @param y mole fraction of ethanol in the vapour
/// @param t temperature, K, 273.15 to 393.15
/// @param p pressure, Pa, up to that of the dew point
/// @return molar volume of the vapour, m3/mol: R T/p + B
template <numeric::real T>
T molar_volume(T const& y, T const& t, T const& p) {
    T const b1 = ethanol_second_virial::coefficient(t).value,
            b2 = correlation::second_virial_crc::water(t).value;
    T const z = T(1) - y;
    T const b = y * y * b1 + z * z * b2 + y * z * T(cross_ratio) * (b1 + b2);
    return T(correlation::gas_constant::molar) * t / p + b;
}

/// Stopping rule of an iteration that doubles its digits: the last correction was below the square root of
/// rounding, so the error is below rounding. A scalar that carries derivatives gets one more round, because
/// they converge one round later. NaN and too many rounds stop it too.
template <numeric::real T>
class arrival {
public:
    /// @param size square of the last relative correction
    /// @return whether to stop
    bool operator()(T const& size) {
        if (++rounds_ >= 40 || numeric::is_nan(size)) return true;
        if (arrived_) return true;
        arrived_ = size <= T(std::numeric_limits<T>::epsilon());
        return arrived_ && std::is_floating_point_v<T>;
    }

private:
    int rounds_ = 0;
    bool arrived_ = false;
};

/// @param dy a correction of y
/// @param y  mole fraction of ethanol in the vapour, which may be zero
/// @return square of the relative correction, which keeps all digits of the smallest traces
template <numeric::real T>
T relative_square(T const& dy, T const& y) {
    return y > T(0) ? T(dy / y * (dy / y)) : T(dy * dy);
}

/// A liquid at its bubble point.
template <numeric::real T>
struct bubble_point {
    T pressure;  ///< Pa
    T y;         ///< mole fraction of ethanol in the vapour
    T ln_alpha;  ///< logarithm of the relative volatility of ethanol to water, good at both ends of x too
};

/// Bubble point at a temperature, by Newton's method in p and y: three to four rounds.
/// @param x         mole fraction of ethanol in the liquid, 0 to 1
/// @param ln_gamma1 logarithm of the activity coefficient of ethanol
/// @param ln_gamma2 logarithm of the activity coefficient of water
/// @param p1        saturation pressure of ethanol, Pa
/// @param p2        saturation pressure of water, Pa
/// @param v         the vapour at that temperature
/// @return pressure, vapour and relative volatility, to rounding
template <numeric::real T>
bubble_point<T> bubble(T const& x, T const& ln_gamma1, T const& ln_gamma2, T const& p1, T const& p2,
                       vapour<T> const& v) {
    using std::exp;
    using std::log;
    T const k1 = x * p1 * exp(ln_gamma1), k2 = (T(1) - x) * p2 * exp(ln_gamma2);
    T p = k1 + k2, y = k1 / p, size(0);
    arrival<T> arrived;
    do {
        auto const e = at(v, p, y, p1, p2);
        T const q1 = k1 * exp(e.ethanol), q = q1 + k2 * exp(e.water), yq = q1 / q, yy = y * (T(1) - y);
        T const dp = (q / p - T(1)) / (T(1) - p * (y * e.ethanol_p + (T(1) - y) * e.water_p));  // relative
        T const dy = (yq - y + yy * p * (e.ethanol_p - e.water_p) * dp) / (T(1) - T(2) * p * v.cross * yy);
        p += p * dp;
        y += dy;
        size = dp * dp + relative_square(dy, y);
    } while (!arrived(size));
    auto const e = at(v, p, y, p1, p2);
    return {p, y, log(p1 / p2) + ln_gamma1 - ln_gamma2 + e.ethanol - e.water};
}

}  // namespace aqueth::inline AQUETH_ABI::model::modified_raoult
