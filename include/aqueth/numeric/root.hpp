// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <cmath>
#include <concepts>
#include <limits>

namespace aqueth::inline AQUETH_ABI::numeric {

/// Finds the root of a monotone function inside a bracket by Newton's method, falling back to bisection.
///
/// Boost.Math has root finders of the same kind. This one works in constant expressions and with
/// automatic-differentiation and multiprecision scalars. It stops at the rounding noise of the function,
/// which only the caller knows.
///
/// @param f      callable: x -> value_and_slope; strictly monotone between the ends, slope never zero at the
///               root
/// @param lower  lower end of the bracket
/// @param upper  upper end of the bracket
/// @param guess  first guess, between the ends
/// @param noise  residual (absolute value of f) that rounding alone can produce; one last Newton step is
///               taken from there
/// @return the root; the nearer end when rounding puts the root just outside the bracket; NaN if f gives NaN.
///         Cannot fail to converge: a step that leaves the bracket or does not halve the previous one is
///         replaced by bisection, so the iteration ends after at most the number of bits of T.
/// @note With an automatic-differentiation scalar the last Newton step carries the exact first derivative of
///       the root with respect to the parameters inside f.
template <class F, real T>
constexpr T bracketed_newton(F const& f, T lower, T upper, T const& guess, T const& noise) {
    auto const magnitude = [](T const& v) { return v < T(0) ? T(-v) : v; };
    bool lower_tried = false;
    bool upper_tried = false;
    T x = guess;
    T previous = upper - lower;
    for (int iteration = 0; iteration < 200; ++iteration) {
        value_and_slope<T> const at_x = f(x);
        T const step = at_x.value / at_x.slope;
        if (is_nan(step)) return step;  // NaN in, NaN out
        T next = x - step;
        bool const converged = magnitude(at_x.value) <= noise;
        if (converged) return next < lower ? lower : (next > upper ? upper : next);
        if (step < T(0)) {  // the root lies above x
            lower = x;
            lower_tried = true;
        } else {
            upper = x;
            upper_tried = true;
        }
        T const middle = lower + (upper - lower) / T(2);
        if (next <= lower) {
            next = lower_tried ? middle : lower;
        } else if (next >= upper) {
            next = upper_tried ? middle : upper;
        } else if (iteration > 2 && magnitude(step) > previous / T(2)) {
            next = middle;
        }
        if (next == x || middle == lower || middle == upper)
            return next;  // the bracket is down to neighbours
        previous = magnitude(T(next - x));
        x = next;
    }
    return x;
}

/// One step of Halley's method towards a root: an error e becomes one of the order e^3. It takes one division
/// and no branch.
/// @param f Taylor series of the function at the current argument, up to the square
/// @return what to add to the argument; NaN or infinite where the method has no step
/// @par Source
/// A. S. Householder, The Numerical Treatment of a Single Nonlinear Equation, McGraw-Hill 1970 (cited from
/// memory)
template <real T>
constexpr T halley_step(taylor_terms<T, 3> const& f) {
    return -f[0] * f[1] / (f[1] * f[1] - f[0] * f[2]);
}

/// A step towards a root, and the slope after it.
template <real T>
struct step_and_slope {
    T step;           ///< what to add to the argument
    T inverse_slope;  ///< one over the derivative there; off by the order of the cube of the step
};

/// Householder's method of the third order, the next of the same family: an error e becomes one of the order
/// e^4.
/// @param f Taylor series of the function at the current argument, up to the cube
/// @return the step, NaN or infinite where the method has none, and the slope after it
/// @par Source
/// as `halley_step`
template <real T>
constexpr step_and_slope<T> householder_step(taylor_terms<T, 4> const& f) {
    T const bend = f[0] * f[2];
    T const steep = f[1] * f[1] - bend;
    // One over the slope of the chord from here to the root, f[1] + f[2] step + f[3] step^2.
    T const chord = steep / (f[1] * (steep - bend) + f[0] * f[0] * f[3]);
    T const step = -(f[0] * chord);
    // The slope at the root is steeper than the chord by this fraction, which is small.
    T const steeper = chord * (step * (f[2] + T(2) * f[3] * step));
    return {step, chord + chord * (steeper * steeper - steeper)};
}

/// Finds the root of a function without its slope: inverse quadratic interpolation where three points allow
/// it, bisection elsewhere.
///
/// Boost's toms748_solve does the same, but costs a second of compile time in every file that includes it.
/// @param f      callable: T -> T, not NaN between the ends
/// @param lower  one end of the bracket
/// @param upper  the other end; f has the other sign there, or is zero at one of them
/// @param width  accepted error of the root, 0 or more; a few units of the last place are always allowed
/// @return the root; NaN if f does not change its sign or gives NaN
/// @par Source
/// T. R. Chandrupatla, Adv. Eng. Softw. 28 (1997) 145
template <class F, std::floating_point T>
T bracketed_root(F const& f, T lower, T upper, T width) {
    T a = upper, fa = f(a);  // the newest point; b is the other end of the bracket, c the one before
    T b = lower, fb = f(b);
    if (fb == T(0)) return b;
    if (fa == T(0)) return a;
    if (!((fa < T(0)) != (fb < T(0))) || is_nan(fa) || is_nan(fb)) return std::numeric_limits<T>::quiet_NaN();
    T share = T(0.5);  // next point, as a share of the way from a to b
    for (int i = 0; i < 200; ++i) {
        T const x = a + share * (b - a);
        T const fx = f(x);
        if (is_nan(fx)) return fx;
        T c = a, fc = fa;
        if ((fx < T(0)) != (fa < T(0))) {
            c = b;
            fc = fb;
            b = a;
            fb = fa;
        }
        a = x;
        fa = fx;
        T const best = std::abs(fa) < std::abs(fb) ? a : b;
        T const accepted = T(2) * std::numeric_limits<T>::epsilon() * std::abs(best) + T(0.5) * width;
        T const least = accepted / std::abs(b - a);
        if (least > T(0.5) || fa == T(0)) return fa == T(0) ? a : best;
        // Interpolate only where the inverse parabola through the three points is monotone.
        T const xi = (a - b) / (c - b);
        T const phi = (fa - fb) / (fc - fb);
        bool const monotone = phi * phi < xi && (T(1) - phi) * (T(1) - phi) < T(1) - xi;
        share = monotone
                    ? fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
                    : T(0.5);
        share = share > least ? share : least;
        share = share < T(1) - least ? share : T(1) - least;
    }
    return std::abs(fa) < std::abs(fb) ? a : b;
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
